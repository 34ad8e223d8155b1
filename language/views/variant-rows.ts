import type { Finding } from '../findings/finding.ts';
import type { System } from '../job/job.ts';
import { printAs, type PrintStyle } from '../measures/print.ts';
import { moneyText } from '../money/money.ts';
import type { PricedJob } from '../priced-job.ts';
import type { JobNumbers, JobQuantities } from '../quantities/contract.ts';
import type { VariantEvaluation } from '../variants.ts';

/** A job as it is written, or as one of its variants has it. */
export interface VariantColumn {
  readonly name: string;
  readonly numbers?: JobNumbers;
  readonly findings: readonly Finding[];
  readonly priced?: PricedJob;
}

/** What one row of the table holds of every column; empty where a column has none of it. */
export interface VariantRow {
  readonly words: string;
  readonly values: readonly string[];
}

export function columnOf({ name, evaluation, findings, priced }: VariantEvaluation): VariantColumn {
  return {
    name,
    ...(evaluation.numbers === undefined ? {} : { numbers: evaluation.numbers }),
    findings,
    ...(priced === undefined ? {} : { priced })
  };
}

/** Quantities that are not alike in all columns; cost, price, days and findings always. */
export function variantRows(columns: readonly VariantColumn[], system: System): VariantRow[] {
  const found = columns.map(({ numbers }) => (numbers === undefined ? [] : quantityRows(numbers.quantities, system)));
  const words = [...new Set(found.flatMap(rows => rows.map(([head]) => head)))];
  const quantities = words
    .map(head => ({ words: head, values: found.map(rows => rows.find(([other]) => other === head)?.[1] ?? '') }))
    .filter(({ values }) => new Set(values).size > 1);
  return [...quantities, ...moneyRows(columns), ...dayRows(columns), findingRow(columns)];
}

type Row = readonly [string, string];

function quantityRows({ areas, dig, totals, materials, units, edging }: JobQuantities, system: System): Row[] {
  const row = (words: string, style: PrintStyle, value: number | undefined): Row[] =>
    value === undefined ? [] : [[words, printAs(style, value, system)]];
  const inAll = (of: (area: JobQuantities['areas'][number]) => number | undefined): number | undefined => {
    const values = areas.flatMap(area => of(area) ?? []);
    return values.length === 0 ? undefined : values.reduce((sum, value) => sum + value, 0);
  };
  return [
    ...row('Net area', 'area', totals.netArea),
    ...row('Dig, as it lies in the ground', 'stone-volume', dig.bankVolume),
    ...row('Soil taken away, mass', 'mass', dig.mass),
    ...materials.flatMap(({ role, material, compactedVolume, mass }) => [
      ...row(`${material} as ${role}, in place`, role === 'bed' ? 'sand-volume' : 'stone-volume', compactedVolume),
      ...row(`${material} as ${role}, mass`, 'mass', mass)
    ]),
    ...row(
      'Geotextile',
      'area',
      inAll(({ geotextile }) => geotextile?.area)
    ),
    ...row(
      'Joint filler, mass',
      'sand-mass',
      inAll(({ joints }) => joints?.mass)
    ),
    ...units.flatMap(({ unit, toBuy, unitsUsed, cut, sawLength }) => [
      ...row(`${unit} to buy`, 'count', toBuy ?? unitsUsed),
      ...row(`${unit} cut`, 'count', cut),
      ...row(`${unit}, sawn`, 'length', sawLength)
    ]),
    ...edging.flatMap(({ material, length }) => row(`${material}`, 'length', length))
  ];
}

function moneyRows(columns: readonly VariantColumn[]): VariantRow[] {
  if (columns.every(({ priced }) => priced?.costs === undefined)) return [];
  const row = (words: string, key: 'costs' | 'price' | 'total'): VariantRow => ({
    words,
    values: columns.map(({ priced }) => {
      const costs = priced?.costs;
      if (costs === undefined) return '';
      return `${moneyText(costs[key], costs.currency)}${costs.unpriced.length > 0 ? ' *' : ''}`;
    })
  });
  return [row('Cost', 'costs'), row('Price without tax', 'price'), row('To pay', 'total')];
}

function dayRows(columns: readonly VariantColumn[]): VariantRow[] {
  const values = columns.map(({ priced }) => (priced === undefined ? '' : String(priced.days)));
  return values.every(value => value === '' || value === '0') ? [] : [{ words: 'Days of the crew', values }];
}

function findingRow(columns: readonly VariantColumn[]): VariantRow {
  return { words: 'Findings', values: columns.map(({ findings }) => String(findings.length)) };
}

/** What is told of a variant and not of the job as it is written, and the other way round. */
export function findingsApart(
  written: readonly Finding[],
  variant: readonly Finding[]
): { readonly more: readonly Finding[]; readonly gone: readonly Finding[] } {
  const isIn = (all: readonly Finding[], { id, message }: Finding): boolean =>
    all.some(other => other.id === id && other.message === message);
  return {
    more: variant.filter(finding => !isIn(written, finding)),
    gone: written.filter(finding => !isIn(variant, finding))
  };
}
