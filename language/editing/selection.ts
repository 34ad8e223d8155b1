import type { SpecText } from '../lowering/names.ts';
import { statementPathAt, type Statement } from '../syntax/statement-tree.ts';
import type { Span } from '../syntax/text-edit.ts';
import { endOf, spanBetween, startOf, type Word } from './words.ts';

/**
 * What a selection grows through from an offset, the smallest first: word, quantity, sizes, brackets, clause, statement,
 * what stands in the braces, block, file.
 */
export function selectionsAt({ parsed }: SpecText, offset: number): Span[] {
  const { tokens, comments, text } = parsed;
  const spans: Span[] = [{ start: 0, end: text.length }];
  const holds = ({ start, end }: Span): boolean => start <= offset && offset <= end;
  const add = (span: Span): void => {
    if (holds(span) && span.end > span.start) spans.push(span);
  };
  const path = statementPathAt(parsed, offset);
  for (const statement of path) addStatement(tokens, statement, add);
  const innermost = path.at(-1);
  if (innermost !== undefined) addInStatement(tokens, innermost, offset, add);
  const comment = comments.find(each => holds(spanBetween(each, each)));
  if (comment !== undefined) add(spanBetween(comment, comment));
  return nested(spans);
}

function addStatement(tokens: readonly Word[], statement: Statement, add: (span: Span) => void): void {
  const { first, end, open, close } = statement;
  add(spanBetween(tokens[first]!, tokens[Math.max(first, end - 1)]!));
  if (open === undefined || close === undefined) return;
  add(spanBetween(tokens[open]!, tokens[close]!));
  if (close > open + 1) add(spanBetween(tokens[open + 1]!, tokens[close - 1]!));
  add(spanBetween(tokens[first]!, tokens[open - 1] ?? tokens[first]!));
}

function addInStatement(
  tokens: readonly Word[],
  { first, end, open }: Statement,
  offset: number,
  add: (span: Span) => void
): void {
  const last = open ?? end;
  for (let at = first; at < last; at++) {
    const word = tokens[at]!;
    if (startOf(word) > offset) break;
    if (word.tokenType.name === 'STRING') add({ start: startOf(word) + 1, end: endOf(word) - 1 });
    if (endOf(word) >= offset && /[\p{L}\p{N}"]/u.test(word.image)) add(spanBetween(word, word));
  }
  for (const kinds of [
    ['NUMBER', 'MEASURE', 'per'],
    ['NUMBER', 'MEASURE', 'per', 'BY']
  ])
    for (const span of runsOf(tokens, first, last, kinds)) add(span);
  for (const span of spots(tokens, first, last)) add(span);
  for (const span of [...brackets(tokens, first, last), ...clauses(tokens, first, last)]) add(span);
}

/** Neighbouring words of certain kinds: `12 ft 6 1/2 in`. */
function runsOf(tokens: readonly Word[], first: number, end: number, kinds: readonly string[]): Span[] {
  const runs: Span[] = [];
  let start: number | undefined;
  for (let at = first; at <= end; at++) {
    if (at < end && kinds.includes(tokens[at]!.tokenType.name)) start ??= at;
    else if (start !== undefined) {
      runs.push(spanBetween(tokens[start]!, tokens[at - 1]!));
      start = undefined;
    }
  }
  return runs;
}

/** A point with its height, in a row of some: `A 34 1/4 in`. */
function spots(tokens: readonly Word[], first: number, end: number): Span[] {
  if (!/^(?:ground|THING|finish)$/.test(tokens[first]!.tokenType.name)) return [];
  const found: Span[] = [];
  let start: number | undefined;
  for (let at = first + 1; at <= end; at++) {
    const isSpot = tokens[at]?.tokenType.name === 'ID' && tokens[at + 1]?.tokenType.name === 'NUMBER';
    if (at < end && !isSpot && tokens[at]!.tokenType.name !== ',') continue;
    if (start !== undefined) found.push(spanBetween(tokens[start]!, tokens[at - 1]!));
    start = at < end && isSpot ? at : undefined;
  }
  return found;
}

/** What stands in brackets, without and with them. */
function brackets(tokens: readonly Word[], first: number, end: number): Span[] {
  const found: Span[] = [];
  const open: number[] = [];
  for (let at = first; at < end; at++) {
    const { name } = tokens[at]!.tokenType;
    if (name === '(') open.push(at);
    const start = name === ')' ? open.pop() : undefined;
    if (start === undefined) continue;
    if (at > start + 1) found.push(spanBetween(tokens[start + 1]!, tokens[at - 1]!));
    found.push(spanBetween(tokens[start]!, tokens[at]!));
    // The measure of a pair belongs to it.
    if (tokens[at + 1]?.tokenType.name === 'MEASURE') found.push(spanBetween(tokens[start]!, tokens[at + 1]!));
  }
  return found;
}

/** What stands between the commas of a statement. */
function clauses(tokens: readonly Word[], first: number, end: number): Span[] {
  const found: Span[] = [];
  let start = first;
  let depth = 0;
  for (let at = first; at <= end; at++) {
    const name = tokens[at]?.tokenType.name;
    if (name === '(') depth++;
    if (name === ')') depth--;
    if (at < end && !(name === ',' && depth <= 0)) continue;
    if (at > start) found.push(spanBetween(tokens[start]!, tokens[at - 1]!));
    start = at + 1;
  }
  return found;
}

/** Each within the next: what only overlaps the one before it is left out. */
function nested(spans: readonly Span[]): Span[] {
  const sorted = [...spans].sort((left, right) => left.end - left.start - (right.end - right.start));
  const chain: Span[] = [];
  for (const span of sorted) {
    const inner = chain.at(-1);
    if (
      inner === undefined ||
      (span.start <= inner.start && inner.end <= span.end && span.end - span.start > inner.end - inner.start)
    )
      chain.push(span);
  }
  return chain;
}
