import type { OwnTask, TaskWord } from '../job/work.ts';
import { type Draft, rankOf } from './draft.ts';

/** A task of one's own in the order of the others. */
export interface PlacedOwn {
  readonly task: OwnTask;
  readonly rank: number;
}

/** Own tasks that come after each other lie so far apart; fewer than a thousand fit between two places of the trade. */
const STEP = 0.0005;

/**
 * Finds the places of one's own tasks: behind all that they come after; else before what they come before; else before the
 * clean-up. Where words lead in circles, behind counts and nothing is followed twice.
 */
export function placedOwnTasks(tasks: readonly OwnTask[], drafts: readonly Draft[]): PlacedOwn[] {
  const places = new OwnPlaces(tasks, drafts);
  return tasks.map(task => ({ task, rank: places.rankOf(task, []) }));
}

/** Keys of one's own tasks that a task comes after. */
export function ownBefore({ key, afterOwn }: OwnTask, tasks: readonly OwnTask[]): string[] {
  const told = tasks.filter(({ beforeOwn }) => beforeOwn?.includes(key) === true).map(other => other.key);
  return [...new Set([...(afterOwn ?? []), ...told])].filter(other => other !== key);
}

class OwnPlaces {
  private readonly tasks: readonly OwnTask[];
  private readonly drafts: readonly Draft[];
  private readonly byKey: ReadonlyMap<string, OwnTask>;
  private readonly ranks = new Map<string, number>();

  constructor(tasks: readonly OwnTask[], drafts: readonly Draft[]) {
    this.tasks = tasks;
    this.drafts = drafts;
    this.byKey = new Map(tasks.map(task => [task.key, task]));
  }

  /** `above`: keys of the tasks that ask for this one's place. */
  rankOf(task: OwnTask, above: readonly string[]): number {
    const known = this.ranks.get(task.key);
    if (known !== undefined) return known;
    const asking = [...above, task.key];
    const others = this.named(ownBefore(task, this.tasks), asking).map(other => this.rankOf(other, asking) + STEP);
    const behind = [...task.after.map(word => this.last(word) + 0.5), ...others];
    const latest = this.latest(task, []);
    const found = behind.length > 0 ? Math.max(...behind) : (latest ?? rankOf('clean-up') - 0.5);
    this.ranks.set(task.key, found);
    return found;
  }

  /** The place before all that a task comes before; undefined where it comes before nothing. */
  private latest(task: OwnTask, above: readonly string[]): number | undefined {
    const asking = [...above, task.key];
    const others = this.named(task.beforeOwn ?? [], asking).flatMap(other => {
      const its = this.latest(other, asking);
      return its === undefined ? [] : [its - STEP];
    });
    const all = [...task.before.map(word => this.first(word) - 0.5), ...others];
    return all.length === 0 ? undefined : Math.min(...all);
  }

  private named(keys: readonly string[], but: readonly string[]): OwnTask[] {
    return keys.filter(key => !but.includes(key)).flatMap(key => this.byKey.get(key) ?? []);
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
