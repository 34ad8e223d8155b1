import type { NameUsed, WrittenStatement } from './written-statements.ts';

/** A thing that is called otherwise and is the same. */
export interface Renamed {
  readonly kind: NameUsed['kind'];
  readonly before: string;
  readonly after: string;
}

/** Things that have another name in the newer text and say the same but for it; areas by their outlines. */
export function renamedBetween(older: readonly WrittenStatement[], newer: readonly WrittenStatement[]): Renamed[] {
  const [before, after] = [declared(older), declared(newer)];
  const [known, still] = [new Set(after.map(idOf)), new Set(before.map(idOf))];
  const gone = before.filter(statement => !known.has(idOf(statement)));
  const come = after.filter(statement => !still.has(idOf(statement)));
  if (gone.length === 0 || come.length === 0) return [];
  const numbers = new Map<string, number>();
  const was = byContent(gone, numbers);
  const is = byContent(come, numbers);
  return [...was].flatMap(([content, [old, ...others]]) => {
    const [now, ...more] = is.get(content) ?? [];
    // Of several that say the same none can be told to be this one.
    if (now === undefined || others.length + more.length > 0) return [];
    return [{ kind: old!.declares.kind, before: old!.declares.name, after: now.declares.name }];
  });
}

type Declared = WrittenStatement & Required<Pick<WrittenStatement, 'declares'>>;

function declared(all: readonly WrittenStatement[]): Declared[] {
  return all.filter((statement): statement is Declared => statement.declares !== undefined);
}

function idOf({ word, declares }: Declared): string {
  return `${word} ${declares.name}`;
}

function byContent(candidates: readonly Declared[], numbers: Map<string, number>): Map<string, Declared[]> {
  const contents = new Contents(candidates, numbers);
  const found = new Map<string, Declared[]>();
  for (const statement of candidates) {
    const content = `${statement.word} ${contents.of(statement)}`;
    const alike = found.get(content);
    if (alike === undefined) found.set(content, [statement]);
    else alike.push(statement);
  }
  return found;
}

/** Names that lead further than this count as they are written: nobody sets out so far from one point. */
const DEEPEST = 1000;

/** What statements say, free of the names that are another in the other text: these count by what they stand for. */
class Contents {
  readonly #byName: ReadonlyMap<string, Declared>;
  /** Each content once, as a number: what a long chain of names says stays short. */
  readonly #numbers: Map<string, number>;
  readonly #known = new Map<Declared, number>();

  constructor(candidates: readonly Declared[], numbers: Map<string, number>) {
    this.#byName = new Map(candidates.map(statement => [nameKey(statement.declares), statement]));
    this.#numbers = numbers;
  }

  of(statement: Declared, depth = 0): number {
    const known = this.#known.get(statement);
    if (known !== undefined) return known;
    // A thing that leads to itself is a fault of the text, and has no content.
    this.#known.set(statement, -1);
    const outline = statement.inside.find(({ word }) => statement.declares.kind === 'area' && word === 'outline');
    const text = this.#text(outline ?? statement, statement.declares, depth);
    const number = this.#numbers.get(text) ?? this.#numbers.size;
    this.#numbers.set(text, number);
    this.#known.set(statement, number);
    return number;
  }

  #text({ parts, inside }: WrittenStatement, own: NameUsed, depth: number): string {
    const words = parts.map(part => {
      if (typeof part === 'string') return part;
      if (nameKey(part) === nameKey(own)) return '·';
      const named = depth < DEEPEST ? this.#byName.get(nameKey(part)) : undefined;
      return named === undefined ? part.name : `#${this.of(named, depth + 1)}`;
    });
    return `${words.join(' ')} {${inside.map(one => this.#text(one, own, depth)).join('; ')}}`;
  }
}

function nameKey({ kind, name }: NameUsed): string {
  return `${kind}:${name}`;
}
