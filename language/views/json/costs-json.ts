import type { Costs } from '../../pricing/costs.ts';
import type { Sum, WorkSum } from '../../pricing/grouped-costs.ts';
import { decimalText, type Minor } from '../../money/money.ts';
import type { PricedJob } from '../../priced-job.ts';
import type { JobNumbers, Workings } from '../../quantities/contract.ts';

/** As its schema has it. */
export type CostsJson = Readonly<Record<string, unknown>>;

/** Cost, price and days of the whole job, as they stand in the JSON of a job and of a variant. */
export function priceJson(priced: PricedJob | undefined): { readonly costs?: CostsJson; readonly days?: number } {
  if (priced === undefined) return {};
  return { ...(priced.costs === undefined ? {} : { costs: costsJson(priced.costs) }), days: priced.days };
}

/**
 * Workings of cost and price. Where the log tells something as delivered or done, they are of an order of all that the job
 * takes, which is not the order that the JSON holds: its amounts then have no pointer.
 */
export function costWorkings(priced: PricedJob | undefined, numbers: JobNumbers): Workings {
  const { workings = {} } = priced?.costs ?? {};
  if (priced === undefined || priced.numbers === numbers) return workings;
  return Object.fromEntries(
    Object.entries(workings).map(([at, { formula, values }]) => [
      at,
      {
        formula,
        values: values.map(value =>
          'pointer' in value.from && OF_THE_ORDER.test(value.from.pointer)
            ? { ...value, from: { assumed: 'an order of all that the job takes' } }
            : value
        )
      }
    ])
  );
}

const OF_THE_ORDER = /^\/(?:order|deliveryCharges)\//;

/** Cost and price as they stand in the JSON of a job, under `costs`: amounts are decimal strings in its currency. */
export function costsJson(costs: Costs): CostsJson {
  const { currency, lines, parts, unpriced, kinds, areas, wholeJob, tasks, netArea, perUnit, assumed } = costs;
  const { costs: direct, passedOn, takenOff, overhead, profit, price, taxed, tax, total, deposits } = costs;
  return {
    currency,
    lines: lines.map(line => {
      const { id, kind, title, cost, untaxed, passedOn: atCost } = line;
      const own = parts.filter(part => part.line === line);
      return {
        id,
        kind,
        title,
        cost: decimalText(cost),
        untaxed,
        passedOn: atCost,
        parts: own.map(({ area, work, edge, task, ...sum }) => ({ area, work, edge, task, ...amounts(sum) }))
      };
    }),
    kinds: kinds.map(({ kind, cost }) => ({ kind, cost: decimalText(cost) })),
    ...texts({ costs: direct, passedOn, takenOff, overhead, profit, price, taxed, tax, total, deposits }),
    netArea,
    ...(perUnit === undefined ? {} : { perUnit: texts({ ...perUnit }) }),
    areas: areas.map(({ area, name, works, edges, perUnit: each, ...sum }) => ({
      area,
      name,
      netArea: sum.netArea,
      ...amounts(sum),
      ...(each === undefined ? {} : { perUnit: amounts(each) }),
      works: works.map(worksJson),
      edges: edges.map(({ edge, ...of }) => ({ edge, ...amounts(of) }))
    })),
    wholeJob: wholeJob.map(worksJson),
    tasks: tasks.map(({ task, ...sum }) => ({ task, ...amounts(sum) })),
    unpriced: unpriced.map(({ title, because }) => ({ title, because })),
    assumed
  };
}

function worksJson({ work, title, untaxed, perUnit, ...sum }: WorkSum): object {
  return { work, title, untaxed, ...amounts(sum), ...(perUnit === undefined ? {} : { perUnit: amounts(perUnit) }) };
}

function amounts({ cost, price }: Sum): Record<string, string> {
  return texts({ cost, price });
}

function texts(all: Readonly<Record<string, Minor>>): Record<string, string> {
  return Object.fromEntries(Object.entries(all).map(([key, amount]) => [key, decimalText(amount)]));
}
