import { type Side, sideLength } from '../../../geometry/index.ts';
import { leftOver } from '../../../geometry/left-over.ts';
import type { PlanArea } from '../plan-input.ts';
import type { AreaChange } from './area-changes.ts';

/** Stretches along the sides of an area at which one edging stands. */
export interface EdgingChange {
  readonly key: string;
  readonly areaKey: string;
  /** Its name. */
  readonly area: string;
  readonly edging: string;
  readonly gone: readonly Side[];
  readonly come: readonly Side[];
  readonly stays: readonly Side[];
}

/** Edging by edging of each area; a stretch along which another one comes is gone and come. */
export function edgingChanges(areas: readonly AreaChange[]): EdgingChange[] {
  return areas.flatMap(({ key, name, fate, before, after }) => {
    const [old, now] = [edgingsOf(before), edgingsOf(after)];
    return [...new Set([...now.keys(), ...old.keys()])].map((edging): EdgingChange => {
      const [was, is] = [old.get(edging) ?? [], now.get(edging) ?? []];
      const change = { key: `${key}/edging/${edging}`, areaKey: key, area: name, edging };
      if (fate === 'unknown') return { ...change, gone: [], come: [], stays: [...was, ...is] };
      const come = is.flatMap(side => leftOver(side, was));
      const gone = was.flatMap(side => leftOver(side, is));
      return { ...change, gone, come, stays: is.flatMap(side => leftOver(side, come)) };
    });
  });
}

function edgingsOf(area: PlanArea | undefined): Map<string, Side[]> {
  const found = new Map<string, Side[]>();
  area?.sides.forEach(({ edging }, index) => {
    const side = area.outline[index];
    if (edging !== undefined && side !== undefined) found.set(edging, [...(found.get(edging) ?? []), side]);
  });
  return found;
}

export function lengthOf(sides: readonly Side[]): number {
  return sides.reduce((sum, side) => sum + sideLength(side), 0);
}
