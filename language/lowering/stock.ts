import type { Key, Missing } from '../job/job.ts';
import type { Stock } from '../job/prices.ts';
import * as ast from '../syntax/generated/ast.ts';
import type { Expression } from './amounts.ts';
import type { Context } from './context.ts';
import { keyOf } from './keys.ts';
import type { SpecText } from './names.ts';
import type { Packs } from './packs.ts';

/** What lies on hand, in the order of the texts; what can't be read is added to `missing`. */
export function readStock(context: Context, packs: Packs, texts: readonly SpecText[], missing: Missing[]): Stock[] {
  const counts = new Map<string, number>();
  const stock: Stock[] = [];
  for (const text of texts)
    for (const node of text.parsed.root.elements.filter(ast.isStock)) {
      const name = node.thing?.$refText ?? 'stock';
      const count = (counts.get(name) ?? 0) + 1;
      counts.set(name, count);
      const key = context.place(`stock:${name}${count === 1 ? '' : `-${count}`}`, text, node);
      const { value, broken } = context.watch(() =>
        context.isBroken(text, node) ? undefined : one(context, packs, text, key, node)
      );
      if (value !== undefined && broken.length === 0) stock.push(value);
      else missing.push({ key, name: `the stock of ${name}`, because: name });
    }
  return stock;
}

function one(context: Context, packs: Packs, text: SpecText, key: Key, node: ast.Stock): Stock | undefined {
  const found = context.find(text, key, node, 'thing', node.thing?.$refText, ['material', 'unit']);
  if (found === undefined) return undefined;
  const written = { amount: node.amount as Expression | undefined, pack: node.pack };
  const read = packs.soMuch(text, `${key}/amount`, found, written);
  return read && { key, thing: keyOf(found), name: found.name, ...read };
}
