import type { Finding, Place } from '../../findings/finding.ts';
import type {
  From,
  FromAssumed,
  FromPointer,
  FromShape,
  JobNumbers,
  JobQuantities,
  Workings
} from '../../quantities/contract.ts';
import type { PricedJob } from '../../priced-job.ts';
import type { VariantEvaluation } from '../../variants.ts';
import { type CostsJson, costWorkings, priceJson } from './costs-json.ts';
import { type FindingJson, findingJson } from './finding-json.ts';
import { SCHEMA_NUMBER } from './schema-number.ts';
import { variantJson, type VariantJson } from './variants-json.ts';

/** What the JSON of quantities is made from; nothing is read from a clock or a file here. */
export interface QuantitiesInput {
  /** Name and version of the program. */
  readonly tool: string;
  /** The day, `2026-04-18`. */
  readonly asOf: string;
  readonly files: readonly { readonly file: string; readonly sha256: string }[];
  readonly jobs: readonly JobInput[];
}

export interface JobInput {
  readonly numbers: JobNumbers;
  readonly findings: readonly Finding[];
  /** Cost, price and days of the whole job. */
  readonly priced?: PricedJob;
  /** The job as its variants have it. */
  readonly variants?: readonly VariantEvaluation[];
  readonly placeOf: (key: string) => Place;
}

export interface QuantitiesJson {
  readonly schema: number;
  readonly tool: string;
  readonly asOf: string;
  readonly files: QuantitiesInput['files'];
  readonly jobs: readonly JobJson[];
}

export interface JobJson extends JobQuantities {
  readonly costs?: CostsJson;
  /** Days of the crew for all of it. */
  readonly days?: number;
  readonly variants?: readonly VariantJson[];
  readonly workings: Readonly<Record<string, WorkingJson>>;
  readonly findings: readonly FindingJson[];
}

export interface WorkingJson {
  readonly formula: string;
  readonly values: readonly {
    readonly name: string;
    readonly value: number;
    readonly measure: string;
    readonly written?: string;
    readonly from: FromPointer | FromAssumed | FromShape | Pick<Place, 'file' | 'line' | 'column'>;
  }[];
}

/** The quantities of all jobs, in SI and full precision. */
export function quantitiesJson({ tool, asOf, files, jobs }: QuantitiesInput): QuantitiesJson {
  return {
    schema: SCHEMA_NUMBER,
    tool,
    asOf,
    files: files.map(({ file, sha256 }) => ({ file, sha256 })),
    jobs: jobs.map(({ numbers, findings, priced, variants = [], placeOf }) => {
      const told = findings.map(findingJson);
      const price = priceJson(priced);
      return {
        ...numbers.quantities,
        ...price,
        ...(variants.length === 0
          ? {}
          : { variants: variants.map(variant => variantJson(variant, { ...numbers.quantities, ...price }, told)) }),
        workings: workingsJson({ ...numbers.workings, ...costWorkings(priced, numbers) }, placeOf),
        findings: told
      };
    })
  };
}

function workingsJson(workings: Workings, placeOf: JobInput['placeOf']): JobJson['workings'] {
  return Object.fromEntries(
    Object.entries(workings).map(([pointer, { formula, values }]) => [
      pointer,
      { formula, values: values.map(value => ({ ...value, from: fromJson(value.from, placeOf) })) }
    ])
  );
}

function fromJson(from: From, placeOf: JobInput['placeOf']): WorkingJson['values'][number]['from'] {
  if (!('key' in from)) return from;
  const { file, line, column } = placeOf(from.key);
  return { file, line, column };
}
