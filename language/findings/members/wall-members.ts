import { distance, type Point, pointAlong, type Side, signedAreaOf } from '../../geometry/index.ts';
import type { Height } from '../../job/job.ts';
import { extremesBetween } from '../../levels/extremes.ts';
import { heightAt } from '../../levels/surface.ts';
import { printHeight, printLength } from '../../measures/print.ts';
import { areaHeights } from '../../quantities/area-heights.ts';
import { zOf } from '../../job/heights.ts';
import { CHANNEL, namesMet } from '../sides.ts';
import { length, type Member, type ThingOf, words } from './member.ts';

type SideThing = ThingOf<'side'>;

const atSide = ({ edge }: SideThing): string => edge.key;

/** What rules can look at in the heights along a side, and in what stands there. */
export const WALL_MEMBERS: readonly Member<'side'>[] = [
  level('finish-from', 'Height of the finish where the side begins', thing => heightsOf(thing).finishFrom),
  level('finish-to', 'Height of the finish where the side ends', thing => heightsOf(thing).finishTo),
  {
    name: 'fall-away',
    of: 'side',
    measure: '',
    print: 'slope',
    describe: 'Least fall of the finish away from the side; less than nought: water runs to it',
    read: thing => heightsOf(thing).fallAway,
    at: atSide
  },
  gauge('step-up', 'Most that what lies beyond stands above the finish', thing => heightsOf(thing).stepUp),
  gauge('step-down', 'Most that what lies beyond lies below the finish', thing => heightsOf(thing).stepDown),
  gauge('edging-standing', 'How far its edging stands above the finish; nought where that is not said', ({ edge }) =>
    edge.standing === undefined ? 0 : edge.standing.value
  ),
  {
    ...words('side', 'joins', 'How the paving meets what lies there, where that is said', ['flush']),
    read: ({ edge }) => (edge.flush ? ['flush'] : [])
  },
  {
    ...words('side', 'wall', 'What the wall is, where it has no damp course, siding or weep holes', ['solid']),
    read: ({ edge }) => (edge.wall?.solid === true ? ['solid'] : [])
  },
  {
    ...words('side', 'walked-on', 'What people walk on beyond it: another area, or paving that is there already', [
      'area',
      'existing'
    ]),
    read: ({ edge: { meets } }) =>
      meets?.area !== undefined ? ['area'] : WALKED_ON.includes(meets?.kind ?? meets?.name ?? '') ? ['existing'] : []
  },
  level('damp-course', 'Height of the damp course', ({ edge }) => of(edge.wall?.dampCourse)),
  level('siding', 'Height of the lower edge of the siding', ({ edge }) => of(edge.wall?.siding)),
  level('weep-holes', 'Height of the weep holes', ({ edge }) => of(edge.wall?.weepHoles)),
  level('footing', 'Height of the underside of the footing', ({ edge }) => of(edge.wall?.footing)),
  level('sill', 'Height of the lowest sill of a door in the side', sillOf),
  clearance('damp-course-clearance', 'From the highest finish along the side up to the damp course', 'dampCourse'),
  clearance('siding-clearance', 'From the highest finish along the side up to the siding', 'siding'),
  clearance('weep-holes-clearance', 'From the highest finish along the side up to the weep holes', 'weepHoles'),
  gauge('weep-holes-covered-by', 'How far the highest finish along the side lies above the weep holes', thing => {
    const [holes, finish] = [of(thing.edge.wall?.weepHoles), highestFinish(thing)];
    return holes === undefined || finish === undefined ? undefined : finish - holes;
  }),
  gauge(
    'dig-above-footing',
    'From the underside of the footing up to the bottom of the dig beside it; less than nought: the dig goes below',
    digAboveFooting
  ),
  gauge('dig-below-footing', 'How far the dig beside it goes below the underside of the footing', thing => {
    const above = digAboveFooting(thing);
    return above === undefined ? undefined : -above;
  }),
  {
    name: 'water-over',
    drained: true,
    of: 'side',
    measure: 'm2',
    print: 'area',
    describe: 'Area of paving whose water runs over the side',
    read: ({ judged: { water }, index }) =>
      water && water.over.reduce((sum, over) => (over.index === index ? sum + over.drained : sum), 0),
    at: atSide
  },
  level(
    'fixed-finish',
    'Height at which the finish is held further off, by a drain or by what it is flush with',
    thing => heldBy(thing)?.z
  ),
  {
    ...length('side', 'fixed-distance', 'How far off the side that is'),
    print: 'length',
    read: thing => heldBy(thing)?.away
  },
  {
    ...words('side', 'fixed-heights', 'All that holds or limits the height of the finish there, each with its height'),
    read: fixedHeights
  }
];

/** Kinds of sides that people walk on. */
const WALKED_ON = ['existing-paving', 'footway', 'concrete-slab'];

function level(name: string, describe: string, read: (thing: SideThing) => number | undefined): Member<'side'> {
  return { name, of: 'side', measure: 'm', print: 'level', describe, read, at: atSide };
}

function gauge(name: string, describe: string, read: (thing: SideThing) => number | undefined): Member<'side'> {
  return { name, of: 'side', measure: 'm', print: 'thickness', describe, read, at: atSide };
}

function clearance(name: string, describe: string, mark: 'dampCourse' | 'siding' | 'weepHoles'): Member<'side'> {
  return gauge(name, describe, thing => {
    const [up, finish] = [of(thing.edge.wall?.[mark]), highestFinish(thing)];
    return up === undefined || finish === undefined ? undefined : up - finish;
  });
}

function heightsOf({ judged, index }: SideThing): Partial<SideThing['judged']['edgeHeights'][number]> {
  return judged.edgeHeights[index] ?? {};
}

function of(height: Height | undefined): number | undefined {
  return height && zOf(height);
}

function sideOf({ judged, index }: SideThing): Side {
  return judged.area.outline[index]!;
}

function highestFinish(thing: SideThing): number | undefined {
  const surface = thing.judged.area.finish?.surface;
  if (surface === undefined) return undefined;
  const side = sideOf(thing);
  return extremesBetween(share => heightAt(surface, pointAlong(side, share)), 0, 1).most.value;
}

// ---- footings ----

/** Just within the area, m. */
const WITHIN = 0.01;

function digAboveFooting(thing: SideThing): number | undefined {
  const footing = of(thing.edge.wall?.footing);
  const heights = footing === undefined ? undefined : areaHeights(thing.judged.area);
  if (footing === undefined || heights === undefined) return undefined;
  const side = sideOf(thing);
  const into = intoArea(thing);
  const bottomAt = (share: number): number => {
    const on = pointAlong(side, share);
    const within = { x: on.x + into.x * WITHIN, y: on.y + into.y * WITHIN };
    // At the side itself, and just within, where a soft spot may begin.
    return Math.min(heights.at(on).digBottom, heights.at(within).digBottom);
  };
  return extremesBetween(bottomAt, 0, 1).least.value - footing;
}

/** Square to the chord of a side, into the area. */
function intoArea(thing: SideThing): Point {
  const { from, to } = sideOf(thing);
  const run = distance(from, to) || 1;
  const turn = signedAreaOf(thing.judged.area.outline) >= 0 ? 1 : -1;
  return { x: (-turn * (to.y - from.y)) / run, y: (turn * (to.x - from.x)) / run };
}

// ---- heights that are fixed ----

/** Nearer than this a door lies in the side, m. */
const IN_SIDE = 0.3;

function sillOf(thing: SideThing): number | undefined {
  const sills = doorsIn(thing).map(({ sill }) => zOf(sill!));
  return sills.length === 0 ? undefined : Math.min(...sills);
}

function doorsIn(thing: SideThing): SideThing['judged']['doors'] {
  const { from, to } = sideOf(thing);
  const run = distance(from, to);
  return thing.judged.doors.filter(({ opening }) => {
    const middle = { x: (opening!.from.x + opening!.to.x) / 2, y: (opening!.from.y + opening!.to.y) / 2 };
    const along = ((middle.x - from.x) * (to.x - from.x) + (middle.y - from.y) * (to.y - from.y)) / (run || 1);
    return Math.abs(awayFrom(thing, middle)) <= IN_SIDE && along >= 0 && along <= run;
  });
}

/** How far a place lies off the line of a side, into the area. */
function awayFrom(thing: SideThing, { x, y }: Point): number {
  const { from } = sideOf(thing);
  const into = intoArea(thing);
  return (x - from.x) * into.x + (y - from.y) * into.y;
}

interface Held {
  readonly name: string;
  readonly z: number;
  /** m off the side. */
  readonly away: number;
}

/** Of what holds the finish further off what leaves it the least fall. */
function heldBy(thing: SideThing): Held | undefined {
  const { edge } = thing;
  // A channel along the wall takes the water: the finish may fall towards it.
  if (namesMet(edge).includes(CHANNEL)) return undefined;
  const tops = [of(edge.wall?.dampCourse), of(edge.wall?.siding), of(edge.wall?.weepHoles), sillOf(thing)];
  const top = Math.min(...tops.filter(each => each !== undefined));
  if (!Number.isFinite(top)) return undefined;
  return allHeld(thing).sort((one, other) => (top - one.z) / one.away - (top - other.z) / other.away)[0];
}

/** Nearer than this to a side nothing holds a fall away from it, m. */
const NEAR = 0.3;

function allHeld(thing: SideThing): Held[] {
  const { area } = thing.judged;
  const flush = area.edges.flatMap(({ flush: isFlush, meets }, index) =>
    isFlush && index !== thing.index ? (meets?.heights ?? []).map(({ at, z }) => ({ name: meets!.name, at, z })) : []
  );
  const grates = area.drains.flatMap(({ name, grates: all, line }) =>
    all.map(({ at, z }) => ({ name, z, at: at ?? line?.from }))
  );
  return [...flush, ...grates].flatMap(({ name, at, z }) => {
    const away = at === undefined ? 0 : awayFrom(thing, at);
    return away < NEAR ? [] : [{ name, z, away }];
  });
}

function fixedHeights(thing: SideThing): readonly string[] {
  const { edge, judged } = thing;
  const { dampCourse, siding, weepHoles, footing } = edge.wall ?? {};
  const held = heldBy(thing);
  const told = (words: string, z: number | undefined): string[] =>
    z === undefined ? [] : [`${words} ${inWords(thing, z)}`];
  return [
    ...told('the damp course', of(dampCourse)),
    ...told('the siding', of(siding)),
    ...told('the weep holes', of(weepHoles)),
    ...doorsIn(thing).flatMap(({ name, sill }) => told(`the sill of ${name}`, of(sill))),
    ...told('the underside of the footing', of(footing)),
    ...(held === undefined
      ? []
      : told(`${held.name}, ${printLength(held.away, judged.system)} off,`, held.z).map(each => each))
  ];
}

/** `3 in below door-sill`, `9.985 m`. */
function inWords({ judged: { system, site } }: SideThing, z: number): string {
  const { datum } = site;
  if (datum === undefined || datum.fromNought) return `at ${printLength(z, system)}`;
  return printHeight(z - datum.z, datum.benchmark, system);
}
