// Points from tapes. "derived": worked out by hand from the definition of least squares; "classical": in any textbook.
import { describe, expect, test } from 'vitest';
import { areaOf, cornerLoop, distance, type Point } from '../../language/geometry/index.ts';
import { MOST_POINTS_TOGETHER, MOST_TAPES_TOGETHER, pointsFromTapes } from '../../language/setting-out/tapes.ts';
import { settled } from '../../language/setting-out/settled-network.ts';
import { FOOT, INCH } from '../geometry/feet.ts';
import { faultKinds, found, free, left, right, taped } from './taped.ts';

const A = { key: 'A', x: 0, y: 0 };

const MM = 0.001;

describe('Two tapes', () => {
  const fixed = [A, { key: 'B', x: 14, y: 0 }];

  test('13 from A and 15 from B, 14 apart, left: (5, 12), area 84 (classical)', () => {
    const result = pointsFromTapes({ fixed, free: [left('C', 'A', 'B')], tapes: taped('AC 13', 'BC 15') });
    expect(result).toMatchObject({ faults: [], worst: [], weak: [] });
    const { C } = found(result);
    expect(C!.x).toBeCloseTo(5, 9);
    expect(C!.y).toBeCloseTo(12, 9);
    expect(areaOf(cornerLoop([...fixed, C!]))).toBeCloseTo(84, 9);
    expect(result.tapes.map(tape => Object.keys(tape))).toEqual(
      result.tapes.map(() => ['key', 'from', 'to', 'read', 'fitted', 'misfit'])
    );
  });

  test('sides 5, 8 and 12: area 14.5237 (land measurement notes, by Heron)', () => {
    const ends = [A, { key: 'B', x: 12, y: 0 }];
    const { C } = found(pointsFromTapes({ fixed: ends, free: [right('C', 'A', 'B')], tapes: taped('AC 5', 'BC 8') }));
    expect(C!.y).toBeLessThan(0);
    expect(Math.abs(areaOf(cornerLoop([...ends, C!])) - 14.5237)).toBeLessThan(1e-3);
  });

  test('the side may be said of the line the other way round, and of any other line', () => {
    const tapes = taped('AC 13', 'BC 15');
    const far = [...fixed, { key: 'K', x: -50, y: 1 }, { key: 'L', x: 50, y: 1 }];
    for (const point of [right('C', 'B', 'A'), left('C', 'K', 'L')]) {
      expect(found(pointsFromTapes({ fixed: far, free: [point], tapes })).C!.y).toBeCloseTo(12, 9);
    }
    const upright = [...fixed, { key: 'K', x: 50, y: 0 }, { key: 'L', x: 50, y: 9 }];
    expect(faultKinds(pointsFromTapes({ fixed: upright, free: [left('C', 'K', 'L')], tapes }))).toEqual([
      'C side-does-not-tell'
    ]);
  });

  test('a point on the very line of its side is on it', () => {
    const P = { x: 2, y: 0 };
    const K = { key: 'K', x: 3, y: -4 };
    const tapes = taped('AP 2', `KP ${distance(P, K)}`);
    for (const point of [left('P', 'A', 'B'), left('P', 'B', 'A')]) {
      const result = pointsFromTapes({ fixed: [...fixed, K], free: [point], tapes });
      if (point.side!.from === 'A') expect(distance(found(result).P!, P)).toBeLessThan(1e-9);
      else expect(faultKinds(result)).toEqual(['P side-does-not-tell']);
    }
  });

  test.each([
    ['together too short', 'AC 6', 'BC 7.5', { because: 'together-too-short', missesBy: 0.5 }],
    ['one too long for the other', 'AC 30', 'BC 15', { because: 'difference-too-long', missesBy: 1 }]
  ])('that do not meet, %s: told by how much', (_, one, other, expected) => {
    const result = pointsFromTapes({ fixed, free: [left('C', 'A', 'B')], tapes: taped(one, other) });
    expect(result.points).toEqual([]);
    expect(result.faults).toEqual([
      { kind: 'triangle-does-not-close', point: 'C', tapes: ['AC', 'BC'], apart: 14, ...expected }
    ]);
  });

  test.each([
    ['exactly', 'AC 6', 'BC 8', 6],
    ['1 mm too short', 'AC 5.9995', 'BC 7.9995', 6],
    ['1 mm over', 'AC 6.0005', 'BC 8.0005', 6],
    ['beyond B', 'AC 20', 'BC 6', 20],
    ['beyond A', 'AC 6', 'BC 20', -6],
    ['beyond A, 1 mm too long', 'AC 6', 'BC 20.001', -6.0005]
  ])('flat on the line (%s) need no side', (_, one, other, x) => {
    const result = pointsFromTapes({ fixed, free: [free('C')], tapes: taped(one, other) });
    expect(result.faults).toEqual([]);
    expect(found(result).C!.x).toBeCloseTo(x, 9);
    expect(found(result).C!.y).toBeCloseTo(0, 9);
    for (const { misfit } of result.tapes) expect(Math.abs(misfit)).toBeLessThan(0.51 * MM);
    expect(result.weak).toEqual([{ point: 'C', angle: expect.closeTo(0, 6) as number }]);
  });

  test('one thousandth of a millimetre more than flat does not close', () => {
    const result = pointsFromTapes({ fixed, free: [free('C')], tapes: taped('AC 6', 'BC 7.99899') });
    expect(faultKinds(result)).toEqual(['C triangle-does-not-close']);
  });

  test('that cross under 15° hold loosely, over 15° they do not', () => {
    const at = (degrees: number) => {
      const half = (degrees / 2) * (Math.PI / 180);
      const read = 7 / Math.sin(half);
      return pointsFromTapes({ fixed, free: [left('C', 'A', 'B')], tapes: taped(`AC ${read}`, `BC ${read}`) });
    };
    expect(at(14.9).weak).toEqual([{ point: 'C', angle: expect.closeTo((14.9 * Math.PI) / 180, 9) as number }]);
    expect(at(15.1).weak).toEqual([]);
    // As wide of a straight line.
    expect(at(165.1).weak).toHaveLength(1);
  });
});

describe('A spare tape', () => {
  test('one metre square, BD 10 mm long: misfits 20/7 and 10√2/7 mm, both diagonals worst (derived)', () => {
    const result = pointsFromTapes({
      fixed: [A, { key: 'B', x: 1, y: 0 }],
      free: [left('C', 'A', 'B'), left('D', 'A', 'B')],
      tapes: taped('BC 1', 'AD 1', 'CD 1', `AC ${Math.SQRT2}`, `BD ${Math.SQRT2 + 10 * MM}`)
    });
    expect(result.faults).toEqual([]);
    const [BC, AD, CD, AC, BD] = result.tapes.map(({ misfit }) => misfit / MM);
    const within = 0.03;
    for (const side of [BC!, AD!, CD!]) expect(Math.abs(side - (10 * Math.SQRT2) / 7)).toBeLessThan(within);
    for (const diagonal of [AC!, BD!]) expect(Math.abs(diagonal + 20 / 7)).toBeLessThan(within);
    expect(result.worst).toEqual(['AC', 'BD']);
    const [, , , ac, bd] = result.tapes.map(({ byTheOthers }) => byTheOthers!);
    expect(bd).toBeCloseTo(Math.SQRT2, 9);
    // A rhombus of sides 1 with one diagonal √2 + 10 mm.
    expect(ac).toBeCloseTo(Math.sqrt(4 - (Math.SQRT2 + 10 * MM) ** 2), 9);
  });

  test('a terrace against a house: the tape across by the others 18-7 13/16, fitted 18-7 3/4', () => {
    const ft = (feet: number, inches: number) => feet * FOOT + inches * INCH;
    const result = pointsFromTapes({
      fixed: [A, { key: 'B', x: ft(18, 6), y: 0 }],
      free: [left('C', 'A', 'B'), left('D', 'A', 'B')],
      tapes: taped(
        `BC ${ft(12, 7 + 7 / 8)}`,
        `AC ${ft(22, 4.5)}`,
        `AD ${ft(12, 8 + 5 / 8)}`,
        `BD ${ft(22, 7 + 3 / 8)}`,
        `CD ${ft(18, 7.75)}`
      )
    });
    expect(result.faults).toEqual([]);
    const sixteenths = (length: number) => Math.round((length - ft(18, 7)) / (INCH / 16));
    const across = result.tapes.find(({ key }) => key === 'CD')!;
    expect(sixteenths(across.byTheOthers!)).toBe(13);
    expect(sixteenths(across.fitted)).toBe(12);
    const largest = Math.max(...result.tapes.map(({ misfit }) => Math.abs(misfit)));
    expect(largest / INCH).toBeCloseTo(0.02, 2);
    expect(result.worst).toEqual(['AC', 'BD']);
  });

  test('from a third known point settles the side, unless all three lie in a line', () => {
    const fixed = [A, { key: 'B', x: 6, y: 0 }, { key: 'K', x: 3, y: -4 }, { key: 'L', x: 9, y: 0 }];
    const read = (from: string, to: Point) => {
      const { x, y } = fixed.find(({ key }) => key === from)!;
      return `${from}P ${Math.hypot(to.x - x, to.y - y)}`;
    };
    const P = { x: 1, y: 3 };
    const told = pointsFromTapes({ fixed, free: [free('P')], tapes: taped(...['A', 'B', 'K'].map(at => read(at, P))) });
    expect(told.faults).toEqual([]);
    expect(found(told).P!.x).toBeCloseTo(1, 9);
    expect(found(told).P!.y).toBeCloseTo(3, 9);
    const untold = pointsFromTapes({
      fixed,
      free: [free('P')],
      tapes: taped(...['A', 'B', 'L'].map(at => read(at, P)))
    });
    expect(faultKinds(untold)).toEqual(['P side-not-said']);
  });

  test('against the side said: told, where it fits far better on the other', () => {
    const fixed = [A, { key: 'B', x: 6, y: 0 }, { key: 'K', x: 3, y: -4 }];
    const tapes = taped(`AP ${Math.hypot(3, 3)}`, `BP ${Math.hypot(3, 3)}`, 'KP 7');
    expect(found(pointsFromTapes({ fixed, free: [left('P', 'A', 'B')], tapes })).P).toBeDefined();
    const wrong = pointsFromTapes({ fixed, free: [right('P', 'A', 'B')], tapes });
    expect(faultKinds(wrong)).toEqual(['P wrong-side']);
    expect(wrong.points).toEqual([]);
  });

  test('among many convicts the one misread', () => {
    const places = { A: [0, 0], B: [9, 0], C: [9, 5], D: [0, 5], E: [4, 8] } as Record<string, [number, number]>;
    const pairs = ['AC', 'AD', 'AE', 'BC', 'BD', 'BE', 'CD', 'CE', 'DE'];
    for (const misread of pairs) {
      const result = pointsFromTapes({
        fixed: [A, { key: 'B', x: 9, y: 0 }],
        free: ['C', 'D', 'E'].map(key => left(key, 'A', 'B')),
        tapes: taped(
          ...pairs.map(pair => {
            const [[x, y], [toX, toY]] = [places[pair[0]!]!, places[pair[1]!]!];
            return `${pair} ${Math.hypot(toX - x, toY - y) + (pair === misread ? 0.1 : 0)}`;
          })
        )
      });
      expect(result.faults).toEqual([]);
      expect(result.worst).toEqual([misread]);
      const worst = result.tapes.find(({ key }) => key === misread)!;
      expect(worst.byTheOthers).toBeCloseTo(worst.read - 0.1, 9);
    }
  });

  test('between two fixed points is read against their distance', () => {
    const result = pointsFromTapes({ fixed: [A, { key: 'B', x: 3, y: 4 }], free: [], tapes: taped('AB 5.02') });
    expect(result.tapes[0]).toMatchObject({ fitted: 5, byTheOthers: 5 });
    expect(result.tapes[0]!.misfit).toBeCloseTo(-0.02, 12);
    expect(result.worst).toEqual(['AB']);
  });
});

describe('Points that hold each other', () => {
  const B = { key: 'B', x: 10, y: 0 };
  const K = { key: 'K', x: 4, y: 9 };
  const fixed = [A, B, K];
  const C = { x: 2, y: 2 };
  const D = { x: 9, y: 2 };
  const E = { x: 5, y: 7 };
  const ties = taped(
    `AC ${distance(A, C)}`,
    `BD ${distance(B, D)}`,
    `KE ${distance(K, E)}`,
    `CD ${distance(C, D)}`,
    `DE ${distance(D, E)}`,
    `CE ${distance(C, E)}`
  );

  test('none with two tapes from fixed points: found together where the sides tell', () => {
    const sides = [right('C', 'A', 'K'), right('D', 'B', 'K'), left('E', 'C', 'D')];
    const result = pointsFromTapes({ fixed, free: sides, tapes: ties });
    expect(result.faults).toEqual([]);
    for (const [key, place] of Object.entries({ C, D, E })) {
      expect(distance(found(result)[key]!, place)).toBeLessThan(1e-7);
    }
  });

  test('and are told where several arrangements fit', () => {
    const result = pointsFromTapes({ fixed, free: [free('C'), free('D'), free('E')], tapes: ties });
    expect(faultKinds(result)).toEqual(['C side-not-said', 'D side-not-said', 'E side-not-said']);
  });

  test('but may move together: told', () => {
    const tapes = taped('AC 3', 'BD 3', 'CD 5');
    const result = pointsFromTapes({ fixed, free: [free('C'), free('D')], tapes });
    expect(result.faults).toEqual([{ kind: 'not-fixed-in-place', points: ['C', 'D'] }]);
  });
});

describe('Points without a place', () => {
  const fixed = [A, { key: 'B', x: 6, y: 0 }];

  test('too few tapes; taped twice from one point counts once', () => {
    const result = pointsFromTapes({
      fixed,
      free: [free('C'), free('D')],
      tapes: [...taped('AC 3', 'DD 2'), { key: 'again', from: 'C', to: 'A', read: 3.01 }]
    });
    expect(result.faults).toEqual([
      { kind: 'too-few-tapes', point: 'C', has: 1 },
      { kind: 'tape-from-itself', tape: 'DD', point: 'D' },
      { kind: 'too-few-tapes', point: 'D', has: 0 }
    ]);
  });

  test('what hangs on one with a fault is told apart, what does not is placed', () => {
    const result = pointsFromTapes({
      fixed,
      free: [left('C', 'A', 'B'), left('D', 'A', 'B'), left('E', 'C', 'D'), left('P', 'A', 'C')],
      tapes: taped('AC 5', 'BC 5', 'AD 1', 'BD 2', 'DE 3', 'CE 3', 'AP 4', 'CP 3')
    });
    expect(result.faults).toMatchObject([
      { kind: 'triangle-does-not-close', point: 'D', missesBy: 3 },
      { kind: 'others-not-found', point: 'E', others: ['D'] }
    ]);
    expect(result.points.map(({ key }) => key)).toEqual(['C', 'P']);
    expect(result.tapes.map(({ key }) => key)).toEqual(['AC', 'BC', 'AP', 'CP']);
  });

  test('two tapes without a side', () => {
    expect(faultKinds(pointsFromTapes({ fixed, free: [free('C')], tapes: taped('AC 5', 'BC 5') }))).toEqual([
      'C side-not-said'
    ]);
  });
});

describe('Limits', () => {
  /** A strip of points, each taped from the two before it. */
  function strip(count: number) {
    const name = (index: number) => (index < 2 ? 'AB'[index]! : `P${index}`);
    const indices = Array.from({ length: count }, (_, index) => index + 2);
    return {
      fixed: [A, { key: 'B', x: 0, y: 1 }],
      free: indices.map(index => ({
        key: name(index),
        side: { from: name(index - 2), to: name(index - 1), left: index % 2 === 1 }
      })),
      tapes: indices.flatMap(index =>
        [1, 2].map(back => ({
          key: `${index} ${back}`,
          from: name(index - back),
          to: name(index),
          read: back === 1 ? Math.SQRT2 : 1
        }))
      )
    };
  }

  test('so many points are fitted together, one more is told', () => {
    const most = pointsFromTapes(strip(MOST_POINTS_TOGETHER));
    expect(most.points).toHaveLength(MOST_POINTS_TOGETHER);
    const over = pointsFromTapes(strip(MOST_POINTS_TOGETHER + 1));
    expect(over.points).toEqual([]);
    expect(over.faults).toMatchObject([{ kind: 'too-many-together', tapes: 2 * MOST_POINTS_TOGETHER + 2 }]);
  });

  test('so many tapes are fitted together, one more is told', () => {
    const tapes = Array.from({ length: MOST_TAPES_TOGETHER + 1 }, (_, index) => ({
      key: `${index}`,
      from: index % 2 ? 'A' : 'B',
      to: 'C',
      read: 5 + index / 1e5
    }));
    const given = { fixed: [A, { key: 'B', x: 6, y: 0 }], free: [left('C', 'A', 'B')] };
    expect(pointsFromTapes({ ...given, tapes: tapes.slice(1) }).faults).toEqual([]);
    expect(faultKinds(pointsFromTapes({ ...given, tapes }))).toEqual(['C too-many-together']);
  });

  test('points taped from fixed ones alone do not count together', () => {
    const keys = Array.from({ length: 3 * MOST_POINTS_TOGETHER }, (_, index) => `P${index}`);
    const tapes = keys.flatMap(key => ['A', 'B'].map(from => ({ key: `${from}${key}`, from, to: key, read: 5 })));
    const fixed = [A, { key: 'B', x: 6, y: 0 }];
    const result = pointsFromTapes({ fixed, free: keys.map(key => left(key, 'A', 'B')), tapes });
    expect(result.points).toHaveLength(keys.length);
  });

  test('steps are counted: with none left the fit is given up', () => {
    const network = {
      free: [left('C', 'A', 'B')],
      tapes: taped('AC 5', 'BC 5', 'KC 9'),
      fixed: new Map(Object.entries({ A, B: { x: 6, y: 0 }, K: { x: 3, y: -4 } }))
    };
    const allowance = { left: 2 };
    expect(settled(network, allowance)).toEqual({ faults: [{ kind: 'no-fit', points: ['C'] }] });
    expect(allowance.left).toBe(0);
  });
});
