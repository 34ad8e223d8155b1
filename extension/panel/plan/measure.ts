// Measuring between two places of the plan, and where a place is caught.
import { printLength } from '../../../language/measures/print.ts';
import type { Content, LivePlan } from '../../../server/plan-protocol.ts';
import type { Prepared } from './prepared.ts';
import { apart, type Bounds, type Place, type Size, toGround, toScreen, type View } from './view.ts';

/** A point or corner so near, pixels, is what is meant. */
const CATCH = 8;

/** So much of what lies near is looked at. */
const MOST = 500;

interface CatchWish {
  readonly prepared: Prepared;
  readonly view: View;
  readonly size: Size;
  readonly hidden: ReadonlySet<Content>;
}

/** The place on the ground that is meant: a point or corner that is drawn near there, else the very place. */
export function caught(at: Place, { prepared, view, size, hidden }: CatchWish): Place {
  const ground = toGround(view, size, at);
  const reach = CATCH / view.scale;
  const bounds: Bounds = [ground.x - reach, ground.y - reach, ground.x + reach, ground.y + reach];
  const marks = prepared.marks.find(bounds, 0, MOST).items.filter(({ shape }) => !hidden.has(shape.content));
  const lines = prepared.paths.find(bounds, reach, MOST).items.filter(({ shape }) => !hidden.has(shape.content));
  const places: Place[] = marks.map(({ shape }) => ({ x: shape.x, y: shape.y }));
  for (const { shape } of lines) {
    for (const loop of shape.loops) {
      for (let index = 0; index < loop.length; index += 3) places.push({ x: loop[index]!, y: loop[index + 1]! });
    }
  }
  let [nearest, off] = [ground, CATCH];
  for (const place of places) {
    const far = apart(at, toScreen(view, size, place));
    if (far <= off) [nearest, off] = [place, far];
  }
  return { x: nearest.x, y: nearest.y };
}

/** As on a tape: feet and inches to a sixteenth, or metres to the millimetre. Places are mm on the ground. */
export function printed(millimetres: number, system: LivePlan['system']): string {
  return printLength(millimetres / 1000, system);
}

export interface Measured {
  readonly distance: string;
  readonly x: string;
  readonly y: string;
}

export function measured(from: Place, to: Place, system: LivePlan['system']): Measured {
  return {
    distance: printed(apart(from, to), system),
    x: printed(to.x - from.x, system),
    y: printed(to.y - from.y, system)
  };
}

/** mm: 1 cm or half an inch; ten times as far; 1 mm or a sixteenth of an inch. */
const STEPS = { metric: { usual: 10, fine: 1 }, imperial: { usual: 12.7, fine: 25.4 / 16 } } as const;

/** How far a key moves what is held, mm on the ground. */
export function stepOf(
  system: LivePlan['system'],
  { shiftKey, altKey }: { readonly shiftKey: boolean; readonly altKey: boolean }
): number {
  const { usual, fine } = STEPS[system];
  return altKey ? fine : shiftKey ? 10 * usual : usual;
}
