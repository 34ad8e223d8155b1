import type { Place } from '../../findings/finding.ts';
import type { System } from '../../job/job.ts';
import { printAs } from '../../measures/print.ts';
import type { From, JobQuantities, Workings } from '../../quantities/contract.ts';
import { printWorkingValue } from '../working-value.ts';
import type { Colours } from './colours.ts';
import { labelOf, styleOf } from './labels.ts';
import { table } from './table.ts';

export interface WorkingsInput {
  readonly quantities: JobQuantities;
  readonly workings: Workings;
  readonly system: System;
  readonly placeOf: (key: string) => Place;
  readonly colours: Colours;
}

/** How each number came about: its formula, then each value in it and where that is from. */
export function workingsText({ quantities, workings, system, placeOf, colours }: WorkingsInput): string {
  const fromText = (from: From): string => {
    if ('pointer' in from) return `see ${labelOf(from.pointer, quantities)}`;
    if ('assumed' in from) return `assumed: ${from.assumed}`;
    if ('shape' in from) return `measured on ${from.shape.split('+').map(thingOf).join(' and ')}`;
    const { file, line, column } = placeOf(from.key);
    return `${file}:${line}:${column}`;
  };
  const all = Object.entries(workings).map(([pointer, { formula, values }]) => {
    const [first] = values;
    // What is only measured needs no formula.
    if (first?.name === formula) {
      const style = styleOf(pointer, quantities);
      const printed = style === undefined ? printWorkingValue(first, system) : printAs(style, first.value, system);
      return `  ${labelOf(pointer, quantities)}\n    ${printed}, ${fromText(first.from)}`;
    }
    const rows = values.map(value => [value.name, printWorkingValue(value, system), fromText(value.from)]);
    const lines = table([{ head: '' }, { head: '', right: true }, { head: '' }], rows, colours);
    return [
      `  ${labelOf(pointer, quantities)}`,
      `    = ${formula}`,
      ...lines.map(line => colours.faint(`      ${line}`))
    ].join('\n');
  });
  return [colours.strong('Workings, with values rounded as above'), ...all].join('\n\n');
}

/** `terrace, A to B` for `area:terrace/edges/A to B`. */
function thingOf(key: string): string {
  if (key === 'job') return 'all areas';
  return key
    .replace(/^[a-z-]+:/, '')
    .replace('/edges/', ', ')
    .replaceAll('/', ', ');
}
