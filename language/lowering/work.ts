import type { Given, Key } from '../job/job.ts';
import { TASK_WORDS, type Crew, type OwnTask, type TaskWord, type WorkWords } from '../job/work.ts';
import * as ast from '../syntax/generated/ast.ts';
import type { Expression } from './amounts.ts';
import { writtenOf, type Context } from './context.ts';
import { checkDay } from './days.ts';
import type { SpecText } from './names.ts';
import { writing } from './said-fix.ts';
import { takingOut } from './said-once.ts';
import { TaskOrder } from './task-order.ts';
import { HOURS_INSTEAD, toldInDays } from './told-in-days.ts';

const HOUR = 3600;

/** Monday first, as days are counted. */
const WEEKDAYS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'] as const;

/** A larger crew lays no garden; a slip of the key. */
const MOST_PEOPLE = 100;

const USUAL_DAYS = [1, 2, 3, 4, 5];
const USUAL_HOURS: Given = {
  value: 8,
  written: '8 h',
  assumed: { because: 'eight hours of work a day; the job does not say', source: 'common practice' }
};

/** Reads who works when, and the tasks of one's own. */
export class WorkLines {
  private readonly context: Context;
  private readonly text: SpecText;

  constructor(context: Context, text: SpecText) {
    this.context = context;
    this.text = text;
  }

  read(items: readonly ast.JobItem[], said: ReadonlyMap<string, ast.JobItem>): Omit<WorkWords, 'rates'> {
    const crew = this.crew(said.get('JobCrew') as ast.JobCrew | undefined);
    const begins = this.begins(said.get('JobBegins') as ast.JobBegins | undefined);
    return {
      ...(crew === undefined ? {} : { crew }),
      tasks: this.tasks(items.filter(ast.isJobTask)),
      ...(begins === undefined ? {} : { begins })
    };
  }

  private begins(item: ast.JobBegins | undefined): string | undefined {
    if (item?.date === undefined) return undefined;
    const { context, text } = this;
    context.place('job/begins', text, item);
    return checkDay(context, text, 'job/begins', item, 'date', item.date) ? item.date : undefined;
  }

  // ---- crew ----

  private crew(item: ast.JobCrew | undefined): Crew | undefined {
    if (item === undefined) return undefined;
    const { context, text } = this;
    const key = context.place('job/crew', text, item);
    const people = this.people(item);
    const [told, again] = item.clauses.filter(isHours);
    if (again !== undefined)
      context.fault(
        text,
        key,
        again,
        'said-twice',
        'The hours of a day are said twice; the first count. Take one out.',
        {
          harmless: true,
          fixes: [takingOut(context, text, again, { like: told! })]
        }
      );
    const hours = told === undefined ? USUAL_HOURS : this.hoursADay(told);
    const named = item.clauses.filter(clause => !isHours(clause)).map(clause => this.days(clause));
    if (people === undefined || hours === undefined || named.includes(undefined)) return undefined;
    const days = [...new Set(named.flatMap(each => each!))].sort();
    return { key, people, days: days.length === 0 ? USUAL_DAYS : days, hours };
  }

  private people(item: ast.JobCrew): Given | undefined {
    const { context, text } = this;
    const node = item.people as Expression | undefined;
    const amount = node && context.amount(text, 'job/crew', node);
    if (amount === undefined) return undefined;
    const written = writtenOf(node!);
    const count = amount.value.valueOf();
    const isCount = Object.keys(amount.dimensions).length === 0 && Number.isInteger(count);
    if (isCount && count >= 1 && count <= MOST_PEOPLE) return context.given(text, 'job/crew/people', node, '');
    const instead =
      count === 0
        ? 'somebody has to do the work. Write `crew 1` or more.'
        : 'people are counted whole. Write how many, such as `crew 2`.';
    return context.fault(text, 'job/crew', node!, 'out-of-range', `\`${written}\` is no crew: ${instead}`, {
      fixes: amount.bare && count > 0 && count < 20 && !isCount ? [writing(`${Math.ceil(count)}`)] : []
    });
  }

  private hoursADay(clause: ast.CrewClause): Given | undefined {
    const { context, text } = this;
    const node = clause.hours as Expression;
    const hours = readHours(context, text, 'job/crew/hours', node);
    if (hours === undefined || hours.value <= 24) return hours;
    return context.fault(text, 'job/crew', node, 'out-of-range', `A day has 24 hours; \`${hours.written}\` is more.`);
  }

  /** Days of one clause, 1 is Monday: `Monday to Friday`, `Saturdays and Sundays`. */
  private days(clause: ast.CrewClause): number[] | undefined {
    if (clause.first !== undefined) {
      const [first, last] = [this.day(clause, 'first', 0, clause.first), this.day(clause, 'last', 0, clause.last)];
      if (first === undefined || last === undefined) return undefined;
      // `Friday to Monday` runs over the end of the week.
      return Array.from({ length: ((last - first + 7) % 7) + 1 }, (_, index) => ((first - 1 + index) % 7) + 1);
    }
    const days = clause.days.map((word, index) => this.day(clause, 'days', index, word));
    return days.includes(undefined) ? undefined : (days as number[]);
  }

  private day(clause: ast.CrewClause, property: string, index: number, word: string | undefined): number | undefined {
    const plain = word?.toLowerCase().replace(/s$/, '');
    const at = WEEKDAYS.findIndex(day => plain === day.toLowerCase() || plain === day.slice(0, 3).toLowerCase());
    if (at >= 0) return at + 1;
    const instead = daysMeant(plain);
    if (instead === undefined) this.context.word(this.text, 'job/crew', clause, [property, index], word, WEEKDAYS);
    else
      this.context.fault(
        this.text,
        'job/crew',
        clause,
        'unknown-word',
        `\`${word!}\` is not known here. Write \`${instead}\`.`,
        { property: [property, index], fixes: [writing(instead)] }
      );
    return undefined;
  }

  // ---- tasks of one's own ----

  private tasks(items: readonly ast.JobTask[]): OwnTask[] {
    const { context, text } = this;
    const nodes = this.firstOfEachTitle(items);
    const keyOf = (title: string): Key | undefined => {
      const index = nodes.findIndex(node => node.title === title);
      return index < 0 ? undefined : `job/task-${index + 1}`;
    };
    const order = new TaskOrder(context, text);
    const tasks = nodes.flatMap((node, index) => {
      const key = context.place(`job/task-${index + 1}`, text, node);
      const hours = node.hours && readHours(context, text, `${key}/hours`, node.hours as Expression);
      const waits = this.waits(key, node, keyOf);
      if (hours === undefined || waits === undefined) return [];
      const task: OwnTask = {
        key,
        title: node.title,
        hours,
        after: words(waits, 'after'),
        before: words(waits, 'before'),
        afterOwn: keys(waits, 'after'),
        beforeOwn: keys(waits, 'before')
      };
      return order.takes(node, task) ? [task] : [];
    });
    const known = new Set(tasks.map(task => task.key));
    return tasks.map(task => ({ ...task, ...own(task, known) }));
  }

  private firstOfEachTitle(items: readonly ast.JobTask[]): ast.JobTask[] {
    const { context, text } = this;
    const first = new Map<string, ast.JobTask>();
    for (const item of items) {
      const other = first.get(item.title);
      if (other === undefined) first.set(item.title, item);
      else
        context.fault(
          text,
          'job',
          item,
          'said-twice',
          `The task \`${item.title}\` is said twice; the first counts. Take one out, or call it otherwise.`,
          {
            property: 'title',
            harmless: true,
            related: [{ node: other, text, message: 'Said first here.' }],
            fixes: [takingOut(context, text, item, { like: other })]
          }
        );
    }
    return [...first.values()];
  }

  private waits(key: Key, node: ast.JobTask, keyOf: (title: string) => Key | undefined): Wait[] | undefined {
    const { context, text } = this;
    const waits = node.clauses.flatMap(({ when, waits }) =>
      waits.map((named): Wait | undefined => {
        if (named.title === undefined) {
          const task = context.word(text, key, named, 'word', named.word, TASK_WORDS);
          return task && { when, task };
        }
        const own = keyOf(named.title);
        if (own !== undefined) return { when, own };
        const titles = this.titlesBut(node);
        return context.fault(
          text,
          key,
          named,
          'unknown-name',
          `No task is called \`"${named.title}"\`. ${titles.length > 0 ? `There are: ${titles.map(title => `\`"${title}"\``).join(', ')}.` : `Write one of: ${TASK_WORDS.join(', ')}.`}`,
          { fixes: titles.length <= MOST_CHOICES ? titles.map(title => writing(`"${title}"`)) : [] }
        );
      })
    );
    return waits.includes(undefined) ? undefined : (waits as Wait[]);
  }

  private titlesBut(node: ast.JobTask): string[] {
    const tasks = (node.$container as ast.Job).items.filter(ast.isJobTask);
    return [...new Set(tasks.filter(task => task !== node).map(task => task.title))];
  }
}

interface Wait {
  readonly when: 'after' | 'before';
  readonly task?: TaskWord;
  readonly own?: Key;
}

/** Of a longer list a person looks up the text. */
const MOST_CHOICES = 4;

function words(waits: readonly Wait[], when: Wait['when']): TaskWord[] {
  return [...new Set(waits.flatMap(wait => (wait.when === when ? (wait.task ?? []) : [])))];
}

function keys(waits: readonly Wait[], when: Wait['when']): Key[] {
  return [...new Set(waits.flatMap(wait => (wait.when === when ? (wait.own ?? []) : [])))];
}

/** A task that could not be read is waited for by nobody. */
function own(
  { afterOwn, beforeOwn }: Pick<OwnTask, 'afterOwn' | 'beforeOwn'>,
  known: ReadonlySet<Key>
): Pick<OwnTask, 'afterOwn' | 'beforeOwn'> {
  const among = (keys: readonly Key[]): Key[] => keys.filter(key => known.has(key));
  return { afterOwn: among(afterOwn), beforeOwn: among(beforeOwn) };
}

/** `Mon-Fri`, `weekdays`, `weekends`, as the language says them. */
function daysMeant(plain: string | undefined): string | undefined {
  if (plain === 'weekday') return 'Monday to Friday';
  if (plain === 'weekend') return 'Saturdays and Sundays';
  const days = plain
    ?.split('-')
    .map(part =>
      WEEKDAYS.find(day => part !== '' && day.toLowerCase().startsWith(part.slice(0, 3)) && part.length >= 3)
    );
  const [first, last] = days ?? [];
  return days?.length === 2 && first !== undefined && last !== undefined ? `${first} to ${last}` : undefined;
}

function isHours({ hours }: ast.CrewClause): boolean {
  return hours !== undefined;
}

/** Working time in hours: a day would be one of the clock. */
function readHours(context: Context, text: SpecText, key: Key, node: Expression): Given | undefined {
  if (toldInDays(context, text, key, node, HOURS_INSTEAD)) return undefined;
  const amount = context.amount(text, key, node);
  if (amount?.bare)
    return context.fault(
      text,
      key,
      node,
      'measure-missing',
      `\`${writtenOf(node)}\` has no measure. Write hours of one person, such as \`8 h\`.`,
      { fixes: ast.isQuantity(node) ? [writing(`${writtenOf(node)} h`)] : [] }
    );
  const time = amount && context.given(text, key, node, 's');
  return time && { ...time, value: time.value / HOUR };
}
