import type { Key } from '../job/job.ts';
import type { OwnTask, TaskWord } from '../job/work.ts';
import { type Draft, rankOf } from './draft.ts';

/** A task of one's own in the order of the others. */
export interface PlacedOwn {
  readonly task: OwnTask;
  readonly rank: number;
}

/**
 * Finds the places of one's own tasks: behind all that they come after; else before what they come before; else before the
 * clean-up. Where words lead in circles, behind counts and nothing is followed twice.
 */
export function placedOwnTasks(tasks: readonly OwnTask[], drafts: readonly Draft[]): PlacedOwn[] {
  const places = new OwnPlaces(tasks, drafts);
  return tasks.map(task => ({ task, rank: places.rankOf(task) }));
}

/** Keys of one's own tasks that a task comes after. */
export function ownBefore({ key, afterOwn }: OwnTask, tasks: readonly OwnTask[]): string[] {
  const told = tasks.filter(({ beforeOwn }) => beforeOwn?.includes(key) === true).map(other => other.key);
  return [...new Set([...(afterOwn ?? []), ...told])].filter(other => other !== key);
}

class OwnPlaces {
  private readonly drafts: readonly Draft[];
  /** Own tasks that come after each other lie so far apart: all of them together fit between two places of the trade. */
  private readonly step: number;
  private readonly latest = new Map<Key, number>();
  private readonly ranks = new Map<Key, number>();

  constructor(tasks: readonly OwnTask[], drafts: readonly Draft[]) {
    this.drafts = drafts;
    this.step = 0.5 / (tasks.length + 1);
    const earlier = new Map(tasks.map(task => [task.key, ownBefore(task, tasks)]));
    inTurn(
      tasks,
      ({ beforeOwn }) => beforeOwn,
      task => this.findLatest(task)
    );
    inTurn(
      tasks,
      ({ key }) => earlier.get(key)!,
      task => this.ranks.set(task.key, this.found(task, earlier.get(task.key)!))
    );
  }

  rankOf({ key }: OwnTask): number {
    return this.ranks.get(key)!;
  }

  /** The place before all that a task comes before; none where it comes before nothing. */
  private findLatest({ key, before, beforeOwn }: OwnTask): void {
    const others = known(beforeOwn, this.latest).map(place => place - this.step);
    const all = [...before.map(word => this.first(word) - 0.5), ...others];
    if (all.length > 0) this.latest.set(key, Math.min(...all));
  }

  private found({ key, after }: OwnTask, earlier: readonly Key[]): number {
    const others = known(earlier, this.ranks).map(place => place + this.step);
    const behind = [...after.map(word => this.last(word) + 0.5), ...others];
    return behind.length > 0 ? Math.max(...behind) : (this.latest.get(key) ?? rankOf('clean-up') - 0.5);
  }

  /** The place of a task's last part; of a task that the job does not have its usual one. */
  private last(word: TaskWord): number {
    return Math.max(...this.ranksOf(word));
  }

  private first(word: TaskWord): number {
    return Math.min(...this.ranksOf(word));
  }

  private ranksOf(word: TaskWord): number[] {
    const own = this.drafts.filter(draft => draft.word === word).map(({ rank }) => rank);
    return own.length > 0 ? own : [rankOf(word === 'edging' ? 'edging-before' : word)];
  }
}

function known(keys: readonly Key[], places: ReadonlyMap<Key, number>): number[] {
  return keys.flatMap(key => places.get(key) ?? []);
}

/**
 * Comes to each task once, behind all that it leads to; what would close a circle is not followed. What is still to be
 * come to stands in a list, not in calls within calls: tasks may lead on from one to the next without end.
 */
function inTurn(
  tasks: readonly OwnTask[],
  leadsTo: (task: OwnTask) => readonly Key[],
  comeTo: (task: OwnTask) => void
): void {
  const byKey = new Map(tasks.map(task => [task.key, task]));
  const seen = new Set<Key>();
  for (const first of tasks) {
    const way: { readonly task: OwnTask; readonly next: Iterator<Key> }[] = [];
    const enter = (task: OwnTask): void => {
      seen.add(task.key);
      way.push({ task, next: leadsTo(task).values() });
    };
    if (!seen.has(first.key)) enter(first);
    for (let last = way.at(-1); last !== undefined; last = way.at(-1)) {
      const { value, done } = last.next.next();
      if (done === true) {
        way.pop();
        comeTo(last.task);
        continue;
      }
      const task = byKey.get(value);
      if (task !== undefined && !seen.has(task.key)) enter(task);
    }
  }
}
