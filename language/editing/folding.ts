import type { SpecText } from '../lowering/names.ts';
import { statementTree, type Statement } from '../syntax/statement-tree.ts';
import type { Word } from './words.ts';

/** Lines (from 1) of which all but the first can be folded away. */
export interface Fold {
  readonly first: number;
  readonly last: number;
  readonly kind: 'block' | 'comment' | 'uses' | 'run';
}

/** Blocks, comments over several lines, and runs of statements that begin alike (points, values, used files). */
export function foldsIn({ parsed }: SpecText): Fold[] {
  const { tokens, comments } = parsed;
  const tree = statementTree(parsed);
  return [...blocks(tokens, tree), ...runs(tokens, tree), ...commentRuns(tokens, comments)].sort(
    (left, right) => left.first - right.first || right.last - left.last
  );
}

function blocks(tokens: readonly Word[], statements: readonly Statement[]): Fold[] {
  return statements.flatMap(({ first, close, inside }) => {
    if (close === undefined) return [];
    const brace = tokens[close]!;
    // The line of the brace stays in sight, but not where the brace was never written.
    const last = brace.image === '' ? tokens[close - 1]!.endLine! : brace.startLine! - 1;
    return [...fold(tokens[first]!.startLine!, last, 'block'), ...blocks(tokens, inside)];
  });
}

function runs(tokens: readonly Word[], statements: readonly Statement[]): Fold[] {
  const lines = statements
    .filter(({ block, opens }) => block === 'spec' && opens === undefined)
    .map(({ word, first, end }) => ({ word, first: tokens[first]!.startLine!, last: tokens[end - 1]!.endLine! }));
  return together(lines, (run, next) => next.word === run.word && next.first === run.last + 1).flatMap(
    ({ word, first, last }) => fold(first, last, word === 'use' ? 'uses' : 'run')
  );
}

function commentRuns(tokens: readonly Word[], comments: readonly Word[]): Fold[] {
  const busy = new Set(tokens.filter(({ image }) => image !== '').map(({ endLine }) => endLine!));
  const lines = comments
    .map(({ startLine }) => startLine!)
    .filter(line => !busy.has(line))
    .map(line => ({ first: line, last: line }));
  return together(lines, (run, next) => next.first === run.last + 1).flatMap(({ first, last }) =>
    fold(first, last, 'comment')
  );
}

/** Joins neighbours that belong together. */
function together<T extends { readonly first: number; readonly last: number }>(
  lines: readonly T[],
  belongs: (run: T, next: T) => boolean
): T[] {
  const joined: T[] = [];
  for (const next of lines) {
    const run = joined.at(-1);
    if (run !== undefined && belongs(run, next)) joined[joined.length - 1] = { ...run, last: next.last };
    else joined.push(next);
  }
  return joined;
}

function fold(first: number, last: number, kind: Fold['kind']): Fold[] {
  return last > first ? [{ first, last, kind }] : [];
}
