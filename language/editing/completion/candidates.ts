import { nameIn, SPIKES } from '../../job/key-names.ts';
import type { Role } from '../../job/job.ts';
import type { Declared, Kind, SpecText } from '../../lowering/names.ts';
import { booksIncluded, rulesStanding } from '../../lowering/rule-leads.ts';
import {
  areaOfKeptOut,
  areasOfJob,
  atHand,
  measuresOfLets,
  rolesOf,
  standardMaterial,
  type AtHand
} from '../../lowering/things-at-hand.ts';
import { isCountry } from '../../lowering/things.ts';
import type { Next } from '../../syntax/next-words.ts';
import type { Token } from '../../syntax/parse.ts';
import { statementTree } from '../../syntax/statement-tree.ts';
import { wantedQuantity, type QuantityKind } from './quantities.ts';
import type { Scene } from './scene.ts';
import { sidesAround } from './sides.ts';
import { pointsOfSide } from './sides-in-laying.ts';

/** The statement that names are looked for in: its word, what is written of it, and what that is to the grammar. */
export interface Written {
  readonly word: string;
  readonly tokens: readonly Token[];
  readonly kinds: readonly string[];
}

/** The things that a name can lead to where it is written, those first that are more likely meant. */
export function candidatesAt(scene: Scene, next: Next, written: Written): readonly Declared[] {
  switch (next.is) {
    case 'Let':
      return lets(scene, next, written);
    case 'Mark':
      // Before a height that stands there alone, a corner's name would make another statement of it.
      if (next.rule === 'SpotHeight' && written.word === 'finish' && isBeforeValue(scene)) return [];
      return points(scene, next, written);
    case 'Material':
      return materials(scene, roleAt(next, written));
    case 'Meetable':
      return meetable(scene);
    case 'Joinable':
      return joinable(scene);
    case 'KeptOut':
      return keptOuts(scene);
    case 'Area':
      return LIKE.includes(next.rule) ? likeAreas(scene, written.word) : areas(scene, written);
    case 'Bond':
      return declared(firstOf(things(scene, 'bond'), 'running-bond'));
    case 'SoilKind':
      return declared(firstOf(things(scene, 'soil-kind'), 'common-earth'));
    case 'SideKind':
      return declared(firstOf(things(scene, 'side-kind'), 'existing-paving'));
    case 'Unit':
      return declared(things(scene, 'unit'));
    case 'PricedUnit':
      return unitsOfPack(scene, written);
    case 'Benchmark':
      return benchmarks(scene, written);
    case 'Existing':
      return levelled(scene);
    case 'Levelled':
      return declared([...things(scene, 'benchmark'), ...things(scene, 'existing')]);
    case 'PathLine':
      return declared(things(scene, 'line'));
    case 'PipeEnd':
      return pipeEnds(scene, written);
    case 'Deliverable':
      return declared(ownFirst([...things(scene, 'material'), ...things(scene, 'unit')]));
    case 'Priced':
      return declared(ownFirst([...things(scene, 'unit'), ...things(scene, 'material')]));
    case 'Drain':
      return declared(things(scene, 'drain'));
    case 'Supplier':
      return declared(things(scene, 'supplier'));
    case 'Source':
      return declared(firstOf(things(scene, 'source'), 'common-practice'));
    case 'Rulebook':
      return rulebooks(scene, written);
    case 'Rule':
      return rules(scene, written);
    case 'Acceptable':
      return ACCEPTABLE.flatMap(kind => declared(things(scene, kind)));
    default:
      return [];
  }
}

/** Nothing is written where the cursor stands, and something behind it. */
function isBeforeValue({ cursor: { start, end, isFollowed } }: Scene): boolean {
  return isFollowed && start === end;
}

/** One's own first. */
function things({ text, project }: Scene, kind: Kind): AtHand[] {
  return ownFirst(atHand(text, project, kind));
}

function ownFirst(all: readonly AtHand[]): AtHand[] {
  return [...all.filter(({ isShipped }) => !isShipped), ...all.filter(({ isShipped }) => isShipped)];
}

/** Of those that ship, the usual one first. */
function firstOf(all: readonly AtHand[], usual: string | undefined): AtHand[] {
  const rank = ({ declared: { name }, isShipped }: AtHand): number => (!isShipped ? 0 : name === usual ? 1 : 2);
  return [...all].sort((left, right) => rank(left) - rank(right));
}

function declared(all: readonly AtHand[]): Declared[] {
  return all.map(each => each.declared);
}

/** A mixed pack names none twice. */
function unitsOfPack(scene: Scene, { tokens }: Written): Declared[] {
  const said = new Set(tokens.map(({ image }) => image));
  return declared(things(scene, 'unit')).filter(({ name }) => !said.has(name));
}

// ---- rules ----

const ACCEPTABLE = [
  ...(['area', 'kept-out', 'gate', 'drain', 'pipe', 'route', 'unit', 'material'] as const satisfies readonly Kind[])
];

/** None twice in a list, and none that would include itself. */
function rulebooks(scene: Scene, { tokens }: Written): Declared[] {
  const said = new Set([...tokens.map(({ image }) => image), bookAround(scene)]);
  const all = things(scene, 'rulebook').filter(({ declared: { name } }) => !said.has(name));
  // What others include is seldom named by itself, unless it is that of a country.
  const included = booksIncluded(scene.project);
  const isIncluded = ({ declared: { node, name } }: AtHand): boolean => included.has(node) && !isCountry(name);
  return declared([
    ...firstOf(
      all.filter(book => !isIncluded(book)),
      scene.country
    ),
    ...all.filter(isIncluded)
  ]);
}

/** The rules that stand where the cursor is; none twice. */
function rules(scene: Scene, { tokens }: Written): Declared[] {
  const said = new Set(tokens.map(({ image }) => image));
  const standing = rulesStanding(scene.text, scene.project, bookAround(scene));
  return standing.filter(({ name }) => !said.has(name));
}

/** The name of the rulebook that the cursor stands in. */
export function bookAround({ cursor: { around, parsed } }: Scene): string | undefined {
  const book = around.find(({ opens }) => opens === 'rulebook');
  return book && parsed.tokens[book.first + 1]?.image;
}

// ---- values ----

/** Values of one's own of the kind that is wanted. */
function lets(scene: Scene, { path }: Next, { word, tokens, kinds }: Written): Declared[] {
  const wanted = wantedQuantity(path, [...kinds, scene.cursor.block], scene.system);
  const measures = measuresOfLets(scene.text, scene.project);
  const itself = word === 'let' ? tokens[1]?.image : undefined;
  return declared(things(scene, 'let')).filter(({ name }) => {
    const measure = measures.get(name);
    return measure !== undefined && name !== itself && (wanted === undefined || fits(measure, wanted.kind));
  });
}

function fits(measure: string, kind: QuantityKind): boolean {
  if (kind === 'goods') return /^(?:kg|m3?|m2)?$/.test(measure);
  return kind === 'any' || measure === (/^(?:share|slope|number)$/.test(kind) ? '' : kind);
}

// ---- materials ----

function roleAt({ rule }: Next, { word }: Written): Role {
  if (rule === 'JointFill') return 'joint-filler';
  if (rule === 'Geotextile') return 'geotextile';
  if (rule === 'SoftSpotClause') return 'base';
  return rule === 'EdgeClause' ? 'edging' : (word as Role);
}

function materials(scene: Scene, role: Role): Declared[] {
  // Stone of the base may be the sub-base too, and the other way round.
  const wanted = role === 'base' || role === 'sub-base' ? ['base', 'sub-base'] : [role];
  const fitting = things(scene, 'material').filter(
    ({ declared: material }) =>
      rolesOf(material).some(word => wanted.includes(word)) && material.name !== nameIn(SPIKES)
  );
  return declared(firstOf(fitting, standardMaterial(role, scene.country)));
}

// ---- areas, and what a side meets ----

/** What is there, the other areas, then kinds of sides with the commonest first. */
function meetable(scene: Scene): Declared[] {
  const own = nameOfArea(scene);
  const areas = areasOfJob(scene.project).filter(({ name }) => name !== own);
  const kinds = things(scene, 'side-kind');
  const usual = USUAL_SIDES.flatMap(name => kinds.find(kind => kind.declared.name === name) ?? []);
  const there = [...things(scene, 'existing'), ...things(scene, 'drain')];
  const all = [...declared(there), ...areas, ...declared([...usual, ...kinds])];
  return [...new Map(all.map(each => [each.name, each])).values()];
}

/** What joint lines can be carried on from: what is there, and the other areas. */
function joinable(scene: Scene): Declared[] {
  const own = nameOfArea(scene);
  const all = [...things(scene, 'existing'), ...things(scene, 'area')];
  return declared(all).filter(({ kind, name }) => kind !== 'area' || name !== own);
}

/** Boxes, pits and insets of this area; those of others have borders there. */
function keptOuts(scene: Scene): Declared[] {
  const own = nameOfArea(scene);
  return declared(things(scene, 'kept-out')).filter(thing => own === undefined || areaOfKeptOut(thing) === own);
}

const USUAL_SIDES = ['house-wall', 'lawn'];

/** The statements that may say the same as another area. */
const LIKE: readonly string[] = ['Finish', 'Paving', 'Layer', 'Geotextile', 'JointFill'];

/** None twice in a list: `done dig of drive and …`. */
function areas(scene: Scene, { tokens }: Written): Declared[] {
  const list = tokens.findLastIndex(({ tokenType }) => /^(?:of|in)$/.test(tokenType.name));
  const said = new Set(tokens.slice(list + 1).map(({ image }) => image));
  return declared(things(scene, 'area')).filter(({ name }) => !said.has(name));
}

/** Other areas that say the statement themselves, so that this one can be like them. */
function likeAreas(scene: Scene, statement: string): Declared[] {
  const own = nameOfArea(scene);
  const areas = declared(things(scene, 'area')).filter(({ name }) => name !== own);
  const saying = new Map(
    [...new Set(areas.map(({ text }) => text))].map(text => [text, areasSaying(text, statement, own)])
  );
  return areas.filter(({ name, text }) => saying.get(text)!.has(name));
}

/** Names of the areas of a text that say the statement; one that is like the area `own` would lead round in a circle. */
function areasSaying({ parsed }: SpecText, statement: string, own: string | undefined): ReadonlySet<string> {
  const { tokens } = parsed;
  const saying = statementTree(parsed).filter(({ opens, inside }) => {
    const said = opens === 'area' ? inside.find(({ word }) => word === statement) : undefined;
    if (said === undefined) return false;
    return tokens[said.first + 1]?.tokenType.name !== 'as' || tokens[said.first + 2]?.image !== own;
  });
  return new Set(saying.map(({ first }) => tokens[first + 1]!.image));
}

function nameOfArea({ cursor: { around, parsed } }: Scene): string | undefined {
  const area = around.find(({ opens }) => opens === 'area');
  const name = area && parsed.tokens[area.first + 1];
  return name?.tokenType.name === 'ID' ? name.image : undefined;
}

// ---- heights and pipes ----

/** A benchmark is not measured from itself. */
function benchmarks(scene: Scene, { word, tokens }: Written): Declared[] {
  const itself = word === 'benchmark' ? tokens[1]?.image : undefined;
  return declared(things(scene, 'benchmark')).filter(({ name }) => name !== itself);
}

/** What is there already and has no line of its own in this block so far. */
function levelled(scene: Scene): Declared[] {
  const { around, start, parsed } = scene.cursor;
  const others = (around.at(-1)?.inside ?? []).filter(({ first }) => parsed.tokens[first]!.startOffset !== start);
  const said = new Set(others.map(({ word }) => word));
  return declared(things(scene, 'existing')).filter(({ name }) => !said.has(name));
}

/** Boxes and drains first: a pipe mostly ends in one; none twice. */
function pipeEnds(scene: Scene, { tokens }: Written): Declared[] {
  const said = new Set(tokens.map(({ image }) => image));
  const all = [...things(scene, 'kept-out'), ...things(scene, 'drain'), ...things(scene, 'point')];
  return declared(all).filter(({ name }) => !said.has(name));
}

// ---- points ----

/** Points where one can go on to: along an outline those after the last first, in `edges` only its neighbours. */
function points(scene: Scene, { rule }: Next, { word, tokens, kinds }: Written): Declared[] {
  const itself = word === 'point' ? tokens[1]?.image : undefined;
  const all = declared(things(scene, 'point')).filter(({ name }) => name !== itself);
  const named = tokens.filter(({ tokenType }) => tokenType.name === 'ID').map(({ image }) => image);
  const last = named.at(-1);
  if (rule === 'EdgeWhere') return byNames(all, neighbours(scene, named));
  if (rule === 'SideWhere') return byNames(all, neighbours(scene, pointsOfSide(tokens)));
  if (rule === 'Rounding') return byNames(all, cornersToRound(tokens));
  if (AGAIN.includes(rule)) return againFirst(all, named, kinds.at(-1) === 'to');
  const from = all.findIndex(({ name }) => name === last) + 1;
  const following = [...all.slice(from), ...all.slice(0, from)];
  const taken = new Set(named);
  const free = following.filter(({ name }) => !taken.has(name));
  // Back to the first point closes the outline too; two sides enclose something only if one is bent.
  const isBent = tokens.some(({ tokenType }) => /^(?:bowed|radius|through)$/.test(tokenType.name));
  const closing = rule === 'Leg' && named.length > (isBent ? 1 : 2) ? byNames(all, [named[0]!]) : [];
  return [...free, ...closing];
}

/** Where points may be named again: lines between two points, and the direction in which something lies. */
const AGAIN: readonly string[] = ['PointLine', 'AreaLine', 'FromPoint', 'LeafClause', 'Offset'];

/** The line that was named before is most likely meant again; it does not end where it begins. */
function againFirst(all: readonly Declared[], named: readonly string[], isEnd: boolean): Declared[] {
  const known = byNames(all, [...new Set(named)]);
  const last = isEnd ? named.at(-1) : undefined;
  const from = all.findIndex(({ name }) => name === last) + 1;
  const others = [...all.slice(from), ...all.slice(0, from)];
  return [...new Set(isEnd && named.length % 2 === 1 ? others : [...known, ...others])].filter(
    ({ name }) => name !== last
  );
}

/** The corners beside the last one named, the next one first; a side already named is not walked back. */
function neighbours(scene: Scene, named: readonly string[]): string[] {
  const corners = sidesAround(scene.cursor)?.corners ?? [];
  const at = corners.indexOf(named.at(-1) ?? '');
  if (at < 0) return named.length === 0 ? [...corners] : [];
  const count = corners.length;
  const beside = [corners[(at + 1) % count]!, corners[(at + count - 1) % count]!];
  return beside.filter(name => !named.includes(name));
}

/** The corners of an outline that are not rounded yet. */
function cornersToRound(tokens: readonly Token[]): string[] {
  const behind = (word: RegExp): string[] =>
    tokens.filter((_, at) => word.test(tokens[at - 1]?.image ?? '')).map(({ image }) => image);
  const rounded = new Set(behind(/^(?:at|and)$/));
  return behind(/^(?:outline|to)$/).filter(name => !rounded.has(name));
}

function byNames(all: readonly Declared[], names: readonly string[]): Declared[] {
  const byName = new Map(all.map(each => [each.name, each]));
  return names.flatMap(name => byName.get(name) ?? []);
}
