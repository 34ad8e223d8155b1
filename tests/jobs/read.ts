import { readFileSync } from 'node:fs';
import path from 'node:path';
import type { NeedQuantities } from '../../language/buying/order-contract.ts';
import { drain, Paving, type Evaluation } from '../../language/paving.ts';
import type { AreaQuantities } from '../../language/quantities/contract.ts';
import type { Schedule, Task } from '../../language/schedule/contract.ts';
import { scheduleOf } from '../../language/schedule/schedule.ts';
import { evaluated, inMemory } from '../language/in-memory.ts';
import { CUBIC_FOOT, CUBIC_YARD, INCH, SHORT_TON, SQUARE_FOOT } from '../quantities/jobs.ts';

/** A job as entered, and what it comes to in the measures that it was told in. */
export class Entered {
  readonly text: string;
  readonly evaluation: Evaluation;
  readonly #others: Readonly<Record<string, string>>;

  private constructor(text: string, others: Readonly<Record<string, string>>, evaluation: Evaluation) {
    this.text = text;
    this.#others = others;
    this.evaluation = evaluation;
  }

  static async read(name: string): Promise<Entered> {
    return Entered.of(readFileSync(path.join(import.meta.dirname, 'specs', `${name}.paving`), 'utf8'));
  }

  /** With the texts that it uses, by the names that it calls them. */
  static async of(text: string, others: Readonly<Record<string, string>> = {}): Promise<Entered> {
    return new Entered(text, others, await evaluated(text, others));
  }

  /** The job before anything came or was done: its log left out. */
  beforeLog(): Promise<Entered> {
    return Entered.of(this.text.replace(/^log \{.*?^\}$/ms, ''), this.#others);
  }

  /** The job as one of its variants has it. */
  async variant(name: string): Promise<Entered> {
    const paving = new Paving(inMemory({ ...this.#others, 'job.paving': this.text }));
    await paving.load('job.paving');
    const found = drain(paving.variants('job.paving')).find(variant => variant.name === name);
    if (found === undefined) throw new Error(`no variant is called ${name}`);
    return new Entered(this.text, this.#others, found.evaluation);
  }

  get areas(): readonly AreaQuantities[] {
    return this.evaluation.numbers!.quantities.areas;
  }

  get squareFeet(): number {
    return sum(this.areas.map(({ netArea }) => netArea)) / SQUARE_FOOT;
  }

  /** Of one kind of unit, or of all. */
  whole(unit?: string): number {
    return sum(this.laying(unit).map(({ whole }) => whole));
  }

  cut(unit?: string): number {
    return sum(this.laying(unit).map(({ cut }) => cut));
  }

  /** Units that whole ones and pieces come to by their area: no cut, no waste. */
  worth(): number {
    const units = new Map(
      this.evaluation.job!.areas.flatMap(({ paving }) =>
        (paving?.units ?? []).map(({ name, length, width }) => [name, length.value * width.value] as const)
      )
    );
    return sum(this.laying().map(({ unit, unitArea }) => unitArea / units.get(unit)!));
  }

  private laying(unit?: string): NonNullable<AreaQuantities['laying']>[number][] {
    return this.areas.flatMap(({ laying }) => laying ?? []).filter(one => unit === undefined || one.unit === unit);
  }

  private layers(role: string): AreaQuantities['layers'][number][] {
    return this.areas.flatMap(({ layers }) => layers).filter(layer => layer.role === role);
  }

  cubicFeet(role: string): number {
    return sum(this.layers(role).map(({ compactedVolume }) => compactedVolume)) / CUBIC_FOOT;
  }

  cubicYards(role: string): number {
    return (this.cubicFeet(role) * CUBIC_FOOT) / CUBIC_YARD;
  }

  looseCubicFeet(role: string): number {
    return sum(this.layers(role).map(({ looseVolume }) => looseVolume!)) / CUBIC_FOOT;
  }

  /** Kilograms. */
  mass(role: string): number {
    return sum(this.layers(role).map(({ mass }) => mass!));
  }

  shortTons(role: string): number {
    return this.mass(role) / SHORT_TON;
  }

  /** What is to be bought of a thing, where any of it is used. */
  need(item: string): NeedQuantities | undefined {
    return this.evaluation.numbers!.quantities.needs?.find(need => need.item === item);
  }

  get schedule(): Schedule {
    const { job, numbers } = this.evaluation;
    const { work, money, prices } = job!;
    return scheduleOf({ job: job!, quantities: numbers!.quantities, work, hires: money.hires, prices });
  }

  task(id: string): Task | undefined {
    return this.schedule.tasks.find(task => task.id === id);
  }

  /** Inches from today's ground down. */
  get digDepth(): number {
    return Math.max(...this.areas.map(({ dig }) => dig.deepest)) / INCH;
  }
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
