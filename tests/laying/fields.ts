import { rectangleLoop } from '../../language/geometry/index.ts';
import type { AreaToLay, FieldToLay } from '../../language/laying/area-to-lay.ts';
import { boundsOf, outOfFrame } from '../../language/geometry/index.ts';
import type { LaidArea } from '../../language/laying/lay-area.ts';
import { layArea } from '../../language/laying/lay-area.ts';
import { drain } from '../../language/session/session.ts';

/** Metres from millimetres. */
export const mm = (millimetres: number): number => millimetres / 1000;

/** An area of one unit in courses, sizes in millimetres. */
export function courses(
  outline: AreaToLay['outline'],
  [length, width]: readonly [number, number],
  joint: number,
  more: Partial<FieldToLay> & { readonly offset?: number } = {}
): AreaToLay {
  const { offset = 0, ...field } = more;
  return {
    outline,
    keptOut: [],
    insets: [],
    borders: [],
    bands: [],
    field: {
      units: [{ key: 'unit:block', length: mm(length), width: mm(width) }],
      bond: { way: 'courses', offset },
      joint: { width: mm(joint), least: mm(joint), most: mm(joint) },
      turned: 0,
      start: { whole: [], equalCuts: false },
      ...field
    }
  };
}

export function rectangle(length: number, width: number): AreaToLay['outline'] {
  return rectangleLoop(mm(length), mm(width), { x: 0, y: 0 }, 0);
}

export function laid(area: AreaToLay): LaidArea {
  const result = drain(layArea(area));
  if (!('parts' in result)) throw new Error(`${result.part} can't be laid`);
  return result;
}

/** Cut pieces as boxes on the plan, `left..right x bottom..top` in millimetres, in their order from the start. */
export function piecesOnPlan({ parts }: LaidArea): string[] {
  const boxes = parts.flatMap(({ laid: { cuts } }) =>
    cuts.flatMap(({ at, pieces }) => {
      const frame = { origin: { x: at.x, y: at.y }, direction: at.direction, mirrored: false };
      return pieces.map(({ outline }) =>
        boundsOf(outline.map(({ from, to }) => ({ from: outOfFrame(frame, from), to: outOfFrame(frame, to) })))
      );
    })
  );
  const shown = (metres: number): number => Math.round(metres * 10_000) / 10 + 0;
  return boxes
    .sort((a, b) => a.bottom - b.bottom || a.left - b.left)
    .map(({ left, right, bottom, top }) => `${shown(left)}..${shown(right)} x ${shown(bottom)}..${shown(top)}`);
}

export function wholeUnits({ parts }: LaidArea): number {
  return parts.flatMap(part => part.laid.wholes).reduce((sum, { count }) => sum + count, 0);
}

/** Square metres of pieces, whole units and joints. */
export function covered({ parts }: LaidArea): number {
  return parts.reduce((sum, { laid: { unitArea, jointArea } }) => sum + unitArea + jointArea, 0);
}
