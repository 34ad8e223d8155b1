import type { Severity } from './severity.ts';
import type { Print } from '../measures/print.ts';
import type { Key, System } from './job.ts';

/** What a rule can be about. */
export type Concern = AreaConcern | JobConcern;

/** What stands in an area, and its site. */
export type AreaConcern = 'area' | 'layer' | 'side' | 'unit' | 'material' | 'site';

/** What a job holds besides its areas. */
export type JobConcern = 'gate' | 'box' | 'pipe' | 'drain' | 'route' | 'tape' | 'reading' | 'delivery';

/** A rule as lowered from its text: plain, checked, without positions. */
export interface Rule {
  /** `rule:north-america/base-too-thin`; of a rule outside any rulebook `rule:base-on-clay`. */
  readonly key: Key;
  readonly name: string;
  /** As declared or treated. */
  readonly severity: Severity;
  readonly isAboutSafety: boolean;
  readonly cases: readonly RuleCase[];
  /** Rules that are heard instead wherever they apply. */
  readonly yieldsTo: readonly string[];
}

/** One kind of thing that a rule is about, and what it asks of it. */
export interface RuleCase {
  readonly concerns: Concern;
  /** All of them have to hold. */
  readonly when: readonly Condition[];
  /** Of several that are not met, in all cases of the rule, the one that is missed by most is told. */
  readonly needs: readonly Need[];
  readonly fixes: readonly FixTo[];
  /** That of the rule, but that what rests on practice or memory alone is never an error, unless it is about safety. */
  readonly severity: Severity;
  /** Kind of source and source, in a sentence. */
  readonly source: string;
  /** A source of it was read, or it is about safety. */
  readonly isGrounded: boolean;
  /** Quantities that it looks at, each once. */
  readonly reads: readonly string[];
  /** It looks at more than the unit, material or layer itself: it is then about this one in its area. */
  readonly readsArea: boolean;
}

/** Without a test it is told wherever the rule applies. */
export interface Need {
  readonly test?: Test;
  readonly when?: Condition;
  readonly says: readonly SaysPart[];
}

/** One of the lists has to hold as a whole. */
export type Condition = readonly (readonly Test[])[];

export type Test =
  | {
      readonly is: 'words';
      readonly of: string;
      readonly not: boolean;
      readonly words: readonly string[];
      readonly isName: boolean;
    }
  | { readonly is: 'said'; readonly of: string; readonly not: boolean }
  | { readonly is: 'compared'; readonly left: RuleSum; readonly sign: Sign; readonly limit: RuleLimit };

export type Sign = 'at least' | 'at most' | 'more than' | 'less than';

/** A limit that is round in both systems stands in each: the looser one judges. */
export type RuleLimit = Readonly<Record<System, RuleSum>>;

/** A sum over quantities; numbers in SI. */
export type RuleSum =
  | { readonly is: 'number'; readonly value: number; readonly written: string }
  | { readonly is: 'quantity'; readonly name: string }
  /** What a need comes to: the limit, or by how much it is missed. */
  | { readonly is: 'worked'; readonly name: Worked }
  | { readonly is: 'sum'; readonly sign: '+' | '-' | '*' | '/'; readonly left: RuleSum; readonly right: RuleSum };

export type Worked = 'needed' | 'missing';

export type SaysPart =
  | { readonly text: string }
  | { readonly words: string }
  | { readonly value: RuleSum; readonly print: Print; readonly measure: string };

/** Writes a value, or each of some words in turn, where a quantity of the thing stands or could stand. */
export interface FixTo {
  readonly of: string;
  readonly to: RuleSum | { readonly is: 'choice'; readonly words: readonly string[] };
  readonly safe: boolean;
}

/** What a rule finds on a thing, and someone answers for. */
export interface Accept {
  /** `accept:base-too-thin area:terrace`. */
  readonly key: Key;
  /** The rule's name. */
  readonly rule: string;
  readonly target: Key;
  /** The thing as the text names it. */
  readonly thing: string;
  readonly reason: string;
  /** The last day on which it holds, `2027-06-30`; absent where it holds for good. */
  readonly until?: string;
  readonly agreedWith?: string;
}

/** A rulebook that a job is checked by. */
export interface Rulebook {
  readonly id: string;
  readonly title: string;
  readonly edition?: string;
}
