import { distance } from '../geometry/index.ts';
import type { Drain } from '../job/heights.ts';
import { type Expression, given, measured, multiply, plainNumber, sum } from './arithmetic.ts';

/** Concrete below a channel, and at its sides to its full depth where it is said so, m3; undefined where its size is not told. */
export function drainConcrete({
  key,
  name,
  line,
  width,
  depth,
  concrete
}: Pick<Drain, 'key' | 'name' | 'line' | 'width' | 'depth' | 'concrete'>): Expression | undefined {
  if (line === undefined || width === undefined || concrete === undefined) return undefined;
  const thick = given(`concrete round ${name}`, concrete.below, 'm');
  const across = given(`width of ${name}`, width, 'm');
  const length = measured(`length of ${name}`, distance(line.from, line.to), 'm', key);
  if (!concrete.sides) return multiply(multiply(across, thick), length);
  const below = multiply(sum(across, thick, thick), thick);
  if (depth === undefined) return multiply(below, length);
  const beside = multiply(plainNumber(2), thick, given(`depth of ${name}`, depth, 'm'));
  return multiply(sum(below, beside), length);
}
