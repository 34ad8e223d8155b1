import type { System } from '../../job/job.ts';
import type { AreaQuantities, JobQuantities, LayingQuantities } from '../../quantities/contract.ts';
import type { Colours } from './colours.ts';
import { numberTable } from './number-table.ts';

/** The units of an area: how they lie and what they take, and whether fewer would do. */
export function unitsText(laying: readonly LayingQuantities[], system: System, colours: Colours): string[] {
  const units = numberTable({
    owner: 'laying',
    items: laying,
    leading: [
      { head: 'Unit', cell: ({ unit }) => unit },
      { head: 'Bond', cell: ({ bond }) => bond.replaceAll(', ', '\n') }
    ],
    only: ['whole', 'cut', 'unitsUsed', 'breakage', 'toBuy', 'unitArea'],
    system,
    colours
  });
  return [...units, ...laying.flatMap(one => fewestText(one))];
}

/** The cuts of an area's units, kind by kind; nothing where none is cut. */
export function cuttingText(laying: readonly LayingQuantities[], system: System, colours: Colours): string[] {
  return numberTable({
    owner: 'laying',
    items: laying.filter(({ cut }) => cut > 0),
    leading: [{ head: 'Cutting', cell: ({ unit }) => unit }],
    only: ['cut', 'straightCuts', 'sawLength', 'smallestPiece', 'smallestShare', 'narrowestPiece'],
    system,
    colours
  });
}

/** Running sizes of an area under their own heading. */
export function runningSizesText(
  sizes: NonNullable<AreaQuantities['runningSizes']>,
  system: System,
  colours: Colours
): string[] {
  if (sizes.length === 0) return [];
  return [RUNNING_SIZES, ...numberTable({ owner: 'running-size', items: sizes, leading: [], system, colours })];
}

const RUNNING_SIZES = 'Running sizes, from the face of the first unit (lay ten tight and measure: units differ)';

/** The units to buy for the whole job, and whether fewer would do. */
export function unitsToBuyText({ units, areas }: JobQuantities, system: System, colours: Colours): string[] {
  const all = numberTable({
    owner: 'job-unit',
    items: units,
    leading: [{ head: 'Unit', cell: ({ unit }) => unit }],
    only: ['whole', 'cut', 'unitsUsed', 'breakage', 'keep', 'toBuy', 'sawLength'],
    system,
    colours
  });
  return [...all, ...units.flatMap(unit => fewestText(unit, usedApart(unit.unit, areas)))];
}

/** Breakage or units put by are said: what is bought is more than what is used. */
export function buysMore({ units }: JobQuantities): boolean {
  return units.some(({ toBuy }) => toBuy !== undefined);
}

/** Units of a kind used where every area keeps its offcuts. */
function usedApart(unit: string, areas: readonly AreaQuantities[]): number {
  return areas
    .flatMap(({ laying }) => laying ?? [])
    .filter(laying => laying.unit === unit)
    .reduce((sum, { unitsUsed }) => sum + (unitsUsed ?? 0), 0);
}

type Used = Pick<LayingQuantities, 'unit' | 'cut' | 'unitsUsed' | 'lowerBound' | 'proven'>;

/** Whether fewer units would do, where some are cut. */
function fewestText({ unit, cut, unitsUsed, lowerBound, proven }: Used, apart = unitsUsed): string[] {
  if (cut === 0 || unitsUsed === undefined || lowerBound === undefined) return [];
  const fewest = proven === true ? ', as few as can be' : `; however they are cut, at least ${lowerBound}`;
  const kept = apart === unitsUsed ? '' : `; ${apart} if no offcut leaves its area`;
  return [`${unit}: ${unitsUsed} used${fewest}${kept}.`];
}
