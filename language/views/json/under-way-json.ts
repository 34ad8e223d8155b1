import type { UnderWay } from '../../comparing/under-way/contract.ts';
import { placesJson } from './places-json.ts';

/** What a change does to a job that is under way, as other programs read it. */
export function underWayJson({ until, built, bought, again, price }: UnderWay): object {
  const { holds, ...work } = again;
  return {
    until,
    built: built.map(({ places, ...part }) => ({ ...part, ...placesJson(places) })),
    bought,
    again: {
      ...work,
      holds: holds.map(({ kind, text, days }) => ({ kind, text, ...(days === undefined ? {} : { days }) }))
    },
    ...(price === undefined ? {} : { price })
  };
}
