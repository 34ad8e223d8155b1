import { sameContent } from '../../session/same-content.ts';
import type { ListPatch, LivePlan, PlanPatch } from './live-plan.ts';

/** What differs between two plans: put into the one it gives the other. */
export function patchBetween(before: LivePlan, after: LivePlan): PlanPatch {
  const shapes = listPatch(before.shapes, after.shapes);
  const things = listPatch(before.things, after.things);
  const legend = listPatch(before.legend, after.legend);
  return {
    ...(before.title === after.title ? {} : { title: after.title }),
    ...(before.description === after.description ? {} : { description: after.description }),
    ...(before.system === after.system ? {} : { system: after.system }),
    ...(sameContent(before.notes, after.notes) ? {} : { notes: after.notes }),
    ...(shapes === undefined ? {} : { shapes }),
    ...(things === undefined ? {} : { things }),
    ...(legend === undefined ? {} : { legend }),
    ...(sameContent(before.sections, after.sections) ? {} : { sections: after.sections })
  };
}

interface Keyed {
  readonly key: string;
}

/** Undefined where nothing differs. What has another place among the others goes and comes anew; as few of these as can be. */
function listPatch<T extends Keyed>(before: readonly T[], after: readonly T[]): ListPatch<T> | undefined {
  if (before === after) return undefined;
  const old = new Map(before.map((item, index) => [item.key, index]));
  const staying = stayers(after.map(({ key }) => old.get(key)));
  const stays = new Set(after.filter((_, index) => staying.has(index)).map(({ key }) => key));
  const gone = before.filter(({ key }) => !stays.has(key)).map(({ key }) => key);
  const set: { key: string; fields: Readonly<Record<string, unknown>> }[] = [];
  const put: { item: T; before?: string }[] = [];
  // From the end: what an item comes before is then there already.
  for (let index = after.length - 1; index >= 0; index--) {
    const item = after[index]!;
    if (staying.has(index)) {
      const fields = fieldsBetween(before[old.get(item.key)!]!, item);
      if (fields !== undefined) set.push({ key: item.key, fields });
      continue;
    }
    const next = after[index + 1];
    put.push(next === undefined ? { item } : { item, before: next.key });
  }
  if (gone.length + set.length + put.length === 0) return undefined;
  return { gone, ...(set.length === 0 ? {} : { set }), put };
}

/** Fields that differ, `null` for one that is there no more; undefined where none does. */
function fieldsBetween(before: object, after: object): Readonly<Record<string, unknown>> | undefined {
  const [old, now] = [before as Readonly<Record<string, unknown>>, after as Readonly<Record<string, unknown>>];
  const fields: Record<string, unknown> = {};
  for (const name of new Set([...Object.keys(old), ...Object.keys(now)]))
    if (!sameContent(old[name], now[name])) fields[name] = now[name] ?? null;
  return Object.keys(fields).length === 0 ? undefined : fields;
}

/** Of places in an older list, in a newer order, the indices of the longest run that rises: these need not move. */
function stayers(places: readonly (number | undefined)[]): Set<number> {
  /** By length of a run, less one, the index at which the one with the lowest end ends. */
  const ends: number[] = [];
  const previous = new Map<number, number>();
  places.forEach((place, index) => {
    if (place === undefined) return;
    let [low, high] = [0, ends.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (places[ends[middle]!]! < place) low = middle + 1;
      else high = middle;
    }
    if (low > 0) previous.set(index, ends[low - 1]!);
    ends[low] = index;
  });
  const staying = new Set<number>();
  for (let at = ends.at(-1); at !== undefined; at = previous.get(at)) staying.add(at);
  return staying;
}
