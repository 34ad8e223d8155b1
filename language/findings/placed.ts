import type { Key } from '../job/job.ts';
import { FAULTS } from './fault-list.ts';
import type { Finding, Fix, Place, RawEdit, RawFinding, TextChange } from './finding.ts';
import { written, type Gaps } from './gap.ts';

/** Where things stand, and where something that is not said could. */
export interface Where {
  readonly places: ReadonlyMap<Key, Place>;
  readonly gaps: Gaps;
}

/** A finding led to its place: by its own key, else by that of the thing it stands in, else at the job, else at the top of the file. */
export function placed(raw: RawFinding, where: Where, file: string): Finding {
  const { places } = where;
  const fault = FAULTS[raw.id];
  const source = raw.source === undefined ? {} : { source: raw.source };
  return {
    id: raw.id,
    family: raw.rule === undefined ? 'fault' : 'rule',
    severity: raw.severity ?? fault?.severity ?? 'error',
    message: raw.message,
    target: raw.target,
    ...placeOfKey(raw.at ?? raw.target, places, file),
    values: raw.values ?? [],
    ...source,
    ...(raw.rule === undefined ? {} : { rule: placeOfKey(raw.rule, places, file) }),
    related: (raw.related ?? []).map(({ key, message }) => ({ ...placeOfKey(key, places, file), message })),
    fixes: (raw.fixes ?? []).flatMap(fix => fixOf(fix, where))
  };
}

/** Nothing where one of its places is not known. */
function fixOf({ title, edits, safe = false }: NonNullable<RawFinding['fixes']>[number], where: Where): Fix[] {
  const changes = edits.flatMap(edit => changeOf(edit, where) ?? []);
  return changes.length < edits.length ? [] : [{ title, safe, edits: once(changes) }];
}

/** Sides that share a statement share its change. */
function once(changes: readonly TextChange[]): TextChange[] {
  return [...new Map(changes.map(change => [JSON.stringify(change), change])).values()];
}

function changeOf(edit: RawEdit, { places, gaps }: Where): TextChange | undefined {
  if ('gap' in edit) {
    const gap = gaps.get(edit.gap);
    return gap && written(gap, edit.statements);
  }
  const place = places.get('over' in edit ? edit.over : edit.behind);
  if (place === undefined || 'over' in edit) return place && { place, text: edit.text };
  return { place: { ...place, line: place.endLine, column: place.endColumn }, text: edit.text };
}

/** The place of a key, or of the nearest thing that holds it: `area:terrace/base` for `area:terrace/base/thickness`. */
export function placeOfKey(key: Key, places: ReadonlyMap<Key, Place>, file: string): Place {
  for (let at = key; ; at = at.slice(0, at.lastIndexOf('/'))) {
    const place = places.get(at);
    if (place !== undefined) return place;
    if (!at.includes('/')) return places.get('job') ?? { file, line: 1, column: 1, endLine: 1, endColumn: 1 };
  }
}
