import type { Bond, BondWay, Key } from '../job/job.ts';
import type { Slot } from '../laying/bonds/cell-bond.ts';
import * as ast from '../syntax/generated/ast.ts';
import type { Expression } from './amounts.ts';
import { ANY, NOT_NEGATIVE, POSITIVE, type Context } from './context.ts';
import { slotsIn } from './bond-cell.ts';
import type { Declared } from './names.ts';
import { saidOnce, takingOut } from './said-once.ts';
import { writing } from './said-fix.ts';
import type { Things } from './things.ts';

/** The most squares of a repeating cell along or across: no bond of the trade comes near, and each is laid by itself. */
const MOST_SQUARES = 24;

/** The largest seed: a number that is exact in every step of the drawing of lots. */
const MOST_SEED = 999_999;

type Said = ReadonlyMap<string, ast.BondItem>;

/** Reads a bond: by an offset, by its courses, like another one, or one of those that no cell can say. */
export function readBond(context: Context, things: Things, declared: Declared): Bond | undefined {
  const { text } = declared;
  const node = declared.node as ast.Bond;
  const key = `bond:${node.name}`;
  // Half of a drawing is another bond.
  if (context.isBroken(text, node)) return undefined;
  const courses = node.items.filter(ast.isBondCourse);
  const others = node.items.filter(item => !ast.isBondCourse(item));
  const said: Said = saidOnce(context, text, key, others, item => item.$type);
  const turned = turnOf(context, declared, key, said);
  const way = wayOf(context, things, declared, key, said, courses);
  if (way?.way !== 'random-courses' && way !== undefined) inVain(context, declared, key, said);
  if (way === undefined || turned === 'faulty') return undefined;
  const together = turnedTogether(way.turned, turned);
  return { ...way, key, name: node.name, ...(together === undefined ? {} : { turned: together }) };
}

/** A turn of the bond that this one is like, and one of its own. */
function turnedTogether(first: Bond['turned'], own: Bond['turned']): Bond['turned'] {
  if (first === undefined || own === undefined) return own ?? first;
  return { ...own, value: first.value + own.value, written: `${first.written} + ${own.written}` };
}

/** What only random courses go by. */
function inVain(context: Context, { text }: Declared, key: Key, said: Said): void {
  for (const type of ['BondSeed', 'BondApart']) {
    const item = said.get(type);
    if (item !== undefined)
      context.fault(
        text,
        key,
        item,
        'unknown-statement',
        `\`${wordOf(item)}\` belongs to \`random-courses\`; here it says nothing.`,
        { harmless: true, fixes: [takingOut(context, text, item)] }
      );
  }
}

function turnOf(context: Context, { text }: Declared, key: Key, said: Said): Bond['turned'] | 'faulty' {
  const item = said.get('BondTurned') as ast.BondTurned | undefined;
  if (item === undefined) return undefined;
  return context.given(text, `${key}/turned`, item.turn as Expression, 'degrees', ANY) ?? 'faulty';
}

type Way = BondWay & Pick<Bond, 'turned'>;

function wayOf(
  context: Context,
  things: Things,
  declared: Declared,
  key: Key,
  said: Said,
  courses: readonly ast.BondCourse[]
): Way | undefined {
  const { text } = declared;
  const node = declared.node as ast.Bond;
  const ways = [
    ...(courses.length > 0 ? [courses[0]!] : []),
    ...['BondOffset', 'BondLike', 'BondByCode'].flatMap(type => said.get(type) ?? [])
  ];
  if (ways.length === 0)
    return context.incomplete(
      text,
      key,
      node,
      `The bond ${node.name} does not say how its units lie. Write \`offset 1/2\`: how far each next course is shifted, as a share of a unit's length; or draw its courses, one \`course a a b\` a line.`,
      things.sayings(text, key, node, undefined, ['offset 1/2', 'offset 1/3', 'offset 1/4'])
    );
  if (ways.length > 1) {
    context.fault(
      text,
      key,
      ways[1]!,
      'said-twice',
      `How the units of ${node.name} lie is said twice: by \`${wordOf(ways[0]!)}\` and by \`${wordOf(ways[1]!)}\`. Keep one.`
    );
    return undefined;
  }
  const [way] = ways;
  if (ast.isBondCourse(way)) return cellOf(context, declared, key, courses);
  if (ast.isBondOffset(way)) return offsetOf(context, declared, key, way);
  if (ast.isBondLike(way)) return likeOf(context, things, declared, key, way);
  return byCode(context, declared, key, said, way as ast.BondByCode);
}

function wordOf(item: ast.BondItem): string {
  return /^\S+/.exec(item.$cstNode?.text ?? '')?.[0] ?? '';
}

function offsetOf(context: Context, { text }: Declared, key: Key, item: ast.BondOffset): Way | undefined {
  const offset = context.given(text, `${key}/offset`, item.offset as Expression, '', NOT_NEGATIVE);
  if (offset !== undefined && offset.value >= 1)
    return context.fault(
      text,
      key,
      item,
      'out-of-range',
      `An offset is a share of a unit's length and less than 1: write \`1/2\`, not \`${offset.written}\`.`
    );
  return offset && { way: 'courses', offset };
}

/** One bond may lead on to the next; round in a circle it leads nowhere. */
const MOST_LIKE = 20;

function likeOf(context: Context, things: Things, { text }: Declared, key: Key, item: ast.BondLike): Way | undefined {
  let at: { item: ast.BondLike; text: Declared['text'] } | undefined = { item, text };
  for (let steps = 0; at !== undefined; steps++) {
    const found = context.find(at.text, key, at.item, 'like', at.item.like?.$refText, ['bond']);
    if (found === undefined) return undefined;
    if (steps > MOST_LIKE)
      return context.fault(text, key, item, 'let-in-circle', `\`as ${found.name}\` leads round in a circle.`);
    const next = (found.node as ast.Bond).items.find(ast.isBondLike);
    if (next === undefined) {
      // It ends: each on the way can be read now.
      const first = context.find(text, key, item, 'like', item.like?.$refText, ['bond'])!;
      return things.bond(first);
    }
    at = { item: next, text: found.text };
  }
  return undefined;
}

function byCode(context: Context, declared: Declared, key: Key, said: Said, { way }: ast.BondByCode): Way | undefined {
  if (way !== 'random-courses') return { way };
  const { text } = declared;
  const node = declared.node as ast.Bond;
  const seedItem = said.get('BondSeed') as ast.BondSeed | undefined;
  const apartItem = said.get('BondApart') as ast.BondApart | undefined;
  if (seedItem === undefined || apartItem === undefined)
    return context.incomplete(
      text,
      key,
      node,
      `Random courses need a seed, so that they come out the same each time, and how far joints of neighbouring courses stay apart: write \`random-courses, seed 1, joints-apart ${context.system === 'imperial' ? '3 in' : '75 mm'}\`.`
    );
  const seed = Number(seedItem.seed);
  if (!Number.isInteger(seed) || seed > MOST_SEED)
    return context.fault(
      text,
      key,
      seedItem,
      'out-of-range',
      `A seed is a whole number up to 999,999: write \`seed 1\`.`,
      { property: 'seed', fixes: [writing('1')] }
    );
  const jointsApart = context.given(text, `${key}/joints-apart`, apartItem.apart as Expression, 'm', POSITIVE);
  return jointsApart && { way, seed, jointsApart };
}

function cellOf(context: Context, { text }: Declared, key: Key, courses: readonly ast.BondCourse[]): Way | undefined {
  const columns = courses[0]!.squares.length;
  const odd = courses.find(({ squares }) => squares.length !== columns);
  if (odd !== undefined)
    return context.fault(
      text,
      key,
      odd,
      'bond-does-not-tile',
      `This course has ${odd.squares.length} squares and the first one ${columns}: every \`course\` of a bond is as long as the others, since they repeat side by side.`
    );
  if (columns > MOST_SQUARES || courses.length > MOST_SQUARES)
    return context.fault(
      text,
      key,
      courses[0]!,
      'out-of-range',
      `A bond repeats within ${MOST_SQUARES} squares each way; this one has ${columns} by ${courses.length}.`
    );
  const rows = courses.map(({ squares }) => squares).reverse();
  const found = slotsIn(rows);
  if ('odd' in found)
    return context.fault(
      text,
      key,
      courses[courses.length - 1 - found.row]!,
      'bond-does-not-tile',
      `The squares of \`${found.odd}\` make no rectangle. Give every unit a letter or word of its own; one that reaches over the edge of the drawing goes on at the other side.`,
      { property: ['squares', found.column] }
    );
  return { way: 'cell', cell: { columns, rows: rows.length, slots: found.slots satisfies readonly Slot[] } };
}
