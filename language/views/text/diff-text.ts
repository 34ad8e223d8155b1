import { SAME_NAMES } from '../../comparing/new-names.ts';
import { type JobNumber, jobNumbers } from '../../comparing/job-numbers.ts';
import type { System } from '../../job/job.ts';
import { usesOf } from '../../lowering/uses.ts';
import { printAs } from '../../measures/print.ts';
import { moneyText } from '../../money/money.ts';
import type { Evaluation, Look } from '../../paving.ts';
import type { PricedJob } from '../../priced-job.ts';
import type { JobQuantities, Workings } from '../../quantities/contract.ts';
import { plainLine } from './plain-line.ts';

/** A text by itself, worked out; nothing that it uses was read. */
export interface DiffTextInput {
  readonly look: Look;
  readonly evaluation: Evaluation;
  readonly priced?: PricedJob;
}

/**
 * A job spec as a line-by-line comparison of two revisions shows it: the text, then its numbers in its order, one a line,
 * each with what it is of. The same text gives the same lines on every day.
 */
export function diffText({ look, evaluation, priced }: DiffTextInput): string {
  const { text } = look.text.parsed;
  const unread = usesOf(look.text).map(({ path }) => path);
  if (unread.length > 0) {
    const lines = outlineLines(look, evaluation);
    const told = lines.length === 0 ? 'none' : 'outlines alone';
    const why = `since the rest may hang on what is not read here: ${unread.join(', ')}`;
    return withHeading(text, [`Numbers of this text: ${told}, ${why}`, ...lines]);
  }
  const lines = [...numberLines(evaluation, priced), ...errorLines(evaluation)];
  return withHeading(text, lines.length === 0 ? [] : ['Numbers of this text', ...lines]);
}

/** A text with lines of its own below it. */
export function withHeading(text: string, lines: readonly string[]): string {
  const ended = text === '' || text.endsWith('\n') ? text : `${text}\n`;
  return lines.length === 0 ? ended : `${ended}\n${lines.map(plainLine).join('\n')}\n`;
}

function numberLines({ job, numbers }: Evaluation, priced: PricedJob | undefined): string[] {
  if (job === undefined || numbers === undefined) return [];
  const { quantities } = numbers;
  return [
    ...jobNumbers(quantities, SAME_NAMES)
      .filter(isShown)
      .map(number => numberLine(number, job.system)),
    ...orderLines(quantities),
    ...priceLines(priced)
  ];
}

function isShown({ quantity: { owner, key, sheetOnly } }: JobNumber): boolean {
  return sheetOnly !== true && !ELSEWHERE.has(owner) && (owner !== 'edge' || key === 'length');
}

/** Heights at every corner stand on the level sheet; what is bought is told as ordered. */
const ELSEWHERE: ReadonlySet<string> = new Set(['level', 'tape', 'measured-height', 'need', 'choice', 'order']);

function numberLine({ of, quantity, value }: JobNumber, system: System): string {
  return `${of === '' ? 'Whole job' : of}: ${smallFirst(quantity.words)} ${printAs(quantity.print, value, system)}`;
}

function smallFirst(words: string): string {
  return words.charAt(0).toLowerCase() + words.slice(1);
}

/** An order that is not proven may be another where more time is spent on it: it is no number of the text. */
function orderLines({ order = [] }: JobQuantities): string[] {
  return order.map(({ item, pack, count, proven }) =>
    proven ? `Order: ${item}, ${pack}: ${count}` : `Order: ${item}, ${pack}: open, see paving order`
  );
}

function priceLines(priced: PricedJob | undefined): string[] {
  const { costs } = priced ?? {};
  if (costs === undefined || priced?.numbers.quantities.orderCost?.proven === false) return [];
  const { currency } = costs;
  return [
    `Whole job: costs ${moneyText(costs.costs, currency)}`,
    `Whole job: price without tax ${moneyText(costs.price, currency)}`,
    `Whole job: to pay ${moneyText(costs.total, currency)}`
  ];
}

function errorLines({ findings }: Evaluation): string[] {
  return findings.filter(({ severity }) => severity === 'error').map(({ id, message }) => `Error: ${message} [${id}]`);
}

/**
 * What no other file can change: the outlines in this text, with what is kept out of them, since what a used file holds
 * cannot name an area here. Units, materials, edging and prices may stand there. Of faults those that the text has however
 * its names are read.
 */
function outlineLines({ text }: Look, { job, numbers }: Evaluation): string[] {
  const told =
    job === undefined || numbers === undefined
      ? []
      : jobNumbers(numbers.quantities, SAME_NAMES)
          .filter(({ quantity, pointer }) => OUTLINES.has(quantity.id) && isOfShapes(pointer, numbers.workings))
          .map(number => numberLine(number, job.system));
  return [...told, ...text.parsed.faults.map(({ id, message }) => `Error: ${message} [${id}]`)];
}

const OUTLINES: ReadonlySet<string> = new Set(['gross-area', 'net-area', 'perimeter', 'kept-out-area', 'edge-length']);

function isOfShapes(pointer: string, workings: Workings): boolean {
  const values = workings[pointer]?.values;
  return (
    values?.every(({ from }) => 'shape' in from || ('pointer' in from && isOfShapes(from.pointer, workings))) === true
  );
}
