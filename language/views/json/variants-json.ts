import type { JobQuantities } from '../../quantities/contract.ts';
import { sameContent } from '../../session/same-content.ts';
import type { VariantEvaluation } from '../../variants.ts';
import { type CostsJson, priceJson } from './costs-json.ts';
import { type FindingJson, findingJson } from './finding-json.ts';

/** A variant in the JSON: the keys of its job where they differ from those of the job as written; of the areas those that do. */
export type VariantJson = Partial<Written> & {
  readonly id: string;
  readonly name: string;
  readonly findings?: readonly FindingJson[];
};

/** What a variant is held against. */
type Written = JobQuantities & { readonly costs?: CostsJson; readonly days?: number };

export function variantJson(
  { key, name, evaluation, findings, accepted, priced }: VariantEvaluation,
  written: Written,
  told: readonly FindingJson[]
): VariantJson {
  const { quantities } = evaluation.numbers ?? {};
  const found = [...findings, ...accepted].map(findingJson);
  return {
    ...(quantities === undefined ? {} : differing({ ...quantities, ...priceJson(priced) }, written)),
    id: key,
    name,
    ...(sameContent(found, told) ? {} : { findings: found })
  };
}

function differing(quantities: Written, written: Written): Partial<Written> {
  const { areas, ...others } = quantities;
  const apart = areas.filter(area => !written.areas.some(other => sameContent(area, other)));
  const keys = Object.entries(others).filter(
    ([key, value]) => !sameContent(value, written[key as keyof typeof others])
  );
  return { ...Object.fromEntries(keys), ...(apart.length === 0 ? {} : { areas: apart }) };
}
