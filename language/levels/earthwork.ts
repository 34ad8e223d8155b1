import { apart, type Bounds, boundsOf } from '../geometry/bounds.ts';
import { around, type Loop, type Path, pathOf, pathsArea, type Point, type Side } from '../geometry/index.ts';
import { cutToLeft } from '../geometry/line-clip.ts';
import { boxRound } from '../geometry/path-clip.ts';
import { about, depthOver } from './depth-over.ts';
import { added, type Depth, Extremes, NOTHING, type Sums } from './dig-tally.ts';
import type { GroundPart, GroundSurface } from './ground.ts';
import { type NumericPart, numericSums } from './numeric-dig.ts';
import { planarSums } from './planar-dig.ts';
import { NO_SEAMS, partedByCircles, partedByLines, seamsOf } from './seams.ts';
import type { Surface } from './surface.ts';
import { twistedSums } from './twisted-dig.ts';

/** What is dug, and to where. Metres. */
export interface Dig {
  /** Outlines that do not cross: outer ones anticlockwise, holes clockwise. */
  readonly region: readonly Loop[];
  readonly ground: GroundSurface;
  readonly surface: Surface;
  /** From the surface down to the underside of the construction, at least nought. */
  readonly depth: number;
  /** Thickness of the topsoil, which is stripped everywhere; nought when there is none. */
  readonly strip: number;
}

/** What a dig comes to. Areas in square metres, volumes in cubic metres as they lie. */
export interface Earthwork {
  readonly area: number;
  /** Dug out: down to the underside, and nowhere less than the topsoil. */
  readonly cut: number;
  /** Made up between the stripped ground and the underside. */
  readonly fill: number;
  /** Area beyond the spots that the ground was taken from. */
  readonly beyond: number;
  /** Where the underside lies deepest below the ground, and least deep; undefined when there is no area. */
  readonly deepest: Depth | undefined;
  readonly shallowest: Depth | undefined;
  /** Where the underside does not get under the topsoil: how much area, and at most how far it falls short. */
  readonly notThrough: { readonly area: number; readonly most: number };
  /** Cubic metres by which cut and fill may be out, by estimate: nought where they are exact but for rounding. */
  readonly error: number;
  /** Triangles that were sampled where the volume is not exact: a measure of the work. */
  readonly triangles: number;
}

/** In metres: how far the box round a region is widened, so that no cell ends on the region's edge. */
const MARGIN = 1;

/**
 * Cut and fill between the ground and the underside of what is built. Exact but for rounding on planes and folds, arcs too,
 * and on twisted parallelograms with straight sides (arcs there to about 1e-9 of the volume). On other surfaces right to
 * a micrometre of depth over the area, unless the error told is greater.
 */
export function cutAndFill({ region, ground, surface, depth, strip }: Dig): Earthwork {
  const box = region.map(boundsOf).reduce(around, NO_BOX);
  if (!(box.right > box.left)) return NO_EARTHWORK;
  const origin = { x: (box.left + box.right) / 2, y: (box.bottom + box.top) / 2 };
  const local = (loop: Loop): Loop => loop.map(side => movedSide(side, origin));
  const seams = surface.kind === 'along' ? seamsOf(surface) : NO_SEAMS;
  const regions = partedByCircles(region, seams.circles).map(loops => loops.map(loop => pathOf(local(loop))));
  const lines = seams.lines.map(([from, to]) => [about(origin, from), about(origin, to)] as const);
  const extremes = new Extremes(region.map(local));
  const sampled: NumericPart[] = [];
  let sums = NOTHING;
  let beyond = 0;
  for (const part of ground.partsWithin(widened(box))) {
    const within = regions.map(paths => clipped(paths, part, origin)).filter(paths => paths.length > 0);
    if (part.beyond && within.flat(2).some(({ x0, y0 }) => ground.beyond({ x: x0 + origin.x, y: y0 + origin.y }))) {
      beyond += pathsArea(within.flat());
    }
    const smooth = within.flatMap(paths => partedByLines(paths, lines));
    for (const { paths, over } of smooth.flatMap(paths =>
      depthOver(paths, part.slope, surface, depth - strip, origin)
    )) {
      if (over.kind === 'even') sums = added(sums, planarSums(paths, over.depth, extremes));
      else if (over.kind === 'twisted') sums = added(sums, twistedSums(paths, over.depth, extremes));
      else sampled.push({ paths, depthOf: over.depthOf });
    }
  }
  const numeric = numericSums(sampled, extremes);
  return {
    ...earthworkFrom(added(sums, numeric.sums), extremes, strip, origin),
    beyond,
    error: numeric.error,
    triangles: numeric.triangles
  };
}

function earthworkFrom(
  { area, net, deeper, shallowArea }: Sums,
  { deepest, shallowest }: Extremes,
  strip: number,
  origin: Point
): Omit<Earthwork, 'beyond' | 'error' | 'triangles'> {
  // Rounding leaves crumbs of what is nowhere.
  const least = shallowest?.depth ?? 0;
  const toGround = (extreme: Depth | undefined): Depth | undefined =>
    extreme && { depth: extreme.depth + strip, at: { x: extreme.at.x + origin.x, y: extreme.at.y + origin.y } };
  return {
    area,
    cut: strip * area + Math.max(0, deeper),
    fill: least < 0 ? Math.max(0, deeper - net) : 0,
    deepest: toGround(deepest),
    shallowest: toGround(shallowest),
    notThrough: least < 0 ? { area: shallowArea, most: -least } : NOWHERE
  };
}

const NO_BOX: Bounds = { left: Infinity, right: -Infinity, bottom: Infinity, top: -Infinity };

const NOWHERE = { area: 0, most: 0 };

const NO_EARTHWORK: Earthwork = {
  ...{ area: 0, cut: 0, fill: 0, beyond: 0, deepest: undefined, shallowest: undefined },
  ...{ notThrough: NOWHERE, error: 0, triangles: 0 }
};

function widened({ left, right, bottom, top }: Bounds): Bounds {
  return { left: left - MARGIN, right: right + MARGIN, bottom: bottom - MARGIN, top: top + MARGIN };
}

/** A side about a local origin: far from the origin of the plan products would lose digits. */
function movedSide({ from, to, arc }: Side, origin: Point): Side {
  const ends = { from: about(origin, from), to: about(origin, to) };
  return arc ? { ...ends, arc: { ...arc, centre: about(origin, arc.centre) } } : ends;
}

function clipped(paths: readonly Path[], { corners }: GroundPart, origin: Point): Path[] {
  const local = corners.map(corner => about(origin, corner));
  const box = boxOf(local);
  let left = paths.filter(path => !apart(boxRound([path]), box, 0));
  for (const [index, from] of local.entries()) {
    const to = local[(index + 1) % local.length]!;
    if (left.length === 0) break;
    if (from.x !== to.x || from.y !== to.y) left = cutToLeft(left, from, to);
  }
  return left;
}

function boxOf(corners: readonly Point[]): Bounds {
  const xs = corners.map(({ x }) => x);
  const ys = corners.map(({ y }) => y);
  return { left: Math.min(...xs), right: Math.max(...xs), bottom: Math.min(...ys), top: Math.max(...ys) };
}
