import type { Place } from '../findings/finding.ts';
import type { SpecText } from '../lowering/names.ts';
import { meetsOf, statementTree, type Statement } from '../syntax/statement-tree.ts';
import type { BlockName } from '../syntax/words.ts';
import { placeBetween, written } from './words.ts';

/** A thing, a part of one, or a statement, as the list of contents shows it. */
export interface Entry {
  /** The word that it begins with; of a side of an area `side`, of a line of heights `levels`, of a line of the log `entry`. */
  readonly word: string;
  readonly name: string;
  /** Its headline: an outline, a role, a size. */
  readonly detail: string;
  readonly place: Place;
  /** Within `place`. */
  readonly namePlace: Place;
  /** It is declared here, and can be looked for by its name. */
  readonly isThing: boolean;
  readonly inside: readonly Entry[];
}

/** Everything in a text, one within the other; also of a broken text, as far as it could be read. */
export function contentsOf(text: SpecText): Entry[] {
  return statementTree(text.parsed).map(statement => entry(text, statement));
}

/** The statement inside a block that says most of it: the first of these that is there. */
const HEADLINES: Readonly<Record<string, readonly string[]>> = {
  job: ['rules'],
  site: ['soil'],
  unit: ['size'],
  material: ['role'],
  'soil-kind': ['swell'],
  'side-kind': ['ground'],
  bond: ['offset', 'as', 'course'],
  existing: ['kind'],
  area: ['outline'],
  drain: ['channel', 'gully'],
  pipe: ['from'],
  gate: ['hinge'],
  door: ['opening'],
  'level-sheet': ['every'],
  supplier: ['delivery'],
  source: ['title'],
  rulebook: ['title'],
  rule: ['title'],
  rate: ['takes']
};

/** Words that no name follows. */
const WITHOUT_NAME = ['site', 'accept', 'heights', 'level-sheet', 'log', 'price', 'stock'];

/** What the lines of a block are that begin with no word of their own. */
const LINES: Readonly<Partial<Record<BlockName, string>>> = { edges: 'side', heights: 'levels', log: 'entry' };

/** A longer headline is cut: the list is narrow. */
const LONGEST = 80;

function entry(text: SpecText, statement: Statement): Entry {
  const { parsed, file } = text;
  const { word, block, first, inside } = statement;
  const end = statement.open ?? statement.end;
  const isSide = block === 'edges';
  const isThing = (block === 'spec' && !WITHOUT_NAME.includes(word)) || word === 'benchmark';
  // A name that is not written yet leaves the word to stand for the thing.
  const nameEnd = isSide ? meetsOf(parsed.tokens, { first, end }) : Math.min(isThing ? first + 2 : first + 1, end);
  const nameStart = isThing && nameEnd > first + 1 ? first + 1 : first;
  const last = parsed.tokens[Math.max(first, statement.end - 1)]!;
  return {
    word: LINES[block] ?? word,
    name: written(parsed, nameStart, nameEnd).replaceAll(/^"|"$/g, '') || word,
    detail: shortened(detailOf(text, statement, nameEnd, end)),
    place: placeBetween(file, parsed.tokens[first]!, last),
    namePlace: placeBetween(file, parsed.tokens[nameStart]!, parsed.tokens[Math.max(nameStart, nameEnd - 1)]!),
    isThing,
    inside: inside.map(each => entry(text, each))
  };
}

function detailOf(text: SpecText, { word, block, inside }: Statement, nameEnd: number, end: number): string {
  const own = written(text.parsed, nameEnd, end);
  const heads = (block === 'spec' ? HEADLINES[word] : undefined) ?? [];
  const headline = heads.flatMap(head => inside.find(each => each.word === head) ?? [])[0];
  return headline === undefined ? own : written(text.parsed, headline.first + 1, headline.end);
}

function shortened(detail: string): string {
  return detail.length > LONGEST ? `${detail.slice(0, LONGEST - 1)}…` : detail;
}
