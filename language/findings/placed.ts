import type { Key } from '../job/job.ts';
import { FAULTS } from './fault-list.ts';
import type { Finding, Fix, Place, RawFinding } from './finding.ts';

/** A finding led to its place: by its own key, else by that of the thing it stands in, else at the job, else at the top of the file. */
export function placed(raw: RawFinding, places: ReadonlyMap<Key, Place>, file: string): Finding {
  const fault = FAULTS[raw.id];
  const source = raw.source === undefined ? {} : { source: raw.source };
  return {
    id: raw.id,
    family: fault === undefined ? 'rule' : 'fault',
    severity: raw.severity ?? fault?.severity ?? 'error',
    message: raw.message,
    target: raw.target,
    ...placeOfKey(raw.at ?? raw.target, places, file),
    values: raw.values ?? [],
    ...source,
    related: (raw.related ?? []).map(({ key, message }) => ({ ...placeOfKey(key, places, file), message })),
    fixes: fixesOf(raw, places)
  };
}

function fixesOf({ fix }: RawFinding, places: ReadonlyMap<Key, Place>): Fix[] {
  const place = fix && places.get(fix.at);
  return place === undefined ? [] : [{ title: fix!.title, safe: false, edits: [{ place, text: fix!.text }] }];
}

/** The place of a key, or of the nearest thing that holds it: `area:terrace/base` for `area:terrace/base/thickness`. */
export function placeOfKey(key: Key, places: ReadonlyMap<Key, Place>, file: string): Place {
  for (let at = key; ; at = at.slice(0, at.lastIndexOf('/'))) {
    const place = places.get(at);
    if (place !== undefined) return place;
    if (!at.includes('/')) return places.get('job') ?? { file, line: 1, column: 1, endLine: 1, endColumn: 1 };
  }
}
