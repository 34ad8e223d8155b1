import type { Country, System } from '../job/job.ts';

/**
 * Least falls that are usual: 1/4 in per ft (association guidance on clay units; 1:50 where metres are shown); about 1:60
 * (public texts on paving in Britain; in Ireland as there, common practice); 2.5 % (German guidance, from memory).
 */
const USUAL_FALL: Readonly<Record<Exclude<Country, 'north-america'>, string>> = {
  britain: '1:60',
  ireland: '1:60',
  'continental-europe': '1:40'
};

/** How paving usually falls, as one writes it there. */
export function usualFall(country: Country, system: System): string {
  if (country !== 'north-america') return USUAL_FALL[country];
  return system === 'imperial' ? '1/4 in per ft' : '1:50';
}
