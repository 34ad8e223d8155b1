import type { Layer, Line, Shape, Sheet } from '../../../drawing/drawing.ts';
import type { Ink } from '../../../drawing/inks.ts';
import { circleLoop, type Point, type Side } from '../../../geometry/index.ts';
import { leftOver, runsInRow } from '../../../geometry/left-over.ts';
import type { System } from '../../../job/job.ts';
import { printAs } from '../../../measures/print.ts';
import { ground } from '../page.ts';
import { crossShapes } from '../thing-shapes.ts';
import type { AreaChange } from './area-changes.ts';
import { goneCross, moveShapes } from './change-signs.ts';
import { areaLabel, markLabels, pointLabel } from './change-words.ts';
import type { EdgingChange } from './edging-changes.ts';
import type { GroundChange } from './ground-change.ts';
import { type Mark, type MarkChange, middleOfMark } from './mark-changes.ts';
import type { PlanChanges } from './plan-changes.ts';
import type { PointChange } from './point-changes.ts';

/** Half the width of a dot, mm on paper. */
const DOT = 0.75;

/** All that is drawn and not written, what lies lowest first. */
export function overlayShapes(changes: PlanChanges, sheet: Sheet, system: System): Layer[] {
  const { areas, ground: groundChanged, edgings, marks, points } = changes;
  return [
    { key: 'edging', shapes: edgings.flatMap(edgingShapes) },
    { key: 'kept-ground', shapes: areas.flatMap(keptGround) },
    { key: 'ground', shapes: groundShapes(groundChanged, system) },
    { key: 'edging-gone', shapes: edgings.flatMap(edgingGone) },
    { key: 'outlines-gone', shapes: areas.flatMap(area => outlineGone(area, edgings, system)) },
    { key: 'outlines', shapes: areas.flatMap(area => outlineShapes(area, system)) },
    { key: 'marks', shapes: marks.flatMap(mark => markShapes(mark, sheet, system)) },
    { key: 'points', shapes: points.flatMap(point => pointShapes(point, sheet, system)) }
  ].filter(({ shapes }) => shapes.length > 0);
}

/** Ground that is paved now lies on a tint, so that it is told from what lies round it. */
function keptGround({ key, fate, after, before }: AreaChange): Shape[] {
  const shown = after ?? (fate === 'unknown' ? before : undefined);
  if (shown === undefined) return [];
  return [{ kind: 'outlines', key: `${key}/ground`, ink: 'kept-ground', loops: [shown.outline], tint: 'grey' }];
}

function groundShapes({ given, added }: GroundChange, system: System): Shape[] {
  return [
    ...given.map(({ key, name, loops, size }): Shape => ({
      kind: 'outlines',
      key: `${key}/ground-given`,
      ink: 'given-ground',
      loops,
      says: `${printAs('area', size, system)} of ${name} given up`
    })),
    ...added.map(({ key, name, loops, size }): Shape => ({
      kind: 'outlines',
      key: `${key}/ground-added`,
      ink: 'added-ground',
      loops,
      says: `${printAs('area', size, system)} added to ${name}`
    }))
  ];
}

function edgingShapes({ key, edging, stays, come }: EdgingChange): Line[] {
  return [
    ...lines(`${key}/stays`, 'edging-stays', stays, `edging ${edging}`),
    ...lines(`${key}/comes`, 'edging', come, `edging ${edging}, new`)
  ];
}

function edgingGone({ key, edging, gone }: EdgingChange): Line[] {
  return lines(`${key}/goes`, 'edging-goes', gone, `edging ${edging}, gone`);
}

function lines(key: string, ink: Ink, sides: readonly Side[], says: string): Line[] {
  return runsInRow(sides).map((run, index): Line => ({
    kind: 'line',
    key: `${key}/${index + 1}`,
    ink,
    sides: run,
    says
  }));
}

/** Drawn before the others: where another side runs along it, that one is seen; where an edging goes with it, that says it. */
function outlineGone(area: AreaChange, edgings: readonly EdgingChange[], system: System): Line[] {
  const { key, fate, before, after } = area;
  if (fate === 'unknown') return [];
  const edged = edgings.filter(({ areaKey }) => areaKey === key).flatMap(({ gone }) => gone);
  const gone = (before?.outline ?? []).flatMap(side => leftOver(side, [...(after?.outline ?? []), ...edged]));
  return lines(`${key}/outline/goes`, 'goes', gone, `${saysOf(area, system)}: as it was`);
}

function outlineShapes(area: AreaChange, system: System): Line[] {
  const { key, fate, before, after } = area;
  const [old, now] = [before?.outline ?? [], after?.outline ?? []];
  const says = saysOf(area, system);
  if (fate === 'unknown') return lines(`${key}/outline`, 'stays', [...old, ...now], says);
  const come = now.flatMap(side => leftOver(side, old));
  const stays = now.flatMap(side => leftOver(side, come));
  return [
    ...lines(`${key}/outline`, 'stays', stays, says),
    ...lines(`${key}/outline/comes`, 'comes', come, `${says}: as it is now`)
  ];
}

function saysOf(area: AreaChange, system: System): string {
  return `Area ${areaLabel(area, system).join(', ')}`;
}

function markShapes(mark: MarkChange, sheet: Sheet, system: System): Shape[] {
  const { key, fate, before, after, isWhereItWas } = mark;
  const says = markLabels(mark, system)[0]!;
  // What only is told otherwise stands where it stood.
  if (isWhereItWas || fate === 'unknown') return shapesOf((after ?? before)!, key, 'stays', sheet, says);
  return [
    ...(before ? shapesOf(before, `${key}/before`, 'goes', sheet, `${says}: as it was`) : []),
    ...(after ? shapesOf(after, key, 'comes', sheet, says) : []),
    ...(before && after === undefined ? goneCross(key, middleOfMark(before), sheet, says) : []),
    ...(fate === 'moves' ? moveShapes(key, middleOfMark(before!), middleOfMark(after!), sheet, says) : [])
  ];
}

function shapesOf({ loops, lines: all, dots }: Mark, key: string, ink: Ink, sheet: Sheet, says: string): Shape[] {
  return [
    ...loops.map((loop, index): Shape => ({
      kind: 'outlines',
      key: index === 0 ? key : `${key}/${index + 1}`,
      ink,
      loops: [loop],
      says
    })),
    ...all.map((sides, index): Shape => ({
      kind: 'line',
      key: loops.length + index === 0 ? key : `${key}/line-${index + 1}`,
      ink,
      sides,
      says
    })),
    ...dots.map((at, index): Shape => ({
      kind: 'outlines',
      key: `${key}/dot-${index + 1}`,
      ink,
      loops: [circleLoop(at, ground(sheet, DOT))],
      says
    }))
  ];
}

function pointShapes(point: PointChange, sheet: Sheet, system: System): Shape[] {
  const { key, name, fate, before, after, at } = point;
  if (name === undefined) return [];
  const says = `Point ${pointLabel(point, system)}`;
  if (fate === 'goes') return goneCross(key, at, sheet, says);
  if (fate === 'unknown') return crossShapes({ points: [(after ?? before)!] }, sheet);
  const [old, now]: [Point | undefined, Point] = [before?.at, after!.at];
  return [
    ...(fate === 'moves' ? goneCross(`${key}/before`, old!, sheet, says) : []),
    ...(fate === 'moves' ? moveShapes(key, old!, now, sheet, says) : []),
    ...crossShapes({ points: [after!] }, sheet)
  ];
}
