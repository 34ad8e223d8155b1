import { areaOf, CUTTING_TOLERANCE, cornerLoop, distance, type Point, turnedAbout } from '../../geometry/index.ts';

/**
 * A unit seen from above in its own frame, face up: its length along x from nought, its width along y from nought. A
 * hexagon lies on a flat side: its length is across corners, its width across flats. Metres.
 */
export interface UnitShape {
  readonly shape: 'rectangle' | 'hexagon';
  readonly length: number;
  readonly width: number;
  /** The side along y = 0 is finished and stays on the outside: no piece of such a unit is turned. */
  readonly finishedEdge?: boolean;
}

/** Corners as one sees them who has the unit before him, face up, its length from left to right. */
export type CornerName = 'left near' | 'right near' | 'right' | 'right far' | 'left far' | 'left';

/** Sides seen alike. The left and right sides of a rectangle are its ends. */
export type SideName = 'near' | 'right near' | 'right' | 'right far' | 'far' | 'left far' | 'left' | 'left near';

export interface UnitCorner extends Point {
  readonly name: CornerName;
}

export interface UnitSide {
  readonly name: SideName;
  readonly from: UnitCorner;
  readonly to: UnitCorner;
}

/** The outline of a unit, anticlockwise from its near side, in its own frame. */
export interface UnitOutline extends UnitShape {
  readonly corners: readonly UnitCorner[];
  readonly sides: readonly UnitSide[];
  readonly centre: Point;
  /** Square metres. */
  readonly area: number;
  /** Turns about its centre, radians anticlockwise, that lay the unit on itself, nought first. */
  readonly turns: readonly number[];
}

/** Turns that may lay a unit on itself: a hexagon's six and a square's four. */
const TURNS = [0, 60, 90, 120, 180, 240, 270, 300].map(degrees => (degrees * Math.PI) / 180);

export function unitOutline(unit: UnitShape): UnitOutline {
  const { corners, sideNames } = unit.shape === 'hexagon' ? hexagon(unit) : rectangle(unit);
  const sides = corners.map((from, index) => {
    return { name: sideNames[index]!, from, to: corners[(index + 1) % corners.length]! };
  });
  const centre = { x: unit.length / 2, y: unit.width / 2 };
  return { ...unit, corners, sides, centre, area: areaOf(cornerLoop(corners)), turns: turnsOf(unit, corners, centre) };
}

function rectangle({ length, width }: UnitShape): { corners: UnitCorner[]; sideNames: SideName[] } {
  return {
    corners: [
      { name: 'left near', x: 0, y: 0 },
      { name: 'right near', x: length, y: 0 },
      { name: 'right far', x: length, y: width },
      { name: 'left far', x: 0, y: width }
    ],
    sideNames: ['near', 'right', 'far', 'left']
  };
}

function hexagon({ length, width }: UnitShape): { corners: UnitCorner[]; sideNames: SideName[] } {
  return {
    corners: [
      { name: 'left near', x: length / 4, y: 0 },
      { name: 'right near', x: (3 * length) / 4, y: 0 },
      { name: 'right', x: length, y: width / 2 },
      { name: 'right far', x: (3 * length) / 4, y: width },
      { name: 'left far', x: length / 4, y: width },
      { name: 'left', x: 0, y: width / 2 }
    ],
    sideNames: ['near', 'right near', 'right far', 'far', 'left far', 'left near']
  };
}

function turnsOf({ finishedEdge }: UnitShape, corners: readonly UnitCorner[], centre: Point): number[] {
  if (finishedEdge) return [0];
  return TURNS.filter(turn =>
    corners.every(corner => {
      const turned = turnedAbout(corner, centre, turn);
      return corners.some(other => distance(other, turned) <= CUTTING_TOLERANCE);
    })
  );
}
