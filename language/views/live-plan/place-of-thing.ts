import type { Finding, Place } from '../../findings/finding.ts';
import type { Key } from '../../job/job.ts';
import { nameIn } from '../../job/key-names.ts';
import type { Evaluation } from '../../paving.ts';
import { byThing, nearest } from './finding-signs.ts';
import type { LivePlan } from './live-plan.ts';

/** Where a thing of the plan stands in the text; undefined where the text has no place for it. */
export function placeOfThing(evaluation: Evaluation, plan: LivePlan, thing: string): Place | undefined {
  const found = findingsOf(evaluation, plan, thing);
  if (found !== undefined) return found[0];
  const key = placeKeyOf(evaluation, thing);
  return key === undefined ? undefined : evaluation.places.get(key);
}

function findingsOf({ findings }: Evaluation, { things }: LivePlan, thing: string): readonly Finding[] | undefined {
  const keys = new Set(things.map(({ key }) => key));
  return byThing(findings, key => keys.has(key)).get(thing);
}

/** The key of the place that a thing is led to: its own, that of what says it, or the nearest that it belongs to. */
export function placeKeyOf({ places, job }: Pick<Evaluation, 'places' | 'job'>, thing: string): Key | undefined {
  const [area = '', part, unit] = thing.split('/');
  const saying = sayingOf(area, part, unit, job);
  const known = (key: Key): boolean => places.has(key);
  return (saying === undefined ? undefined : nearest(saying, known)) ?? nearest(thing, known);
}

/** The statement that says it, where a thing is no part of what it is named after. */
function sayingOf(
  area: Key,
  part: string | undefined,
  unit: string | undefined,
  job: Evaluation['job']
): Key | undefined {
  if (part === undefined || !area.startsWith('area:')) return undefined;
  if (part === 'cut' || part === 'unit') return layingOf(area, unit ?? '', job);
  if (part.startsWith('fall-')) return `${area}/finish/said`;
  if (part.startsWith('corner-') || part.startsWith('side-')) return `${area}/outline`;
  if (part === 'edges') return undefined;
  return part === 'set-out' ? 'level-sheet/offset-points' : undefined;
}

/** Of a unit that is laid in borders, bands or insets alone the first of them. */
function layingOf(area: Key, unit: string, job: Evaluation['job']): Key {
  const own = job?.areas.find(({ key }) => key === area);
  const is = ({ key }: { readonly key: Key }): boolean => nameIn(key) === unit;
  const paving = `${area}/paving`;
  if (own === undefined || own.paving?.units.some(is)) return paving;
  const course = [...own.borders, ...own.bands].find(border => is(border.unit));
  return course?.key ?? own.insets.find(inset => inset.paving.units.some(is))?.key ?? paving;
}
