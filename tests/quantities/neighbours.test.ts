import { describe, expect, it } from 'vitest';
import { type Loop, rectangleLoop, type Side } from '../../language/geometry/index.ts';
import type { Area, Edge, Job } from '../../language/job/job.ts';
import { area, box, corners, HOUSE_WALL, job, meeting, NEIGHBOUR, numbersOf, rectangle } from './jobs.ts';

/* Sides: 1 near, 2 right, 3 far, 4 left. Area `a` lies to the left of area `b`. */
const WIDE = { width: 4, depth: 11.4 };
const yard = (sides: readonly Partial<Edge>[], more: Partial<Area> = {}): Area =>
  area(rectangle(WIDE.width, WIDE.depth), more, sides);
const beside = (outline: Loop, sides: readonly Partial<Edge>[], name = 'b'): Area => area(outline, { name }, sides);
const meets = (name: string): Partial<Edge> => ({ meets: meeting(name) });

function told(areas: readonly Area[], more: Partial<Job> = {}): string[][] {
  return numbersOf(job(areas, more)).findings.map(({ id, target, message }) => [id, target, message]);
}

describe('a side that meets another area', () => {
  it('lies along it over its whole length, whichever way the other runs and in how many parts', () => {
    const right = meets('b');
    expect(told([yard([{}, right]), beside(rectangle(3, 11.4, 4, 0), [{}, {}, {}, meets('a')])])).toEqual([]);
    const parted = corners([4, 0], [4, 5], [4, 11.4], [7, 11.4], [7, 0]);
    expect(told([yard([{}, right]), beside(parted, [meets('a'), meets('a')])])).toEqual([]);
  });

  it('may miss it by a millimetre, and no more', () => {
    const gap = (by: number) => told([yard([{}, meets('b')]), beside(rectangle(3, 11.4, 4 + by, 0), [])]);
    expect(gap(0.0009).map(([id]) => id)).toEqual(['neighbour-not-said']);
    expect(gap(0.0011)).toEqual([
      [
        'neighbour-not-along',
        'area:a',
        'Side side 2 of a is said to meet b, but lies nowhere along it. Say what stands there, or draw the two against each other.'
      ]
    ]);
    const short = (by: number) =>
      told([yard([{}, meets('b')]), beside(rectangle(3, 11.4 - by, 4, 0), [{}, {}, {}, meets('a')])]);
    expect(short(0.001)).toEqual([]);
    expect(short(0.0011).map(([id]) => id)).toEqual(['neighbour-not-along']);
  });

  it('is told for how much of it the other is there', () => {
    const short = beside(rectangle(3, 4.5, 4, 0), [{}, {}, {}, meets('a')]);
    expect(told([yard([{}, meets('b')]), short])).toEqual([
      [
        'neighbour-not-along',
        'area:a',
        'Side side 2 of a is said to meet b, but lies along it for 4.500 m of 11.400 m only. Set a point on the side where the two part, so that the rest can meet something else.'
      ]
    ]);
  });

  it('is told even of one far away; several sides together', () => {
    const far = beside(rectangle(3, 3, 50, 50), []);
    expect(told([yard([{}, meets('b'), meets('b')]), far])).toEqual([
      [
        'neighbour-not-along',
        'area:a',
        'Sides side 2 and side 3 of a are said to meet b, but lie nowhere along it. Say what stands there, or draw the two against each other.'
      ]
    ]);
  });

  it('may lie along a shape kept out of it', () => {
    const inner = beside(
      rectangle(1, 1, 1, 1),
      Array.from({ length: 4 }, () => meets('a'))
    );
    expect(told([yard([], { keptOut: [box('court', rectangle(1, 1, 1, 1), 'pit')] }), inner])).toEqual([]);
  });
});

describe('a side along another area', () => {
  const both = (left: Partial<Edge>, depth = 4.5) =>
    told([yard([{}, { meets: NEIGHBOUR }]), beside(rectangle(3, depth, 4, 0), [{}, {}, {}, left])]);

  it('is said to meet it', () => {
    expect(both({ meets: HOUSE_WALL })).toEqual([
      [
        'neighbour-not-said',
        'area:b',
        'Side side 4 of b runs along a for 4.500 m but is said to meet house-wall. Write `meets a`, or draw the two apart.'
      ]
    ]);
    expect(both(meets('a'))).toEqual([]);
  });

  it('is told where it is so only in part', () => {
    const small = beside(rectangle(3, 4.5, 4, 0), [{}, {}, {}, meets('a')]);
    expect(told([yard([]), small])).toEqual([
      [
        'neighbour-not-said',
        'area:a',
        'Side side 2 of a runs along b for 4.500 m of 11.400 m but is said to meet lawn. Set a point on the side where the two part, so that only the rest meets lawn.'
      ]
    ]);
  });

  it('may brush it over 100 mm', () => {
    expect(both({}, 0.1)).toEqual([]);
    expect(both({}, 0.11).map(([id]) => id)).toEqual(['neighbour-not-said']);
  });

  it('of which nothing is said, or of which the neighbour is unknown or broken, is left alone', () => {
    const { meets: _, ...silent } = yard([]).edges[0]!;
    const unsaid = { ...yard([]), edges: [0, 1, 2, 3].map(index => ({ ...silent, name: `side ${index + 1}` })) };
    const small = beside(rectangle(3, 4.5, 4, 0), [{}, {}, {}, meets('a')]);
    expect(told([unsaid, small]).map(([id]) => id)).toEqual(['edge-not-said']);
    const unknown = { meets: { name: 'drvie', openGround: false, holds: true, unknown: true } } as const;
    expect(told([yard([{}, unknown]), small])).toEqual([]);
    expect(told([yard([{}, { meets: NEIGHBOUR }]), small])).toEqual([]);
  });
});

describe('curves', () => {
  const at = (x: number, y: number) => ({ x, y });
  const half = (from: Side['from'], to: Side['to']): Side => ({
    from,
    to,
    arc: { centre: at((from.x + to.x) / 2, (from.y + to.y) / 2), turn: -Math.PI }
  });
  /** A bay of which the first side is a curve to the left of x = 4, and the second its chord. */
  const bay = (name: string): Area =>
    area([half(at(4, 1), at(4, 3)), { from: at(4, 3), to: at(4, 1) }], { name: 'bay' }, [meets(name), meets('b')]);

  it('are judged only where the other area is apart from them', () => {
    const block = beside(rectangle(3, 2, 4, 1), [{}, {}, {}, meets('bay')]);
    expect(told([bay('b'), block])).toEqual([]);
    const far = beside(rectangleLoop(3, 2, at(40, 1), 0), [], 'c');
    expect(told([bay('c'), block, far])).toEqual([
      [
        'neighbour-not-along',
        'area:bay',
        'Side side 1 of bay is said to meet c, but lies nowhere along it. Say what stands there, or draw the two against each other.'
      ]
    ]);
  });
});

it('areas that overlap are told to overlap, and no more', () => {
  const over = beside(rectangle(3, 11.4, 3.5, 0), [{}, {}, {}, meets('a')]);
  expect(told([yard([{}, meets('b')]), over]).map(([id]) => id)).toEqual(['areas-overlap']);
});

it('lengths are told in the measures of the job', () => {
  const small = beside(rectangle(3, 3.048, 4, 0), [{}, {}, {}, meets('a')]);
  expect(told([yard([]), small], { system: 'imperial' })[0]![2]).toContain(
    'runs along b for 10 ft of 37 ft 4 13/16 in'
  );
});
