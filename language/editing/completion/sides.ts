import type { Token } from '../../syntax/parse.ts';
import { meetsOf, type Statement } from '../../syntax/statement-tree.ts';
import type { Cursor } from './cursor.ts';

/** The sides of an outline as a person names them in `edges`. */
export interface Sides {
  readonly form: 'rectangle' | 'circle' | 'walk' | 'strip' | 'points';
  readonly names: readonly string[];
  /** Of an outline from point to point, in its order. */
  readonly corners: readonly string[];
}

/** The sides of the area or inset around the cursor; undefined without an outline. */
export function sidesAround({ parsed: { tokens }, around }: Cursor): Sides | undefined {
  const area = around.find(({ opens }) => opens === 'area' || opens === 'inset');
  return area && sidesOfArea(tokens, area);
}

/** Where no outline is written yet. */
export const RECTANGLE: Sides = { form: 'rectangle', names: ['near', 'right', 'far', 'left'], corners: [] };

/** The sides of an area or inset by its statement; undefined without an outline. */
export function sidesOfArea(tokens: readonly Token[], { inside }: Statement): Sides | undefined {
  const outline = inside.find(({ word }) => /^(?:outline|rectangle|circle)$/.test(word));
  if (outline === undefined) return undefined;
  return sidesOf(tokens.slice(outline.first + (outline.word === 'outline' ? 1 : 0), outline.end));
}

function sidesOf(tokens: readonly Token[]): Sides | undefined {
  const form = tokens[0]?.tokenType.name;
  if (form === 'rectangle') return RECTANGLE;
  if (form === 'circle') return { form, names: ['all round'], corners: [] };
  if (form === 'along') return { form: 'strip', names: ['right', 'end', 'left', 'start'], corners: [] };
  if (form === 'walk') {
    const legs = Array.from({ length: commasOutsideBrackets(tokens) }, (_, leg) => `leg ${leg + 1}`);
    return { form, names: legs, corners: [] };
  }
  if (form !== 'ID') return undefined;
  const named = tokens.filter((token, at) => isName(token) && (at === 0 || tokens[at - 1]!.tokenType.name === 'to'));
  const corners = named.map(({ image }) => image);
  if (corners.length > 2 && corners.at(-1) === corners[0]) corners.pop();
  const names =
    corners.length < 2 ? [] : corners.map((corner, at) => `${corner} to ${corners[(at + 1) % corners.length]!}`);
  return { form: 'points', names, corners };
}

/** The sides of which a line of `edges` speaks already, and whether one speaks of the rest. */
export function sidesSaid(
  cursor: Cursor,
  sides: Sides
): { readonly said: ReadonlySet<string>; readonly rest: boolean } {
  const { tokens } = cursor.parsed;
  const edges = cursor.around.at(-1);
  const lines = (edges?.inside ?? []).filter(line => !isAtCursor(line, cursor));
  const said = new Set<string>();
  let rest = false;
  for (const line of lines) {
    const where = tokens.slice(line.first, meetsOf(tokens, line));
    if (where[0]?.tokenType.name === 'the') rest = true;
    for (const name of sidesNamed(where, sides)) said.add(name);
  }
  return { said, rest };
}

function isAtCursor({ first }: Statement, { parsed: { tokens }, start, end, begun }: Cursor): boolean {
  const token = tokens[first]!;
  return token === begun?.tokens[0] || (token.startOffset === start && end > start);
}

/** The sides that the words before `meets` name. */
function sidesNamed(where: readonly Token[], { names, form }: Sides): readonly string[] {
  const first = where[0]?.tokenType.name;
  if (first === 'all') return names;
  if (first === 'leg' || first === 'legs') return legsNamed(where);
  const ids = where.filter(isName).map(({ image }) => image);
  if (form !== 'points') return ids;
  return ids.slice(1).flatMap((to, at) => {
    const from = ids[at]!;
    return [`${from} to ${to}`, `${to} to ${from}`].find(name => names.includes(name)) ?? [];
  });
}

function legsNamed(where: readonly Token[]): string[] {
  const legs: string[] = [];
  where.forEach(({ tokenType, image }, at) => {
    if (tokenType.name !== 'NUMBER') return;
    const isLast = where[at - 1]?.tokenType.name === 'to';
    const from = isLast ? Number(where[at - 2]?.image) + 1 : Number(image);
    for (let leg = from; leg <= Number(image) && legs.length < MOST_LEGS; leg++) legs.push(`leg ${leg}`);
  });
  return legs;
}

/** More legs than an outline can have. */
const MOST_LEGS = 1_000;

function commasOutsideBrackets(tokens: readonly Token[]): number {
  let depth = 0;
  let commas = 0;
  for (const { tokenType } of tokens) {
    if (tokenType.name === '(') depth++;
    if (tokenType.name === ')') depth--;
    if (tokenType.name === ',' && depth === 0) commas++;
  }
  return commas;
}

function isName({ tokenType }: Token): boolean {
  return tokenType.name === 'ID';
}
