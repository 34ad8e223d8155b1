import { beforeAll, describe, expect, it } from 'vitest';
import type { AreaQuantities, CutQuantities, JobQuantities } from '../../language/quantities/contract.ts';
import { evaluated } from './samples.ts';

/*
 * The mill yard worked out by hand, all that a pencil reaches; millimetres.
 */

let job: JobQuantities;
beforeAll(async () => {
  job = (await evaluated('mill-yard.paving')).numbers!.quantities;
});

function area(name: string): AreaQuantities {
  return job.areas.find(one => one.name === name)!;
}

function laid(name: string, unit: string): readonly [whole: number, cut: number] {
  const { whole, cut } = area(name).laying!.find(one => one.unit === unit)!;
  return [whole, cut];
}

function cutsOf(name: string, unit: string): readonly CutQuantities[] {
  return area(name).cuts!.filter(cut => cut.unit === unit);
}

it('net areas: 4.8 x 4.2 m less the box of 0.3 x 0.3 m, 1.65 x 4.2 m and 1.8 x 2.2 m', () => {
  expect(job.areas.map(({ netArea }) => netArea.toFixed(4))).toEqual(['20.0700', '6.9300', '3.9600']);
  expect(job.totals.netArea).toBeCloseTo(30.96, 9);
});

describe('the forecourt', () => {
  it('soldiers along three sides: 41, 47 and 41 whole, two of each side cut where it is mitred', () => {
    // 41 x 100 in 4200 and 47 x 100 in 4800 leave joints of 2 to 5 mm; a mitre crosses 200 mm, two soldiers a side.
    const rows = area('forecourt').borderRows!.filter(({ border }) => border === 'border-1');
    expect(rows.map(({ units, wholeUnits }) => [units, wholeUnits])).toEqual([
      [41, true],
      [47, true],
      [41, true]
    ]);
    for (const { length, units, joint } of rows) expect(joint).toBeCloseTo((length! - units * 0.1) / units, 3);
    // Beside it 39 soldiers of the band in 4200 - 200 - 3.
    expect(laid('forecourt', 'block-charcoal')).toEqual([41 + 47 + 41 - 8 + 39, 8]);
  });

  it('dark setts round the compass: 72 whole', () => {
    // On a circle of 953 each takes 2 x atan(40 / 953) and a joint of 3: 72.2 of them, so the joint closes up a little.
    const each = 2 * Math.atan(40 / 953) + 3 / 953;
    expect(Math.floor((2 * Math.PI) / each)).toBe(72);
    const row = area('forecourt').borderRows!.find(({ border }) => border === 'border-2')!;
    expect([row.units, row.wholeUnits]).toEqual([72, true]);
    // 80 mm further out each has 2 pi x 1033 / 72 = 90.1 mm: 10 more than it is wide.
    expect(row.opening).toBeCloseTo(0.01, 3);
  });

  it('setts in rings: 34, 40, 46, 53 and 59 whole, 65 cut along the rim', () => {
    // Rings begin where a joint of 5 opens to 20 over 80 mm: 34 setts, 459 from the centre to their middles. Each next
    // one begins a joint beyond the corners of the last.
    const counts: number[] = [];
    let inner = (5 + 80 * Math.cos(Math.PI / 34)) / (2 * Math.sin(Math.PI / 34));
    while (inner < 950) {
      const half = Math.atan(40 / inner) + Math.asin(2.5 / Math.hypot(inner, 40));
      counts.push(Math.floor(Math.PI / half + 1e-9));
      inner = Math.hypot(inner + 80, 40) + 5;
    }
    expect(counts).toEqual([34, 40, 46, 53, 59, 65]);
    expect(laid('forecourt', 'sett')).toEqual([34 + 40 + 46 + 53 + 59, 65]);
    expect(cutsOf('forecourt', 'sett').map(({ count }) => count)).toEqual([65]);
  });
});

describe('the walk', () => {
  it('three rows of slabs that go on from the old ones: nothing is cut but their ends', () => {
    // The joint at J puts slabs at 2.5 to 447.5 from the forecourt and on by 450: the third ends where the coping begins.
    // The middle row: 9 x 450 = 4050, and 150 left, less than the 200 said: with the slab before it two of 297.5.
    // Beside it, half a slab on: 220, then 8 x 450, and 375 left.
    expect(laid('walk', 'slab-45')).toEqual([8 + 8 + 8, 6]);
    const cuts = cutsOf('walk', 'slab-45').map(({ count, area }): [number, number] => [count, area / 0.445]);
    expect(cuts.map(([count, length]) => `${count} of ${(length * 1000).toFixed(1)}`)).toEqual([
      '2 of 220.0',
      '2 of 375.0',
      '2 of 297.5'
    ]);
  });

  it('what to buy: 220 + 4 + 220 come out of one slab of 445, so five are cut up', () => {
    const slab = job.units.find(({ unit }) => unit === 'slab-45')!;
    // 2 % of 29 is one; two are put by.
    expect([slab.unitsUsed, slab.lowerBound, slab.breakage, slab.keep, slab.toBuy]).toEqual([29, 29, 1, 2, 32]);
  });

  it('the coping: 7 x 597 in 4200 with six joints of 3.5 mm', () => {
    expect(laid('walk', 'coping')).toEqual([7, 0]);
    expect(area('walk').borderRows![0]!.joint).toBeCloseTo((4.2 - 7 * 0.597) / 6, 9);
  });
});

it('the seat: twelve rows of 8 and 7 whole hexagons by turns, cut alike at both ends', () => {
  // Rows lie 204 x √3 / 2 = 176.7 apart, the first with its points on the near side: the middle of the twelfth lies
  // 2059 from there, of the thirteenth 2235. 8 x 200 + 7 x 4 = 1628 leave 82 at each end, 7 x 200 + 6 x 4 leave 184.
  expect(laid('seat', 'hexagon')[0]).toBe(6 * 8 + 6 * 7);
  const ends = cutsOf('seat', 'hexagon').filter(({ count }) => count === 12);
  expect(ends).toHaveLength(2);
  // Points are left at the near side, ten or nine units of a row wide, and at the far one.
  expect(laid('seat', 'hexagon')[1]).toBe(12 * 2 + 10 + 9);
});
