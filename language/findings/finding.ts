import type { Key } from '../job/job.ts';
import type { Severity } from '../job/severity.ts';

/** A place in a text: 1-based lines, 1-based UTF-16 columns, the end just after the last character. */
export interface Place {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
}

/** A value a finding speaks of. `measure` is the SI measure (m, m2, kg/m3, …) or `` for counts, shares and words. */
export interface FindingValue {
  readonly name: string;
  readonly value: number | string;
  readonly measure: string;
}

/** Writes `text` in the place of what stands there. */
export interface TextChange {
  readonly place: Place;
  readonly text: string;
}

/** A change of the text that removes the finding. */
export interface Fix {
  readonly title: string;
  /** Safe: means the same thing, so it may be applied without asking. */
  readonly safe: boolean;
  readonly edits: readonly TextChange[];
}

/** A change before its key has been led to a place: over what stands there, right behind it, or into a gap. */
export type RawEdit =
  | { readonly over: Key; readonly text: string }
  | { readonly behind: Key; readonly text: string }
  | { readonly gap: Key; readonly statements: readonly string[] };

/** What removes a finding; unless it is marked safe it changes the meaning, and is never applied unasked. */
export interface RawFix {
  readonly title: string;
  readonly edits: readonly RawEdit[];
  /** A rule may mark its fix safe. */
  readonly safe?: boolean;
}

/** A finding before its key has been led to a place. */
export interface RawFinding {
  readonly id: string;
  readonly message: string;
  /** The thing concerned. */
  readonly target: Key;
  /** Where to show it: a key of the place map; `target` when absent. */
  readonly at?: Key;
  readonly values?: readonly FindingValue[];
  readonly related?: readonly { readonly key: Key; readonly message: string }[];
  readonly fixes?: readonly RawFix[];
  /** Of a rule; a fault's severity stands in the list of faults. */
  readonly severity?: Severity;
  readonly source?: string;
  /** The rule's key. */
  readonly rule?: Key;
}

/** Who answers for a finding that is set aside, why and how long, and where that is said. */
export interface Acceptance extends Place {
  readonly rule: string;
  /** The thing, as the text names it. */
  readonly thing: string;
  readonly reason: string;
  /** The last day on which it holds, `2027-06-30`; absent where it holds for good. */
  readonly until?: string;
  readonly agreedWith?: string;
}

/** A finding as every view shows it. */
export interface Finding extends Place {
  readonly id: string;
  readonly family: 'fault' | 'rule';
  readonly severity: Severity;
  readonly message: string;
  readonly target: Key;
  readonly values: readonly FindingValue[];
  readonly source?: string;
  /** Where the rule stands that found it. */
  readonly rule?: Place;
  readonly related: readonly (Place & { readonly message: string })[];
  readonly fixes: readonly Fix[];
}

/** A finding that is set aside: it stands apart from the others, and counts as none of them. */
export interface AcceptedFinding extends Finding {
  readonly accepted: Acceptance;
}

export function isAccepted(finding: Finding): finding is AcceptedFinding {
  return 'accepted' in finding;
}
