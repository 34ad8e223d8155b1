import { help, together, type BlockHelp } from './help.ts';
import { TASK_HELP } from './task-words.ts';

const DAYS = help(
  'Days that are worked: from the one to the other, or named',
  '`Monday to Friday`, `Saturdays and Sundays`, `Monday, Wednesday and Friday`. Left out: Monday to Friday.'
);
const HOURS = help('Hours that are worked on such a day', '`8 h a day`. Left out: 8 h.');
const TASKS = help('Several tasks', '`after dig and drains`');

/** Who works when, and the job's own tasks. */
export const WORK_WORDS: Required<BlockHelp> = {
  statements: {
    crew: help(
      'How many people work, on which days, and for how many hours',
      '`crew 2, Monday to Friday, 8 h a day`, or `crew 1, Saturdays and Sundays`. From it the days of the job are counted.',
      'Left out: the hours are told, and no days.'
    ),
    begins: help(
      'The first day of the work',
      '`begins on 2026-04-13`. Left out: days are counted, and none has a date.'
    ),
    task: help(
      'A task of your own: its hours, and where it comes in',
      '`task "Soakaway" 6 h, after dig, before base`: hours of one person. It may also come after another one of yours: `after "Soakaway"`.'
    )
  },
  within: {
    crew: {
      to: DAYS,
      and: DAYS,
      a: HOURS,
      day: HOURS,
      ...together('Monday Tuesday Wednesday Thursday Friday Saturday Sunday', DAYS),
      ...together('Mondays Tuesdays Wednesdays Thursdays Fridays Saturdays Sundays', DAYS)
    },
    begins: together('on', help('The first day of the work', '`begins on 2026-04-13`')),
    task: {
      ...TASK_HELP,
      after: help('It can begin when these are done', '`after dig and drains`, `after "Soakaway"`'),
      before: help('It has to be done before these begin', '`before base`'),
      and: TASKS
    }
  }
};
