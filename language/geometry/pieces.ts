import type { Bounds } from './bounds.ts';
import { crossedOddly, runsOf } from './level-line.ts';
import { loopOfPath } from './loop-of-path.ts';
import { alongRim, type Edge, type Path, pathsArea, RIM_TOLERANCE, straightEdge } from './path-clip.ts';
import type { Point } from './shapes.ts';
import { narrowestWidth } from './width.ts';

/** What of paths hangs together within a box; area in square metres, without its holes. */
export interface PathPiece {
  readonly rim: Path;
  readonly holes: readonly Path[];
  readonly area: number;
}

/** Points looked up on an arc when the width of a piece is measured. */
const ARC_LOOK_UPS = 8;

/** The pieces, apart from each other, that paths cut to a box (a unit) and not empty leave of it; the largest first. */
export function piecesOf(paths: readonly Path[], box: Bounds): PathPiece[] {
  const chains: Edge[][] = [];
  const rims: Path[] = [];
  const holes: Path[] = [];
  for (const path of paths) {
    const firstOnRim = path.findIndex(edge => alongRim(edge, box));
    if (firstOnRim >= 0) chains.push(...chainsOf([...path.slice(firstOnRim), ...path.slice(0, firstOnRim)], box));
    else if (pathsArea([path]) > 0) rims.push(path);
    else holes.push(path);
  }
  if (chains.length > 0) rims.push(...joinedAlongRim(chains, box));
  else if (rims.length === 0) rims.push(rimOf(box));
  const pieces = rims
    .map(rim => ({ rim, holes: [] as Path[], area: pathsArea([rim]) }))
    .sort((a, b) => b.area - a.area);
  for (const hole of holes) {
    const around = pieces.find(({ rim }) => pieces.length === 1 || liesIn(hole, rim));
    if (around === undefined) continue;
    around.holes.push(hole);
    around.area += pathsArea([hole]);
  }
  return pieces;
}

/** Whether a hole, which never crosses the rim of a piece, lies in it. */
function liesIn(hole: Path, rim: Path): boolean {
  const [edge] = hole;
  return edge !== undefined && crossedOddly(runsOf([loopOfPath(rim)]), { x: edge.x0, y: edge.y0 });
}

/** Runs of edges that cross the box from rim to rim. */
function chainsOf(path: Path, box: Bounds): Edge[][] {
  const chains: Edge[][] = [];
  let chain: Edge[] = [];
  for (const edge of path) {
    if (!alongRim(edge, box)) chain.push(edge);
    else if (chain.length > 0) {
      chains.push(chain);
      chain = [];
    }
  }
  if (chain.length > 0) chains.push(chain);
  return chains;
}

/** Closes chains to pieces: from the end of each anticlockwise along the rim to the nearest start. */
function joinedAlongRim(chains: readonly Edge[][], box: Bounds): Path[] {
  const around = 2 * (box.right - box.left + box.top - box.bottom);
  const open = chains.map(edges => {
    const first = edges[0];
    const last = edges[edges.length - 1];
    return {
      edges,
      start: first ? rimPlace(first.x0, first.y0, box) : 0,
      end: last ? rimPlace(last.x1, last.y1, box) : 0
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
      rim.push(...rimEdges(from, way, box));
      chain = next;
    }
    if (rim.length > 0) rims.push(rim);
  }
  return rims;
}

/** Metres along the rim, anticlockwise from the lower left corner, to a point on it. */
function rimPlace(x: number, y: number, { left, right, bottom, top }: Bounds): number {
  const length = right - left;
  const width = top - bottom;
  const places = [
    { off: Math.abs(y - bottom), at: x - left },
    { off: Math.abs(x - right), at: length + y - bottom },
    { off: Math.abs(y - top), at: length + width + right - x },
    { off: Math.abs(x - left), at: 2 * length + width + top - y }
  ];
  return places.reduce((best, place) => (place.off < best.off ? place : best)).at;
}

function rimPoint(at: number, { left, right, bottom, top }: Bounds): [number, number] {
  const length = right - left;
  const width = top - bottom;
  const place = at % (2 * (length + width));
  if (place < length) return [left + place, bottom];
  if (place < length + width) return [right, bottom + place - length];
  if (place < 2 * length + width) return [right - (place - length - width), top];
  return [left, top - (place - 2 * length - width)];
}

function rimEdges(from: number, way: number, box: Bounds): Edge[] {
  const length = box.right - box.left;
  const width = box.top - box.bottom;
  const around = 2 * (length + width);
  const corners = [length, length + width, 2 * length + width, around].flatMap(corner => [corner, corner + around]);
  const stops = corners.filter(corner => corner > from && corner < from + way).sort((a, b) => a - b);
  const edges: Edge[] = [];
  let [x0, y0] = rimPoint(from, box);
  for (const stop of [...stops, from + way]) {
    const [x1, y1] = rimPoint(stop, box);
    edges.push(straightEdge(x0, y0, x1, y1));
    [x0, y0] = [x1, y1];
  }
  return edges;
}

function rimOf({ left, right, bottom, top }: Bounds): Path {
  return [
    straightEdge(left, bottom, right, bottom),
    straightEdge(right, bottom, right, top),
    straightEdge(right, top, left, top),
    straightEdge(left, top, left, bottom)
  ];
}

/** Whether a piece is no wider than so many metres, measured across its narrowest direction. */
export function isNoWiderThan(rim: Path, area: number, width: number): boolean {
  const found = rim.flatMap(pointsOn);
  const [first] = found;
  if (!first) return true;
  // A piece is at least as wide as its area over its longest extent, which is at most twice that from any corner.
  const extent = 2 * Math.max(...found.map(({ x, y }) => Math.hypot(x - first.x, y - first.y)));
  return area <= width * extent && narrowestWidth(found) <= width;
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
