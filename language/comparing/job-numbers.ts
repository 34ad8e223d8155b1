import { type Owner, quantitiesOf, type Quantity } from '../quantities/catalogue.ts';
import type { JobQuantities } from '../quantities/contract.ts';
import type { Key } from '../job/job.ts';
import { keyNow, nameOf, type NewNames, sideNow } from './new-names.ts';

/** A number of a job, of the catalogue, found again in another text of the job by its id. */
export interface JobNumber {
  /** `area:terrace/layers/base/mass`: where it stands by what things are called, not by their order. */
  readonly id: string;
  readonly quantity: Quantity;
  readonly value: number;
  /** SI; empty for counts and shares. */
  readonly measure: string;
  /** The thing it is of, in words: `turning, base`. */
  readonly of: string;
  /** Its JSON pointer, as workings have it. */
  readonly pointer: string;
  /** The area, box, gate, drain … that it belongs to; absent of the job as a whole. */
  readonly thing?: Key;
}

type Plain = Readonly<Record<string, unknown>>;

/** A kind of object in the JSON of a job. */
interface Kept {
  /** Absent where it has no numbers of its own. */
  readonly owner?: Owner;
  /** What tells one of a list from the others. */
  readonly named?: readonly string[];
  readonly inside?: Readonly<Record<string, Kept>>;
}

const IN_AREA: Readonly<Record<string, Kept>> = {
  keptOut: { owner: 'kept-out', named: ['id'] },
  edges: { owner: 'edge', named: ['name'] },
  finish: { owner: 'finish' },
  dig: { owner: 'dig' },
  softSpots: { owner: 'soft-spot', named: ['id'] },
  levels: { owner: 'level', named: ['at'] },
  geotextile: { owner: 'geotextile' },
  layers: { owner: 'layer', named: ['role'] },
  laying: { owner: 'laying', named: ['unit'] },
  borderRows: { owner: 'border-row', named: ['border', 'unit', 'course'] },
  joints: { owner: 'joints' },
  edging: { owner: 'edging', named: ['material'] }
};

const IN_JOB: Readonly<Record<string, Kept>> = {
  areas: { owner: 'area', named: ['id'], inside: IN_AREA },
  dig: { owner: 'job-dig' },
  totals: { owner: 'totals' },
  materials: { owner: 'job-material', named: ['role', 'material'] },
  units: { owner: 'job-unit', named: ['unit'] },
  edging: { owner: 'job-edging', named: ['material'] },
  boxes: { owner: 'box', named: ['id'] },
  gates: { owner: 'gate', named: ['id'] },
  pipes: { owner: 'pipe', named: ['id'] },
  drains: { owner: 'drain', named: ['id'] },
  tapes: { owner: 'tape', named: ['from', 'to'] },
  deliveries: { owner: 'delivery', named: ['id', 'measure'] },
  needs: { named: ['id'], inside: { in: { owner: 'need', named: ['measure'] } } },
  order: { owner: 'order', named: ['id', 'pack'] }
};

/**
 * All numbers of the catalogue that a job has, in the order of its JSON; their ids call things as `names` tells.
 */
export function jobNumbers(quantities: JobQuantities, names: NewNames): JobNumber[] {
  return inside(quantities as unknown as Plain, IN_JOB, { id: '', pointer: '', of: [], names });
}

interface At {
  readonly id: string;
  readonly pointer: string;
  readonly of: readonly string[];
  readonly thing?: Key;
  readonly names: NewNames;
}

/** What tells one of a list from the others, as the newer text calls it. */
function nameNow(names: NewNames, part: string, value: string): string {
  switch (part) {
    case 'id':
      return keyNow(names, value);
    case 'unit':
    case 'material':
      return nameOf(names, { kind: part, name: value });
    case 'name':
      return sideNow(names, value);
    case 'at':
    case 'from':
    case 'to':
      return nameOf(names, { kind: 'point', name: value });
    default:
      return value;
  }
}

function inside(object: Plain, kept: Readonly<Record<string, Kept>>, at: At): JobNumber[] {
  return Object.entries(kept).flatMap(([key, kind]) => {
    const value = object[key];
    if (value === undefined || value === null) return [];
    const below = { ...at, id: `${at.id}/${key}`, pointer: `${at.pointer}/${key}` };
    if (kind.named === undefined) return numbersOf(value as Plain, kind, { ...below, of: at.of });
    const seen = new Map<string, number>();
    return (value as readonly Plain[]).flatMap((item, index) => {
      const name = kind.named!.map(part => nameNow(at.names, part, String(item[part] ?? ''))).join(' ');
      const count = (seen.get(name) ?? 0) + 1;
      seen.set(name, count);
      const id = count === 1 ? name : `${name} ${count}`;
      const words = typeof item['name'] === 'string' ? item['name'] : id.replace(/^[a-z-]+:/, '');
      return numbersOf(item, kind, {
        names: at.names,
        id: `${below.id}/${id}`,
        pointer: `${below.pointer}/${index}`,
        of: [...at.of, words],
        ...(typeof item['id'] === 'string' ? { thing: item['id'] } : at.thing === undefined ? {} : { thing: at.thing })
      });
    });
  });
}

function numbersOf(object: Plain, { owner, inside: more = {} }: Kept, at: At): JobNumber[] {
  const own = (owner === undefined ? [] : quantitiesOf(owner)).flatMap((quantity): JobNumber[] => {
    const value = object[quantity.key];
    if (typeof value !== 'number' || quantity.workOnly === true) return [];
    const { id, pointer, of, thing } = at;
    return [
      {
        id: `${id}/${quantity.key}`.slice(1),
        quantity,
        value,
        measure: measureOf(object, quantity),
        of: of.join(', '),
        pointer: `${pointer}/${quantity.key}`,
        ...(thing === undefined ? {} : { thing })
      }
    ];
  });
  return [...own, ...inside(object, more, at)];
}

/** What is bought is told in the measure that it is sold by. */
function measureOf(object: Plain, { measure, kind }: Quantity): string {
  const told = object['measure'] ?? object['needMeasure'];
  return kind === 'number' && typeof told === 'string' ? told.replace('piece', '') : measure;
}
