import type { Declared } from '../../lowering/names.ts';
import { atHand } from '../../lowering/things-at-hand.ts';
import { candidatesAt } from './candidates.ts';
import { isReadByInstrument } from './clauses.ts';
import type { Part } from './insertion.ts';
import type { Scene } from './scene.ts';
import { usualParts } from './usual.ts';

/** A line of `heights`: the ground or a thing that is there, and the line as it is usually written. */
export interface HeightLine {
  readonly of: 'ground' | Declared;
  readonly parts: readonly Part[];
}

/** The lines that can be written: of the ground, on several lines where it has many points, and of each thing that is there. */
export function heightLinesToSay(scene: Scene): readonly HeightLine[] {
  const { around, start, parsed } = scene.cursor;
  const lines = around.at(-1)?.inside ?? [];
  const hasGround = lines.some(({ word, first }) => word === 'ground' && parsed.tokens[first]!.startOffset !== start);
  const ground = ['ground' as const];
  const things = candidatesAt(scene, { what: 'name', is: 'Existing', rule: 'HeightsOf', path: [] }, NOTHING);
  const all = hasGround ? [...things, ...ground] : [...ground, ...things];
  return all.map(of => {
    const word = of === 'ground' ? of : of.name;
    return { of, parts: [`${word} `, ...spots(scene, 1, isReadByInstrument(scene))] };
  });
}

const NOTHING = { word: '', tokens: [], kinds: [] };

/** What a new block of `heights` begins with: the ground at the first points. */
export function linesOfHeights(scene: Scene): readonly (readonly Part[])[] {
  const count = Math.min(MOST_POINTS, atHand(scene.text, scene.project, 'point').length);
  return [['ground ', ...spots(scene, count, true)]];
}

/** More points make a long line: the others are written as they are read. */
const MOST_POINTS = 4;

/** Points with their heights; by an instrument, what the rod reads. */
function spots(scene: Scene, count: number, byInstrument: boolean): readonly Part[] {
  const points = atHand(scene.text, scene.project, 'point').map(({ declared: { name } }) => name);
  const shown = { ...scene, cursor: { ...scene.cursor, block: 'heights' as const } };
  return points.slice(0, Math.max(1, count)).flatMap((usual, at): readonly Part[] => {
    const height = byInstrument
      ? usualParts(shown, 'heights', 'ground', '[] []').slice(2)
      : [' ', ...usualParts(scene, 'site', 'ground', '[] below []')];
    return [...(at === 0 ? [] : ['  ']), { usual, choices: points }, ...height];
  });
}
