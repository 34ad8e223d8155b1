import type { System } from '../job/job.ts';
import { isBookIncludes, isJobShow, type Rulebook } from '../syntax/generated/ast.ts';
import type { Declared, Names } from './names.ts';

/** A rulebook, then all that it includes, each once. */
export function leadsTo(names: Names, book: Declared, seen = new Set<Declared['node']>()): Declared[] {
  if (seen.has(book.node)) return [];
  seen.add(book.node);
  const included = (book.node as Rulebook).items
    .filter(isBookIncludes)
    .flatMap(({ books }) => books.flatMap(({ $refText }) => names.peek(book.text, 'rulebook', $refText) ?? []));
  return [book, ...included.flatMap(each => leadsTo(names, each, seen))];
}

/** The measures that a rulebook shows. */
export function systemOfBook({ node }: Declared): System | undefined {
  const shown = (node as Rulebook).items.find(isJobShow)?.system;
  return shown === undefined ? undefined : shown === 'metric' ? 'metric' : 'imperial';
}
