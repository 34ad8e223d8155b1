import type { Given } from '../job/job.ts';
import { type Expression, leaf, sum } from './arithmetic.ts';
import { type KeyOf, type NumbersOf, type Owner, quantitiesOf } from './catalogue.ts';
import type { EdgingQuantities, LayerQuantities, LayingQuantities } from './contract.ts';
import { type UnitBuying, unitsToBuy } from './job-units.ts';
import type { Book, Page } from './page.ts';

/** What areas take of materials and units, as far as the whole job's sums read it. */
export interface Taken {
  readonly name: string;
  readonly layers: readonly LayerQuantities[];
  readonly laying?: readonly LayingQuantities[];
  readonly edging: readonly EdgingQuantities[];
}

/** One material or unit of the whole job. */
export interface Together {
  readonly materials: readonly (NumbersOf<'job-material'> & Pick<LayerQuantities, 'role' | 'material'>)[];
  readonly units: readonly (NumbersOf<'job-unit'> & Pick<LayingQuantities, 'unit' | 'proven'>)[];
  readonly edging: readonly (NumbersOf<'job-edging'> & Pick<EdgingQuantities, 'material'>)[];
}

/** What the job says of buying units, by kind. */
export interface JobBuying {
  readonly breakage?: Given;
  readonly units: readonly UnitBuying[];
}

interface Part {
  readonly area: string;
  readonly pointer: string;
  readonly numbers: object;
}

const ROLES: readonly LayerQuantities['role'][] = ['base', 'sub-base', 'bed'];

/** Materials, units and edging of all areas together: by role and name, so that the order of areas changes nothing. */
export function takenTogether(areas: readonly Taken[], buying: JobBuying, jobKey: string, book: Book): Together {
  const parts = <T extends object>(listOf: (area: Taken) => readonly T[], list: string): (T & { part: Part })[] =>
    areas.flatMap((area, index) =>
      listOf(area).map((numbers, at) => ({
        ...numbers,
        part: { area: area.name, pointer: `/areas/${index}/${list}/${at}`, numbers }
      }))
    );
  const layers = grouped(
    parts(area => area.layers, 'layers'),
    ({ role, material }) => `${ROLES.indexOf(role)} ${material}`
  );
  const laying = grouped(
    parts(area => area.laying ?? [], 'laying'),
    ({ unit }) => unit
  );
  const edging = grouped(
    parts(area => area.edging, 'edging'),
    ({ material }) => material
  );
  return {
    materials: layers.map(([first, ...others], index) => ({
      role: first.role,
      material: first.material,
      ...summed('job-material', `/materials/${index}`, [first, ...others], book)
    })),
    units: laying.map((all, index) => {
      const [{ unit }] = all;
      const page = book.page('job-unit', `/units/${index}`);
      sumOnto(page, 'job-unit', all, SUMS_OF_UNITS);
      const { breakage, units } = buying;
      const ofUnit = units.find(other => other.unit === unit) ?? {};
      const inAreas = all.map(({ part, ...numbers }) => ({ area: part.area, pointer: part.pointer, laying: numbers }));
      return { unit, ...unitsToBuy(inAreas, ofUnit, breakage, jobKey, page), ...page.numbers };
    }),
    edging: edging.map(([first, ...others], index) => ({
      material: first.material,
      ...summed('job-edging', `/edging/${index}`, [first, ...others], book)
    }))
  };
}

function grouped<T>(all: readonly T[], nameOf: (one: T) => string): [T, ...T[]][] {
  const groups = new Map<string, [T, ...T[]]>();
  for (const one of all) {
    const group = groups.get(nameOf(one));
    if (group === undefined) groups.set(nameOf(one), [one]);
    else group.push(one);
  }
  return [...groups].sort(([left], [right]) => (left < right ? -1 : 1)).map(([, group]) => group);
}

/** Of these there are sums over all areas; what is bought is worked out for the whole job. */
const SUMS_OF_UNITS: ReadonlySet<string> = new Set(['whole', 'cut', 'sawLength']);

/** Sums over areas; of a quantity that one of them can't tell there is no sum. What only one area takes is repeated. */
function summed<O extends Owner>(owner: O, at: string, all: readonly { part: Part }[], book: Book): NumbersOf<O> {
  const page = book.page(owner, at);
  sumOnto(page, owner, all, undefined);
  return page.numbers;
}

function sumOnto<O extends Owner>(
  page: Page<O>,
  owner: O,
  all: readonly { part: Part }[],
  only: ReadonlySet<string> | undefined
): void {
  for (const { key, name, measure } of quantitiesOf(owner)) {
    if (only?.has(key) === false) continue;
    const values = all.map(({ part }) => (part.numbers as Readonly<Record<string, unknown>>)[key]);
    if (!values.every(value => typeof value === 'number')) continue;
    const [first, ...others] = all.map(({ part }, index): Expression =>
      leaf(`${name} in ${part.area}`, values[index]!, measure, { pointer: `${part.pointer}/${key}` })
    );
    if (first === undefined || others.length === 0) page.repeat(key as KeyOf<O>, values[0]!);
    else page.put(key as KeyOf<O>, sum(first, ...others));
  }
}
