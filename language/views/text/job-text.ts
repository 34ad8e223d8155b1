import type { AcceptedFinding, Finding, Place } from '../../findings/finding.ts';
import type { Job, System } from '../../job/job.ts';
import type { JobNumbers, JobQuantities } from '../../quantities/contract.ts';
import type { PricedJob } from '../../priced-job.ts';
import type { VariantEvaluation } from '../../variants.ts';
import type { CuttingAdvice } from '../../quantities/cutting-advice.ts';
import { acceptedCount } from './accepted-text.ts';
import { areaText } from './area-text.ts';
import { assumedText } from './assumed-text.ts';
import type { Colours } from './colours.ts';
import { cutsText } from './cuts-text.ts';
import { countsText, findingLine } from './findings-text.ts';
import { missingText } from './missing-text.ts';
import { numberRows, numberTable } from './number-table.ts';
import { plainLine } from './plain-line.ts';
import { startsText } from './starts-text.ts';
import { buysMore, unitsToBuyText } from './units-text.ts';
import { columnOf } from '../variant-rows.ts';
import { variantsText } from './variants-text.ts';
import { workingsText } from './workings-text.ts';

export interface JobReport {
  readonly file: string;
  readonly job: Job;
  readonly numbers: JobNumbers;
  readonly findings: readonly Finding[];
  readonly accepted: readonly AcceptedFinding[];
  readonly placeOf: (key: string) => Place;
  readonly workings: boolean;
  /** The cut lists are told, and what the pieces come out of. */
  readonly cuts: boolean;
  /** How there could be less to cut, where that is asked for. */
  readonly starts?: readonly CuttingAdvice[];
  /** The job as its variants have it; then its own price stands beside theirs. */
  readonly variants?: readonly VariantEvaluation[];
  readonly priced?: PricedJob;
  readonly colours: Colours;
}

/** All numbers of a job in its own measures; what has none is named, and so is what was assumed. */
export function jobText(report: JobReport): string {
  const { file, job, numbers, findings, accepted, placeOf, workings, cuts, starts, colours } = report;
  const { quantities } = numbers;
  const { system } = job;
  const lines = (head: string, all: readonly string[]): string[] =>
    all.length === 0 ? [] : [[colours.strong(head), ...all.map(line => (line === '' ? '' : `  ${line}`))].join('\n')];
  const books = job.rulebooks.map(({ id }) => id).join(', ');
  const rules = books === '' ? 'no rules named' : `rules ${books}`;
  const whole = numberRows(
    [
      ['totals', quantities.totals],
      ['job-dig', quantities.dig]
    ],
    system,
    colours
  );
  return [
    `${colours.strong(plainLine(job.title || 'Job without a title'))} · ${plainLine(file)} · ${rules}`,
    ...quantities.areas.map(area => areaText(area, system, colours)),
    ...lines(
      'Whole job',
      quantities.areas.length === 0 ? [] : [...whole, ...togetherText(quantities, system, colours)]
    ),
    ...(cuts ? cutsText(numbers, job, colours) : []),
    ...lines('Variants', sideBySide(report)),
    ...lines('Better starts', starts === undefined ? [] : startsText(job, starts, colours)),
    ...lines('No numbers', missingText(quantities.missing, job.missing)),
    ...lines('Assumed', assumedText(numbers.workings, system, colours)),
    ...(workings && quantities.areas.length > 0
      ? [workingsText({ quantities, workings: numbers.workings, system, placeOf, colours })]
      : []),
    ...lines(`Findings: ${countsText(findings) ?? 'none'}`, [
      ...findings.map(findingLine),
      ...[acceptedCount(accepted) ?? []].flat()
    ])
  ].join('\n\n');
}

function sideBySide({ job, numbers, findings, priced, variants = [], colours }: JobReport): string[] {
  if (variants.length === 0) return [];
  const written = { name: 'as written', numbers, findings, ...(priced === undefined ? {} : { priced }) };
  return variantsText(written, variants.map(columnOf), job.system, colours);
}

/** Materials, units and edging of all areas together, a table each. */
function togetherText(quantities: JobQuantities, system: System, colours: Colours): string[] {
  const { areas, materials, edging } = quantities;
  // Of one area alone the sums are its own numbers, but for what is bought besides.
  if (areas.length < 2) return buysMore(quantities) ? ['', ...unitsToBuyText(quantities, system, colours)] : [];
  const tables = [
    numberTable({
      owner: 'job-material',
      items: materials,
      leading: [
        { head: 'Layer', cell: ({ role }) => role },
        { head: 'Material', cell: ({ material }) => material }
      ],
      system,
      colours
    }),
    unitsToBuyText(quantities, system, colours),
    numberTable({
      owner: 'job-edging',
      items: edging,
      leading: [{ head: 'Edging', cell: ({ material }) => material }],
      system,
      colours
    })
  ];
  return tables.filter(table => table.length > 0).flatMap(table => ['', ...table]);
}
