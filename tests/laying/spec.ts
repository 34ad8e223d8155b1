import type { AreaToLay } from '../../language/laying/area-to-lay.ts';
import { layArea, type LaidPart } from '../../language/laying/lay-area.ts';
import { drain } from '../../language/paving.ts';
import { areaToLay } from '../../language/quantities/area-to-lay.ts';
import { evaluated } from '../language/in-memory.ts';

const UNITS = `
unit block     { size 200 x 100 x 60 mm }
unit plank-300  { size 300 x 100 x 60 mm }
unit slab-200  { size 200 x 200 x 60 mm }
unit slab-100  { size 100 x 100 x 60 mm }
unit slab-600  { size 600 x 600 x 60 mm }
unit plank-600 { size 600 x 300 x 60 mm }
unit slab-300  { size 300 x 300 x 60 mm }
unit hex        { size 200 x 173.205 x 60 mm, shape hexagon }`;

/** What laying the areas of a text goes by, as read from it; names of units as above. */
export async function readAreas(text: string): Promise<AreaToLay[]> {
  const { job, findings } = await evaluated(`job "Trial field" { rules britain }\n${UNITS}\n${text}`);
  const wrong = findings.filter(({ severity }) => severity === 'error');
  if (wrong.length > 0) throw new Error(wrong.map(({ line, message }) => `${line}: ${message}`).join('\n'));
  const areas = job!.areas;
  const byKey = new Map(areas.map(area => [area.key, area]));
  return areas.flatMap(area => areaToLay(area, byKey) ?? []);
}

/** The field of an area, laid. */
export function fieldOf(area: AreaToLay): LaidPart {
  const laid = drain(layArea(area));
  if (!('parts' in laid)) throw new Error(`${laid.part} could not be laid`);
  return laid.parts.find(({ part }) => part === 'field')!;
}

/** How many lie whole, and the areas of the pieces in square metres, smallest first; by unit. */
export function countsOf({ laid: { wholes, cuts } }: LaidPart): Record<string, { whole: number; pieces: number[] }> {
  const counts: Record<string, { whole: number; pieces: number[] }> = {};
  const of = (unit: string): { whole: number; pieces: number[] } =>
    (counts[unit.replace('unit:', '')] ??= { whole: 0, pieces: [] });
  for (const { unit, count } of wholes) of(unit).whole += count;
  for (const { unit, pieces } of cuts) of(unit).pieces.push(...pieces.map(({ area }) => area));
  for (const count of Object.values(counts)) count.pieces.sort((a, b) => a - b);
  return counts;
}
