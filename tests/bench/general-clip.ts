import { Clipper, FillRule } from 'clipper2-ts';
import type { Loop, Point, Region } from '../../language/geometry/index.ts';
import { pointAlong } from '../../language/geometry/outline.ts';
import type { BondPattern } from '../../language/laying/bonds/pattern.ts';

/** Whole-number places per metre: micrometres. */
const SCALE = 1e6;
/** Chords of each arc. */
const CHORDS = 48;

/** What a field and its units have in common, each unit clipped by a general polygon library; how many meet the field. */
export function clippedOneByOne(region: Region, { frame, units }: BondPattern): { units: number; corners: number } {
  const field = [region.outer, ...region.holes].map(inPlan);
  const { left, right, bottom, top } = boxRound(field[0]!);
  const [cosine, sine] = [Math.cos(frame.direction), Math.sin(frame.direction)];
  const onPlan = (x: number, y: number): Point => ({
    x: Math.round((frame.origin.x + x * cosine - y * sine) * SCALE),
    y: Math.round((frame.origin.y + x * sine + y * cosine) * SCALE)
  });
  const reach = (right - left + top - bottom) / SCALE;
  let count = 0;
  let corners = 0;
  for (const { x, y, length, width, alongPitch, acrossPitch, offset } of units)
    for (let course = -Math.ceil(reach / acrossPitch); course * acrossPitch < reach; course++)
      for (let place = -Math.ceil(reach / alongPitch); place * alongPitch < reach; place++) {
        const shift = (course * offset - Math.floor(course * offset)) * alongPitch;
        const [from, up] = [x + shift + place * alongPitch, y + course * acrossPitch];
        const unit = [
          onPlan(from, up),
          onPlan(from + length, up),
          onPlan(from + length, up + width),
          onPlan(from, up + width)
        ];
        const box = boxRound(unit);
        // What does not even reach the box round the field needs no clip.
        if (box.left > right || box.right < left || box.bottom > top || box.top < bottom) continue;
        const common = Clipper.intersect([unit], field, FillRule.EvenOdd);
        if (common.length > 0) count++;
        corners += common.reduce((sum, path) => sum + path.length, 0);
      }
  return { units: count, corners };
}

function inPlan(loop: Loop): Point[] {
  return loop
    .flatMap(side =>
      side.arc ? Array.from({ length: CHORDS }, (_, part) => pointAlong(side, part / CHORDS)) : [side.from]
    )
    .map(({ x, y }) => ({ x: Math.round(x * SCALE), y: Math.round(y * SCALE) }));
}

function boxRound(points: readonly Point[]): { left: number; right: number; bottom: number; top: number } {
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  return { left: Math.min(...xs), right: Math.max(...xs), bottom: Math.min(...ys), top: Math.max(...ys) };
}
