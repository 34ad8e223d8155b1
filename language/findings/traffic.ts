import type { Area } from '../job/job.ts';

interface Used {
  readonly area: Pick<Area, 'traffic'>;
}

/** Wheels run on the area. */
export function carriesWheels({ area }: Used): boolean {
  return area.traffic.some(traffic => traffic !== 'foot');
}

export function carriesTrucks({ area }: Used): boolean {
  return area.traffic.includes('trucks');
}

/** The heaviest traffic in words: `under foot traffic`. */
export function underTraffic(inputs: Used): string {
  if (carriesTrucks(inputs)) return 'under trucks';
  return carriesWheels(inputs) ? 'under cars' : 'under foot traffic';
}
