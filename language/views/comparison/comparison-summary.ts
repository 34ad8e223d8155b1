import type { Comparison, NumberChange } from '../../comparing/contract.ts';
import type { JobNumber } from '../../comparing/job-numbers.ts';
import type { System } from '../../job/job.ts';
import { printAs } from '../../measures/print.ts';
import { minorOf, moneyText } from '../../money/money.ts';
import type { Quantity } from '../../quantities/catalogue.ts';
import { signed } from './signed.ts';

/** More is no glance any more. */
const MOST_PARTS = 4;

/** The fewer are shown, the more a part has to weigh. */
interface Part {
  readonly text: string;
  /** The lightest gives way first. */
  readonly weight: number;
}

/**
 * What differs, in the few words that say most: `+1.20 m2, 2 cuts fewer, +61.20 GBP`. Undefined where nothing does. For
 * texts that have all their numbers.
 */
export function comparisonSummary(comparison: Comparison, system: System): string | undefined {
  const { numbers, findings, edits, renamed } = comparison;
  const appeared = findings.filter(({ kind }) => kind === 'appeared' || kind === 'no longer set aside').length;
  const found: readonly (Part | undefined)[] = [
    part(7, measured(numbers, isPavedArea, system)),
    part(2, units(numbers)),
    part(6, counted(differenceOf(numbers, isOf('job-unit', 'cut')), 'cut')),
    part(1, stone(numbers, system)),
    part(5, money(comparison)),
    part(4, appeared === 0 ? undefined : `${howMany(appeared, 'finding')} appeared`),
    part(3, comparison.days && counted(comparison.days.after - comparison.days.before, 'day'))
  ];
  const parts = found.filter(one => one !== undefined);
  const heaviest = [...parts].sort((left, right) => right.weight - left.weight).slice(0, MOST_PARTS);
  if (parts.length > 0) return parts.flatMap(one => (heaviest.includes(one) ? [one.text] : [])).join(', ');
  if (edits.length > 0) return howMany(edits.length, 'edit');
  if (renamed.length > 0) return `${howMany(renamed.length, 'thing')} called otherwise`;
  const cleared = findings.filter(({ kind }) => kind === 'cleared').length;
  return cleared === 0 ? undefined : `${howMany(cleared, 'finding')} cleared`;
}

function part(weight: number, text: string | undefined): Part | undefined {
  return text === undefined ? undefined : { weight, text };
}

type IsWanted = (number: JobNumber) => boolean;

function isOf(owner: Quantity['owner'], key: string): IsWanted {
  return ({ quantity }) => quantity.owner === owner && quantity.key === key;
}

const isPavedArea = isOf('totals', 'netArea');

/** To be bought, where it is told how many break; else what is used. */
function units(numbers: readonly NumberChange[]): string | undefined {
  const isToBuy = isOf('job-unit', 'toBuy');
  const isTold = numbers.some(({ before, after }) => isToBuy((after ?? before)!));
  return counted(differenceOf(numbers, isTold ? isToBuy : isOf('job-unit', 'unitsUsed')), 'unit');
}

/** What bears the paving, by what is ordered where its density is told. */
function stone(numbers: readonly NumberChange[], system: System): string | undefined {
  const isStone = ({ id }: JobNumber): boolean => /^materials\/(?:sub-)?base /.test(id);
  const by = (key: string): string | undefined => {
    const isWanted = isOf('job-material', key);
    return measured(numbers, number => isStone(number) && isWanted(number), system);
  };
  const told = by('mass') ?? by('compactedVolume');
  return told === undefined ? undefined : `${told} of stone`;
}

/** A number that is new or gone was nought, or is. */
function differenceOf(numbers: readonly NumberChange[], isWanted: IsWanted): number {
  return numbers
    .filter(({ before, after }) => isWanted((after ?? before)!))
    .reduce((sum, { before, after }) => sum + (after?.value ?? 0) - (before?.value ?? 0), 0);
}

/** Nothing where it prints as nought. */
function measured(numbers: readonly NumberChange[], isWanted: IsWanted, system: System): string | undefined {
  const first = numbers.map(({ before, after }) => (after ?? before)!).find(isWanted);
  if (first === undefined) return undefined;
  const print = (value: number): string => printAs(first.quantity.print, value, system);
  const difference = differenceOf(numbers, isWanted);
  return print(Math.abs(difference)) === print(0) ? undefined : signed(difference, print);
}

function counted(difference: number, what: string): string | undefined {
  if (difference === 0) return undefined;
  return `${howMany(Math.abs(difference), what)} ${difference < 0 ? 'fewer' : 'more'}`;
}

function howMany(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}

/** What the client pays, where that is told; else the price, else the costs. */
function money({ money: changes }: Comparison): string | undefined {
  const change = ['to-pay', 'price', 'costs'].flatMap(id => changes.find(one => one.id === id) ?? [])[0];
  if (change?.before === undefined || change.after === undefined) return undefined;
  const difference = minorOf(change.after) - minorOf(change.before);
  const amount = moneyText(difference < 0n ? -difference : difference, change.currency);
  return difference === 0n ? undefined : `${difference < 0n ? '−' : '+'}${amount}`;
}
