import { ChunkIndex } from '../syntax/chunk-index.ts';
import type { Parse, ParsedText } from '../syntax/parse.ts';
import type { Chunk } from '../syntax/scanner.ts';
import { firstIndex } from '../syntax/statement-tree.ts';
import { applied, beginsLine, type Span, type TextEdit } from '../syntax/text-edit.ts';
import { differences } from './differences.ts';
import { formatText, readsAlike } from './format.ts';
import { BLANK_LINE } from './layout.ts';

/** What has to change for a text to be in its canonical form, as far as it is sound: a broken part stays as it is. */
export function formatEdits(parsed: ParsedText, parse: Parse): TextEdit[] {
  const parts = parsed.faults.length === 0 ? [{ start: 0, end: parsed.text.length }] : soundParts(parsed);
  const edits = parts.flatMap(({ start, end }) => {
    const part = parse(parsed.text.slice(start, end));
    const text = end === parsed.text.length ? formatText(part.text, parse) : formattedInside(part, parse);
    return differences(part, parse(text)).map(edit => ({
      ...edit,
      start: edit.start + start,
      end: edit.end + start
    }));
  });
  return readsAlike(parsed, parse(applied(parsed.text, edits))) ? edits : [];
}

/**
 * The same for a part of a text, whole lines: only what lies between words of these lines, and before their first. No
 * more of the text is read than these lines can line up with.
 */
export function formatEditsIn(parsed: ParsedText, start: number, end: number, parse: Parse): TextEdit[] {
  const around = linedUpWith(parsed, start, end);
  const part = parse(parsed.text.slice(around.start, around.end));
  const edits = formatEdits(part, parse).filter(
    edit => edit.start + around.start >= start && edit.end + around.start <= end
  );
  if (!readsAlike(part, parse(applied(part.text, edits)))) return [];
  return edits.map(edit => ({ ...edit, start: edit.start + around.start, end: edit.end + around.start }));
}

/**
 * The top-level statements of some lines, with all up to the next blank line between two statements: no column goes on
 * beyond it. One statement more on either side tells how the blank line is to be.
 */
function linedUpWith({ text, chunks, tokens }: ParsedText, start: number, end: number): Span {
  const isParted = (at: number): boolean => {
    const { start: begins, firstToken } = chunks[at]!;
    const before = tokens[firstToken - 1];
    const from = before === undefined ? 0 : before.startOffset + before.image.length;
    return BLANK_LINE.test(text.slice(Math.max(from, chunks[at - 1]!.start), begins));
  };
  const isApart = (at: number): boolean => beginsLine(text, chunks[at]!.start);
  let first = Math.max(0, firstIndex(chunks, chunk => chunk.start > start) - 1);
  while (first > 0 && !isParted(first)) first--;
  if (first > 0) first--;
  while (first > 0 && !isApart(first)) first--;
  let after = Math.max(
    1,
    firstIndex(chunks, chunk => chunk.start > end)
  );
  while (after < chunks.length && !isParted(after)) after++;
  after++;
  while (after < chunks.length && !isApart(after)) after++;
  return {
    start: first === 0 ? 0 : lineStart(text, chunks[first]!.start),
    end: after >= chunks.length ? text.length : lineStart(text, chunks[after]!.start)
  };
}

/** White space that parts it from a broken part stays. */
function formattedInside(part: ParsedText, parse: Parse): string {
  return formatText(part.text, parse).trimEnd() + /\s*$/.exec(part.text)![0];
}

/** Runs of sound chunks, from the beginning of a line to the beginning of another. */
function soundParts(parsed: ParsedText): { start: number; end: number }[] {
  const { text, chunks } = parsed;
  const kept = keptAsTheyAre(parsed);
  const parts: { start: number; end: number }[] = [];
  let isOpen = false;
  chunks.forEach((chunk, at) => {
    const begins = lineStart(text, at === 0 ? 0 : chunk.start);
    if (isOpen && kept.has(chunk)) parts.at(-1)!.end = begins;
    if (!isOpen && !kept.has(chunk) && beginsLine(text, chunk.start)) parts.push({ start: begins, end: text.length });
    isOpen = !kept.has(chunk) && (isOpen || beginsLine(text, chunk.start));
  });
  return parts;
}

/** Broken chunks, those that stand on a line with them, and neighbours whose columns line up with theirs. */
function keptAsTheyAre(parsed: ParsedText): ReadonlySet<Chunk> {
  const { text, chunks } = parsed;
  const index = new ChunkIndex(parsed);
  const kept = new Set(chunks.filter(chunk => index.isBroken(chunk.start)));
  const belongs = (chunk: Chunk, neighbour: Chunk | undefined): boolean => {
    if (neighbour === undefined || !kept.has(neighbour)) return false;
    const [first, second] = chunk.start < neighbour.start ? [chunk, neighbour] : [neighbour, chunk];
    if (!beginsLine(text, second.start)) return true;
    return chunk.word === neighbour.word && !/\n\s*\n/.test(text.slice(first.start, second.start));
  };
  chunks.forEach((chunk, at) => belongs(chunk, chunks[at - 1]) && kept.add(chunk));
  for (let at = chunks.length - 1; at >= 0; at--) if (belongs(chunks[at]!, chunks[at + 1])) kept.add(chunks[at]!);
  return kept;
}

function lineStart(text: string, offset: number): number {
  return offset === 0 ? 0 : text.lastIndexOf('\n', offset - 1) + 1;
}
