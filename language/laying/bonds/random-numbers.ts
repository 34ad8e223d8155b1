/**
 * The number in a place, counted from nought, of the generator mulberry32 (Tommy Ettinger, 2017, in the public domain):
 * a whole number below 2 to the 32nd. Any number in its row can be had at once, and seeds are whole numbers.
 */
export function randomWhole(seed: number, place: number): number {
  const state = (seed + Math.imul(place + 1, 0x6d2b79f5)) | 0;
  let mixed = Math.imul(state ^ (state >>> 15), state | 1);
  mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
  return (mixed ^ (mixed >>> 14)) >>> 0;
}

/** The same number as a share, from 0 up to 1. */
export function randomShare(seed: number, place: number): number {
  return randomWhole(seed, place) / 2 ** 32;
}
