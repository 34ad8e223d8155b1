import type { ListPatch, LivePlan, PlanPatch } from '../../../server/plan-protocol.ts';

/** What stays is the very same: whoever remembers something of a shape finds it again. */
export function applyPatch(plan: LivePlan, patch: PlanPatch): LivePlan {
  return {
    title: patch.title ?? plan.title,
    description: patch.description ?? plan.description,
    system: patch.system ?? plan.system,
    notes: patch.notes ?? plan.notes,
    shapes: patched(plan.shapes, patch.shapes),
    things: patched(plan.things, patch.things),
    legend: patched(plan.legend, patch.legend),
    sections: patch.sections ?? plan.sections
  };
}

interface Slot<T> {
  item: T | undefined;
  before: Slot<T> | undefined;
  after: Slot<T> | undefined;
}

/** In time that grows with the list and the patch: a list of slots in which each knows its neighbours. */
function patched<T extends { readonly key: string }>(
  items: readonly T[],
  patch: ListPatch<T> | undefined
): readonly T[] {
  if (patch === undefined) return items;
  const end: Slot<T> = { item: undefined, before: undefined, after: undefined };
  end.before = end;
  end.after = end;
  const slots = new Map<string, Slot<T>>();
  const insert = (item: T, after: Slot<T>): void => {
    const slot: Slot<T> = { item, before: after.before, after };
    after.before!.after = slot;
    after.before = slot;
    slots.set(item.key, slot);
  };
  const remove = (key: string): void => {
    const slot = slots.get(key);
    if (slot === undefined) return;
    slot.before!.after = slot.after;
    slot.after!.before = slot.before;
    slots.delete(key);
  };
  for (const item of items) insert(item, end);
  for (const key of patch.gone) remove(key);
  for (const { key, fields } of patch.set ?? []) {
    const slot = slots.get(key);
    if (slot?.item !== undefined) slot.item = withFields(slot.item, fields);
  }
  for (const { item, before } of patch.put) {
    const known = slots.get(item.key);
    if (known !== undefined) known.item = item;
    else insert(item, (before === undefined ? undefined : slots.get(before)) ?? end);
  }
  const result: T[] = [];
  for (let slot = end.after!; slot !== end; slot = slot.after!) result.push(slot.item!);
  return result;
}

/** `null` stands for a field that is there no more. */
function withFields<T extends object>(item: T, fields: Readonly<Record<string, unknown>>): T {
  const all = Object.entries({ ...item, ...fields }).filter(([, value]) => value !== null);
  return Object.fromEntries(all) as T;
}
