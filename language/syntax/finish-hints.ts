import type { IToken } from 'chevrotain';
import type { Hint } from './hints.ts';
import type { TextEdit } from './text-edit.ts';

/** What helps in a finish that falls; `at` is the odd word's index, or one past the end. */
export function finishHint(tokens: readonly IToken[], at: number): Hint | undefined {
  const start = finishBefore(tokens, at);
  if (start < 0) return undefined;
  return (
    otherWord(tokens, at, start) ??
    commaMissing(tokens, at) ??
    bareRate(tokens, at, start) ??
    awayMissing(tokens, at) ??
    noDirection(tokens, at, start) ??
    heightMissing(tokens, at, start)
  );
}

function finishBefore(tokens: readonly IToken[], at: number): number {
  for (let index = Math.min(at, tokens.length) - 1; index >= 0; index--) {
    const { tokenType } = tokens[index]!;
    if (tokenType.name === '{' || tokenType.name === '}') return -1;
    if (tokenType.name === 'finish') return index;
  }
  return -1;
}

/** Words that people use for `falling`. */
const FALLING: ReadonlySet<string> = new Set([
  ...['fall', 'falls', 'slope', 'slopes', 'sloping', 'sloped', 'pitch', 'pitched', 'grade', 'graded', 'drop', 'drops']
]);

/** `finish 3 in below door-sill along near, slope 2 %` */
function otherWord(tokens: readonly IToken[], at: number, start: number): Hint | undefined {
  const odd = tokens[at];
  if (odd?.tokenType.name !== 'ID' || !FALLING.has(odd.image)) return undefined;
  const end = endOfRate(tokens, at + 1);
  const edits = [{ start: odd.startOffset, end: odd.endOffset! + 1, text: 'falling' }];
  return falls(tokens, start, end, edits, 'Write `falling`');
}

/** `finish 3 in below door-sill along near falling 1:60 away from near` */
function commaMissing(tokens: readonly IToken[], at: number): Hint | undefined {
  const [odd, before] = [tokens[at], tokens[at - 1]];
  if (odd === undefined || !/^(?:falling|rising)$/.test(odd.tokenType.name)) return undefined;
  if (before === undefined || /^(?:,|finish)$/.test(before.tokenType.name)) return undefined;
  const end = before.endOffset! + 1;
  return {
    message: `Put a comma before \`${odd.image}\`.`,
    fixes: [{ title: 'Put a comma before it', edits: [{ start: end, end, text: ',' }] }],
    isWhole: true
  };
}

/** `finish 3 in below door-sill along near, 1:60` */
function bareRate(tokens: readonly IToken[], at: number, start: number): Hint | undefined {
  const [odd, before] = [tokens[at], tokens[at - 1]];
  if (odd?.tokenType.name !== 'NUMBER' || before === undefined || before.tokenType.name === 'finish') return undefined;
  const isSlope = odd.image.includes(':') || tokens[at + 1]?.image === '%';
  if (!isSlope) return undefined;
  const end = endOfRate(tokens, at);
  const isAfterComma = before.image === ',';
  const from = isAfterComma ? odd.startOffset : before.endOffset! + 1;
  const edits = [{ start: from, end: odd.startOffset, text: isAfterComma ? 'falling ' : ', falling ' }];
  return falls(tokens, start, end, edits, 'Write `falling`');
}

/** `falling 1:60 from near` */
function awayMissing(tokens: readonly IToken[], at: number): Hint | undefined {
  const odd = tokens[at];
  if (odd?.tokenType.name !== 'from' || tokens[at - 1]?.image === 'away') return undefined;
  const edits = [{ start: odd.startOffset, end: odd.startOffset, text: 'away ' }];
  return { message: 'It falls `away from` a line.', fixes: [{ title: 'Write `away from`', edits }], isWhole: true };
}

/** `finish 3 in below door-sill along near, falling 1:60` */
function noDirection(tokens: readonly IToken[], at: number, start: number): Hint | undefined {
  let way = Math.min(at, tokens.length) - 1;
  while (way > start && !/^(?:falling|rising)$/.test(tokens[way]!.tokenType.name)) way--;
  if (way <= start || endOfRate(tokens, way + 1) !== at) return undefined;
  if (tokens[at]?.startLine === tokens[at - 1]!.endLine && !/^[,}]$/.test(tokens[at]!.image)) return undefined;
  return falls(tokens, start, at, [], 'Say which way it falls');
}

/** `finish falling 1:60 away from near` */
function heightMissing(tokens: readonly IToken[], at: number, start: number): Hint | undefined {
  if (at !== start + 1 || !/^(?:falling|rising)$/.test(tokens[at]?.tokenType.name ?? '')) return undefined;
  const message =
    'First say how high it is, and where: `finish 2 1/2 in below door-sill along A to B, falling 1/4 in per ft away from A to B`.';
  return { message, fixes: [], isWhole: true };
}

/** One past the last word of a rate: `2 %`, `1:60`, `1/4 in per ft`. */
function endOfRate(tokens: readonly IToken[], from: number): number {
  let end = from;
  while (/^(?:NUMBER|MEASURE|per)$/.test(tokens[end]?.tokenType.name ?? '')) end++;
  return end;
}

/** A fall with its direction: where none is written behind its rate, away from the line that the height is told along. */
function falls(
  tokens: readonly IToken[],
  start: number,
  end: number,
  edits: readonly TextEdit[],
  title: string
): Hint | undefined {
  const last = tokens[end - 1]!;
  const isDirected = /^(?:away|along|towards)$/.test(tokens[end]?.image ?? '');
  const line = lineOf(tokens.slice(start, end));
  const rate = last.tokenType.name === 'ID' ? '1:60' : undefined;
  const message = `A fall is told with its direction: \`falling ${rate ?? '1:60'} away from ${line ?? 'A to B'}\`.`;
  if (isDirected) return { message, fixes: [{ title, edits }], isWhole: true };
  if (line === undefined || rate !== undefined) return { message, fixes: [], isWhole: true };
  const behind = last.endOffset! + 1;
  const away = { start: behind, end: behind, text: ` away from ${line}` };
  return { message, fixes: [{ title: `Write \`away from ${line}\``, edits: [...edits, away] }], isWhole: true };
}

/** The line that the height is told along, as written. */
function lineOf(tokens: readonly IToken[]): string | undefined {
  const along = tokens.findIndex(({ tokenType }) => tokenType.name === 'along');
  if (along < 0) return undefined;
  const rest = tokens.slice(along + 1);
  const end = rest.findIndex(
    ({ tokenType: { name } }, at) =>
      !/^(?:ID|to|leg|left|right)$/.test(name) && !(name === 'NUMBER' && rest[at - 1]?.tokenType.name === 'leg')
  );
  const words = rest.slice(0, end < 0 ? rest.length : end).filter(({ image }) => !FALLING.has(image));
  return words.length === 0 ? undefined : words.map(({ image }) => image).join(' ');
}
