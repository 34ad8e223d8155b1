import { FEET } from '../../syntax/patterns.ts';
import { nextWords, type Next, type NextWords } from '../../syntax/next-words.ts';
import { BLOCKS } from '../../syntax/words.ts';
import { currencyOf } from '../../lowering/job-words.ts';
import { measureHelp } from '../word-help.ts';
import { candidatesAt } from './candidates.ts';
import { choicesAt } from './choices.ts';
import { behindComma, clauseOffers, wordsToSay, written } from './clauses.ts';
import type { Begun } from './cursor.ts';
import type { Part } from './insertion.ts';
import { helpOn, nameOffers, NO_HELP, type Offer, type OfferHelp } from './offer.ts';
import { kindsOf, measuresAfterPer, measuresFor, type QuantityKind, type WantedQuantity } from './quantities.ts';
import type { Scene } from './scene.ts';
import { isRollOfCloth } from './sold-ways.ts';
import { ruleOffers, wantedAt } from './rules.ts';
import { sidesAround, sidesSaid } from './sides.ts';
import { beginsLine, legsOfLine, lineOffers, sidesOfLine } from './line-sides.ts';
import { beginsSide, beginsStart, sideOffers } from './sides-in-laying.ts';
import { blockParts } from './statements.ts';
import { beginsQuantity, isWord, usualEnding, usualParts } from './usual.ts';

/** Whether the statement that is being written can't end here, or hardly: something of what is offered has to follow. */
export function hasToGoOn(scene: Scene, begun: Begun): boolean {
  const { next, complete } = nextWords(scene.cursor.block, begun.kinds);
  if (!complete || begun.kinds.length === 1) return true;
  const last = begun.kinds.at(-1);
  if (last === 'NUMBER' && lacksMeasure(scene, begun, next)) return true;
  // The grammar could do without, but the job hardly.
  return (
    next.some(({ path }) => path[0] === 'Layer.thickness' && last === 'ID') ||
    wordsToSay(scene, begun, next).some(word => word === 'per' || (word === 'below' && !begun.kinds.includes('ID')))
  );
}

/** What can follow in the statement that is being written. */
export function offersWithin(scene: Scene, begun: Begun): readonly Offer[] {
  const { next } = nextWords(scene.cursor.block, begun.kinds);
  const isSide = beginsSide(next) || beginsStart(next);
  const things = next.filter(({ is }) => is !== 'Let' && !(isSide && is === 'Mark'));
  const values = canBeValue(begun, next)
    ? next.filter(each => each.is === 'Let' && isNewPlace(begun, each) && !isPlaceAlong(each))
    : [];
  // A finish has mostly one height, and only seldom one for each corner.
  const isCorner = ({ rule }: Next): boolean => rule === 'SpotHeight' && begun.kinds.at(-1) === 'finish';
  const offers = [
    ...offersOfNames(
      scene,
      begun,
      things.filter(each => !isCorner(each))
    ),
    ...(isSide ? sideOffers(scene, begun, next) : []),
    ...(beginsLine(next) ? lineOffers(scene, begun.word, sidesOfLine(scene, begun.tokens, next)) : []),
    ...ruleOffers(scene, begun, next),
    ...valueOffers(scene, begun, begun.kinds, next),
    ...offersOfNames(scene, begun, values),
    ...choiceOffers(scene, begun, next),
    ...sizeSign(scene, begun, next),
    ...measureOffers(scene, begun, next),
    ...clauseOffers(scene, begun, begun.kinds, next),
    ...signOffers(scene, begun, next),
    ...cornerOffers(scene, begun, things.filter(isCorner)),
    ...afterComma(scene, begun, next)
  ];
  return onceEach(offers);
}

/** Behind a comma that is not written yet. */
function afterComma(scene: Scene, begun: Begun, next: readonly Next[]): Offer[] {
  // Right behind the statement's word a comma makes no sense.
  if (begun.kinds.length === 1 || !next.some(({ is }) => is === ',')) return [];
  const kinds = [...begun.kinds, ','];
  const after: NextWords = nextWords(scene.cursor.block, kinds);
  const offers = [
    ...valueOffers(scene, begun, kinds, after.next).filter(({ kind }) => kind === 'clause'),
    ...clauseOffers(scene, begun, kinds, after.next),
    // Where nothing but a comma can follow, what stands behind it is offered whole.
    ...(next.length === 1 ? choiceOffers(scene, begun, after.next) : [])
  ];
  return offers.map(behindComma);
}

// ---- quantities ----

/** A usual quantity, with the words that have to follow it. */
function valueOffers(scene: Scene, begun: Begun, kinds: readonly string[], next: readonly Next[]): Offer[] {
  return next.flatMap((each): Offer[] => {
    const usual = beginsQuantity(each, next) ? wantedHere(scene, { ...begun, kinds }, each)?.usual : undefined;
    if (usual === undefined || usual === '' || !isNewPlace(begun, each)) return [];
    const after = [...kinds, ...kindsOf(usual)];
    const ending = endingOf(scene, begun, each, after);
    const parts = [{ usual }, ...ending];
    const words = ending.flatMap(part => (typeof part === 'string' ? part.trim() : [])).filter(word => word !== '');
    const [word] = words;
    if (word === undefined) {
      const { about } = helpOn(scene, begun.word);
      const help: OfferHelp = { line: 'usual; write your own', ...(about && { about }) };
      return [{ label: usual, kind: 'quantity', parts, help }];
    }
    const help = helpOn(scene, word, begun.word);
    return [{ label: written(parts), kind: 'clause', parts, help, filter: `${words.join(' ')} ${usual}` }];
  });
}

/** Where several words can follow a quantity, the likeliest. */
const LIKELIEST: Readonly<Record<string, string>> = { 'Aside.off': 'out', 'FromLine.along': 'along' };

function endingOf(scene: Scene, begun: Begun, { path }: Next, after: readonly string[]): readonly Part[] {
  const word = path.map(property => LIKELIEST[property]).find(found => found !== undefined);
  if (word === undefined) return usualEnding(scene, scene.cursor.block, begun, after) ?? [];
  const ending = usualEnding(scene, scene.cursor.block, begun, [...after, word]);
  return ending === undefined ? [] : [' ', word, ...ending];
}

/** A place begins mostly with a bracket, and a depth or distance with its figure: a value of one's own is rare there. */
function isPlaceAlong({ path }: Next): boolean {
  return path.some(property => OF_PLACES.includes(property));
}

const OF_PLACES: readonly string[] = ['FromLine.along', 'FromPoint.away', 'Aside.off', 'SoftSpotClause.deeper'];

/** How far a place lies off a line is said once, behind the line. */
function isNewPlace({ kinds }: Begun, { path }: Next): boolean {
  return (
    !path.includes('Aside.off') || (kinds.includes('along') && !kinds.some(kind => /^(?:out|left|right)$/.test(kind)))
  );
}

function measureOffers(scene: Scene, begun: Begun, next: readonly Next[]): Offer[] {
  const at = next.find(({ is }) => is === 'MEASURE');
  if (at === undefined) return [];
  return measuresAt(scene, begun, at).map((measure): Offer => ({
    label: measure,
    kind: 'measure',
    parts: [measure],
    help: helpOnMeasure(measure.replace(' per ', '/'))
  }));
}

function helpOnMeasure(measure: string): OfferHelp {
  const help = measureHelp(measure);
  return help === undefined ? NO_HELP : { line: help.line, about: { measure } };
}

function measuresAt(scene: Scene, begun: Begun, at: Next): readonly string[] {
  if (at.path.at(-1) === 'Quantity.per') return measuresAfterPer(scene.system, wantedHere(scene, begun, at));
  const wanted = wantedHere(scene, begun, at);
  const before = begun.tokens.at(-2);
  const isSecondPart = begun.kinds.at(-1) === 'NUMBER' && begun.kinds.at(-2) === 'MEASURE';
  // Behind feet stand inches, and behind anything else nothing.
  if (isSecondPart) return before !== undefined && FEET.test(before.image) ? ['in'] : [];
  const measures = wanted === undefined ? [] : measuresFor(wanted, scene.system);
  // The least that is brought is told in money too.
  const isMoney = wanted?.kind === 'money' || wanted?.property === 'DeliveryClause.amount';
  return isMoney ? [...new Set([currencyOf(scene.project), ...measures])] : measures;
}

function lacksMeasure(scene: Scene, begun: Begun, next: readonly Next[]): boolean {
  const at = next.find(({ is }) => is === 'MEASURE');
  return (
    at !== undefined &&
    measuresAt(scene, begun, at).length > 0 &&
    !MAY_BE_BARE.includes(wantedHere(scene, begun, at)?.kind)
  );
}

/** Kinds of quantities that may be counts. */
const MAY_BE_BARE: readonly (QuantityKind | undefined)[] = ['any', 'goods'];

function wantedHere(scene: Scene, begun: Begun, next: Next): WantedQuantity | undefined {
  return wantedAt(scene, scene.cursor.block, begun, next);
}

function sizeSign(scene: Scene, begun: Begun, next: readonly Next[]): Offer[] {
  if (scene.cursor.block === 'price' && !isRollOfCloth(scene, begun)) return [];
  const sizes = begun.kinds.filter(kind => kind === 'BY').length + 1;
  if (sizes >= (begun.word === 'size' ? 3 : 2) || !next.some(({ is }) => is === 'BY')) return [];
  const help = { ...helpOn(scene, 'x', begun.word), line: 'between the sizes' };
  return [{ label: 'x', kind: 'clause', parts: ['x'], help }];
}

// ---- names and words ----

function offersOfNames(scene: Scene, begun: Begun, next: readonly Next[]): Offer[] {
  const names = next.filter(({ what }) => what === 'name');
  return names.flatMap(each => nameOffers(scene, candidatesAt(scene, each, begun)));
}

const CORNER = '[] [] below []';

/** What a corner can stand before. */
const IS_HEIGHT = /^\s*(?:[-(\d]|level\b)/;
const MOST_SPACES = 80;

/** Corners, each with its height. */
function cornerOffers(scene: Scene, begun: Begun, next: readonly Next[]): Offer[] {
  const { isFollowed, parsed, end } = scene.cursor;
  if (isFollowed && !IS_HEIGHT.test(parsed.text.slice(end, end + MOST_SPACES))) return [];
  const height = usualParts(scene, 'area', 'finish', CORNER).slice(2);
  return offersOfNames(scene, begun, next).map(offer => ({
    ...offer,
    parts: isFollowed ? offer.parts : [...offer.parts, ' ', ...height]
  }));
}

/** A name behind a layer's word is its material, and `12 x deep` lacks the measure of the 12. */
function canBeValue({ kinds }: Begun, next: readonly Next[]): boolean {
  const others = next.some(({ what, is, rule }) => what === 'name' && is !== 'Let' && !BESIDE_VALUES.includes(rule));
  return !others && !(kinds.at(-1) === 'BY' && kinds.at(-2) === 'NUMBER');
}

/** Where a name may stand in the place of a number, and means something else. */
const BESIDE_VALUES: readonly string[] = ['SpotHeight', 'Offset'];

function choiceOffers(scene: Scene, begun: Begun, next: readonly Next[]): Offer[] {
  // A list names nothing twice; a walk goes one way again and again, and on one day much is done.
  const isAgain = begun.kinds.includes('walk') || scene.cursor.block === 'log';
  const said = new Set(isAgain ? [] : begun.tokens.map(({ image }) => image));
  return next.flatMap(each => {
    if (each.what !== 'free') return [];
    const words =
      sideChoices(scene, begun, each) ??
      ownTasks(scene, begun, each) ??
      (each.is === 'ID' ? choicesAt(each.path, begun.word, scene) : undefined);
    return (words ?? [])
      .filter(word => !said.has(word) && !beginsStatement(scene, begun, word))
      .map((word): Offer => {
        if (word.startsWith('"')) return { label: word, kind: 'choice', parts: [word], help: OWN_TASK };
        const help = helpOn(scene, each.is === 'NUMBER' ? 'leg' : word, begun.word);
        return { label: word, kind: 'choice', parts: [word], help };
      });
  });
}

const OWN_TASK: OfferHelp = { line: 'a task of your own' };

/** Titles of the job's own tasks, in quotes, without the one that is being written. */
function ownTasks({ cursor: { parsed } }: Scene, begun: Begun, { path }: Next): readonly string[] | undefined {
  if (path.at(-1) !== 'TaskName.title') return undefined;
  const titles = parsed.tokens.filter(({ tokenType, startOffset }, at) => {
    const before = parsed.tokens[at - 1];
    const isTitle = tokenType.name === 'STRING' && before?.tokenType.name === 'task';
    return isTitle && startOffset !== begun.tokens[1]?.startOffset;
  });
  return titles.map(({ image }) => image);
}

/**
 * Behind the comma of a list it would begin a statement: a material that is for concrete is for nothing else. Behind a
 * word that it belongs to it does not: `after dig`, `8 % of labour`, `treat dig-deep as note`.
 */
function beginsStatement({ cursor: { block } }: Scene, { tokens, kinds }: Begun, word: string): boolean {
  if (isWord(kinds.at(-1) ?? '')) return false;
  return tokens.length > 1 && BLOCKS[block].commas && Object.hasOwn(BLOCKS[block].statements, word);
}

/** Further sides in a list, or legs by their number. */
function sideChoices(scene: Scene, begun: Begun, { path }: Next): readonly string[] | undefined {
  const property = path.at(-1);
  if (property === 'AreaLine.leg') return legsOfLine(scene, [{ what: 'free', is: 'NUMBER', rule: 'AreaLine', path }]);
  const sides = sidesAround(scene.cursor);
  if (sides === undefined) return undefined;
  const { said } = sidesSaid(scene.cursor, sides);
  const free = sides.names.filter(name => !said.has(name));
  if (property === 'EdgeWhere.sides') return sides.form === 'rectangle' || sides.form === 'strip' ? free : undefined;
  if (sides.form !== 'walk' || !/^LegRange\.(?:first|last)$/.test(property ?? '')) return undefined;
  const first = property === 'LegRange.last' ? Number(begun.tokens.at(-2)?.image) : 0;
  return free.map(name => name.replace('leg ', '')).filter(leg => Number(leg) > first);
}

// ---- braces, texts in quotes, values ----

function signOffers(scene: Scene, begun: Begun, next: readonly Next[]): Offer[] {
  const opens = BLOCKS[scene.cursor.block].statements[begun.word]?.opens;
  const whole = { line: 'the block, with what it usually holds' };
  return next.flatMap(({ is, path }): Offer[] => {
    if (is === '{' && opens !== undefined) {
      const [, ...body] = blockParts(scene, opens, begun.word);
      return [{ label: '{ … }', kind: 'block', parts: ['{', ...body], help: whole, filter: 'block' }];
    }
    if (is === '=') {
      const kinds = [...begun.kinds, '='];
      return valueOffers(scene, begun, kinds, nextWords('spec', kinds).next).map(value => ({
        ...value,
        label: `= ${value.label}`,
        parts: ['= ', ...value.parts]
      }));
    }
    if (path.at(-1) === 'Job.title') {
      const title = ['"', { usual: 'My patio' }, '"', ...blockParts(scene, 'job', 'job')];
      return [{ label: '"…" { … }', kind: 'block', parts: title, help: whole, filter: 'title' }];
    }
    return path.at(-1) === 'Use.path' ? scene.paths.map(file => fileOffer(file, { opened: false, closed: false })) : [];
  });
}

/** A path, with the quotes that are not there yet. */
export function fileOffer(path: string, quote: { readonly opened: boolean; readonly closed: boolean }): Offer {
  const help = { line: 'a job spec in this folder' };
  const open = quote.opened ? '' : '"';
  return { label: path, kind: 'file', parts: [`${open}${path}${quote.closed ? '' : '"'}`], help, filter: open + path };
}

/** The first of each label counts. */
function onceEach(offers: readonly Offer[]): Offer[] {
  return [...new Map([...offers].reverse().map(offer => [offer.label, offer])).values()].reverse();
}
