import type { Shape } from '../../../drawing/drawing.ts';
import { PIPES_CAUTION } from '../../text/cautions.ts';
import { entry, type LegendEntry } from '../legend.ts';
import type { PlanChanges } from './plan-changes.ts';

export const NOTHING_ON_PLAN = 'Nothing on the plan differs.';

/** Each sign that is drawn, in words. */
export function overlayLegend(changes: PlanChanges, shapes: readonly Shape[]): LegendEntry[] {
  const inks = new Set(shapes.map(({ ink }) => ink));
  const { marks, heightsFrom, notDrawn } = changes;
  const shown = (entries: readonly (readonly [Shape['ink'], LegendEntry])[]): LegendEntry[] =>
    entries.flatMap(([ink, one]) => (inks.has(ink) ? [one] : []));
  const hasPipes = marks.some(({ after, before }) => (after ?? before)!.kind === 'pipe');
  const hasHeights = changes.points.some(({ heights }) => heights.length > 0);
  return [
    ...(changes.differs ? [] : [entry(NOTHING_ON_PLAN, { strong: true })]),
    ...shown([
      ['added-ground', entry('ground added', { sign: { ink: 'added-ground' } })],
      ['given-ground', entry('ground given up', { sign: { ink: 'given-ground' } })],
      ['comes', entry('heavy line: as it is now, new', { sign: { stroke: 'comes' } })],
      ['goes', entry('broken line: as it was, gone', { sign: { stroke: 'goes' } })],
      ['stays', entry('thin line: stays', { sign: { stroke: 'stays' } })],
      ['edging', entry('edging, new', { sign: { stroke: 'edging' } })],
      ['edging-goes', entry('edging, gone', { sign: { stroke: 'edging-goes' } })],
      ['edging-stays', entry('edging, stays', { sign: { stroke: 'edging-stays' } })],
      ['gone-cross', entry('slanting cross: no longer there', { sign: { gone: true } })],
      ['move', entry('moved from there to here', { sign: { move: true } })],
      ['cross', entry('point', { sign: { point: true } })]
    ]),
    ...(hasHeights ? [entry('Heights at points and corners are of the finish, before → after.')] : []),
    ...(heightsFrom === undefined ? [] : [entry([`Before: ${heightsFrom.before}`, `After: ${heightsFrom.after}`])]),
    ...notDrawn.map(text => entry(text)),
    ...(hasPipes ? [entry(PIPES_CAUTION)] : []),
    entry('Before taking measures from a print, check the bar with a rule.')
  ];
}
