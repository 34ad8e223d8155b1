import ical, { ICalEventBusyStatus, ICalEventTransparency } from 'ical-generator';
import type { Schedule, Task } from '../../schedule/contract.ts';
import { dayNumber, dayText } from '../../measures/days.ts';
import { includedText } from '../schedule-days.ts';
import { cautionText, holdText } from '../text/schedule/schedule-text.ts';

/** A schedule whose days are dates, and the file it is of. */
export interface CalendarInput {
  readonly file: string;
  readonly schedule: Schedule;
}

/**
 * A calendar file: each task that is still to be done as an event of whole days, with what it waits for and what to mind.
 * `asOf`, `2026-04-18`, is the day that it was made on; without a first day of the work there is no event.
 */
export function scheduleCalendar(jobs: readonly CalendarInput[], asOf: string): string {
  const stamp = midnight(asOf);
  const calendar = ical({ name: jobs.map(({ schedule }) => schedule.title).join(', '), prodId: PRODUCT });
  for (const { file, schedule } of jobs) {
    const marks = marksOf(schedule.tasks);
    for (const [index, task] of schedule.tasks.entries()) {
      const { start, end } = task.when ?? {};
      if (start === undefined || end === undefined) continue;
      calendar.createEvent({
        id: `${encodeURIComponent(`${file}/${schedule.id}/${marks[index]!}`)}@paving-job-spec`,
        stamp,
        start: midnight(start),
        // The end of an event of whole days is the morning after.
        end: midnight(dayText(dayNumber(end) + 1)),
        allDay: true,
        summary: `${schedule.title}: ${task.title}`,
        description: descriptionOf(task),
        transparency: ICalEventTransparency.TRANSPARENT,
        busystatus: ICalEventBusyStatus.FREE
      });
    }
  }
  return calendar.toString();
}

/** What tells tasks apart also after an edit: those of one's own by their titles, for others may come before them. */
function marksOf(tasks: readonly Task[]): string[] {
  const counts = new Map<string, number>();
  return tasks.map(({ id, word, title }) => {
    const mark = word === undefined ? `task ${title}` : id;
    const count = (counts.get(mark) ?? 0) + 1;
    counts.set(mark, count);
    return count === 1 ? mark : `${mark} ${count}`;
  });
}

const PRODUCT = { company: 'paving-job-spec', product: 'schedule', language: 'EN' };

function midnight(day: string): Date {
  return new Date(`${day}T00:00:00Z`);
}

function descriptionOf({ hoursLeft, included, holds, cautions }: Task): string {
  const isHeld = included.length > 0 && hoursLeft === 0;
  const hours = hoursLeft === undefined || isHeld ? [] : [`${hoursLeft.toFixed(1)} h of one person`];
  return [...hours, includedText({ included }) ?? [], ...holds.map(holdText), ...cautions.map(cautionText)]
    .flat()
    .join('\n');
}
