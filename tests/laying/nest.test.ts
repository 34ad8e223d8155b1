// Pieces nested into units, worked by hand. Every nesting is also checked to be cuttable: see nesting.ts.
import { describe, expect, test } from 'vitest';
import { circleLoop, cornerLoop } from '../../language/geometry/index.ts';
import type { Piece } from '../../language/laying/laid.ts';
import type { UnitShape } from '../../language/laying/cut-list/unit-shape.ts';
import { USUAL_NESTING_WORK } from '../../language/laying/nesting/nested.ts';
import { BLOCK, cornered, nest, nestCounted, pieceOf, rectangle } from './nesting.ts';

const SLAB: UnitShape = { shape: 'rectangle', length: 0.2, width: 0.2 };
const HEXAGON: UnitShape = { shape: 'hexagon', length: 0.2, width: Math.sqrt(3) / 10 };

describe('Rectangles from a block of 200 x 100 mm', () => {
  test.each([
    ['30 halves, nothing lost to the saw (P-06)', 100, 0, 15, 'area'],
    ['30 halves beside a 3 mm joint, a 3 mm saw (P-06): 98.5 + 3 + 98.5', 98.5, 3, 15, 'area'],
    ['30 pieces of half the block, which a 3 mm saw leaves no room for', 100, 3, 30, 'counting'],
    ['30 pieces of a quarter, nothing lost to the saw (P-07)', 50, 0, 8, 'area'],
    ['30 pieces of a quarter: a 3 mm saw leaves three a block', 50, 3, 10, 'counting']
  ])('%s', (_, length, saw, units, boundBy) => {
    expect(nest([[rectangle(length, 100), 30]], { saw })).toMatchObject({
      unitsUsed: units,
      lowerBound: units,
      boundBy,
      proven: true
    });
  });

  test('the plan tells how many blocks are cut in which way', () => {
    expect(
      nest([[rectangle(50, 100), 30]], { saw: 0 }).plan.map(({ units, pieces }) => [units, pieces.length])
    ).toEqual([
      [7, 4],
      [1, 2]
    ]);
  });

  test('the saw may take the cutting tolerance of 0.5 mm, and no more', () => {
    expect(nest([[rectangle(98.75, 100), 2]]).unitsUsed).toBe(1);
    expect(nest([[rectangle(98.8, 100), 2]]).unitsUsed).toBe(2);
  });

  test('pieces are turned where that saves a block, unless a finished edge has to stay outside', () => {
    const demand = [[rectangle(100, 60), 3]] as const;
    expect(nest(demand, { saw: 0 })).toMatchObject({ unitsUsed: 1, proven: true });
    expect(nest(demand, { saw: 0, finishedEdge: true })).toMatchObject({ unitsUsed: 2, proven: true });
  });

  test('with a finished edge one block gives a piece with the edge and one from behind it', () => {
    const edge = rectangle(190, 60);
    expect(
      nest(
        [
          [edge, 1],
          [rectangle(190, 37, 0, 63), 1]
        ],
        { finishedEdge: true }
      ).unitsUsed
    ).toBe(1);
    expect(
      nest(
        [
          [edge, 1],
          [rectangle(190, 37), 1]
        ],
        { finishedEdge: true }
      ).unitsUsed
    ).toBe(2);
    expect(
      nest([
        [edge, 1],
        [rectangle(190, 37), 1]
      ]).unitsUsed
    ).toBe(1);
  });

  test('nothing to cut takes nothing', () => {
    expect(nest([[rectangle(50, 100), 0]])).toMatchObject({ unitsUsed: 0, lowerBound: 0, proven: true, plan: [] });
  });
});

describe('Pieces with slanted sides', () => {
  const slanted = (long: number, short: number): Piece => cornered([0, 0], [long, 0], [short, 100], [0, 100]);
  const mirrored = (long: number, short: number): Piece => cornered([0, 0], [short, 0], [long, 100], [0, 100]);

  test('two pieces of one 45 degree cut come from one block', () => {
    // Along the block a cut at 45 degrees takes 1.414 times the saw's width.
    expect(nest([[slanted(147.8, 47.8), 2]])).toMatchObject({ unitsUsed: 1, proven: true });
    expect(nest([[slanted(148.5, 48.5), 2]])).toMatchObject({ unitsUsed: 2, proven: true });
    expect(nest([[slanted(150, 50), 2]], { saw: 0 })).toMatchObject({ unitsUsed: 1, proven: true });
  });

  test('so do two different ones, the second turned by half a turn', () => {
    const { unitsUsed, plan } = nest([
      [slanted(170, 70), 7],
      [slanted(125, 25), 7]
    ]);
    expect(unitsUsed).toBe(7);
    expect(plan.map(({ units, pieces }) => [units, pieces.map(({ group }) => group)])).toEqual([[7, [10, 11]]]);
    expect(Math.abs(plan[0]!.pieces[0]!.turn - plan[0]!.pieces[1]!.turn)).toBe(180);
  });

  test('a piece and its mirror image do not: face up, both cuts slant the same way', () => {
    expect(
      nest([
        [slanted(147.8, 47.8), 1],
        [mirrored(147.8, 47.8), 1]
      ])
    ).toMatchObject({
      unitsUsed: 2,
      lowerBound: 1,
      proven: true
    });
  });

  test('two triangles of a slab cut on the diagonal, if the saw leaves them', () => {
    const triangle = (leg: number): Piece => cornered([0, 0], [leg, 0], [0, leg]);
    expect(nest([[triangle(200), 6]], { unit: SLAB, saw: 0 })).toMatchObject({ unitsUsed: 3, boundBy: 'area' });
    expect(nest([[triangle(196), 6]], { unit: SLAB })).toMatchObject({ unitsUsed: 3, proven: true });
    expect(nest([[triangle(200), 6]], { unit: SLAB })).toMatchObject({ unitsUsed: 6, proven: true });
  });

  test('four triangles of two halves', () => {
    expect(nest([[cornered([0, 0], [90, 0], [0, 90]), 8]])).toMatchObject({ unitsUsed: 2, proven: true });
  });

  test('a corner cut off is used for a triangle', () => {
    const rest = cornered([0, 0], [200, 0], [200, 40], [140, 100], [0, 100]);
    expect(
      nest([
        [rest, 3],
        [cornered([0, 0], [50, 0], [0, 50]), 3]
      ]).unitsUsed
    ).toBe(3);
  });

  test('with a finished edge pieces slide along the block and meet on the slant, but are not turned', () => {
    const right = cornered([0, 0], [150, 0], [50, 100], [0, 100]);
    const left = cornered([145, 0], [200, 0], [200, 100], [45, 100]);
    expect(
      nest(
        [
          [right, 1],
          [cornered([155, 0], [200, 0], [200, 100], [55, 100]), 1]
        ],
        { finishedEdge: true }
      ).unitsUsed
    ).toBe(1);
    expect(
      nest(
        [
          [right, 1],
          [left, 1]
        ],
        { finishedEdge: true }
      ).unitsUsed
    ).toBe(2);
    expect(nest([[right, 2]], { saw: 0, finishedEdge: true }).unitsUsed).toBe(2);
  });
});

describe('Notches, curves and holes', () => {
  test('a block with a notch is a block of its own: what is cut out is no offcut of use', () => {
    const notched = cornered([0, 0], [200, 0], [200, 40], [120, 40], [120, 100], [0, 100]);
    expect(
      nest([
        [notched, 2],
        [rectangle(60, 40), 2]
      ])
    ).toMatchObject({ unitsUsed: 3 });
  });

  test('a block with a hole, too', () => {
    const holed: Piece = {
      outline: rectangle(200, 100).outline,
      holes: [circleLoop({ x: 0.1, y: 0.05 }, 0.04)],
      area: 0.02 - Math.PI * 0.04 ** 2
    };
    expect(nest([[holed, 4]])).toMatchObject({ unitsUsed: 4, lowerBound: 4, boundBy: 'saw', proven: true });
  });

  test('an outward arc keeps its room', () => {
    const rounded = (reach: number): Piece => {
      const [from, to] = [
        { x: 0.05, y: 0 },
        { x: 0.05, y: 0.1 }
      ];
      const sides = cornerLoop([{ x: 0, y: 0 }, from, to, { x: 0, y: 0.1 }]);
      const half = Math.asin(0.05 / reach);
      const arc = { centre: { x: 0.05 - reach * Math.cos(half), y: 0.05 }, turn: 2 * half };
      return pieceOf(sides.map(side => (side.from === from ? { ...side, arc } : side)));
    };
    // The arc of 60 mm reaches 26.8 mm out: 76.8 mm each. One of 100 mm reaches 13.4 mm: 63.4 mm each.
    expect(nest([[rounded(0.06), 6]]).unitsUsed).toBe(3);
    expect(nest([[rounded(0.1), 6]])).toMatchObject({ unitsUsed: 2 });
  });
});

describe('Hexagons', () => {
  const flat = 100 * Math.sqrt(3);
  const half = cornered([0, flat / 2], [50, 0], [150, 0], [200, flat / 2]);

  test('two halves come from one, corner to corner and flat to flat', () => {
    expect(nest([[half, 9]], { unit: HEXAGON, saw: 0 })).toMatchObject({ unitsUsed: 5, proven: true });
    const upright = cornered([0, flat / 2], [50, 0], [100, 0], [100, flat], [50, flat]);
    expect(nest([[upright, 9]], { unit: HEXAGON, saw: 0 })).toMatchObject({ unitsUsed: 5, proven: true });
  });

  test('a saw that has no room leaves one half of each', () => {
    expect(nest([[half, 9]], { unit: HEXAGON })).toMatchObject({ unitsUsed: 9, lowerBound: 9, proven: true });
  });

  test('six sixths come from one by cuts right through', () => {
    const sixth = cornered([0, flat / 2], [50, 0], [100, flat / 2]);
    expect(nest([[sixth, 12]], { unit: HEXAGON, saw: 0 })).toMatchObject({ unitsUsed: 2, proven: true });
  });
});

describe('Large jobs', () => {
  /** The cut ends of 150 courses of blocks in a circle of 15 m, on its right and its left. */
  const ends = Array.from({ length: 150 }, (_, course) => {
    const reach = (height: number): number => Math.sqrt(15_000 ** 2 - height ** 2);
    const long = Math.max(1, reach(100 * course) % 200);
    const short = Math.max(0.5, long - (reach(100 * course) - reach(100 * course + 100)));
    return [
      cornered([0, 0], [long, 0], [short, 100], [0, 100]),
      cornered([200 - long, 0], [200, 0], [200, 100], [200 - short, 100])
    ];
  }).flatMap(pieces => pieces.map((piece): readonly [Piece, number] => [piece, 1]));

  test('thousands of equal pieces cost no more than a few', () => {
    const { unitsUsed, proven, work, plan } = nest([[rectangle(98.5, 100), 5000]]);
    expect({ unitsUsed, proven, patterns: plan.length }).toEqual({ unitsUsed: 2500, proven: true, patterns: 1 });
    expect(work).toBeLessThan(10);
  });

  test('5,000 halves and 300 different pieces along a circle end early, and give way often', () => {
    const { result, yields } = nestCounted([[rectangle(98.5, 100), 5000], ...ends]);
    expect(result.work).toBeLessThan(1.1 * USUAL_NESTING_WORK);
    expect(yields).toBeGreaterThan(100);
    expect(result.unitsUsed).toBeLessThan(1.03 * result.lowerBound);
  });

  test('beyond the limit of work all is still nested, but not proven', () => {
    const { unitsUsed, lowerBound, proven, work } = nest(ends, { workLimit: 500 });
    // Past the limit ten kinds are tried in each unit, in four turns, along four cuts at most, at twelve places.
    expect(work).toBeLessThan(unitsUsed * 10 * 192);
    expect(proven).toBe(false);
    expect(unitsUsed).toBeGreaterThan(lowerBound);
    expect(unitsUsed).toBeLessThanOrEqual(300);
  });

  test('chips of two sizes, dozens a block', () => {
    const { unitsUsed, lowerBound } = nest(
      [
        [rectangle(12, 17), 2000],
        [rectangle(22, 13), 1000]
      ],
      { unit: BLOCK }
    );
    expect(unitsUsed).toBeLessThan(1.1 * lowerBound);
  });
});
