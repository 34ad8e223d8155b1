import { type Convex, rimOf } from './convex.ts';
import { crossedOddly, runsOf } from './level-line.ts';
import { type Edge, loopOf, type Path, pathsArea, RIM_TOLERANCE, straightEdge } from './path-clip.ts';
import type { Point } from './shapes.ts';
import { narrowestWidth } from './width.ts';

/** A piece cut from a unit; area in square metres, its own holes (clockwise) taken off. */
export interface Piece {
  readonly rim: Path;
  readonly holes: readonly Path[];
  readonly area: number;
}

/** Points looked up on an arc when the width of a piece is measured. */
const ARC_LOOK_UPS = 8;

/** The pieces, apart from each other and largest first, that paths clipped to a unit and not empty leave of it. */
export function piecesOf(paths: readonly Path[], unit: Convex): Piece[] {
  const chains: Path[] = [];
  const rims: Path[] = [];
  const holes: Path[] = [];
  for (const path of paths) {
    const firstOnRim = path.findIndex(edge => unit.isAlongRim(edge));
    const found = firstOnRim < 0 ? [path] : chainsOf([...path.slice(firstOnRim), ...path.slice(0, firstOnRim)], unit);
    for (const chain of found) {
      if (firstOnRim >= 0 && !isClosed(chain)) chains.push(chain);
      else if (pathsArea([chain]) > 0) rims.push(chain);
      else holes.push(chain);
    }
  }
  if (chains.length > 0) rims.push(...joinedAlongRim(chains, unit));
  else if (rims.length === 0) rims.push(rimOf(unit.corners));
  const pieces = rims.map(rim => ({
    rim,
    holes: rims.length === 1 ? holes : holes.filter(hole => isWithin(hole, rim))
  }));
  return pieces
    .map(piece => ({ ...piece, area: pathsArea([piece.rim, ...piece.holes]) }))
    .sort((a, b) => b.area - a.area);
}

/** Whether edges come back to where they set out: they touch the rim in one point only. */
function isClosed(chain: Path): boolean {
  const first = chain[0];
  const last = chain[chain.length - 1];
  return !first || !last || Math.hypot(last.x1 - first.x0, last.y1 - first.y0) < RIM_TOLERANCE;
}

function isWithin(hole: Path, rim: Path): boolean {
  const [first] = hole;
  return first !== undefined && crossedOddly(runsOf([loopOf(rim)]), { x: first.x0, y: first.y0 });
}

/** Runs of edges that cross the unit from rim to rim. */
function chainsOf(path: Path, unit: Convex): Edge[][] {
  const chains: Edge[][] = [];
  let chain: Edge[] = [];
  for (const edge of path) {
    if (!unit.isAlongRim(edge)) chain.push(edge);
    else if (chain.length > 0) {
      chains.push(chain);
      chain = [];
    }
  }
  if (chain.length > 0) chains.push(chain);
  return chains;
}

/** Closes chains to pieces: from the end of each anticlockwise along the rim to the nearest start. */
function joinedAlongRim(chains: readonly Path[], unit: Convex): Path[] {
  const around = unit.perimeter;
  const open = chains.map(edges => {
    const first = edges[0];
    const last = edges[edges.length - 1];
    return {
      edges,
      start: first ? unit.rimPlace(first.x0, first.y0) : 0,
      end: last ? unit.rimPlace(last.x1, last.y1) : 0
    };
  });
  const rims: Path[] = [];
  const left = new Set(open);
  for (const seed of open) {
    const rim: Edge[] = [];
    for (let chain: (typeof open)[number] | undefined = seed; chain && left.delete(chain);) {
      const from: number = chain.end;
      rim.push(...chain.edges);
      let next = seed;
      let way = Infinity;
      for (const other of open) {
        const ahead = (((other.start - from) % around) + around) % around;
        // A start a hair behind is the same place on the rim, not once around.
        const distance = ahead > around - RIM_TOLERANCE ? 0 : ahead;
        if (distance < way && (left.has(other) || other === seed)) [next, way] = [other, distance];
      }
      const last = chain.edges[chain.edges.length - 1];
      const first = next.edges[0];
      if (way > RIM_TOLERANCE && last && first) rim.push(...rimEdges(last, first, from, way, unit));
      chain = next;
    }
    if (rim.length > 0) rims.push(rim);
  }
  return rims;
}

/** Edges along so many metres of the rim, from the last of some edges to the first of others. */
function rimEdges(before: Edge, after: Edge, from: number, way: number, unit: Convex): Edge[] {
  const { corners, cornerPlaces, perimeter } = unit;
  const edges: Edge[] = [];
  let { x1: x, y1: y } = before;
  const goTo = (nextX: number, nextY: number): void => {
    edges.push(straightEdge(x, y, nextX, nextY));
    [x, y] = [nextX, nextY];
  };
  for (const round of [0, perimeter]) {
    for (const [index, place] of cornerPlaces.entries()) {
      const ahead = place + round - from;
      const corner = corners[index];
      if (corner && ahead > RIM_TOLERANCE && ahead < way - RIM_TOLERANCE) goTo(corner.x, corner.y);
    }
  }
  goTo(after.x0, after.y0);
  return edges;
}

/** Whether a piece is no wider than so many metres, measured across its narrowest direction. */
export function isNoWiderThan(piece: Piece, width: number): boolean {
  const found = piece.rim.flatMap(pointsOn);
  const [first] = found;
  if (!first) return true;
  // A piece is at least as wide as its area over its longest extent, which is at most twice that from any corner.
  const extent = 2 * Math.max(...found.map(({ x, y }) => Math.hypot(x - first.x, y - first.y)));
  return piece.area <= width * extent && narrowestWidth(found) <= width;
}

function pointsOn(edge: Edge): Point[] {
  const points = [{ x: edge.x0, y: edge.y0 }];
  if (edge.radius > 0) {
    for (let part = 1; part <= ARC_LOOK_UPS; part++) {
      const angle = edge.start + (edge.turn * part) / (ARC_LOOK_UPS + 1);
      points.push({
        x: edge.centreX + edge.radius * Math.cos(angle),
        y: edge.centreY + edge.radius * Math.sin(angle)
      });
    }
  }
  return points;
}
