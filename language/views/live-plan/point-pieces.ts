import { distance, type Point } from '../../geometry/index.ts';
import type { Area, Job, Key, NamedPoint } from '../../job/job.ts';
import { printFine, printLength } from '../../measures/print.ts';
import { levelStyleOf, printLevelWithMark } from '../../measures/print-level.ts';
import type { JobQuantities } from '../../quantities/contract.ts';
import type { PlanArea, PlanInput } from '../plan/plan-input.ts';
import type { PlanPoint } from '../plan/plan-site.ts';
import { belongsTo } from '../plan/levels-of-job.ts';
import { mm, mmPoint } from './in-millimetres.ts';
import { LEVEL_MARK } from './level-areas.ts';
import type { LiveShape, LiveThing } from './live-plan.ts';
import { fact, type Piece } from './piece.ts';

/** m: what lies nearer is one place. */
const SAME_PLACE = 0.001;

/** Named points in view, and corners that have no name, with their heights where these are not told of whole areas. */
export function pointPieces(
  job: Job,
  { areas, site }: PlanInput,
  quantities: JobQuantities,
  level: ReadonlyMap<Key, string>
): Piece[] {
  const shown = site?.points ?? [];
  const heightsOf = new Map(shown.map(({ key, heights }) => [key, heights]));
  const named = shown.flatMap(point => (point.name === undefined ? [] : [namedPiece(point, job, quantities, level)]));
  const corners = areas.flatMap(plan => {
    const area = job.areas.find(({ key }) => key === plan.key);
    return area === undefined ? [] : cornerPieces(area, plan, { heightsOf, level }, job);
  });
  return [...named, ...corners];
}

function namedPiece(point: PlanPoint, job: Job, quantities: JobQuantities, level: ReadonlyMap<Key, string>): Piece {
  const { key, name = '', at, heights } = point;
  const own = job.points.find(one => one.key === key);
  return {
    key,
    name: `point ${name}`,
    layers: {
      points: [markAt(key, at, 'point'), nameAt(key, at, name)],
      heights: isToldOfAreas(at, job, level) ? [] : heightTexts(key, at, heights)
    },
    things: [
      {
        key,
        kind: 'Points',
        name,
        facts: [
          ...placeFacts(at, job),
          ...fact('Finish', heights.join(', ')),
          ...groundFacts(name, job, quantities),
          ...(own === undefined ? [] : settingOutFacts(own, job))
        ],
        bounds: mmPoint(at),
        handle: { x: mm(at.x), y: mm(at.y) }
      }
    ],
    with: job.areas
      .filter(({ outline }) => outline.some(({ from }) => distance(from, at) <= SAME_PLACE))
      .map(area => area.key)
  };
}

function placeFacts({ x, y }: Point, { system }: Job): LiveThing['facts'] {
  return [
    ['Right, x', printLength(x, system)],
    ['Up, y', printLength(y, system)]
  ];
}

/** Heights that were taken there. */
function groundFacts(name: string, { datum, system }: Job, { heights }: JobQuantities): LiveThing['facts'] {
  if (datum === undefined) return [];
  return (heights ?? [])
    .filter(({ at }) => at === name)
    .map(({ of, height }) => [
      of === 'ground' ? 'Ground today' : of,
      printLevelWithMark(height, datum, levelStyleOf(system))
    ]);
}

/** How it is set out: by its coordinates, by tapes, or from other points. */
function settingOutFacts({ name, fixed }: NamedPoint, { tapes, system }: Job): LiveThing['facts'] {
  if (fixed) return [['Set out', 'by its coordinates']];
  const own = tapes.filter(({ from, to }) => from === name || to === name);
  if (own.length === 0) return [['Set out', 'from other points']];
  return own.map(({ from, to, read, fitted, misfit }) => [
    `Tape ${from} to ${to}`,
    `reads ${printLength(read.value, system)}, fitted ${printLength(fitted, system)}, misfit ${printFine(misfit, system)}`
  ]);
}

/** Where one edge ends and the next begins, and no named point lies. */
function cornerPieces(
  { key: area, name: areaName, edges }: Area,
  { settingOut }: PlanArea,
  { heightsOf, level }: { heightsOf: ReadonlyMap<Key, readonly string[]>; level: ReadonlyMap<Key, string> },
  job: Job
): Piece[] {
  return (settingOut?.corners ?? []).flatMap(({ name, at }, index): Piece[] => {
    const isCorner = edges[index] === undefined || edges[index].key !== edges.at(index - 1)?.key;
    if (!isCorner || job.points.some(point => distance(point, at) <= SAME_PLACE)) return [];
    const key = `${area}/corner-${index + 1}`;
    const heights = heightsOf.get(key) ?? [];
    return [
      {
        key,
        name: `${name} of ${areaName}`,
        layers: {
          points: [markAt(key, at, 'dot')],
          heights: isToldOfAreas(at, job, level) ? [] : heightTexts(key, at, heights)
        },
        things: [
          {
            key,
            kind: 'Corners',
            name: `${name} of ${areaName}`,
            facts: [...placeFacts(at, job), ...fact('Finish', heights.join(', '))],
            bounds: mmPoint(at),
            area,
            handle: { x: mm(at.x), y: mm(at.y) }
          }
        ],
        with: [area]
      }
    ];
  });
}

function markAt(key: Key, { x, y }: Point, sign: 'point' | 'dot'): LiveShape {
  const ink = sign === 'point' ? 'cross' : 'dot';
  return { kind: 'mark', key, content: 'points', ink, thing: key, x: mm(x), y: mm(y), sign };
}

function nameAt(key: Key, at: Point, text: string): LiveShape {
  return {
    kind: 'text',
    key: `${key}/name`,
    content: 'points',
    ink: 'strong',
    thing: key,
    x: mm(at.x),
    y: mm(at.y),
    text,
    turn: 0,
    anchor: 'start',
    rank: 2
  };
}

/** Whatever lies there is level, and tells its height at its name. */
function isToldOfAreas(at: Point, { areas }: Job, level: ReadonlyMap<Key, string>): boolean {
  return areas.filter(area => area.finish !== undefined && belongsTo(area, at)).every(({ key }) => level.has(key));
}

function heightTexts(key: Key, at: Point, heights: readonly string[]): LiveShape[] {
  if (heights.length === 0) return [];
  return [
    {
      kind: 'text',
      key: `${key}/heights`,
      content: 'heights',
      ink: 'text',
      thing: key,
      x: mm(at.x),
      y: mm(at.y),
      text: `${LEVEL_MARK} ${heights.join(', ')}`,
      turn: 0,
      anchor: 'end',
      rank: 4
    }
  ];
}
