import { RATE_WORDS, TASK_WORDS, type Rate } from '../job/work.ts';
import { kindOf, measureText } from '../measures/measures.ts';
import * as ast from '../syntax/generated/ast.ts';
import { nearest } from '../syntax/nearest.ts';
import type { Amount, Expression } from './amounts.ts';
import { eachIn } from './charges.ts';
import { assumed, writtenOf, type Context } from './context.ts';
import { keyOf } from './keys.ts';
import { namesOf, type Declared, type Kind, type SpecText } from './names.ts';
import type { Project } from './project.ts';
import { writing } from './said-fix.ts';
import { saidAgain, saidOnce } from './said-once.ts';
import { cited, findSource, HOW_KNOWN, type Source } from './sources.ts';
import { findTasks } from './tasks.ts';
import { HOURS_INSTEAD, toldInDays } from './told-in-days.ts';

const HOUR = 3600;

/** What a time may be told for one of, by the SI measure of the rate. */
const PER: Readonly<Record<string, Rate['per']>> = { 's/m3': 'm3', 's/m2': 'm2', 's/m': 'm', 's/kg': 'kg' };

/** What the words behind `when` may name. */
const NAMED: readonly Kind[] = ['soil-kind', 'bond', 'unit', 'material'];

/** Reads how long things take, each rate once. */
export class Rates {
  private readonly context: Context;
  private readonly shipped: SpecText;
  private readonly read = new Map<ast.Rate, readonly Rate[]>();

  constructor(context: Context, shipped: SpecText) {
    this.context = context;
    this.shipped = shipped;
  }

  /** The job's own in the order of the text, then the shipped ones that no own one stands over. */
  all({ texts, shipped }: Project): Rate[] {
    const seen = new Set<string>();
    return [...texts, shipped].flatMap(text =>
      namesOf(text)
        .all.filter(({ kind }) => kind === 'rate')
        .flatMap(declared => {
          if (seen.has(declared.name)) return [];
          seen.add(declared.name);
          return this.context.isBroken(text, declared.node) ? [] : this.of(declared);
        })
    );
  }

  /** A rate, once for each task that it is of; nothing when a fault was told. */
  of(declared: Declared): readonly Rate[] {
    const node = declared.node as ast.Rate;
    const known = this.read.get(node);
    if (known !== undefined) return known;
    const rates = this.readRate(declared, node) ?? [];
    this.read.set(node, rates);
    return rates;
  }

  private readRate(declared: Declared, node: ast.Rate): Rate[] | undefined {
    const { context } = this;
    const { text, name } = declared;
    const key = context.place(keyOf(declared), text, node, 'name');
    const cites = node.items.filter(ast.isRuleCites);
    const others = node.items.filter(item => !ast.isRuleCites(item));
    const said = saidOnce(context, text, key, others, item => item.$type);
    const of = said.get('RateOf') as ast.RateOf | undefined;
    const takes = said.get('RateTakes') as ast.RateTakes | undefined;
    if (of === undefined || takes === undefined)
      return context.incomplete(
        text,
        key,
        node,
        of === undefined
          ? `The rate ${name} does not say of which task it is. Write \`of\` and one of: ${TASK_WORDS.join(', ')}.`
          : `The rate ${name} does not say how long it takes. Write \`takes 1.5 h per m2\`.`
      );
    const tasks = findTasks(context, text, key, of, 'tasks', of.tasks);
    const when = this.when(text, key, said.get('RateWhen') as ast.RateWhen | undefined);
    const including = said.get('RateIncludes') as ast.RateIncludes | undefined;
    const includes = including && findTasks(context, text, key, including, 'tasks', including.tasks);
    const time = this.time(text, key, takes);
    const from = this.source(text, key, cites);
    if (tasks === undefined || when === undefined || time === undefined || from === undefined) return undefined;
    if (including !== undefined && includes === undefined) return undefined;
    const given =
      text === this.shipped ? assumed(time.takes, { because: `as shipped: ${name}`, source: from.source }) : time.takes;
    return tasks.map(task => ({
      key,
      name,
      task,
      takes: given,
      per: time.per,
      when,
      ...(includes === undefined ? {} : { includes }),
      ...from
    }));
  }

  /** Words of the list, or names of what is dug, laid or spread. */
  private when(text: SpecText, key: string, item: ast.RateWhen | undefined): string[] | undefined {
    if (item === undefined) return [];
    const { context } = this;
    saidAgain(context, text, key, item, 'words', item.words);
    const isKnown = (word: string): boolean =>
      (RATE_WORDS as readonly string[]).includes(word) ||
      NAMED.some(kind => context.names.find(text, kind, word) !== undefined);
    const odd = item.words.findIndex(word => !isKnown(word));
    if (odd < 0) return [...new Set(item.words)];
    const near = nearest(item.words[odd]!, [...RATE_WORDS, ...context.names.known(text, NAMED)]);
    return context.fault(
      text,
      key,
      item,
      'unknown-word',
      `\`${item.words[odd]!}\` is not known here. Write one of: ${RATE_WORDS.join(', ')}; or the name of a soil, bond, unit or material.`,
      { property: ['words', odd], fixes: near === undefined ? [] : [writing(near)] }
    );
  }

  private time(text: SpecText, key: string, item: ast.RateTakes): Pick<Rate, 'takes' | 'per'> | undefined {
    const { context } = this;
    const node = item.time as Expression | undefined;
    const amount = node && context.amount(text, key, node);
    if (node === undefined || amount === undefined) return undefined;
    const written = writtenOf(node);
    if (toldInDays(context, text, key, node, HOURS_INSTEAD)) return undefined;
    const per = this.per(item, amount);
    if (per === undefined) return this.noRate(text, key, node, amount);
    if (amount.value.compare(0) < 0)
      return context.fault(text, key, node, 'out-of-range', `\`${written}\` can't be meant: time is not below nought.`);
    const takesKey = context.place(`${key}/takes`, text, node);
    const takes = { value: amount.value.valueOf() / HOUR, key: takesKey };
    return { takes: { ...takes, written: item.whole ? `${written} for the job` : written }, per };
  }

  private per(item: ast.RateTakes, { dimensions }: Amount): Rate['per'] | undefined {
    const measure = measureText(dimensions);
    const isPiece = eachIn(item.time as Expression) === 'piece';
    if (!isPiece && !item.whole) return PER[measure];
    return measure === 's' && isPiece !== item.whole ? (isPiece ? 'piece' : 'job') : undefined;
  }

  private noRate(text: SpecText, key: string, node: Expression, { dimensions, bare }: Amount): undefined {
    const written = writtenOf(node);
    const isTime = measureText(dimensions) === 's';
    const message = bare
      ? `\`${written}\` has no measure. Write how long one person takes for how much, such as \`1.5 h per m2\`.`
      : isTime
        ? `\`${written}\` for how much? Write \`${written} per m2\`, \`per m\`, \`per m3\`, \`per tonne\`, \`per piece\` or \`for the job\`.`
        : `\`${written}\` is ${kindOf(dimensions)}; here stands how long one person takes for how much, such as \`1.5 h per m2\`.`;
    return this.context.fault(text, key, node, bare || isTime ? 'measure-missing' : 'wrong-kind', message, {
      fixes: isTime ? ['per m2', 'per m', 'per piece', 'for the job'].map(per => writing(`${written} ${per}`)) : []
    });
  }

  /** Of several sources all are told; it is known as well as by the weakest of them. */
  private source(
    text: SpecText,
    key: string,
    items: readonly ast.RuleCites[]
  ): Pick<Rate, 'source' | 'status'> | undefined {
    if (items.length === 0) return { source: 'own figure', status: 'practice' };
    const all = items.map(item => this.cited(text, key, item));
    if (all.includes(undefined)) return undefined;
    const known = all as readonly Pick<Rate, 'source' | 'status'>[];
    const status = WEAKEST_FIRST.find(one => known.some(each => each.status === one))!;
    return { source: known.map(one => one.source).join('; '), status };
  }

  private cited(text: SpecText, key: string, item: ast.RuleCites): Pick<Rate, 'source' | 'status'> | undefined {
    const source = findSource(this.context, text, key, item);
    const how = item.how === undefined ? undefined : this.context.word(text, key, item, 'how', item.how, HOW_KNOWN);
    if (source === undefined || (item.how !== undefined && how === undefined)) return undefined;
    return { source: cited(source, item.place, how).words, status: statusOf(source, how) };
  }
}

const WEAKEST_FIRST: readonly Rate['status'][] = ['memory', 'practice', 'quoted', 'read'];

function statusOf({ kind }: Source, how: (typeof HOW_KNOWN)[number] | undefined): Rate['status'] {
  if (kind === 'memory' || how === 'from-memory') return 'memory';
  if (kind === 'common-practice') return 'practice';
  return how === 'as-quoted' ? 'quoted' : 'read';
}
