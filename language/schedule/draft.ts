import type { TaskWord } from '../job/work.ts';
import type { Amount, Hold } from './contract.ts';

/** A task as it follows from the spec, before hours and days are told. */
export interface Draft {
  readonly id: string;
  readonly title: string;
  readonly word?: TaskWord;
  /** Its place in the trade's order: one of a lower rank comes first. */
  readonly rank: number;
  readonly efforts: readonly Effort[];
  readonly holds: readonly Hold[];
  readonly waits: readonly Wait[];
  /** It goes on, bit by bit, until the last task of this word ends. */
  readonly goesOnWith?: TaskWord;
  /** It waits for these alone; else for all of the rank before. */
  readonly after?: readonly string[];
}

/** Part of a task: the same thing by several measures. Rates by different measures add up. */
export interface Effort {
  /** Whose rates count: mostly those of the task itself, but for the concrete under an edging. */
  readonly task: TaskWord;
  /** What is known of it, for rates that count only then. */
  readonly words: readonly string[];
  /** The usual measure first; one for each measure at most. */
  readonly amounts: readonly [Amount, ...Amount[]];
  /** Things brought to the place: a rate of another task that includes this one does not include the way. */
  readonly brings?: true;
  /** The day it was logged as done. */
  readonly done?: string;
}

/** Days that must pass after another task. */
export interface Wait {
  readonly on: string;
  readonly days: number;
  /** From the morning of the day, or from the hour at which the other ends. */
  readonly from: 'morning' | 'hour';
  readonly hold: Hold;
}

/** The order of the trade. What depends on the spec (edging before or after laying, boxes) has several places. */
export const RANKS = [
  'locate',
  'set-out',
  'break-out',
  'dig',
  'soft-spots',
  'cart-away',
  'buried-boxes',
  'drains',
  'edging-on-concrete',
  'geotextile',
  'sub-base',
  'base',
  'edging-before',
  'boxes',
  'bed',
  'laying',
  'cutting',
  'concrete',
  'edging-after',
  'vibrating',
  'joints',
  'clean-up',
  'second-sweeping'
] as const;

export type Place = (typeof RANKS)[number];

export function rankOf(place: Place): number {
  return RANKS.indexOf(place);
}
