import { stringify } from 'csv-stringify/browser/esm/sync';
import type { Schedule } from '../../schedule/contract.ts';
import { includedText } from '../schedule-days.ts';
import { cautionText, holdText } from '../text/schedule/schedule-text.ts';
import { textCell } from './cell.ts';

const HEADS = [
  'Job',
  'Task',
  'Title',
  'After',
  'Hours',
  'Hours left',
  'Hours of another task',
  'First day',
  'Last day',
  'Start',
  'End',
  'Done',
  'Waits and holds',
  'Cautions'
] as const;

/** A row for each task of all jobs, under its heads; with a mark of its encoding, so that a spreadsheet reads it right. */
export function scheduleCsv(schedules: readonly Schedule[]): string {
  const rows = schedules.flatMap(({ title: job, tasks }) =>
    tasks.map(({ id, title, after, hours, hoursLeft, included, when, done, holds, cautions }) => [
      textCell(job),
      textCell(id),
      textCell(title),
      textCell(after.join(', ')),
      hours,
      hoursLeft,
      textCell(includedText({ included }) ?? ''),
      when?.startDay,
      when?.endDay,
      when?.start,
      when?.end,
      done,
      textCell(holds.map(holdText).join(' ')),
      textCell(cautions.map(cautionText).join(' '))
    ])
  );
  return stringify([[...HEADS], ...rows], { bom: true });
}
