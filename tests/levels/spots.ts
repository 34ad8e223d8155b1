import { expect } from 'vitest';
import type { Loop, Point } from '../../language/geometry/index.ts';
import { cutAndFill, type Earthwork } from '../../language/levels/earthwork.ts';
import type { BreakLine } from '../../language/levels/break-lines.ts';
import { type GroundSurface, groundThrough } from '../../language/levels/ground.ts';
import type { Spot } from '../../language/levels/spots.ts';
import type { Plane, Surface } from '../../language/levels/surface.ts';

/** Spots given as x, y, z. */
export function spotsAt(...spots: readonly (readonly [number, number, number])[]): Spot[] {
  return spots.map(([x, y, z]) => ({ x, y, z }));
}

export function groundOf(spots: readonly Spot[], breakLines: readonly BreakLine[] = []): GroundSurface {
  const ground = groundThrough(spots, breakLines);
  if (ground.kind !== 'ground') throw new Error(ground.kind);
  return ground;
}

export function planeOf(at: number, alongX = 0, alongY = 0): Surface & { plane: Plane } {
  return { kind: 'plane', plane: { at, alongX, alongY } };
}

export function digTo(
  region: readonly Loop[],
  ground: GroundSurface,
  surface: Surface,
  { depth = 0, strip = 0 }: { depth?: number; strip?: number } = {}
): Earthwork {
  return cutAndFill({ region, ground, surface, depth, strip });
}

export function expectClose(value: number, expected: number, share = 1e-9, atLeast = 1): void {
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(share * Math.max(atLeast, Math.abs(expected)));
}

/** Height on the plane through three spots. */
export function onPlaneThrough([a, b, c]: readonly [Spot, Spot, Spot], { x, y }: Point): number {
  const size = (b.x - a.x) * (c.y - a.y) - (c.x - a.x) * (b.y - a.y);
  const ofB = ((x - a.x) * (c.y - a.y) - (c.x - a.x) * (y - a.y)) / size;
  const ofC = ((b.x - a.x) * (y - a.y) - (x - a.x) * (b.y - a.y)) / size;
  return a.z + ofB * (b.z - a.z) + ofC * (c.z - a.z);
}
