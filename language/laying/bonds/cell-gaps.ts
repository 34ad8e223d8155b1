/** An upright rectangle: its lower left corner and its sides, metres. */
export interface Rectangle {
  readonly x: number;
  readonly y: number;
  readonly length: number;
  readonly width: number;
}

/** In metres: gaps no wider than this are rounding. */
const NO_GAP = 1e-9;

/** What rectangles that repeat every pitch leave open between them, as rectangles of one cell. */
export function gapsIn(rectangles: readonly Rectangle[], alongPitch: number, acrossPitch: number): Rectangle[] {
  const parts = rectangles.flatMap(rectangle => inCell(rectangle, alongPitch, acrossPitch));
  const levels = distinct([0, acrossPitch, ...parts.flatMap(({ y, width }) => [y, y + width])]);
  const gaps: Rectangle[] = [];
  let growing = new Map<string, { x: number; y: number; length: number; width: number }>();
  for (const [index, bottom] of levels.slice(0, -1).entries()) {
    const top = levels[index + 1]!;
    const middle = (bottom + top) / 2;
    const taken = parts
      .filter(({ y, width }) => y < middle && y + width > middle)
      .map(({ x, length }) => ({ from: x, to: x + length }))
      .sort((a, b) => a.from - b.from);
    const now: typeof growing = new Map();
    for (const { from, to } of between(taken, alongPitch)) {
      const name = `${Math.round(from / NO_GAP)} ${Math.round(to / NO_GAP)}`;
      const before = growing.get(name);
      const gap = before ?? { x: from, y: bottom, length: to - from, width: 0 };
      gap.width = top - gap.y;
      if (before === undefined) gaps.push(gap);
      now.set(name, gap);
    }
    growing = now;
  }
  return gaps;
}

/** The parts of a rectangle in one cell, where it reaches over the cell's edges. */
function inCell({ x, y, length, width }: Rectangle, alongPitch: number, acrossPitch: number): Rectangle[] {
  return wrapped(x, length, alongPitch).flatMap(along =>
    wrapped(y, width, acrossPitch).map(across => ({
      x: along.from,
      y: across.from,
      length: along.to - along.from,
      width: across.to - across.from
    }))
  );
}

function wrapped(start: number, length: number, pitch: number): { from: number; to: number }[] {
  const from = start - Math.floor(start / pitch + NO_GAP) * pitch;
  const to = from + length;
  return to <= pitch + NO_GAP
    ? [{ from, to }]
    : [
        { from, to: pitch },
        { from: 0, to: to - pitch }
      ];
}

function between(taken: readonly { from: number; to: number }[], pitch: number): { from: number; to: number }[] {
  const free: { from: number; to: number }[] = [];
  let reached = 0;
  for (const { from, to } of [...taken, { from: pitch, to: pitch }]) {
    if (from - reached > NO_GAP) free.push({ from: reached, to: from });
    reached = Math.max(reached, to);
  }
  return free;
}

function distinct(values: readonly number[]): number[] {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted.filter((value, index) => index === 0 || value - sorted[index - 1]! > NO_GAP);
}
