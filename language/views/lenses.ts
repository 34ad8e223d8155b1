import type { Place } from '../findings/finding.ts';
import { printAs } from '../measures/print.ts';
import type { Evaluation } from '../paving.ts';
import type { AreaQuantities } from '../quantities/contract.ts';

/** A headline figure shown above a block. */
export interface Lens {
  readonly place: Place;
  readonly text: string;
}

/** One line for the job and one for each area, at the places in one file. */
export function lensesIn(evaluation: Evaluation, file: string): Lens[] {
  const { job, numbers, places } = evaluation;
  if (job === undefined || numbers === undefined) return [];
  const { quantities } = numbers;
  const lens = (key: string, text: string): Lens[] => {
    const place = places.get(key);
    return place?.file === file ? [{ place, text }] : [];
  };
  const paved = printAs('area', quantities.totals.netArea, job.system);
  const missing = quantities.complete ? '' : ' · not complete';
  return [
    ...lens(
      'job',
      quantities.areas.length === 0
        ? 'no numbers yet'
        : `${paved} paved, ${printAs('stone-volume', quantities.dig.bankVolume, job.system)} to dig${missing}`
    ),
    ...quantities.areas.flatMap(area => lens(area.id, areaText(area, job.system))),
    ...job.missing.flatMap(({ key, name, because }) =>
      lens(key, `no numbers while ${because === name ? 'it' : because} has an error`)
    )
  ];
}

function areaText(area: AreaQuantities, system: 'imperial' | 'metric'): string {
  const laid = area.laying?.[0];
  const units = laid === undefined ? '' : ` · ${laid.whole} whole, ${laid.cut} cut`;
  const dig = ` · dig ${printAs('thickness', area.dig.deepest, system)} deep`;
  return `${printAs('area', area.netArea, system)}${units}${dig}`;
}
