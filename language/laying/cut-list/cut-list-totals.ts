import type { CutGroup, CutTotals, Extreme } from './cut-list.ts';

/** What groups come to, all their units counted. */
export function totalsOf(groups: readonly CutGroup[]): CutTotals {
  const sum = (of: (group: CutGroup) => number): number =>
    groups.reduce((total, group) => total + group.count * of(group), 0);
  const smallest = least(groups, group => Math.min(...group.pieces.map(piece => piece.area)));
  const narrowest = least(groups, group => group.narrowest);
  return {
    units: sum(() => 1),
    pieces: sum(group => group.pieces.length),
    area: sum(group => group.area),
    sawLength: sum(group => group.sawLength),
    straightCuts: sum(group => group.straightCuts),
    straightLength: sum(group => (group.straightCuts > 0 ? group.sawLength : 0)),
    ...(smallest && { smallest }),
    ...(narrowest && { narrowest })
  };
}

/** The least value, and the first group that has it. */
function least(groups: readonly CutGroup[], of: (group: CutGroup) => number): Extreme | undefined {
  return groups
    .map(group => ({ value: of(group), group: group.number }))
    .reduce<Extreme | undefined>((best, each) => (best && best.value <= each.value ? best : each), undefined);
}
