import { distance } from '../../geometry/index.ts';
import { upright } from '../plan/cut-numbers.ts';
import type { PlanArea } from '../plan/plan-input.ts';
import type { FallPlace, PlanFall } from '../plan/plan-site.ts';
import { wayText } from '../plan/plan-text.ts';
import { mm, mmPoint, turnOf } from './in-millimetres.ts';
import type { LiveShape } from './live-plan.ts';
import type { UnledThing } from './piece.ts';

/** m: arrows of one area that stand nearer to each other, as on both sides of a crown, would cross on a small screen. */
const APART = 1.5;

/** Arrows down the steepest lines of an area, each with its text. */
export function fallMarks(falls: readonly PlanFall[], area: PlanArea): { shapes: LiveShape[]; things: UnledThing[] } {
  const standing: { readonly key: string; readonly place: FallPlace }[] = [];
  for (const { key, places } of falls) {
    const isClear = ({ at }: FallPlace): boolean => standing.every(({ place }) => distance(place.at, at) >= APART);
    const place = places.find(isClear) ?? places[0];
    if (place !== undefined) standing.push({ key, place });
  }
  return {
    shapes: standing.flatMap(({ key, place }) => shapesOf(key, place)),
    things: standing.map(({ key, place }) => thingOf(key, place, area))
  };
}

function shapesOf(key: string, { at, down, text }: FallPlace): LiveShape[] {
  const shared = { content: 'falls', ink: 'fall', thing: key, x: mm(at.x), y: mm(at.y) } as const;
  return [
    { ...shared, kind: 'mark', key, sign: 'fall', turn: turnOf(down) },
    {
      ...shared,
      kind: 'text',
      key: `${key}/text`,
      ink: 'strong',
      text,
      turn: turnOf(upright(down)),
      anchor: 'middle',
      rank: 2
    }
  ];
}

function thingOf(key: string, place: FallPlace, { key: area, name }: PlanArea): UnledThing {
  return {
    key,
    kind: 'Falls',
    name: `fall of ${name}`,
    facts: [
      ['Steepest fall', place.text],
      ['Downhill', wayText(place.down)]
    ],
    bounds: mmPoint(place.at),
    area
  };
}
