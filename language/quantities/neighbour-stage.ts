import { apart, boundsOfSide } from '../geometry/bounds.ts';
import { type Loop, sharedLength, type Side, sideLength } from '../geometry/index.ts';

/** An area as its neighbours see it: its own border, and that of the shapes kept out of it. */
export interface NeighbourSide {
  readonly outline: Loop;
  readonly keptOut: readonly Loop[];
}

export interface NeighbourInputs {
  readonly first: NeighbourSide;
  readonly second: NeighbourSide;
}

/** Length of a side, and how much of it lies along another area, m. */
export interface SideAlong {
  readonly length: number;
  readonly along: number;
}

/** For each side of both outlines in their order; a curve is judged only where the other area is apart from it. */
export interface NeighbourNumbers {
  readonly first: readonly (SideAlong | undefined)[];
  readonly second: readonly (SideAlong | undefined)[];
}

/** In metres: a side and an area no further apart than this touch. */
export const TOUCHING = 1e-3;

/** How the sides of two areas lie along each other. */
export function neighbourStage({ first, second }: NeighbourInputs): NeighbourNumbers {
  return { first: alongOther(first, second), second: alongOther(second, first) };
}

function alongOther({ outline }: NeighbourSide, other: NeighbourSide): (SideAlong | undefined)[] {
  const border = [other.outline, ...other.keptOut].flat().map(side => ({ side, box: boundsOfSide(side) }));
  return outline.map(side => {
    const box = boundsOfSide(side);
    return alongSides(
      side,
      border.filter(one => !apart(box, one.box, TOUCHING)).map(one => one.side)
    );
  });
}

function alongSides(side: Side, near: readonly Side[]): SideAlong | undefined {
  if (near.length > 0 && side.arc !== undefined) return undefined;
  return { length: sideLength(side), along: sharedLength([side], near) };
}
