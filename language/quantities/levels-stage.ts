import { distance, inside, type Loop, type Point, pointAlong, sideLength, middleOf } from '../geometry/index.ts';
import type { LevelSheetWords } from '../job/heights.ts';
import type { Layer, NamedPoint } from '../job/job.ts';
import { type Expression, given, leaf, measured, multiply, plainNumber, subtract, sum } from './arithmetic.ts';
import { zOf } from '../job/heights.ts';
import { type AreaHeights, areaHeights } from './area-heights.ts';
import { pointAt } from '../setting-out/stationed-line.ts';
import type { NumbersOf } from './catalogue.ts';
import type { Workings } from './contract.ts';
import type { LayeredArea } from './layers-stage.ts';
import { AT_CORNER, namedCorners } from './named-corners.ts';
import { Book, type Page } from './page.ts';

/** Heights at one place, m above the datum. */
export type LevelQuantities = NumbersOf<'level'> & {
  /** A point, `corner 3`, a box, or a side. */
  readonly at: string;
  /** Along the side, m. */
  readonly along?: number;
  readonly x: number;
  readonly y: number;
  /** Tops of the compaction layers, from the bottom up, the sub-base's first. */
  readonly compactionTops: readonly number[];
  /** The ground there is only as high as at the nearest place where it was measured. */
  readonly beyond?: true;
};

/** A place to set up a point outside the dig, on the line of a side. */
export interface OffsetPoint {
  /** `A to B, beyond B`. */
  readonly at: string;
  readonly x: number;
  readonly y: number;
  /** From the corner, m. */
  readonly fromCorner: number;
  /** Height of the finish there, were it prolonged, m. */
  readonly finish: number;
  /** Height of the string there, m, where one is set. */
  readonly string?: number;
}

export interface LevelsInputs {
  readonly area: LayeredArea;
  readonly names: readonly string[];
  readonly points: readonly Pick<NamedPoint, 'name' | 'x' | 'y'>[];
  readonly sheet: LevelSheetWords;
  /** How far the dig reaches past each side, m. */
  readonly overhangs: readonly number[];
}

export interface LevelsNumbers {
  readonly levels: readonly LevelQuantities[];
  readonly offsetPoints: readonly OffsetPoint[];
  /** Places beyond the limit. */
  readonly leftOut: number;
  readonly workings: Workings;
}

interface Spot {
  readonly at: string;
  readonly along?: number;
  readonly point: Point;
}

/** More places than a sheet can hold help nobody. */
const MOST_LEVELS = 400;

/** Heights at the corners of an area, at its points and boxes, and along its sides; none where its finish is not said. */
export function levelsStage(inputs: LevelsInputs): LevelsNumbers {
  const book = new Book();
  const heights = areaHeights(inputs.area);
  if (heights === undefined) return { levels: [], offsetPoints: [], leftOut: 0, workings: {} };
  const all = spotsOf(inputs);
  const spots = all.slice(0, MOST_LEVELS);
  const levels = spots.map((spot, index) =>
    levelAt(inputs, heights, spot, book.page('level', `/levels/${index}`), index)
  );
  return {
    levels,
    offsetPoints: offsetPoints(inputs, heights),
    leftOut: all.length - spots.length,
    workings: book.workings
  };
}

function spotsOf({ area, names, points, sheet }: LevelsInputs): Spot[] {
  const corners = namedCorners(area.outline, points).map(({ name, at }): Spot => ({ at: name, point: at }));
  // A rounded corner keeps its point for heights, though it lies outside the paving.
  const cornerNames = new Set(names.flatMap(name => name.split(' to ')));
  const isCorner = (point: Point): boolean => corners.some(corner => distance(corner.point, point) <= AT_CORNER);
  const within = points
    .filter(point => !isCorner(point) && (cornerNames.has(point.name) || inside(area.outline, point)))
    .map(({ name, x, y }): Spot => ({ at: name, point: { x, y } }))
    // By name, not by where the text has them: a point moved in the text changes nothing.
    .sort((one, other) => (one.at < other.at ? -1 : 1));
  const boxes = area.keptOut.flatMap(box => [{ at: box.name, point: middleOf(box.outline) }, ...frameCorners(box)]);
  const soft = area.softSpots.map(({ outline }): Spot => ({ at: 'soft spot', point: middleOf(outline) }));
  return distinct([
    ...corners,
    ...within,
    ...boxes,
    ...soft,
    ...alongLine(area),
    ...alongSides(area.outline, names, sheet)
  ]);
}

function distinct(spots: readonly Spot[]): Spot[] {
  return spots.filter(
    ({ point }, index) => !spots.slice(0, index).some(other => distance(other.point, point) <= AT_CORNER)
  );
}

function alongSides(outline: Loop, names: readonly string[], { every }: LevelSheetWords): Spot[] {
  const step = every?.value;
  if (step === undefined || step <= 0) return [];
  let before = 0;
  return outline.flatMap((side, index): Spot[] => {
    // The parts of a rounded or measured side share its name: one distance runs through them all.
    if (names[index] !== names[index - 1]) before = 0;
    const length = sideLength(side);
    const first = Math.floor(before / step + AT_CORNER) + 1;
    const count = Math.min(MOST_LEVELS, Math.ceil((before + length) / step - AT_CORNER) - first);
    const spots = Array.from({ length: Math.max(0, count) }, (_, at): Spot => {
      const station = (first + at) * step;
      return { at: names[index]!, along: station, point: pointAlong(side, (station - before) / length) };
    });
    before += length;
    return spots;
  });
}

/** The corners of a frame that is set to a finish which falls: a middle alone does not set it. */
function frameCorners({ name, kind, outline }: LayeredArea['keptOut'][number]): Spot[] {
  if (kind !== 'box' || outline.length !== 4 || outline.some(({ arc }) => arc !== undefined)) return [];
  return outline.map(({ from }, index) => ({ at: `${name}, corner ${index + 1}`, point: from }));
}

/** Where the finish follows a line: the places on it whose heights are given, such as the foot and the top of a ramp. */
function alongLine({ finish, outline }: LayeredArea): Spot[] {
  const surface = finish?.surface;
  if (surface?.kind !== 'along') return [];
  return surface.stations
    .map(({ at }): Spot => ({ at: 'along its line', along: at, point: pointAt(surface.line, at, 0) }))
    .filter(({ point }) => inside(outline, point));
}

function levelAt(
  { area, sheet }: LevelsInputs,
  heights: AreaHeights,
  { at, along, point }: Spot,
  page: Page<'level'>,
  index: number
): LevelQuantities {
  const there = heights.at(point);
  const beyond = heights.isMeasured && (heights.ground?.beyond(point) ?? false);
  if (heights.ground !== undefined) page.repeat('ground', there.ground);
  page.repeat('finish', there.finish);
  const finish = leaf('finish', there.finish, 'm', { pointer: `/levels/${index}/finish` });
  const bed = area.layers.find(({ role }) => role === 'bed');
  const stone = area.layers.filter(({ role }) => role !== 'bed');
  const unit = area.paving && given('unit thickness', area.paving.units[0].thickness, 'm');
  const bedTop = unit === undefined ? multiply(plainNumber(1), finish) : subtract(finish, unit);
  if (bed !== undefined && unit !== undefined) page.put('bedTop', bedTop);
  const settles = bed?.settles && given('settling of the bed', bed.settles, 'm');
  if (unit !== undefined)
    page.put('asLaid', settles === undefined ? multiply(plainNumber(1), finish) : sum(finish, settles));
  const thickness = bed && given('bed thickness', bed.thickness, 'm');
  const baseTop = thickness === undefined ? bedTop : subtract(bedTop, thickness);
  if (thickness !== undefined) page.put('screed', settles === undefined ? subtract(bedTop) : sum(bedTop, settles));
  if (stone.length > 0) page.put('baseTop', baseTop);
  const layers = stone.map(layer => given(`${layer.role} thickness`, layer.thickness, 'm'));
  const underside = layers.length === 0 ? baseTop : subtract(baseTop, ...layers);
  const deeper = there.underside - there.digBottom;
  const extra = measured('deeper for topsoil or a soft spot', deeper, 'm', area.key);
  page.put('digBottom', deeper > 0 ? subtract(underside, extra) : underside);
  if (sheet.string !== undefined) page.put('belowString', stringAbove(sheet.string, finish));
  return {
    at,
    ...(along === undefined ? {} : { along }),
    x: point.x,
    y: point.y,
    ...page.numbers,
    compactionTops: compactionTops(stone, there.underside),
    ...(beyond ? { beyond: true } : {})
  };
}

function stringAbove(string: NonNullable<LevelSheetWords['string']>, finish: Expression): Expression {
  if ('above' in string) return multiply(plainNumber(1), given('string above the finish', string.above, 'm'));
  const level = leaf('height of the string', zOf(string.level), 'm', { key: string.level.above.key ?? 'level-sheet' });
  return subtract(level, finish);
}

/** Each layer of stone in equal parts no thicker than a plate compacts, from the bottom up. */
function compactionTops(stone: readonly Layer[], underside: number): number[] {
  const tops: number[] = [];
  let top = underside;
  for (const { thickness, inPartsOf } of [...stone].reverse()) {
    const parts = inPartsOf === undefined ? 1 : Math.max(1, Math.ceil(thickness.value / inPartsOf.value - 1e-6));
    for (let part = 1; part <= Math.min(parts, MOST_PARTS); part++) tops.push(top + (thickness.value * part) / parts);
    top += thickness.value;
  }
  return tops;
}

/** No base is compacted in more parts. */
const MOST_PARTS = 40;

/** On the line of each straight side, prolonged past the dig at both ends, but into no wall. */
function offsetPoints({ area, names, sheet, overhangs }: LevelsInputs, heights: AreaHeights): OffsetPoint[] {
  const out = sheet.offsetPoints?.value;
  if (out === undefined) return [];
  const { outline } = area;
  return outline.flatMap((first, index): OffsetPoint[] => {
    // The parts of a measured edge share a name: one line runs from end to end.
    if (index > 0 && names[index - 1] === names[index]) return [];
    const parts = outline.slice(index).findIndex((_, part) => names[index + part] !== names[index]);
    const last = parts < 0 ? outline.length - 1 : index + parts - 1;
    const side = { from: first.from, to: outline[last]!.to };
    const length = sideLength(side);
    if (outline.slice(index, last + 1).some(({ arc }) => arc !== undefined) || length <= AT_CORNER) return [];
    const [before, after] = [outline.length - 1 + index, last + 1].map(at => overhangs[at % outline.length] ?? 0);
    const name = names[index]!;
    const place = (corner: Point, other: Point, past: number, end: string): OffsetPoint => {
      const fromCorner = past + out;
      const share = fromCorner / length;
      const point = { x: corner.x + (corner.x - other.x) * share, y: corner.y + (corner.y - other.y) * share };
      const { finish } = heights.at(point);
      return { at: `${name}, beyond its ${end}`, ...point, fromCorner, finish, ...stringAt(sheet, finish) };
    };
    const isFree = (beside: number): boolean => area.edges[beside % outline.length]?.meets?.openGround === true;
    return [
      ...(isFree(outline.length - 1 + index) ? [place(side.from, side.to, before!, 'start')] : []),
      ...(isFree(last + 1) ? [place(side.to, side.from, after!, 'end')] : [])
    ];
  });
}

function stringAt({ string }: LevelSheetWords, finish: number): { string?: number } {
  if (string === undefined) return {};
  return { string: 'above' in string ? finish + string.above.value : zOf(string.level) };
}
