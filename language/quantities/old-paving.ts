import { type Loop, sharedWithAny } from '../geometry/index.ts';
import { type Expression, given, measured, multiply, sum } from './arithmetic.ts';
import type { DigShape } from './dig.ts';
import type { LayeredArea } from './layers-stage.ts';
import type { Page } from './page.ts';

/** Old paving within the dig: its volume and mass are put down, and the volume told, which is no soil. */
export function oldPavingOf(area: LayeredArea, shape: DigShape, page: Page<'dig'>): Expression | undefined {
  const parts = area.brokenOut.flatMap(old => {
    const within = areaInDig(old.outline, shape);
    if (within <= 0) return [];
    const volume = multiply(
      measured(`area of ${old.name} in the dig`, within, 'm2', `${area.key}+${old.key}`),
      given(`thickness of ${old.name}`, old.thickness, 'm')
    );
    return [{ volume, mass: multiply(volume, given(`density of ${old.name}`, old.density, 'kg/m3')) }];
  });
  const [first, ...others] = parts;
  if (first === undefined) return undefined;
  page.put('oldPavingMass', sum(first.mass, ...others.map(({ mass }) => mass)));
  return page.put('oldPavingVolume', sum(first.volume, ...others.map(({ volume }) => volume)));
}

/** What of a shape lies in a dig, m2. */
export function areaInDig(outline: Loop, { loops, keptOut }: Pick<DigShape, 'loops' | 'keptOut'>): number {
  return sharedWithAny({ loops, keptOut }, [{ loops: [outline], keptOut: [] }]);
}
