// An independent library's polygons, for checking ours against. Straight sides only.
import Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js';
import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js';
import BufferOp from 'jsts/org/locationtech/jts/operation/buffer/BufferOp.js';
import BufferParameters from 'jsts/org/locationtech/jts/operation/buffer/BufferParameters.js';
import DistanceOp from 'jsts/org/locationtech/jts/operation/distance/DistanceOp.js';
import OverlayOp from 'jsts/org/locationtech/jts/operation/overlay/OverlayOp.js';
import RelateOp from 'jsts/org/locationtech/jts/operation/relate/RelateOp.js';
import IsValidOp from 'jsts/org/locationtech/jts/operation/valid/IsValidOp.js';
import type { Loop, Point, Region } from '../../language/geometry/index.ts';

export interface Polygon {
  getArea(): number;
  getLength(): number;
}

const factory = new GeometryFactory();

export function polygonOf(region: Region): Polygon {
  return factory.createPolygon(ringOf(region.outer), region.holes.map(ringOf)) as Polygon;
}

function ringOf(loop: Loop): unknown {
  const corners = loop.map(side => new Coordinate(side.from.x, side.from.y));
  return factory.createLinearRing([...corners, corners[0]]);
}

export function isValid(polygon: Polygon): boolean {
  return IsValidOp.isValid(polygon) as boolean;
}

export function covers(outer: Polygon, inner: Polygon): boolean {
  return RelateOp.covers(outer, inner) as boolean;
}

/** How far apart two are at their nearest, in metres; nought when they touch or overlap. */
export function distanceApart(a: Polygon, b: Polygon): number {
  return DistanceOp.distance(a, b) as number;
}

export function sharedArea(a: Polygon, b: Polygon): number {
  return (OverlayOp.intersection(a, b) as Polygon).getArea();
}

/** All of it that at least one of the others covers too. */
export function sharedWithUnion(a: Polygon, others: readonly Polygon[]): number {
  const union = others.reduce((all, other) => OverlayOp.union(all, other) as Polygon);
  return sharedArea(a, union);
}

/** Moved outward all round with mitred corners. */
export function movedOut(polygon: Polygon, distance: number): Polygon {
  const parameters = new BufferParameters(8, BufferParameters.CAP_FLAT, BufferParameters.JOIN_MITRE, 100);
  return BufferOp.bufferOp(polygon, distance, parameters) as Polygon;
}

/** Length of what lies inside a polygon of the line between two points. */
export function lengthWithin(polygon: Polygon, from: Point, to: Point): number {
  const line = factory.createLineString([new Coordinate(from.x, from.y), new Coordinate(to.x, to.y)]);
  return (OverlayOp.intersection(line, polygon) as Polygon).getLength();
}
