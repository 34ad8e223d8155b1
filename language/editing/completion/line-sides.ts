import type { Next } from '../../syntax/next-words.ts';
import type { Token } from '../../syntax/parse.ts';
import { atHand } from '../../lowering/things-at-hand.ts';
import { declarationOf } from '../declaration.ts';
import { helpOn, type Offer } from './offer.ts';
import type { Scene } from './scene.ts';
import { RECTANGLE, sidesAround, sidesOfArea, type Sides } from './sides.ts';

/** Whether a line has to be named next that may be a side of an area: `along near`, `away from A to B`. */
export function beginsLine(next: readonly Next[]): boolean {
  return next.some(({ path }) => path.at(-1) === 'AreaLine.from');
}

/** The sides of the area that the line may be, each whole; those that the statement names already first. */
export function sidesOfLine(scene: Scene, tokens: readonly Token[], next: readonly Next[]): readonly string[] {
  const sides = areaOfLine(scene, next);
  if (sides === undefined || sides.form === 'circle') return [];
  const said = ` ${tokens.map(({ image }) => image).join(' ')} `;
  const names = [...new Set(sides.names)];
  const isSaid = (name: string): boolean => said.includes(` ${name} `);
  return [...names.filter(isSaid), ...names.filter(name => !isSaid(name))];
}

/** The numbers of the legs behind `leg`. */
export function legsOfLine(scene: Scene, next: readonly Next[]): readonly string[] {
  const legs = next.filter(({ path }) => path.at(-1) === 'AreaLine.leg');
  return legs.length === 0 ? [] : (areaOfLine(scene, legs)?.names ?? []).map(name => name.replace('leg ', ''));
}

/** Whether a line goes on from a point to another: a side of a rectangle or of a walk is named by itself. */
export function goesOnFromPoint(scene: Scene, last: Token | undefined): boolean {
  const isPoint = atHand(scene.text, scene.project, 'point').some(({ declared: { name } }) => name === last?.image);
  return isPoint || sidesAround(scene.cursor)?.form === 'points';
}

export function lineOffers(scene: Scene, word: string, names: readonly string[]): Offer[] {
  return names.map((label): Offer => {
    const side = label.split(' ')[0]!;
    const help = helpOn(scene, /^(?:near|right|far|left|leg)$/.test(side) ? side : 'to', word);
    return { label, kind: 'side', parts: [label], help };
  });
}

/** The sides of the area around, or of the one that a box stands in; undefined where no area is meant. */
function areaOfLine(scene: Scene, next: readonly Next[]): Sides | undefined {
  const paths = next.flatMap(({ path }) => (path.some(each => each.startsWith('AreaLine.')) ? [path] : []));
  if (paths.some(path => path[0]!.startsWith('Finish.'))) return sidesAround(scene.cursor) ?? RECTANGLE;
  if (!paths.some(path => path.includes('PlaceClause.at'))) return undefined;
  const { around, parsed } = scene.cursor;
  const thing = around.find(({ opens }) => opens === 'kept-out' || opens === 'inset' || opens === 'drain');
  const head = thing && parsed.tokens.slice(thing.first, thing.open);
  const name = head?.[head.findIndex(({ tokenType }) => tokenType.name === 'in') + 1]?.image;
  const area = atHand(scene.text, scene.project, 'area').find(({ declared }) => declared.name === name);
  const declaration = area && declarationOf(area.declared);
  return declaration && sidesOfArea(declaration.parsed.tokens, declaration.statement);
}
