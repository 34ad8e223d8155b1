import type { System } from '../job/job.ts';
import { isBookIncludes, isJobShow, type Rulebook } from '../syntax/generated/ast.ts';
import type { Declared, Names } from './names.ts';

/** A rulebook, then all that it includes, each once. */
export function leadsTo(names: Names, book: Declared): Declared[] {
  const found = new Map<Declared['node'], Declared>();
  for (const open = [book]; open.length > 0;) {
    const next = open.pop()!;
    if (found.has(next.node)) continue;
    found.set(next.node, next);
    open.push(...includedIn(names, next).reverse());
  }
  return [...found.values()];
}

/** The same, what is included always before what includes it; `inCircle` are those that lead back to themselves. */
export function insideOut(names: Names, book: Declared): { readonly books: Declared[]; readonly inCircle: Declared[] } {
  const state = new Map<Declared['node'], 'open' | 'done'>();
  const books: Declared[] = [];
  const inCircle: Declared[] = [];
  // Not by recursion: a chain of rulebooks may be long.
  const open: { readonly book: Declared; readonly rest: Declared[] }[] = [];
  const enter = (next: Declared): void => {
    if (state.get(next.node) === 'open') inCircle.push(next);
    if (state.has(next.node)) return;
    state.set(next.node, 'open');
    open.push({ book: next, rest: includedIn(names, next) });
  };
  enter(book);
  while (open.length > 0) {
    const { book: here, rest } = open.at(-1)!;
    const next = rest.shift();
    if (next !== undefined) enter(next);
    else {
      state.set(here.node, 'done');
      books.push(here);
      open.pop();
    }
  }
  return { books, inCircle };
}

/** The rulebooks that one names after `includes`, as far as they are there. */
function includedIn(names: Names, { node, text }: Declared): Declared[] {
  return (node as Rulebook).items
    .filter(isBookIncludes)
    .flatMap(({ books }) => books.flatMap(({ $refText }) => names.peek(text, 'rulebook', $refText) ?? []));
}

/** The measures that a rulebook shows. */
export function systemOfBook({ node }: Declared): System | undefined {
  const shown = (node as Rulebook).items.find(isJobShow)?.system;
  return shown === undefined ? undefined : systemShown(shown);
}

/** The measures that a word behind `show` stands for. */
export function systemShown(word: string): System {
  return word === 'metric' ? 'metric' : 'imperial';
}
