// Surfaces that several tests of levels and setting out stand on; all of it invented.
import fc from 'fast-check';
import { type Point, type Side, turnedAbout } from '../../language/geometry/index.ts';
import type { Plane, Surface } from '../../language/levels/surface.ts';
import { stationedLine, type StationedLine } from '../../language/setting-out/stationed-line.ts';

export const FOOT = 0.3048;
export const INCH = 0.0254;

/** What was made; a fault fails the test. */
export function sound<T extends object>(made: T): Exclude<T, { readonly fault: string }> {
  if ('fault' in made) throw new Error(String(made.fault));
  return made as Exclude<T, { readonly fault: string }>;
}

export const drive: Surface & { kind: 'twisted' } = {
  kind: 'twisted',
  corners: [
    { x: 0, y: 0 },
    { x: 5.2, y: 0 },
    { x: 5.2, y: 11.4 },
    { x: 0, y: 11.4 }
  ],
  heights: [9.985, 9.985, 10.298, 10.312]
};

export const anyPoint: fc.Arbitrary<Point> = fc.record({
  x: fc.double({ min: -30, max: 30, noNaN: true }),
  y: fc.double({ min: -30, max: 30, noNaN: true })
});
const slope = fc.double({ min: -0.2, max: 0.2, noNaN: true });
const height = fc.double({ min: -3, max: 3, noNaN: true });

export const anyPlane: fc.Arbitrary<Plane> = fc.record({ at: height, alongX: slope, alongY: slope });

export const anyTwisted: fc.Arbitrary<Surface & { kind: 'twisted' }> = fc.record({
  kind: fc.constant('twisted' as const),
  corners: fc.tuple(anyPoint, anyPoint, anyPoint, anyPoint),
  heights: fc.tuple(height, height, height, height)
});

/** A rectangle at least a metre wide whose corners are moved by up to a quarter of it, turned anyhow. */
export const anyWideTwist: fc.Arbitrary<Surface & { kind: 'twisted' }> = fc
  .record({
    width: fc.double({ min: 1, max: 20, noNaN: true }),
    depth: fc.double({ min: 1, max: 20, noNaN: true }),
    turn: fc.double({ min: 0, max: 6, noNaN: true }),
    moves: fc.array(fc.double({ min: -0.24, max: 0.24, noNaN: true }), { minLength: 8, maxLength: 8 }),
    heights: fc.tuple(height, height, height, height)
  })
  .map(({ width, depth, turn, moves, heights }) => {
    const corner = (index: number, right: number, up: number): Point =>
      turnedAbout({ x: width * (right + moves[index]!), y: depth * (up + moves[index + 4]!) }, { x: 0, y: 0 }, turn);
    return {
      kind: 'twisted',
      corners: [corner(0, 0, 0), corner(1, 1, 0), corner(2, 1, 1), corner(3, 0, 1)],
      heights
    };
  });

/** A straight, a quarter round to the left, a straight, a bend to the right, a straight. */
export function bentLine(radius = 4): StationedLine {
  const path: Side[] = [
    { from: { x: 0, y: 0 }, to: { x: 6, y: 0 } },
    {
      from: { x: 6, y: 0 },
      to: { x: 6 + radius, y: radius },
      arc: { centre: { x: 6, y: radius }, turn: Math.PI / 2 }
    },
    { from: { x: 6 + radius, y: radius }, to: { x: 6 + radius, y: radius + 5 } },
    { from: { x: 6 + radius, y: radius + 5 }, to: { x: 12 + radius, y: radius + 8 } }
  ];
  return sound(stationedLine(path));
}

export const anyAlong: fc.Arbitrary<Surface & { kind: 'along' }> = fc.record({
  kind: fc.constant('along' as const),
  line: fc.constant(bentLine()),
  stations: fc
    .array(fc.record({ at: fc.double({ min: 0, max: 20, noNaN: true }), height }), { maxLength: 4 })
    .map(list => list.sort((a, b) => a.at - b.at)),
  across: fc.oneof(
    fc.record({ kind: fc.constant('fall' as const), toLeft: slope }),
    fc.record({ kind: fc.constant('camber' as const), fall: slope })
  )
});

export const anyFolded: fc.Arbitrary<Surface & { kind: 'folded' }> = fc
  .tuple(anyPoint, anyPoint, anyPlane, slope)
  .map(([from, to, left, bend]) => {
    // Along the fold both planes agree.
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    const normal = length > 0 ? { x: -(to.y - from.y) / length, y: (to.x - from.x) / length } : { x: 0, y: 0 };
    const right = {
      at: left.at - bend * (normal.x * from.x + normal.y * from.y),
      alongX: left.alongX + bend * normal.x,
      alongY: left.alongY + bend * normal.y
    };
    return { kind: 'folded', from, to, left, right };
  });

export const anySurface: fc.Arbitrary<Surface> = fc.oneof(
  anyPlane.map((plane): Surface => ({ kind: 'plane', plane })),
  anyFolded,
  anyTwisted,
  anyAlong
);
