import type { IToken } from 'chevrotain';
import type { Hint } from './hints.ts';
import { nearest } from './nearest.ts';
import { writes } from './text-edit.ts';
import { BLOCKS } from './words.ts';

/** What helps in the statements that say how units lie; `at` is the odd word's index, or one past the end. */
export function layingHint(tokens: readonly IToken[], at: number): Hint | undefined {
  const start = statementBefore(tokens, at);
  const statement = tokens[start]?.tokenType.name;
  if (statement === undefined) return undefined;
  const clauses = BLOCKS.area.statements[statement]!.clauses;
  return (
    commaMissing(tokens, at, clauses) ??
    commaMissing(tokens, at - 1, clauses) ??
    (statement === 'paving' ? unitsParted(tokens, at) : sidesJoined(tokens, at, clauses)) ??
    shiftAlone(tokens, at) ??
    sidesMissing(tokens, at, statement) ??
    otherWord(tokens, at, statement)
  );
}

const STATEMENTS: ReadonlySet<string> = new Set(['paving', 'start', 'border', 'band']);

/** The index of the word that begins the statement around the odd word; -1 where it is no statement of laying. */
function statementBefore(tokens: readonly IToken[], at: number): number {
  for (let index = Math.min(at, tokens.length) - 1; index >= 0; index--) {
    const { tokenType, startLine } = tokens[index]!;
    if (tokenType.name === '{' || tokenType.name === '}') return -1;
    const before = tokens[index - 1];
    const isFirst = before === undefined || before.image === '{' || before.endLine !== startLine;
    if (isFirst && STATEMENTS.has(tokenType.name)) return index;
  }
  return -1;
}

function isName(token: IToken | undefined): boolean {
  return token?.tokenType.name === 'ID';
}

/** `border soldier-course block`, `band soldier course of block` */
export function courseFirst(tokens: readonly IToken[], at: number): Hint | undefined {
  const start = statementBefore(tokens, at);
  if (!/^(?:border|band)$/.test(tokens[start]?.tokenType.name ?? '')) return undefined;
  const [first, second] = [tokens[start + 1], tokens[start + 2]];
  const course = /^(?:soldier|sailor)/.exec(first?.image ?? '')?.[0];
  if (first === undefined || !isName(first) || course === undefined) return undefined;
  let behind = second?.image === 'course' ? start + 3 : start + 2;
  if (/^(?:of|in|with)$/.test(tokens[behind]?.image ?? '')) behind++;
  const unit = tokens[behind];
  if (unit === undefined || !isName(unit) || unit.startLine !== first.startLine) return undefined;
  const words = `${unit.image} in ${course}-course`;
  return {
    message: `The unit stands first: \`${tokens[start]!.image} ${words}\`.`,
    fixes: writes([words], first.startOffset, unit.endOffset! + 1 - first.startOffset),
    isWhole: true
  };
}

/** Clauses that a comma parts from what stands before them. */
const PARTED: ReadonlySet<string> = new Set([
  ...['joints', 'whole', 'along', 'equal', 'from', 'shifted', 'turned', 'carried', 'mitred', 'butted']
]);

/** `start equal cuts along near`, `paving block in running-bond joints 3 mm` */
function commaMissing(tokens: readonly IToken[], at: number, clauses: readonly string[]): Hint | undefined {
  const [odd, before] = [tokens[at], tokens[at - 1]];
  if (odd === undefined || before === undefined || before.endLine !== odd.startLine) return undefined;
  if (!PARTED.has(odd.image) || !clauses.includes(odd.image)) return undefined;
  const ends = isName(before) || /^(?:NUMBER|MEASURE|\)|cuts|round|rest|mitred|butted)$/.test(before.tokenType.name);
  if (!ends) return undefined;
  const end = before.endOffset! + 1;
  return {
    message: `Put a comma before \`${odd.image}\`.`,
    fixes: [{ title: 'Put a comma before it', edits: [{ start: end, end, text: ',' }] }],
    isWhole: true
  };
}

/** `paving slab-600 and slab-300 in pinwheel` */
function unitsParted(tokens: readonly IToken[], at: number): Hint | undefined {
  const [odd, before] = [tokens[at], tokens[at - 1]];
  if (odd?.image !== 'and' || before === undefined || !isName(before)) return undefined;
  const [start, length] = [before.endOffset! + 1, odd.endOffset! - before.endOffset!];
  return {
    message: 'Units of several sizes are parted by commas.',
    fixes: [{ title: 'Write a comma', edits: [{ start, end: start + length, text: ',' }] }],
    isWhole: true
  };
}

/** `border block in soldier-course along near, left` */
function sidesJoined(tokens: readonly IToken[], at: number, clauses: readonly string[]): Hint | undefined {
  const [odd, comma, before] = [tokens[at], tokens[at - 1], tokens[at - 2]];
  if (odd === undefined) return undefined;
  const isSide = isName(odd) ? nearest(odd.image, clauses) === undefined : /^legs?$/.test(odd.image);
  if (!isSide || comma?.image !== ',' || before === undefined) return undefined;
  if (!isName(before) && before.tokenType.name !== 'NUMBER') return undefined;
  return {
    message: 'Further sides follow with `and`.',
    fixes: [
      { title: 'Write `and`', edits: [{ start: before.endOffset! + 1, end: comma.endOffset! + 1, text: ' and' }] }
    ],
    isWhole: true
  };
}

/** `start shifted 40 mm`: along the courses, and not across them. */
function shiftAlone(tokens: readonly IToken[], at: number): Hint | undefined {
  const [odd, measure] = [tokens[at], tokens[at + 1]];
  if (tokens[at - 1]?.tokenType.name !== 'shifted' || odd?.tokenType.name !== 'NUMBER') return undefined;
  const last = measure?.tokenType.name === 'MEASURE' ? measure : odd;
  const words = `(${last === odd ? odd.image : `${odd.image} ${last.image}`}, 0)`;
  return {
    message: `First along the courses, then across them: \`shifted ${words}\`.`,
    fixes: writes([words], odd.startOffset, last.endOffset! + 1 - odd.startOffset),
    isWhole: true
  };
}

/** `border block in soldier-course` */
function sidesMissing(tokens: readonly IToken[], at: number, statement: string): Hint | undefined {
  const [odd, course, before] = [tokens[at], tokens[at - 1], tokens[at - 2]];
  if (statement !== 'border' || course === undefined || !isName(course) || before?.image !== 'in') return undefined;
  if (odd !== undefined && odd.startLine === course.endLine && odd.image !== '}') return undefined;
  const end = course.endOffset! + 1;
  return {
    message: 'Say where it lies: `all round`, `along` and the sides, or `round` and a box, pit or inset.',
    fixes: [{ title: 'Write `all round`', edits: [{ start: end, end, text: ' all round' }] }],
    isWhole: true
  };
}

/** What people write for words of a statement. */
const OTHERWISE: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  paving: { joint: 'joints', pattern: 'in', with: 'in' },
  start: { at: 'from', in: 'from', parallel: 'along', offset: 'shifted', moved: 'shifted', rotated: 'turned' },
  border: { around: 'round', without: 'except', but: 'except', mitered: 'mitred', miter: 'mitred', mitre: 'mitred' },
  band: { along: 'across', square: 'across' }
};

function otherWord(tokens: readonly IToken[], at: number, statement: string): Hint | undefined {
  const odd = tokens[at];
  const others = OTHERWISE[statement]!;
  if (odd === undefined || !Object.hasOwn(others, odd.image)) return undefined;
  const called = others[odd.image]!;
  return { message: `Did you mean \`${called}\`?`, fixes: writes([called], odd.startOffset, odd.image.length) };
}
