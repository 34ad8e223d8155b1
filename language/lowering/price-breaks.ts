import type { Key } from '../job/job.ts';
import type { SoldAs } from '../job/prices.ts';
import Fraction from 'fraction.js';
import type * as ast from '../syntax/generated/ast.ts';
import type { Context } from './context.ts';
import type { SpecText } from './names.ts';
import { takingOut } from './said-once.ts';

/** Of the lower prices of a way of selling each is for more than the one before, and lower; tells of the first that is not. */
export function breaksAgree(context: Context, text: SpecText, key: Key, node: ast.SoldBy, sold: SoldAs): boolean {
  const clauses = node.clauses.filter(({ what }) => what === 'from');
  let before: { readonly from: number; readonly said: string; readonly price: SoldAs['price'] } = {
    from: 0,
    said: 'the first price',
    price: sold.price
  };
  for (const [index, { from, price }] of sold.breaks.entries()) {
    const isMore = from.value > before.from;
    if (isMore && new Fraction(price.amount).compare(new Fraction(before.price.amount)) < 0) {
      before = { from: from.value, said: `\`from ${from.written}\``, price };
      continue;
    }
    const message = isMore
      ? `From ${from.written} on it costs ${price.written}, and before that ${before.price.written}: a price from more on is a lower one.`
      : `\`from ${from.written}\` stands behind ${before.said}, which is for as much or more. Write the least first.`;
    const clause = clauses[index]!;
    const fixes = [takingOut(context, text, clause)];
    context.fault(text, key, clause, 'price-breaks-disagree', message, { fixes });
    return false;
  }
  return true;
}
