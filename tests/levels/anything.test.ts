// Whatever is written, levels and setting out give finite answers or faults, and end.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { arcByBow, cornerLoop, type Loop, type Point, type Side } from '../../language/geometry/index.ts';
import { stepsAlong } from '../../language/levels/step-along-edge.ts';
import { bestPlane } from '../../language/levels/best-plane.ts';
import { drainageOf } from '../../language/levels/drainage.ts';
import { fallFromSide } from '../../language/levels/fall-from-side.ts';
import { foldAlong } from '../../language/levels/fold.ts';
import { combinedFalls, planeAlong, planeThrough, twistOf } from '../../language/levels/planes.ts';
import { steepestFrom } from '../../language/levels/steepest.ts';
import { heightAt, type Surface } from '../../language/levels/surface.ts';
import { clearanceAt, swingOf } from '../../language/levels/swing.ts';
import { twistedSurface } from '../../language/levels/twisted.ts';
import { stationedLine, stationOf } from '../../language/setting-out/stationed-line.ts';
import { stripOutline } from '../../language/setting-out/strip-outline.ts';
import { anySurface } from './surfaces.ts';

const number = fc.oneof(
  fc.constantFrom(0, 1, -1, 1 + 1e-9, 1e-7, 1e5, -1e5),
  fc.double({ min: -5, max: 5, noNaN: true }),
  fc.double({ min: -1e5, max: 1e5, noNaN: true })
);
const point: fc.Arbitrary<Point> = fc.record({ x: number, y: number });
const levelled = fc.record({ point, height: number });

const path: fc.Arbitrary<Side[]> = fc
  .tuple(
    fc.array(point, { maxLength: 6 }),
    fc.array(fc.double({ min: 0, max: 2, noNaN: true }), { minLength: 6, maxLength: 6 })
  )
  .map(([corners, bows]) =>
    corners.slice(1).map((to, index) => {
      const from = corners[index]!;
      return (
        (bows[index]! > 1 ? arcByBow(from, to, bows[index]! - 1, index % 2 ? 'left' : 'right') : undefined) ?? {
          from,
          to
        }
      );
    })
  );

const surface: fc.Arbitrary<Surface> = fc.oneof(
  anySurface,
  fc
    .tuple(path, fc.array(fc.record({ at: number, height: number }), { maxLength: 3 }), number)
    .map(([sides, stations, fall]): Surface => {
      const line = stationedLine(sides);
      return {
        kind: 'along',
        line: 'fault' in line ? { parts: [], length: 0 } : line,
        stations: stations.sort((a, b) => a.at - b.at),
        across: { kind: 'camber', fall }
      };
    }),
  fc.record({
    kind: fc.constant('folded' as const),
    from: point,
    to: point,
    left: fc.record({ at: number, alongX: number, alongY: number }),
    right: fc.record({ at: number, alongX: number, alongY: number })
  })
);
const region: fc.Arbitrary<Loop[]> = fc.oneof(
  fc.array(
    fc.array(point, { maxLength: 5 }).map(corners => cornerLoop(corners)),
    { maxLength: 2 }
  ),
  path.map(sides => [sides])
);

function expectFinite(answer: unknown): void {
  if (typeof answer === 'number') expect(Number.isFinite(answer)).toBe(true);
  else if (typeof answer === 'object' && answer !== null) Object.values(answer).forEach(expectFinite);
}

const runs = { seed: 1414, numRuns: 300 };

test('planes, falls, folds and twists', () => {
  fc.assert(
    fc.property(
      fc.array(levelled, { minLength: 4, maxLength: 7 }),
      number,
      fc.nat(8),
      fc.nat(8),
      (list, fall, from, to) => {
        const [a, b, c, d] = list;
        const points = list.map(one => one.point);
        const heights = list.map(one => one.height);
        expectFinite(planeThrough(a!, b!, c!));
        expectFinite(planeAlong(a!, b!, fall, 'right'));
        expectFinite(twistOf([a!, b!, c!, d!]));
        expectFinite(bestPlane(points, heights));
        expectFinite(combinedFalls(list.map(one => ({ direction: one.point, fall: one.height }))));
        expectFinite(foldAlong(list, from, to));
        expectFinite(
          twistedSurface([a!.point, b!.point, c!.point, d!.point], [a!.height, b!.height, c!.height, d!.height])
        );
      }
    ),
    { ...runs, numRuns: 2000 }
  );
});

test('lines and strips', () => {
  const widths = fc.array(fc.record({ at: number, width: number }), { maxLength: 4 });
  fc.assert(
    fc.property(path, widths, point, (sides, list, at) => {
      const line = stationedLine(sides);
      expectFinite(line);
      if ('fault' in line) return;
      expectFinite(stationOf(line, at));
      expectFinite(
        stripOutline(
          line,
          list.sort((one, two) => one.at - two.at)
        )
      );
    }),
    { ...runs, numRuns: 1000 }
  );
});

test('steps along an edge and falls from a side', () => {
  fc.assert(
    fc.property(path, surface, surface, fc.array(number, { maxLength: 3 }), (sides, one, two, breaks) => {
      expectFinite(
        stepsAlong(
          sides,
          at => heightAt(one, at),
          at => heightAt(two, at),
          breaks
        )
      );
      for (const side of sides) expectFinite(fallFromSide(one, side, 'left'));
    }),
    runs
  );
});

test('gates', () => {
  const leaf = fc.record({ hinge: point, shut: point, length: number, opens: number, underside: number });
  fc.assert(
    fc.property(leaf, surface, region, (gate, finish, loops) => {
      expectFinite(swingOf(gate, finish, loops));
      expectFinite(clearanceAt(gate, finish, loops, 1));
    }),
    runs
  );
});

test('water', () => {
  fc.assert(
    fc.property(surface, region, point, (finish, loops, at) => {
      expectFinite(steepestFrom(finish, loops, at));
      const corner = loops[0]?.[0]?.from;
      if (corner) expectFinite(steepestFrom(finish, loops, corner));
      expectFinite(drainageOf(finish, loops));
    }),
    { ...runs, numRuns: 60 }
  );
});
