import type { ChangePlaces } from './contract.ts';
import type { Amount, WrittenStatement } from './written-statements.ts';

/** One thing that was written otherwise: a statement that is new, gone, or says something else. */
export interface Edit {
  /** `edit-1` and so on, in the order of the newer text; what is gone stands last. */
  readonly id: string;
  readonly kind: 'added' | 'removed' | 'changed' | 'moved';
  /** The blocks that it stands in, and its own word: `area turning, base`. */
  readonly label: string;
  readonly before?: string;
  readonly after?: string;
  /** Where only the order says something else: its place among the like. */
  readonly order?: { readonly before: number; readonly after: number };
  /** Where one quantity alone differs. */
  readonly amount?: { readonly before: Amount; readonly after: Amount };
  readonly old?: WrittenStatement;
  readonly new?: WrittenStatement;
}

/** A pair of statements that say the same thing of the same, or one that has no partner. */
interface Pair {
  readonly old?: WrittenStatement;
  readonly new?: WrittenStatement;
  readonly order?: Edit['order'];
}

type Both = Required<Omit<Pair, 'order'>>;

/** In these blocks and of these statements the order says something. */
const IN_ORDER: ReadonlySet<string> = new Set(['border', 'course']);

/** What was written otherwise: neither order nor layout, nor how a quantity is put, nor a new name alone. */
export function editsBetween(older: readonly WrittenStatement[], newer: readonly WrittenStatement[]): Edit[] {
  const pairs = differing(older, newer);
  const files = [...new Set([...newer, ...older].map(({ place }) => place.file))];
  const inOrder = [...pairs].sort(
    (left, right) =>
      rank(left) - rank(right) ||
      files.indexOf(fileOf(left)) - files.indexOf(fileOf(right)) ||
      startOf(left) - startOf(right)
  );
  return inOrder.map((pair, index) => edit(pair, `edit-${index + 1}`));
}

function rank({ new: now }: Pair): number {
  return now === undefined ? 1 : 0;
}

function startOf({ new: now, old }: Pair): number {
  return (now ?? old)!.start;
}

function fileOf({ new: now, old }: Pair): string {
  return (now ?? old)!.place.file;
}

function differing(older: readonly WrittenStatement[], newer: readonly WrittenStatement[]): Pair[] {
  const groups = new Map<string, { older: WrittenStatement[]; newer: WrittenStatement[] }>();
  const into = (side: 'older' | 'newer', statement: WrittenStatement): void => {
    const word = statement.declares ? `${statement.word} of a name` : statement.word;
    const group = groups.get(word) ?? { older: [], newer: [] };
    group[side].push(statement);
    groups.set(word, group);
  };
  for (const statement of newer) into('newer', statement);
  for (const statement of older) into('older', statement);
  return [...groups.values()].flatMap(group => differingOf(group.older, group.newer));
}

/** Among statements that begin alike: what is the same by name or by meaning pairs off, the rest in its order. */
function differingOf(older: readonly WrittenStatement[], newer: readonly WrittenStatement[]): Pair[] {
  const named = pairOff(older, newer, nameIn);
  const alike = pairOff(named.older, named.newer, wholeMeaning);
  const told = pairOff(alike.older, alike.newer, subjectOf);
  const rest = inRow(told.older, told.newer);
  const moved = IN_ORDER.has(newer[0]?.word ?? '') ? outOfOrder(alike.pairs) : [];
  return [...[...named.pairs, ...told.pairs, ...rest].flatMap(pair => within(pair)), ...moved];
}

/** What of a pair differs: itself, or what stands in its braces. */
function within({ old, new: now }: Pair): Pair[] {
  if (old === undefined || now === undefined)
    return isEmpty(old ?? now!) ? [] : [{ ...(old && { old }), ...(now && { new: now }) }];
  const own = old.meaning === now.meaning || followsFromOthers(old, now) ? [] : [{ old, new: now }];
  return [...own, ...differing(old.inside, now.inside)];
}

/** A `let` says nothing by itself. */
function isEmpty({ declares }: WrittenStatement): boolean {
  return declares?.kind === 'let';
}

/** Written as before: that it comes to something else follows from names, or from what stands round it. */
function followsFromOthers(old: WrittenStatement, now: WrittenStatement): boolean {
  return old.text === now.text;
}

interface PairedOff {
  readonly pairs: readonly Both[];
  readonly older: readonly WrittenStatement[];
  readonly newer: readonly WrittenStatement[];
}

function pairOff(
  older: readonly WrittenStatement[],
  newer: readonly WrittenStatement[],
  by: (statement: WrittenStatement) => string | undefined
): PairedOff {
  const waiting = new Map<string, WrittenStatement[]>();
  for (const statement of older.toReversed()) {
    const key = by(statement);
    const alike = key === undefined ? undefined : waiting.get(key);
    if (alike !== undefined) alike.push(statement);
    else if (key !== undefined) waiting.set(key, [statement]);
  }
  const pairs: Both[] = [];
  const left: WrittenStatement[] = [];
  const paired = new Set<WrittenStatement>();
  for (const statement of newer) {
    const key = by(statement);
    const old = key === undefined ? undefined : waiting.get(key)?.pop();
    if (old === undefined) left.push(statement);
    else {
      pairs.push({ old, new: statement });
      paired.add(old);
    }
  }
  return { pairs, older: older.filter(statement => !paired.has(statement)), newer: left };
}

/** In the order in which they stand; what is over is new or gone. */
function inRow(older: readonly WrittenStatement[], newer: readonly WrittenStatement[]): Pair[] {
  return Array.from({ length: Math.max(older.length, newer.length) }, (_, index): Pair => {
    const [old, now] = [older[index], newer[index]];
    return { ...(old && { old }), ...(now && { new: now }) };
  });
}

/** Pairs that stand in another order than before, with their places in it. */
function outOfOrder(pairs: readonly Both[]): Pair[] {
  const before = [...pairs].sort((left, right) => left.old.start - right.old.start);
  const places = new Map(before.map((pair, index) => [pair, index + 1]));
  return pairs.flatMap((pair, index) => {
    const order = { before: places.get(pair)!, after: index + 1 };
    return order.before === order.after ? [] : [{ ...pair, order }];
  });
}

/** What it declares, as it is called in the newer text. */
function nameIn({ word, declares }: WrittenStatement): string | undefined {
  return declares && `${word} ${declares.name}`;
}

function wholeMeaning(statement: WrittenStatement): string {
  return `${statement.meaning} {${statement.inside.map(wholeMeaning).join('; ')}}`;
}

/** What a statement is about: its first words up to its first quantity; of a side its corners. */
function subjectOf({ meaning }: WrittenStatement): string {
  const [side, meets] = meaning.split(' meets ', 2);
  if (meets !== undefined) return side!;
  return meaning.split(' =', 1)[0]!.split(' ').slice(0, 2).join(' ');
}

function edit({ old, new: now, order }: Pair, id: string): Edit {
  const kind = old === undefined ? 'added' : now === undefined ? 'removed' : order === undefined ? 'changed' : 'moved';
  const amount = kind === 'changed' ? theOneAmount(old!, now!) : undefined;
  return {
    id,
    kind,
    label: labelOf((now ?? old)!),
    ...(old && { before: old.shown, old }),
    ...(now && { after: now.shown, new: now }),
    ...(order && { order }),
    ...(amount && { amount })
  };
}

/** The one quantity in which two statements differ that are alike but for it. */
function theOneAmount(old: WrittenStatement, now: WrittenStatement): Edit['amount'] {
  if (old.amounts.length !== now.amounts.length || withoutAmounts(old) !== withoutAmounts(now)) return undefined;
  const differ = old.amounts.flatMap((before, index) => {
    const after = now.amounts[index]!;
    return before.value === after.value && before.measure === after.measure ? [] : [{ before, after }];
  });
  return differ.length === 1 && differ[0]!.before.measure === differ[0]!.after.measure ? differ[0] : undefined;
}

function withoutAmounts({ meaning }: WrittenStatement): string {
  return meaning.replace(/=\S+ \S*/g, '=');
}

/** `area turning, base`; of a side its corners; what names nothing of its own by what it is about. */
function labelOf(statement: WrittenStatement): string {
  const { within: block } = statement;
  if (block === undefined) return aboutOf(statement);
  if (block.word !== 'edges') return `${labelOf(block)}, ${aboutOf(statement)}`;
  const [side] = statement.shown.split(' meets ');
  return block.within === undefined ? side! : `${labelOf(block.within)}, ${side!}`;
}

function aboutOf({ word, declares, uses, inside, shown }: WrittenStatement): string {
  if (declares !== undefined) return `${word} ${declares.name}`;
  if (word === 'accept') return shown.split(' because ')[0]!;
  // `area drive { … }` of a variant says more of an area that is there.
  const [first] = inside.length > 0 ? uses : [];
  return first === undefined ? word : `${word} ${first.name}`;
}

export function placesOfEdit({ old, new: now }: Edit): ChangePlaces {
  return { ...(old && { before: old.place }), ...(now && { after: now.place }) };
}
