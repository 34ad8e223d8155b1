import type { System } from '../job/job.ts';
import { readNumber } from '../lowering/numbers.ts';
import { combine, measureNamed, measureText, type Dimensions } from '../measures/measures.ts';
import type { ParsedText } from '../syntax/parse.ts';
import { printedIn, type Printed } from './both-systems.ts';
import { measureWords } from './measure-help.ts';

type Tokens = ParsedText['tokens'];

/** A quantity as it stands in a text, sound or broken: its tokens, `end` being one past the last, and what it comes to. */
export interface WrittenQuantity {
  readonly first: number;
  readonly end: number;
  /** As written; with the measure at the end of its list where it has none itself. */
  readonly written: string;
  /** In SI. */
  readonly value: number;
  readonly dimensions: Dimensions;
  /** The system that it is written in; absent for measures that both have, such as shares. */
  readonly system?: System;
}

/** The quantity that a number or measure belongs to; undefined where it is a plain number, or no quantity at all. */
export function quantityAt(tokens: Tokens, index: number): WrittenQuantity | undefined {
  let first = index;
  while (first > 0 && belongs(tokens, first - 1, first)) first--;
  let end = index + 1;
  while (end < tokens.length && belongs(tokens, end, end - 1)) end++;
  const run = tokens.slice(first, end);
  const alone = run.length === 1 ? measureOfList(tokens, first, end) : undefined;
  const images = [...run.map(({ image }) => image), ...(alone === undefined ? [] : [alone])];
  const amount = amountOf(run, alone);
  if (amount === undefined) return undefined;
  const measures = run.length === 1 ? [alone ?? ''] : run.filter(isMeasure).map(({ image }) => image);
  const [system, ...others] = new Set(measures.map(systemOf));
  // Feet and metres in one quantity are a fault.
  if (others.length > 0) return undefined;
  return { first, end, written: images.join(' '), ...amount, ...(system === undefined ? {} : { system }) };
}

function systemOf(measure: string): System | undefined {
  return measureWords(measure.split('/')[0]!)?.system;
}

/** A quantity in the system that it is not written in; undefined where both write it alike. */
export function inOtherSystem({ value, dimensions, system }: WrittenQuantity): Printed | undefined {
  return system && printedIn(system === 'imperial' ? 'metric' : 'imperial', value, dimensions);
}

/** Numbers, measures and `per` that follow each other in one line. */
function belongs(tokens: Tokens, index: number, beside: number): boolean {
  const token = tokens[index]!;
  return PARTS.has(token.tokenType.name) && token.startLine === tokens[beside]!.startLine;
}

const PARTS: ReadonlySet<string> = new Set(['NUMBER', 'MEASURE', 'per']);

function isMeasure(token: Tokens[number] | undefined): boolean {
  return token?.tokenType.name === 'MEASURE';
}

function amountOf(
  run: Tokens,
  alone: string | undefined
): { readonly value: number; readonly dimensions: Dimensions } | undefined {
  let total: { value: number; dimensions: Dimensions } | undefined;
  const perAt = run.findIndex(({ image }) => image === 'per');
  const parts = perAt < 0 ? run : run.slice(0, perAt);
  for (let at = 0; at < parts.length; at += 2) {
    const number = parts[at]!.tokenType.name === 'NUMBER' ? readNumber(parts[at]!.image) : undefined;
    const measure = measureNamed(parts[at + 1]?.image ?? alone ?? '');
    if (number === undefined || measure === undefined) return undefined;
    const value = number.mul(measure.factor).valueOf();
    if (total !== undefined && measureText(total.dimensions) !== measureText(measure.dimensions)) return undefined;
    total = { value: (total?.value ?? 0) + value, dimensions: measure.dimensions };
  }
  if (total === undefined || perAt < 0) return total;
  const per = measureNamed(run[perAt + 1]?.image ?? '');
  return (
    per && { value: total.value / per.factor.valueOf(), dimensions: combine(total.dimensions, per.dimensions, -1) }
  );
}

/** In a size or a pair the measure at the end counts for the numbers before it that have none. */
function measureOfList(tokens: Tokens, first: number, end: number): string | undefined {
  const last = lastOfSize(tokens, end) ?? end;
  if (last !== end) return isMeasure(tokens[last - 1]) ? tokens[last - 1]!.image : undefined;
  return measureOfPair(tokens, first, end);
}

/** One past the last number of a size: `15 7/8 x 2 in`. */
function lastOfSize(tokens: Tokens, end: number): number | undefined {
  let last = end;
  while (tokens[last]?.tokenType.name === 'BY' && last + 1 < tokens.length) {
    last += 2;
    while (last < tokens.length && belongs(tokens, last, last - 1)) last++;
  }
  return last === end ? undefined : last;
}

/** `(2, 3) m`, `(2, 3 m)`. */
function measureOfPair(tokens: Tokens, first: number, end: number): string | undefined {
  const before = tokens[first - 1]?.image === '-' ? first - 2 : first - 1;
  const opens = tokens[before]?.image === '(';
  if (!opens && tokens[before]?.image !== ',') return undefined;
  let close = end;
  if (opens && tokens[end]?.image === ',') {
    close = end + 1;
    while (close < tokens.length && (tokens[close]!.image === '-' || PARTS.has(tokens[close]!.tokenType.name))) close++;
  }
  if (tokens[close]?.image !== ')') return undefined;
  const measure = [tokens[close + 1], tokens[close - 1]].find(isMeasure);
  return measure?.image;
}
