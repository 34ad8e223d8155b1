import { AstUtils } from 'langium';
import type { Key } from '../job/job.ts';
import { isPart, isQuantity } from '../syntax/generated/ast.ts';
import type { Expression } from './amounts.ts';
import { writtenOf, type Context } from './context.ts';
import type { SpecText } from './names.ts';

/**
 * Whether time is written in days or weeks: those of a clock, where a working day is meant. Then that is told, with what
 * to write `instead`.
 */
export function toldInDays(context: Context, text: SpecText, key: Key, node: Expression, instead: string): boolean {
  if (!isInDays(node)) return false;
  const message = `\`${writtenOf(node)}\`: a day is as long as the crew works. Write ${instead}.`;
  context.fault(text, key, node, 'wrong-kind', message);
  return true;
}

export const HOURS_INSTEAD = 'hours of one person, such as `8 h`';

function isInDays(node: Expression): boolean {
  const isDays = (measure: string | undefined): boolean => /^(?:day|week)s?$/i.test(measure ?? '');
  return [node, ...AstUtils.streamAllContents(node)].some(
    each => (isPart(each) && isDays(each.measure)) || (isQuantity(each) && isDays(each.per))
  );
}
