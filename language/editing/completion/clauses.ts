import { nextWords, type Next } from '../../syntax/next-words.ts';
import { measureNamed } from '../../measures/measures.ts';
import { BLOCKS } from '../../syntax/words.ts';
import type { Declared, Kind } from '../../lowering/names.ts';
import { atHand } from '../../lowering/things-at-hand.ts';
import { declarationOf } from '../declaration.ts';
import type { Begun } from './cursor.ts';
import type { Part } from './insertion.ts';
import { plainText } from './insertion.ts';
import { helpOn, type Offer, type OfferHelp } from './offer.ts';
import { measuresAfterPer, PER, type WantedQuantity } from './quantities.ts';
import { wantedAt } from './rules.ts';
import type { Scene } from './scene.ts';
import { sidesAround } from './sides.ts';
import { goesOnFromPoint } from './line-sides.ts';
import { isSaleClause } from './sold-ways.ts';
import { isNewClause, isSideWord } from './sides-in-laying.ts';
import { isWord, usualEnding, usualParts } from './usual.ts';

/** The words that can follow in a statement, each with what usually goes with it: `joints 1/8 in`, `set before laying`. */
export function clauseOffers(scene: Scene, begun: Begun, kinds: readonly string[], next: readonly Next[]): Offer[] {
  return wordsToSay(scene, begun, next).flatMap(word =>
    phrases(scene, kinds, word).flatMap(phrase => clauseOffer(scene, begun, kinds, phrase) ?? [])
  );
}

/** The words of which one may follow here, each once. */
export function wordsToSay(scene: Scene, begun: Begun, next: readonly Next[]): readonly string[] {
  const words = next.filter(each => each.what === 'word' && isWord(each.is) && isSaidHere(scene, begun, each));
  return [...new Set(words.map(({ is }) => is))];
}

function clauseOffer(
  scene: Scene,
  begun: Begun,
  kinds: readonly string[],
  phrase: readonly string[]
): Offer | undefined {
  const { block } = scene.cursor;
  const [word] = phrase as [string];
  const said = phrase.join(' ');
  const isRate = word === 'per';
  const rate = isRate ? wantedRate(scene, begun, kinds) : undefined;
  const help = !isRate ? helpOn(scene, word, begun.word) : perHelp(rate);
  const offer = (ending: readonly Part[]): Offer => ({ label: said, kind: 'clause', parts: [said, ...ending], help });
  if (word === 'walk') return { ...offer([]), parts: usualParts(scene, block, begun.word, WALK) };
  if (isRate) {
    const choices = measuresAfterPer(scene.system, rate);
    return offer([' ', { usual: choices[0]!, choices }]);
  }
  const ending = usualEnding(scene, block, begun, [...kinds, ...phrase]);
  return ending && offer(ending);
}

/** The word, with the words that have to follow it. */
function phrases(scene: Scene, kinds: readonly string[], word: string): readonly (readonly string[])[] {
  const { next, complete } = nextWords(scene.cursor.block, [...kinds, word]);
  const words = next.filter(({ what, is }) => what === 'word' && isWord(is));
  if (complete || words.length === 0 || words.length < next.length) return [[word]];
  return words.flatMap(({ is }) => phrases(scene, [...kinds, word], is).map(rest => [word, ...rest]));
}

function perHelp(wanted: WantedQuantity | undefined): OfferHelp {
  if (wanted?.kind === 'slope') return SLOPE_PER;
  if (wanted?.kind === 'money') return MONEY_PER;
  return wanted?.kind === 's' ? TIME_PER : DENSITY_PER;
}

const DENSITY_PER = { line: 'a density: so much mass for each volume', about: { text: '`140 lb per cu ft`' } };

const MONEY_PER = { line: 'so much money for each of it', about: { text: '`24 GBP per hour`' } };

const TIME_PER = { line: 'so much time for each of it', about: { text: '`1.3 h per m2`' } };

const SLOPE_PER = { line: 'a slope: so much for each length', about: { text: '`1/4 in per ft`' } };

/** What kind of rate the number wants behind which `per` stands. */
function wantedRate(scene: Scene, begun: Begun, kinds: readonly string[]): WantedQuantity | undefined {
  const { block } = scene.cursor;
  const per = nextWords(block, kinds).next.find(({ is }) => is === 'per');
  return per && wantedAt(scene, block, begun, per);
}

const WALK = 'walk from [], [=right] [], [=up] [], [=left] [], back';

/** Whether the grammar's word is one of this statement, and makes sense with what is said already. */
function isSaidHere(scene: Scene, begun: Begun, next: Next): boolean {
  const { is, rule } = next;
  const { block, startsStatement } = scene.cursor;
  const { statements, lines } = BLOCKS[block];
  // On a line of its own it would begin a statement.
  if (startsStatement && Object.hasOwn(statements, is)) return false;
  if (is === 'per') {
    // Only what is sold loose has a price for so much of it.
    if (block === 'price' && begun.word !== 'loose') return false;
    const wanted = wantedAt(scene, block, begun, next);
    if (wanted !== undefined && Object.hasOwn(PER, wanted.property)) return begun.kinds.at(-1) === 'MEASURE';
    return (wanted?.kind === 'kg/m3' && isOf('kg', begun)) || (wanted?.kind === 'slope' && isOf('m', begun));
  }
  if (!(lines ?? statements[begun.word])?.clauses.includes(is)) return false;
  const said = begun.kinds;
  if (rule === 'EdgeClause' && EDGE_CLAUSES.includes(is)) return !said.includes(is) && suitsSide(scene, begun, is);
  if (rule === 'SoldClause') return isSaleClause(is, begun);
  if (rule === 'LayerClause' && is === 'settles') return begun.word === 'bed' && !said.includes(is);
  // The ways of a walk are told all together.
  if (rule === 'Step' && is !== 'back') return false;
  // Behind a day `a` would make hours of it.
  if (rule === 'CrewClause' && is === 'a') return begun.kinds.at(-1) === 'MEASURE';
  if (rule === 'Height') return !(block === 'heights' && isReadByInstrument(scene));
  if (rule === 'PlaceClause') return !isPlaced(said, is);
  // Sides are offered whole.
  if (rule === 'AreaLine') return is === 'to' && goesOnFromPoint(scene, begun.tokens.at(-1));
  if (rule === 'SideWhere' || (rule === 'LegRange' && lines === undefined)) return isSideWord(scene, begun, next);
  if (rule === 'Paving' && is === 'as') return block === 'area';
  if (rule === 'StartClause' || rule === 'Border' || rule === 'BorderClause') return isNewClause(begun, next);
  return rule !== 'EdgeWhere' && rule !== 'EdgeItem' ? true : isWhere(scene, begun, is);
}

const WALL_CLAUSES: readonly string[] = ['solid', 'damp-course', 'siding', 'weep-holes', 'footing'];
const EDGE_CLAUSES: readonly string[] = ['flush', 'edging', 'standing', 'concrete', ...WALL_CLAUSES];

/** Edging stands up and needs no concrete behind units; a wall stands where there is no open ground. */
function suitsSide(scene: Scene, { kinds, tokens }: Begun, word: string): boolean {
  const hasEdging = kinds.includes('edging');
  if (word === 'standing') return hasEdging;
  if (word === 'concrete') return !hasEdging;
  if (!WALL_CLAUSES.includes(word)) return true;
  const thing = tokens[kinds.indexOf('meets') + 1]?.image ?? '';
  return !hasEdging && isWall(scene, thing);
}

function isWall({ text, project }: Scene, thing: string): boolean {
  const named = (kind: Kind): Declared | undefined =>
    atHand(text, project, kind).find(({ declared: { name } }) => name === thing)?.declared;
  if (named('existing') !== undefined) return true;
  const kind = named('side-kind');
  const declaration = kind && declarationOf(kind);
  if (declaration === undefined || named('area') !== undefined || named('drain') !== undefined) return false;
  const { parsed, statement } = declaration;
  return statement.inside.some(({ word, first }) => word === 'ground' && parsed.tokens[first + 1]?.image === 'closed');
}

/** What a rod reads is below its line of sight, and below or above nothing else. */
export function isReadByInstrument({ cursor: { around, parsed } }: Scene): boolean {
  const heights = around.at(-1);
  if (heights?.opens !== 'heights') return false;
  return parsed.tokens.slice(heights.first, heights.open).some(({ tokenType }) => tokenType.name === 'reads');
}

/** Whether the last word is a measure of mass, or of length. */
function isOf(dimension: 'kg' | 'm', { tokens }: Begun): boolean {
  const last = tokens.at(-1);
  return (
    last?.tokenType.name === 'MEASURE' &&
    measureNamed(last.image)?.dimensions[dimension] === 1 &&
    !last.image.includes('/')
  );
}

function isPlaced(said: readonly string[], word: string): boolean {
  if (said.includes('circle')) return word !== 'centre' || said.includes('centre');
  return word === 'turned' ? said.includes(word) : said.includes('corner') || said.includes('centre');
}

/** From corner to corner one goes on only along an outline of points, and two of them make a side. */
function isWhere(scene: Scene, { kinds }: Begun, word: string): boolean {
  const sides = sidesAround(scene.cursor);
  const isLoneName = kinds.length === 1 && kinds[0] === 'ID';
  if (word === 'to') return sides === undefined || sides.form === 'points';
  return !(word === 'meets' && isLoneName && sides?.form === 'points');
}

/** The same words behind a comma that is not written yet. */
export function behindComma(offer: Offer): Offer {
  const { label, parts, filter } = offer;
  return { ...offer, label: `, ${label}`, parts: [', ', ...parts], filter: filter ?? label, closesUp: true };
}

/** What is written, for a label. */
export function written(parts: readonly Part[]): string {
  return plainText(parts).trim();
}
