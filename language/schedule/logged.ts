import type { Edge, Key } from '../job/job.ts';
import type { Done, LogEntry, Stage } from '../job/log.ts';
import { later } from '../measures/days.ts';

type Logs = Extract<LogEntry, Done>;

/** What lies over what: with a later one done, those before it are done. Edging stands by itself. */
export const STAGES: readonly Stage[] = ['dig', 'geotextile', 'sub-base', 'base', 'bed', 'paving', 'joints'];

/** What the log tells as done. */
export class Logged {
  /** The last day on which anything was done. */
  readonly last: string | undefined;
  private readonly done: readonly Logs[];

  constructor(log: readonly LogEntry[]) {
    this.done = log.filter((entry): entry is Logs => entry.kind === 'done');
    this.last = this.done.reduce<string | undefined>((last, { date }) => later(last, date), undefined);
  }

  /** The day by which a stage of an area was done: its own entry's, else the first of a later stage. */
  reached(area: Key, stage: Stage): string | undefined {
    const whole = this.done.filter(({ areas, along }) => areas.includes(area) && along === undefined);
    const own = whole.filter(entry => entry.stage === stage).map(({ date }) => date);
    if (own.length > 0) return own.toSorted().at(-1);
    const over = STAGES.slice(STAGES.indexOf(stage) + 1);
    return whole
      .filter(entry => over.includes(entry.stage))
      .map(({ date }) => date)
      .toSorted()[0];
  }

  /** Entries that tell a stage of a whole area as done, by their days. */
  of(area: Key, stage: Stage): Logs[] {
    return this.done
      .filter(entry => entry.stage === stage && entry.areas.includes(area) && entry.along === undefined)
      .toSorted((one, other) => (one.date < other.date ? -1 : Number(one.date > other.date)));
  }

  /** The day on which the edging along one side was logged as set. */
  edgingTold(area: Key, { name }: Edge): string | undefined {
    return this.done
      .filter(({ stage, areas }) => stage === 'edging' && areas.includes(area))
      .filter(({ along }) => along === undefined || leadsAlong(along, name))
      .map(({ date }) => date)
      .toSorted()
      .at(-1);
  }

  /** The day by which the edging along one side was set. */
  edging(area: Key, edge: Edge): string | undefined {
    const { edgingSet } = edge;
    return this.edgingTold(area, edge) ?? this.reached(area, edgingSet === 'after' ? 'joints' : 'paving');
  }
}

/** A side may be logged the other way round than the outline runs. */
function leadsAlong(line: string, side: string): boolean {
  return line === side || line === side.split(' to ').toReversed().join(' to ');
}
