import type { Given, Key } from '../job/job.ts';
import type { Disposal, Extra, Hire, MoneyWords, Share, ShareOf } from '../job/money-lines.ts';
import { kindOf, measureText } from '../measures/measures.ts';
import * as ast from '../syntax/generated/ast.ts';
import { TAX_OF_JOB } from '../syntax/words.ts';
import type { Expression } from './amounts.ts';
import { eachIn, moneyOf, type Charge, type Charges } from './charges.ts';
import { NOT_NEGATIVE, writtenOf, type Context } from './context.ts';
import { checkDay } from './days.ts';
import type { SpecText } from './names.ts';
import { writing } from './said-fix.ts';
import { saidOnce, takingOut } from './said-once.ts';
import { findTasks } from './tasks.ts';
import { toldInDays } from './told-in-days.ts';

const HOUR = 3600;
const DAY = 24 * HOUR;
const WEEK = 7 * DAY;

const SHARES_OF = ['materials', 'labour', 'costs'] as const satisfies readonly ShareOf[];

const HIRED_BY = ['day', 'week'] as const satisfies readonly Hire['by'][];

/** Reads what the job says of money besides the prices of what is bought. */
export class MoneyLines {
  private readonly context: Context;
  private readonly text: SpecText;
  private readonly charges: Charges;

  constructor(context: Context, text: SpecText, charges: Charges) {
    this.context = context;
    this.text = text;
    this.charges = charges;
  }

  read(items: readonly ast.JobItem[], said: ReadonlyMap<string, ast.JobItem>): MoneyWords {
    const labour = this.labour(said.get('JobLabour') as ast.JobLabour | undefined);
    const disposal = this.disposal(said.get('JobDisposal') as ast.JobDisposal | undefined);
    const contingency = this.contingency(said.get('JobContingency') as ast.JobContingency | undefined);
    const overhead = this.share(said.get('overhead') as ast.JobShare | undefined);
    const profit = this.profit(said);
    const tax = this.tax(said.get('tax') as ast.JobShare | undefined);
    const quote = this.quote(said.get('JobQuote') as ast.JobQuote | undefined);
    const client = (said.get('JobClient') as ast.JobClient | undefined)?.client?.trim();
    return {
      ...(labour === undefined ? {} : { labour }),
      hires: items.filter(ast.isJobHire).flatMap((item, index) => this.hire(item, index) ?? []),
      ...(disposal === undefined ? {} : { disposal }),
      extras: items.filter(ast.isJobExtra).flatMap((item, index) => this.extra(item, index) ?? []),
      ...(contingency === undefined ? {} : { contingency }),
      ...(overhead === undefined ? {} : { overhead }),
      ...(profit === undefined ? {} : { profit }),
      ...(tax === undefined ? {} : { tax }),
      excludes: items.filter(ast.isJobExcludes).flatMap((item, index) => this.excluded(item, index)),
      ...(client === undefined || client === '' ? {} : { client }),
      ...(quote === undefined ? {} : { quote })
    };
  }

  // ---- labour and hire ----

  private labour(item: ast.JobLabour | undefined): MoneyWords['labour'] {
    const node = item?.charge as Expression | undefined;
    if (node === undefined) return undefined;
    const instead = `what an hour of one person costs, such as \`24 ${currencyIn(node)} per hour\``;
    if (toldInDays(this.context, this.text, 'job/labour', node, instead)) return undefined;
    const wanting = { words: 'an amount of money for an hour', number: '24', per: 'per hour', by: ['s'] };
    const charge = this.charges.read(this.text, 'job/labour', node, wanting);
    return charge && moneyOf(charge, HOUR);
  }

  private hire(item: ast.JobHire, index: number): Hire | undefined {
    const key = this.context.place(`job/hire-${index + 1}`, this.text, item);
    const tasks = findTasks(this.context, this.text, key, item, 'tasks', item.tasks);
    const node = item.charge as Expression | undefined;
    if (node === undefined) return undefined;
    const wanting = { words: 'an amount of money', number: '45', per: 'a day', by: ['', 's'] };
    const charge = this.charges.read(this.text, `${key}/charge`, node, wanting);
    if (charge === undefined) return undefined;
    const by = this.hiredBy(key, item, charge);
    if (by === undefined || tasks === undefined) return undefined;
    const factor = charge.by === '' ? 1 : by === 'week' ? WEEK : DAY;
    return { key, title: item.title, charge: moneyOf(charge, factor), by, tasks };
  }

  /** `a day`, `a week`, `for the job`; `per day` says the same. */
  private hiredBy(key: Key, item: ast.JobHire, charge: Charge): Hire['by'] | undefined {
    if (item.once) return 'job';
    if (item.by !== undefined) return this.context.word(this.text, key, item, 'by', item.by, HIRED_BY);
    const node = item.charge as Expression;
    const per = charge.by === 's' && ast.isQuantity(node) ? node.per?.toLowerCase() : undefined;
    if (per === 'day' || per === 'week') return per;
    const { written } = charge;
    const amount = charge.by === '' ? written : written.replace(/ per .*$/, '');
    const ways = ['a day', 'a week', 'for the job'].map(way => `${amount} ${way}`);
    const message = `${amount} for how long? Write \`${ways[0]!}\`, \`${ways[1]!}\` or \`${ways[2]!}\`.`;
    return this.context.fault(this.text, key, item, 'hire-by-nothing', message, {
      property: 'charge',
      fixes: ways.map(writing)
    });
  }

  // ---- taking away ----

  private disposal(item: ast.JobDisposal | undefined): Disposal | undefined {
    if (item === undefined) return undefined;
    const key = this.context.place('job/disposal', this.text, item);
    return item.container ? this.container(key, item) : this.byMeasure(key, item);
  }

  private byMeasure(key: Key, item: ast.JobDisposal): Disposal | undefined {
    const node = item.charge as Expression | undefined;
    const isByLoad = node !== undefined && eachIn(node) === 'load';
    const wanting = {
      words: 'what taking away so much costs',
      number: '28',
      per: 'per tonne',
      by: isByLoad ? [''] : ['kg', 'm3']
    };
    const charge = this.charges.read(this.text, `${key}/charge`, node, wanting);
    if (charge === undefined) return undefined;
    return { key, charge: moneyOf(charge), by: isByLoad ? 'load' : (charge.by as 'kg' | 'm3') };
  }

  private container(key: Key, item: ast.JobDisposal): Disposal | undefined {
    const wanting = { words: 'what one container costs', number: '290' };
    const charge = this.charges.read(this.text, `${key}/charge`, item.charge as Expression | undefined, wanting);
    const holds = item.holds.map(node => this.holds(key, node as Expression));
    if (charge === undefined || holds.includes(undefined)) return undefined;
    const [volumes, masses] = (['volume', 'mass'] as const).map(what => holds.filter(one => one!.what === what));
    for (const again of [volumes![1], masses![1]])
      if (again !== undefined)
        this.context.fault(
          this.text,
          key,
          again.node,
          'said-twice',
          `What a container takes is told twice by ${again.what}; the first counts. Take one out.`,
          { harmless: true }
        );
    const [volume, mass] = [volumes![0]?.given, masses![0]?.given];
    return {
      key,
      charge: moneyOf(charge),
      by: 'container',
      ...(volume === undefined ? {} : { volume }),
      ...(mass === undefined ? {} : { mass })
    };
  }

  private holds(
    key: Key,
    node: Expression
  ): { readonly what: 'volume' | 'mass'; readonly given: Given; readonly node: Expression } | undefined {
    const { context, text } = this;
    const amount = context.amount(text, key, node);
    if (amount === undefined) return undefined;
    const what = measureText(amount.dimensions) === 'kg' ? 'mass' : 'volume';
    const given = context.given(text, `${key}/${what}`, node, what === 'mass' ? 'kg' : 'm3');
    return given && { what, given, node };
  }

  // ---- shares ----

  private contingency(item: ast.JobContingency | undefined): Share | undefined {
    if (item === undefined) return undefined;
    const share = this.shareOf('job/contingency', item.share as Expression | undefined);
    const of = this.of('job/contingency', item, item.of);
    return share && of && { share, of };
  }

  /** Of all costs, where nothing is said. */
  private of(key: Key, item: ast.JobContingency | ast.JobExtra, word: string | undefined): ShareOf | undefined {
    return word === undefined ? 'costs' : this.context.word(this.text, key, item, 'of', word, SHARES_OF);
  }

  private profit(said: ReadonlyMap<string, ast.JobItem>): MoneyWords['profit'] {
    const [margin, markup] = (['margin', 'markup'] as const).map(what => said.get(what) as ast.JobShare | undefined);
    if (margin !== undefined && markup !== undefined)
      return this.context.fault(
        this.text,
        'job',
        markup,
        'margin-and-markup',
        'Write `margin` or `markup`, not both: a margin is a share of the price, a markup a share of the costs.',
        {
          related: [{ node: margin, text: this.text, message: 'The margin is said here.' }],
          fixes: [margin, markup].map(item => ({
            ...takingOut(this.context, this.text, item),
            title: `Take out the ${item.what!}`
          }))
        }
      );
    const item = margin ?? markup;
    const share = this.share(item);
    if (item === undefined || share === undefined) return undefined;
    if (item === margin && share.value >= 1)
      return this.context.fault(
        this.text,
        'job/margin',
        item,
        'out-of-range',
        `A margin is a share of the price, and the costs are in it too: it is less than 100 %. A share of the costs is \`markup ${share.written}\`.`,
        { property: 'value', fixes: [{ title: `Write \`markup ${share.written}\``, does: this.asMarkup(item, share) }] }
      );
    return { way: item === margin ? 'margin' : 'markup', share };
  }

  private asMarkup(item: ast.JobShare, share: Given): ReturnType<Context['changes']['over']>[] {
    return [this.context.changes.over(this.text, item, `markup ${share.written}`)];
  }

  private share(item: ast.JobShare | undefined): Given | undefined {
    return item && this.shareOf(`job/${item.what!}`, item.value as Expression | undefined);
  }

  /** `tax included` stands with what is bought. */
  private tax(item: ast.JobShare | undefined): Given | undefined {
    const node = item?.value as Expression | undefined;
    const written = node && writtenOf(node);
    if (node === undefined || !/^(?:included?|including|incl?|added|plus|excl?|excluded)$/i.test(written!))
      return this.share(item);
    return this.context.fault(this.text, 'job/tax', node, 'wrong-kind', `\`${written}\` is no share. ${TAX_OF_JOB}`);
  }

  /** A share has its `%`: `margin 18` could be 18 % or 18 of something. */
  private shareOf(key: Key, node: Expression | undefined): Given | undefined {
    const { context, text } = this;
    const amount = node && context.amount(text, key, node);
    if (node === undefined || amount === undefined) return undefined;
    const written = writtenOf(node);
    if (Object.keys(amount.dimensions).length > 0)
      return context.fault(
        text,
        key,
        node,
        'wrong-kind',
        `\`${written}\` is ${kindOf(amount.dimensions)}; here stands a share, such as \`10 %\`.`
      );
    if (!amount.bare || amount.value.equals(0)) return context.given(text, key, node, '', NOT_NEGATIVE);
    const percent = amount.value.compare(1) < 0 ? amount.value.mul(100).toString() : written;
    return context.fault(
      text,
      key,
      node,
      'measure-missing',
      `\`${written}\` has no measure. Write the share with its sign: \`${percent} %\`.`,
      { fixes: ast.isQuantity(node) ? [writing(`${percent} %`)] : [] }
    );
  }

  // ---- lines of one's own, and words that are printed ----

  private extra(item: ast.JobExtra, index: number): Extra | undefined {
    const { context, text } = this;
    const key = context.place(`job/extra-${index + 1}`, text, item);
    saidOnce(context, text, key, item.clauses, clause => (clause.untaxed ? 'untaxed' : 'no margin'));
    const cost = this.cost(key, item);
    if (cost === undefined) return undefined;
    const says = (what: 'untaxed' | 'noMargin'): boolean => item.clauses.some(clause => clause[what]);
    return { key, title: item.title, cost, untaxed: says('untaxed'), noMargin: says('noMargin') };
  }

  private cost(key: Key, item: ast.JobExtra): Extra['cost'] | undefined {
    const node = item.cost as Expression | undefined;
    const amount = node && this.context.amount(this.text, `${key}/cost`, node);
    if (node === undefined || amount === undefined) return undefined;
    const isShare = item.of !== undefined || (!amount.bare && Object.keys(amount.dimensions).length === 0);
    if (isShare) {
      const share = this.shareOf(`${key}/cost`, node);
      const of = this.of(key, item, item.of);
      return share && of && { share, of };
    }
    const wanting = { words: 'an amount of money', number: '180', mayBeTakenOff: true } as const;
    const charge = this.charges.read(this.text, `${key}/cost`, node, wanting);
    return charge && moneyOf(charge);
  }

  private excluded(item: ast.JobExcludes, index: number): string[] {
    this.context.place(`job/excludes-${index + 1}`, this.text, item);
    const words = item.text?.trim() ?? '';
    return words === '' ? [] : [words];
  }

  private quote(item: ast.JobQuote | undefined): MoneyWords['quote'] {
    if (item === undefined) return undefined;
    const { context, text } = this;
    const key = context.place('job/quote', text, item);
    const isDay = item.date !== undefined && checkDay(context, text, key, item, 'date', item.date);
    const valid = item.valid && context.given(text, `${key}/valid`, item.valid as Expression, 's');
    return {
      key,
      name: item.title,
      ...(isDay ? { on: item.date! } : {}),
      ...(valid === undefined ? {} : { validDays: { ...valid, value: valid.value / DAY } })
    };
  }
}

function currencyIn(node: Expression): string {
  return /\b[A-Z]{3}\b/.exec(writtenOf(node))?.[0] ?? 'USD';
}
