// What lies under a place of the screen, told from the plan itself, never from what happens to be drawn there.
import type { Content } from '../../../server/plan-protocol.ts';
import { distanceTo, isInside } from './corners.ts';
import { isOnLetters } from './letters.ts';
import type { PathEntry, Prepared } from './prepared.ts';
import type { Detail, Scene } from './scene.ts';
import { FARTHEST_STAND, REACH_OF_SIGN, SIGNS_BY_RANK, standOf } from './signs.ts';
import { unitAt } from './units-in-view.ts';
import { apart, type Bounds, type Place, type Size, toGround, toScreen, type View } from './view.ts';

/** A line is meant by who points so near to it, pixels. */
const NEAR_LINE = 5;

/** So much of what lies there is looked at. */
const MOST = 3_000;

export interface PickWish {
  readonly prepared: Prepared;
  readonly view: View;
  readonly size: Size;
  readonly hidden: ReadonlySet<Content>;
  readonly detail: Detail;
  /** As they are drawn, and how far that has been moved since. */
  readonly letters: Scene['letters'];
  readonly shift: Place;
}

/** Key of the thing: signs and letters come before lines, lines before what encloses the place, and that by what lies on top. */
export function pick(at: Place, wish: PickWish): string | undefined {
  return signAt(at, wish) ?? lettersAt(at, wish) ?? lineAt(at, wish) ?? enclosing(at, wish);
}

function near(at: Place, pixels: number, { view, size }: PickWish): Bounds {
  const { x, y } = toGround(view, size, at);
  const reach = pixels / view.scale;
  return [x - reach, y - reach, x + reach, y + reach];
}

function signAt(at: Place, wish: PickWish): string | undefined {
  const { prepared, view, size, hidden } = wish;
  const found = prepared.marks
    .find(near(at, 12 + FARTHEST_STAND, wish), 0, MOST)
    .items.filter(({ shape }) => !hidden.has(shape.content))
    .map(({ shape }) => ({ shape, off: apart(at, standOf(shape.sign, toScreen(view, size, shape))) }))
    .filter(({ shape, off }) => off <= Math.min(REACH_OF_SIGN[shape.sign], 10));
  found.sort(
    (one, other) =>
      SIGNS_BY_RANK.indexOf(one.shape.sign) - SIGNS_BY_RANK.indexOf(other.shape.sign) || one.off - other.off
  );
  return found[0]?.shape.thing;
}

function lettersAt(at: Place, { letters, shift }: PickWish): string | undefined {
  const drawn = { x: at.x - shift.x, y: at.y - shift.y };
  return letters.find(one => isOnLetters(one, drawn))?.thing;
}

function pathsNear(at: Place, pixels: number, wish: PickWish): readonly PathEntry[] {
  const { prepared, hidden, view } = wish;
  const bounds = near(at, pixels, wish);
  // What is too small to be drawn can't be meant.
  const smallest = 3 / view.scale;
  const cuts = hidden.has('cuts') ? [] : prepared.cuts.find(bounds, smallest, MOST).items;
  return [...prepared.paths.find(bounds, smallest, MOST).items, ...cuts].filter(
    ({ shape }) => !hidden.has(shape.content)
  );
}

function lineAt(at: Place, wish: PickWish): string | undefined {
  const ground = toGround(wish.view, wish.size, at);
  const lines = pathsNear(at, NEAR_LINE, wish)
    .filter(({ shape }) => !shape.closed)
    .map(({ shape, loops, order }) => ({
      shape,
      order,
      off: Math.min(...loops.map(loop => distanceTo(loop, false, ground))) * wish.view.scale
    }))
    .filter(({ off }) => off <= NEAR_LINE);
  // Of two lines as near as each other the one on top.
  lines.sort((one, other) => Math.round(one.off) - Math.round(other.off) || other.order - one.order);
  return lines[0]?.shape.thing;
}

function enclosing(at: Place, wish: PickWish): string | undefined {
  const { prepared, view, size, hidden, detail } = wish;
  const ground = toGround(view, size, at);
  const paths = pathsNear(at, 0, wish)
    .filter(({ shape, loops }) => shape.closed && isInside(loops, ground))
    .map(({ shape, order }) => ({ thing: shape.thing, order }));
  const units =
    hidden.has('units') || detail !== 'units'
      ? []
      : prepared.runs
          .find(near(at, 0, wish), 0, MOST)
          .items.filter(entry => unitAt(entry, ground) !== undefined)
          .map(({ shape, order }) => ({ thing: shape.thing, order }));
  return [...paths, ...units].sort((one, other) => other.order - one.order)[0]?.thing;
}
