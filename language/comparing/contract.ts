import type { Acceptance, Finding, Place } from '../findings/finding.ts';
import type { Edit } from './edits.ts';
import type { JobNumber } from './job-numbers.ts';
import type { Renamed } from './renamed.ts';
import type { UnderWay } from './under-way/contract.ts';

/** What differs between two texts of one job. */
export interface Comparison {
  /** What was written otherwise, first. */
  readonly edits: readonly Edit[];
  /** What is called otherwise, and is the same. */
  readonly renamed: readonly Renamed[];
  readonly numbers: readonly NumberChange[];
  readonly findings: readonly FindingChange[];
  readonly money: readonly MoneyChange[];
  /** Days of the crew. */
  readonly days?: { readonly before: number; readonly after: number };
  readonly tasks: readonly TaskChange[];
  /** Where the log tells of anything done or delivered, and either text has something that the other has not. */
  readonly underWay?: UnderWay;
  /** Texts with errors. Where one is not complete, what is sound is compared, and neither totals nor price and days are. */
  readonly broken: readonly BrokenText[];
}

export interface BrokenText {
  readonly side: 'before' | 'after';
  readonly errors: number;
  readonly first?: Place;
  /** All numbers are there all the same. */
  readonly isComplete: boolean;
}

/** A number that is new, gone, or another. */
export interface NumberChange {
  readonly id: string;
  readonly before?: JobNumber;
  readonly after?: JobNumber;
  /** Edits in its working; where its working leads to none, those that everything may hang on, else all. */
  readonly causes: readonly Edit[];
  /** Of the thing that it is a number of. */
  readonly places: ChangePlaces;
}

export interface FindingChange {
  readonly kind: 'appeared' | 'cleared' | 'set aside' | 'no longer set aside';
  readonly finding: Finding;
  /** Who answers for it, where it is or was set aside. */
  readonly acceptance?: Acceptance;
  readonly causes: readonly Edit[];
  /** Where it stands, in the text that has it. */
  readonly places: ChangePlaces;
}

/** A task that is new, gone, or takes other hours of one person. */
export interface TaskChange {
  readonly id: string;
  readonly title: string;
  readonly before?: number;
  readonly after?: number;
}

/** An amount of money by what it is for, as decimal text. */
export interface MoneyChange {
  readonly id: string;
  readonly label: string;
  readonly before?: string;
  readonly after?: string;
  readonly currency: string;
}

/** Where a change stands in either text. */
export interface ChangePlaces {
  readonly before?: Place;
  readonly after?: Place;
}
