import type { Key, System } from '../../job/job.ts';

/** A cut through a job along a line, as it is drawn and told. Stations and heights in m. */
export interface SectionInput {
  readonly title: string;
  readonly name: string;
  readonly system: System;
  /** Of the line itself; a little is shown beyond its ends. */
  readonly length: number;
  readonly past: number;
  /** What heights count from. */
  readonly heights: string;
  readonly bodies: readonly SectionBody[];
  readonly lines: readonly SectionLine[];
  readonly marks: readonly SectionMark[];
  readonly stations: readonly SectionStation[];
  /** `terrace: slab-16 2 in, bed washed-sand 1 in`. */
  readonly layers: readonly string[];
  /** Why something is not shown. */
  readonly missing: readonly string[];
}

/** A place in the cut: along the line, and above the datum. */
export interface Level {
  readonly at: number;
  readonly z: number;
}

export type BodyRole =
  | 'unit'
  | 'bed'
  | 'base'
  | 'sub-base'
  | 'made-up'
  | 'topsoil'
  | 'soft-spot'
  | 'box'
  | 'buried'
  | 'drain'
  | 'wall'
  | 'edging'
  | 'concrete';

/** Something that is cut through. */
export interface SectionBody {
  readonly key: Key;
  readonly role: BodyRole;
  readonly says: string;
  /** Corners, in order round. */
  readonly corners: readonly Level[];
}

export interface SectionLine {
  readonly key: Key;
  readonly role: 'ground' | 'finish' | 'dig' | 'beside';
  readonly levels: readonly Level[];
}

/** Something named at its place; a pipe has its ring drawn. */
export interface SectionMark extends Level {
  readonly key: Key;
  readonly text: string;
  readonly isPipe?: true;
}

/** A place whose heights are told. The least rank is told first where there is no room for all. */
export interface SectionStation {
  readonly at: number;
  readonly name?: string;
  readonly rank: number;
  readonly z: number;
  readonly ground?: string;
  readonly finish?: string;
  readonly digBottom?: string;
}
