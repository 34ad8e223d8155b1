import type { System } from '../../job/job.ts';

/** Round scales, finest first: those of common rules. */
const METRIC = [5, 10, 20, 25, 30, 40, 50, 75, 100, 125, 200, 250, 500, 1000];

/** The same for feet and inches, and what stands for a foot, or for how many an inch stands. */
const IMPERIAL: readonly (readonly [scale: number, words: string])[] = [
  [4, '3 in to 1 ft'],
  [8, '1 1/2 in to 1 ft'],
  [12, '1 in to 1 ft'],
  [16, '3/4 in to 1 ft'],
  [24, '1/2 in to 1 ft'],
  [32, '3/8 in to 1 ft'],
  [48, '1/4 in to 1 ft'],
  [64, '3/16 in to 1 ft'],
  [96, '1/8 in to 1 ft'],
  [128, '3/32 in to 1 ft'],
  [192, '1/16 in to 1 ft'],
  [240, '1 in to 20 ft'],
  [360, '1 in to 30 ft'],
  [480, '1 in to 40 ft'],
  [600, '1 in to 50 ft'],
  [1200, '1 in to 100 ft']
];

/** The finest round scale that is no finer than the one asked for; beyond the last, the last doubled. */
export function roundScale(atLeast: number, system: System): number {
  const scales = system === 'metric' ? METRIC : IMPERIAL.map(([scale]) => scale);
  const found = scales.find(scale => scale >= atLeast - HAIR);
  if (found !== undefined) return found;
  let scale = scales.at(-1)!;
  while (scale < atLeast) scale *= 2;
  return scale;
}

/** What just fits still fits after rounding. */
const HAIR = 1e-9;

/** `1:50`, `1/4 in to 1 ft`. */
export function scaleText(scale: number, system: System): string {
  if (system === 'metric') return `1:${scale}`;
  return IMPERIAL.find(([known]) => known === scale)?.[1] ?? `1 in to ${scale / 12} ft`;
}
