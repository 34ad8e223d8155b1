import type { Gate } from '../../job/heights.ts';
import type { Area, Edge, Key, Layer, Material, Site, System, Unit } from '../../job/job.ts';
import type { Concern } from '../../job/rule.ts';
import type { Print } from '../../measures/print.ts';
import type { LayersNumbers } from '../../quantities/layers-stage.ts';
import type { EdgeHeights } from '../../quantities/edge-heights-stage.ts';
import type { JudgedDrain, JudgedGate, JudgedReading } from '../../quantities/judged-site.ts';
import type { OutlineNumbers } from '../../quantities/outline-stage.ts';
import type {
  BoxQuantities,
  DeliveryQuantities,
  PipeQuantities,
  RouteQuantities,
  TapeQuantities,
  WaterQuantities
} from '../../quantities/site-contract.ts';
import type { RawFix } from '../finding.ts';
import type { Length } from '../limits.ts';

/** What every thing has that a rule looks at. */
export interface JudgedSite {
  readonly system: System;
  /** Absent where the job has no area. */
  readonly site?: Site;
}

/** What rules look at: an area with what is written of it and its numbers. */
export interface Judged extends JudgedSite {
  readonly site: Site;
  readonly area: Area;
  readonly shapes: OutlineNumbers;
  readonly layers: LayersNumbers;
  readonly edgeHeights: readonly EdgeHeights[];
  /** Where its water goes. */
  readonly water?: WaterQuantities;
  /** Doors and gates of the job whose opening tells where their sill is. */
  readonly doors: readonly Gate[];
  /** The material that a base is usually made of where the job is. */
  readonly usualStone: string;
}

/** A thing that a rule is about, in its area, with its values under the names that they have in rules. */
export type Thing = ThingAlone & { value(name: string): Value };

export type ThingAlone = AreaThing | JobThing;

export type AreaThing = { readonly judged: Judged; readonly key: Key } & (
  | { readonly is: 'area' | 'site' }
  | { readonly is: 'layer'; readonly layer: Layer; readonly index: number }
  | { readonly is: 'side'; readonly edge: Edge; readonly index: number }
  | { readonly is: 'unit'; readonly unit: Unit }
  | { readonly is: 'material'; readonly material: Material }
);

/** Something that a job holds besides its areas; `at` is where it stands. */
export type JobThing = { readonly judged: JudgedSite; readonly key: Key; readonly at?: Key } & (
  | { readonly is: 'gate'; readonly gate: JudgedGate }
  | { readonly is: 'box'; readonly box: BoxQuantities }
  | { readonly is: 'pipe'; readonly pipe: PipeQuantities }
  | { readonly is: 'drain'; readonly drain: JudgedDrain }
  | { readonly is: 'route'; readonly route: RouteQuantities }
  | { readonly is: 'tape'; readonly tape: TapeQuantities }
  | { readonly is: 'reading'; readonly reading: JudgedReading }
  | { readonly is: 'delivery'; readonly delivery: DeliveryQuantities }
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
  /** It takes where water goes. */
  readonly drained?: true;
  read(thing: ThingOf<T>): Value;
  /** Where it stands, or the nearest thing that is written. */
  at?(thing: ThingOf<T>): Key | undefined;
  /** What would make it come to a length, or to a word. */
  write?(thing: ThingOf<T>, to: Length | string): readonly RawFix[];
}

/** A thing of one kind. */
export type ThingOf<T extends Concern> = T extends 'site'
  ? ThingAlone
  : T extends 'area'
    ? AreaThing
    : ThingAlone & { readonly is: T };

type Plain<T extends Concern> = Pick<Member<T>, 'name' | 'of' | 'measure' | 'print' | 'describe' | 'choices'>;

/** A name, or words; `choices` where they are a fixed list. */
export function words<T extends Concern>(of: T, name: string, describe: string, choices?: readonly string[]): Plain<T> {
  return { name, of, measure: 'words', print: 'number', describe, ...(choices === undefined ? {} : { choices }) };
}

/** A length, printed as on a tape. */
export function length<T extends Concern>(of: T, name: string, describe: string): Plain<T> {
  return { name, of, measure: 'm', print: 'fine', describe };
}
