import { type Bounds, distance, hullOf, narrowestWidth, type Point } from '../geometry/index.ts';
import { type BreakLine, type BreakLinesCross, type NoSuchSpot, stretchesOf } from './break-lines.ts';
import {
  cellsBeyond,
  chainCells,
  cornersWithin,
  type GroundCell,
  levelCell,
  onSlope,
  rimEdges,
  type Slope,
  triangleCell,
  withinCell
} from './ground-cells.ts';
import { halfPlane, leftOf } from './half-plane.ts';
import { firstAtPlace, SAME_SPOT, type Spot, type TwoHeights } from './spots.ts';
import { trianglesBetween } from './triangles.ts';

/** The ground as spot heights give it: planes between them, and beyond them as high as the nearest place between them. */
export interface GroundSurface {
  readonly kind: 'ground';
  /** Height in metres. */
  heightAt(at: Point): number;
  /** Whether a place lies beyond the spots, by more than a micrometre: outside their hull. */
  beyond(at: Point): boolean;
  /** The parts within a box, each convex and one plane; together they fill it. Corners run anticlockwise. */
  partsWithin(box: Bounds): GroundPart[];
}

export interface GroundPart {
  readonly corners: readonly Point[];
  readonly slope: Slope;
  readonly beyond: boolean;
}

/** Why spots and break lines give no ground; spots and lines by their numbers. */
export type GroundFault =
  | { readonly kind: 'no-spots' }
  | TwoHeights
  | NoSuchSpot
  | BreakLinesCross
  /** The spots lie so nearly in one line, for its length, that no triangles can be told between them. */
  | { readonly kind: 'spots-too-nearly-in-line' };

/**
 * The ground through spot heights: planes over triangles, whose edges follow the break lines. Of four spots on one circle,
 * as at the corners of a rectangle, the diagonal that does not start at the spot named first is the edge. Spots in one
 * line give the height of the nearest place on it; one spot gives level ground.
 */
export function groundThrough(
  spots: readonly Spot[],
  breakLines: readonly BreakLine[] = []
): GroundSurface | GroundFault {
  const places = firstAtPlace(spots);
  if ('kind' in places) return places;
  const stretches = stretchesOf(breakLines, spots, places);
  if ('kind' in stretches) return stretches;
  const numbers = [...new Set(places)];
  const first = spots[numbers[0] ?? 0];
  if (!first) return { kind: 'no-spots' };
  if (numbers.length === 1) return surfaceOf([levelCell(first)], at => distanceTo([first], at) > SAME_SPOT);
  const apart = numbers.map(number => spots[number]!);
  if (narrowestWidth(apart) <= SAME_SPOT) {
    const chain = inOrderAlong(apart);
    return surfaceOf(chainCells(chain), at => distanceTo(chain, at) > SAME_SPOT);
  }
  const triangles = trianglesBetween(spots, numbers, stretches);
  if (!triangles) return { kind: 'spots-too-nearly-in-line' };
  const rim = rimEdges(triangles, spots);
  const rimSides = rim.map(([from, to]) => halfPlane(from, to));
  const cells = [...triangles.map(triangle => triangleCell(triangle, spots)), ...cellsBeyond(rim)];
  return surfaceOf(cells, at => rimSides.some(side => leftOf(side, at) < -SAME_SPOT));
}

function surfaceOf(cells: readonly GroundCell[], beyond: (at: Point) => boolean): GroundSurface {
  return {
    kind: 'ground',
    heightAt: at => {
      const cell = cells.reduce((best, cell) => (withinCell(cell, at) > withinCell(best, at) ? cell : best));
      return onSlope(cell.slope, at);
    },
    beyond,
    partsWithin: box =>
      cells.flatMap(cell => {
        const corners = cornersWithin(cell, box);
        return corners.length > 0 ? [{ corners, slope: cell.slope, beyond: cell.beyond }] : [];
      })
  };
}

/** Spots in one line, from one end to the other. */
function inOrderAlong(spots: readonly Spot[]): Spot[] {
  const ends = hullOf(spots);
  const [from, to] = ends.reduce<[Point, Point]>(
    (longest, a) =>
      ends.reduce(([start, end], b) => (distance(a, b) > distance(start, end) ? [a, b] : [start, end]), longest),
    [spots[0]!, spots[0]!]
  );
  const along = ({ x, y }: Point): number => (x - from.x) * (to.x - from.x) + (y - from.y) * (to.y - from.y);
  return [...spots].sort((a, b) => along(a) - along(b));
}

/** Metres to a line through points in order. */
function distanceTo(chain: readonly Point[], { x, y }: Point): number {
  return chain.reduce((least, from, index) => {
    const to = chain[index + 1] ?? from;
    const [dx, dy] = [to.x - from.x, to.y - from.y];
    const square = dx * dx + dy * dy;
    const share = square > 0 ? Math.min(1, Math.max(0, ((x - from.x) * dx + (y - from.y) * dy) / square)) : 0;
    return Math.min(least, Math.hypot(x - from.x - share * dx, y - from.y - share * dy));
  }, Infinity);
}
