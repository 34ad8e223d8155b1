import type { Given, Layer, Material } from '../job/job.ts';
import { divide, type Expression, given, multiply, notBelowNought, subtract } from './arithmetic.ts';
import type { LayerQuantities } from './contract.ts';
import type { Book } from './page.ts';

/**
 * Volumes and mass of one layer of an area, less what reaches down into it; what its densities do not tell stays out.
 */
export function layerVolumes(
  layer: Layer,
  area: Expression,
  reachingIn: readonly Expression[],
  at: string,
  book: Book
): LayerQuantities {
  const page = book.page('layer', at);
  const thickness = given(`${layer.role} thickness`, layer.thickness, 'm');
  page.repeat('thickness', layer.thickness.value);
  const compacted = page.put('compactedVolume', lessOf(multiply(page.put('area', area), thickness), reachingIn));
  const density = densities(layer.material);
  if (density.compacted !== undefined) {
    const mass = page.put('mass', multiply(compacted, density.compacted));
    if (density.loose !== undefined) page.put('looseVolume', divide(mass, density.loose));
    else if (density.factor !== undefined) page.put('looseVolume', multiply(compacted, density.factor));
  } else if (density.factor !== undefined) {
    const loose = page.put('looseVolume', multiply(compacted, density.factor));
    if (density.loose !== undefined) page.put('mass', multiply(loose, density.loose));
  }
  return { role: layer.role, material: layer.material.name, ...page.numbers };
}

function lessOf(whole: Expression, parts: readonly Expression[]): Expression {
  return parts.length === 0 ? whole : notBelowNought(subtract(whole, ...parts));
}

function densities(material: Material): { compacted?: Expression; loose?: Expression; factor?: Expression } {
  const { compacted, loose, compactionFactor } = material;
  return {
    ...(isSize(compacted) ? { compacted: given('compacted density', compacted, 'kg/m3') } : {}),
    ...(isSize(loose) ? { loose: given('loose density', loose, 'kg/m3') } : {}),
    ...(isSize(compactionFactor) ? { factor: given('loose volume for one compacted', compactionFactor, '') } : {})
  };
}

/** Given, and more than nought: it can be divided by. */
export function isSize(quantity: Given | undefined): quantity is Given {
  return quantity !== undefined && quantity.value > 0;
}
