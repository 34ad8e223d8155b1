import type { OwnTask } from '../job/work.ts';
import type { Draft } from './draft.ts';
import { ownBefore, placedOwnTasks } from './own-tasks.ts';

/** A task in the order of the trade, with the ids of the tasks it comes after. */
export interface Ordered {
  readonly id: string;
  readonly after: readonly string[];
  readonly draft?: Draft;
  readonly own?: OwnTask;
}

/** Drafts and own tasks in one order: each comes only after others that stand before it, so that nothing goes in circles. */
export function inOrder(drafts: readonly Draft[], ownTasks: readonly OwnTask[]): Ordered[] {
  const sorted = drafts.toSorted((one, other) => one.rank - other.rank);
  const placed = placedOwnTasks(ownTasks, sorted);
  const all = [
    ...sorted.map(draft => ({ id: draft.id, rank: draft.rank, draft, own: undefined })),
    ...placed.map(({ task, rank }) => ({ id: task.key, rank, draft: undefined, own: task }))
  ].toSorted((one, other) => one.rank - other.rank);
  const placeOf = new Map(all.map(({ id }, index) => [id, index]));
  return all.map(({ id, rank, draft, own }, index) => {
    const wanted =
      draft === undefined
        ? beforeOwn(own!, ownTasks, sorted, rank)
        : [...afterDraft(draft, sorted), ...ownFirst(draft, ownTasks)];
    const after = [...new Set(wanted)].filter(other => (placeOf.get(other) ?? index) < index);
    return { id, after, ...(draft === undefined ? { own: own! } : { draft }) };
  });
}

/** All tasks of the rank before, and what it waits for. */
function afterDraft(draft: Draft, sorted: readonly Draft[]): string[] {
  const waits = draft.waits.map(({ on }) => on);
  return [...(draft.after ?? rankBefore(draft.rank, sorted)), ...waits];
}

function rankBefore(rank: number, sorted: readonly Draft[]): string[] {
  const before = sorted.filter(other => other.rank < rank && other.id !== 'second-sweeping').at(-1)?.rank;
  return sorted.filter(other => other.rank === before).map(({ id }) => id);
}

function ownFirst({ word }: Draft, ownTasks: readonly OwnTask[]): string[] {
  return word === undefined ? [] : ownTasks.filter(({ before }) => before.includes(word)).map(({ key }) => key);
}

function beforeOwn(own: OwnTask, ownTasks: readonly OwnTask[], sorted: readonly Draft[], rank: number): string[] {
  const named = sorted.filter(({ word }) => word !== undefined && own.after.includes(word)).map(({ id }) => id);
  const told = [...named, ...ownBefore(own, ownTasks)];
  return told.length > 0 ? told : rankBefore(rank, sorted);
}
