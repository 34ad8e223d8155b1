import type { Area, Edge, Key, Layer, Material, System, Unit } from '../../job/job.ts';
import type { Concern } from '../../job/rule.ts';
import type { Print } from '../../measures/print.ts';
import type { LayersNumbers } from '../../quantities/layers-stage.ts';
import type { OutlineNumbers } from '../../quantities/outline-stage.ts';
import type { RawFix } from '../finding.ts';
import type { Length } from '../limits.ts';

/** What rules look at: an area with what is written of it and its numbers. */
export interface Judged {
  readonly system: System;
  readonly area: Area;
  readonly shapes: OutlineNumbers;
  readonly layers: LayersNumbers;
  /** The material that a base is usually made of where the job is. */
  readonly usualStone: string;
}

/** A thing that a rule is about, in its area, with its values under the names that they have in rules. */
export type Thing = ThingAlone & { value(name: string): Value };

export type ThingAlone = { readonly judged: Judged; readonly key: Key } & (
  | { readonly is: 'area' | 'site' }
  | { readonly is: 'layer'; readonly layer: Layer; readonly index: number }
  | { readonly is: 'side'; readonly edge: Edge; readonly index: number }
  | { readonly is: 'unit'; readonly unit: Unit }
  | { readonly is: 'material'; readonly material: Material }
);

/** A value of a thing: SI, or words (several for traffic); undefined, or no words, where the job does not say. */
export type Value = number | readonly string[] | undefined;

/** Something that a rule can look at, under the name that it has in rules. */
export interface Member<T extends Concern = Concern> {
  readonly name: string;
  readonly of: T;
  /** SI measure; `words` for names and words. */
  readonly measure: string;
  readonly print: Print;
  /** What it is, in a sentence without its full stop. */
  readonly describe: string;
  /** All the words it can be, where they are a fixed list. */
  readonly choices?: readonly string[];
  /** It takes cut pieces to be put into units. */
  readonly nested?: true;
  read(thing: ThingOf<T>): Value;
  /** Where it stands, or the nearest thing that is written. */
  at?(thing: ThingOf<T>): Key | undefined;
  /** What would make it come to a length, or to a word. */
  write?(thing: ThingOf<T>, to: Length | string): readonly RawFix[];
}

/** A thing of one kind. */
export type ThingOf<T extends Concern> = ThingAlone & { readonly is: T extends 'area' ? Concern : T };

type Plain<T extends Concern> = Pick<Member<T>, 'name' | 'of' | 'measure' | 'print' | 'describe' | 'choices'>;

/** A name, or words; `choices` where they are a fixed list. */
export function words<T extends Concern>(of: T, name: string, describe: string, choices?: readonly string[]): Plain<T> {
  return { name, of, measure: 'words', print: 'number', describe, ...(choices === undefined ? {} : { choices }) };
}

/** A length, printed as on a tape. */
export function length<T extends Concern>(of: T, name: string, describe: string): Plain<T> {
  return { name, of, measure: 'm', print: 'fine', describe };
}
