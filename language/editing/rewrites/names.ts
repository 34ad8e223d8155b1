import type { Project } from '../../lowering/project.ts';
import { BLOCKS } from '../../syntax/words.ts';

/** Words that mean something in some statement: a name that is one of them would be read as that, or confuse. */
const WORDS: ReadonlySet<string> = new Set([
  ...Object.values(BLOCKS).flatMap(({ statements, lines }) => [
    ...Object.keys(statements),
    ...Object.values(statements).flatMap(({ clauses }) => clauses),
    ...(lines?.clauses ?? [])
  ]),
  ...['x', 'by', 'per']
]);

/** Whether a word means something in some statement. */
export function isWord(name: string): boolean {
  return WORDS.has(name);
}

/** Names that nothing in a job has yet, nor any statement; each is given once. */
export class FreeNames {
  private readonly taken: Set<string>;

  constructor(project: Project) {
    const texts = [...project.texts, project.shipped];
    this.taken = new Set(texts.flatMap(({ parsed }) => parsed.tokens.map(({ image }) => image)));
  }

  /** The name that is wanted, or with the next free number behind it: `length`, `length-2`. */
  like(wanted: string): string {
    for (let number = 1; ; number++) {
      const name = number === 1 ? wanted : `${wanted}-${number}`;
      if (this.take(name)) return name;
    }
  }

  /** The next free names in a row: `P1`, `P2`. */
  inARow(letter: string, count: number): string[] {
    const names: string[] = [];
    for (let number = 1; names.length < count; number++) {
      const name = `${letter}${number}`;
      if (this.take(name)) names.push(name);
    }
    return names;
  }

  private take(name: string): boolean {
    if (this.taken.has(name) || WORDS.has(name)) return false;
    this.taken.add(name);
    return true;
  }
}
