import type { RuleInputs } from './rule.ts';

/** Wheels run on the area. */
export function carriesWheels({ area }: RuleInputs): boolean {
  return area.traffic.some(traffic => traffic !== 'foot');
}

export function carriesTrucks({ area }: RuleInputs): boolean {
  return area.traffic.includes('trucks');
}

/** The heaviest traffic in words: `under foot traffic`. */
export function underTraffic(inputs: RuleInputs): string {
  if (carriesTrucks(inputs)) return 'under trucks';
  return carriesWheels(inputs) ? 'under cars' : 'under foot traffic';
}
