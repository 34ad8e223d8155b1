import { printLength } from '../../measures/print.ts';
import { CAUTIONS } from '../text/cautions.ts';
import type { Colours } from '../text/colours.ts';
import { plainLine } from '../text/plain-line.ts';
import { table } from '../text/table.ts';
import type { SectionInput, SectionStation } from './section-input.ts';

/** What a section shows, in words: heights along it, what it cuts and meets, the layers. */
export function sectionText(input: SectionInput, colours: Colours): string {
  const { title, name, length, system, stations, marks, layers, missing, heights } = input;
  const place = (at: number): string => `${printLength(Math.abs(at), system)}${at < 0 ? ' before the start' : ''}`;
  const columns = [
    { head: 'Finish', of: ({ finish }: SectionStation) => finish },
    { head: 'Ground today', of: ({ ground }: SectionStation) => ground },
    { head: 'Bottom of dig', of: ({ digBottom }: SectionStation) => digBottom }
  ].filter(({ of }) => stations.some(station => of(station) !== undefined));
  const rows = stations.map(station => [
    place(station.at),
    station.name ?? '',
    ...columns.map(({ of }) => of(station) ?? '')
  ]);
  const met = marks.map(({ at, text }) => `  ${plainLine(`at ${place(at)}: ${text}`)}`);
  const heads = [
    { head: 'Along', right: false },
    { head: 'Point', right: false },
    ...columns.map(({ head }) => ({ head, right: true }))
  ];
  return [
    colours.strong(plainLine(`Section ${name} of ${title}`)),
    `${printLength(length, system)} long. ${heights}`.trim(),
    ...(rows.length === 0
      ? []
      : [
          table(
            heads,
            rows.map(row => row.map(plainLine)),
            colours
          ).join('\n')
        ]),
    ...(met.length === 0 ? [] : [[colours.strong('Along the line'), ...met].join('\n')]),
    ...(layers.length === 0
      ? []
      : [[colours.strong('Layers'), ...layers.map(line => `  ${plainLine(line)}`)].join('\n')]),
    ...missing.map(line => `Not shown: ${plainLine(line)}.`),
    CAUTIONS[0]!
  ].join('\n\n');
}
