import { type Loop, overlapArea, reversedLoop, sharedWithAny, signedAreaOf } from '../geometry/index.ts';
import type { Area } from '../job/job.ts';
import { given, measured, multiply, plainNumber, sum } from './arithmetic.ts';
import type { NumbersOf } from './catalogue.ts';
import type { DigShape } from './dig.ts';
import type { LayeredArea } from './layers-stage.ts';
import { areaInDig } from './old-paving.ts';
import type { Book } from './page.ts';

/** One soft spot: what is dug below the bottom of the dig, and the stone that fills it. */
export type SoftSpotQuantities = NumbersOf<'soft-spot'> & { readonly id: string; readonly material?: string };

/** Soft spots of an area, as far as they lie in its dig; where some lie over each other the deepest counts. */
export function softSpotsOf(area: LayeredArea, shape: DigShape, book: Book): SoftSpotQuantities[] {
  const { soil } = area.site;
  return area.softSpots.map((spot, index) => {
    const page = book.page('soft-spot', `/softSpots/${index}`);
    const deeper = area.softSpots.filter(other => goesFirst(other, spot));
    const size = measured('area of the soft spot', ownArea(spot, deeper, shape), 'm2', spot.key);
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

type SoftSpot = Area['softSpots'][number];

/** The deeper of two spots takes what they share; of two as deep the one whose key comes first. */
function goesFirst(other: SoftSpot, spot: SoftSpot): boolean {
  if (other.deeper.value !== spot.deeper.value) return other.deeper.value > spot.deeper.value;
  return other.key < spot.key;
}

/** What of a spot lies in the dig and in none that goes first, m2. */
function ownArea({ outline }: SoftSpot, first: readonly SoftSpot[], shape: DigShape): number {
  const over = first.map(other => other.outline).filter(other => overlapArea(other, outline) > 0);
  if (over.length === 0) return areaInDig(outline, shape);
  const dug = { loops: shape.loops, keptOut: shape.keptOut };
  const groundOf = (loop: Loop): { loops: Loop[]; keptOut: Loop[] } => ({ loops: [anticlockwise(loop)], keptOut: [] });
  const taken = over.map(groundOf);
  const own = sharedWithAny(dug, [groundOf(outline), ...taken]) - sharedWithAny(dug, taken);
  return own > LEAST_AREA ? own : 0;
}

/** Square metres: less is what rounding leaves. */
const LEAST_AREA = 1e-6;

function anticlockwise(loop: Loop): Loop {
  return signedAreaOf(loop) < 0 ? reversedLoop(loop) : loop;
}
