import type { Costs } from '../../pricing/costs.ts';
import type { Sum, WorkSum } from '../../pricing/grouped-costs.ts';
import { decimalText, type Minor } from '../../pricing/money.ts';

/** Cost and price as they stand in the JSON of a job, under `costs`: amounts are decimal strings in its currency. */
export function costsJson(costs: Costs): object {
  const { currency, lines, parts, unpriced, kinds, areas, wholeJob, tasks, netArea, perUnit, assumed } = costs;
  const { costs: direct, passedOn, overhead, profit, price, taxed, tax, total, deposits } = costs;
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
    ...texts({ costs: direct, passedOn, overhead, profit, price, taxed, tax, total, deposits }),
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
