import type { Place } from '../findings/finding.ts';
import type { Key, System } from '../job/job.ts';
import { printAs, printSlope, roundedUp } from '../measures/print.ts';
import type { Evaluation } from '../paving.ts';
import type { ShownFigures } from '../job-figures.ts';
import type { AreaQuantities, LayingQuantities } from '../quantities/contract.ts';
import type { GateQuantities } from '../quantities/site-contract.ts';
import { errorBehind } from './error-behind.ts';
import { figuresLines } from './job-lenses.ts';

/** A headline figure shown above a block. */
export interface Lens {
  readonly place: Place;
  readonly text: string;
  /** Who wants to know more is led to the comparison. */
  readonly isOfComparison?: true;
}

/**
 * What there is of the job, what differs since HEAD, costs and days where they are known, and one line for each area, at the
 * places in one file.
 */
export function lensesIn(evaluation: Evaluation, file: string, figures?: ShownFigures, sinceHead?: string): Lens[] {
  const { job, numbers, places } = evaluation;
  if (job === undefined || numbers === undefined) return [];
  const { quantities } = numbers;
  const lens = (key: Key, text: string): Lens[] => {
    const place = places.get(key);
    return place?.file === file ? [{ place, text }] : [];
  };
  const paved = printAs('area', quantities.totals.netArea, job.system);
  const missing = quantities.complete ? '' : ' · not complete';
  const known = new Set(quantities.areas.map(({ id }) => id));
  return [
    ...lens(
      'job',
      quantities.areas.length === 0
        ? `no numbers ${quantities.complete ? 'yet' : 'while there are errors'}`
        : `${paved} paved, ${printAs('stone-volume', quantities.dig.bankVolume, job.system)} to dig${missing}`
    ),
    // Before what was known all along: a narrow window cuts the line off at its end.
    ...(sinceHead === undefined ? [] : lens('job', sinceHead)).map(one => ({ ...one, isOfComparison: true as const })),
    ...(figures === undefined ? [] : figuresLines(figures, file)).flatMap(line => lens('job', line)),
    ...quantities.areas.flatMap(area => lens(area.id, areaText(area, job.system))),
    ...(quantities.gates ?? []).flatMap(gate => lens(gate.id, gateText(gate, job.system))),
    ...quantities.missing
      .filter(key => !known.has(key) && !/[/+]/.test(key))
      .flatMap(key => lens(key, brokenText(evaluation, key, job.system)))
  ];
}

/** The last good figures of a broken area, with the line that broke it; or why there are none. */
function brokenText(evaluation: Evaluation, key: Key, system: System): string {
  const before = evaluation.numbers!.lastGood.find(({ id }) => id === key);
  const error = errorBehind(evaluation, key);
  const file = error === undefined || error.file === evaluation.places.get(key)!.file ? '' : ` of ${error.file}`;
  const line = error === undefined ? 'the error' : `the error in line ${error.line}${file}`;
  if (before !== undefined) return `before ${line}: ${areaText(before, system)}`;
  return error === undefined ? 'no numbers: see the errors' : `no numbers: see ${line}`;
}

/** `102 whole, 12 cut`; of several kinds `333 + 89 whole, 205 cut`, in the order in which the text names them. */
function unitsText(laying: readonly LayingQuantities[]): string {
  const wholes = laying.map(({ whole }) => whole);
  const sum = (counts: readonly number[]): number => counts.reduce((total, count) => total + count, 0);
  const whole = wholes.length > MOST_KINDS ? sum(wholes) : wholes.join(' + ');
  return `${whole} whole, ${sum(laying.map(({ cut }) => cut))} cut`;
}

/** `clears by 12 mm`, `1/4 in too low`: nothing where a door has no leaf. */
function gateText({ clearance, trim }: GateQuantities, system: System): string {
  if (clearance === undefined) return 'clearance not known';
  const size = printAs('thickness', Math.abs(clearance), system);
  const cut = trim === undefined || trim <= 0 ? '' : ` · trim ${printAs('thickness', roundedUp(trim, system), system)}`;
  return `${clearance < 0 ? `${size} too low` : `clears by ${size}`}${cut}`;
}

/** More kinds are told together: the line stays short. */
const MOST_KINDS = 3;

function areaText(area: AreaQuantities, system: System): string {
  const units = area.laying === undefined ? '' : ` · ${unitsText(area.laying)}`;
  // Without a layer, or without heights and layers, there is no dig to speak of yet.
  const dig = area.dig.deepest === 0 ? '' : ` · dig ${printAs('thickness', area.dig.deepest, system)} deep`;
  const slope = area.finish?.fall === undefined ? 'level' : printSlope(area.finish.fall, system);
  const fall = slope === 'level' ? '' : ` · falls ${slope.replace(/^.*\((.*)\)$/, '$1')}`;
  return `${printAs('area', area.netArea, system)}${units}${dig}${fall}`;
}
