import type { Material, Unit } from '../job/job.ts';
import { type Expression, given, measured, multiply, notBelowNought, subtract } from './arithmetic.ts';
import type { NumbersOf } from './catalogue.ts';
import type { Laid } from './laying-stage.ts';
import { isSize } from './layer-volumes.ts';
import type { Book } from './page.ts';

/** Joints: what the units leave of the net area, to the full thickness of the units. */
export function jointsOf(
  unit: Unit,
  laid: Laid,
  areas: { readonly key: string; readonly net: Expression; readonly units: Expression },
  filler: Material | undefined,
  book: Book
): NumbersOf<'joints'> {
  const page = book.page('joints', '/joints');
  if (laid.jointLength !== undefined) page.put('length', measured('joint length', laid.jointLength, 'm', areas.key));
  const left = notBelowNought(subtract(areas.net, areas.units));
  const volume = page.put('volume', multiply(left, given('unit thickness', unit.thickness, 'm')));
  if (isSize(filler?.loose)) page.put('mass', multiply(volume, given('loose density', filler.loose, 'kg/m3')));
  return page.numbers;
}
