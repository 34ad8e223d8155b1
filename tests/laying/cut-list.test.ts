// Which cuts are alike, how they are numbered, and what they come to.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  areaOf,
  circleLoop,
  cornerLoop,
  type Loop,
  overlapArea,
  type Point,
  reversedLoop,
  sideLength,
  turnedAbout
} from '../../language/geometry/index.ts';
import type { CutUnit, Piece, Placement } from '../../language/laying/laid.ts';
import { makeCutList } from '../../language/laying/cut-list/make-cut-list.ts';
import { unitOutline } from '../../language/laying/cut-list/unit-shape.ts';
import { cut, listOf, outline, piece, SHAPES } from './cuts.ts';

/** The numbers of the groups that cuts come to, cut by cut. */
function numbers(...cuts: readonly CutUnit[]): number[] {
  return listOf(cuts).places.map(place => place.group);
}

function turned(loop: Loop, centre: Point, turn: number): Loop {
  const at = (point: Point): Point => turnedAbout(point, centre, turn);
  return loop.map(({ from, to, arc }) => ({
    from: at(from),
    to: at(to),
    ...(arc && { arc: { centre: at(arc.centre), turn: arc.turn } })
  }));
}

function turnedPiece({ outline: rim, holes, area }: Piece, centre: Point, turn: number): Piece {
  return { outline: turned(rim, centre, turn), holes: holes.map(hole => turned(hole, centre, turn)), area };
}

/** The same piece of the unit's mirror image, left for right. */
function mirrored({ outline: rim, holes, area }: Piece, length: number): Piece {
  const at = ({ x, y }: Point): Point => ({ x: length - x, y });
  const mirror = (loop: Loop): Loop =>
    reversedLoop(
      loop.map(({ from, to, arc }) => ({
        from: at(from),
        to: at(to),
        ...(arc && { arc: { centre: at(arc.centre), turn: -arc.turn } })
      }))
    );
  return { outline: mirror(rim), holes: holes.map(mirror), area };
}

const centreOf = (unit: string): Point => unitOutline(SHAPES[unit]!).centre;

describe('equal cuts', () => {
  const slanting = piece(outline([0, 0], [80, 0], [120, 100], [0, 100]));

  test('a half turn lays one on the other', () => {
    const other = turnedPiece(slanting, centreOf('slab'), Math.PI);
    const list = listOf([cut('slab', slanting), cut('slab', other)]);
    expect(list.groups.map(group => group.count)).toEqual([2]);
    expect(list.places.map(place => place.turn).sort()).toEqual([0, Math.PI]);
    expect(list.places.map(place => place.index)).toEqual([1, 2]);
  });

  test('a mirrored cut is another', () => {
    expect(numbers(cut('slab', slanting), cut('slab', mirrored(slanting, 0.2)))).toEqual([1, 2]);
  });

  test('a cut that is its own mirror image is the same', () => {
    const square = piece(outline([0, 0], [150, 0], [150, 100], [0, 100]));
    expect(numbers(cut('slab', square), cut('slab', mirrored(square, 0.2)))).toEqual([1, 1]);
  });

  test('a unit with a finished edge is not turned', () => {
    const other = turnedPiece(slanting, centreOf('coping'), Math.PI);
    expect(numbers(cut('coping', slanting), cut('coping', other))).toEqual([1, 2]);
  });

  test('square units turn by quarters, others do not', () => {
    const quarters = [0, 1, 2, 3].map(quarter => (quarter * Math.PI) / 2);
    const notched = piece(outline([0, 0], [250, 0], [250, 90], [300, 90], [300, 300], [0, 300]));
    const turns = quarters.map(turn => cut('square', turnedPiece(notched, centreOf('square'), turn)));
    expect(numbers(...turns)).toEqual([1, 1, 1, 1]);
    expect(numbers(...turns, cut('square', mirrored(notched, 0.3)))).toEqual([1, 1, 1, 1, 2]);
    const small = piece(outline([60, 10], [130, 10], [140, 90], [60, 90]));
    expect(numbers(...quarters.map(turn => cut('slab', turnedPiece(small, centreOf('slab'), turn))))).toEqual([
      1, 2, 1, 2
    ]);
  });

  test('hexagons turn by sixths', () => {
    const half = piece(outline([50, 0], [110, 0], [90, 173], [50, 173], [0, 86.5]));
    const sixths = [0, 1, 2, 3, 4, 5].map(sixth => (sixth * Math.PI) / 3);
    const turns = sixths.map(turn => cut('hex', turnedPiece(half, centreOf('hex'), turn)));
    expect(numbers(...turns)).toEqual([1, 1, 1, 1, 1, 1]);
    expect(numbers(...turns, cut('hex', mirrored(half, 0.2)))).toEqual([1, 1, 1, 1, 1, 1, 2]);
  });

  test('within half a millimetre, wherever the outline starts and whatever corners it has to spare', () => {
    const rim = outline([0, 0], [80, 0], [120, 100], [0, 100]);
    const begun = [...rim.slice(2), ...rim.slice(0, 2)];
    const spare = outline([0, 0], [40, 0], [80.4, 0], [100.4, 50], [120.4, 99.9], [120.3, 100], [0, 100]);
    expect(numbers(cut('slab', piece(rim)), cut('slab', piece(begun)), cut('slab', piece(spare)))).toEqual([1, 1, 1]);
    const off = outline([0, 0], [80, 0], [120.6, 100], [0, 100]);
    expect(numbers(cut('slab', piece(rim)), cut('slab', piece(off)))).toEqual([1, 2]);
  });

  test('a row of cuts each a little longer than the last is not all alike', () => {
    const lengths = Array.from({ length: 21 }, (_, index) => 100 + 0.3 * index);
    const list = listOf(
      lengths.map(length => cut('slab', piece(outline([0, 0], [length, 0], [length, 100], [0, 100]))))
    );
    expect(list.groups.map(group => group.count)).toEqual([2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 1]);
  });

  test('an arc is not its chord, nor a slab with a hole one without', () => {
    const straight = cut('coping', piece(outline([0, 0], [150, 0], [150, 100], [0, 100])));
    const bowed = cut('coping', piece(outline([0, 0], [150, 0, 2], [150, 100], [0, 100])));
    const hole = circleLoop({ x: 0.05, y: 0.05 }, 0.02);
    const holed = cut('coping', piece(outline([0, 0], [150, 0], [150, 100], [0, 100]), hole));
    expect(numbers(straight, bowed, holed, bowed)).toEqual([1, 2, 3, 2]);
  });

  test('two pieces of a unit are not one of the same size', () => {
    const left = piece(outline([0, 0], [60, 0], [60, 100], [0, 100]));
    const right = piece(outline([140, 0], [200, 0], [200, 100], [140, 100]));
    const both = piece(outline([0, 0], [120, 0], [120, 100], [0, 100]));
    expect(numbers(cut('slab', left, right), cut('slab', both), cut('slab', right, left))).toEqual([1, 2, 1]);
  });

  test('numbers go unit by unit, and as the cuts come along', () => {
    const cutTo = (unit: string, length: number): CutUnit =>
      cut(unit, piece(outline([0, 0], [length, 0], [length, 100], [0, 100])));
    const list = listOf([cutTo('slab', 150), cutTo('coping', 90), cutTo('slab', 40), cutTo('slab', 150)]);
    expect(list.groups.map(({ number, unit, count }) => [number, unit, count])).toEqual([
      [1, 'slab', 2],
      [2, 'slab', 1],
      [3, 'coping', 1]
    ]);
    expect(list.places.map(({ group, index }) => [group, index])).toEqual([
      [1, 1],
      [3, 1],
      [2, 1],
      [1, 2]
    ]);
  });
});

describe('totals', () => {
  test('worked by hand', () => {
    const long = piece(outline([0, 0], [150, 0], [150, 100], [0, 100]));
    const strip = piece(outline([0, 0], [200, 0], [200, 30], [0, 30]));
    const notched = piece(outline([0, 0], [150, 0], [150, 30], [200, 30], [200, 100], [0, 100]));
    const both = piece(outline([0, 0], [50, 0], [50, 60], [0, 60]));
    const { totals } = listOf([
      cut('slab', long),
      cut('slab', strip),
      cut('slab', notched),
      cut('slab', both),
      cut('slab', long)
    ]);
    expect(totals).toEqual({
      units: 5,
      pieces: 5,
      area: expect.closeTo(2 * 0.015 + 0.006 + 0.0185 + 0.003, 12),
      sawLength: expect.closeTo(2 * 0.1 + 0.2 + 0.08 + 0.11, 12),
      straightCuts: 5,
      straightLength: expect.closeTo(2 * 0.1 + 0.2 + 0.11, 12),
      smallest: { value: expect.closeTo(0.003, 12), group: 4 },
      narrowest: { value: expect.closeTo(0.03, 12), group: 2 }
    });
  });

  test('of nothing', () => {
    expect(listOf([])).toEqual({
      groups: [],
      places: [],
      totals: { units: 0, pieces: 0, area: 0, sawLength: 0, straightCuts: 0, straightLength: 0 }
    });
  });

  test('are made in steps, so that the work can be abandoned', () => {
    const cuts = Array.from({ length: 1000 }, (_, index) =>
      cut('slab', piece(outline([0, 0], [20 + index / 10, 0], [20 + index / 10, 100], [0, 100])))
    );
    const making = makeCutList(cuts, unit => SHAPES[unit]!);
    let steps = 0;
    while (!making.next().done) steps++;
    expect(steps).toBeGreaterThanOrEqual(20);
  });
});

describe('any cuts', () => {
  const millimetres = fc.integer({ min: 2, max: 9 }).map(tenth => tenth / 10);

  /** What a straight line from the near to the far side leaves on its left, of any unit. */
  const straight = (unit: string): fc.Arbitrary<Piece> =>
    fc.tuple(millimetres, millimetres).map(([near, far]) => piece(cornerLoop(leftPart(unit, near, far))));

  const notched = (unit: string): fc.Arbitrary<Piece> =>
    fc.tuple(millimetres, millimetres).map(([along, across]) => {
      const { length, width } = SHAPES[unit]!;
      const [x, y] = [1000 * length * along, 1000 * width * across];
      const [right, far] = [1000 * length, 1000 * width];
      return piece(outline([0, 0], [x, 0], [x, y], [right, y], [right, far], [0, far]));
    });

  const bowed = (unit: string): fc.Arbitrary<Piece> =>
    fc.tuple(millimetres, fc.integer({ min: -9, max: 9 })).map(([along, bow]) => {
      const { length, width } = SHAPES[unit]!;
      const x = 1000 * length * along;
      return piece(outline([0, 0], [x, 0, bow], [x, 1000 * width], [0, 1000 * width]));
    });

  const holed = (unit: string): fc.Arbitrary<Piece> =>
    fc.tuple(millimetres, fc.integer({ min: 4, max: 9 })).map(([along, radius]) => {
      const { corners, length, width } = unitOutline(SHAPES[unit]!);
      const centre = { x: length * along, y: width * 0.4 };
      return piece(cornerLoop(corners), circleLoop(centre, radius / 1000));
    });

  const placement: fc.Arbitrary<Placement> = fc.record({
    x: fc.double({ min: -20, max: 20, noNaN: true }),
    y: fc.double({ min: -20, max: 20, noNaN: true }),
    direction: fc.double({ min: 0, max: 6.28, noNaN: true })
  });

  const anyCut: fc.Arbitrary<CutUnit> = fc.constantFrom('slab', 'coping', 'square', 'hex').chain(unit => {
    const { centre, turns } = unitOutline(SHAPES[unit]!);
    const shapes =
      unit === 'hex' ? [straight(unit), holed(unit)] : [straight, notched, bowed, holed].map(of => of(unit));
    return fc
      .tuple(fc.oneof(...shapes), fc.constantFrom(...turns), placement, fc.boolean())
      .map(([shape, turn, at, isMirrored]) => {
        const one = isMirrored ? mirrored(shape, 2 * centre.x) : shape;
        return { unit, at, pieces: [turnedPiece(one, centre, turn)] };
      });
  });

  const someCuts = fc.array(anyCut, { maxLength: 40 });
  const runs = { seed: 20_418, numRuns: 150 };

  test('the order in which they come decides nothing but the numbers', () => {
    const shuffled = someCuts.chain(cuts =>
      fc.tuple(fc.constant(cuts), fc.shuffledSubarray([...cuts.keys()], { minLength: cuts.length }))
    );
    fc.assert(
      fc.property(shuffled, ([cuts, order]) => {
        const straightOn = listOf(cuts);
        const inOrder = listOf(order.map(index => cuts[index]!));
        const together = (numbers: readonly number[]): string[] => {
          const byNumber = new Map<number, number[]>();
          for (const [index, number] of numbers.entries()) {
            byNumber.set(number, [...(byNumber.get(number) ?? []), index]);
          }
          return [...byNumber.values()].map(indices => indices.join(' ')).sort();
        };
        const back: number[] = [];
        for (const [at, index] of order.entries()) back[index] = inOrder.places[at]!.group;
        expect(together(back)).toEqual(together(straightOn.places.map(place => place.group)));
      }),
      runs
    );
  });

  test('groups come to what the cuts come to one by one', () => {
    fc.assert(
      fc.property(someCuts, cuts => {
        const { groups, totals } = listOf(cuts);
        const alone = cuts.map(each => listOf([each]).totals);
        const sum = (of: (one: (typeof alone)[number]) => number): number =>
          alone.reduce((total, one) => total + of(one), 0);
        expect(totals.area).toBeCloseTo(
          sum(one => one.area),
          9
        );
        expect(totals.sawLength).toBeCloseTo(
          sum(one => one.sawLength),
          9
        );
        expect(totals.straightCuts).toBe(sum(one => one.straightCuts));
        expect(totals.units).toBe(cuts.length);
        expect(groups.reduce((total, group) => total + group.count * group.area, 0)).toBeCloseTo(totals.area, 9);
        expect(Math.min(...groups.map(group => group.narrowest))).toBe(totals.narrowest?.value ?? Infinity);
      }),
      runs
    );
  });

  test('the pattern of a group drawn at the place of each cut covers what is laid there', () => {
    fc.assert(
      fc.property(someCuts, cuts => {
        const { groups, places } = listOf(cuts);
        for (const [index, each] of cuts.entries()) {
          const { group, turn } = places[index]!;
          const drawn = groups[group - 1]!.pieces.map(one =>
            placed(turnedPiece(one, centreOf(each.unit), turn), each.at)
          );
          const laid = each.pieces.map(one => placed(one, each.at));
          const outlines = (pieces: readonly Piece[]): Loop[] => pieces.flatMap(one => [one.outline, ...one.holes]);
          const [ours, theirs] = [outlines(drawn), outlines(laid)];
          expect(ours).toHaveLength(theirs.length);
          for (const [at, loop] of theirs.entries()) {
            const shared = overlapArea(ours[at]!, loop);
            expect(shared).toBeCloseTo(areaOf(ours[at]!), 8);
            expect(shared).toBeCloseTo(areaOf(loop), 8);
          }
        }
      }),
      { ...runs, numRuns: 25 }
    );
  });

  test('metres sawn are the round of a piece less what lies on the unit', () => {
    fc.assert(
      fc.property(anyCut, each => {
        const { corners } = unitOutline(SHAPES[each.unit]!);
        const [one] = each.pieces;
        const sides = [...one!.outline, ...one!.holes.flat()];
        const round = sides.reduce((sum, side) => sum + sideLength(side), 0);
        const onUnit = cornerLoop(corners).reduce((sum, edge) => sum + sharedWith(one!.outline, edge), 0);
        expect(listOf([each]).totals.sawLength).toBeCloseTo(round - onUnit, 8);
      }),
      { ...runs, numRuns: 400 }
    );
  });

  function leftPart(unit: string, near: number, far: number): Point[] {
    const { corners, length, width, shape } = unitOutline(SHAPES[unit]!);
    const isHex = shape === 'hexagon';
    const at = (share: number): number => length * (isHex ? 0.25 + share / 2 : share);
    const [x0, x1] = [at(near), at(far)];
    const kept = corners.filter(corner => corner.name.startsWith('left'));
    const [start, ...rest] = kept;
    return [start!, { x: x0, y: 0 }, { x: x1, y: width }, ...rest];
  }
});

function placed({ outline: rim, holes, area }: Piece, { x, y, direction }: Placement): Piece {
  const move = (loop: Loop): Loop => {
    const shift = (point: Point): Point => ({ x: point.x + x, y: point.y + y });
    return turned(loop, { x: 0, y: 0 }, direction).map(({ from, to, arc }) => ({
      from: shift(from),
      to: shift(to),
      ...(arc && { arc: { centre: shift(arc.centre), turn: arc.turn } })
    }));
  };
  return { outline: move(rim), holes: holes.map(move), area };
}

/** Metres of straight sides that lie on an edge. */
function sharedWith(loop: Loop, edge: { from: Point; to: Point }): number {
  const length = Math.hypot(edge.to.x - edge.from.x, edge.to.y - edge.from.y);
  const off = ({ x, y }: Point): number =>
    Math.abs((edge.to.x - edge.from.x) * (y - edge.from.y) - (edge.to.y - edge.from.y) * (x - edge.from.x)) / length;
  return loop
    .filter(side => !side.arc && off(side.from) < 3e-4 && off(side.to) < 3e-4)
    .reduce((sum, side) => sum + sideLength(side), 0);
}
