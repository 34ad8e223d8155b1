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
  /** Other tasks of one's own that it comes after, and before. */
  readonly afterOwn: readonly Key[];
  readonly beforeOwn: readonly Key[];
}

/** The tasks that follow from a spec, in the order of the trade. */
export const TASK_WORDS = [
  'locate',
  'set-out',
  'break-out',
  'dig',
  'cart-away',
  'soft-spots',
  'drains',
  'geotextile',
  'base',
  'edging',
  'concrete',
  'bed',
  'laying',
  'cutting',
  'boxes',
  'joints',
  'vibrating',
  'second-sweeping',
  'clean-up'
] as const;

export type TaskWord = (typeof TASK_WORDS)[number];

/**
 * How long one person takes for so much of something: per m3 in the ground for what is dug, loose for what is carted
 * away, in place for layers and concrete; per piece of what the task is about (a cut, a box, a barrow that is wheeled);
 * per m of a cut, an edge, a drain, or of the way that a barrow is wheeled. Rates of one task that measure in different
 * ways add up: the time for each barrow, and for each metre of its way. Of those that measure in the same way one
 * counts: of those whose words all hold, the one with the most words.
 */
export interface Rate {
  readonly key: Key;
  readonly name: string;
  /** A rate of several tasks stands here once for each. */
  readonly task: TaskWord;
  /** Hours of one person for one of `per`, h; `job`: for the job, whatever its size. */
  readonly takes: Given;
  readonly per: 'm3' | 'm2' | 'm' | 'kg' | 'piece' | 'job';
  /**
   * When this one counts: words of `RATE_WORDS`, or names of a soil, bond, unit or material. `herringbone` holds for
   * every bond whose name begins so.
   */
  readonly when: readonly string[];
  /** Tasks that this one does on the way: where it counts, theirs take no time of their own. */
  readonly includes?: readonly TaskWord[];
  readonly source: string;
  /** How the figure is known; `quoted`: not read in the source itself. */
  readonly status: 'read' | 'quoted' | 'practice' | 'memory';
}

/** Words behind `when`, besides names of soils, bonds, units and materials. */
export const RATE_WORDS = [
  // How it is dug.
  'hand',
  'machine',
  // What is laid: units of a size for a plate and one hand, slabs, fired clay.
  'block',
  'slab',
  'clay-units',
  'herringbone',
  'basket-weave',
  // Edging on concrete, or on spikes; what concrete is for; what drains there are.
  'concrete',
  'spikes',
  'edging',
  'drain',
  'channel',
  'gully',
  // What is done to a box.
  'raise',
  'lower',
  'tray',
  'bury',
  // How a joint filler sets.
  'bound',
  'unbound'
] as const;
