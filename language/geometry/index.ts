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
export { firstMomentOf, middleOf } from './moment.ts';
export { hullOf, narrowestWidth, narrowestWidthOf, pointsOn } from './width.ts';
export { around, type Bounds, boundsOf } from './bounds.ts';
export { circleLoop, cornerLoop, rectangleLoop } from './builders.ts';
export { type Bulge, arcByBow, arcByRadius, arcThrough, roundCorner } from './arcs.ts';
export { isDegenerate, selfCrossing } from './crossing.ts';
export { EDGE_TOLERANCE, inside, loopWithin } from './containment.ts';
export { type Ground, overlapArea, sharedLength, sharedWithAny } from './overlap.ts';
export { sharedRun } from './shared-run.ts';
export { baseOut } from './base-out.ts';
export { CUTTING_TOLERANCE } from './cut-unit.ts';
export { MOST_UNITS, unitsAbout } from './unit-grid.ts';
export { type CourseFrame, inFrame, outOfFrame, type UnitGrid } from './grid-frame.ts';
export { columnsOf, coursesOf } from './courses.ts';
export { boxShape } from './convex.ts';
export { cutPaths, filling, type Path, pathOf, pathsArea } from './path-clip.ts';
export { jointLength } from './joint-length.ts';
