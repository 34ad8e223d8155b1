import type { Place } from '../findings/finding.ts';
import type { Key, System } from '../job/job.ts';
import { printAs, printSlope, roundedUp } from '../measures/print.ts';
import type { Evaluation } from '../paving.ts';
import type { ShownFigures } from '../job-figures.ts';
import type { AreaQuantities, JobQuantities, LayingQuantities } from '../quantities/contract.ts';
import type { GateQuantities } from '../quantities/site-contract.ts';
import { errorBehind } from './error-behind.ts';
import { errorWords, figuresLines } from './job-lenses.ts';

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
  const { system } = job;
  const lens = (key: Key, text: string): Lens[] => {
    const place = places.get(key);
    return place?.file === file ? [{ place, text }] : [];
  };
  return [
    ...lens('job', jobText(quantities, system)),
    // Before what was known all along: a narrow window cuts the line off at its end.
    ...(sinceHead === undefined ? [] : lens('job', sinceHead)).map(one => ({ ...one, isOfComparison: true as const })),
    ...(figures === undefined ? [] : figuresLines(figures, file)).flatMap(line => lens('job', line)),
    ...quantities.areas.flatMap(area => lens(area.id, areaText(area, system))),
    ...(quantities.gates ?? []).flatMap(gate => lens(gate.id, gateText(gate, system))),
    ...withoutNumbers(quantities).flatMap(key => lens(key, brokenText(evaluation, key, file, system)))
  ];
}

/** `423.17 sq ft paved, 14.80 cu yd to dig` */
export function jobText({ areas, complete, totals, dig }: JobQuantities, system: System): string {
  if (areas.length === 0) return `no numbers ${complete ? 'yet' : 'while there are errors'}`;
  const missing = complete ? '' : ' · not complete';
  const toDig = printAs('stone-volume', dig.bankVolume, system);
  return `${printAs('area', totals.netArea, system)} paved, ${toDig} to dig${missing}`;
}

/** Things that have no numbers; what is missing of a thing that has some is none of them. */
export function withoutNumbers({ areas, missing }: JobQuantities): Key[] {
  const known = new Set(areas.map(({ id }) => id));
  return missing.filter(key => !known.has(key) && !/[/+]/.test(key));
}

/** The last good figures of a broken area, with the line that broke it; or why there are none. */
function brokenText(evaluation: Evaluation, key: Key, file: string, system: System): string {
  const before = evaluation.numbers!.lastGood.find(({ id }) => id === key);
  if (before === undefined) return noNumbersText(evaluation, key, file);
  return `before ${errorWordsOf(evaluation, key, file)}: ${areaText(before, system)}`;
}

/** Why a thing has no numbers, for who reads it in a file. */
export function noNumbersText(evaluation: Evaluation, key: Key, file: string): string {
  const isKnown = errorBehind(evaluation, key) !== undefined;
  return isKnown ? `no numbers: see ${errorWordsOf(evaluation, key, file)}` : 'no numbers: see the errors';
}

/** `the error in line 12`: the one that took a thing's numbers away; of another file with its name. */
export function errorWordsOf(evaluation: Evaluation, key: Key, file: string): string {
  const error = errorBehind(evaluation, key);
  return errorWords(error === undefined ? {} : { error }, file);
}

/** `102 whole, 12 cut`; of several kinds `333 + 89 whole, 205 cut`, in the order in which the text names them. */
export function unitsText(laying: readonly LayingQuantities[]): string {
  const wholes = laying.map(({ whole }) => whole);
  const sum = (counts: readonly number[]): number => counts.reduce((total, count) => total + count, 0);
  const whole = wholes.length > MOST_KINDS ? sum(wholes) : wholes.join(' + ');
  return `${whole} whole, ${sum(laying.map(({ cut }) => cut))} cut`;
}

/** `clears by 12 mm`, `1/4 in too low`: nothing where a door has no leaf. */
export function gateText({ clearance, trim }: GateQuantities, system: System): string {
  if (clearance === undefined) return 'clearance not known';
  const size = printAs('thickness', Math.abs(clearance), system);
  const cut = trim === undefined || trim <= 0 ? '' : ` · trim ${printAs('thickness', roundedUp(trim, system), system)}`;
  return `${clearance < 0 ? `${size} too low` : `clears by ${size}`}${cut}`;
}

/** More kinds are told together: the line stays short. */
const MOST_KINDS = 3;

export function areaText(area: AreaQuantities, system: System): string {
  const units = area.laying === undefined ? '' : ` · ${unitsText(area.laying)}`;
  // Without a layer, or without heights and layers, there is no dig to speak of yet.
  const dig = area.dig.deepest === 0 ? '' : ` · dig ${printAs('thickness', area.dig.deepest, system)} deep`;
  const slope = area.finish?.fall === undefined ? 'level' : printSlope(area.finish.fall, system);
  const fall = slope === 'level' ? '' : ` · falls ${slope.replace(/^.*\((.*)\)$/, '$1')}`;
  return `${printAs('area', area.netArea, system)}${units}${dig}${fall}`;
}
