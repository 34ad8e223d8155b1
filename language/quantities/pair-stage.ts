import { type Loop, overlapArea, type Point, signedAreaOf } from '../geometry/index.ts';

/** Two areas as the pair stage reads them. */
export interface PairSide {
  readonly outline: Loop;
  readonly keptOut: readonly Loop[];
  /** The outline of the dig; clockwise ones are gaps in it. */
  readonly digLoops: readonly Loop[];
}

export interface PairInputs {
  readonly first: PairSide;
  readonly second: PairSide;
}

/** Ground that two areas share, m2. */
export interface PairNumbers {
  readonly paved: number;
  readonly dug: number;
}

/** A smaller overlap is what is left of a shared line after rounding. */
const SHARED_LINE = 1e-7;

/** Ground paved twice and dug twice by two areas, kept-out shapes taken off. */
export function pairStage({ first, second }: PairInputs): PairNumbers {
  return {
    paved: shared([first.outline], first.keptOut, [second.outline], second.keptOut),
    dug: shared(first.digLoops, first.keptOut, second.digLoops, second.keptOut)
  };
}

/** Loops with holes: what each loop adds to or takes from its area is added to or taken from the overlap. */
function shared(a: readonly Loop[], holesA: readonly Loop[], b: readonly Loop[], holesB: readonly Loop[]): number {
  const [first, second] = [signed(a, holesA), signed(b, holesB)];
  let area = 0;
  for (const one of first) {
    for (const other of second) area += one.sign * other.sign * overlapArea(one.loop, other.loop);
  }
  return area < SHARED_LINE ? 0 : area;
}

function signed(loops: readonly Loop[], holes: readonly Loop[]): { loop: Loop; sign: number }[] {
  const [outer, ...rest] = loops;
  return [
    ...(outer === undefined ? [] : [{ loop: outer, sign: 1 }]),
    ...rest.map(loop => ({ loop, sign: signedAreaOf(loop) < 0 ? -1 : 1 })),
    ...holes.map(loop => ({ loop, sign: -1 }))
  ];
}

interface Bounds {
  readonly left: number;
  readonly right: number;
  readonly near: number;
  readonly far: number;
}

/** In metres: boxes that miss each other by no more than what is left after rounding, or by a joint, still meet. */
const NEAR = 1e-3;

/** Pairs, by index, whose areas or digs may meet: the boxes about them do. */
export function neighbours(sides: readonly PairSide[]): [number, number][] {
  const boxes = sides
    .map(({ digLoops, outline }, index) => ({ index, ...boundsOf([...digLoops, outline]) }))
    .sort((a, b) => a.left - b.left || a.index - b.index);
  const pairs: [number, number][] = [];
  boxes.forEach((box, at) => {
    for (let next = at + 1; next < boxes.length && boxes[next]!.left <= box.right + NEAR; next++) {
      const other = boxes[next]!;
      if (other.near > box.far + NEAR || other.far < box.near - NEAR) continue;
      pairs.push(box.index < other.index ? [box.index, other.index] : [other.index, box.index]);
    }
  });
  return pairs.sort((a, b) => a[0] - b[0] || a[1] - b[1]);
}

/** A box about the loops; about an arc, the box about its whole circle. */
function boundsOf(loops: readonly Loop[]): Bounds {
  const points = loops.flat().flatMap((side): Point[] => {
    if (side.arc === undefined) return [side.from];
    const { centre } = side.arc;
    const radius = Math.hypot(side.from.x - centre.x, side.from.y - centre.y);
    return [
      { x: centre.x - radius, y: centre.y - radius },
      { x: centre.x + radius, y: centre.y + radius }
    ];
  });
  const bounds = { left: Infinity, right: -Infinity, near: Infinity, far: -Infinity };
  for (const { x, y } of points) {
    bounds.left = Math.min(bounds.left, x);
    bounds.right = Math.max(bounds.right, x);
    bounds.near = Math.min(bounds.near, y);
    bounds.far = Math.max(bounds.far, y);
  }
  return bounds;
}
