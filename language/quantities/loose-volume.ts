import type { Material } from '../job/job.ts';
import { divide, type Expression, given, multiply } from './arithmetic.ts';
import { isSize } from './layer-volumes.ts';

/** The loose volume of so much of a material in place; undefined where its densities do not tell. */
export function looseVolumeOf(
  compacted: Expression,
  { compacted: inPlace, loose, compactionFactor }: Pick<Material, 'compacted' | 'loose' | 'compactionFactor'>
): Expression | undefined {
  if (isSize(inPlace) && isSize(loose))
    return divide(
      multiply(compacted, given('compacted density', inPlace, 'kg/m3')),
      given('loose density', loose, 'kg/m3')
    );
  if (!isSize(compactionFactor)) return undefined;
  return multiply(compacted, given('loose volume for one compacted', compactionFactor, ''));
}
