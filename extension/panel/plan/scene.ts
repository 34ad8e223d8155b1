// What there is to draw of a plan at a view: few paths and few letters, however large the plan is.
import type { Content, LiveMark, LiveText } from '../../../server/plan-protocol.ts';
import { isInside, pathOf, placesAlong, roomAlong, tenth } from './corners.ts';
import {
  boxAbout,
  boxesOf,
  isInView,
  type Letters,
  LETTER_SIZE,
  SMALLEST_LETTERS,
  TakenPlaces,
  upright,
  waysOf,
  widthOf
} from './letters.ts';
import { isBold, type Look, lookOf, STALE_HATCH } from './looks.ts';
import { areaOf, type PathEntry, type Prepared, type RunEntry } from './prepared.ts';
import { boxOfScaleBar, scaleBarOf } from './scale-bar.ts';
import { boxesOfSign, LENGTH_OF_FALL, lookOfSign, SIGNS_BY_RANK, signPath, standOf, stemPath } from './signs.ts';
import { barOf, someInView, unitsPath } from './units-in-view.ts';
import {
  type Bounds,
  onScreen,
  type OnScreen,
  type Place,
  seenGround,
  type Size,
  toGround,
  type View
} from './view.ts';

/** Narrower than so many pixels, single units run into a grey: bars of courses or a hatch tell more. */
const NARROWEST_UNIT = 4;
/** Narrower units have fainter lines. */
const FINE_UNIT = 10;
/** Narrower bars run into each other: the ground is hatched instead. */
const NARROWEST_BAR = 4;
/** Smaller pieces, pixels, are specks. */
const SMALLEST_PIECE = 4;

/*
 * The most of each in one frame: so many a browser writes and paints within a frame or two of a slow machine, and more
 * could not be told apart on a screen of usual size.
 */
export const MOST_UNITS = 10_000;
const MOST_RUNS = 4_000;
export const MOST_PIECES = 3_000;
const MOST_PATHS = 3_000;
export const MOST_MARKS = 400;
export const MOST_LETTERS = 350;
/** Texts that are tried for room. */
const MOST_TRIED = 2_000;
/** Paths that are drawn, each of one look. */
const MOST_LOOKS = 250;

/** How much more than what is seen is drawn, as a share of it, so that a plan can be moved without being drawn anew. */
const MARGINS = [0.5, 0.1];

/** Signs of one kind nearer to each other, pixels, are one. */
const SIGNS_APART = 8;

export interface SceneWish {
  readonly prepared: Prepared;
  readonly view: View;
  readonly size: Size;
  readonly hidden: ReadonlySet<Content>;
  /** Written on areas that are shown as they were before an error. */
  readonly asBefore: string;
  /** Written on areas whose units are too small to be drawn. */
  readonly unitsTooSmall?: string;
}

export interface Group {
  readonly look: Look;
  readonly path: string;
}

/** How single units are told. */
export type Detail = 'units' | 'bars' | 'ground';

export interface Scene {
  readonly view: View;
  /** Pixels drawn beyond each side of what is seen. */
  readonly margin: Place;
  /** What comes first lies under what follows. */
  readonly groups: readonly Group[];
  readonly letters: readonly Letters[];
  /** The least that units are told by, of those in view. */
  readonly detail: Detail;
  /** Something was too small or too much to be drawn. */
  readonly leftOut: boolean;
  readonly counted: Counted;
}

/** The work of a frame. */
export interface Counted {
  /** Places, shapes and runs looked at, and units and texts written. */
  work: number;
  units: number;
  pieces: number;
  letters: number;
}

export function sceneOf(wish: SceneWish): Scene {
  const first = drawAt(wish, MARGINS[0]!);
  if (first.asWished) return first;
  const second = drawAt(wish, MARGINS[1]!);
  return { ...second, counted: { ...second.counted, work: first.counted.work + second.counted.work } };
}

interface Drawing extends SceneWish {
  readonly at: OnScreen;
  readonly seen: Bounds;
  readonly counted: Counted;
  readonly groups: Map<string, { readonly look: Look; readonly order: number; path: string[] }>;
}

function drawAt(wish: SceneWish, share: number): Scene & { readonly asWished: boolean } {
  const { view, size, hidden, prepared } = wish;
  const margin = { x: Math.round(size.width * share), y: Math.round(size.height * share) };
  const drawing: Drawing = {
    ...wish,
    at: onScreen(view, size),
    seen: seenGround(view, size, margin),
    counted: { work: 0, units: 0, pieces: 0, letters: 0 },
    groups: new Map()
  };
  const units = hidden.has('units') ? NO_UNITS : unitsOf(drawing);
  const smallest = SMALLEST_PIECE / view.scale;
  const paths = prepared.paths.find(drawing.seen, smallest, MOST_PATHS);
  const cuts = hidden.has('cuts')
    ? { items: [], looked: 0, leftOut: false }
    : prepared.cuts.find(drawing.seen, smallest, MOST_PIECES);
  drawing.counted.work += paths.looked + cuts.looked;
  for (const entry of paths.items) if (!hidden.has(entry.shape.content)) drawPath(entry, units, drawing);
  // Where the ground tells of the units, it tells of the cut ones, too.
  const pieces = cuts.items.filter(({ shape }) => !units.onGround.has(areaOf(shape.thing, prepared.things)));
  for (const entry of pieces) drawPath(entry, units, drawing);
  drawing.counted.pieces = pieces.length;
  const taken = new TakenPlaces();
  taken.take([boxOfScaleBar(scaleBarOf(prepared.plan.system, view.scale), size)]);
  drawMarks(drawing, taken);
  const letters = lettersOf(drawing, taken, { pieces, paths: paths.items, onGround: units.onGround });
  drawing.counted.letters = letters.length;
  return {
    view,
    margin,
    groups: [...drawing.groups.values()]
      .sort((one, other) => one.order - other.order)
      .slice(0, MOST_LOOKS)
      .map(({ look, path }) => ({ look, path: path.join('') })),
    letters,
    detail: units.detail,
    leftOut: paths.leftOut || cuts.leftOut,
    counted: drawing.counted,
    asWished: units.asWished
  };
}

// ---- units ----

interface Units {
  readonly detail: Detail;
  /** It is for their size, not for their number, that units are not drawn one by one. */
  readonly asWished: boolean;
  /** Areas whose ground tells of units that are not drawn one by one. */
  readonly onGround: ReadonlySet<string>;
}

const NO_UNITS: Units = { detail: 'units', asWished: true, onGround: new Set() };

function unitsOf(drawing: Drawing): Units {
  const { prepared, seen, view, counted } = drawing;
  if (prepared.widest * view.scale < NARROWEST_BAR)
    return {
      detail: prepared.widest > 0 ? 'ground' : 'units',
      asWished: true,
      onGround: new Set(prepared.tints.keys())
    };
  // No run is shorter than the width of its unit.
  const found = prepared.runs.find(seen, NARROWEST_BAR / view.scale, MOST_RUNS);
  counted.work += found.looked;
  const narrow = (entry: RunEntry): boolean => entry.form.width * view.scale < NARROWEST_UNIT;
  const each = found.items.filter(entry => !narrow(entry)).map(entry => ({ entry, some: someInView(entry, seen) }));
  const total = each.reduce((sum, { some }) => sum + some.to - some.from, 0);
  const isTooMany = found.leftOut || total > MOST_UNITS;
  const bars = found.leftOut ? [] : isTooMany ? found.items : found.items.filter(narrow);
  const onGround = new Set<string>();
  if (!isTooMany)
    for (const { entry, some } of each) {
      counted.work += some.to - some.from;
      counted.units += some.to - some.from;
      const fine = entry.form.width * view.scale < FINE_UNIT;
      draw(drawing, lookOf({ ...entry.shape, fine }), entry.order, unitsPath(entry, some, drawing.at));
    }
  for (const entry of bars) {
    counted.work++;
    onGround.add(areaOf(entry.shape.thing, prepared.things));
    if (entry.form.width * view.scale >= NARROWEST_BAR) drawBar(entry, drawing);
  }
  // What was not even looked at is told by the ground.
  if (found.leftOut) for (const area of prepared.tints.keys()) onGround.add(area);
  const detail = found.leftOut ? 'ground' : bars.length > 0 ? 'bars' : 'units';
  return { detail, asWished: !isTooMany, onGround };
}

function drawBar(entry: RunEntry, drawing: Drawing): void {
  const bar = barOf(entry.run, entry.form.bounds);
  if (bar === undefined) return;
  const { a, b, c, d, e, f } = drawing.at;
  const corners: string[] = [];
  for (let at = 0; at < bar.length; at += 2) {
    const [x, y] = [bar[at]!, bar[at + 1]!];
    corners.push(`${tenth(a * x + c * y + e)} ${tenth(b * x + d * y + f)}`);
  }
  draw(drawing, lookOf(entry.shape), entry.order, `M${corners.join('L')}z`);
}

// ---- paths ----

function drawPath({ shape, order }: PathEntry, units: Units, drawing: Drawing): void {
  const path = shape.loops.map(loop => pathOf(loop, shape.closed, drawing.at)).join('');
  const { ink, stale, closed } = shape;
  const area = areaOf(shape.thing, drawing.prepared.things);
  const tells = ink === 'ground' && units.onGround.has(area);
  const tint = tells ? drawing.prepared.tints.get(area) : shape.tint;
  draw(drawing, lookOf({ ink, tint, stale, open: !closed, ...(tells ? { hatch: 'dots' } : {}) }), order, path);
  if (stale && ink === 'ground') draw(drawing, STALE_HATCH, LAST, path);
  drawing.counted.work++;
}

/** Above all shapes. */
const LAST = 1e9;

function draw({ groups }: Drawing, look: Look, order: number, path: string): void {
  if (path === '') return;
  const known = groups.get(look.name);
  if (known === undefined) groups.set(look.name, { look, order, path: [path] });
  else {
    known.path.push(path);
    if (order < known.order) groups.set(look.name, { ...known, order });
  }
}

// ---- signs ----

function drawMarks(drawing: Drawing, taken: TakenPlaces): void {
  const { prepared, seen, hidden, view, at, counted } = drawing;
  const found = prepared.marks.find(seen, 0, MOST_MARKS);
  counted.work += found.looked;
  const places = new Set<string>();
  for (const { shape } of found.items) {
    if (hidden.has(shape.content)) continue;
    const place = { x: at.a * shape.x + at.c * shape.y + at.e, y: at.b * shape.x + at.d * shape.y + at.f };
    const name = [shape.sign, Math.round(place.x / SIGNS_APART), Math.round(place.y / SIGNS_APART)].join();
    if (places.has(name)) continue;
    places.add(name);
    const rank = SIGNS_BY_RANK.indexOf(shape.sign);
    const turn = -(shape.turn ?? 0) - view.turn;
    const share = shape.sign === 'fall' ? shareOfFall(shape, drawing) : 1;
    if (share === 0) continue;
    const path = stemPath(shape.sign, place) + signPath(shape.sign, standOf(shape.sign, place), turn, share);
    draw(drawing, lookOfSign(shape.sign, shape.stale === true), LAST + SIGNS_BY_RANK.length - rank, path);
    taken.take(boxesOfSign(shape.sign, place, turn, share));
  }
}

/** Of their usual size: an arrow that is longer than its area is wide there is half as long, and else left out. */
function shareOfFall({ thing, x, y, turn }: LiveMark, { prepared, view }: Drawing): 1 | 0.5 | 0 {
  const ground = prepared.grounds.get(areaOf(thing, prepared.things));
  if (ground === undefined || turn === undefined || !isInside(ground, { x, y })) return 1;
  const room = 2 * roomAlong(ground, { x, y }, turn) * view.scale;
  return room >= LENGTH_OF_FALL ? 1 : room >= LENGTH_OF_FALL / 2 ? 0.5 : 0;
}

// ---- letters ----

interface Lettered {
  readonly pieces: readonly PathEntry[];
  readonly paths: readonly PathEntry[];
  readonly onGround: Units['onGround'];
}

function lettersOf(drawing: Drawing, taken: TakenPlaces, { pieces, paths, onGround }: Lettered): Letters[] {
  const lines = linesIn(drawing, paths);
  const placed: Letters[] = [];
  const place = (...ways: readonly Letters[]): void => {
    if (placed.length >= MOST_LETTERS) return;
    drawing.counted.work += ways.length;
    const free = ways.map(letters => ({ letters, boxes: boxesOf(letters) })).filter(({ boxes }) => taken.isFree(boxes));
    const inside = free.filter(({ boxes }) => boxes.every(box => isInView(box, drawing.size)));
    // Cut off is worse than crossed by a line.
    const fit = inside.length > 0 ? inside : free;
    const chosen = fit.find(({ boxes }) => lines.isFree(boxes)) ?? fit[0];
    if (chosen === undefined) return;
    taken.take(chosen.boxes);
    placed.push(chosen.letters);
  };
  for (const { shape, bounds } of paths) {
    if (shape.stale && shape.ink === 'ground' && !drawing.hidden.has(shape.content))
      place(beforeError(shape.thing, bounds, drawing));
  }
  for (const text of textsIn(drawing)) {
    const letters = lettersFor(text, drawing);
    if (letters !== undefined)
      place(...waysOf(letters, text.content, text.content === 'things' && text.room !== undefined));
  }
  for (const entry of paths) {
    if (
      entry.shape.ink === 'ground' &&
      !entry.shape.stale &&
      onGround.has(areaOf(entry.shape.thing, drawing.prepared.things))
    )
      place(...tooSmallIn(entry, drawing));
  }
  if (drawing.hidden.has('cut-numbers')) return placed;
  for (const entry of pieces) {
    const letters = numberIn(entry, drawing);
    if (letters !== undefined) place(letters);
  }
  return placed;
}

/** Squares along lines, pixels, and the most of them in a frame. */
const LINE_BOX = 5;
const MOST_LINE_BOXES = 6_000;

/** Where lines run that are better not written over. */
function linesIn({ at, size, hidden, counted }: Drawing, paths: readonly PathEntry[]): TakenPlaces {
  const lines = new TakenPlaces();
  let left = MOST_LINE_BOXES;
  for (const { shape, loops } of paths) {
    if (hidden.has(shape.content) || (shape.content !== 'edges' && (shape.content !== 'things' || shape.closed)))
      continue;
    for (const loop of loops) {
      const count = loop.length / 2;
      for (let side = 0; side < (shape.closed ? count : count - 1) && left > 0; side++) {
        const next = (side + 1) % count;
        const on = (index: number): Place => ({
          x: at.a * loop[2 * index]! + at.c * loop[2 * index + 1]! + at.e,
          y: at.b * loop[2 * index]! + at.d * loop[2 * index + 1]! + at.f
        });
        const some = placesAlong(on(side), on(next), LINE_BOX, size).slice(0, left);
        lines.take(some.map(place => boxAbout(place, LINE_BOX / 2)));
        left -= some.length + 1;
      }
    }
  }
  counted.work += MOST_LINE_BOXES - left;
  return lines;
}

/** Those of the lowest rank first: they take the room. Where there are more than can be tried, those alone. */
function textsIn({ prepared, seen, hidden, counted }: Drawing): readonly LiveText[] {
  const found = prepared.texts.find(seen, 0, MOST_TRIED);
  counted.work += found.looked;
  const some = found.leftOut
    ? prepared.textsByRank.slice(0, MOST_TRIED)
    : [...found.items].sort((one, other) => one.rank - other.rank);
  return some.filter(({ content }) => !hidden.has(content));
}

function lettersFor(text: LiveText, { at, seen, view }: Drawing): Letters | undefined {
  if (text.x < seen[0] || text.x > seen[2] || text.y < seen[1] || text.y > seen[3]) return undefined;
  const letters: Letters = {
    text: text.text,
    x: at.a * text.x + at.c * text.y + at.e,
    y: at.b * text.x + at.d * text.y + at.f,
    size: LETTER_SIZE,
    ...upright(-text.turn - view.turn, text.anchor),
    bold: isBold(text.ink),
    thing: text.thing
  };
  return text.room !== undefined && widthOf(letters) > text.room * view.scale ? undefined : letters;
}

/** Below the name of the area. */
function beforeError(thing: string, bounds: Bounds, { at, asBefore }: Drawing): Letters {
  const [x, y] = [(bounds[0] + bounds[2]) / 2, (bounds[1] + bounds[3]) / 2];
  return {
    text: asBefore,
    x: at.a * x + at.c * y + at.e,
    y: at.b * x + at.d * y + at.f + 1.4 * LETTER_SIZE,
    size: LETTER_SIZE,
    turn: 0,
    anchor: 'middle',
    bold: true,
    thing
  };
}

/** Below the name of the area, else about it, where all of it lies on the area. */
function tooSmallIn(
  { shape, loops, bounds }: PathEntry,
  { at, view, size, prepared, unitsTooSmall }: Drawing
): Letters[] {
  if (unitsTooSmall === undefined) return [];
  const named = prepared.shapesOf.get(shape.thing)?.find(one => one.kind === 'text' && one.content === 'names');
  const { x, y } = named?.kind === 'text' ? named : { x: (bounds[0] + bounds[2]) / 2, y: (bounds[1] + bounds[3]) / 2 };
  return [1.4, -1.4, 0].flatMap(down => {
    const letters: Letters = {
      text: unitsTooSmall,
      x: at.a * x + at.c * y + at.e,
      y: at.b * x + at.d * y + at.f + down * LETTER_SIZE,
      size: LETTER_SIZE,
      turn: 0,
      anchor: 'middle',
      bold: false,
      thing: shape.thing
    };
    const isOnArea = boxesOf(letters).every(([left, top, right, bottom]) =>
      [left, (left + right) / 2, right].every(x =>
        [top, bottom].every(y => isInside(loops, toGround(view, size, { x, y })))
      )
    );
    return isOnArea ? [letters] : [];
  });
}

function numberIn({ shape }: PathEntry, { at, view, prepared }: Drawing): Letters | undefined {
  const { numbered } = shape;
  if (numbered === undefined) return undefined;
  const size = Math.min(numbered.size * view.scale, LETTER_SIZE);
  const text = prepared.things.get(shape.thing)?.number;
  if (size < SMALLEST_LETTERS || text === undefined) return undefined;
  const { x, y, turn } = numbered;
  return {
    text,
    x: at.a * x + at.c * y + at.e,
    y: at.b * x + at.d * y + at.f,
    size: tenth(size),
    ...upright(-turn - view.turn, 'middle'),
    bold: true,
    thing: shape.thing
  };
}
