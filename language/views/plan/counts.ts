import type { PlanArea, PlanInput, PlanPart, PlanUnit } from './plan-input.ts';

/** How many of one unit a part takes. */
export interface UnitCount {
  readonly unit: PlanUnit;
  readonly whole: number;
  readonly cut: number;
}

/** Units of a part in the order of the job's units. */
export function countsOf({ laid }: PlanPart, units: readonly PlanUnit[]): UnitCount[] {
  return units.flatMap(unit => {
    const whole = laid.wholes.reduce((sum, run) => sum + (run.unit === unit.key ? run.count : 0), 0);
    const cut = laid.cuts.filter(one => one.unit === unit.key).length;
    return whole + cut === 0 ? [] : [{ unit, whole, cut }];
  });
}

/** `98 whole, 14 cut` */
export function countText({ whole, cut }: Pick<UnitCount, 'whole' | 'cut'>): string {
  return cut === 0 ? `${whole} whole, none cut` : `${whole} whole, ${cut} cut`;
}

/** `slab-16, grey` */
export function unitText({ name, colour }: PlanUnit): string {
  return colour === undefined ? name : `${name}, ${colour}`;
}

/** The sentences that stand for the picture where it cannot be seen. */
export function descriptionOf({ areas, units }: PlanInput): string {
  return areas.map(area => `Area ${area.name}: ${partsText(area, units)}.`).join(' ');
}

function partsText({ parts, sides, keptOut }: PlanArea, units: readonly PlanUnit[]): string {
  const laid = parts.flatMap(part =>
    countsOf(part, units).map(count => `${part.name} of ${count.unit.name}, ${countText(count)}`)
  );
  const kept = keptOut.map(({ kind, name }) => `${kind} ${name}`);
  return [`${sides.length} ${sides.length === 1 ? 'side' : 'sides'}`, ...kept, ...laid].join('; ');
}
