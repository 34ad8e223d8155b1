import type {
  ChangePlaces,
  Comparison,
  FindingChange,
  MoneyChange,
  NumberChange,
  TaskChange
} from '../../comparing/contract.ts';
import { type Edit, placesOfEdit } from '../../comparing/edits.ts';
import type { Place } from '../../findings/finding.ts';
import { decimalText, type Minor, minorOf } from '../../money/money.ts';
import type { Costs } from '../../pricing/costs.ts';
import type { JobQuantities } from '../../quantities/contract.ts';
import { type FindingJson, findingJson } from './finding-json.ts';
import { placesJson } from './places-json.ts';
import { SCHEMA_NUMBER } from './schema-number.ts';
import { underWayJson } from './under-way-json.ts';

/** What the JSON of a comparison is made from; nothing is read from a clock or a file here. */
export interface ComparisonInput {
  /** Name and version of the program. */
  readonly tool: string;
  /** The day, `2026-04-18`. */
  readonly asOf: string;
  /** What is compared: `HEAD`, `the working copy`, a file. */
  readonly from: string;
  readonly to: string;
  readonly jobs: readonly ComparedJobInput[];
}

export interface ComparedJobInput {
  readonly title: string;
  /** Absent of a job that is new. */
  readonly before?: ComparedTextInput;
  /** Absent of one that is gone. */
  readonly after?: ComparedTextInput;
  /** Absent where one side alone has the job, and where both have the same text. */
  readonly comparison?: Comparison;
}

export interface ComparedTextInput {
  /** As it is shown. */
  readonly file: string;
  readonly errors: number;
  readonly quantities?: JobQuantities;
  readonly costs?: Costs;
}

export interface ComparisonJson {
  readonly schema: number;
  readonly tool: string;
  readonly asOf: string;
  readonly from: string;
  readonly to: string;
  readonly jobs: readonly ComparedJobJson[];
  readonly changes: readonly ChangeJson[];
}

interface ComparedJobJson {
  readonly id: string;
  readonly title: string;
  readonly before?: string;
  readonly after?: string;
  readonly errors?: { readonly before?: number; readonly after?: number };
  /** What the change does to what is built and bought. */
  readonly underWay?: object;
}

export interface ChangeJson {
  readonly id: string;
  readonly job: string;
  readonly kind: 'job' | 'edit' | 'renamed' | 'number' | 'finding' | 'money' | 'task' | 'days';
  readonly label: string;
  readonly before?: number | string;
  readonly after?: number | string;
  readonly change?: number | string;
  readonly measure?: string;
  readonly edited: boolean;
  readonly written?: { readonly before?: string; readonly after?: string };
  readonly finding?: FindingJson;
  readonly causes?: readonly string[];
  readonly places?: ChangePlaces;
}

type Change = Omit<ChangeJson, 'job'>;

/** What differs in all jobs, in SI and full precision: edits first, then what follows from them. */
export function comparisonJson({ tool, asOf, from, to, jobs }: ComparisonInput): ComparisonJson {
  const told = jobs.map(job => ({ ...job, id: (job.after ?? job.before)!.file }));
  return {
    schema: SCHEMA_NUMBER,
    tool,
    asOf,
    from,
    to,
    jobs: told.map(jobJson),
    changes: told.flatMap(job =>
      withOwnIds(changesOf(job)).map(({ id, ...change }) => ({ id, job: job.id, ...change }))
    )
  };
}

function jobJson({
  id,
  title,
  before,
  after,
  comparison
}: ComparedJobInput & { readonly id: string }): ComparedJobJson {
  const errors = {
    ...(before === undefined || before.errors === 0 ? {} : { before: before.errors }),
    ...(after === undefined || after.errors === 0 ? {} : { after: after.errors })
  };
  return {
    id,
    title,
    ...(before && { before: before.file }),
    ...(after && { after: after.file }),
    ...(Object.keys(errors).length === 0 ? {} : { errors }),
    ...(comparison?.underWay === undefined ? {} : { underWay: underWayJson(comparison.underWay) })
  };
}

/** Of several that would be called alike the second and on are counted. */
function withOwnIds(changes: readonly Change[]): Change[] {
  const counts = new Map<string, number>();
  return changes.map(change => {
    const count = (counts.get(change.id) ?? 0) + 1;
    counts.set(change.id, count);
    return count === 1 ? change : { ...change, id: `${change.id} ${count}` };
  });
}

function changesOf({ before, after, comparison }: ComparedJobInput): Change[] {
  if (comparison !== undefined) return comparisonChanges(comparison);
  if (before === undefined && after !== undefined) return loneChanges('after', after);
  if (after === undefined && before !== undefined) return loneChanges('before', before);
  return [];
}

/** That a job is new or gone, its area and its price. */
function loneChanges(side: 'before' | 'after', { file, quantities, costs }: ComparedTextInput): Change[] {
  const area = quantities?.totals.netArea;
  const place: Place = { file, line: 1, column: 1, endLine: 1, endColumn: 1 };
  return [
    { id: 'job', kind: 'job', label: side === 'after' ? 'new' : 'gone', edited: true, places: { [side]: place } },
    ...(area === undefined
      ? []
      : [change({ id: 'totals/netArea', kind: 'number', label: 'Net area', [side]: area, measure: 'm2' })]),
    ...(costs === undefined || quantities?.complete !== true
      ? []
      : [moneyChange({ id: 'to-pay', label: 'To pay', [side]: decimalText(costs.total), currency: costs.currency })])
  ];
}

function comparisonChanges({ edits, renamed, numbers, findings, money, tasks, days }: Comparison): Change[] {
  return [
    ...edits.map(editChange),
    ...renamed.map(({ kind, before, after }): Change => {
      const id = `renamed/${kind}/${after}`;
      return { id, kind: 'renamed', label: kind.replace('-', ' '), before, after, edited: true };
    }),
    ...numbers.map(numberChange),
    ...findings.map(findingChange),
    ...money.map(moneyChange),
    ...tasks.map(taskChange),
    ...(days === undefined
      ? []
      : [change({ id: 'days', kind: 'days', label: 'Days of the crew', ...days, measure: 'days' })])
  ];
}

function editChange(edit: Edit): Change {
  const { id, label, amount, order, before, after } = edit;
  const written = { ...(before === undefined ? {} : { before }), ...(after === undefined ? {} : { after }) };
  const places = placesJson(placesOfEdit(edit));
  if (order !== undefined) {
    const told = change({ id, kind: 'edit', label, ...order, measure: '' });
    return { ...told, edited: true, written, ...places };
  }
  if (amount === undefined) return { id, kind: 'edit', label, ...written, edited: true, ...places };
  const { value: old, measure } = amount.before;
  const told = change({ id, kind: 'edit', label, before: old, after: amount.after.value, measure });
  return { ...told, edited: true, written, ...places };
}

function numberChange({ id, before, after, causes, places }: NumberChange): Change {
  const { quantity, of, measure } = (after ?? before)!;
  const told = change({
    id,
    kind: 'number',
    label: of === '' ? quantity.words : `${of}: ${quantity.words}`,
    ...(before && { before: before.value }),
    ...(after && { after: after.value }),
    measure
  });
  return { ...told, ...causesJson(causes), ...placesJson(places) };
}

interface Told {
  readonly id: string;
  readonly kind: ChangeJson['kind'];
  readonly label: string;
  readonly before?: number;
  readonly after?: number;
  readonly measure: string;
}

/** The difference where there are both. */
function change({ measure, ...told }: Told): Change {
  const { before, after } = told;
  return {
    ...told,
    ...(before === undefined || after === undefined ? {} : { change: after - before }),
    measure,
    edited: false
  };
}

function findingChange({ kind, finding, acceptance, causes, places }: FindingChange): Change {
  const side = kind === 'cleared' ? 'before' : 'after';
  const whole = acceptance === undefined ? finding : { ...finding, accepted: acceptance };
  return {
    id: `${finding.id} ${finding.target}`,
    kind: 'finding',
    label: kind,
    [side]: finding.message,
    edited: false,
    finding: findingJson(whole),
    ...causesJson(causes),
    ...placesJson(places)
  };
}

function moneyChange({ id, label, before, after, currency }: MoneyChange): Change {
  const difference: Minor | undefined =
    before === undefined || after === undefined ? undefined : minorOf(after) - minorOf(before);
  return {
    id,
    kind: 'money',
    label,
    ...(before === undefined ? {} : { before }),
    ...(after === undefined ? {} : { after }),
    ...(difference === undefined ? {} : { change: decimalText(difference) }),
    measure: currency,
    edited: false
  };
}

/** Hours of one person. */
function taskChange({ id, title, before, after }: TaskChange): Change {
  const hours = { ...(before === undefined ? {} : { before }), ...(after === undefined ? {} : { after }) };
  return change({ id: `tasks/${id}`, kind: 'task', label: title, ...hours, measure: 'h' });
}

function causesJson(causes: readonly Edit[]): Pick<Change, 'causes'> {
  return causes.length === 0 ? {} : { causes: causes.map(({ id }) => id) };
}
