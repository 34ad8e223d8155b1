import type { Area, Edge } from '../job/job.ts';

/** Sides of one area that share a finding, in their order. */
export function alike(edges: readonly Edge[], likeness: (edge: Edge) => string): Edge[][] {
  const groups = new Map<string, Edge[]>();
  for (const edge of edges) {
    const name = likeness(edge);
    groups.set(name, [...(groups.get(name) ?? []), edge]);
  }
  return [...groups.values()];
}

/** `side left`, `sides right, far and left`; a name that several parts of a side share is told once. */
export function sidesInWords(edges: readonly { readonly name: string }[]): string {
  const names = [...new Set(edges.map(edge => edge.name))];
  const most = names.slice(0, MOST_NAMED);
  const more = names.length - most.length;
  if (more > 0) return `sides ${most.join(', ')} and ${more} more`;
  return names.length === 1 ? `side ${names[0]!}` : `sides ${names.slice(0, -1).join(', ')} and ${names.at(-1)!}`;
}

/** The same at the beginning of a sentence, and whether it speaks of several. */
export function sidesFirst(edges: readonly { readonly name: string }[]): { sides: string; several: boolean } {
  const sides = sidesInWords(edges);
  return {
    sides: sides.charAt(0).toUpperCase() + sides.slice(1),
    several: new Set(edges.map(edge => edge.name)).size > 1
  };
}

/** The edgings that an area has at other sides; else what ships. */
export function usualEdgings(edges: Area['edges']): string[] {
  const used = new Set(edges.flatMap(({ edging }) => edging?.name ?? []));
  return used.size === 0 ? ['spiked-strip'] : [...used];
}

/** What most sides meet: open ground, with edging to hold the units, or a wall. */
export function usualNeighbours(edges: Area['edges']): string[] {
  return [`lawn, edging ${usualEdgings(edges)[0]!}`, 'house-wall'];
}

/** A longer list of sides is read by nobody. */
const MOST_NAMED = 6;

/** The shipped kind of side that a drain along a side is one of. */
export const CHANNEL = 'drain-channel';

/** By what names rules know what a side meets: its own, and for a drain of the job that of its kind. */
export function namesMet({ meets }: Edge): readonly string[] {
  if (meets === undefined) return [];
  return meets.drain === undefined ? [meets.name] : [meets.name, CHANNEL];
}
