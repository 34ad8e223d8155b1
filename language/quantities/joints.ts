import type { Material } from '../job/job.ts';
import { type Expression, given, measured, multiply, sum } from './arithmetic.ts';
import type { NumbersOf } from './catalogue.ts';
import type { LaidTotals } from './laying-stage.ts';
import { isSize } from './layer-volumes.ts';
import type { LayeredArea } from './layers-stage.ts';
import type { Book } from './page.ts';
import { unitNamed } from './units-of-area.ts';

/** Joints: their area as clipped, to the full thickness of the units that they lie between. */
export function jointsOf(
  area: LayeredArea,
  laid: LaidTotals,
  filler: Material | undefined,
  book: Book
): NumbersOf<'joints'> {
  const page = book.page('joints', '/joints');
  if (laid.jointLength !== undefined) page.put('length', measured('joint length', laid.jointLength, 'm', area.key));
  const volumes = byUnit(laid).map(([unit, joints]): Expression => {
    const { name, thickness } = unitNamed(area, unit);
    const of = laid.units.length === 1 ? '' : ` of ${name}`;
    return multiply(measured(`joint area${of}`, joints, 'm2', area.key), given(`thickness${of}`, thickness, 'm'));
  });
  const [first, ...others] = volumes;
  const volume = page.put(
    'volume',
    first === undefined ? measured('joints', 0, 'm3', area.key) : sum(first, ...others)
  );
  if (isSize(filler?.loose)) page.put('mass', multiply(volume, given('loose density', filler.loose, 'kg/m3')));
  return page.numbers;
}

/** Joint area by the unit that says how deep the joints are. */
function byUnit({ joints }: LaidTotals): [string, number][] {
  const areas = new Map<string, number>();
  for (const { unit, area } of joints) areas.set(unit, (areas.get(unit) ?? 0) + area);
  return [...areas];
}
