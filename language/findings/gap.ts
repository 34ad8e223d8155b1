import type { Key } from '../job/job.ts';
import type { Place, TextChange } from './finding.ts';

/** Where something that is not said can be written, and what has to stand around it. */
export interface Gap {
  readonly place: Place;
  readonly before: string;
  /** Between two statements that are written there at once. */
  readonly between: string;
  readonly after: string;
  /** Where the second column of its neighbours begins; 0 where nothing lines up. */
  readonly column: number;
}

/** Where what is not said could be written, by its key. */
export interface Gaps {
  get(key: Key): Gap | undefined;
}

/** Statements written into a gap, each lined up with its neighbours. */
export function written({ place, before, between, after, column }: Gap, statements: readonly string[]): TextChange {
  return { place, text: before + statements.map(statement => linedUp(statement, column)).join(between) + after };
}

/** A side lines up at `meets`, anything else at its second word. */
function linedUp(statement: string, column: number): string {
  const [, head, tail] = /^(.*?) (meets .*)$/.exec(statement) ?? [];
  if (head !== undefined && !head.includes('{')) return `${head.padEnd(column - 2)}  ${tail!}`;
  const space = statement.indexOf(' ');
  return space < 0 ? statement : statement.slice(0, space).padEnd(column - 1) + statement.slice(space);
}
