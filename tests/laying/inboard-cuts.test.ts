import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { boundsOf, cornerLoop, regionArea } from '../../language/geometry/index.ts';
import { cuttingOf } from '../../language/laying/starts/cutting.ts';
import type { LaidArea } from '../../language/laying/lay-area.ts';
import { courses, covered, laid, mm, piecesOnPlan, rectangle, wholeUnits } from './fields.ts';

/** Two courses of 200 x 100 mm with 5 mm joints, 1045 mm long: five units and their joints leave 20 mm. */
const strip = (offset: number, inboardCuts?: number, start = {}): LaidArea =>
  laid(
    courses(rectangle(1045, 205), [200, 100], 5, {
      offset,
      ...(inboardCuts === undefined ? {} : { inboardCuts: mm(inboardCuts) }),
      start: { whole: [], equalCuts: false, ...start }
    })
  );

describe('worked by hand', () => {
  test('stack bond: 20 mm and the unit before it become two of 110 mm', () => {
    const before = strip(0);
    expect(piecesOnPlan(before)).toEqual(['1025..1045 x 0..100', '1025..1045 x 105..205']);
    expect(wholeUnits(before)).toBe(10);
    const after = strip(0, 50);
    expect(piecesOnPlan(after)).toEqual([
      '820..930 x 0..100',
      '935..1045 x 0..100',
      '820..930 x 105..205',
      '935..1045 x 105..205'
    ]);
    expect(wholeUnits(after)).toBe(8);
    expect(covered(after)).toBeCloseTo(1.045 * 0.205, 12);
    expect(after.parts[0]!.laid.jointArea).toBeCloseTo(before.parts[0]!.laid.jointArea, 12);
  });

  test('the pieces are cut from units of full size: each keeps one end as it came', () => {
    const [area] = strip(0, 50).parts;
    const boxes = area!.laid.cuts.map(({ pieces }) => boundsOf(pieces[0]!.outline));
    for (const { left, right, bottom, top } of boxes) {
      expect(Math.min(left, mm(200) - right)).toBeCloseTo(0, 12);
      expect([right - left, bottom, top].map(each => Math.round(each * 1e6))).toEqual([110_000, 0, 100_000]);
    }
  });

  test('half bond: the joint keeps 50 mm off that of the course beside, which lies at 920', () => {
    expect(piecesOnPlan(strip(0.5, 50))).toEqual([
      '820..967.5 x 0..100',
      '972.5..1045 x 0..100',
      '0..97.5 x 105..205',
      '922.5..1045 x 105..205'
    ]);
  });

  test('at the beginning of a course as well', () => {
    // The first unit moved on by 25 mm: 20 mm and a joint before it.
    const after = strip(0, 50, { shifted: { x: mm(25), y: 0 } });
    expect(piecesOnPlan(after).slice(0, 2)).toEqual(['0..110 x 0..100', '115..225 x 0..100']);
    expect(wholeUnits(after)).toBe(8);
  });

  test('a piece of just the limit stays', () => {
    expect(piecesOnPlan(strip(0, 20))).toEqual(piecesOnPlan(strip(0)));
    expect(piecesOnPlan(strip(0, 20.1))).not.toEqual(piecesOnPlan(strip(0)));
  });

  test('where both would be too short it stays as it is', () => {
    expect(piecesOnPlan(strip(0, 111))).toEqual(piecesOnPlan(strip(0)));
  });

  test('a course that is cut lengthwise keeps its width', () => {
    const after = laid(courses(rectangle(1045, 145), [200, 100], 5, { inboardCuts: mm(50) }));
    expect(piecesOnPlan(after).slice(-2)).toEqual(['820..930 x 105..145', '935..1045 x 105..145']);
  });

  test('the slanted end of a course: cut in two with its slant', () => {
    const slanted = cornerLoop([
      { x: 0, y: 0 },
      { x: mm(1045), y: 0 },
      { x: mm(1035), y: mm(100) },
      { x: 0, y: mm(100) }
    ]);
    const after = laid(courses(slanted, [200, 100], 5, { inboardCuts: mm(50) }));
    expect(piecesOnPlan(after)).toEqual(['820..930 x 0..100', '935..1045 x 0..100']);
    // 110 mm at the foot and 100 at the top.
    expect(after.parts[0]!.laid.cuts[1]!.pieces[0]!.area).toBeCloseTo(0.105 * 0.1, 12);
  });
});

describe('over random shapes', () => {
  const corner = fc.record({ x: fc.integer({ min: -150, max: 150 }), y: fc.integer({ min: -150, max: 150 }) });
  const shape = fc
    .tuple(
      fc.array(corner, { minLength: 4, maxLength: 4 }),
      fc.integer({ min: 900, max: 2600 }),
      fc.integer({ min: 500, max: 1800 })
    )
    .map(([moved, length, width]) =>
      cornerLoop(
        [
          { x: 0, y: 0 },
          { x: length, y: 0 },
          { x: length, y: width },
          { x: 0, y: width }
        ].map(({ x, y }, index) => ({ x: mm(x + moved[index]!.x), y: mm(y + moved[index]!.y) }))
      )
    );

  test('units and joints still come to the area, and nothing is cut that was well', () => {
    fc.assert(
      fc.property(
        shape,
        fc.constantFrom(0, 1 / 3, 0.5),
        fc.integer({ min: 10, max: 90 }),
        fc.integer({ min: 0, max: 200 }),
        (outline, offset, least, shift) => {
          const start = { whole: [], equalCuts: false, shifted: { x: mm(shift), y: 0 } };
          const hole = rectangle(300, 160).map(({ from, to }) => {
            const moved = (at: typeof from) => ({ x: at.x + mm(330), y: at.y + mm(170) });
            return { from: moved(from), to: moved(to) };
          });
          const plain = {
            ...courses(outline, [200, 100], 5, { offset, start }),
            keptOut: [{ key: 'box:a', outline: hole }]
          };
          const before = laid(plain);
          const area = { ...plain, field: { ...plain.field, inboardCuts: mm(least) } };
          const after = laid(area);
          const net = regionArea({ outer: outline, holes: [hole] });
          expect(Math.abs(covered(after) - net)).toBeLessThan(1e-9 * net);
          const cut = area.field.units[0]!;
          const ends = (laidArea: LaidArea): number =>
            laidArea.parts[0]!.laid.cuts.filter(({ pieces }) => {
              const { left, right } = boundsOf(pieces[0]!.outline);
              return (
                pieces.length === 1 && right - left < mm(least) - 1e-6 && (left < 0.0005 || right > cut.length - 0.0005)
              );
            }).length;
          expect(ends(after)).toBeLessThanOrEqual(ends(before));
          const pieceAreas = ({ parts: [part] }: LaidArea): number =>
            part!.laid.cuts.flatMap(({ pieces }) => pieces).reduce((sum, { area: one }) => sum + one, 0);
          const size = cut.length * cut.width;
          // Whole units, pieces and joints: the same ground is covered but for what was too narrow to be laid.
          const sum = (laidArea: LaidArea) =>
            wholeUnits(laidArea) * size + pieceAreas(laidArea) + laidArea.parts[0]!.laid.jointArea;
          expect(sum(after)).toBeGreaterThan(sum(before) - 1e-4);
          expect(cuttingOf(after, area).cutUnits).toBeGreaterThanOrEqual(before.parts[0]!.laid.cuts.length);
        }
      ),
      { seed: 7, numRuns: 150 }
    );
  });
});
