/** So many crashes within so long, and starting again helps no more. */
const MOST_CRASHES = 3;
const WITHIN = 3 * 60_000;

/** When the server crashed lately, ms. */
export class Crashes {
  private times: number[] = [];

  /** Adds one; true when it is one too many. Counting then begins anew. */
  add(now: number): boolean {
    this.times = [...this.times.filter(time => now - time < WITHIN), now];
    if (this.times.length < MOST_CRASHES) return false;
    this.times = [];
    return true;
  }
}
