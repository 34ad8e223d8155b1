import { measureText } from '../measures/measures.ts';
import type { Given, Key } from '../job/job.ts';
import type { Expression } from './amounts.ts';
import { writtenOf, type Context } from './context.ts';
import type { SpecText } from './names.ts';

/** A larger count is a slip of the key. */
const MOST_COUNTED = 1_000_000;

/** A whole number of things, one at least; undefined when a fault was told. `example`: how it is written. */
export function readCount(
  context: Context,
  text: SpecText,
  key: Key,
  node: Expression | undefined,
  example: string
): Given | undefined {
  const amount = context.amount(text, key, node);
  if (node === undefined || amount === undefined) return undefined;
  const count = amount.value.valueOf();
  if (measureText(amount.dimensions) !== '')
    return context.fault(
      text,
      key,
      node,
      'wrong-kind',
      `\`${writtenOf(node)}\` has a measure; here things are counted, such as \`${example}\`.`
    );
  if (!Number.isInteger(count) || count < 1 || count > MOST_COUNTED)
    return context.fault(
      text,
      key,
      node,
      'out-of-range',
      `Things are counted here: write a whole number${count > MOST_COUNTED ? ' that can be meant' : ', one or more'}, such as \`${example}\`.`
    );
  context.place(key, text, node);
  return { value: count, key, written: writtenOf(node) };
}
