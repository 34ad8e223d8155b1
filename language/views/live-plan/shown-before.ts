import type { Finding } from '../../findings/finding.ts';
import type { Key } from '../../job/job.ts';
import { nameIn } from '../../job/key-names.ts';
import type { Evaluation } from '../../paving.ts';
import { errorBehind } from '../error-behind.ts';
import { errorWords } from '../job-lenses.ts';
import type { Piece } from './piece.ts';

/** A piece as it is shown: `before` where it is from before an error, with what is said of that: `the error in line 12`. */
export interface ShownPiece {
  readonly piece: Piece;
  readonly before?: string;
}

/**
 * Pieces that were sound and whose text is broken now, each with the error. What is no longer declared is gone, unless its
 * own first line is what can't be read.
 */
export function brokenPieces(
  evaluation: Evaluation,
  isFresh: (key: Key) => boolean,
  before: readonly Piece[]
): Map<Key, string> {
  const file = evaluation.texts[0]!.file;
  const missing = new Set(evaluation.numbers!.quantities.missing);
  const words = (error: Finding | undefined): string => errorWords(error === undefined ? {} : { error }, file);
  const errors = errorsByName(evaluation);
  const broken = new Map<Key, string>();
  for (const { key } of before) {
    if (missing.has(key)) broken.set(key, words(errorBehind(evaluation, key)));
    else if (!isFresh(key)) {
      const error = errorInName(key, evaluation, missing, errors);
      if (error !== undefined) broken.set(key, words(error));
    }
  }
  for (const piece of before) {
    const area = piece.with?.find(key => broken.has(key));
    if (area !== undefined && !isFresh(piece.key) && !broken.has(piece.key)) broken.set(piece.key, broken.get(area)!);
  }
  return broken;
}

/**
 * Errors of the text in lines that begin a block or may have: by the name that such a line ends with, as `terrace` of
 * `are terrace {`.
 */
function errorsByName({ findings, texts }: Evaluation): Map<string, Finding> {
  const lines = new Map(texts.map(({ file, text }) => [file, text.split('\n')]));
  const errors = new Map<string, Finding>();
  for (const finding of findings) {
    if (finding.family !== 'fault' || finding.severity !== 'error') continue;
    const [head = ''] = (lines.get(finding.file)?.[finding.line - 1] ?? '').split(/\{|\/\//, 1);
    const words = head.trim().split(/\s+/);
    const name = words.at(-1);
    if (words.length <= 2 && name !== undefined && !errors.has(name)) errors.set(name, finding);
  }
  return errors;
}

/** An area without a name may be any that is gone; a line `are terrace {` still names what it began. */
function errorInName(
  key: Key,
  evaluation: Evaluation,
  missing: ReadonlySet<Key>,
  errors: ReadonlyMap<string, Finding>
): Finding | undefined {
  if (key.includes('/')) return undefined;
  const named = errors.get(nameIn(key));
  if (named !== undefined) return named;
  return key.startsWith('area:') && missing.has(UNNAMED) ? errorBehind(evaluation, UNNAMED) : undefined;
}

/** The key of an area whose name can't be read. */
const UNNAMED: Key = 'area:unnamed';

/** Fresh pieces in their order, and each broken one behind the one that it stood behind. */
export function inTheirPlaces(
  fresh: readonly Piece[],
  before: readonly Piece[],
  broken: ReadonlyMap<Key, string>
): ShownPiece[] {
  const keys = new Set(fresh.map(({ key }) => key));
  const behind = new Map<Key | undefined, ShownPiece[]>();
  let last: Key | undefined;
  for (const piece of before) {
    const words = broken.get(piece.key);
    if (keys.has(piece.key)) last = piece.key;
    else if (words !== undefined) {
      const held = behind.get(last) ?? [];
      behind.set(last, held);
      held.push({ piece, before: words });
    }
  }
  return [...(behind.get(undefined) ?? []), ...fresh.flatMap(piece => [{ piece }, ...(behind.get(piece.key) ?? [])])];
}
