import type { Area, System } from '../job/job.ts';
import { printThickness } from '../measures/print.ts';
import type { RawFinding } from './finding.ts';

/** A job whose layers need no dig. `groundAboveLayers`: height of the ground above the underside of the layers, m. */
export function nothingToDig(area: Area, groundAboveLayers: number, system: System): RawFinding[] {
  if (groundAboveLayers > 0 || area.finish === undefined || area.site.ground === undefined) return [];
  return [
    {
      id: 'nothing-to-dig',
      message: `The layers of ${area.name} lie on or above the ground, by ${printThickness(-groundAboveLayers, system)}: nothing is dug, and the fill is not counted.`,
      target: area.key,
      ...(area.finish.above.key === undefined ? {} : { at: area.finish.above.key }),
      values: [{ name: 'underside of the layers above the ground', value: -groundAboveLayers, measure: 'm' }]
    }
  ];
}

/** An area is dug whose height is not said. */
export function finishNotSaid(area: Area, deepest: number, system: System): RawFinding[] {
  if (area.finish !== undefined || deepest === 0) return [];
  return [
    {
      id: 'finish-not-said',
      message: `The area ${area.name} does not say how high it will lie: its dig is counted as if the ground lay level with the finish. Write \`finish ${example(area, system)}\`.`,
      target: area.key
    }
  ];
}

/** Areas are dug, and the height of the ground is not said: told once for all. */
export function groundNotSaid(areas: readonly { area: Area; deepest: number }[], system: System): RawFinding[] {
  const dug = areas.find(({ area, deepest }) => area.site.ground === undefined && deepest > 0);
  if (dug === undefined) return [];
  return [
    {
      id: 'ground-not-said',
      message: `The site does not say how high the ground lies today: each dig is counted as if the ground lay level with the finish. Write \`ground ${example(dug.area, system)}\`.`,
      target: 'site'
    }
  ];
}

function example({ site, finish }: Area, system: System): string {
  const mark = finish?.benchmark ?? site.ground?.benchmark ?? 'door-sill';
  return `${system === 'imperial' ? '3 in' : '80 mm'} below ${mark}`;
}
