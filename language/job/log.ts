import type { Loop, Point } from '../geometry/shapes.ts';
import type { Given, Height, Key, Material } from './job.ts';
import type { InPacks } from './prices.ts';

/** What was delivered, done, measured and met on the way. It never changes the design; soft spots change quantities. */
export type LogEntry = { readonly key: Key; readonly date: string } & (Delivered | Done | Measured | SoftSpot);

export interface Delivered {
  readonly kind: 'delivered';
  /** The material or unit. */
  readonly thing: Key;
  readonly name: string;
  /** Of stone, sand and concrete kg or m3, of cloth m2, of edging m or pieces, of a unit pieces. */
  readonly amount: Given;
  readonly measure: 'kg' | 'm3' | 'm2' | 'm' | '';
  /** Where it came in packs: `amount` is their count times what one holds. */
  readonly packs?: InPacks;
  readonly batch?: string;
}

export type Stage = 'dig' | 'geotextile' | 'edging' | 'sub-base' | 'base' | 'bed' | 'paving' | 'joints';

export interface Done {
  readonly kind: 'done';
  readonly stage: Stage;
  readonly areas: readonly Key[];
  /** Only along this line: `T1 to T2`. */
  readonly along?: string;
}

export type Measured =
  | {
      readonly kind: 'height';
      /** What was measured: the top of a layer, the bottom of the dig, the units before vibrating, the finish. */
      readonly layer: MeasuredLayer;
      readonly area?: Key;
      readonly at: readonly {
        readonly name: string;
        readonly point: Point;
        readonly height: Height;
        readonly z: number;
      }[];
    }
  | { readonly kind: 'gap'; readonly gap: Given; readonly straightedge: Given; readonly area?: Key }
  | {
      readonly kind: 'slope';
      readonly slope: Given;
      readonly from: Point;
      readonly to: Point;
      readonly along: string;
      readonly area?: Key;
    };

export type MeasuredLayer = 'dig' | 'sub-base' | 'base' | 'bed' | 'as-laid' | 'finish';

export interface SoftSpot {
  readonly kind: 'soft-spot';
  readonly area: Key;
  readonly outline: Loop;
  readonly deeper: Given;
  /** What it is filled with; the base of the area where the text does not say. */
  readonly material?: Material;
}
