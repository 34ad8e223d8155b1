import type { BuyingQuantities } from '../buying/order-contract.ts';
import type { RawFinding } from '../findings/finding.ts';
import type { Area, Key, Role, Traffic } from '../job/job.ts';
import type { AreaLaid } from './area-result.ts';
import type { NumbersOf } from './catalogue.ts';
import type { FinishQuantities } from './finish.ts';
import type { LevelQuantities, OffsetPoint } from './levels-stage.ts';
import type { SiteQuantities } from './site-contract.ts';
import type { SoftSpotQuantities } from './soft-spots.ts';
import type { NestedTogether } from './nesting-stage.ts';
import type { Together } from './together.ts';

/** The numbers of one job, what they were worked out from, and what was found on the way. */
export interface JobNumbers {
  readonly quantities: JobQuantities;
  /** By JSON pointer, starting at the job: `/areas/0/netArea`. */
  readonly workings: Workings;
  readonly findings: readonly RawFinding[];
  /**
   * Of areas that have no numbers now, those they had before their text broke. An editor may show them, marked as old;
   * they are no part of the job: no finding, total, table or JSON knows them.
   */
  readonly lastGood: readonly AreaQuantities[];
  /** Every unit of each area that has numbers, for the plan and the cut list. */
  readonly laid: readonly { readonly area: Area; readonly laid?: AreaLaid }[];
  /** What the pieces of several areas come out of, where offcuts may go from one to another. */
  readonly nestedTogether?: NestedTogether;
}

export type Workings = Readonly<Record<string, Working>>;

/** How a number came about: the formula, and a value for each of its names. */
export interface Working {
  readonly formula: string;
  readonly values: readonly WorkingValue[];
}

export interface WorkingValue {
  readonly name: string;
  readonly value: number;
  /** SI; empty for counts and shares. */
  readonly measure: string;
  readonly from: From;
  /** As written in the text, where it stands there or in what ships. */
  readonly written?: string;
}

/** Where a value comes from. */
export type From = FromPointer | FromKey | FromAssumed | FromShape;

/** Another quantity of the same job, by JSON pointer. */
export interface FromPointer {
  readonly pointer: string;
}

/** A quantity written in the text, by the key of its place. */
export interface FromKey {
  readonly key: Key;
}

/** Taken so because the job does not say. */
export interface FromAssumed {
  readonly assumed: string;
  readonly source?: string;
}

/** Measured on a shape: the key of an area, side, box or pit, or two keys joined by `+`. */
export interface FromShape {
  readonly shape: string;
}

/** x and y, m. */
export type Place2d = readonly [number, number];

export interface SideShape {
  readonly from: Place2d;
  readonly to: Place2d;
  readonly centre?: Place2d;
  /** Degrees, anticlockwise positive. */
  readonly turn?: number;
}

/** The part of the JSON contract that holds one job, without workings and findings. Lengths m, areas m2, volumes m3, masses kg. */
export interface JobQuantities extends Together, SiteQuantities, BuyingQuantities {
  readonly id: Key;
  readonly title: string;
  readonly currency?: string;
  /** By whose rules the job is checked. */
  readonly rulebooks: readonly { readonly id: string; readonly edition?: string }[];
  /** Every area has all its numbers. */
  readonly complete: boolean;
  /** What has no numbers. */
  readonly missing: readonly Key[];
  /** Points of the plan, m; `fixed` when its coordinates are given. */
  readonly points: readonly {
    readonly id: Key;
    readonly name: string;
    readonly x: number;
    readonly y: number;
    readonly fixed: boolean;
  }[];
  readonly areas: readonly AreaQuantities[];
  readonly dig: NumbersOf<'job-dig'>;
  readonly totals: NumbersOf<'totals'>;
}

export interface AreaQuantities extends NumbersOf<'area'> {
  readonly id: Key;
  readonly name: string;
  readonly traffic: readonly Traffic[];
  readonly outline: readonly SideShape[];
  readonly keptOut: readonly KeptOutQuantities[];
  readonly edges: readonly EdgeQuantities[];
  /** Height of the finish against the benchmark `at`, m. */
  readonly finish?: FinishQuantities;
  readonly dig: NumbersOf<'dig'>;
  /** Soft spots met in it: dug deeper and filled with stone. */
  readonly softSpots?: readonly SoftSpotQuantities[];
  /** Heights above the datum at its corners, points, boxes and along its sides. */
  readonly levels?: readonly LevelQuantities[];
  /** Places that would have made the sheet too long. */
  readonly levelsLeftOut?: number;
  /** Outside the dig, on the lines of the sides: what is set up there is not dug away. */
  readonly offsetPoints?: readonly OffsetPoint[];
  readonly geotextile?: GeotextileQuantities;
  readonly layers: readonly LayerQuantities[];
  readonly laying?: readonly LayingQuantities[];
  /** Borders and bands, row by row. */
  readonly borderRows?: readonly BorderRowQuantities[];
  /** Equal cuts together, under their numbers on the plan. */
  readonly cuts?: readonly CutQuantities[];
  /** For the person with the tape: every five courses. */
  readonly runningSizes?: readonly NumbersOf<'running-size'>[];
  readonly joints?: NumbersOf<'joints'>;
  readonly edging: readonly EdgingQuantities[];
}

export interface KeptOutQuantities extends NumbersOf<'kept-out'> {
  readonly id: Key;
  readonly outline: readonly SideShape[];
}

export interface EdgeQuantities extends NumbersOf<'edge'> {
  readonly name: string;
  readonly from: Place2d;
  readonly to: Place2d;
  readonly meets?: string;
  readonly edging?: string;
  /** Along the side: the neighbour's height less that of the finish, m. */
  readonly steps?: readonly { readonly at: number; readonly step: number }[];
}

export interface GeotextileQuantities extends NumbersOf<'geotextile'> {
  readonly material: string;
}

export interface LayerQuantities extends NumbersOf<'layer'> {
  readonly role: Extract<Role, 'bed' | 'base' | 'sub-base'>;
  readonly material: string;
}

export interface LayingQuantities extends NumbersOf<'laying'> {
  readonly unit: string;
  readonly bond: string;
  /** The units used are as few as can be. */
  readonly proven?: boolean;
}

export interface BorderRowQuantities extends NumbersOf<'border-row'> {
  /** `border-1`, `band-1`: in the order of the text. */
  readonly border: string;
  readonly unit: string;
  readonly course: string;
  /** Sides that it runs along; none of a band, nor round a box, pit or inset. */
  readonly sides: readonly string[];
  /** Whole units fit; otherwise both ends are cut alike. */
  readonly wholeUnits: boolean;
}

/** A cut, and how many units are cut so. What stays of each: outlines in the unit's own frame, m, holes clockwise; m2, m. */
export interface CutQuantities {
  readonly number: number;
  readonly unit: string;
  readonly count: number;
  readonly outlines: readonly (readonly SideShape[])[];
  readonly area: number;
  readonly sawLength: number;
}

export interface EdgingQuantities extends NumbersOf<'edging'> {
  readonly material: string;
}
