import { Ajv2020 } from 'ajv/dist/2020.js';
import { parse } from 'csv-parse/sync';
import ICAL from 'ical.js';
import { describe, expect, test } from 'vitest';
import type { ScheduleJson } from '../../language/views/json/schedule-json.ts';
import { SCHEDULE_SCHEMA } from '../../language/views/json/schedule-schema.ts';
import { FAULTY, folder, GOOD, LIBRARY, paving } from './run.ts';

const DATED = GOOD.replace(
  '{ rules north-america }',
  `{
  rules north-america
  currency USD
  dig by hand
  access 4 ft wide, barrow run 40 ft
  crew 2, Monday to Friday
  begins on 2026-04-13
  hire "Plate" 60 USD a day, for base
  task "=cmd|'/c calc'!A1" 2 h, after dig, before base
}`
);

describe('for a reader', () => {
  test('tasks with hours and days, what they wait for and what to mind beneath them', () => {
    const { code, out, err } = paving(['schedule', '-'], { input: DATED });
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toMatch(/^Back terrace · standard input · schedule\n2 people, Monday to Friday, 8 h a day\. /);
    expect(out).toMatch(/^ {2}Task +Hours {2}When$/m);
    expect(out).toMatch(
      /^ {2}Have services located +1\.0 {2}Wed 2026-04-08 to Sun 2026-04-12\n {6}Wait: Ask at least 3/m
    );
    expect(out).toMatch(/^ {2}Set out points, lines and heights +\d\.\d {2}Mon 2026-04-13$/m);
    expect(out).toMatch(/^ {6}Caution: By hand near every line/m);
    expect(out).toMatch(/^ {2}Plate +\d days? +\d days?$/m);
    expect(out).toMatch(/^ {2}Spoil +[\d.]+ cu yd +[\d.]+ short tons +\d+ +\d+ ft$/m);
    expect(out.endsWith('\n\nLocal codes and licensed practice stand over everything here.\n')).toBe(true);
    expect(out.split('\n').filter(line => line.length > 100)).toEqual([]);
  });

  test('without a first day the days are counted', () => {
    const { out } = paving(['schedule', '-'], { input: GOOD });
    expect(out).toMatch(/^ {2}Set out points, lines and heights +\d\.\d {2}day 1 \(Mon\)$/m);
    expect(out).toContain('one person, Monday to Friday, 8 h a day');
    expect(out).toContain('say `begins on`');
  });

  test('how the hours came about, only when asked: in the measures of the job, with the rates as they are written', () => {
    const { out } = paving(['schedule', '--workings', '-'], { input: DATED });
    expect(out).toMatch(/^ {4}dig of terrace +[\d.]+ cu yd +× [\d.]+ h per cu yd +=/m);
    expect(out).toMatch(/^ {2}dig-by-hand: 1\.3 h per m3\. From memory, no source was read/m);
    expect(out.split('\n').filter(line => line.length > 100)).toEqual([]);
    expect(paving(['schedule', '-'], { input: DATED }).out).not.toContain('dig-by-hand');
  });

  test('an error: exit code 1, and the sound areas all the same', () => {
    const { code, out } = paving(['schedule', '-'], { input: FAULTY });
    expect(code).toBe(1);
    expect(out).toContain('Lay terrace, slab-16 in running-bond');
    expect(out).not.toContain('Lay path');
  });
});

describe('as data', () => {
  test('the JSON is what its schema says, and in SI', () => {
    const { code, out } = paving(['schedule', '--format', 'json', '--as-of', '2026-04-01', '-'], { input: DATED });
    expect(code).toBe(0);
    const json = JSON.parse(out) as ScheduleJson;
    const validate = new Ajv2020({ strict: true, allErrors: true }).compile(SCHEDULE_SCHEMA);
    expect(validate(json), JSON.stringify(validate.errors)).toBe(true);
    expect(validate({ ...json, more: 1 })).toBe(false);
    const [job] = json.jobs;
    expect(job).toMatchObject({ begins: '2026-04-13', crew: { people: 2, hours: 8, days: [1, 2, 3, 4, 5] } });
    const dig = job!.tasks.find(({ id }) => id === 'dig')!;
    expect(dig).toMatchObject({ start: '2026-04-13', startDay: 1, after: ['set-out'] });
    expect(dig.working[0]!.rate.from).toMatchObject({ assumed: 'as shipped: dig-by-hand' });
    const own = job!.tasks.find(({ title }) => title.startsWith('=cmd'))!;
    expect(own.working[0]!.rate.from).toEqual({ file: 'standard input', line: 9, column: 3 });
    // Absent, never nought or null: no task is done.
    expect(job!.tasks.filter(task => 'done' in task)).toEqual([]);
  });

  test('a table that is read back cell by cell; no text in it is a formula', () => {
    const { code, out } = paving(['schedule', '--format', 'csv', '-'], { input: DATED });
    expect(code).toBe(0);
    const rows = parse(out, { bom: true, columns: true }) as Record<string, string>[];
    expect(rows.find(({ Task }) => Task === 'dig')).toMatchObject({
      'First day': '1',
      Start: '2026-04-13',
      After: 'set-out'
    });
    expect(rows.find(({ Title }) => Title!.includes('cmd'))!.Title).toBe("'=cmd|'/c calc'!A1");
    const asked = new Set(['First day', 'Last day']);
    const odd = rows.flatMap(row =>
      Object.entries(row).filter(([head, cell]) => !asked.has(head) && /^[=+\-@\t\r]/.test(cell))
    );
    expect(odd).toEqual([]);
    // Days before the work are numbers, not text.
    expect(rows[0]).toMatchObject({ Task: 'locate', 'First day': '-4' });
  });

  test.each([
    ['=1+1', "'=1+1"],
    ['+1', "'+1"],
    ['-1', "'-1"],
    ['@SUM(A1)', "'@SUM(A1)"],
    ['\t=1+1', "' =1+1"],
    ['\tlay by', ' lay by'],
    ['+44, ask first', "'+44, ask first"]
  ])('a task called %j is text in the table', (title, cell) => {
    const input = DATED.replace(/task "[^"]*"/, `task "${title}"`);
    const { code, out } = paving(['schedule', '--format', 'csv', '-'], { input });
    expect(code).toBe(0);
    const titles = (parse(out, { bom: true, columns: true }) as Record<string, string>[]).map(({ Title }) => Title);
    expect(titles).toContain(cell);
    expect(titles.filter(one => /^[=+\-@\t\r]/.test(one!))).toEqual([]);
  });

  test('a task has the same mark in a calendar after an edit that does not touch it', () => {
    const marks = (input: string): Record<string, string> => {
      const { out } = paving(['schedule', '--format', 'calendar', '--as-of', '2026-04-01', '-'], { input });
      const events = new ICAL.Component(ICAL.parse(out) as unknown[]).getAllSubcomponents('vevent');
      return Object.fromEntries(
        events
          .map(event => new ICAL.Event(event))
          .map(({ summary, uid }) => [summary.replace(/^.*?: /, '').replace(/\d.*/, ''), uid])
      );
    };
    const before = marks(DATED);
    const thicker = DATED.replace('base crushed-stone 6 in', 'base crushed-stone 9 in');
    expect(marks(thicker)).toEqual(before);
    expect(marks(DATED.replace('crew 2', 'client "A household"\n  crew 3'))).toEqual(before);
    const more = marks(DATED.replace('  task "', '  task "Move the shed" 3 h, before dig\n  task "'));
    expect(more).toMatchObject(before);
    expect(Object.keys(more)).toHaveLength(Object.keys(before).length + 1);
    expect(new Set(Object.values(more)).size).toBe(Object.keys(more).length);
    expect(Object.values(marks(DATED.replace('"Back terrace"', '"Terrace behind"')))).toEqual(Object.values(before));
  });

  test('a calendar that is read back: whole days, and no other stamp than the day given', () => {
    const args = ['schedule', '--format', 'calendar', '--as-of', '2026-04-01', '-'];
    const { code, out } = paving(args, { input: DATED });
    expect(code).toBe(0);
    expect(paving(args, { input: DATED }).out).toBe(out);
    const calendar = new ICAL.Component(ICAL.parse(out) as unknown[]);
    const events = calendar.getAllSubcomponents('vevent').map(event => new ICAL.Event(event));
    const dig = events.find(({ summary }) => summary.startsWith('Back terrace: Dig by hand'))!;
    expect(dig.startDate.isDate).toBe(true);
    expect(dig.startDate.toString()).toBe('2026-04-13');
    expect(dig.endDate.compare(dig.startDate)).toBe(1);
    expect(dig.description).toContain('Caution: By hand near every line, marked or not; a stated depth is no proof.');
    expect(new Set(events.map(({ uid }) => uid)).size).toBe(events.length);
    const stamps = calendar.getAllSubcomponents('vevent').map(event => String(event.getFirstPropertyValue('dtstamp')));
    expect([...new Set(stamps)]).toEqual(['2026-04-01T00:00:00Z']);
    const { tasks } = (JSON.parse(paving(['schedule', '--format', 'json', '-'], { input: DATED }).out) as ScheduleJson)
      .jobs[0]!;
    expect(events).toHaveLength(tasks.length);
  });

  test('written to a file', () => {
    const cwd = folder({ 'a.paving': DATED });
    expect(paving(['schedule', '--format', 'csv', '-o', 'a.csv', 'a.paving'], { cwd })).toMatchObject({
      code: 0,
      out: ''
    });
  });
});

describe('what it can not do', () => {
  test.each([
    ['without a file', ['schedule'], GOOD, /name a job spec/],
    [
      'an unknown format',
      ['schedule', '--format', 'xml', '-'],
      GOOD,
      /--format can't be xml\. Write human, json, csv or calendar\./
    ],
    ['workings with data', ['schedule', '--workings', '--format', 'csv', '-'], GOOD, /leave out --format csv/],
    [
      'a calendar without a first day',
      ['schedule', '--format', 'calendar', '-'],
      GOOD,
      /write `begins on 2026-04-13` into the job of standard input/
    ],
    ['a library', ['schedule', '-'], LIBRARY, /no file here has a job/]
  ])('%s', (_, args, input, message) => {
    const { code, err } = paving(args, { input });
    expect(code).toBe(2);
    expect(err).toMatch(message);
  });
});
