import { sameContent } from './same-content.ts';

/** What the memory holds results of. */
export type Stage =
  | 'outline'
  | 'laying'
  | 'cuts'
  | 'nesting'
  | 'layers'
  | 'edges'
  | 'levels'
  | 'site'
  | 'water'
  | 'drains'
  | 'routes'
  | 'deliveries'
  | 'pair'
  | 'neighbours'
  | 'job'
  | 'order'
  | 'schedule'
  | 'price'
  | 'variants'
  | 'plan'
  | 'rules'
  | 'site-rules'
  | 'examples';

/** Stages, and work within one that is counted by itself: a rule judged on a thing. Variants read count as texts parsed. */
export type Counted = Exclude<Stage, 'variants'> | 'judgements';

/** What else is held of a thing, with no computation behind it. */
type Kept = 'inputs' | 'last-good';

const COUNTED: readonly Counted[] = [
  'outline',
  'laying',
  'cuts',
  'nesting',
  'layers',
  'edges',
  'levels',
  'site',
  'water',
  'drains',
  'routes',
  'deliveries',
  'pair',
  'neighbours',
  'job',
  'order',
  'schedule',
  'price',
  'plan',
  'rules',
  'site-rules',
  'examples',
  'judgements'
];

/**
 * Most results held at once, so that an editor left open for weeks does not grow: several jobs of a thousand areas. The
 * one used longest ago goes first.
 */
const MOST_RESULTS = 16_384;

interface Held {
  readonly slot: Slot;
  readonly inputs: unknown;
  readonly result: unknown;
}

/**
 * The one memory: for each thing of each scope and each stage the last inputs, by content, and what came of them.
 * A scope is a job; things are areas, pairs of areas, or the job as a whole.
 */
export class Session {
  readonly #held = new Map<string, Held>();
  readonly #computations = new Map<Counted, number>();
  readonly #most: number;

  constructor(most = MOST_RESULTS) {
    this.#most = most;
  }

  /** How often each stage has been computed so far, remembered results not counted. */
  get computations(): Readonly<Record<Counted, number>> {
    const counts = COUNTED.map((stage): [Counted, number] => [stage, this.#computations.get(stage) ?? 0]);
    return Object.fromEntries(counts) as Record<Counted, number>;
  }

  count(what: Counted, times: number): void {
    this.#computations.set(what, (this.#computations.get(what) ?? 0) + times);
  }

  /** How many results are held. */
  get size(): number {
    return this.#held.size;
  }

  /** The result of a stage for a thing: remembered if its inputs are the same, else computed in steps. */
  *recall<T>(
    slot: Slot & { readonly stage: Stage },
    inputs: unknown,
    compute: (before: T | undefined) => Generator<void, T> | T
  ): Generator<void, T> {
    const name = slotName(slot);
    const held = this.#held.get(name);
    if (held !== undefined && sameContent(held.inputs, inputs)) {
      this.#keep(name, held);
      return held.result as T;
    }
    if (slot.stage !== 'variants') this.count(slot.stage, 1);
    const computed = compute(held?.result as T | undefined);
    const result = isGenerator(computed) ? yield* computed : computed;
    this.#keep(name, { slot, inputs, result });
    return result;
  }

  /**
   * A thing as it was before, where it is the same by content: what is taken from it is then the very same, and is known
   * at a glance.
   */
  asBefore<T>(scope: string, thing: string, now: T): T {
    const slot: Slot = { scope, stage: 'inputs', thing };
    const before = this.#held.get(slotName(slot))?.result as T | undefined;
    if (before !== undefined && sameContent(before, now)) return before;
    this.#keep(slotName(slot), { slot, inputs: undefined, result: now });
    return now;
  }

  /** Holds what a thing last came to, whatever it was worked out from: shown, marked as old, while the thing is broken. */
  keepLastGood(scope: string, thing: string, result: unknown): void {
    const slot: Slot = { scope, stage: 'last-good', thing };
    this.#keep(slotName(slot), { slot, inputs: undefined, result });
  }

  lastGood(scope: string, thing: string): unknown {
    return this.#held.get(slotName({ scope, stage: 'last-good', thing }))?.result;
  }

  /** Drops what a scope holds for things that are no longer there. */
  forgetOthers(scope: string, still: (thing: string) => boolean): void {
    for (const [name, { slot }] of this.#held) {
      if (slot.scope === scope && !still(slot.thing)) this.#held.delete(name);
    }
  }

  /** Drops all that a scope holds. */
  forget(scope: string): void {
    this.forgetOthers(scope, () => false);
  }

  #keep(name: string, held: Held): void {
    this.#held.delete(name);
    this.#held.set(name, held);
    if (this.#held.size <= this.#most) return;
    const oldest = this.#held.keys().next();
    if (!oldest.done) this.#held.delete(oldest.value);
  }
}

/** Where a result is held. */
export interface Slot {
  readonly scope: string;
  readonly stage: Stage | Kept;
  readonly thing: string;
}

function slotName(slot: Slot): string {
  return JSON.stringify([slot.scope, slot.stage, slot.thing]);
}

function isGenerator<T>(value: Generator<void, T> | T): value is Generator<void, T> {
  return typeof value === 'object' && value !== null && Symbol.iterator in value && 'next' in value;
}

/** Runs a computation in steps to its end. */
export function drain<T>(steps: Generator<void, T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}
