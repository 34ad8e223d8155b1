import Fraction from 'fraction.js';
import type { System } from '../../job/job.ts';
import { sumsIn, type SumList, type WrittenSum } from '../../lowering/sums.ts';
import type { Look } from '../../paving.ts';
import { ChunkIndex } from '../../syntax/chunk-index.ts';
import { inOneMeasure, lengthIn, roundedBy, toNearest } from '../../measures/lengths.ts';
import { spanOf, statementsWithin, type Statement } from '../../syntax/statement-tree.ts';
import { applied, lineBreakOf, type Span } from '../../syntax/text-edit.ts';
import { covers, rewrite, touches, type Edit, type Rewrite } from './rewrite.ts';
import { hasNames, isNought } from './written.ts';

/** A length that is written in one system, and as it is in the other. */
interface Piece {
  readonly sum: WrittenSum;
  readonly length: Fraction;
}

interface Converted {
  readonly edits: readonly Edit[];
  /** How far rounding moved each length, m. */
  readonly moved: readonly Fraction[];
}

const SYSTEM_WORDS: Readonly<Record<System, { readonly show: string; readonly lengths: string }>> = {
  metric: { show: 'metric', lengths: 'in metres and millimetres' },
  imperial: { show: 'feet-and-inches', lengths: 'in feet and inches' }
};

/** Lengths are added up and multiplied: what they make may move by so much more than each of them. */
const MOST_TIMES = 20;

/** The lengths at the cursor or in the selection in the other system; at the job's title or its `show` all of the file. */
export function writeInOtherSystem({ text, project }: Look, at: Span, system: System | undefined): Rewrite[] {
  const chunks = new ChunkIndex(text.parsed);
  const lists = sumsIn(text, project).filter(({ start }) => !chunks.isBroken(start));
  if (at.start < at.end) return [inSelection(text, lists, at)].filter(found => found !== undefined);
  const job = jobAt(text, at);
  if (job !== undefined)
    return system === undefined || chunks.isAnyBroken ? [] : wholeFile(text, lists, job, opposite(system));
  return [atCursor(text, lists, at)].filter(found => found !== undefined);
}

function opposite(system: System): System {
  return system === 'metric' ? 'imperial' : 'metric';
}

// ---- at a place ----

function atCursor(text: Look['text'], lists: readonly SumList[], at: Span): Rewrite | undefined {
  const list = lists.find(each => touches(each, at));
  if (list === undefined) return undefined;
  const pieces = piecesOf(list)?.filter(({ sum }) => list.form !== 'alone' || touches(sum, at));
  const system = pieces?.[0]?.sum.system;
  if (pieces === undefined || system === undefined) return undefined;
  const made = convertList(text.parsed.text, list, pieces, opposite(system));
  if (made === undefined) return undefined;
  const span = list.form === 'alone' ? pieces[0]!.sum : list;
  const written = applied(
    text.parsed.text.slice(span.start, span.end),
    made.edits.map(edit => ({ ...edit, start: edit.start - span.start, end: edit.end - span.start }))
  );
  const title = `Write ${written.replace(/\s+/g, ' ')}${roundedBy(made.moved)}`;
  return rewrite(text, { title, kind: 'rewrite', keeps: { within: within(made), but: ['centre'] } }, made.edits);
}

function inSelection(text: Look['text'], lists: readonly SumList[], at: Span): Rewrite | undefined {
  const inside = lists.filter(list => touches(list, at));
  const system = inside.flatMap(list => piecesOf(list) ?? []).find(({ sum }) => covers(at, sum))?.sum.system;
  if (system === undefined) return undefined;
  const to = opposite(system);
  const made = convert(text, inside, to, list => covers(at, list), at);
  if (made.moved.length === 0) return undefined;
  const title = `Write what is selected ${SYSTEM_WORDS[to].lengths}${roundedBy(made.moved)}`;
  return rewrite(text, { title, kind: 'rewrite', keeps: { within: within(made), but: ['centre'] } }, made.edits);
}

// ---- the whole file ----

/** The job whose title or `show` the cursor stands at. */
function jobAt({ parsed }: Look['text'], at: Span): Statement | undefined {
  return statementsWithin(parsed, at).find(
    ({ word, first, open, inside }) =>
      word === 'job' &&
      open !== undefined &&
      (touches(spanOf(parsed, first, open), at) ||
        inside.some(item => item.word === 'show' && touches(spanOf(parsed, item.first, item.end), at)))
  );
}

function wholeFile(text: Look['text'], lists: readonly SumList[], job: Statement, to: System): Rewrite[] {
  const made = convert(text, lists, to, () => true);
  const show = showEdit(text, job, SYSTEM_WORDS[to].show);
  if (made.moved.length === 0 || show === undefined) return [];
  const title = `Write the whole file ${SYSTEM_WORDS[to].lengths}${roundedBy(made.moved)}`;
  return [
    rewrite(text, { title, kind: 'rewrite', keeps: { within: within(made), but: ['system', 'usualFall', 'centre'] } }, [
      ...made.edits,
      show
    ])
  ];
}

function showEdit({ parsed }: Look['text'], { open, inside }: Statement, word: string): Edit | undefined {
  const { tokens, text } = parsed;
  const show = inside.find(item => item.word === 'show');
  if (show !== undefined) {
    const said = tokens[show.first + 1];
    if (said === undefined || show.end !== show.first + 2) return undefined;
    return { start: said.startOffset, end: said.endOffset! + 1, text: word };
  }
  const last = inside.at(-1);
  const start = tokens[last === undefined ? open! : last.end - 1]!.endOffset! + 1;
  const isFlat = last === undefined || tokens[last.first]!.startLine === tokens[open!]!.startLine;
  const insert =
    last === undefined ? ` show ${word}` : isFlat ? `, show ${word}` : `${lineBreakOf(text)}  show     ${word}`;
  return { start, end: start, text: insert };
}

// ---- lists and sums ----

/** Every list in the one system that is not yet in it; of a list that `all` does not hold for only what the span covers. */
function convert(
  text: Look['text'],
  lists: readonly SumList[],
  to: System,
  all: (list: SumList) => boolean,
  span?: Span
): Converted {
  const edits: Edit[] = [];
  const moved: Fraction[] = [];
  for (const list of lists) {
    const others = piecesOf(list)?.filter(({ sum }) => sum.system !== to);
    // The numbers of a list may share a measure: it is written anew as a whole or not at all.
    const some = all(list) ? others : list.form === 'alone' ? others?.filter(({ sum }) => covers(span!, sum)) : [];
    const made = some === undefined ? undefined : convertList(text.parsed.text, list, some, to);
    edits.push(...(made?.edits ?? []));
    moved.push(...(made?.moved ?? []));
  }
  return { edits, moved };
}

function convertList(text: string, list: SumList, pieces: readonly Piece[], to: System): Converted | undefined {
  if (pieces.length === 0) return undefined;
  const lengths = pieces.map(({ length }) => toNearest(length, to));
  if (lengths.some((length, at) => length.equals(0) && !pieces[at]!.length.equals(0))) return undefined;
  const moved = pieces.map(({ length }, at) => length.sub(lengths[at]!).abs());
  const shared = list.form === 'alone' ? undefined : sharedMeasure(list, pieces, lengths, to);
  const edits = pieces.map(({ sum }, at): Edit => {
    const isLast = list.form === 'size' && sum === list.sums.at(-1);
    const one = shared?.numbers[at];
    const written = one === undefined ? lengthIn(to, lengths[at]!) : isLast ? `${one} ${shared!.measure}` : one;
    return { start: sum.start, end: sum.end, text: written };
  });
  return { edits: [...edits, ...measureAfterBrackets(text, list, shared?.measure)], moved };
}

/** One measure for all of a list, where each of them is a quantity alone, or the value of a `let`, or nought. */
function sharedMeasure(list: SumList, pieces: readonly Piece[], lengths: readonly Fraction[], to: System) {
  const isPiece = (sum: WrittenSum): boolean =>
    pieces.some(piece => piece.sum === sum || (sum.form === 'negative' && piece.sum === sum.inside[0]));
  const fits = list.sums.every(sum => isPiece(sum) || sum.form === 'name' || isNought(sum));
  const ends = list.form === 'pair' || isPiece(list.sums.at(-1)!);
  return fits && ends && pieces.length > 1 ? inOneMeasure(to, lengths) : undefined;
}

/** The measure that stands behind the brackets of a place goes, or another comes. */
function measureAfterBrackets(text: string, list: SumList, measure: string | undefined): Edit[] {
  if (list.form !== 'pair') return [];
  const bracket = text.lastIndexOf(')', list.end - 1) + 1;
  if (bracket === list.end && measure === undefined) return [];
  return [{ start: bracket, end: list.end, text: measure === undefined ? '' : ` ${measure}` }];
}

/** The lengths of a list as they can be written anew; undefined where one is not what it seems. */
function piecesOf(list: SumList): Piece[] | undefined {
  const found: Piece[] = [];
  for (const sum of list.sums) {
    const pieces = piecesIn(sum);
    if (pieces === undefined) return undefined;
    found.push(...pieces);
  }
  return found;
}

function piecesIn(sum: WrittenSum): Piece[] | undefined {
  const { amount, form, system } = sum;
  if (amount === undefined) return undefined;
  const isWhole = form === 'quantity' || (form === 'brackets' && sum.measure !== undefined);
  if (isWhole || (form === 'times' && sum.given !== undefined)) {
    if (amount.measure !== 'm' || system === undefined || isNought(sum)) return [];
    // Worked out, a value with a name would no longer follow it; `(5 m - 6 m)` is no length.
    if (hasNames(sum) || amount.value.compare(0) < 0) return undefined;
    return [{ sum, length: amount.value }];
  }
  const inside = sum.inside.map(piecesIn);
  return inside.some(pieces => pieces === undefined) ? undefined : (inside.flat() as Piece[]);
}

function within({ moved }: Converted): number {
  return Math.max(0, ...moved.map(Number)) * MOST_TIMES;
}
