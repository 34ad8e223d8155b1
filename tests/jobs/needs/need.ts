import type { Entered } from '../read.ts';
import type { MEASURES } from './figures.ts';

/** Something that people asked for, and what its good answer has to hold. */
export interface Need {
  readonly item: string;
  /** Where it was asked, by kind. */
  readonly source: string;
  readonly need: string;
  /** Names of its specs; the first is meant where nothing is said. */
  readonly specs: readonly string[];
  readonly parts: readonly Part[];
  /** All findings of each spec but notes, in order. */
  readonly findings: readonly (readonly string[])[];
}

/** One part of the good answer. */
export type Part = { readonly part: string; readonly spec?: string } & (ByFinding | ByNoFinding | ByFigure | Missing);

export interface ByFinding {
  readonly finding: string;
  /** Stands in its message. */
  readonly saying: string;
}

/** The finding that comes up in the other spec does not in this one. */
export interface ByNoFinding {
  readonly noFinding: string;
}

export interface ByFigure {
  /** The hand-worked sum. */
  readonly by: string;
  readonly figure: number;
  readonly in: keyof typeof MEASURES;
  readonly ours: (job: Entered) => number;
  /** Of the job as this variant of it has it. */
  readonly variant?: string;
  /** 1e-6 of the measure where nothing is said. */
  readonly apart?: number;
}

export interface Missing {
  readonly missing: string;
  /** Where a word is wanting: a statement that begins with it, where there is none as yet. */
  readonly unsaid?: { readonly statement: string; readonly in: 'area' | 'job' | 'site' | 'material' | 'pipe' | 'spec' };
}
