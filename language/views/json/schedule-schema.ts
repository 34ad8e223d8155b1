import { DAY, DIALECT, list, number, object, one, type Schema, text, whole } from './schema.ts';
import { SCHEMA_NUMBER } from './schema-number.ts';

const day = (description: string): Schema => ({ type: 'string', pattern: DAY, description });
const count = (description: string): Schema => ({ type: 'integer', minimum: 0, description });
const STATUS = one('read', 'quoted', 'practice', 'memory');

const amount = object({
  name: text('What it is'),
  value: number('How much, in SI of `per`', 'measure as named'),
  per: one('m3', 'm2', 'm', 'kg', 'piece', 'job'),
  'pointer?': text('Where the quantities of the job hold it: JSON pointer that starts at the job'),
  'area?': text('Area'),
  'side?': text('Side that it stands along')
});

const line = object(
  {
    amount,
    takes: number('Hours of one person for one of it', 'h'),
    rate: object({
      name: text('Rate'),
      written: text('As written'),
      source: text('Where it is from'),
      status: STATUS,
      from: {
        oneOf: [
          object({ file: text('File'), line: whole('Line, from 1'), column: whole('Column, from 1, in UTF-16 units') }),
          object({ assumed: text('Why it is taken so'), 'source?': text('Where the value is from') })
        ]
      }
    }),
    hours: number('Amount times rate', 'h'),
    'done?': day('Day on which it was logged as done')
  },
  'How hours came about'
);

const task = object({
  id: text('Name within the job'),
  title: text('What is done, in the measures of the job'),
  after: list(text('Task before it')),
  'hours?': number('Hours of one person; absent where no rate tells them', 'h'),
  'hoursLeft?': number('Of them those of what is not logged as done', 'h'),
  'startDay?': { type: 'integer', description: 'First day; every calendar day counts from 1, less is before the work' },
  'endDay?': { type: 'integer', description: 'Last day' },
  'workDays?': count('Days with work on it'),
  'start?': day('First day, where the first of the work is known'),
  'end?': day('Last day'),
  'done?': day('Day on which the last of it was logged as done'),
  'hold?': list(
    object({
      kind: one('lead', 'concrete', 'second-sweeping', 'weather', 'frost'),
      text: text('What it waits for'),
      'days?': count('Days that pass before it'),
      source: text('Where that is from'),
      status: STATUS
    })
  ),
  cautions: list(object({ id: text('Name'), text: text('What to mind'), 'source?': text('Where that is from') })),
  working: list(line),
  noRate: list(amount, 'What no rate tells the hours of'),
  included: list(
    object({
      name: text('What it is'),
      rate: text('Rate of another task that holds its time'),
      task: text('That task, as rates name it')
    }),
    'What takes no time of its own'
  )
});

const job = object({
  id: text('Name within the file'),
  title: text('Title of the job'),
  crew: object({
    people: whole('People'),
    hours: number('Hours of a working day', 'h'),
    days: list({ type: 'integer', minimum: 1, maximum: 7, description: 'Day that is worked, 1 is Monday' })
  }),
  'begins?': day('First day of what is left to do'),
  days: count('Days with work on them, as if nothing were done yet'),
  daysLeft: count('Days with work on them, of what is left'),
  'noEnd?': object(
    { from: text('First task without days'), years: whole('Years that have no day for it') },
    'Work that does not end: hours are told, and no days from there on'
  ),
  hours: number('Hours of all tasks', 'h'),
  hoursLeft: number('Of them those of what is left', 'h'),
  tasks: list(task, 'In the order of the trade'),
  hires: list(
    object({
      id: text('Name within the job'),
      title: text('What is hired'),
      tasks: list(text('Task that it is for')),
      'days?': count('Days on which these go on, as if nothing were done yet; absent where the work has no end'),
      'span?': count('Calendar days from the first to the last of them'),
      'daysLeft?': count('Days on which these go on, of what is left')
    })
  ),
  carrying: list(
    object({
      what: text('What goes out or comes in'),
      'volume?': number('Loose', 'm3'),
      'mass?': number('Mass', 'kg'),
      'barrows?': count('Barrow loads'),
      'walk?': number('Walked with them, there and back', 'm'),
      'truckLoads?': count('Truck loads')
    })
  )
});

/** JSON Schema of `schedule`. */
export const SCHEDULE_SCHEMA: Schema = {
  $schema: DIALECT,
  title: 'Schedules of paving jobs',
  description: 'In SI, hours of one person and calendar days. A key that cannot be told is absent.',
  ...object({
    schema: { const: SCHEMA_NUMBER },
    tool: text('Program and version'),
    asOf: day('Day it is as of'),
    jobs: list(job)
  })
};
