import type { Area, Layer, System } from '../job/job.ts';
import { printThickness } from '../measures/print.ts';
import { looseVolumeIsKnown, massIsKnown } from '../quantities/layer-volumes.ts';
import type { RawFinding } from './finding.ts';

/**
 * What keeps numbers of layers and dig from being told. `groundAboveLayers`: height of the ground above the
 * underside of the layers, m.
 */
export function layersFindings(area: Area, groundAboveLayers: number, system: System): RawFinding[] {
  return [...nothingToDig(area, groundAboveLayers, system), ...area.layers.flatMap(layer => densityUnknown(layer))];
}

function nothingToDig(area: Area, groundAboveLayers: number, system: System): RawFinding[] {
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

function densityUnknown({ key, role, material }: Layer): RawFinding[] {
  const unknown = [
    ...(massIsKnown(material) ? [] : ['mass']),
    ...(looseVolumeIsKnown(material) ? [] : ['loose volume'])
  ];
  if (unknown.length === 0) return [];
  return [
    {
      id: 'density-unknown',
      message: `The ${unknown.join(' and ')} of the ${role} cannot be told: give ${material.name} a compacted and a loose density.`,
      target: key
    }
  ];
}
