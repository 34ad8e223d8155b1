import type { Place } from '../findings/finding.ts';
import type { Key } from '../job/job.ts';
import type { Evaluation } from '../paving.ts';
import type { ChangePlaces } from './contract.ts';

/** The place of a key, or of the nearest thing that holds it. */
export function placeWithin(places: Evaluation['places'], key: Key): ReturnType<Evaluation['places']['get']> {
  for (let at = key; ; at = at.slice(0, at.lastIndexOf('/'))) {
    const place = places.get(at);
    if (place !== undefined || !at.includes('/')) return place;
  }
}

export function placesOf(before: Place | undefined, after: Place | undefined): ChangePlaces {
  return { ...(before && { before }), ...(after && { after }) };
}
