import type { Loop, Point } from '../../geometry/index.ts';
import type { Key, System } from '../../job/job.ts';
import type { LaidUnits } from '../../laying/laid.ts';
import type { PlanSite } from './plan-site.ts';

/** What the plan of a job is drawn and told from: areas in their true places, m. */
export interface PlanInput {
  readonly title: string;
  readonly system: System;
  readonly units: readonly PlanUnit[];
  readonly areas: readonly PlanArea[];
  /** What is broken so that it can't be drawn at all, each with why. */
  readonly missing: readonly string[];
  /** Points, heights and what stands or lies there; absent where nothing is known besides areas and units. */
  readonly site?: PlanSite;
}

export interface PlanUnit {
  readonly key: Key;
  readonly name: string;
  /** m; of a hexagon across corners and across flats. */
  readonly length: number;
  readonly width: number;
  readonly shape: 'rectangle' | 'hexagon';
  /** As the job tells it. */
  readonly colour?: string;
}

export interface PlanArea {
  readonly key: Key;
  readonly name: string;
  readonly outline: Loop;
  /** One for each side of the outline, in its order. */
  readonly sides: readonly PlanSide[];
  readonly keptOut: readonly PlanKeptOut[];
  readonly parts: readonly PlanPart[];
  readonly start?: PlanStart;
  /** Where corners lie and how curves run; absent where every corner is a named point and no side is a curve. */
  readonly settingOut?: PlanSettingOut;
  /** Why nothing of it could be worked out, or not its units. */
  readonly noNumbers?: string;
}

/** Where laying begins, and which way the courses run, radians: the area lies to the left, or `mirrored` to the right. */
export interface PlanStart {
  readonly x: number;
  readonly y: number;
  readonly direction: number;
  readonly mirrored: boolean;
  /** Laying begins at the centre of rings. */
  readonly inRings?: boolean;
}

/** What an outline is set out by that its points do not tell, m. */
export interface PlanSettingOut {
  /** A named point, or `corner 3` as where heights are told. */
  readonly corners: readonly { readonly name: string; readonly at: Point }[];
  readonly curves: readonly PlanCurve[];
}

export interface PlanCurve {
  readonly side: string;
  readonly centre: Point;
  readonly radius: number;
  /** Names of corners; all round both are the same. */
  readonly from: string;
  readonly to: string;
}

export interface PlanSide {
  readonly key: Key;
  readonly name: string;
  /** m */
  readonly length: number;
  readonly meets?: string;
  readonly flush: boolean;
  readonly edging?: string;
}

export interface PlanKeptOut {
  readonly key: Key;
  readonly name: string;
  /** An inset is paved in a way of its own; a box and a pit are not paved. */
  readonly kind: 'box' | 'pit' | 'inset' | 'drain';
  readonly outline: Loop;
  /** What is done to its lid: `raise 1 in`. */
  readonly lid?: string;
}

/** What is laid in one go: the field, a border, a band across, an inset. */
export interface PlanPart {
  /** Within the area: `field`, `border-1`. */
  readonly key: string;
  readonly name: string;
  readonly kind: 'field' | 'border' | 'band' | 'inset';
  readonly laid: LaidUnits;
  /** Of each cut unit its number in the cut list, in the order of `laid.cuts`. */
  readonly numbers: readonly number[];
}
