import type { Prepared } from './prepared.ts';

/** Of the longest straight side of a thing's lines, radians; undefined where it has none. */
export function directionOf(key: string, prepared: Prepared): number | undefined {
  let [longest, direction] = [0, undefined as number | undefined];
  for (const shape of prepared.shapesOf.get(key) ?? []) {
    if (shape.kind !== 'path') continue;
    for (const loop of shape.loops) {
      for (let at = 0; at + 4 < loop.length; at += 3) {
        const [right, up] = [loop[at + 3]! - loop[at]!, loop[at + 4]! - loop[at + 1]!];
        if (loop[at + 2] !== 0 || Math.hypot(right, up) <= longest) continue;
        [longest, direction] = [Math.hypot(right, up), Math.atan2(up, right)];
      }
    }
  }
  return direction;
}
