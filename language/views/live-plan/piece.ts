import type { Key } from '../../job/job.ts';
import type { PlanArea, PlanUnit } from '../plan/plan-input.ts';
import type { PlanFall, PlanThing } from '../plan/plan-site.ts';
import type { LiveShape, LiveThing } from './live-plan.ts';

/** What is drawn first lies under what follows. */
export const LAYERS = [
  'edging',
  'ground',
  'whole',
  'cuts',
  'under',
  'kept-out',
  'edges',
  'over',
  'points',
  'dimensions',
  'heights',
  'falls',
  'starts',
  'names'
] as const;

export type LayerName = (typeof LAYERS)[number];

/** What one thing of the job, an area or what stands besides, brings to the plan: it stays as a whole while it is broken. */
export interface Piece {
  readonly key: Key;
  /** As a sentence names it: `area terrace`, `gate side-gate`. */
  readonly name: string;
  readonly layers: Layers;
  readonly things: readonly UnledThing[];
  /** Areas that it is shown with while they are broken: a corner's point, what lies in them. */
  readonly with?: readonly Key[];
  /** What the legend is told from. */
  readonly from?: {
    readonly area?: PlanArea;
    readonly units?: readonly PlanUnit[];
    readonly falls?: readonly PlanFall[];
    readonly things?: readonly PlanThing[];
  };
}

/** A thing before it is known whether the text has a place for it. */
export type UnledThing = Omit<LiveThing, 'leads'>;

export type Layers = Readonly<Partial<Record<LayerName, readonly LiveShape[]>>>;

type Facts = LiveThing['facts'];

/** A fact where there is one. */
export function fact(words: string, told: string | undefined): Facts {
  return told === undefined || told === '' ? [] : [[words, told]];
}
