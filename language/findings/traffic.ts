import type { Area } from '../job/job.ts';

/** The heaviest traffic of an area: wheels that turn are those of cars, where no trucks are named. */
export function heaviestTraffic({ traffic }: Pick<Area, 'traffic'>): 'foot' | 'cars' | 'trucks' {
  if (traffic.includes('trucks')) return 'trucks';
  return traffic.some(each => each !== 'foot') ? 'cars' : 'foot';
}
