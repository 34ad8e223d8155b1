import { given, measured, multiply, plainNumber, sum } from './arithmetic.ts';
import type { NumbersOf } from './catalogue.ts';
import type { DigShape } from './dig.ts';
import type { LayeredArea } from './layers-stage.ts';
import { areaInDig } from './old-paving.ts';
import type { Book } from './page.ts';

/** One soft spot: what is dug below the bottom of the dig, and the stone that fills it. */
export type SoftSpotQuantities = NumbersOf<'soft-spot'> & { readonly id: string; readonly material?: string };

/** Soft spots of an area, as far as they lie in its dig. */
export function softSpotsOf(area: LayeredArea, shape: DigShape, book: Book): SoftSpotQuantities[] {
  const { soil } = area.site;
  return area.softSpots.map((spot, index) => {
    const page = book.page('soft-spot', `/softSpots/${index}`);
    const size = measured('area of the soft spot', areaInDig(spot.outline, shape), 'm2', spot.key);
    const bank = page.put('bankVolume', multiply(size, given('deeper', spot.deeper, 'm')));
    page.put('looseVolume', multiply(bank, sum(plainNumber(1), given('swell of the soil', soil.swell, ''))));
    page.put('mass', multiply(bank, given('density of the soil', soil.density, 'kg/m3')));
    const stone = page.put('stoneVolume', multiply(plainNumber(1), bank));
    const material = spot.material ?? area.layers.findLast(layer => layer.role !== 'bed')?.material;
    if (material?.compacted !== undefined)
      page.put('stoneMass', multiply(stone, given('compacted density', material.compacted, 'kg/m3')));
    return { id: spot.key, ...(material === undefined ? {} : { material: material.name }), ...page.numbers };
  });
}
