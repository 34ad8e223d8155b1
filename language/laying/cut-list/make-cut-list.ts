import { equalCuts } from './cut-list-equal.ts';
import { groupOf } from './cut-list-group.ts';
import { inOrder, placesOf } from './cut-list-order.ts';
import { preparedCut, type PreparedCut } from './cut-list-prepared.ts';
import { totalsOf } from './cut-list-totals.ts';
import type { CutGroup, CutList } from './cut-list.ts';
import type { CutUnit } from '../laid.ts';
import { unitOutline, type UnitOutline, type UnitShape } from './unit-shape.ts';

/** Units looked at between two chances to abandon the work. */
const UNITS_PER_STEP = 100;

/** The cut list of units as they come along an area from its start. Yields now and then, so that a caller can abandon it. */
export function* makeCutList(cuts: readonly CutUnit[], shapeOf: (unit: string) => UnitShape): Generator<void, CutList> {
  const outlines = new Map<string, UnitOutline>();
  const prepared: PreparedCut[] = [];
  for (const [index, cut] of cuts.entries()) {
    const outline = outlines.get(cut.unit) ?? unitOutline(shapeOf(cut.unit));
    outlines.set(cut.unit, outline);
    prepared.push(preparedCut(cut, index, outline));
    if (index % UNITS_PER_STEP === UNITS_PER_STEP - 1) yield;
  }
  const alike = yield* equalCuts(prepared, UNITS_PER_STEP);
  const ordered = inOrder(alike, [...outlines.keys()]);
  const groups: CutGroup[] = [];
  for (const [index, some] of ordered.entries()) {
    groups.push(groupOf(some, index + 1));
    if (index % UNITS_PER_STEP === UNITS_PER_STEP - 1) yield;
  }
  return { groups, places: placesOf(ordered), totals: totalsOf(groups) };
}
