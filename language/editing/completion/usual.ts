import { USUAL_VALUES } from '../../library/usual-values.ts';
import { nextWords, type Next } from '../../syntax/next-words.ts';
import type { BlockName } from '../../syntax/words.ts';
import { candidatesAt, type Written } from './candidates.ts';
import { choicesAt } from './choices.ts';
import type { Part, Slot } from './insertion.ts';
import { kindsOf } from './quantities.ts';
import { wantedAt } from './rules.ts';
import type { Scene } from './scene.ts';
import { usualSide } from './sides-in-laying.ts';

/** Something to be filled in, and what its words are to the grammar. */
interface Picked {
  readonly slot: Slot;
  readonly kinds: readonly string[];
}

/** How long a statement may grow by what is usual: a guard, no statement is half as long. */
const MOST_STEPS = 24;

/**
 * What usually follows the words of a statement, up to where it may end or go on in several ways; undefined where a name
 * has to follow and nothing is there that it could lead to.
 */
export function usualEnding(
  scene: Scene,
  block: BlockName,
  written: Written,
  begun: readonly string[]
): readonly Part[] | undefined {
  const kinds = [...begun];
  const parts: Part[] = [];
  for (let step = 0; step < MOST_STEPS; step++) {
    const { next, complete } = nextWords(block, kinds);
    if (complete) return parts;
    const picked = pick(scene, block, next, { ...written, kinds });
    const only = picked === undefined ? onlyWord(next) : undefined;
    if (picked === undefined && next.some(({ what, is }) => what === 'name' && is !== 'Let')) return undefined;
    if (picked === undefined && only === undefined) return parts;
    parts.push(' ', picked?.slot ?? only!);
    kinds.push(...(picked?.kinds ?? [only!]));
  }
  return parts;
}

/**
 * A pattern such as `[] below []` filled with what is usual at each `[]`; `[=patio]` stands for a free name or text.
 * `word` is the statement's word.
 */
export function usualParts(scene: Scene, block: BlockName, word: string, pattern: string): readonly Part[] {
  const kinds = [word];
  const names: string[] = [];
  return pattern.split(/(\[[^\]]*\])/).map((piece): Part => {
    if (!piece.startsWith('[')) {
      kinds.push(...(piece.match(/[\w-]+|[^\s\w]/g) ?? []));
      return piece;
    }
    if (piece.startsWith('[=')) {
      kinds.push('ID');
      return { usual: piece.slice(2, -1) };
    }
    const { next } = nextWords(block, kinds);
    const picked = anotherName(scene, block, next, names, { word, tokens: [], kinds });
    if (picked?.kinds[0] === 'ID') names.push(picked.slot.usual);
    kinds.push(...(picked?.kinds ?? []));
    return picked?.slot ?? '';
  });
}

/** Of names that lead from one thing to another (`A to B`) none is the one before. */
function anotherName(
  scene: Scene,
  block: BlockName,
  next: readonly Next[],
  names: readonly string[],
  written: Written
): Picked | undefined {
  const picked = pick(scene, block, next, written);
  const choices = picked?.slot.choices;
  if (picked === undefined || choices === undefined || written.kinds.at(-1) !== 'to') return picked;
  const usual = choices.find(name => name !== names.at(-1)) ?? picked.slot.usual;
  return { ...picked, slot: { usual, choices } };
}

/** The word that has to follow. */
function onlyWord(next: readonly Next[]): string | undefined {
  const words = next.filter(({ what, is }) => what === 'word' && isWord(is) && is !== 'per');
  return words.length === 1 ? words[0]!.is : undefined;
}

/** The first thing that can be filled in: a name before a quantity before a word. */
function pick(scene: Scene, block: BlockName, next: readonly Next[], written: Written): Picked | undefined {
  return (
    usualSide(scene, next, written) ??
    firstOf(next, each => pickName(scene, each, written)) ??
    firstOf(
      next.filter(each => beginsQuantity(each, next)),
      each => pickQuantity(scene, block, each, written)
    ) ??
    firstOf(next, each => pickChoice(scene, each, written)) ??
    firstOf(next, pickText)
  );
}

function pickText({ what, is, path }: Next): Picked | undefined {
  const usual = what === 'free' ? TEXTS[path.at(-1) ?? ''] : undefined;
  return usual === undefined ? undefined : { slot: { usual }, kinds: [is] };
}

/** Texts in quotes and dates that have to be written. */
const TEXTS: Readonly<Record<string, string>> = {
  'Accept.reason': '"the reason"',
  'Accept.agreedWith': '"the owner"',
  'Accept.until': '2027-06-30',
  'Heights.date': '2026-04-18',
  'LogLine.date': '2026-04-18',
  'JobBegins.date': '2026-04-13',
  'JobQuote.date': '2026-03-02',
  'Batch.batch': '"K-114"'
};

function pickName(scene: Scene, next: Next, written: Written): Picked | undefined {
  if (next.what !== 'name' || next.is === 'Let') return undefined;
  const names = candidatesAt(scene, next, written).map(({ name }) => name);
  const usual = names[0] ?? STAND_IN[next.is]?.[scene.system];
  return usual === undefined ? undefined : { slot: { usual, choices: names }, kinds: ['ID'] };
}

/** Names for what is not declared yet. */
const STAND_IN: Readonly<Record<string, Readonly<Record<Scene['system'], string>>>> = {
  Unit: USUAL_VALUES.unitName,
  PricedUnit: USUAL_VALUES.unitName,
  Benchmark: { imperial: 'door-sill', metric: 'door-sill' },
  Levelled: { imperial: 'door-sill', metric: 'door-sill' }
};

/** Numbers that are no quantities. */
const COUNTS: readonly string[] = ['JobKeep.count', 'BondSeed.seed'];

/** A number that begins a quantity, where a value of one's own could stand as well, or the bracket of a pair. */
export function beginsQuantity({ is, rule, path }: Next, all: readonly Next[]): boolean {
  if (is === '(') return rule === 'Pair';
  return is === 'NUMBER' && (all.some(other => other.is === 'Let') || COUNTS.includes(path.at(-1) ?? ''));
}

function pickQuantity(scene: Scene, block: BlockName, next: Next, written: Written): Picked | undefined {
  const wanted = wantedAt(scene, block, written, next);
  const usual = wanted?.usual;
  return usual === undefined ? undefined : { slot: { usual }, kinds: kindsOf(usual) };
}

function pickChoice(scene: Scene, next: Next, { word, tokens }: Written): Picked | undefined {
  const words = next.is === 'ID' ? choicesAt(next.path, word, scene) : undefined;
  const free = words?.filter(choice => !tokens.some(({ image }) => image === choice));
  return free?.[0] === undefined ? undefined : { slot: { usual: free[0], choices: free }, kinds: ['ID'] };
}

function firstOf<T, R>(all: readonly T[], of: (each: T) => R | undefined): R | undefined {
  for (const each of all) {
    const found = of(each);
    if (found !== undefined) return found;
  }
  return undefined;
}

export function isWord(word: string): boolean {
  return /^[a-z]/.test(word);
}
