import { type Expression, given, measured, multiply, subtract } from './arithmetic.ts';
import type { LaidTotals } from './laying-stage.ts';
import type { LayeredArea } from './layers-stage.ts';
import { unitNamed } from './units-of-area.ts';

/**
 * What thicker units reach down into the bed, m3, so that all faces lie level: the bed is stepped under them. Thinner
 * ones reach in less than nought: there the bed is thicker.
 */
export function bedSteps(area: LayeredArea, laid: LaidTotals | undefined): Expression[] {
  const main = area.paving?.units[0];
  if (main === undefined || laid === undefined) return [];
  const ground = new Map<string, number>();
  for (const part of laid.joints) ground.set(part.unit, (ground.get(part.unit) ?? 0) + part.ground);
  return [...ground].flatMap(([key, size]) => {
    const unit = unitNamed(area, key);
    if (unit.thickness.value === main.thickness.value) return [];
    const step = subtract(
      given(`thickness of ${unit.name}`, unit.thickness, 'm'),
      given(`thickness of ${main.name}`, main.thickness, 'm')
    );
    return [multiply(measured(`ground under ${unit.name}`, size, 'm2', area.key), step)];
  });
}
