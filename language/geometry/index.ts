export type { Arc, Loop, Point, Region, Side } from './shapes.ts';
export {
  areaOf,
  distance,
  perimeterOf,
  pointAlong,
  radiusOf,
  regionArea,
  reversedLoop,
  sideLength,
  signedAreaOf,
  turnedAbout
} from './outline.ts';
export { distanceToSide } from './contacts.ts';
export { firstMomentOf } from './moment.ts';
export { narrowestWidth, narrowestWidthOf, pointsOn } from './width.ts';
export { type Bounds, boundsOf } from './bounds.ts';
export { circleLoop, cornerLoop, rectangleLoop } from './builders.ts';
export { type Bulge, arcByBow, arcByRadius, arcThrough, roundCorner } from './arcs.ts';
export { isDegenerate, selfCrossing } from './crossing.ts';
export { EDGE_TOLERANCE, inside, loopWithin } from './containment.ts';
export { type Ground, overlapArea, sharedLength, sharedWithAny } from './overlap.ts';
export { baseOut } from './base-out.ts';
export { CUTTING_TOLERANCE, MOST_UNITS } from './unit-grid.ts';
export { type Frame, inFrame, outOfFrame, type UnitGrid } from './grid-frame.ts';
export { columnsOf, coursesOf, cutToColumns, cutToRows } from './courses.ts';
export { cutPaths, filling, type Path, pathOf, pathsArea } from './path-clip.ts';
export { isNoWiderThan, type PathPiece, piecesOf } from './pieces.ts';
export { loopOfPath } from './loop-of-path.ts';
export { jointLength } from './joint-length.ts';
