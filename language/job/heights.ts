import type { Loop, Point } from '../geometry/shapes.ts';
import type { Surface } from '../levels/surface.ts';
import type { Given, Height, Key } from './job.ts';

/**
 * What all heights of a job count from, so that they can be told from each other: nought, where a benchmark has a height
 * of its own; else the first benchmark. `z` is a height above it, m.
 */
export interface Datum {
  /** The first benchmark that the site names: heights are told against it. */
  readonly benchmark: string;
  /** Its height, m; nought where no benchmark has one. */
  readonly z: number;
  /** Heights are told as they are (`9.985 m`), not as below or above the benchmark. */
  readonly fromNought: boolean;
}

/** A height above the datum, m. */
export function zOf({ above, base, fromNought }: Height): number {
  return fromNought ? above.value : (base?.value ?? 0) + above.value;
}

/** A height taken at a named point. */
export interface SpotLevel {
  readonly key: Key;
  /** The point's name. */
  readonly name: string;
  readonly at: Point;
  readonly z: number;
  /** As written: what the rod reads, or the height itself. */
  readonly written: Given;
  /** The rod's set-up, by index in the job's, where it was read. */
  readonly setUp?: number;
}

/** One place of the instrument: what it reads is below its line of sight. */
export interface SetUp {
  readonly key: Key;
  readonly tool: string;
  readonly date?: string;
  /** The line of sight above the datum, m: the mean of its back sights. */
  readonly sight: number;
  readonly backsights: readonly {
    readonly key: Key;
    /** `door-sill`, `ground A`. */
    readonly name: string;
    readonly z: number;
    readonly reading: Given;
    /** What it gives for the line of sight less the mean, m. */
    readonly misfit: number;
  }[];
}

/** Something there already whose heights were taken. */
export interface LevelledThing {
  readonly key: Key;
  readonly name: string;
  readonly spots: readonly SpotLevel[];
}

/** All heights of the site that were taken at points. */
export interface SiteHeights {
  readonly ground: readonly SpotLevel[];
  readonly breakLines: readonly (readonly Point[])[];
  readonly things: readonly LevelledThing[];
}

/** The finished face of an area. */
export interface Finish {
  readonly key: Key;
  /** One height all over, as the text gives it. */
  readonly level?: Height;
  /** Heights against the datum, m. */
  readonly surface: Surface;
  /** The heights it is taken from: at points, along a line, at stations (`at 4 m`). */
  readonly heights: readonly { readonly name: string; readonly at?: Point; readonly z: number; readonly key: Key }[];
  readonly falls: readonly Given[];
  /** How far the fourth corner lies off the plane of the other three, m, where it is twisted. */
  readonly twist?: number;
  /** Steps to where it is taken from: the area whose finish this is `as`. */
  readonly as?: Key;
}

/** Heights on what stands beside an area, m against the datum. */
export interface WallHeights {
  readonly dampCourse?: Height;
  readonly siding?: Height;
  readonly weepHoles?: Height;
  /** Underside of the footing. */
  readonly footing?: Height;
  /** A wall without damp course, siding or weep holes. */
  readonly solid: boolean;
}

/** What becomes of a box. */
export interface BoxUse {
  readonly key: Key;
  readonly inUse: boolean;
  /** Cut down and buried. */
  readonly buried: boolean;
  /** A cover with a tray that is paved. */
  readonly tray?: { readonly depth: Given; readonly unit?: Key };
}

export interface Drain {
  readonly key: Key;
  readonly name: string;
  /** The area that it takes its width from. */
  readonly area?: Key;
  readonly kind: 'channel' | 'gully';
  /** On the plan. A channel along a side lies outside the area, one within it takes its width from the paving. */
  readonly outline: Loop;
  /** The line of a channel. */
  readonly line?: { readonly from: Point; readonly to: Point; readonly fromName: string; readonly toName: string };
  readonly width?: Given;
  readonly depth?: Given;
  readonly concrete?: { readonly below: Given; readonly sides: boolean };
  readonly grates: readonly {
    readonly name?: string;
    readonly at?: Point;
    readonly height: Height;
    readonly z: number;
  }[];
  readonly outlet?: { readonly at: Point; readonly name: string; readonly to?: string; readonly loadClass?: string };
}

export interface Pipe {
  readonly key: Key;
  readonly name: string;
  readonly line: readonly { readonly name: string; readonly at: Point }[];
  /** Below today's ground, m. */
  readonly depth?: Given;
  readonly about: boolean;
  readonly proven: boolean;
  readonly carries?: string;
}

export interface Gate {
  readonly key: Key;
  readonly name: string;
  readonly kind: 'gate' | 'door';
  readonly leaf?: {
    readonly hinge: Point;
    readonly length: Given;
    /** The leaf's end when it is shut. */
    readonly end: Point;
    /** Degrees; anticlockwise positive, towards the area it opens into. */
    readonly opens: Given;
    readonly turn: number;
    readonly into: Key;
  };
  readonly underside?: Height;
  /** m; usual where the text does not say. */
  readonly clearance?: Given;
  /** Where a door's threshold lies along the wall. */
  readonly opening?: { readonly from: Point; readonly to: Point };
  readonly sill?: Height;
}

/** A way that must be free of steps, along a line. */
export interface Route {
  readonly key: Key;
  readonly name: string;
  readonly line: Loop;
}

/** A line drawn on the plan: its sides follow each other and need not close. */
export interface NamedLine {
  readonly key: Key;
  readonly name: string;
  readonly sides: Loop;
}

export interface LevelSheetWords {
  /** Distance from place to place along the edges, m. */
  readonly every?: Given;
  readonly printed?: 'millimetres' | 'inches' | 'decimal-feet';
  /** A string set level at a height, or to the fall at a height above the finish. */
  readonly string?: { readonly level: Height } | { readonly above: Given };
  /** m outside the dig. */
  readonly offsetPoints?: Given;
}
