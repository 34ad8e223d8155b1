import type { Key } from '../job/job.ts';
import type { KeptOut, Price, Rulebook } from '../syntax/generated/ast.ts';
import { namesOf, type Declared } from './names.ts';

/** The key of what is declared: `area:terrace`, `box:valves`; of a rule in a rulebook `rule:britain/base-too-thin`. */
export function keyOf(declared: Declared): Key {
  if (declared.kind === 'kept-out') return `${(declared.node as KeptOut).kind}:${declared.name}`;
  const book = declared.kind === 'rule' ? namesOf(declared.text).bookOf.get(declared.node) : undefined;
  if (book !== undefined) return `rule:${(book as Rulebook).name}/${declared.name}`;
  return `${declared.kind}:${declared.name}`;
}

/** The key of a price list: by what is sold, and by whom; `price:` while its name is still to be written. */
export function keyOfPrice({ thing, supplier }: Price): Key {
  return `price:${(thing as Price['thing'] | undefined)?.$refText ?? ''}${supplier === undefined ? '' : `@${supplier.$refText}`}`;
}
