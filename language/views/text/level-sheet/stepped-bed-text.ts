import type { Area } from '../../../job/job.ts';
import { type LevelStyle, printDrop } from '../../../measures/print-level.ts';

/** Where units of a border, band or inset are thicker or thinner than those of the field: the bed is stepped there. */
export function steppedBedText({ paving, borders, bands, insets }: Area, style: LevelStyle): string[] {
  const main = paving?.units[0];
  if (main === undefined) return [];
  const others = [
    ...borders.map(({ unit }) => unit),
    ...bands.map(({ unit }) => unit),
    ...insets.flatMap(({ paving: own }) => own.units)
  ];
  const told = new Map(others.map(unit => [unit.name, unit.thickness.value - main.thickness.value]));
  return [...told].flatMap(([name, step]) => {
    const size = printDrop(Math.abs(step), style);
    if (Number.parseFloat(size) === 0) return [];
    return `Under ${name} the bed is screeded ${size} ${step > 0 ? 'lower' : 'higher'} than told, so that all faces lie level.`;
  });
}
