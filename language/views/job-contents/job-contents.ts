import type { ShownFigures } from '../../job-figures.ts';
import { printAs } from '../../measures/print.ts';
import type { Evaluation } from '../../paving.ts';
import type { JobQuantities } from '../../quantities/contract.ts';
import { costLine, daysLine, errorWords } from '../job-lenses.ts';
import { jobText } from '../lenses.ts';
import { LOCAL_CODES } from '../text/cautions.ts';
import { areaRows } from './area-contents.ts';
import { asBefore, asPartial, type ContentRow, type Contents, group, numberRow, placeOf } from './content-row.ts';
import { findingRows } from './findings-contents.ts';
import { orderRows } from './order-contents.ts';
import { scheduleRows } from './schedule-contents.ts';
import { siteRows } from './site-contents.ts';

/**
 * What a job holds, one within the other: what is paved and dug, its cost and days, areas, what stands in them, what to buy,
 * findings and days. Undefined of a library. While the text has errors, what was told before them is marked.
 */
export function jobContents(evaluation: Evaluation, figures: ShownFigures | undefined): ContentRow | undefined {
  const { job, numbers, texts } = evaluation;
  if (job === undefined || numbers === undefined) return undefined;
  const { quantities } = numbers;
  const contents: Contents = { evaluation, job, file: texts[0]!.file };
  const place = placeOf(contents, 'job');
  const told = figures === undefined ? [] : figuresRows(contents, figures);
  return {
    id: 'job',
    kind: 'job',
    label: job.title || 'Job without a title',
    value: jobText(quantities, job.system),
    ...place,
    inside: [
      ...wholeRows(contents, quantities),
      ...told.filter(({ kind }) => kind === 'number'),
      ...group('areas', 'Areas', areaRows(contents)),
      ...siteRows(contents, quantities),
      ...told.filter(({ id }) => id === 'order'),
      ...findingRows(contents),
      ...told.filter(({ id }) => id === 'schedule'),
      { id: 'local-codes', kind: 'caution', label: LOCAL_CODES, inside: [] }
    ]
  };
}

function wholeRows(contents: Contents, { areas, complete, totals, dig }: JobQuantities): ContentRow[] {
  if (areas.length === 0) return [];
  const { system } = contents.job;
  const place = placeOf(contents, 'job');
  const rows = [
    numberRow('job#paved', 'Paved', printAs('area', totals.netArea, system), place),
    numberRow('job#dig', 'To dig', printAs('stone-volume', dig.bankVolume, system), place)
  ];
  return complete ? rows : rows.map(asPartial);
}

/** Cost and days, the order and the schedule: from before an error they are marked, of a part of the job they say so. */
function figuresRows(contents: Contents, { figures, broken }: ShownFigures): ContentRow[] {
  const [cost, days] = [costLine(figures), daysLine(figures)];
  const place = placeOf(contents, 'job');
  const rows = [
    ...(cost === undefined ? [] : [numberRow('job#cost', 'Cost', cost, place)]),
    ...(days === undefined ? [] : [numberRow('job#days', 'Days', days, place)]),
    ...orderRows(contents, figures.quantities),
    ...scheduleRows(contents, figures)
  ];
  if (broken === undefined) return rows;
  if (broken.isBefore) return rows.map(row => asBefore(row, `before ${errorWords(broken, contents.file)}`));
  return rows.map(asPartial);
}
