import type { Key } from '../../job/job.ts';
import type { Span } from '../../syntax/text-edit.ts';
import type { SpecText } from '../names.ts';
import type { WrittenNumber } from './written-number.ts';

/** How the place of a handle stands in a text, or in a sentence why no drag can write it otherwise. */
export type ToldHandle = Why | { readonly text: SpecText; readonly told: Told };

export interface Why {
  readonly why: string;
}

/** `from`: the key under which lowering knows what a place is told from. */
export type Told =
  | { readonly how: 'pair'; readonly pair: WrittenPair }
  | { readonly how: 'start'; readonly pair: WrittenPair }
  | { readonly how: 'along'; readonly spot: WrittenAlong; readonly from: Key }
  | { readonly how: 'polar'; readonly spot: WrittenPolar; readonly from: Key }
  | { readonly how: 'arc'; readonly arc: WrittenArc };

/** Two numbers in brackets. */
export interface WrittenPair {
  readonly x: WrittenNumber;
  readonly y: WrittenNumber;
  /** The measure behind the brackets, with the space before it; empty where none stands there. */
  readonly behind: Span;
}

/** Along a line and off it; `end`: where a clause for the latter can be written that is not there. */
export interface WrittenAlong {
  readonly along: WrittenNumber;
  readonly aside?: { readonly off: WrittenNumber; readonly where: 'out' | 'left' | 'right'; readonly word: Span };
  readonly end: number;
}

/** Away from a point, at an angle. */
export interface WrittenPolar {
  readonly away: WrittenNumber;
  readonly turn: WrittenNumber;
}

/** What bends a side: the height of a bow, a radius, that of a rounded corner, radius or width of a circle. */
export interface WrittenArc {
  readonly bend: 'bowed' | 'radius' | 'rounded' | 'circle' | 'across';
  readonly size: WrittenNumber;
  /** The word that says to which side it bends; empty behind the size where none stands there. */
  readonly side?: { readonly says: 'in' | 'out'; readonly word: Span };
}
