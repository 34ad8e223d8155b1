import { boundsOf, type Loop, pointAlong, radiusOf, sideLength } from '../../geometry/index.ts';
import { around } from '../../geometry/bounds.ts';
import { heading } from '../../geometry/moved-side.ts';
import type { Area, Key, System } from '../../job/job.ts';
import { printLength } from '../../measures/print.ts';
import { type LevelDatum, levelStyleOf, printLevelWithMark } from '../../measures/print-level.ts';
import type { AreaQuantities, EdgeQuantities } from '../../quantities/contract.ts';
import { upright } from '../plan/cut-numbers.ts';
import type { PlanArea } from '../plan/plan-input.ts';
import { fallsText, stepText, wholeSides } from '../text/level-sheet/edges-text.ts';
import { lineOf, mm, mmBounds, turnOf } from './in-millimetres.ts';
import type { LivePath, LiveShape, LiveText, LiveThing } from './live-plan.ts';
import { fact, type UnledThing } from './piece.ts';

/** An edge as a person counts them: what the outline bends it into is one, under the key that the text has for it. */
interface Edge {
  readonly key: Key;
  readonly name: string;
  /** Of the outline, from nought. */
  readonly sides: readonly number[];
}

export interface Edges {
  readonly edging: readonly LivePath[];
  readonly lines: readonly LiveShape[];
  readonly lengths: readonly LiveText[];
  readonly things: readonly UnledThing[];
}

type Drawn = Pick<Area, 'key' | 'name' | 'outline' | 'edges' | 'start'>;

/** The edges of an area with what they meet, their lengths and their curves. */
export function edgesOf(
  area: Drawn,
  plan: PlanArea,
  numbers: AreaQuantities | undefined,
  system: System,
  datum: LevelDatum | undefined
): Edges {
  const edges = edgesAsCounted(area);
  return {
    edging: edges.flatMap(edge => edgingOf(edge, area, plan)),
    lines: [...edges.map(edge => lineOfEdge(edge, area, plan)), ...curveMarks(area)],
    lengths: edges.flatMap(edge => lengthsOf(edge, area, system)),
    things: [...edges.map(edge => thingOf(edge, area, plan, numbers, system, datum)), ...curvesOf(area, plan, system)]
  };
}

function edgesAsCounted({ key: area, outline, edges }: Drawn): Edge[] {
  const counted = new Map<Key, { key: Key; name: string; sides: number[] }>();
  outline.forEach((_, index) => {
    const edge = edges[index];
    const key = edge?.key ?? `${area}/side-${index + 1}`;
    const known = counted.get(key);
    if (known === undefined) counted.set(key, { key, name: edge?.name ?? `side ${index + 1}`, sides: [index] });
    else known.sides.push(index);
  });
  return [...counted.values()];
}

/** Sides that follow each other as one run each; round the end of the list as well. */
function runsOf(sides: readonly number[], outline: Loop): number[][] {
  const runs: number[][] = [];
  for (const index of sides) {
    const run = runs.at(-1);
    if (run !== undefined && run.at(-1) === index - 1) run.push(index);
    else runs.push([index]);
  }
  const [first, last] = [runs[0], runs.at(-1)];
  if (runs.length < 2 || first?.[0] !== 0 || last?.at(-1) !== outline.length - 1) return runs;
  return [[...last, ...first], ...runs.slice(1, -1)];
}

function loopsOf({ sides }: Edge, { outline }: Drawn): Loop[] {
  return runsOf(sides, outline).map(run => run.map(index => outline[index]!));
}

function lineOfEdge(edge: Edge, area: Drawn, { noNumbers }: PlanArea): LivePath {
  return {
    kind: 'path',
    key: edge.key,
    content: 'edges',
    ink: noNumbers === undefined ? 'outline' : 'outline-only',
    thing: edge.key,
    loops: loopsOf(edge, area).map(lineOf),
    closed: false
  };
}

function edgingOf(edge: Edge, area: Drawn, { sides }: PlanArea): LivePath[] {
  const edged = edge.sides.filter(index => sides[index]?.edging !== undefined);
  if (edged.length === 0) return [];
  return [
    {
      kind: 'path',
      key: `${edge.key}/edging`,
      content: 'edges',
      ink: 'edging',
      thing: edge.key,
      loops: loopsOf({ ...edge, sides: edged }, area).map(lineOf),
      closed: false
    }
  ];
}

/** The length of each run beside the middle of its longest side. */
function lengthsOf(edge: Edge, { outline, start }: Drawn, system: System): LiveText[] {
  const starting = new Set([...start.whole, start.along]);
  return runsOf(edge.sides, outline).map((run, order): LiveText => {
    const lengthOf = (index: number): number => sideLength(outline[index]!);
    const longest = run.reduce((best, index) => (lengthOf(index) > lengthOf(best) + HAIR ? index : best));
    const side = outline[longest]!;
    const middle = pointAlong(side, 0.5);
    const way = heading(side, middle);
    const whole = run.reduce((sum, index) => sum + lengthOf(index), 0);
    return {
      kind: 'text',
      key: `${edge.key}/length${order === 0 ? '' : `/${order + 1}`}`,
      content: 'dimensions',
      ink: 'text',
      thing: edge.key,
      x: mm(middle.x),
      y: mm(middle.y),
      text: printLength(whole, system),
      turn: turnOf(upright(Math.atan2(way.y, way.x))),
      anchor: 'middle',
      room: mm(lengthOf(longest)),
      rank: run.some(index => starting.has(index)) ? 3 : rankOfLength(whole)
    };
  });
}

/** After sides that laying starts from the longest first, before what is of rank 4. */
function rankOfLength(metres: number): number {
  return 3 + Math.round(1000 / (1 + metres)) / 1000;
}

/** m: rounding decides nothing. */
const HAIR = 1e-9;

function thingOf(
  edge: Edge,
  area: Drawn,
  plan: PlanArea,
  numbers: AreaQuantities | undefined,
  system: System,
  datum: LevelDatum | undefined
): UnledThing {
  const side = plan.sides[edge.sides[0]!]!;
  const length = edge.sides.reduce((sum, index) => sum + sideLength(area.outline[index]!), 0);
  const own = edge.sides.flatMap(index => numbers?.edges[index] ?? []);
  const [whole, ...more] = wholeSides(own);
  const isCurve = edge.sides.some(index => area.outline[index]!.arc !== undefined);
  return {
    key: edge.key,
    kind: 'Edges',
    name: `${edge.name} of ${area.name}`,
    facts: [
      [isCurve ? 'Length along it' : 'Length', printLength(length, system)],
      ['Meets', side.meets === undefined ? 'not said' : `${side.meets}${side.flush ? ', flush' : ''}`],
      ...fact('Edging', side.edging),
      ...(whole === undefined || more.length > 0 ? [] : heightFacts(whole, system, datum))
    ],
    bounds: mmBounds(edge.sides.map(index => boundsOf([area.outline[index]!])).reduce(around)),
    area: area.key
  };
}

function heightFacts(edge: EdgeQuantities, system: System, datum: LevelDatum | undefined): LiveThing['facts'] {
  const { finishFrom, finishTo } = edge;
  if (datum === undefined || finishFrom === undefined || finishTo === undefined) return [];
  const style = levelStyleOf(system);
  return [
    ['Finish at its start', printLevelWithMark(finishFrom, datum, style)],
    ['Finish at its end', printLevelWithMark(finishTo, datum, style)],
    ...fact('Fall away from it', fallsText(edge, system)),
    ...fact('What lies beyond', stepText(edge, style, system))
  ];
}

/** The key of an arc of an outline. */
function arcKey({ key }: Drawn, index: number): string {
  return `${key}/side-${index + 1}/arc`;
}

/** A dot in the middle of each arc: there it is taken hold of. */
function curveMarks(area: Drawn): LiveShape[] {
  return area.outline.flatMap((side, index): LiveShape[] => {
    if (side.arc === undefined) return [];
    const middle = pointAlong(side, 0.5);
    const key = arcKey(area, index);
    return [
      { kind: 'mark', key, content: 'edges', ink: 'dot', thing: key, x: mm(middle.x), y: mm(middle.y), sign: 'dot' }
    ];
  });
}

function curvesOf(area: Drawn, { settingOut }: PlanArea, system: System): UnledThing[] {
  return area.outline.flatMap((side, index) => {
    if (side.arc === undefined) return [];
    const middle = pointAlong(side, 0.5);
    const { centre } = side.arc;
    const corners = settingOut?.corners ?? [];
    const [from, to] = [corners[index]?.name, corners[(index + 1) % area.outline.length]?.name];
    const ends = from === undefined || to === undefined ? undefined : from === to ? 'all round' : `${from} to ${to}`;
    return [
      {
        key: arcKey(area, index),
        kind: 'Curves',
        name: `curve of ${area.edges[index]?.name ?? `side ${index + 1}`} of ${area.name}`,
        facts: [
          ['Radius', printLength(radiusOf(side, side.arc), system)] as const,
          ...fact('From where to where', ends),
          ['Centre on the plan', `(${printLength(centre.x, system)}, ${printLength(centre.y, system)})`] as const
        ],
        bounds: mmBounds(boundsOf([side])),
        area: area.key,
        handle: { x: mm(middle.x), y: mm(middle.y) }
      }
    ];
  });
}
