import type { TextChange } from '../../findings/finding.ts';
import type { Key } from '../../job/job.ts';
import type { Cutting } from '../../laying/starts/cutting.ts';

/** A change of the job that leaves less to cut, and what is promised of it. */
export interface Offer {
  readonly title: string;
  readonly edits: readonly TextChange[];
  /** The text with all of them made. */
  readonly text: string;
  readonly area: Key;
  /** What the area leaves to cut then. */
  readonly promise: Cutting;
}
