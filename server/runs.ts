// What is being worked out, one run for each open file; a newer one takes the place of an older.

/** The longest the server works before it looks whether something newer has come, ms. */
const SLICE = 10;

export interface Run {
  cancelled: boolean;
  timer: ReturnType<typeof setTimeout> | undefined;
  readonly ended: Promise<void>;
  readonly end: () => void;
}

export class Runs {
  private readonly running = new Map<string, Run>();
  private readonly tell: (working: boolean) => void;
  private toldWorking = false;

  /** `tell` hears when work begins, and when nothing is left to do. */
  constructor(tell: (working: boolean) => void) {
    this.tell = tell;
  }

  get size(): number {
    return this.running.size;
  }

  of(uri: string): Run | undefined {
    return this.running.get(uri);
  }

  begin(uri: string): Run {
    this.cancel(uri);
    let end = (): void => undefined;
    const ended = new Promise<void>(resolve => (end = resolve));
    const run: Run = { cancelled: false, timer: undefined, ended, end };
    this.running.set(uri, run);
    this.tellWork();
    return run;
  }

  stop(uri: string): void {
    this.cancel(uri);
    this.tellWork();
  }

  stopAll(): void {
    for (const uri of this.running.keys()) this.stop(uri);
  }

  ended(uri: string, run: Run): void {
    if (this.running.get(uri) === run) this.running.delete(uri);
    run.end();
    this.tellWork();
  }

  private cancel(uri: string): void {
    const run = this.running.get(uri);
    if (run === undefined) return;
    run.cancelled = true;
    clearTimeout(run.timer);
    this.running.delete(uri);
    run.end();
  }

  private tellWork(): void {
    const working = this.running.size > 0;
    if (working === this.toldWorking) return;
    this.toldWorking = working;
    this.tell(working);
  }
}

/** Works in slices, so that the next keystroke is heard and the work it makes idle is dropped; undefined when cancelled. */
export async function inSlices<T>(steps: Generator<void, T>, run: Pick<Run, 'cancelled'>): Promise<T | undefined> {
  const slices = new Slices();
  while (!run.cancelled) {
    const step = steps.next();
    if (step.done) return step.value;
    await slices.pause();
  }
  return undefined;
}

/** Time for what comes from the editor, between pieces of long work. */
export class Slices {
  private started = Date.now();

  /** At once while the slice lasts. */
  async pause(): Promise<void> {
    if (Date.now() - this.started < SLICE) return;
    await new Promise(resume => setTimeout(resume, 0));
    this.started = Date.now();
  }
}
