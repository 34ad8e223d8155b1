import type { Given, Key } from '../job/job.ts';
import { kindOf, measureNamed, measureText } from '../measures/measures.ts';
import type { Expression } from './amounts.ts';
import { writtenOf, type Context } from './context.ts';
import { readCount } from './counts.ts';
import type { GoodsMeasure } from './goods.ts';
import type { SpecText } from './names.ts';
import { writing } from './said-fix.ts';

/** So much of a thing, and in what it is measured. */
export interface HeldAmount {
  readonly holds: Given;
  readonly measure: GoodsMeasure;
}

/**
 * So much of a thing, in one of the measures that are allowed; undefined when a fault was told. `lacking`: the measures
 * that a bare number may lack.
 */
export function readAmount(
  context: Context,
  text: SpecText,
  key: Key,
  node: Expression | undefined,
  allowed: readonly GoodsMeasure[],
  message: (kind: string, isBare: boolean) => string,
  lacking: readonly string[]
): HeldAmount | undefined {
  const amount = context.amount(text, key, node);
  if (node === undefined || amount === undefined) return undefined;
  const { dimensions, bare } = amount;
  const si = measureText(dimensions);
  const measure = (si === '' ? 'piece' : si) as GoodsMeasure;
  if (!allowed.includes(measure)) {
    const fitting = lacking.filter(each =>
      allowed.includes(measureText(measureNamed(each)!.dimensions) as GoodsMeasure)
    );
    const fixes = bare ? fitting.map(each => writing(`${writtenOf(node)} ${each}`)) : [];
    const id = bare ? 'measure-missing' : 'sale-does-not-fit';
    return context.fault(text, key, node, id, message(kindOf(dimensions), bare), { fixes });
  }
  const holds =
    measure === 'piece' ? readCount(context, text, key, node, '90') : context.given(text, key, node, measure);
  return holds && { holds, measure };
}
