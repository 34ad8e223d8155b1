import type { Area } from '../job/job.ts';
import type { RawFinding } from './finding.ts';

/** An area whose units are too many to be laid out one by one. */
export function tooManyUnits(area: Area, about: number, most: number): RawFinding {
  return {
    id: 'too-many-units',
    message: `The area ${area.name} would take about ${about.toLocaleString('en')} units: more than ${most.toLocaleString('en')} are not laid out, so they are not counted.`,
    target: area.key,
    ...(area.paving === undefined ? {} : { at: area.paving.key }),
    values: [
      { name: 'units', value: about, measure: '' },
      { name: 'most', value: most, measure: '' }
    ]
  };
}

/** An area one of whose numbers has too many digits to be written down. */
export function numbersTooLarge(area: Area): RawFinding {
  return {
    id: 'out-of-range',
    message: `The numbers of ${area.name} grow beyond all measure: check its sizes and densities.`,
    target: area.key
  };
}
