import { expect, test } from 'vitest';
import { evaluated } from './in-memory.ts';

/** Areas with open ground on every side, so that their digs reach 150 mm past them. */
function job(
  areas: readonly (readonly [name: string, width: number, depth: number, x: number, y: number, base: number])[]
): string {
  const area = ([name, width, depth, x, y, base]: (typeof areas)[number]): string => `area ${name} {
  outline rectangle ${width} x ${depth} m, corner (${x}, ${y}) m
  traffic foot
  finish level with step
  base type-1 ${base} mm, 150 mm past the edging
  edges { all round meets lawn }
}`;
  return [
    'job "Digs" { rules britain }',
    'site { soil sand, benchmark step, ground level with step }',
    ...areas.map(area)
  ].join('\n');
}

async function wholeDig(areas: Parameters<typeof job>[0]): Promise<{ area: number; bankVolume: number }> {
  const { numbers } = await evaluated(job(areas));
  expect(numbers!.quantities.areas).toHaveLength(areas.length);
  return numbers!.quantities.dig;
}

// Exact arithmetic: the union of rectangles worked out by hand.
test('ground that three dig is counted once', async () => {
  const dig = await wholeDig([
    ['a', 4, 4, 0, 0, 150],
    ['b', 4, 4, 4.1, 0, 150],
    ['c', 4, 4, 2, 4.1, 150]
  ]);
  const union = 3 * 4.3 ** 2 - 0.2 * 4.3 - 0.2 * 2.3 - 0.2 * 2.2 + 0.2 * 0.2;
  expect(dig.area).toBeCloseTo(union, 7);
  expect(dig.bankVolume).toBeCloseTo(union * 0.15, 7);
});

test('ten narrow strips side by side dig one pit, and never less than nothing', async () => {
  const strips = Array.from({ length: 10 }, (_, index) => [`s${index}`, 0.1, 4, index / 10, 0, 150] as const);
  const dig = await wholeDig(strips);
  expect(dig.area).toBeCloseTo(1.3 * 4.3, 7);
  expect(dig.bankVolume).toBeCloseTo(1.3 * 4.3 * 0.15, 7);
});

test('shared ground goes down to the bottom of the deepest dig', async () => {
  const dig = await wholeDig([
    ['a', 4, 4, 0, 0, 150],
    ['b', 4, 4, 4.1, 0, 300],
    ['c', 4, 4, 2, 4.1, 200]
  ]);
  const [onlyB, cBesideB, aBesideBoth] = [4.3 ** 2, 4.3 ** 2 - 2.2 * 0.2, 4.3 ** 2 - 0.2 * 4.3 - 0.2 * 2.3 + 0.2 * 0.2];
  expect(dig.bankVolume).toBeCloseTo(onlyB * 0.3 + cBesideB * 0.2 + aBesideBoth * 0.15, 7);
});
