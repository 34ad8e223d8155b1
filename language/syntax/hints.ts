import type { IToken } from 'chevrotain';
import { finishHint } from './finish-hints.ts';
import { heightHint } from './height-hints.ts';
import { courseFirst, layingHint } from './laying-hints.ts';
import { nearest } from './nearest.ts';
import { priceHint } from './price-hints.ts';
import { ruleHint, testHint } from './rule-hints.ts';
import { writes, type TextFix } from './text-edit.ts';
import { BLOCKS, type Statement } from './words.ts';

/** What else may help where a statement breaks off or goes wrong: a sentence, and what would mend it. */
export interface Hint {
  readonly message: string;
  readonly fixes: readonly TextFix[];
  /** It says all that could stand here. */
  readonly isWhole?: true;
}

/** `at` is the odd word's index, or one past the end. */
export function hint(tokens: readonly IToken[], at: number, isKnownName: (name: string) => boolean): Hint | undefined {
  return (
    nameInWords(tokens, at) ??
    moneyPer(tokens, at) ??
    courseFirst(tokens, at) ??
    heightHint(tokens, at) ??
    finishHint(tokens, at) ??
    twoWords(tokens, at, isKnownName) ??
    layingHint(tokens, at) ??
    needlessWord(tokens, at) ??
    outlineForm(tokens, at) ??
    statementOnLine(tokens, at) ??
    priceHint(tokens, at) ??
    ruleHint(tokens, at) ??
    nearWord(tokens, at) ??
    testHint(tokens, at)
  );
}

/** `24 GBP an hour`, `38 GBP a tonne`: what money is asked for stands behind `per`. */
function moneyPer(tokens: readonly IToken[], at: number): Hint | undefined {
  const [money, article, measure] = [tokens[at - 1], tokens[at], tokens[at + 1]];
  if (article === undefined || !/^an?$/.test(article.image) || measure === undefined) return undefined;
  if (money?.tokenType.name !== 'MEASURE' || !/^[A-Z]{3}$/.test(money.image)) return undefined;
  if (measure.endLine !== article.startLine || !/^[a-z]/i.test(measure.image)) return undefined;
  const fixes = writes(['per'], article.startOffset, article.image.length);
  return { message: `Write \`per ${measure.image}\`.`, fixes, isWhole: true };
}

/** `below the door-sill`, `14 x 16 ft wide`, `section across from A to C`: a word that people say and the language does not need. */
function needlessWord(tokens: readonly IToken[], at: number): Hint | undefined {
  for (const index of [at, at - 1]) {
    const [before, word] = [tokens[index - 1], tokens[index]];
    if (before === undefined || word === undefined || !isName(word)) continue;
    const ofSize = SIZE_WORDS.has(word.image) && before.tokenType.name === 'MEASURE';
    const ofLine = word.image === 'from' && LINES.has(tokens[index - 2]?.tokenType.name ?? '');
    if (!ofSize && !ofLine && !ARTICLES.has(word.image)) continue;
    const [start, end] = [before.endOffset! + 1, word.endOffset! + 1];
    const fixes = [{ title: `Take \`${word.image}\` out`, edits: [{ start, end, text: '' }] }];
    return { message: `Leave \`${word.image}\` out.`, fixes, isWhole: true };
  }
  return undefined;
}

const ARTICLES: ReadonlySet<string> = new Set(['the', 'a', 'an', 'my', 'our']);
/** Statements in which points follow upon a name. */
const LINES: ReadonlySet<string> = new Set(['line', 'section']);
const SIZE_WORDS: ReadonlySet<string> = new Set(['wide', 'long', 'deep', 'thick', 'high']);

/** `outline 12 x 16 ft`: its form is not said. */
function outlineForm(tokens: readonly IToken[], at: number): Hint | undefined {
  const index = tokens[at]?.tokenType.name === 'outline' ? at : at - 1;
  const [outline, number] = [tokens[index], tokens[index + 1]];
  if (outline?.tokenType.name !== 'outline' || number?.tokenType.name !== 'NUMBER') return undefined;
  const edit = { start: number.startOffset, end: number.startOffset, text: 'rectangle ' };
  return {
    message: 'Say its form: `outline rectangle 12 x 16 ft` or `outline circle 3 m across`.',
    fixes: [{ title: 'Write `rectangle`', edits: [edit] }]
  };
}

/** `{ role edging width 25 mm }`, `{ traffic foot, base 5 in }`: the second statement stands on the line of the first. */
function statementOnLine(tokens: readonly IToken[], at: number): Hint | undefined {
  const behindComma = tokens[at]?.image === ',' ? statementHere(tokens, at + 1) : undefined;
  return (
    behindComma ??
    statementHere(tokens, at) ??
    (tokens[at - 2]?.image === ',' ? statementHere(tokens, at - 1) : undefined)
  );
}

function statementHere(tokens: readonly IToken[], at: number): Hint | undefined {
  const [odd, before] = [tokens[at], tokens[at - 1]];
  if (odd === undefined || before === undefined || before.endLine !== odd.startLine || !isName(odd)) return undefined;
  const lines = statementsAt(tokens, at);
  const block = Object.values(BLOCKS).find(
    ({ statements }) => Object.hasOwn(statements, odd.image) && lines.some(line => Object.hasOwn(statements, line))
  );
  if (block === undefined) return undefined;
  // A comma that parted them is no longer wanted.
  const [start, end] = [before.image === ',' ? before.startOffset : before.endOffset! + 1, odd.startOffset];
  const fix = block.commas
    ? { title: 'Put a comma before it', edits: [{ start, end: start, text: ',' }] }
    : { title: 'Give it a line of its own', edits: [{ start, end, text: `\n${indentOf(tokens, at)}` }] };
  return { message: `\`${odd.image}\` begins a statement: give it a line of its own.`, fixes: [fix], isWhole: true };
}

/** As far in as the first word of the line. */
function indentOf(tokens: readonly IToken[], at: number): string {
  let first = at;
  while (first > 0 && tokens[first - 1]!.endLine === tokens[at]!.startLine) first--;
  return ' '.repeat(tokens[first]!.startColumn! - 1);
}

/** `rule clay base {`, `unit big red slab {` */
function nameInWords(tokens: readonly IToken[], at: number): Hint | undefined {
  let first = at;
  while (tokens[first - 1] !== undefined && isName(tokens[first - 1]!)) first--;
  let end = first;
  while (tokens[end] !== undefined && isName(tokens[end]!)) end++;
  const [word, brace] = [tokens[first - 1]?.tokenType.name ?? '', tokens[end]];
  const statement = Object.hasOwn(BLOCKS.spec.statements, word) ? BLOCKS.spec.statements[word] : undefined;
  if (statement?.opens === undefined || brace?.tokenType.name !== '{' || end - first < 2) return undefined;
  const joined = tokens
    .slice(first, end)
    .map(({ image }) => image)
    .join('-');
  const [start, length] = [tokens[first]!.startOffset, tokens[end - 1]!.endOffset! + 1 - tokens[first]!.startOffset];
  const fixes = writes([joined], start, length);
  return { message: `Names carry hyphens: write \`${joined}\`.`, fixes, isWhole: true };
}

/** `crushed stone` where `crushed-stone` is known, `herringbone 45 degrees` where `herringbone-45` is. */
function twoWords(tokens: readonly IToken[], at: number, isKnownName: (name: string) => boolean): Hint | undefined {
  for (const second of [at, at - 1, at - 2]) {
    const [one, other] = [tokens[second - 1], tokens[second]];
    if (one === undefined || other === undefined || !isName(one)) continue;
    if (!isName(other) && other.tokenType.name !== 'NUMBER') continue;
    const joined = `${one.image}-${other.image}`;
    if (one.endLine !== other.startLine || !isKnownName(joined)) continue;
    const measure = isName(other) ? undefined : tokens[second + 1];
    const last = measure?.tokenType.name === 'MEASURE' ? measure : other;
    const length = last.endOffset! + 1 - one.startOffset;
    return { message: `Names carry hyphens: write \`${joined}\`.`, fixes: writes([joined], one.startOffset, length) };
  }
  return undefined;
}

/** A word of the statement that is spelled a little differently, or that others call otherwise. */
function nearWord(tokens: readonly IToken[], at: number): Hint | undefined {
  const clauses = clausesAt(tokens, at);
  for (const token of [tokens[at], tokens[at - 1]]) {
    if (token === undefined || !isName(token)) continue;
    const called = OTHERWISE[token.image.toLowerCase()];
    const near = called !== undefined && clauses.includes(called) ? called : nearest(token.image, clauses);
    if (near !== undefined)
      return {
        message: `Did you mean \`${near}\`?`,
        fixes: writes([near], token.startOffset, token.image.length)
      };
  }
  return undefined;
}

/** The clause words of the statement that holds the odd word. */
function clausesAt(tokens: readonly IToken[], at: number): readonly string[] {
  const statement = statementAt(tokens, at);
  return statement === undefined ? [] : STATEMENTS.get(statement)!.clauses;
}

/** The word of the statement that holds the odd word; none in a block whose lines begin with names. */
function statementAt(tokens: readonly IToken[], at: number): string | undefined {
  return statementsAt(tokens, at)[0];
}

/** The statement words before the odd word in its block, the nearest first: that of a statement may be a clause too. */
function statementsAt(tokens: readonly IToken[], at: number): string[] {
  const words: string[] = [];
  for (let index = Math.min(at, tokens.length - 1); index >= 0; index--) {
    const { name } = tokens[index]!.tokenType;
    if (name === '{' || words.length === MOST_STATEMENTS) break;
    if (STATEMENTS.has(name)) words.push(name);
  }
  return words;
}

/** `outline rectangle … corner …`: more of one statement's words begin none. */
const MOST_STATEMENTS = 4;

function isName(token: IToken): boolean {
  return token.tokenType.name === 'ID';
}

const STATEMENTS: ReadonlyMap<string, Statement> = new Map(
  Object.values(BLOCKS).flatMap(block => Object.entries<Statement>(block.statements))
);

/** Words that people use for those of the language. */
const OTHERWISE: Readonly<Record<string, string>> = {
  center: 'centre',
  diameter: 'across',
  dia: 'across',
  wide: 'across',
  curved: 'bowed',
  arc: 'bowed',
  round: 'rounded',
  rotated: 'turned',
  angle: 'turned',
  under: 'below',
  over: 'above'
};
