import type { IParserErrorMessageProvider, IRecognitionException, TokenType } from 'chevrotain';

/** Told to the parser: its messages are only what was wanted at the place, in words of the trade. */
export const wantedWords: IParserErrorMessageProvider = {
  buildMismatchTokenMessage: ({ expected }) => list([expected]),
  buildNotAllInputParsedMessage: () => '',
  buildNoViableAltMessage: ({ expectedPathsPerAlt }) => list(expectedPathsPerAlt.flat().map(path => path[0])),
  buildEarlyExitMessage: ({ expectedIterationPaths }) => list(expectedIterationPaths.map(path => path[0]))
};

/**
 * `after` is the word that something is missing after; without it the odd word itself is named. What was wanted is left
 * out where `isHelped`: better help follows.
 */
export function wordsForParseError(error: IRecognitionException, after: string | undefined, isHelped: boolean): string {
  const found =
    after === undefined ? `\`${error.token.image}\` can't stand here` : `Something is missing after \`${after}\``;
  return error.message === '' || isHelped ? `${found}.` : `${found}: ${error.message} is wanted.`;
}

function list(wanted: readonly (TokenType | undefined)[]): string {
  // That the block could end here helps nobody.
  const names = [...new Set(wanted.flatMap(type => (type === undefined || type.name === '}' ? [] : type.name)))];
  // Where a number can stand so can a minus or a bracket: nobody needs to be told.
  const told = names.includes('NUMBER')
    ? ['NUMBER', ...names.filter(name => !['NUMBER', '-', '('].includes(name))]
    : names;
  const words = [...new Set(told.map(name => WANTED[name] ?? `\`${name}\``))];
  if (words.length > MOST_WANTED) return '';
  return words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`;
}

/** A longer list of what could follow helps nobody. */
const MOST_WANTED = 8;

const WANTED: Readonly<Record<string, string>> = {
  ID: 'a name or word',
  NUMBER: 'a number',
  MEASURE: 'a measure such as in, ft, mm or m',
  STRING: 'text in quotes',
  BY: '`x` and the next size',
  DATE: 'a day such as 2027-06-30',
  EOF: 'the next statement'
};
