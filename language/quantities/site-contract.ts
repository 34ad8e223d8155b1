import type { Key } from '../job/job.ts';
import type { NumbersOf } from './catalogue.ts';
import type { Place2d } from './contract.ts';

/*
 * What stands in the job besides its areas. Heights are in m above the datum; differences say which way is more than
 * nought. A number that the text does not tell is absent.
 */

/** A distance between two points as read and as fitted with all others. */
export interface TapeQuantities extends NumbersOf<'tape'> {
  readonly from: string;
  readonly to: string;
  /** No tape misfits more. */
  readonly worst: boolean;
}

/** A height taken at a point, of the ground or of what is there already. */
export interface MeasuredHeight extends NumbersOf<'measured-height'> {
  /** `ground`, or the existing thing. */
  readonly of: string;
  readonly at: string;
}

export interface BoxQuantities extends NumbersOf<'box'> {
  readonly id: Key;
  readonly name: string;
  readonly area: Key;
  readonly inUse?: boolean;
  readonly buried: boolean;
  /** The middle of the box, and how it is taped from the two points furthest apart, of those that have coordinates. */
  readonly x: number;
  readonly y: number;
  readonly tapedFrom: readonly { readonly point: string; readonly distance: number }[];
}

export interface GateQuantities extends NumbersOf<'gate'> {
  readonly id: Key;
  readonly name: string;
  readonly kind: 'gate' | 'door';
  /** Where the clearance is least, on the plan. */
  readonly leastAt?: Place2d;
  /** It can't be opened all the way; the opening at which it strikes is in its numbers. */
  readonly strikes: boolean;
  /** The leaf lies over paving whose finish is known, somewhere on its way; absent where nothing is told of a leaf. */
  readonly overPaving?: boolean;
}

export interface PipeQuantities extends NumbersOf<'pipe'> {
  readonly id: Key;
  readonly name: string;
  readonly carries?: string;
  readonly proven: boolean;
  /** Its line leads over a dig. */
  readonly crossesDig: boolean;
  /** Where the dig comes nearest to it. */
  readonly nearestAt?: Place2d;
  readonly tapedFrom: readonly { readonly of: string; readonly point: string; readonly distance: number }[];
}

export interface DrainQuantities extends NumbersOf<'drain'> {
  readonly id: Key;
  readonly name: string;
  /** By area: what of it drains to this drain, m2. */
  readonly from: readonly { readonly area: Key; readonly drained: number }[];
}

/**
 * Where the water of an area goes: which of its sides it comes to over the area alone, m2 of paving; and where water stays
 * on it, that of other areas included.
 */
export interface WaterQuantities {
  readonly area: Key;
  readonly over: readonly {
    readonly side: string;
    readonly index: number;
    readonly meets?: string;
    readonly drained: number;
    /** What of it stays in low places, of this area or further on, m2. */
    readonly stays?: number;
  }[];
  /** Told once where it reaches over several areas. */
  readonly lowPlaces: readonly { readonly x: number; readonly y: number; readonly drained: number }[];
  /** Share by which these areas may be off; nought for a plane. */
  readonly tolerance: number;
}

export interface RouteQuantities extends NumbersOf<'route'> {
  readonly id: Key;
  readonly name: string;
  /** Stretches of one slope, in order along the line. */
  readonly stretches: readonly (NumbersOf<'stretch'> & { readonly area?: Key })[];
  readonly lips: readonly { readonly at: number; readonly step: number }[];
}

/** A delivery against what the job needs of it. */
export interface DeliveryQuantities extends NumbersOf<'delivery'> {
  readonly id: Key;
  readonly thing: string;
  /** Of a material its mass or its loose volume, of a unit pieces. */
  readonly measure: 'kg' | 'm3' | 'm2' | 'm' | '';
}

/** One height that was measured against the design. */
export interface ReadingQuantities extends NumbersOf<'reading'> {
  readonly id: Key;
  readonly date: string;
  readonly layer: string;
  readonly at: string;
  readonly area: Key;
}

/** A gap measured under a straightedge. */
export interface GapQuantities extends NumbersOf<'gap'> {
  readonly id: Key;
  readonly date: string;
  readonly area?: Key;
}

/** A slope measured along a line, against that of the finish as designed. */
export interface SlopeQuantities extends NumbersOf<'slope'> {
  readonly id: Key;
  readonly date: string;
  readonly along: string;
  readonly area?: Key;
}

/** What the job holds besides its areas. */
export interface SiteQuantities {
  /** What heights count from. */
  readonly datum?: { readonly benchmark: string; readonly height: number; readonly fromNought: boolean };
  readonly tapes?: readonly TapeQuantities[];
  readonly heights?: readonly MeasuredHeight[];
  readonly boxes?: readonly BoxQuantities[];
  readonly gates?: readonly GateQuantities[];
  readonly pipes?: readonly PipeQuantities[];
  readonly drains?: readonly DrainQuantities[];
  readonly water?: readonly WaterQuantities[];
  readonly routes?: readonly RouteQuantities[];
  readonly deliveries?: readonly DeliveryQuantities[];
  readonly readings?: readonly ReadingQuantities[];
  readonly gaps?: readonly GapQuantities[];
  readonly slopes?: readonly SlopeQuantities[];
}
