import type { Edge, Key } from '../../job/job.ts';

/** A side as the newer text calls it: `T1 to T2`, by what it calls the corners. */
export function sideNow(side: string, keyNow: (key: Key) => Key): string {
  return keyNow(`area:/edges/${side}`).replace(/^.*\/edges\//, '');
}

export function edgeNow(edge: Edge, keyNow: (key: Key) => Key): Edge {
  return { ...edge, name: sideNow(edge.name, keyNow) };
}
