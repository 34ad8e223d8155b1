import type { AlikeCuts } from './cut-list-equal.ts';
import type { CutPlace } from './cut-list.ts';

/** Groups as they are numbered: unit by unit, and within a unit as their first cuts come; so do the cuts of each. */
export function inOrder(groups: readonly AlikeCuts[], units: readonly string[]): AlikeCuts[] {
  return groups
    .map(({ pattern, members }) => ({ pattern, members: [...members].sort((a, b) => a.cut.index - b.cut.index) }))
    .sort((a, b) => units.indexOf(a.pattern.unit) - units.indexOf(b.pattern.unit) || firstOf(a) - firstOf(b));
}

function firstOf({ members }: AlikeCuts): number {
  return members[0]?.cut.index ?? 0;
}

/** Where each cut stands in groups that are in order. */
export function placesOf(groups: readonly AlikeCuts[]): CutPlace[] {
  const places: CutPlace[] = [];
  for (const [index, { members }] of groups.entries()) {
    for (const [among, { cut, turn }] of members.entries()) {
      places[cut.index] = { group: index + 1, index: among + 1, turn };
    }
  }
  return places;
}
