import type { Next } from '../../syntax/next-words.ts';
import type { Token } from '../../syntax/parse.ts';
import type { Written } from './candidates.ts';
import type { Begun } from './cursor.ts';
import type { Slot } from './insertion.ts';
import { helpOn, type Offer } from './offer.ts';
import type { Scene } from './scene.ts';
import { beginsLine, sidesOfLine } from './line-sides.ts';
import { RECTANGLE, sidesAround, type Sides } from './sides.ts';

/** Something that names a side, and what its words are to the grammar. */
interface SideSlot {
  readonly slot: Slot;
  readonly kinds: readonly string[];
}

/** Whether a side of the area has to be named next, in a statement that says how units lie. */
export function beginsSide(next: readonly Next[]): boolean {
  return next.some(({ rule, is }) => rule === 'SideWhere' && is === 'all');
}

/** Whether the end of a side is to be named next that laying starts from. */
export function beginsStart(next: readonly Next[]): boolean {
  return next.some(({ rule, is }) => rule === 'StartClause' && is === 'Mark');
}

/** The sides that can be named next, each whole, those that the statement does not name yet. */
export function sideOffers(scene: Scene, begun: Begun, next: readonly Next[]): Offer[] {
  return sidesNext(scene, begun, next).map((label): Offer => {
    const word = label.split(' ')[0]!;
    const help = helpOn(scene, /^(?:near|right|far|left|leg)$/.test(word) ? word : 'to', begun.word);
    return { label, kind: 'side', parts: [label], help };
  });
}

/** The usual side that is named next. */
export function usualSide(scene: Scene, next: readonly Next[], written: Written): SideSlot | undefined {
  if (beginsSide(next) && next.some(({ is }) => is === 'along')) return slotOf(['all round']);
  if (beginsLine(next)) return slotOf(sidesOfLine(scene, written.tokens, next));
  return slotOf(sidesNext(scene, written, next));
}

function slotOf(names: readonly string[]): SideSlot | undefined {
  const [usual] = names;
  if (usual === undefined) return undefined;
  const kinds = usual
    .split(' ')
    .map(word => (/^[0-9]/.test(word) ? 'NUMBER' : /^(?:to|leg|all|round)$/.test(word) ? word : 'ID'));
  return { slot: { usual, choices: names }, kinds };
}

function sidesNext(scene: Scene, { tokens }: Pick<Written, 'tokens'>, next: readonly Next[]): readonly string[] {
  const sides = sidesAround(scene.cursor) ?? RECTANGLE;
  if (beginsStart(next)) return startsNext(sides, tokens);
  if (sides.form === 'circle') return [];
  // Where sides can be left to one word, they are named behind that word.
  if (!beginsSide(next) || next.some(({ is }) => is === 'along')) return [];
  const said = ` ${tokens.map(({ image }) => image).join(' ')} `;
  return [...new Set(sides.names)].filter(name => !said.includes(` ${name} `));
}

/** The ends of the side that the courses run along: corners, or the sides beside it. */
function startsNext({ form, names, corners }: Sides, tokens: readonly Token[]): readonly string[] {
  const along = tokens.findLastIndex(({ tokenType }) => tokenType.name === 'along');
  const said = along < 0 ? undefined : tokens[along + 1]?.image;
  if (form === 'points') {
    const other = said === undefined ? undefined : tokens[along + 3]?.image;
    const ends = corners.filter(corner => corner === said || corner === other);
    return ends.length > 0 ? ends : [...new Set(corners)];
  }
  const side = form === 'walk' ? `leg ${tokens[along + 2]?.image ?? ''}` : said;
  const at = names.indexOf(side ?? '');
  const count = names.length;
  return at < 0 || form === 'circle' ? [] : [names[(at + count - 1) % count]!, names[(at + 1) % count]!];
}

/** The names of points since the last word of the language: those of the side that is being named. */
export function pointsOfSide(tokens: readonly Token[]): readonly string[] {
  const from = tokens.findLastIndex(({ tokenType }) => /^(?:along|across|and|except)$/.test(tokenType.name));
  return tokens.slice(from + 1).flatMap(({ tokenType, image }) => (tokenType.name === 'ID' ? image : []));
}

/** Whether a word makes sense where sides are named, with what the statement says already. */
export function isSideWord(scene: Scene, { word, kinds, tokens }: Begun, { is, rule }: Next): boolean {
  const form = sidesAround(scene.cursor)?.form;
  if (rule === 'LegRange') return form === 'walk';
  if (is === 'all') return word === 'border' && !/^(?:along|except|and)$/.test(kinds.at(-1) ?? '');
  // The second words of `all round` and `the rest`.
  if (is === 'round' || is === 'rest') return true;
  if (is !== 'to') return false;
  const points = pointsOfSide(tokens);
  return (form === undefined || form === 'points') && (word !== 'band' || points.length < 2);
}

/** Whether a clause of a start or border is not said yet. */
export function isNewClause({ kinds }: Begun, { is, rule }: Next): boolean {
  if (rule === 'StartClause' && is === 'along')
    return kinds.at(-1) === 'units' || !kinds.some((kind, at) => kind === 'along' && kinds[at - 1] !== 'units');
  if (is === 'and') return kinds.at(-1) !== 'round';
  if (is === 'except') return kinds.includes('all') && !kinds.includes(is);
  if (is === 'mitred' || is === 'butted') return !kinds.includes('mitred') && !kinds.includes('butted');
  return !CLAUSES.includes(is) || !kinds.includes(is);
}

const CLAUSES: readonly string[] = ['whole', 'equal', 'shifted', 'turned', 'carried', 'joints'];
