import { printLength } from '../measures/print.ts';
import { beyond, inSystem, lengthValue, limit } from './limits.ts';
import type { Breach, RuleInputs } from './rule.ts';

/** Deeper than this, the sides of a dig can bury who works in it. */
const DEEPEST = limit(48, 1200);

/** No dig is so deep that its sides can fall in on people. */
export function digShallow({ area, depth, system }: RuleInputs): Breach[] {
  if (beyond(depth, DEEPEST, system) === undefined) return [];
  const deepest = inSystem(DEEPEST, system);
  return [
    {
      message: `The dig of ${area.name} is ${printLength(depth, system)} deep, more than ${printLength(deepest, system)}. Stop: the sides of a deep dig can fall in on people. It needs shoring or sloping by those who know how, as local rules ask.`,
      target: area.key,
      values: [lengthValue('dig', depth), lengthValue('deepest without shoring', deepest)]
    }
  ];
}
