import type { FreePoint, NamedPoint, PointsFromTapes, Tape } from '../../language/setting-out/tapes.ts';

export const free = (key: string): FreePoint => ({ key });
export const left = (key: string, from: string, to: string): FreePoint => ({ key, side: { from, to, left: true } });
export const right = (key: string, from: string, to: string): FreePoint => ({ key, side: { from, to, left: false } });

/** Tapes written `AC 13`: from A to C, reads 13 m. */
export function taped(...written: readonly string[]): Tape[] {
  return written.map(text => {
    const [key, read] = text.split(' ') as [string, string];
    return { key, from: key[0]!, to: key[1]!, read: Number(read) };
  });
}

export function found({ points }: PointsFromTapes): Partial<Record<string, NamedPoint>> {
  return Object.fromEntries(points.map(point => [point.key, point]));
}

/** `C side-not-said`. */
export function faultKinds({ faults }: PointsFromTapes): string[] {
  return faults.map(fault => `${'points' in fault ? fault.points.join('') : fault.point} ${fault.kind}`);
}
