import type { Point } from '../geometry/index.ts';

/** A box on the plan, turned about its middle; metres, radians. */
export interface Box {
  readonly at: Point;
  readonly width: number;
  readonly height: number;
  readonly turn: number;
}

/** The thin box of a straight line. */
export function lineBox(from: Point, to: Point): Box {
  return {
    at: { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 },
    width: Math.hypot(to.x - from.x, to.y - from.y),
    height: 0,
    turn: Math.atan2(to.y - from.y, to.x - from.x)
  };
}

/** How far a box reaches from its middle in a direction (a step of length one). */
export function reachOf({ width, height, turn }: Box, way: Point): number {
  const cosine = Math.cos(turn);
  const sine = Math.sin(turn);
  return (Math.abs(way.x * cosine + way.y * sine) * width + Math.abs(way.y * cosine - way.x * sine) * height) / 2;
}

/** Places on the plan where something is drawn that nothing may be drawn over. */
export class Taken {
  readonly #cells = new Map<string, Box[]>();
  readonly #size: number;

  /** Boxes are looked up by squares of this size, m. */
  constructor(size: number) {
    this.#size = size;
  }

  add(box: Box): void {
    for (const cell of this.#cellsUnder(box)) {
      const known = this.#cells.get(cell);
      if (known) known.push(box);
      else this.#cells.set(cell, [box]);
    }
  }

  isFree(box: Box): boolean {
    return this.#cellsUnder(box).every(cell => !this.#cells.get(cell)?.some(other => overlap(box, other)));
  }

  #cellsUnder(box: Box): string[] {
    // A long thin box at a slant would lie over many squares that it does not touch: it is looked up in parts.
    const parts = Math.max(1, Math.min(MOST_PARTS, Math.ceil(box.width / this.#size)));
    const cells = new Set<string>();
    for (let part = 0; part < parts; part++) {
      const along = ((part + 0.5) / parts - 0.5) * box.width;
      const x = box.at.x + along * Math.cos(box.turn);
      const y = box.at.y + along * Math.sin(box.turn);
      const piece = { ...box, width: box.width / parts };
      const across = reachOf(piece, { x: 1, y: 0 });
      const up = reachOf(piece, { x: 0, y: 1 });
      for (let column = this.#cell(x - across); column <= this.#cell(x + across); column++) {
        for (let row = this.#cell(y - up); row <= this.#cell(y + up); row++) cells.add(`${column},${row}`);
      }
    }
    return [...cells];
  }

  #cell(value: number): number {
    return Math.floor(value / this.#size);
  }
}

/** A line longer than so many squares is looked up in coarser parts. */
const MOST_PARTS = 500;

/** Boxes that only touch do not overlap. */
function overlap(a: Box, b: Box): boolean {
  const apart = { x: b.at.x - a.at.x, y: b.at.y - a.at.y };
  return [a.turn, a.turn + Math.PI / 2, b.turn, b.turn + Math.PI / 2].every(turn => {
    const way = { x: Math.cos(turn), y: Math.sin(turn) };
    return Math.abs(apart.x * way.x + apart.y * way.y) < reachOf(a, way) + reachOf(b, way) - TOUCH;
  });
}

const TOUCH = 1e-9;
