import type { Ink } from '../../drawing/inks.ts';
import type { Loop, Point, Side } from '../../geometry/index.ts';
import type { Key } from '../../job/job.ts';

/** What a plan shows besides areas and units: points, heights, falls, and what stands or lies there. */
export interface PlanSite {
  /** What heights count from; absent where the job has none. */
  readonly heights?: string;
  readonly points: readonly PlanPoint[];
  readonly falls: readonly PlanFall[];
  readonly things: readonly PlanThing[];
  /** Heights of each area at its corners, points and boxes. */
  readonly levels: readonly { readonly area: Key; readonly rows: readonly PlanLevel[] }[];
}

/** A named point, or a corner without a name. */
export interface PlanPoint {
  readonly key: Key;
  readonly name?: string;
  readonly at: Point;
  /** Of the finish there; with the area's name where areas differ. */
  readonly heights: readonly string[];
}

/** An arrow down the steepest line of an area, or of a part of it that falls another way. */
export interface PlanFall {
  readonly key: Key;
  readonly area: Key;
  /** Where it may stand, the best place first. */
  readonly places: readonly FallPlace[];
}

export interface FallPlace {
  readonly at: Point;
  /** Way down, radians anticlockwise. */
  readonly down: number;
  /** `1:48`, `1/4 in per ft`. */
  readonly text: string;
}

/** Heights at one place, as they are printed. */
export interface PlanLevel {
  readonly at: string;
  readonly finish: string;
  readonly ground?: string;
  readonly digBottom?: string;
}

export type ThingKind =
  | 'gate'
  | 'door'
  | 'channel'
  | 'gully'
  | 'outlet'
  | 'pipe'
  | 'buried box'
  | 'soft spot'
  | 'old paving'
  | 'no dig'
  | 'break line'
  | 'route'
  | 'section'
  | 'set-out point';

/** Something that stands or lies there, as it is drawn and told. */
export interface PlanThing {
  readonly key: Key;
  readonly kind: ThingKind;
  readonly name: string;
  readonly parts: readonly ThingPart[];
  /** Hinges, outlets: drawn as dots of one size at any scale. */
  readonly dots: readonly Point[];
  /** What is written at it, the fullest first; none where the legend tells it. */
  readonly labels: readonly string[];
  /** What the text is about: along this line, or beside this place. */
  readonly labelled: { readonly along: Side } | { readonly beside: Point } | { readonly ends: readonly [Side, Side] };
  /** In words, for the plan as text. */
  readonly told: string;
}

export type ThingPart = { readonly ink: Ink } & ({ readonly loop: Loop } | { readonly sides: readonly Side[] });
