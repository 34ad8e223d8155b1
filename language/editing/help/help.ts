import { SHIPPED_TEXT } from '../../library/shipped.ts';

/** Help on one word. */
export interface WordHelp {
  /** One line, at most about 70 characters, for the list of completions. */
  readonly line: string;
  /** Markdown for hover and documentation: trade words, short. */
  readonly text: string;
}

/** Words that stand in one and the same place, each with its help. */
export type Helps = Readonly<Record<string, WordHelp>>;

/** The words of a block: those that statements begin with, and by statement those that stand within. */
export interface BlockHelp {
  readonly statements: Helps;
  readonly within?: Readonly<Record<string, Helps>>;
}

/** Help whose text begins with its line. */
export function help(line: string, ...paragraphs: readonly string[]): WordHelp {
  return { line, text: [`${line}.`, ...paragraphs].join('\n\n') };
}

/** One help for several words that only together say something: `past the edging`. */
export function together(words: string, said: WordHelp): Helps {
  return Object.fromEntries(words.split(' ').map(word => [word, said]));
}

/** What a job that leaves something out is taken to mean, with its source, from the text that ships. */
export function usual(what: 'bed' | 'joint' | 'saw-cut'): string {
  const shipped = (name: string): string => {
    const [, value, source] = new RegExp(`^let +usual-${name} += +(.*?) +// (.*)$`, 'm').exec(SHIPPED_TEXT)!;
    return `${value!} (${source!})`;
  };
  return what === 'saw-cut'
    ? `Left out: ${shipped(what)}.`
    : `Left out: ${shipped(`${what}-north-america`)}; with the rules of Britain ${shipped(`${what}-britain`)}.`;
}
