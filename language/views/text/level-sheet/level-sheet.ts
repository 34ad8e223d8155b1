import type { Job } from '../../../job/job.ts';
import { printLength } from '../../../measures/print.ts';
import { type LevelDatum, levelStyleOf, printLevelWithMark } from '../../../measures/print-level.ts';
import type { JobNumbers } from '../../../quantities/contract.ts';
import { CAUTIONS } from '../cautions.ts';
import type { Colours } from '../colours.ts';
import { missingText } from '../missing-text.ts';
import { plainLine } from '../plain-line.ts';
import { table } from '../table.ts';
import { edgeHeightsText } from './edges-text.ts';
import { dropsText, levelsText } from './levels-text.ts';
import { settingOutText } from './setting-out-text.ts';
import { siteText } from './site-text.ts';
import { steppedBedText } from './stepped-bed-text.ts';

/** The sheet for the site: where points lie, every height layer by layer, what is met on the way. */
export function levelSheet(file: string, job: Job, numbers: JobNumbers, colours: Colours): string {
  const { quantities } = numbers;
  const { system, datum, levelSheet: words } = job;
  const style = words.printed ?? levelStyleOf(system);
  const block = (head: string, lines: readonly string[]): string[] =>
    lines.length === 0
      ? []
      : [[colours.strong(head), ...lines.map(line => (line === '' ? '' : `  ${line}`))].join('\n')];
  const settingOut = settingOutText(job, colours).flatMap((lines, index) => (index === 0 ? lines : ['', ...lines]));
  const title = `${colours.strong(plainLine(job.title || 'Job without a title'))} · ${plainLine(file)} · level sheet`;
  if (datum === undefined)
    return [title, ...block('Setting out', settingOut), NO_BENCHMARK, CAUTIONS.join('\n')].join('\n\n');
  const areas = quantities.areas.flatMap(area => {
    if (area.levels === undefined) return block(`Area ${area.name}`, [`No heights: its finish is not said.`]);
    const edges = edgeHeightsText(area.edges, datum, style, system, colours);
    const offsets = table(
      [
        { head: 'Offset point' },
        { head: 'From the corner', right: true },
        { head: 'Finish prolonged', right: true },
        { head: 'String there', right: true }
      ],
      (area.offsetPoints ?? []).map(point => [
        point.at,
        printLength(point.fromCorner, system),
        printLevelWithMark(point.finish, datum, style),
        point.string === undefined ? '' : printLevelWithMark(point.string, datum, style)
      ]),
      colours
    );
    const lowered = job.areas.find(({ key }) => key === area.id);
    const stepped = lowered === undefined ? [] : steppedBedText(lowered, style);
    const drops = dropsText(area.levels, style, system, colours);
    const more =
      area.levelsLeftOut === undefined
        ? []
        : [`${area.levelsLeftOut} more places are left out: say a wider \`every\` in the level sheet.`];
    const parts = [levelsText(area.levels, datum, style, system, colours), more, stepped, drops, edges, offsets];
    const lines = parts.filter(part => part.length > 0).flatMap((part, index) => (index === 0 ? part : ['', ...part]));
    return block(`Area ${area.name}: ${heightsAre(datum)}`, lines);
  });
  const site = siteText(quantities, job, { datum, style, system, colours });
  return [
    title,
    ...(job.notes.length === 0 ? [] : [job.notes.map(plainLine).join('\n')]),
    ...block('Setting out', settingOut),
    ...areas,
    ...site.flatMap(([head, lines]) => block(head, lines)),
    ...block('No numbers', missingText(quantities.missing, job.missing)),
    CAUTIONS.join('\n')
  ].join('\n\n');
}

function heightsAre({ benchmark, fromNought }: LevelDatum): string {
  return fromNought ? `heights as ${benchmark} counts them` : `heights below or above ${benchmark}`;
}

const NO_BENCHMARK =
  'No heights: the site names no benchmark. Write `benchmark door-sill` into `site`, and hang heights from it.';
