import { circlesMeet, lineMeetsCircle, shareOfTurn } from '../../geometry/contacts.ts';
import { distance, pointAlong, radiusOf } from '../../geometry/outline.ts';
import type { Arc, Loop, Point, Side } from '../../geometry/shapes.ts';

/** Directions from the centre over which something lies, radians; the end may be past a full turn. */
export interface Sector {
  readonly from: number;
  readonly to: number;
}

const CENTRE = { x: 0, y: 0 };

/** In metres: a side that misses a ring by no more counts as met. */
const HAIR = 1e-6;

/** Shares of an arc where it is parted anyhow: about its own centre there is no nearest point to part it at. */
const QUARTERS = [0.25, 0.5, 0.75];

/** The sectors in which sides of outlines run between two circles about the origin, radii in metres. */
export function sectorsBetween(loops: readonly Loop[], inner: number, outer: number): Sector[] {
  const [least, most] = [inner - HAIR, outer + HAIR];
  return loops.flatMap(loop =>
    loop.flatMap(side => {
      const shares = [...partsAt(side, least, most), 1];
      return shares.flatMap((to, index) => {
        const from = index === 0 ? 0 : (shares[index - 1] ?? 0);
        const reach = distance(CENTRE, pointAlong(side, (from + to) / 2));
        return reach >= least && reach <= most ? sectorsOf(side, from, to) : [];
      });
    })
  );
}

/** Shares of a side, in order, at which it meets either circle or turns back as seen from the origin. */
function partsAt(side: Side, inner: number, outer: number): number[] {
  const { from, to, arc } = side;
  const shares = arc
    ? [...QUARTERS, ...arcMeets(side, arc, [inner, outer]).map(point => shareOfTurn(side, arc, point))]
    : [inner, outer]
        .flatMap(radius => lineMeetsCircle(from, to, CENTRE, radius, 0))
        .map(point => distance(from, point) / distance(from, to));
  return shares.filter(share => share > 0 && share < 1).sort((a, b) => a - b);
}

function arcMeets(side: Side, arc: Arc, radii: readonly number[]): Point[] {
  const { centre } = arc;
  const radius = radiusOf(side, arc);
  const away = distance(CENTRE, centre);
  if (away < HAIR) return [];
  // Nearest and furthest point: between them the arc turns about the origin by half a turn at most.
  const ends = [-1, 1].map(way => ({
    x: centre.x * (1 + (way * radius) / away),
    y: centre.y * (1 + (way * radius) / away)
  }));
  const tangents =
    away > radius ? circlesMeet(centre, radius, CENTRE, Math.sqrt((away - radius) * (away + radius)), HAIR) : [];
  return [...radii.flatMap(other => circlesMeet(centre, radius, CENTRE, other, 0)), ...ends, ...tangents];
}

/** A part of a side in two halves, each seen under less than half a turn. */
function sectorsOf(side: Side, from: number, to: number): Sector[] {
  const middle = (from + to) / 2;
  return [
    sectorOf(pointAlong(side, from), pointAlong(side, middle)),
    sectorOf(pointAlong(side, middle), pointAlong(side, to))
  ];
}

function sectorOf(one: Point, other: Point): Sector {
  const start = Math.atan2(one.y, one.x);
  const turn = Math.atan2(one.x * other.y - one.y * other.x, one.x * other.x + one.y * other.y);
  return turn < 0 ? { from: start + turn, to: start } : { from: start, to: start + turn };
}
