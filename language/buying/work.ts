/** Steps after which a search gives way: some thousandths of a second. */
const STEPS_AT_A_TIME = 1000;

/**
 * Steps of a search, counted and limited. A step is a short sum that is done over and over: a count of packs that is
 * tried, a line that is reckoned, a price that is looked at.
 */
export class Work {
  #steps = 0;
  #most: number;
  #due = STEPS_AT_A_TIME;

  constructor(most: number) {
    this.#most = most;
  }

  get steps(): number {
    return this.#steps;
  }

  /** Steps that are left. */
  get left(): number {
    return Math.max(0, this.#most - this.#steps);
  }

  /** Counts steps; whether they still were within the limit. */
  take(steps = 1): boolean {
    this.#steps += steps;
    return this.#steps <= this.#most;
  }

  /** Whether it is time to give way, so that whoever waits can turn to something else; told once each time. */
  isDue(): boolean {
    if (this.#steps < this.#due) return false;
    this.#due = this.#steps + STEPS_AT_A_TIME;
    return true;
  }

  /** A search that may take a part of the steps that are left, so that something is left for what comes after it. */
  *sharing<T>(part: number, search: Generator<void, T>): Generator<void, T> {
    const most = this.#most;
    this.#most = Math.min(most, this.#steps + Math.ceil(this.left * part));
    const found = yield* search;
    this.#most = most;
    return found;
  }
}
