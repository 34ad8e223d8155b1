import type { Key } from '../../job/job.ts';
import type { JobFigures } from '../../job-figures.ts';
import type { Schedule, Task } from '../../schedule/contract.ts';
import { daysLine } from '../job-lenses.ts';
import { crewText, hoursText, noEndText, startText, taskHoursText, untilText, whenText } from '../schedule-days.ts';
import { cautionText, holdText } from '../text/schedule/schedule-text.ts';
import { type ContentRow, type Contents, group, numberRow, placeOf } from './content-row.ts';

/** Who works, then what is done, then each day on which tasks begin, with them. */
export function scheduleRows(contents: Contents, figures: JobFigures): ContentRow[] {
  const { left } = figures;
  if (left.tasks.length === 0) return [];
  const done = left.tasks.filter(task => task.done !== undefined);
  const open = left.tasks.filter(task => task.done === undefined);
  const days = new Map<number, Task[]>();
  for (const task of open)
    if (task.when !== undefined) days.set(task.when.startDay, [...(days.get(task.when.startDay) ?? []), task]);
  const taskRows = (tasks: readonly Task[]): ContentRow[] => tasks.map(task => taskRow(contents, figures, task));
  const inside = [
    crewRow(contents, left),
    ...group('schedule/done', 'Done', taskRows(done)),
    ...[...days]
      .sort(([one], [other]) => one - other)
      .map(([day, tasks]): ContentRow => {
        const [row] = group(`schedule/day ${day}`, startText(tasks[0]!.when!), taskRows(tasks));
        return { ...row!, kind: 'day' };
      }),
    ...group('schedule/no-day', 'No day', taskRows(open.filter(({ when }) => when === undefined)), noEndText(left))
  ];
  return group('schedule', 'Schedule', inside, daysLine(figures) ?? `${hoursText(left.hoursLeft)} hours of one person`);
}

function crewRow(contents: Contents, { crew }: Schedule): ContentRow {
  const isAssumed = crew.people.assumed !== undefined;
  return numberRow(
    'schedule#crew',
    'Crew',
    `${crewText(crew)}${isAssumed ? ', assumed' : ''}`,
    placeOf(contents, 'job')
  );
}

function taskRow(contents: Contents, figures: JobFigures, task: Task): ContentRow {
  const id = `schedule/${task.id}`;
  const place = placeOfTask(contents, figures, task);
  const when = whenText(task);
  const until = task.when === undefined ? undefined : untilText(task.when);
  const end = task.done === undefined ? until : when;
  return {
    id,
    kind: 'task',
    label: task.title,
    value: [hoursWords(task), ...(end === undefined ? [] : [end])].join(', '),
    ...place,
    inside: [
      numberRow(`${id}#hours`, 'Hours', taskHoursText(task), place),
      ...(when === '' ? [] : [numberRow(`${id}#when`, 'When', when, place)]),
      ...task.holds.map((hold, index) => toMind(`${id}/hold-${index + 1}`, holdText(hold))),
      ...task.cautions.map((caution, index) => toMind(`${id}/caution-${index + 1}`, cautionText(caution)))
    ]
  };
}

function toMind(id: string, label: string): ContentRow {
  return { id, kind: 'caution', label, inside: [] };
}

/** `22.1 h`, `with laying`, `hours not known`. */
function hoursWords(task: Task): string {
  const text = taskHoursText(task);
  return task.hours === undefined ? `hours ${text}` : /^\d/.test(text) ? `${text} h` : text;
}

/** One's own task leads to its line, one of a single area there; others are of the whole job. */
function placeOfTask(
  contents: Contents,
  { priced }: JobFigures,
  { word, title, working }: Task
): Pick<ContentRow, 'place'> {
  const own = word === undefined ? priced.job.work.tasks.find(task => task.title === title)?.key : undefined;
  const areas = new Set(working.map(({ amount }) => amount.area));
  const [area] = areas.size === 1 ? [...areas] : [];
  const key: Key | undefined = own ?? area;
  return key === undefined ? {} : placeOf(contents, key);
}
