import type { Evaluation } from '../../language/paving.ts';
import type { Place } from '../../language/findings/finding.ts';

/** Words of those who write programs, none of those who lay paving. Capitals matter where the small word is a plain one. */
const WORDS: readonly RegExp[] = [
  /\b(?:tokens?|tokeni[sz]e\w*|lex(?:er|ing|ical)|pars(?:e|er|ers|ed|ing)|expect(?:ed|ing|s)?|unexpected|syntax\w*|identifiers?|keywords?)\b/i,
  /\b(?:undefined|null|nan|infinity|boolean|integers?|floats?|strings?|objects?|arrays?|tuples?|functions?|methods?|callbacks?)\b/i,
  /\b(?:exceptions?|stack ?trace|overflow\w*|regex\w*|regular expressions?|iterat\w+|recursi\w+|offsets? [0-9]+|instance of|typeof)\b/i,
  /\b(?:EOF|ID|AST|CST|JSON|URI|UTF-16|TypeError|RangeError|ReferenceError)\b/,
  /\[object|=>|\$\{|\$ref|\$type/
];

/** What a message says that only a programmer would understand. */
export function programmersWords(message: string): string[] {
  // What the user wrote is quoted and may be any word.
  const said = message.replaceAll(/`[^`]*`/g, '');
  return WORDS.flatMap(pattern => pattern.exec(said)?.[0] ?? []);
}

/** Lines and columns exist: the end may stand just past the last character of its line. */
function isRealPlace(place: Place, texts: Evaluation['texts']): boolean {
  const text = texts.find(({ file }) => file === place.file)?.text;
  if (text === undefined) return false;
  const lines = text.split(/\r\n|\n/);
  const inside = (line: number, column: number): boolean =>
    Number.isInteger(line) &&
    Number.isInteger(column) &&
    line >= 1 &&
    column >= 1 &&
    column <= (lines[line - 1]?.length ?? -1) + 1;
  const forward = place.endLine > place.line || (place.endLine === place.line && place.endColumn >= place.column);
  return inside(place.line, place.column) && inside(place.endLine, place.endColumn) && forward;
}

/** What is wrong with how findings are told: a programmer's word, a place that is not there, a mark that nobody sees. */
export function badlyTold({ findings, texts }: Evaluation): string[] {
  return findings.flatMap(finding => {
    const { message, fixes, related, line, column, endLine, endColumn } = finding;
    const told = [message, ...fixes.map(fix => fix.title), ...related.map(other => other.message)];
    const places = [finding, ...related, ...fixes.flatMap(fix => fix.edits.map(edit => edit.place))];
    const wrong = [
      ...told.flatMap(programmersWords).map(word => `says "${word}"`),
      ...(/^[^a-z].*[.!?]$/s.test(message) ? [] : ['is no sentence']),
      ...places.filter(place => !isRealPlace(place, texts)).map(place => `names the place ${shown(place)}`),
      ...(endLine > line || endColumn > column ? [] : ['has no width'])
    ];
    return wrong.map(what => `${shown(finding)} ${finding.id} ${what}: ${message}`);
  });
}

function shown({ file, line, column, endLine, endColumn }: Place): string {
  return `${file}:${line}:${column}-${endLine}:${endColumn}`;
}
