import type { Given, Key } from './job.ts';

/** Who works when, with what, and what is to be done besides. */
export interface WorkWords {
  readonly crew?: Crew;
  readonly tasks: readonly OwnTask[];
  /** How long things take: the shipped rates, with the job's own standing over those of the same name. */
  readonly rates: readonly Rate[];
  /** The first day of the work, `2026-04-13`. */
  readonly begins?: string;
}

export interface Crew {
  readonly key: Key;
  readonly people: Given;
  /** Days that are worked, 1 is Monday, 7 is Sunday. */
  readonly days: readonly number[];
  /** Hours of a working day. */
  readonly hours: Given;
}

/** A task of one's own. */
export interface OwnTask {
  readonly key: Key;
  readonly title: string;
  /** Hours of one person, h. */
  readonly hours: Given;
  readonly after: readonly TaskWord[];
  readonly before: readonly TaskWord[];
}

/** The tasks that follow from a spec, in the order of the trade. */
export type TaskWord =
  | 'locate'
  | 'set-out'
  | 'break-out'
  | 'dig'
  | 'cart-away'
  | 'soft-spots'
  | 'drains'
  | 'geotextile'
  | 'base'
  | 'edging'
  | 'concrete'
  | 'bed'
  | 'laying'
  | 'cutting'
  | 'boxes'
  | 'joints'
  | 'vibrating'
  | 'second-sweeping'
  | 'clean-up';

/** How long one person takes for so much of something. */
export interface Rate {
  readonly key: Key;
  readonly name: string;
  readonly task: TaskWord;
  /** Hours of one person for one of `per`, h; `job`: for the job, whatever its size. */
  readonly takes: Given;
  readonly per: 'm3' | 'm2' | 'm' | 'kg' | 'piece' | 'job';
  /** When this one counts and not another of the same task: words such as `hand`, `machine`, `herringbone`, `clay`, `slab`. */
  readonly when: readonly string[];
  readonly source: string;
  readonly status: 'read' | 'practice' | 'memory';
}
