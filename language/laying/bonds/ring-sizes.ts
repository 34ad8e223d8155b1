/** What rings are made of. Metres. */
export interface RingSizes {
  /** Of a unit, along the ring. */
  readonly length: number;
  /** Of a unit, outward. */
  readonly width: number;
  /** The least joint: between the inner corners of neighbours, and from ring to ring. */
  readonly joint: number;
  /** The most that a joint between neighbours is meant to open to at their outer corners. */
  readonly mostJoint: number;
}

/** One ring of units whose flat inner faces touch a circle with their middles. Metres and radians. */
export interface Ring {
  /** Counted from one, outward. */
  readonly number: number;
  /** Radius of that circle. */
  readonly inner: number;
  /** The same of the next ring: the outer corners and a joint further out. */
  readonly next: number;
  readonly count: number;
  /** From the middle of a unit to that of the next. */
  readonly step: number;
  /** Direction of the middle of one unit. */
  readonly start: number;
  /** Joint between neighbours at their outer corners. */
  readonly opening: number;
}

/** Units in a ring, at least: two would be no ring. */
const FEWEST = 3;

/** Share of a unit: rounding that must not take one from a ring that just holds it. */
const ROUNDING = 1e-9;

/**
 * The least radius at which a ring keeps its joints within limits, metres. Undefined when there is none: joints open
 * outward in any ring, so the most has to be above the least.
 */
export function leastRadius({ length, width, joint, mostJoint }: RingSizes): number | undefined {
  if (!(mostJoint > joint)) return undefined;
  const half = Math.asin(Math.min(1, (mostJoint - joint) / (2 * width)));
  const count = Math.max(FEWEST, Math.ceil(Math.PI / half - ROUNDING));
  return (joint + length * Math.cos(Math.PI / count)) / (2 * Math.sin(Math.PI / count));
}

/** The ring on a circle: as many units as keep the least joint. In every second ring a joint lies where others have a unit. */
export function ringOn(number: number, inner: number, { length, width, joint }: RingSizes): Ring {
  // Half a step turns the middle of a unit into that of a joint: its own half, and half the joint beside it.
  const halfStep = Math.atan2(length / 2, inner) + Math.asin(joint / 2 / Math.hypot(inner, length / 2));
  const count = Math.floor(Math.PI / halfStep + ROUNDING);
  const step = (2 * Math.PI) / count;
  return {
    number,
    inner,
    next: Math.hypot(inner + width, length / 2) + joint,
    count,
    step,
    start: number % 2 === 0 ? step / 2 : 0,
    opening: 2 * (inner + width) * Math.sin(step / 2) - length * Math.cos(step / 2)
  };
}
