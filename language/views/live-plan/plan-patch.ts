import { sameContent } from '../../session/same-content.ts';
import type { ListPatch, LivePlan, PlanPatch } from './live-plan.ts';

/** What differs between two plans: `applyPatch(before, patchBetween(before, after))` is `after`. */
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

export function applyPatch(before: LivePlan, { shapes, things, legend, ...rest }: PlanPatch): LivePlan {
  return {
    ...before,
    ...rest,
    ...(shapes === undefined ? {} : { shapes: patched(before.shapes, shapes) }),
    ...(things === undefined ? {} : { things: patched(before.things, things) }),
    ...(legend === undefined ? {} : { legend: patched(before.legend, legend) })
  };
}

interface Keyed {
  readonly key: string;
}

/** Undefined where nothing differs. What has another place among the others goes and comes anew; as few of these as can be. */
function listPatch<T extends Keyed>(before: readonly T[], after: readonly T[]): ListPatch<T> | undefined {
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

/** A list whose items know their neighbours: putting one before another costs the same wherever it is. */
interface Link<T> {
  item?: T;
  previous: Link<T>;
  next: Link<T>;
}

function patched<T extends Keyed>(before: readonly T[], { gone, set = [], put }: ListPatch<T>): T[] {
  const end = {} as Link<T>;
  end.previous = end;
  end.next = end;
  const links = new Map<string, Link<T>>();
  const insert = (item: T, next: Link<T>): void => {
    const link = { item, previous: next.previous, next };
    next.previous.next = link;
    next.previous = link;
    links.set(item.key, link);
  };
  for (const item of before) insert(item, end);
  for (const key of gone) {
    const link = links.get(key);
    if (link === undefined) continue;
    link.previous.next = link.next;
    link.next.previous = link.previous;
    links.delete(key);
  }
  for (const { key, fields } of set) {
    const link = links.get(key);
    if (link?.item !== undefined) link.item = withFields(link.item, fields);
  }
  for (const { item, before: key } of put) {
    const own = links.get(item.key);
    if (own === undefined) insert(item, (key === undefined ? undefined : links.get(key)) ?? end);
    else own.item = item;
  }
  const items: T[] = [];
  for (let link = end.next; link !== end; link = link.next) items.push(link.item!);
  return items;
}

function withFields<T extends Keyed>(item: T, fields: Readonly<Record<string, unknown>>): T {
  const all: Record<string, unknown> = { ...item, ...fields };
  for (const [name, value] of Object.entries(fields)) if (value === null) delete all[name];
  return all as unknown as T;
}
