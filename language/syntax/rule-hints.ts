import type { IToken } from 'chevrotain';
import type { Hint } from './hints.ts';
import { writes, type TextFix } from './text-edit.ts';
import { BLOCKS } from './words.ts';

/** What helps in the statements of a rule; `at` is the odd word's index, or one past the end. */
export function ruleHint(tokens: readonly IToken[], at: number): Hint | undefined {
  const start = statementBefore(tokens, at);
  if (tokens[start]?.tokenType.name === 'cites') return placeInQuotes(tokens, start);
  return isTest(tokens, start) ? better(testAt(tokens, start, at)) : undefined;
}

/** The index of the word that begins the statement before the odd word. */
function statementBefore(tokens: readonly IToken[], at: number): number {
  // The odd word may begin the next statement: something is missing then in the one before.
  for (let index = Math.min(at, tokens.length) - 1; index >= 0; index--)
    if (isStatementWord(tokens[index]!) && isFirst(tokens, index)) return index;
  return -1;
}

function isStatementWord({ tokenType }: IToken): boolean {
  return Object.hasOwn(BLOCKS.rule.statements, tokenType.name);
}

/** Behind `needs` of a line `when` is a word of that line. */
function isFirst(tokens: readonly IToken[], index: number): boolean {
  const before = tokens[index - 1];
  return before === undefined || before.image === '{' || before.endLine !== tokens[index]!.startLine;
}

// ---- cites ----

/** `cites leaflet, page 3` */
function placeInQuotes(tokens: readonly IToken[], start: number): Hint | undefined {
  const [cites, source, next] = tokens.slice(start, start + 3);
  if (cites === undefined || source === undefined || next === undefined) return undefined;
  if (next.startLine !== cites.startLine) return undefined;
  const first = next.image === ',' ? start + 3 : start + 2;
  let end = first;
  while (tokens[end]?.startLine === cites.startLine && ![',', '}'].includes(tokens[end]!.image)) end++;
  const place = tokens.slice(first, end);
  if (place.length === 0 || place.some(({ tokenType }) => tokenType.name === 'STRING')) return undefined;
  const written = `"${asWritten(place)}"`;
  const edit = { start: source.endOffset! + 1, end: place.at(-1)!.endOffset! + 1, text: `, ${written}` };
  return {
    message: `The place stands in quotes: \`cites ${source.image}, ${written}\`.`,
    fixes: [{ title: `Write \`${written}\``, edits: [edit] }]
  };
}

// ---- needs and when ----

/** What the words of people come to that compare. */
const SIGNS: readonly (readonly [sign: string, words: RegExp])[] = [
  [
    'at most',
    /^(?:(?:at )?max(?:imum)?|(?:not|no) \S+ than|(?:not|no) (?:more|over|above)|up to|(?:at )?most)(?: of)?$/
  ],
  ['at least', /^(?:(?:at )?min(?:imum)?|(?:not|no) (?:less|under|below)|from|of at least|(?:at )?least)(?: of)?$/],
  ['more than', /^(?:over|above|more|(?:greater|bigger|larger|longer|wider|thicker|deeper|higher) than)$/],
  ['less than', /^(?:under|below|less|(?:smaller|shorter|narrower|thinner|shallower|lower|fewer) than)$/]
];

/** `no thinner than` is at least. */
const NOT_SMALLER = /^(?:not|no) (?:less|smaller|shorter|narrower|thinner|shallower|lower|fewer) than$/;

/** Words that say nothing between what is looked at and what is asked of it. */
const NEEDLESS = /^(?:(?:must|should|shall|has to|have to|to|will) be|be|is|are|=|of)(?: |$)/;

/** Where nothing says how something is compared; none in a test that is only not at its end. */
export function testHint(tokens: readonly IToken[], at: number): Hint | undefined {
  const start = statementBefore(tokens, at);
  if (!isTest(tokens, start) || testAt(tokens, start, at).some(({ tokenType }) => COMPARES.has(tokenType.name)))
    return undefined;
  return { message: 'Such as `joint at most 4 mm`, `bond is stack-bond` or `edging is said`.', fixes: [] };
}

const COMPARES: ReadonlySet<string> = new Set(['is', 'at', 'more', 'less']);

function isTest(tokens: readonly IToken[], start: number): boolean {
  const statement = tokens[start]?.tokenType.name;
  return statement === 'needs' || statement === 'when';
}

/** The words of the test that the odd word stands in or behind. */
function testAt(tokens: readonly IToken[], start: number, at: number): readonly IToken[] {
  let first = Math.min(at, tokens.length);
  while (first > start + 1 && !PARTS.has(tokens[first - 1]!.tokenType.name)) first--;
  let end = first;
  while (end < tokens.length && !endsTest(tokens, end)) end++;
  return tokens.slice(first, end);
}

const PARTS: ReadonlySet<string> = new Set(['and', 'or', 'when', 'needs']);

function endsTest(tokens: readonly IToken[], index: number): boolean {
  const token = tokens[index]!;
  return PARTS.has(token.tokenType.name) || token.image === '}' || (isStatementWord(token) && isFirst(tokens, index));
}

/** A test in the words of rules, for one in other words. */
function better(test: readonly IToken[]): Hint | undefined {
  const written = asWritten(test);
  const [, subject, rest = ''] = /^(\S+(?: [-+*/] \S+)*)(?: (.*))?$/.exec(written) ?? [];
  if (subject === undefined || !/^[\p{L}(]/u.test(subject)) return undefined;
  const asked = rest.replace(NEEDLESS, '');
  if (rest === '')
    return instead(
      test,
      [`${subject} is said`],
      `Say what is asked of it: \`${subject} is said\`, \`${subject} is …\` for a name or word, \`${subject} at least …\` or \`at most …\` for a number.`
    );
  if (/^(?:said|given|there|present)$/.test(asked)) return instead(test, [`${subject} is said`]);
  const bond = /^(?:(not) )?(?:laid )?in (\S+)$/.exec(asked);
  if (bond !== null) return instead(test, [`bond is ${bond[1] === undefined ? '' : 'not '}${bond[2]!}`]);
  const word = /^(not )?([\p{L}][\p{L}\p{N}-]*)$/u.exec(asked);
  if (word !== null && !SIGN_WORDS.has(word[2]!)) return instead(test, [`${subject} is ${asked}`]);
  return compared(subject, asked, test);
}

const SIGN_WORDS: ReadonlySet<string> = new Set(['at', 'more', 'less', 'least', 'most', 'not', 'than', 'max', 'min']);

/** `joint max 4 mm`, `joint 4 mm max`, `joint 4 mm` */
function compared(subject: string, asked: string, test: readonly IToken[]): Hint | undefined {
  const [, before, limit, behind] =
    /^(?:(\D*?[^\d\s-]) )?(\(?-? ?[0-9.½¼¾].*?)(?: (max(?:imum)?|min(?:imum)?))?$/.exec(asked) ?? [];
  if (limit === undefined) return undefined;
  const words = before ?? behind;
  if (words === undefined) {
    const tests = [`${subject} at least ${limit}`, `${subject} at most ${limit}`];
    return instead(test, tests, `Say whether that is the least or the most: \`${tests[0]!}\` or \`${tests[1]!}\`.`);
  }
  const plain = words.replace(NEEDLESS, '');
  const sign = NOT_SMALLER.test(plain)
    ? 'at least'
    : SIGNS.find(([name, said]) => name === plain || said.test(plain))?.[0];
  return sign === undefined ? undefined : instead(test, [`${subject} ${sign} ${limit}`]);
}

function instead(test: readonly IToken[], tests: readonly string[], message?: string): Hint {
  const start = test[0]!.startOffset;
  const fixes: TextFix[] = writes(tests, start, test.at(-1)!.endOffset! + 1 - start);
  return { message: message ?? `Write \`${tests[0]!}\`.`, fixes, isWhole: true };
}

/** Words as they stand, with one space where any white space parts them. */
function asWritten(tokens: readonly IToken[]): string {
  return tokens
    .map(({ image, startOffset }, at) => {
      const before = tokens[at - 1];
      return before !== undefined && before.endOffset! + 1 < startOffset ? ` ${image}` : image;
    })
    .join('');
}
