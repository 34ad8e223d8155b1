// Dig volumes under surfaces that are sampled.
import { describe, expect, it } from 'vitest';
import { pathOf, rectangleLoop, type Side } from '../../language/geometry/index.ts';
import { Extremes } from '../../language/levels/dig-tally.ts';
import { numericSums } from '../../language/levels/numeric-dig.ts';
import type { Surface } from '../../language/levels/surface.ts';
import { type StationedLine, stationedLine } from '../../language/setting-out/stationed-line.ts';
import { digTo, expectClose, groundOf, spotsAt } from './spots.ts';

const drive = [rectangleLoop(10, 4, { x: 0, y: 0 }, 0)];
const level = groundOf(spotsAt([0, 0, 0]));

function lineAlong(sides: readonly Side[]): StationedLine {
  const line = stationedLine(sides);
  if ('fault' in line) throw new Error(line.fault);
  return line;
}

describe('a dig under a surface along a line', () => {
  it('cambered 1:40 about its middle line, crown 0.30 below the ground: 13 m³ (arithmetic)', () => {
    // Across 4 m the camber takes off 0.025 on average.
    const line = lineAlong([{ from: { x: 0, y: 2 }, to: { x: 10, y: 2 } }]);
    const surface: Surface = {
      kind: 'along',
      line,
      stations: [
        { at: 0, height: -0.3 },
        { at: 10, height: -0.3 }
      ],
      across: { kind: 'camber', fall: 1 / 40 }
    };
    const dig = digTo(drive, level, surface);
    expectClose(dig.cut, 40 * (0.3 + 0.025));
    expect(dig.deepest?.depth).toBeCloseTo(0.35, 9);
    expect(dig.shallowest?.depth).toBeCloseTo(0.3, 9);
    expect(dig.triangles).toBeLessThan(20);
  });

  it('a line with a corner of slope at a station, falling to the left, short of the topsoil in part (arithmetic)', () => {
    const line = lineAlong([{ from: { x: 0, y: 0 }, to: { x: 10, y: 0 } }]);
    const surface: Surface = {
      kind: 'along',
      line,
      stations: [
        { at: 0, height: -0.2 },
        { at: 4, height: 0 },
        { at: 10, height: -0.3 }
      ],
      across: { kind: 'fall', toLeft: 0.05 }
    };
    // Depth 0.05 · (|x − 4| + y): over the 40 m², |x − 4| is 2.6 and y is 2 on average.
    const dig = digTo(drive, level, surface);
    expectClose(dig.cut, 40 * 0.05 * 4.6);
    expect(dig.deepest?.depth).toBeCloseTo(0.5, 9);
    expect([dig.shallowest?.depth, dig.shallowest?.at.x]).toEqual([0, 4]);
    // Short of 0.1 where |x − 4| + y < 2: 4 m², by a third of 0.1 on average.
    const stripped = digTo(drive, level, surface, { strip: 0.1 });
    expectClose(stripped.notThrough.area, 4, 1e-6);
    expectClose(stripped.fill, 4 * (0.1 / 3), 1e-6);
  });

  it('round a bend: a ring about its centre, cambered (closed formula)', () => {
    // A quarter of a ring from 3 to 7 m about the origin, the line at 5 m, falling 0.02 per metre to both sides.
    const arc: Side = { from: { x: 5, y: 0 }, to: { x: 0, y: 5 }, arc: { centre: { x: 0, y: 0 }, turn: Math.PI / 2 } };
    const quarter = Math.PI / 2;
    const ring: Side[] = [
      { from: { x: 3, y: 0 }, to: { x: 7, y: 0 } },
      { from: { x: 7, y: 0 }, to: { x: 0, y: 7 }, arc: { centre: { x: 0, y: 0 }, turn: quarter } },
      { from: { x: 0, y: 7 }, to: { x: 0, y: 3 } },
      { from: { x: 0, y: 3 }, to: { x: 3, y: 0 }, arc: { centre: { x: 0, y: 0 }, turn: -quarter } }
    ];
    const surface: Surface = {
      kind: 'along',
      line: lineAlong([arc]),
      stations: [
        { at: 0, height: -0.2 },
        { at: 5 * quarter, height: -0.4 }
      ],
      across: { kind: 'camber', fall: 0.02 }
    };
    const dig = digTo([ring], level, surface);
    // On average 0.3 along; |r − 5| over the ring: ∫ |r − 5| r dr from 3 to 7 = 5 · 4 = 20.
    expectClose(dig.cut, quarter * (0.3 * 20 + 0.02 * 20), 1e-7);
    expectClose(dig.deepest!.depth, 0.44, 1e-6);
    expectClose(dig.shallowest!.depth, 0.2, 1e-6);
    expect(dig.error).toBeLessThan(2e-6 * dig.area);
  });
});

describe('sampled sums', () => {
  const sumsOf = (depthOf: (at: { x: number; y: number }) => number) => {
    const extremes = new Extremes(drive);
    return { extremes, ...numericSums([{ paths: drive.map(pathOf), depthOf }], extremes) };
  };

  it('a sharp bend that nothing told of, through the middle: within the error told (arithmetic)', () => {
    // |y − 2 − s| with s = 0.1 (x − 5): over 0 to 4 its integral is 4 + s², over 10 m 40 + 1/120 · 100.
    const { sums, error, extremes } = sumsOf(({ x, y }) => 0.3 - 0.025 * Math.abs(y - 2 - 0.1 * (x - 5)));
    const expected = 40 * 0.3 - 0.025 * (40 + 100 / 120);
    expect(Math.abs(sums.net - expected)).toBeLessThanOrEqual(error + 1e-12);
    expect(error).toBeLessThan(1e-6 * 40);
    expectClose(extremes.deepest!.depth, 0.3, 1e-6);
  });

  it('a step is worked on up to a bound, and the error left is told (arithmetic)', () => {
    const { sums, error, triangles } = sumsOf(({ x }) => (x < 3.1 ? 0.1 : 0.2));
    expect(Math.abs(sums.net - (12.4 * 0.1 + 27.6 * 0.2))).toBeLessThanOrEqual(error);
    expect(error).toBeLessThan(1e-3);
    expect(triangles).toBeLessThanOrEqual(20_000);
  });
});
