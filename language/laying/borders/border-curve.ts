import { radiusOf } from '../../geometry/outline.ts';
import type { Side } from '../../geometry/index.ts';
import type { JointLimits } from './border.ts';

/**
 * Units round a curve, as rectangles their size: each has the middle of its side nearest the centre on the inner circle
 * and both far corners on the outer one. Metres and radians.
 */
export interface Curve {
  /** Radii of both circles. */
  readonly inner: number;
  readonly outer: number;
  /** From the centre to the side of a unit that is further off. */
  readonly far: number;
  /** Half of a unit's size along the curve. */
  readonly half: number;
  /** Half the angle under which a unit is seen from the centre: of its near corners, which is more, and of its far ones. */
  readonly nearAngle: number;
  readonly farAngle: number;
}

/**
 * The curve of units beside an arc: the centre lies on their side (the far corners lie on the arc) or behind the edge
 * (the middle of the near side touches it). Undefined where the radius is too small for them.
 */
export function curveBeside(side: Side, centreWithin: boolean, along: number, across: number): Curve | undefined {
  const half = along / 2;
  const radius = side.arc ? radiusOf(side, side.arc) : 0;
  const far = centreWithin ? Math.sqrt(radius * radius - half * half) : radius + across;
  const inner = far - across;
  if (!(inner > 0)) return undefined;
  return {
    inner,
    outer: centreWithin ? radius : Math.hypot(far, half),
    far,
    half,
    nearAngle: Math.atan(half / inner),
    farAngle: Math.atan(half / far)
  };
}

/** From the centre to the near corners of units. */
function nearCorner({ inner, half }: Curve): number {
  return Math.hypot(inner, half);
}

/** The angle at the centre that a joint makes where units are nearest each other, and back. */
export function angleOfJoint(curve: Curve, joint: number): number {
  return 2 * Math.asin(Math.min(1, joint / (2 * nearCorner(curve))));
}

export function jointOfAngle(curve: Curve, angle: number): number {
  return 2 * nearCorner(curve) * Math.sin(angle / 2);
}

/** Metres between the far corners of units so far apart from middle to middle. */
export function openingAt({ outer, farAngle }: Curve, pitch: number): number {
  return 2 * outer * Math.sin(pitch / 2 - farAngle);
}

/** The limits of a joint as angles. */
export function jointAngles(curve: Curve, { least, usual, most }: JointLimits): JointLimits {
  return {
    least: angleOfJoint(curve, least),
    usual: angleOfJoint(curve, usual),
    most: angleOfJoint(curve, most)
  };
}
