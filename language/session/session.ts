/** What the memory holds results of. */
export type Stage = 'outline' | 'laying' | 'layers' | 'pair' | 'neighbours' | 'job' | 'rules';

const STAGES: readonly Stage[] = ['outline', 'laying', 'layers', 'pair', 'neighbours', 'job', 'rules'];

/**
 * Most results held at once, so that an editor left open for weeks does not grow: several jobs of a thousand areas. The
 * one used longest ago goes first.
 */
const MOST_RESULTS = 16_384;

interface Held {
  readonly slot: Slot;
  readonly content: string;
  readonly result: unknown;
}

/**
 * The one memory: for each thing of each scope and each stage the last inputs, by content, and what came of them.
 * A scope is a job; things are areas, pairs of areas, or the job as a whole.
 */
export class Session {
  readonly #held = new Map<string, Held>();
  readonly #computations = new Map<Stage, number>();
  readonly #most: number;

  constructor(most = MOST_RESULTS) {
    this.#most = most;
  }

  /** How often each stage has been computed so far, remembered results not counted. */
  get computations(): Readonly<Record<Stage, number>> {
    const counts = STAGES.map((stage): [Stage, number] => [stage, this.#computations.get(stage) ?? 0]);
    return Object.fromEntries(counts) as Record<Stage, number>;
  }

  /** How many results are held. */
  get size(): number {
    return this.#held.size;
  }

  /** The result of a stage for a thing: remembered if its inputs are the same, else computed in steps. */
  *recall<T>(slot: Slot, inputs: unknown, compute: () => Generator<void, T> | T): Generator<void, T> {
    const name = slotName(slot);
    const content = JSON.stringify(inputs);
    const held = this.#held.get(name);
    if (held?.content === content) {
      this.#keep(name, held);
      return held.result as T;
    }
    this.#computations.set(slot.stage, (this.#computations.get(slot.stage) ?? 0) + 1);
    const computed = compute();
    const result = isGenerator(computed) ? yield* computed : computed;
    this.#keep(name, { slot, content, result });
    return result;
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
  readonly stage: Stage;
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
