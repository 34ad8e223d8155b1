import type { Key } from '../../job/job.ts';
import { printHeight } from '../../measures/print.ts';
import { quantityOf, type Owner } from '../../quantities/catalogue.ts';
import type { AreaQuantities, EdgeQuantities, LayingQuantities } from '../../quantities/contract.ts';
import { areaText, errorWordsOf, noNumbersText, unitsText, withoutNumbers } from '../lenses.ts';
import { levelPlace } from '../level-place.ts';
import {
  asBefore,
  type ContentRow,
  type Contents,
  group,
  numberRow,
  numbersOf,
  placeOf,
  type RowKind
} from './content-row.ts';

/** Where there are more places with heights than these, those along the sides are left to the level sheet. */
const MOST_LEVELS = 24;

/** Each area with its numbers, in the order of the text; of a broken one those from before, or why there are none. */
export function areaRows(contents: Contents): ContentRow[] {
  const { quantities, lastGood } = contents.evaluation.numbers!;
  const broken = withoutNumbers(quantities)
    .filter(key => key.startsWith('area:'))
    .map(key =>
      brokenRow(
        contents,
        key,
        lastGood.find(({ id }) => id === key)
      )
    );
  const rows = [...quantities.areas.map(area => areaRow(contents, area)), ...broken];
  return broken.length === 0 ? rows : inOrderOfText(contents, rows);
}

function brokenRow(contents: Contents, key: Key, before: AreaQuantities | undefined): ContentRow {
  const { evaluation, job, file } = contents;
  if (before !== undefined) return asBefore(areaRow(contents, before), `before ${errorWordsOf(evaluation, key, file)}`);
  const label = job.missing.find(missing => missing.key === key)?.name ?? key.replace(/^area:/, '');
  return {
    id: key,
    kind: 'area',
    label,
    value: noNumbersText(evaluation, key, file),
    ...placeOf(contents, key),
    inside: []
  };
}

function inOrderOfText({ evaluation: { texts } }: Contents, rows: readonly ContentRow[]): ContentRow[] {
  const files = texts.map(({ file }) => file);
  const at = ({ place }: ContentRow): readonly [number, number, number] =>
    place === undefined ? [files.length, 0, 0] : [files.indexOf(place.file), place.line, place.column];
  return [...rows].sort((left, right) => {
    const [one, other] = [at(left), at(right)];
    return one[0] - other[0] || one[1] - other[1] || one[2] - other[2];
  });
}

function areaRow(contents: Contents, area: AreaQuantities): ContentRow {
  const { id, name, dig, layers, laying = [], edges, edging, joints, geotextile } = area;
  const { system } = contents.job;
  const part = (at: string, kind: RowKind, label: string, value: string, of: Part): ContentRow => ({
    id: `${id}/${at}`,
    kind,
    label,
    value,
    ...placeOf(contents, of.key),
    inside: [...(of.first ?? []), ...numbersOf(contents, { id: `${id}/${at}`, ...of })]
  });
  const printed = (owner: Owner, numbers: object, ...keys: string[]): string => {
    const rows = numbersOf(contents, { id: '', key: id, owner, numbers });
    return keys.flatMap(key => rows.find(row => row.id === `#${key}`)?.value ?? []).join(' · ');
  };
  const edgeFirst = ({ meets, edging: kind }: EdgeQuantities, at: string): ContentRow[] => [
    ...(meets === undefined ? [] : [numberRow(`${id}/${at}#meets`, 'Meets', meets, placeOf(contents, `${id}/${at}`))]),
    ...(kind === undefined ? [] : [numberRow(`${id}/${at}#edging`, 'Edging', kind, placeOf(contents, `${id}/${at}`))])
  ];
  return {
    id,
    kind: 'area',
    label: name,
    value: areaText(area, system),
    ...placeOf(contents, id),
    inside: [
      ...numbersOf(contents, { id, key: id, owner: 'area', numbers: area }),
      ...finishRows(contents, area),
      part('dig', 'dig', 'Dig', printed('dig', dig, 'bankVolume', 'deepest'), {
        key: `${id}/finish`,
        owner: 'dig',
        numbers: dig
      }),
      ...group(
        `${id}/layers`,
        'Layers',
        layers.map(layer =>
          part(
            `layers/${layer.role}`,
            'layer',
            `${layer.role}, ${layer.material}`,
            printed('layer', layer, 'thickness', 'compactedVolume', 'mass'),
            { key: `${id}/${layer.role}`, owner: 'layer', numbers: layer }
          )
        )
      ),
      ...group(
        `${id}/units`,
        'Units',
        laying.map(one =>
          part(`units/${one.unit}`, 'unit', `${one.unit}, ${one.bond}`, unitsValue(one), {
            key: `${id}/paving`,
            owner: 'laying',
            numbers: one
          })
        )
      ),
      ...(joints === undefined
        ? []
        : [
            part('joints', 'joints', 'Joints', printed('joints', joints, 'volume', 'mass'), {
              key: `${id}/joints`,
              owner: 'joints',
              numbers: joints
            })
          ]),
      ...(geotextile === undefined
        ? []
        : [
            part(
              'geotextile',
              'geotextile',
              `Geotextile, ${geotextile.material}`,
              printed('geotextile', geotextile, 'area'),
              {
                key: `${id}/geotextile`,
                owner: 'geotextile',
                numbers: geotextile
              }
            )
          ]),
      ...group(
        `${id}/edges`,
        'Edges',
        edges.map(edge =>
          part(
            `edges/${edge.name}`,
            'edge',
            edge.name,
            printed('edge', edge, 'length') + (edge.meets === undefined ? '' : ` · ${edge.meets}`),
            {
              key: `${id}/edges/${edge.name}`,
              owner: 'edge',
              numbers: edge,
              first: edgeFirst(edge, `edges/${edge.name}`)
            }
          )
        )
      ),
      ...group(
        `${id}/edging`,
        'Edging',
        edging.map(one =>
          part(`edging/${one.material}`, 'edging', one.material, printed('edging', one, 'length'), {
            key: `${id}/edges`,
            owner: 'edging',
            numbers: one
          })
        )
      ),
      ...levelRows(contents, area)
    ]
  };
}

interface Part {
  /** Of its place in the text. */
  readonly key: Key;
  readonly owner: Owner;
  readonly numbers: object;
  /** What is told before its numbers. */
  readonly first?: readonly ContentRow[];
}

function unitsValue(laying: LayingQuantities): string {
  const { toBuy } = laying;
  return `${unitsText([laying])}${toBuy === undefined ? '' : `, ${toBuy} to buy`}`;
}

/** The height against its benchmark, then the fall. */
function finishRows(contents: Contents, { id, finish }: AreaQuantities): ContentRow[] {
  if (finish === undefined) return [];
  const key = `${id}/finish`;
  const height = printHeight(finish.height, finish.at, contents.job.system);
  const rows = numbersOf(contents, { id: key, key, owner: 'finish', numbers: finish });
  return [
    numberRow(`${key}#height`, quantityOf('finish', 'height').words, height, placeOf(contents, key)),
    ...rows.filter(row => row.id !== `${key}#height`)
  ];
}

/** Heights at the places of the level sheet where they are few, else at corners, points and boxes alone. */
function levelRows(contents: Contents, { id, levels = [] }: AreaQuantities): ContentRow[] {
  const shown = levels.length <= MOST_LEVELS ? levels : levels.filter(({ along }) => along === undefined);
  const rows = shown.map((level): ContentRow => {
    const label = levelPlace(level, contents.job.system);
    const own = `${id}/levels/${label}`;
    const place = { ...placeOf(contents, `${id}/finish`), ...placeOf(contents, `point:${level.at}`) };
    const numbers = numbersOf(contents, { id: own, key: `${id}/finish`, owner: 'level', numbers: level });
    const finish = numbers.find(row => row.id === `${own}#finish`)?.value;
    return {
      id: own,
      kind: 'level',
      label,
      ...(finish === undefined ? {} : { value: finish }),
      ...place,
      inside: [
        ...numbers,
        ...(level.beyond === true
          ? [numberRow(`${own}#beyond`, 'Ground measured', 'no: taken as high as at the nearest place')]
          : [])
      ]
    };
  });
  return group(
    `${id}/levels`,
    'Heights',
    rows,
    shown.length === levels.length ? undefined : `${shown.length} of ${levels.length}`
  );
}
