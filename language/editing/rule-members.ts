import type { Concern } from '../job/rule.ts';
import { CONCERNS, memberOf } from '../findings/members/members.ts';
import type { Member } from '../findings/members/member.ts';
import { kindOf, measureNamed } from '../measures/measures.ts';
import type { ParsedText } from '../syntax/parse.ts';
import { statementPathTo, type Statement } from '../syntax/statement-tree.ts';
import { RULE_WORDS, WORKED_WORDS } from './help/rule-words.ts';
import type { WordHelp } from './help/help.ts';
import { LONGEST_LINE } from './thing-help.ts';
import { wordHelp, type WordPlace } from './word-help.ts';

/** What the nearest `concerns` above a word of a rule says. */
export function concernAbove({ tokens }: ParsedText, rule: Statement, token: number): Concern | undefined {
  const above = rule.inside.filter(({ word, first }) => word === 'concerns' && first < token).at(-1);
  const said = above && above.end > above.first + 1 ? tokens[above.first + 1]!.image : undefined;
  return CONCERNS.find(each => each === said);
}

/** The quantity whose words stand at a place of a condition: before the last `is`. */
export function subjectOf(words: readonly { readonly image: string }[]): string | undefined {
  const is = words.findLastIndex(({ image }) => image === 'is');
  return words[is - 1]?.image;
}

/** What a word of a rule is that is none of the language: a quantity, or a word that one can be. */
export function helpOnRuleWord(parsed: ParsedText, token: number): WordHelp | undefined {
  const path = statementPathTo(parsed, token);
  const [rule, statement] = [path.at(-2), path.at(-1)];
  if (rule?.opens !== 'rule' || statement === undefined || statement.first === token) return undefined;
  const concern = concernAbove(parsed, rule, token);
  const word = parsed.tokens[token]!.image;
  const before = parsed.tokens.slice(statement.first, token);
  if (isAmongWords(before)) return helpOnChoice(subjectOf(before), word);
  if (Object.hasOwn(WORKED_WORDS, word)) return WORKED_WORDS[word];
  const member = concern && memberOf(concern, word);
  if (member !== undefined) return memberHelp(member);
  return statement.word === 'fix' ? helpOnChoice(before[1]?.image, word) : undefined;
}

/** Behind `is` and its words so far. */
function isAmongWords(before: readonly { readonly image: string }[]): boolean {
  const joints = before.findLastIndex(({ image }) => /^(?:is|and|or|when|needs)$/.test(image));
  return before[joints]?.image === 'is';
}

/** Help on a word that a quantity can be, as where a job says it. */
export function helpOnChoice(member: string | undefined, word: string): WordHelp | undefined {
  const place = member === undefined ? undefined : SAID_AT[member];
  const help = place && wordHelp(word, place);
  return help ?? (member === 'order-of-sizes' ? ORDERS[word] : undefined);
}

const grading: WordPlace = { block: 'material', statement: 'grading' };
const traffic: WordPlace = { block: 'area', statement: 'traffic' };
const madeOf: WordPlace = { block: 'unit', statement: 'made' };

/** Where a job says the words of a quantity. */
const SAID_AT: Readonly<Record<string, WordPlace>> = {
  traffic,
  'heaviest-traffic': traffic,
  grading,
  'base-grading': grading,
  'bed-grading': grading,
  'joint-grading': grading,
  'made-of': madeOf,
  roles: { block: 'material', statement: 'role' },
  role: { block: 'area' },
  ground: { block: 'side-kind', statement: 'ground' },
  holds: { block: 'side-kind', statement: 'holds' },
  drainage: { block: 'soil-kind', statement: 'drains' },
  'frost-heave': { block: 'soil-kind', statement: 'frost-heave' },
  winters: { block: 'site', statement: 'winters' },
  'edging-footing': { block: 'material' }
};

const ORDERS: Readonly<Record<string, WordHelp>> = {
  'thickness-last': { line: 'Length and width first', text: 'Length and width first, the thickness last.' },
  other: { line: 'Thicker than long', text: 'Thicker than long: the numbers may stand in the wrong order.' }
};

/** What a quantity of rules is, its measure, and its words. */
export function memberHelp({ name, of, measure, describe, choices, write }: Member): WordHelp {
  const kind = RULE_WORDS.within!['concerns']![of]!.line;
  const words = choices?.map(word => `\`${word}\``).join(', ');
  const value =
    measure === 'words' ? (words === undefined ? 'a name' : `one of ${words}`) : kindOf(dimensionsOf(measure));
  const parts = [
    `**${name}**: ${value}`,
    `${describe}.`,
    `Of: ${kind.charAt(0).toLowerCase()}${kind.slice(1)}.`,
    ...(write === undefined ? [] : ['A `fix` can write it.'])
  ];
  return { line: shortened(describe), text: parts.join('\n\n') };
}

/** The first of what is said there, where it is long. */
function shortened(line: string): string {
  if (line.length <= LONGEST_LINE) return line;
  const cut = line.slice(0, LONGEST_LINE - 1);
  return `${cut.slice(0, cut.lastIndexOf(' '))}…`;
}

function dimensionsOf(measure: string): Parameters<typeof kindOf>[0] {
  return measure === '' ? {} : (measureNamed(measure)?.dimensions ?? { [measure]: 1 });
}
