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
