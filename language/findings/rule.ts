import type { Area, Country, System } from '../job/job.ts';
import type { FindingValue, RawFinding, Severity } from './finding.ts';

/** What rules read of an area: what is written, and the numbers worked out from it. */
export interface RuleInputs {
  readonly system: System;
  readonly countries: readonly Country[];
  readonly area: Omit<Area, 'outline' | 'keptOut' | 'start'>;
  /** How far the base runs past each side, m. */
  readonly overhangs: readonly number[];
  readonly grossArea: number;
  /** Depth of the dig below the ground, m. */
  readonly depth: number;
}

/** What a rule finds: a message in the job's measures, the values, the thing concerned and where to show it. */
export interface Breach {
  readonly message: string;
  readonly target: string;
  readonly at?: string;
  readonly values: readonly FindingValue[];
  readonly fixes?: NonNullable<RawFinding['fixes']>;
}

export interface Rule {
  readonly id: string;
  readonly countries: readonly Country[];
  readonly severity: Severity;
  /** Kind of source and source. */
  readonly source: string;
  /** What the rule asks, in a sentence. */
  readonly asks: string;
  readonly judge: (inputs: RuleInputs) => readonly Breach[];
}
