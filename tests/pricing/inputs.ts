// Jobs' costs by hand: what the order, the schedule and the text would tell.
import type { Given } from '../../language/job/job.ts';
import type { Extra, MoneyWords } from '../../language/job/money-lines.ts';
import type { Money } from '../../language/job/prices.ts';
import type { CostInputs, OrderedItem, OrderedLine, TaskHours } from '../../language/pricing/cost-inputs.ts';
import { type Costs, costsOf } from '../../language/pricing/costs.ts';
import { amountOf, decimalText, exact, type Minor, rounded } from '../../language/money/money.ts';

export function money(amount: string, currency = 'USD'): Money {
  return { amount, currency, written: `${amount} ${currency}`, key: `money:${amount}` };
}

export function share(value: number): Given {
  return { value, written: `${Number((value * 100).toFixed(6))} %`, key: `share:${value}` };
}

export function extra(title: string, cost: Extra['cost'], more: Partial<Extra> = {}): Extra {
  return { key: `job/extra/${title}`, title, cost, untaxed: false, noMargin: false, ...more };
}

/** One thing for so much, all of it for one area. */
export function item(name: string, cost: string, more: Partial<OrderedItem> = {}): OrderedItem {
  return {
    thing: `material:${name}`,
    name,
    lines: [line(cost)],
    shares: [{ area: 'area:patio', work: 'base', amount: 1 }],
    ...more
  };
}

/** A line of the order; what it costs may be a fraction, as a price for a measure comes to. */
export function line(cost: string, tax: OrderedLine['tax'] | 'not said' = 'added', deposit?: string): OrderedLine {
  const hundredths = (amount: string): Minor => rounded(exact(0).add(amount));
  return {
    cost: hundredths(cost),
    ...(tax === 'not said' || tax === undefined ? {} : { tax }),
    ...(deposit === undefined ? {} : { deposit: hundredths(deposit) }),
    pointer: '/order/0'
  };
}

export function task(id: string, hours: number | undefined, more: Partial<TaskHours> = {}): TaskHours {
  return {
    id,
    title: id,
    ...(hours === undefined ? {} : { hours }),
    from: { assumed: 'as told' },
    noRate: [],
    shares: [],
    ...more
  };
}

const NO_MONEY: MoneyWords = { hires: [], extras: [], excludes: [] };

export function inputs(
  more: Partial<Omit<CostInputs, 'money'>> & { readonly money?: Partial<MoneyWords> }
): CostInputs {
  const areas = more.areas ?? [{ key: 'area:patio', name: 'patio', netArea: 10, pointer: '/areas/0/netArea' }];
  return {
    job: 'job:patio',
    currency: 'USD',
    system: 'metric',
    ordered: [],
    deliveries: [],
    tasks: [],
    hires: [],
    netArea: areas.reduce((sum, { netArea }) => sum + netArea, 0),
    ...more,
    areas,
    money: { ...NO_MONEY, ...more.money }
  };
}

export function costs(more: Parameters<typeof inputs>[0]): Costs {
  return costsOf(inputs(more))!;
}

/** Decimal text, to read. */
export const text = (minor: Minor): string => decimalText(minor);
export const number = (minor: Minor): number => amountOf(minor).valueOf();
