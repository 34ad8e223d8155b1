import type { Line, Outlines } from '../../drawing/drawing.ts';
import type { Side } from '../../geometry/index.ts';
import type { PlanArea, PlanKeptOut } from './plan-input.ts';

/** What shows between the units. */
export function groundShapes({ key, outline, parts }: PlanArea): Outlines[] {
  return parts.length === 0 ? [] : [{ kind: 'outlines', key: `${key}/ground`, ink: 'ground', loops: [outline] }];
}

export function outlineShape({ key, outline, name, noNumbers }: PlanArea): Outlines {
  return {
    kind: 'outlines',
    key: `${key}/outline`,
    ink: noNumbers === undefined ? 'outline' : 'outline-only',
    loops: [outline],
    says: noNumbers === undefined ? `Area ${name}` : `Area ${name}, no numbers: ${noNumbers}`
  };
}

/** A drain is drawn as such, whether it lies in an area or beside it. */
export function isDrawn({ kind }: PlanKeptOut): boolean {
  return kind !== 'drain';
}

export function keptOutShapes({ keptOut }: PlanArea): Outlines[] {
  return keptOut.filter(isDrawn).map(({ key, kind, name, outline }) => ({
    kind: 'outlines',
    key: `${key}/outline`,
    ink: kind === 'inset' ? 'inset' : 'kept-out',
    loops: [outline],
    says: `${kind} ${name}`
  }));
}

/** A thick line along all sides of one edging that follow each other; drawn under the area, its outer half shows. */
export function edgingShapes({ key: area, outline, sides }: PlanArea): (Line | Outlines)[] {
  const allRound = sides[0]?.edging;
  if (allRound !== undefined && sides.every(({ edging }) => edging === allRound)) {
    return [{ kind: 'outlines', key: `${area}/edging`, ink: 'edging', loops: [outline], says: `Edging ${allRound}` }];
  }
  const lines: { key: string; edging: string; sides: Side[] }[] = [];
  // Begun where the edging changes, so that no stretch is parted at the first corner.
  const first = Math.max(
    0,
    sides.findIndex(({ edging }, index) => edging !== sides.at(index - 1)?.edging)
  );
  for (let count = 0; count < outline.length; count++) {
    const index = (first + count) % outline.length;
    const side = outline[index]!;
    const { edging, key } = sides[index]!;
    const last = lines.at(-1);
    if (edging === undefined) continue;
    if (last?.edging === edging && last.sides.at(-1)?.to === side.from) last.sides.push(side);
    else lines.push({ key: `${key}/edging`, edging, sides: [side] });
  }
  return lines.map(({ key, edging, sides: along }) => ({
    kind: 'line',
    key,
    ink: 'edging',
    sides: along,
    says: `Edging ${edging}`
  }));
}
