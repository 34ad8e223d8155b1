import type { Ink } from '../../drawing/inks.ts';
import type { Outlines, Rows, Shape } from '../../drawing/drawing.ts';
import { formOf, loopOnPlan } from '../../drawing/on-plan.ts';
import { tintOf } from '../../drawing/tints.ts';
import type { PlanArea, PlanPart, PlanUnit } from './plan-input.ts';

/** A line round a unit takes no more than this share of the unit's width: the smallest units still show their middle. */
const FINEST_PEN = 0.06;

/** The whole units of an area: of each part and unit one shape, however many they are. */
export function wholeShapes(area: PlanArea, units: readonly PlanUnit[], scale: number): Rows[] {
  return area.parts.flatMap(part =>
    units.flatMap(unit => {
      const runs = part.laid.wholes.filter(run => run.unit === unit.key);
      if (runs.length === 0) return [];
      const key = `${area.key}/${part.key}/whole/${unit.name}`;
      return [{ kind: 'rows', key, ink: wholeInk(part), form: formOf(unit), runs, ...finish(unit, scale) }];
    })
  );
}

/** Each cut unit with its pieces, a shape of its own; keys count them in the order of the laying. */
export function cutShapes(area: PlanArea, units: readonly PlanUnit[], scale: number): Outlines[] {
  return area.parts.flatMap(part =>
    part.laid.cuts.map(({ unit: key, at, pieces }, index): Outlines => {
      const unit = units.find(one => one.key === key);
      const loops = pieces.flatMap(({ outline, holes }) => [outline, ...holes]);
      return {
        kind: 'outlines',
        key: cutKey(area, part, index),
        ink: part.kind === 'field' || part.kind === 'inset' ? 'cut' : 'border-cut',
        says: `Cut ${part.numbers[index]}: ${unit?.name ?? ''}`,
        loops: loops.map(loop => loopOnPlan(loop, at)),
        ...(unit ? finish(unit, scale) : {})
      };
    })
  );
}

export function cutKey(area: PlanArea, part: PlanPart, index: number): string {
  return `${area.key}/${part.key}/cut/${index + 1}`;
}

export function wholeInk({ kind }: Pick<PlanPart, 'kind'>): Ink {
  return kind === 'field' || kind === 'inset' ? 'whole' : 'border';
}

function finish(unit: PlanUnit, scale: number): Pick<Extract<Shape, { kind: 'rows' }>, 'tint' | 'pen'> {
  const tint = tintOf(unit.colour);
  const pen = (Math.min(unit.length, unit.width) * FINEST_PEN) / scale;
  return { pen, ...(tint === undefined ? {} : { tint }) };
}
