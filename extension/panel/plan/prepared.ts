// What is worked out of a plan once, so that every frame looks only at what it shows.
import type {
  Content,
  LivePath,
  LivePlan,
  LiveMark,
  LiveRows,
  LiveShape,
  LiveText,
  LiveThing
} from '../../../server/plan-protocol.ts';
import { boundsOf, chordsOf } from './corners.ts';
import { LETTER_SIZE, reachBeside } from './letters.ts';
import { isBold } from './looks.ts';
import { contents } from './messages.ts';
import { piecesOf } from './pieces.ts';
import { DEEPEST_OF_POINTS, QuadTree } from './quad-tree.ts';
import { around, type Bounds } from './view.ts';

export interface PathEntry {
  readonly shape: LivePath;
  readonly loops: readonly (readonly number[])[];
  readonly bounds: Bounds;
  /** Its place in the order of drawing. */
  readonly order: number;
}

export interface RunEntry {
  readonly shape: LiveRows;
  readonly run: LiveRows['runs'][number];
  readonly form: Form;
  readonly order: number;
}

/** The unit of some rows, in its own frame. */
export interface Form {
  readonly chords: readonly number[];
  readonly bounds: Bounds;
  /** From its first corner to the farthest one. */
  readonly reach: number;
  /** Of its two sides the shorter one. */
  readonly width: number;
}

export interface MarkEntry {
  readonly shape: LiveMark;
  readonly order: number;
}

export interface Prepared {
  readonly plan: LivePlan;
  /** Of all that is drawn; a metre round nought where nothing is. */
  readonly extent: Bounds;
  /** How far from points and corners the widest of what is written beside them reaches, pixels. */
  readonly beside: number;
  /** The outlines of areas as chords, by the area's key. */
  readonly grounds: ReadonlyMap<string, PathEntry['loops']>;
  readonly things: ReadonlyMap<string, LiveThing>;
  readonly shapesOf: ReadonlyMap<string, readonly LiveShape[]>;
  readonly present: readonly Content[];
  readonly runs: QuadTree<RunEntry>;
  readonly cuts: QuadTree<PathEntry>;
  /** All paths besides cuts. */
  readonly paths: QuadTree<PathEntry>;
  readonly marks: QuadTree<MarkEntry>;
  readonly texts: QuadTree<LiveText>;
  /** The lowest rank first: of two in one place it is the one to be shown. */
  readonly textsByRank: readonly LiveText[];
  /** Of the units' widths the largest, mm. */
  readonly widest: number;
  /** What most units of an area look like, by the area's key. */
  readonly tints: ReadonlyMap<string, string | undefined>;
}

interface Worked {
  readonly loops: readonly (readonly number[])[];
  readonly form?: Form;
  readonly bounds: Bounds | undefined;
  readonly runBounds?: readonly Bounds[];
}

/** A shape that a patch leaves alone is the very same, and isn't worked out again. */
const known = new WeakMap<LiveShape, Worked>();
const knownPieces = new WeakMap<LiveRows, readonly LivePath[]>();

export function prepare(plan: LivePlan): Prepared {
  const all = plan.shapes.flatMap(one => partsOf(one).map(shape => ({ shape, worked: workedOf(shape) })));
  const extent = around(given(all.map(({ worked }) => worked.bounds))) ?? [-500, -500, 500, 500];
  const things = new Map(plan.things.map(thing => [thing.key, thing]));
  const runs = new QuadTree<RunEntry>(extent);
  const cuts = new QuadTree<PathEntry>(extent);
  const paths = new QuadTree<PathEntry>(extent);
  const marks = new QuadTree<MarkEntry>(extent, DEEPEST_OF_POINTS);
  const texts = new QuadTree<LiveText>(extent, DEEPEST_OF_POINTS);
  const shapesOf = new Map<string, LiveShape[]>();
  const grounds = new Map<string, PathEntry['loops']>();
  all.forEach(({ shape, worked }, order) => {
    const known = shapesOf.get(shape.thing);
    if (known === undefined) shapesOf.set(shape.thing, [shape]);
    else known.push(shape);
    const { bounds, loops, form } = worked;
    if (bounds === undefined) return;
    if (shape.kind === 'path' && shape.ink === 'ground') grounds.set(areaOf(shape.thing, things), loops);
    if (shape.kind === 'path') (shape.content === 'cuts' ? cuts : paths).add({ shape, loops, bounds, order }, bounds);
    else if (shape.kind === 'mark') marks.add({ shape, order }, bounds);
    else if (shape.kind === 'text') texts.add(shape, bounds);
    else shape.runs.forEach((run, index) => runs.add({ shape, run, form: form!, order }, worked.runBounds![index]!));
  });
  const kinds = new Set(plan.shapes.map(({ content }) => content));
  if (plan.shapes.some(shape => 'numbered' in shape)) kinds.add('cut-numbers');
  return {
    plan,
    extent,
    beside: besideOf(plan),
    grounds,
    things,
    shapesOf,
    present: contents.filter(content => kinds.has(content)),
    runs,
    cuts,
    paths,
    marks,
    texts,
    textsByRank: plan.shapes.filter(shape => shape.kind === 'text').sort((one, other) => one.rank - other.rank),
    widest: all.reduce((widest, { worked }) => Math.max(widest, worked.form?.width ?? 0), 0),
    tints: tintsOf(plan, things)
  };
}

const given = (all: readonly (Bounds | undefined)[]): Bounds[] => all.filter(bounds => bounds !== undefined);

function besideOf({ shapes }: LivePlan): number {
  let widest = 0;
  for (const shape of shapes) {
    if (shape.kind !== 'text' || (shape.content !== 'heights' && shape.content !== 'points')) continue;
    widest = Math.max(widest, reachBeside({ text: shape.text, size: LETTER_SIZE, bold: isBold(shape.ink) }));
  }
  return widest;
}

/** Cuts one by one, anything else as it is. */
function partsOf(shape: LiveShape): readonly LiveShape[] {
  if (shape.kind !== 'rows' || shape.content !== 'cuts') return [shape];
  const pieces = knownPieces.get(shape) ?? piecesOf(shape);
  knownPieces.set(shape, pieces);
  return pieces;
}

function workedOf(shape: LiveShape): Worked {
  const before = known.get(shape);
  if (before !== undefined) return before;
  const worked = workOut(shape);
  known.set(shape, worked);
  return worked;
}

function workOut(shape: LiveShape): Worked {
  if (shape.kind === 'path') {
    const loops = shape.loops.map(loop => chordsOf(loop, shape.closed));
    return { loops, bounds: around(given(loops.map(boundsOf))) };
  }
  if (shape.kind === 'rows') {
    const form = formOf(shape);
    if (form === undefined) return { loops: [], bounds: undefined };
    const runBounds = shape.runs.map(run => boundsOfRun(run, form));
    return { loops: [], form, bounds: around(runBounds), runBounds };
  }
  const { x, y } = shape;
  return { loops: [], bounds: [x, y, x, y] };
}

function formOf({ form }: LiveRows): Form | undefined {
  const chords = chordsOf(form, true);
  const bounds = boundsOf(chords);
  if (bounds === undefined) return undefined;
  const reach = Math.max(...[0, 2].flatMap(x => [1, 3].map(y => Math.hypot(bounds[x]!, bounds[y]!))));
  return { chords, bounds, reach, width: Math.min(bounds[2] - bounds[0], bounds[3] - bounds[1]) };
}

function boundsOfRun([x, y, direction, stepX, stepY, count]: RunEntry['run'], { bounds }: Form): Bounds {
  const [cosine, sine] = [Math.cos(direction), Math.sin(direction)];
  const corners = [0, 2].flatMap(across =>
    [1, 3].map((up): Bounds => {
      const [right, ahead] = [bounds[across]!, bounds[up]!];
      const [atX, atY] = [x + right * cosine - ahead * sine, y + right * sine + ahead * cosine];
      return [atX, atY, atX, atY];
    })
  );
  const [left, bottom, right, top] = around(corners)!;
  const [alongX, alongY] = [stepX * Math.max(0, count - 1), stepY * Math.max(0, count - 1)];
  return [
    left + Math.min(0, alongX),
    bottom + Math.min(0, alongY),
    right + Math.max(0, alongX),
    top + Math.max(0, alongY)
  ];
}

/** The area that a thing belongs to; an area belongs to itself. */
export function areaOf(key: string, things: Prepared['things']): string {
  return things.get(key)?.area ?? key;
}

function tintsOf(plan: LivePlan, things: Prepared['things']): Map<string, string | undefined> {
  const counts = new Map<string, Map<string | undefined, number>>();
  for (const shape of plan.shapes) {
    if (shape.kind !== 'rows' || shape.content === 'cuts') continue;
    const area = areaOf(shape.thing, things);
    const ofArea = counts.get(area) ?? new Map<string | undefined, number>();
    const units = shape.runs.reduce((sum, run) => sum + run[5], 0);
    ofArea.set(shape.tint, (ofArea.get(shape.tint) ?? 0) + units);
    counts.set(area, ofArea);
  }
  return new Map(
    [...counts].map(([area, tints]) => [area, [...tints].sort((one, other) => other[1] - one[1])[0]?.[0]])
  );
}
