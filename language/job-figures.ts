import type { Finding } from './findings/finding.ts';
import type { JobQuantities } from './quantities/contract.ts';
import type { Schedule } from './schedule/contract.ts';
import type { PricedJob } from './priced-job.ts';

/** What a job needs, costs and takes. */
export interface JobFigures {
  /** As it stands: what was delivered is there. */
  readonly quantities: JobQuantities;
  /** Of what is left to do. */
  readonly left: Schedule;
  /** Of the whole job. */
  readonly priced: PricedJob;
}

/** Figures for who is still writing the job. */
export interface ShownFigures {
  readonly figures: JobFigures;
  /** The text has errors. */
  readonly broken?: {
    /** The first of them. */
    readonly error?: Finding;
    /** The figures are those from before; else of what is sound. */
    readonly isBefore: boolean;
  };
}

/** The first error of the text itself: what a rule asks for breaks nothing, and what stands in a variant is none of the job. */
export function errorOfText(findings: readonly Finding[]): Finding | undefined {
  return findings.find(
    ({ family, severity, target }) => family === 'fault' && severity === 'error' && !target.startsWith('variant:')
  );
}
