import type { Key } from '../job/job.ts';
import type { TaskWord } from '../job/work.ts';
import type { Minor } from '../money/money.ts';

/** What a cost is for. Hundredths of the job's currency throughout, without tax. */
export type CostKind = 'material' | 'delivery' | 'labour' | 'hire' | 'disposal' | 'extra' | 'contingency' | 'taken-off';

/** What a cost is part of, as a person would call the piece of work, in the order of the trade. */
export const WORKS = [
  'setting-out',
  'breaking-out',
  'dig',
  'soft-spots',
  'drains',
  'geotextile',
  'sub-base',
  'base',
  'edging',
  'bed',
  'paving',
  'boxes',
  'joints',
  'clearing-up',
  'other',
  'delivery',
  'hire'
] as const;

export type Work = (typeof WORKS)[number];

/** Where a cost belongs. */
export interface CostPlace {
  /** Absent: to the job as a whole. */
  readonly area?: Key;
  readonly work: Work;
  /** The side that it stands along, as the sides of the area are named. */
  readonly edge?: string;
  readonly task?: TaskWord;
  /** A line of one's own stands under its own title. */
  readonly title?: string;
}

/** Part of a cost line: all parts come to the line, and their prices to the price. */
export interface CostPart extends CostPlace {
  readonly cost: Minor;
  /** `/costs/lines/0/parts/0`. */
  readonly pointer: string;
}

export interface CostLine {
  /** `material/crushed-stone`, `labour/base`, `extra/1`. */
  readonly id: string;
  readonly kind: CostKind;
  readonly title: string;
  readonly cost: Minor;
  readonly parts: readonly CostPart[];
  readonly untaxed: boolean;
  /** Passed on as it stands: neither overhead nor margin comes on top. */
  readonly passedOn: boolean;
}

/** What has no price, and why: everything else is priced all the same. */
export interface Unpriced {
  readonly title: string;
  readonly because: string;
  /** Of the reckoning itself: no business of the client's. */
  readonly inside?: true;
  /** What lacks its price, where it stands in the text. */
  readonly key?: Key;
}
