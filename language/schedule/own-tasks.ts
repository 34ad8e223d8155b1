import type { OwnTask, TaskWord } from '../job/work.ts';
import type { Draft } from './draft.ts';
import { rankOf } from './draft.ts';

/** A task of one's own in the order of the others: after what it says, before what it says, else before the clean-up. */
export interface PlacedOwn {
  readonly task: OwnTask;
  readonly rank: number;
}

/** Own tasks that come after each other lie so far apart; fewer than a thousand fit between two places of the trade. */
const STEP = 0.0005;

/**
 * Finds the places of one's own tasks. Words that ask for what can't be (after laying and before the dig) are not followed
 * where they lead backwards: `after` counts.
 */
export function placedOwnTasks(tasks: readonly OwnTask[], drafts: readonly Draft[]): PlacedOwn[] {
  const byKey = new Map(tasks.map(task => [task.key, task]));
  const ranks = new Map<string, number>();
  const rank = (task: OwnTask, above: readonly string[]): number => {
    const known = ranks.get(task.key);
    if (known !== undefined) return known;
    const others = (task.afterOwn ?? []).flatMap(key => {
      const other = above.includes(key) ? undefined : byKey.get(key);
      return other === undefined ? [] : [rank(other, [...above, task.key]) + STEP];
    });
    const after = [...task.after.map(word => lastRank(word, drafts) + 0.5), ...others];
    const before = [
      ...task.before.map(word => firstRank(word, drafts) - 0.5),
      ...tasks.flatMap(other => (task.beforeOwn?.includes(other.key) === true ? (ranks.get(other.key) ?? []) : []))
    ];
    const found =
      after.length > 0 ? Math.max(...after) : before.length > 0 ? Math.min(...before) : rankOf('clean-up') - 0.5;
    ranks.set(task.key, found);
    return found;
  };
  return tasks.map(task => ({ task, rank: rank(task, [task.key]) }));
}

/** The place of a task's last part; of a task that the job does not have its usual one. */
function lastRank(word: TaskWord, drafts: readonly Draft[]): number {
  return Math.max(...ranksOf(word, drafts));
}

function firstRank(word: TaskWord, drafts: readonly Draft[]): number {
  return Math.min(...ranksOf(word, drafts));
}

function ranksOf(word: TaskWord, drafts: readonly Draft[]): number[] {
  const own = drafts.filter(draft => draft.word === word).map(({ rank }) => rank);
  return own.length > 0 ? own : [rankOf(word === 'edging' ? 'edging-before' : word)];
}
