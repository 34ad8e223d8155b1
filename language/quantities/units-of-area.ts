import type { Area, Key, Unit } from '../job/job.ts';
import type { KindOfUnit } from './cuts-stage.ts';

/** What lies in an area besides its paving. */
type Laid = Pick<Area, 'paving' | 'insets' | 'borders' | 'bands'>;

/** All kinds of units that are laid in an area, each once: those of its paving first. */
export function unitsOf({ paving, insets, borders, bands }: Laid): readonly Unit[] {
  const all = [paving, ...insets.map(inset => inset.paving)].flatMap(one => one?.units ?? []);
  const edging = [...borders, ...bands].map(({ unit }) => unit);
  return [...new Map([...all, ...edging].map(unit => [unit.key, unit])).values()];
}

export function unitNamed(area: Laid, key: Key): Unit {
  return unitsOf(area).find(unit => unit.key === key)!;
}

export function kindOfUnit({ key, shape, length, width, finishedEdge }: Unit): KindOfUnit {
  return { key, shape, length: length.value, width: width.value, finishedEdge };
}
