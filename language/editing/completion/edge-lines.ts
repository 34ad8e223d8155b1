import type { Next } from '../../syntax/next-words.ts';
import { candidatesAt } from './candidates.ts';
import type { Part, Slot } from './insertion.ts';
import type { Scene } from './scene.ts';
import { sidesAround, sidesSaid, type Sides } from './sides.ts';

/** A side, or several, of which a line of `edges` can still speak, and the line as it is usually written. */
export interface EdgeLine {
  readonly where: string;
  readonly parts: readonly Part[];
}

/** The lines of `edges` that are still to be written, one for each side and one for the rest. */
export function edgeLinesToSay(scene: Scene): readonly EdgeLine[] {
  const sides = sidesAround(scene.cursor);
  const lineOf = linesAt(scene);
  if (sides === undefined) return [lineOf('the rest', false), lineOf('all round', false)];
  const { said, rest } = sidesSaid(scene.cursor, sides);
  const free = [...new Set(sides.names)].filter(name => !said.has(name));
  const lines = free.map((name, at) => lineOf(name, said.size === 0 && at === 0 && free.length > 1));
  const run = sides.form === 'walk' ? runOfLegs(free) : undefined;
  if (run !== undefined) lines.push(lineOf(run, false));
  if (rest || free.length === 0 || sides.form === 'circle') return lines;
  const all = said.size === 0 ? [lineOf('all round', false)] : [];
  return [...lines, lineOf('the rest', false), ...all];
}

/** The first legs in a row: `legs 2 to 4`. */
function runOfLegs(free: readonly string[]): string | undefined {
  const legs = free.map(name => Number(name.replace('leg ', '')));
  const from = legs.findIndex((leg, at) => legs[at + 1] === leg + 1);
  if (from < 0) return undefined;
  let to = from;
  while (legs[to + 1] === legs[to]! + 1) to++;
  return `legs ${legs[from]!} to ${legs[to]!}`;
}

/** What a new block of `edges` begins with: a side against the house, and the rest. */
export function linesOfEdges(scene: Scene): readonly (readonly Part[])[] {
  const sides = sidesAround(scene.cursor) ?? RECTANGLE;
  const [first] = sides.names;
  const wheres = first === undefined || sides.form === 'circle' ? ['all round'] : [first, 'the rest'];
  const width = Math.max(...wheres.map(where => where.length));
  const lineOf = linesAt(scene);
  return wheres.map((where, at) => lineOf(where, wheres.length > 1 && at === 0, width).parts);
}

const RECTANGLE: Sides = { form: 'rectangle', names: ['near'], corners: [] };

type LineOf = (where: string, againstHouse: boolean, width?: number) => EdgeLine;

/** Writes lines with the names that can stand in them, looked up once: a side against a wall, or one to open ground with edging. */
function linesAt(scene: Scene): LineOf {
  const all = namesAt(scene, 'Meetable', 'EdgeItem');
  const edgings = namesAt(scene, 'Material', 'EdgeClause');
  const house: Slot = { usual: HOUSE, choices: all };
  const open: Slot = { usual: 'lawn', choices: all.filter(name => name !== HOUSE) };
  const edging: Slot = { usual: edgings[0] ?? 'spiked-strip', choices: edgings };
  return (where, againstHouse, width = where.length) => {
    const meets = `${where.padEnd(width)}  meets `;
    return { where, parts: againstHouse ? [meets, house] : [meets, open, ', edging ', edging] };
  };
}

const HOUSE = 'house-wall';

function namesAt(scene: Scene, is: string, rule: string): readonly string[] {
  const next: Next = { what: 'name', is, rule, path: [] };
  return candidatesAt(scene, next, { word: '', tokens: [], kinds: [] }).map(({ name }) => name);
}
