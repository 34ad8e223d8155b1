import { describe, expect, it } from 'vitest';
import { measureNamed } from '../../language/measures/measures.ts';
import {
  area,
  corners,
  CUBIC_FOOT,
  CUBIC_YARD,
  FOOT,
  given,
  INCH,
  job,
  LAWN,
  layer,
  material,
  NEIGHBOUR,
  HEIGHTS,
  HOUSE_WALL,
  numbersOf,
  only,
  paving,
  POUND_PER_CUBIC_FOOT,
  rectangle,
  SHORT_TON,
  SQUARE_FOOT,
  STONE,
  unit
} from './jobs.ts';

/** Cubic yards of a layer 6 in thick on so many square yards; no edge is open, so the base ends with the units. */
function baseYards(squareFeet: number, inches: number): number {
  const closed = Array.from({ length: 4 }, () => ({ meets: HOUSE_WALL }));
  const { layers } = only(
    area(rectangle((squareFeet / 10) * FOOT, 10 * FOOT), { layers: [layer('base', inches * INCH)] }, closed)
  );
  return layers[0]!.compactedVolume / CUBIC_YARD;
}

describe('volumes', () => {
  it('O-49, O-50: 900 and 240 square yards 6 in thick are 150 and 40 cubic yards (Concrete Construction: Methods and Costs, 1908, ch. XIV)', () => {
    expect(baseYards(900 * 9, 6)).toBeCloseTo(150, 9);
    expect(baseYards(240 * 9, 6)).toBeCloseTo(40, 9);
  });

  it('O-51: 100 square feet 1 in thick are about 0.3 cubic yards (the same book, ch. XV)', () => {
    expect(Math.abs(baseYards(100, 1) - 0.3)).toBeLessThan(0.01);
    expect(baseYards(100, 1)).toBeCloseTo(0.308642, 6);
  });

  it('P-05: a bed of 1 in on 100 square feet is 8.333 cubic feet (exact arithmetic)', () => {
    const { layers } = only(area(rectangle(10 * FOOT, 10 * FOOT), { layers: [layer('bed', INCH)] }));
    expect(layers[0]!.compactedVolume / CUBIC_FOOT).toBeCloseTo(25 / 3, 9);
  });

  it('P-15: 4 in of stone on 100 square feet is 2.333 short tons, 1.543 cubic yards loose (exact arithmetic)', () => {
    const closed = Array.from({ length: 4 }, () => ({ meets: HOUSE_WALL }));
    const { layers } = only(area(rectangle(10 * FOOT, 10 * FOOT), { layers: [layer('base', 4 * INCH)] }, closed));
    expect(layers[0]!.mass! / SHORT_TON).toBeCloseTo(7 / 3, 9);
    expect(layers[0]!.looseVolume! / CUBIC_YARD).toBeCloseTo(1.543, 3);
  });

  it('a loose density and a ratio tell the same as a compacted and a loose density (exact arithmetic)', () => {
    const byRatio = material('gravel', 'base', {
      loose: given(112 * POUND_PER_CUBIC_FOOT),
      compactionFactor: given(1.25)
    });
    const of = (stone: typeof STONE) =>
      only(area(rectangle(3, 3), { layers: [layer('base', 0.1, { material: stone })] })).layers[0]!;
    expect(of(byRatio).mass).toBeCloseTo(of(STONE).mass!, 9);
    expect(of(byRatio).looseVolume).toBeCloseTo(of(STONE).looseVolume!, 12);
    expect(of(material('unknown', 'base')).mass).toBeUndefined();
  });
});

describe('areas', () => {
  it('O-60: a five-cornered field of 140,494 square feet (open surveying courseware, Coordinate Geometry, ch. H)', () => {
    const field = corners([406.31, 1259.97], [235.12, 1489.47], [65.81, 1126.4], [317.89, 942.04], [675.32, 1282.54]);
    const inFeet = field.map(side => ({
      from: { x: side.from.x * FOOT, y: side.from.y * FOOT },
      to: { x: side.to.x * FOOT, y: side.to.y * FOOT }
    }));
    expect(Math.abs(only(area(inFeet)).grossArea / SQUARE_FOOT - 140_494)).toBeLessThan(2);
  });

  it('O-65: a segment a quarter of the diameter high is 0.153546 of its square (mensuration tables, from memory)', () => {
    const half = Math.sqrt(3) / 4;
    const [left, right] = [
      { x: -half, y: 0.25 },
      { x: half, y: 0.25 }
    ];
    const segment = [
      { from: left, to: right },
      { from: right, to: left, arc: { centre: { x: 0, y: 0 }, turn: (2 * Math.PI) / 3 } }
    ];
    expect(only(area(segment)).grossArea).toBeCloseTo(0.153546, 6);
  });

  it('P-16: base 0.15 m past an edging of no width on three sides of 10 x 4 m is 42.745 m2 (exact arithmetic)', () => {
    const strip = material('strip', 'edging', { width: given(0), basePast: given(0.15) });
    const open = { edging: strip };
    const { dig, layers } = only(
      area(rectangle(10, 4), { layers: [layer('base', 0.1)] }, [open, open, { meets: HOUSE_WALL }, open])
    );
    expect(dig.area).toBeCloseTo(42.745, 9);
    expect(layers[0]!.area).toBeCloseTo(42.745, 9);
  });

  it('P-17: 10 x 4 m beside 10 x 3 m, 0.15 m past the open sides, digs 75.19 m2 (exact arithmetic)', () => {
    const layers = [layer('base', 0.15)];
    const large = area(rectangle(10, 4), { name: 'large', layers }, [{}, {}, { meets: NEIGHBOUR }, {}]);
    const small = area(rectangle(10, 3, 0, 4), { name: 'small', layers }, [{ meets: NEIGHBOUR }, {}, {}, {}]);
    expect(numbersOf(job([large, small])).quantities.dig.area).toBeCloseTo(75.19, 9);
  });

  it('ground that two digs share is counted once, to the depth of the shallower (exact arithmetic)', () => {
    // The low half of the long side is open, so its base reaches 0.15 m into the neighbour's dig, 3 m long.
    const deep = area(rectangle(10, 4), { ...HEIGHTS, name: 'deep', layers: [layer('base', 0.15)] }, [
      { meets: HOUSE_WALL },
      {},
      {},
      {}
    ]);
    const beside = area(rectangle(2, 3, 10, 0), { ...HEIGHTS, name: 'beside', layers: [layer('base', 0.1)] }, [
      { meets: HOUSE_WALL },
      { meets: HOUSE_WALL },
      { meets: HOUSE_WALL },
      { meets: NEIGHBOUR }
    ]);
    const { quantities, findings } = numbersOf(job([deep, beside]));
    const [first, second] = quantities.areas;
    expect(first!.dig.area + second!.dig.area - quantities.dig.area).toBeCloseTo(0.15 * 3, 9);
    expect(first!.dig.bankVolume + second!.dig.bankVolume - quantities.dig.bankVolume).toBeCloseTo(0.15 * 3 * 0.1, 9);
    // What the open half meets is not said: that takes a point of its own.
    expect(findings.map(({ id, target }) => [id, target])).toEqual([['neighbour-not-said', 'area:deep']]);
  });
});

describe('units, joints, edging', () => {
  it('P-04: 16 x 16 in slabs on 100 square feet cover as much as 56.25 slabs (exact arithmetic)', () => {
    const slab = unit(16 * INCH, 16 * INCH, 2 * INCH);
    const { laying } = only(area(rectangle(10 * FOOT, 10 * FOOT), { paving: paving(slab, 0, 0) }));
    expect(laying![0]!.unitArea / (16 * INCH) ** 2).toBeCloseTo(56.25, 9);
  });

  it.each([0, 0.5])(
    'P-13: joints of 3 mm between 200 x 100 x 60 mm blocks on 10 m2 hold 0.02608 m3, shift %d (exact arithmetic, 2 %)',
    offset => {
      const block = unit(0.2, 0.1, 0.06);
      const { joints } = only(area(rectangle(4, 2.5), { paving: paving(block, 0.003, offset) }));
      const unbounded = 10 * 0.06 * (1 - (0.2 * 0.1) / (0.203 * 0.103));
      expect(Math.abs(joints!.volume / unbounded - 1)).toBeLessThan(0.02);
    }
  );

  it('P-18: concrete 300 x 100 mm below and 100 x 75 mm behind, 12 m long, is 0.45 m3 (exact arithmetic)', () => {
    const kerb = material('kerb', 'edging', {
      width: given(0.1),
      concrete: { width: given(0.3), depth: given(0.1), under: given(0.05) },
      haunch: { width: given(0.1), height: given(0.075) }
    });
    const { edging, edges } = only(area(rectangle(12, 4), { layers: [layer('base', 0.2)] }, [{ edging: kerb }]));
    expect(edging).toHaveLength(1);
    expect(edging[0]!.concreteVolume).toBeCloseTo(0.45, 9);
    expect(edges[0]!.overhang).toBeCloseTo(0.25, 12);
  });

  it('a run of edging has a spike at both ends, a ring of it none twice (exact arithmetic)', () => {
    const strip = material('strip', 'edging', { spikesEvery: given(0.3) });
    const spikes = (sides: number) =>
      only(
        area(
          rectangle(3, 3),
          {},
          Array.from({ length: sides }, () => ({ edging: strip }))
        )
      ).edging[0]!.spikes;
    expect([spikes(1), spikes(2), spikes(4)]).toEqual([11, 21, 40]);
  });

  it('geotextile in strips 4 m wide with laps of 0.5 m is 8/7 of its ground (exact arithmetic)', () => {
    const cloth = material('cloth', 'geotextile', { roll: { width: given(4), length: given(50) }, lap: given(0.5) });
    const { geotextile, dig } = only(area(rectangle(5, 4), { geotextile: cloth, layers: [layer('base', 0.1)] }));
    expect(geotextile!.area).toBeCloseTo((dig.area * 8) / 7, 12);
  });
});

describe('base past the units', () => {
  const overhang = (edging: Parameters<typeof material>[2] | undefined, past?: number): number => {
    const edge = edging === undefined ? { meets: LAWN } : { edging: material('e', 'edging', edging) };
    const base = layer('base', 0.2, past === undefined ? {} : { past: given(past) });
    return only(area(rectangle(3, 3), { layers: [layer('bed', 0.03), base] }, [edge])).edges[0]!.overhang;
  };

  it('is what the base says past the edging, else what the edging says, else its own thickness', () => {
    expect(overhang({ width: given(0.1), basePast: given(0.3) }, 0.15)).toBeCloseTo(0.25, 12);
    expect(overhang({ width: given(0.1), basePast: given(0.3) })).toBeCloseTo(0.4, 12);
    expect(overhang({ width: given(0.1) })).toBeCloseTo(0.3, 12);
    expect(overhang(undefined)).toBeCloseTo(0.2, 12);
  });
});

describe('official conversions (NAVFAC design document 1004.6, appendix B)', () => {
  it.each([
    ['O-75', 'cu yd', 0.764555, 6],
    ['O-76', 'lb/cu ft', 16.0185, 4],
    ['O-77', 'short ton/cu yd', 1186.55, 2]
  ])('%s: 1 %s is %d in SI', (_, spelling, value, digits) => {
    expect(measureNamed(spelling)!.factor.valueOf()).toBeCloseTo(value, digits);
  });
});
