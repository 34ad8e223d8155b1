import type { System } from '../../../job/job.ts';
import { printAs } from '../../../measures/print.ts';
import type { Carrying, Caution, HireDays, Hold, Schedule, Task } from '../../../schedule/contract.ts';
import { crewText, hoursText, includedText, noEndText, spanOf, taskHoursText, whenText } from '../../schedule-days.ts';
import { LOCAL_CODES } from '../cautions.ts';
import type { Colours } from '../colours.ts';
import { plainLine } from '../plain-line.ts';
import { table } from '../table.ts';
import { SENTENCE_WIDTH, wrapped } from '../wrapped.ts';
import { hoursLines } from './hours-text.ts';

export interface ScheduleReport {
  readonly file: string;
  readonly schedule: Schedule;
  readonly system: System;
  /** How the hours came about is told as well. */
  readonly workings: boolean;
  readonly colours: Colours;
}

/** Room for a task's title beside its hours and days. */
const TITLE_WIDTH = 50;

/** Tasks with hours and days, what each waits for and what to mind beneath it; then hire, loads and what was assumed. */
export function scheduleText({ file, schedule, system, workings, colours }: ScheduleReport): string {
  const { tasks, title } = schedule;
  const block = (head: string, lines: readonly string[]): string[] =>
    lines.length === 0
      ? []
      : [[colours.strong(head), ...lines.map(line => (line === '' ? '' : `  ${line}`))].join('\n')];
  return [
    [
      `${colours.strong(plainLine(title || 'Job without a title'))} · ${plainLine(file)} · schedule`,
      ...wrapped(summary(schedule), SENTENCE_WIDTH)
    ].join('\n'),
    ...block('Tasks', tasksText(tasks, colours)),
    ...block('Hire', hireText(schedule.hires, colours)),
    ...block('Loads', carryingText(schedule.carrying, system, colours)),
    ...block('Hours not known', noRateText(tasks)),
    ...(workings ? block('Hours, by rates of one person', hoursLines(tasks, system, colours)) : []),
    ...block('Assumed', assumedLines(schedule)),
    LOCAL_CODES
  ].join('\n\n');
}

function summary(schedule: Schedule): string {
  const { crew, hours, hoursLeft, days, daysLeft, begins } = schedule;
  const isBegun = hours - hoursLeft > 0.05;
  const all = isBegun ? ` on ${daysText(days)}, ${hoursText(hoursLeft)} h of them left` : '';
  const span = spanOf(schedule);
  const left = span === undefined ? '' : ` on ${daysText(daysLeft)}, from ${span.first} to ${span.last}`;
  const from =
    begins?.because === 'log' ? ' What is left begins on the day after the last that is logged as done.' : '';
  const noEnd = noEndText(schedule);
  return `${crewText(crew)}. ${hoursText(hours)} hours of one person${all}${left}.${from}${noEnd === undefined ? '' : ` ${plainLine(noEnd)}`}`;
}

function tasksText(tasks: readonly Task[], colours: Colours): string[] {
  const titles = tasks.map(({ title }) => wrapped(plainLine(title), TITLE_WIDTH, '  '));
  // Only where a task is done in part its hours are not those that are left.
  const isPartDone = ({ hours, hoursLeft, done }: Task): boolean => done === undefined && hoursLeft !== hours;
  const withLeft = tasks.some(isPartDone);
  const rows = tasks.map((task, index) => [
    titles[index]!.join('\n'),
    taskHoursText(task),
    ...(withLeft ? [isPartDone(task) ? hoursText(task.hoursLeft ?? 0) : ''] : []),
    whenText(task)
  ]);
  const left = withLeft ? [{ head: 'Of them left', right: true }] : [];
  const [head, ...lines] = table(
    [{ head: 'Task' }, { head: 'Hours', right: true }, ...left, { head: 'When' }],
    rows,
    colours
  );
  let at = 0;
  const parts = tasks.flatMap((task, index) => {
    const own = lines.slice(at, at + titles[index]!.length);
    at += own.length;
    return [...own, ...beneath(task, colours)];
  });
  return head === undefined ? [] : [head, ...parts];
}

/** Room beneath a task, past its indent. */
const BENEATH = 92;

function beneath(task: Task, colours: Colours): string[] {
  const { holds, cautions } = task;
  const included = includedText(task);
  return [
    ...(included === undefined ? [] : indented(included)).map(line => colours.faint(line)),
    ...holds.flatMap(hold => indented(holdText(hold)).map(line => colours.note(line))),
    ...cautions.flatMap(caution => indented(cautionText(caution)).map(line => colours.warning(line)))
  ];
}

function indented(text: string): string[] {
  return wrapped(text, BENEATH, '  ').map(line => `    ${line}`);
}

export function holdText({ kind, text }: Hold): string {
  return `${kind === 'weather' || kind === 'frost' ? 'Hold' : 'Wait'}: ${text}`;
}

export function cautionText({ text, source }: Caution): string {
  const from = source === undefined || source === 'common practice' || source === 'from memory' ? '' : ` (${source})`;
  return `Caution: ${text}${from}`;
}

/** Days of the whole job, as its price counts them, and what of them is left once some are done. */
function hireText(hires: readonly HireDays[], colours: Colours): string[] {
  const isBegun = hires.some(({ days, daysLeft }) => days !== daysLeft);
  return table(
    [
      { head: 'What' },
      { head: 'Days with work', right: true },
      { head: 'First to last', right: true },
      { head: 'Left', right: true }
    ],
    hires.map(({ title, days, span, daysLeft }) => [
      plainLine(title),
      days === 0 ? 'no such work' : daysText(days),
      days === 0 ? '' : daysText(span),
      isBegun && days !== 0 ? leftText(daysLeft) : ''
    ]),
    colours
  );
}

function leftText(days: number | undefined): string {
  return days === 0 ? 'done' : daysText(days);
}

function daysText(days: number | undefined): string {
  return days === undefined ? 'no end' : days === 1 ? '1 day' : `${days} days`;
}

function carryingText(carrying: readonly Carrying[], system: System, colours: Colours): string[] {
  const print = (style: 'stone-volume' | 'mass' | 'run' | 'count', value: number | undefined): string =>
    value === undefined ? '' : printAs(style, value, system);
  return table(
    [
      { head: 'What' },
      { head: 'Loose', right: true },
      { head: 'Mass', right: true },
      { head: 'Barrows', right: true },
      { head: 'Walked with them', right: true },
      { head: 'Truck loads', right: true }
    ],
    carrying.map(({ what, volume, mass, barrows, walk, truckLoads }) => [
      what,
      print('stone-volume', volume),
      print('mass', mass),
      print('count', barrows),
      print('run', walk),
      print('count', truckLoads)
    ]),
    colours
  );
}

function noRateText(tasks: readonly Task[]): string[] {
  const open = tasks.filter(({ noRate }) => noRate.length > 0);
  if (open.length === 0) return [];
  const names = open.flatMap(({ noRate }) => noRate.map(({ name }) => name));
  const example = open[0]!.noRate[0]!;
  const word = open[0]!.id.replace(/\/.*$/, '');
  return [
    ...wrapped(`${[...new Set(names)].join('; ')}: no rate here fits, and they count for nothing in the days.`, 96),
    `Write what you know: rate my-own { of ${word}, takes 1 h ${example.per === 'job' ? 'for the job' : `per ${example.per}`} }`
  ];
}

function assumedLines({ crew, begins, tasks, carrying }: Schedule): string[] {
  const own = [crew.people, crew.hours].flatMap(({ assumed }) => assumed?.because ?? []);
  const isDated = begins !== undefined;
  const rates = tasks.flatMap(({ working }) => working.filter(({ rate }) => rate.assumed !== undefined));
  return [
    ...[...new Set(own)],
    ...(isDated
      ? []
      : ["Day 1 is the first of a crew's week and all days count: say `begins on` and days print as dates."]),
    ...(rates.length === 0
      ? []
      : ['Rates as shipped, most of them common practice: a rate of your own of the same name stands over one.']),
    ...(carrying.some(({ barrows, walk }) => barrows !== undefined && walk === undefined)
      ? ['The barrow run is not told, and walking it counts for nothing: say `access 3 ft wide, barrow run 40 ft`.']
      : []),
    'All work on one task at a time; deliveries are there when they are needed.'
  ].flatMap(line => wrapped(line, 96, '  '));
}
