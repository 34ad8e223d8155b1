import type { Shape, Sheet } from '../../drawing/drawing.ts';
import { circleLoop, cornerLoop, rectangleLoop } from '../../geometry/index.ts';
import { entryHeight, LEGEND_LINE, LEGEND_SIZE, type LegendEntry, type Sign, SIGN_GAP, SIGN_WIDTH } from './legend.ts';
import { goneCross, moveShapes } from './overlay/change-signs.ts';
import { COLUMN, ground, type LegendRoom, onGround } from './page.ts';
import { diamond, LEAF, leafLoop } from './thing-shapes.ts';

/** Height of a sign, mm on paper. */
const SIGN_HEIGHT = 3.2;

/** The legend in its columns; where room ends, the last line says so. */
export function legendShapes(entries: readonly LegendEntry[], sheet: Sheet, room: LegendRoom): Shape[] {
  const shapes: Shape[] = [];
  let column = 0;
  let down = 0;
  for (const [index, entry] of entries.entries()) {
    // A heading stays with what it heads.
    const next = entry.strong ? entries[index + 1] : undefined;
    const bottom = down + entryHeight(entry) + (next ? entryHeight(next) : 0);
    if (down > 0 && bottom > room.height && column < room.columns - 1) [column, down] = [column + 1, 0];
    const spot = { sheet, left: room.left + column * COLUMN, top: room.top - down };
    const key = `sheet/legend/${index + 1}`;
    const left = room.height - down - entryHeight(entry);
    const isLast = index === entries.length - 1;
    if (column === room.columns - 1 && left < (isLast ? 0 : entryHeight(MORE))) {
      return [...shapes, ...entryShapes(MORE, key, spot)];
    }
    shapes.push(...entryShapes(entry, key, spot));
    down += entryHeight(entry);
  }
  return shapes;
}

const MORE: LegendEntry = { lines: ['… and more in the plan as text.'] };

interface Spot {
  readonly sheet: Sheet;
  /** mm on paper */
  readonly left: number;
  readonly top: number;
}

function entryShapes({ sign, strong, lines }: LegendEntry, key: string, spot: Spot): Shape[] {
  const { sheet, left, top } = spot;
  const indent = sign ? SIGN_WIDTH + SIGN_GAP : 0;
  return [
    ...(sign ? signShapes(sign, `${key}/sign`, spot) : []),
    ...lines.map((text, index): Shape => ({
      kind: 'label',
      key: `${key}/${index + 1}`,
      ink: strong ? 'strong' : 'text',
      at: onGround(sheet, left + indent, top - (index + 0.5) * LEGEND_LINE),
      text,
      size: ground(sheet, LEGEND_SIZE),
      turn: 0,
      anchor: 'start'
    }))
  ];
}

function signShapes(sign: Sign, key: string, { sheet, left, top }: Spot): Shape[] {
  const middle = top - LEGEND_LINE / 2;
  const at = (x: number, y: number) => onGround(sheet, left + x, middle + y);
  const letters = (text: string, size: number): Shape => {
    const centre = at(SIGN_WIDTH / 2, 0);
    return {
      kind: 'label',
      key: `${key}/text`,
      ink: 'number',
      at: centre,
      text,
      size: ground(sheet, size),
      turn: 0,
      anchor: 'middle'
    };
  };
  if ('ink' in sign) {
    const loop = rectangleLoop(ground(sheet, SIGN_WIDTH), ground(sheet, SIGN_HEIGHT), at(0, -SIGN_HEIGHT / 2), 0);
    const tint = sign.tint === undefined ? {} : { tint: sign.tint };
    return [
      { kind: 'outlines', key, ink: sign.ink, loops: [loop], ...tint },
      ...(sign.text === undefined ? [] : [letters(sign.text, 2.5)])
    ];
  }
  if ('leaf' in sign) {
    const loop = leafLoop({ from: at(0, 0), to: at(SIGN_WIDTH, 0) }, ground(sheet, LEAF));
    return [{ kind: 'outlines', key, ink: 'leaf', loops: [loop] }];
  }
  if ('stroke' in sign) {
    return [{ kind: 'line', key, ink: sign.stroke, sides: [{ from: at(0, 0), to: at(SIGN_WIDTH, 0) }] }];
  }
  if ('tick' in sign) {
    const middle = SIGN_WIDTH / 2;
    return [
      { kind: 'line', key: `${key}/side`, ink: 'outline', sides: [{ from: at(0, 0), to: at(SIGN_WIDTH, 0) }] },
      { kind: 'line', key, ink: 'tick', sides: [{ from: at(middle, -1.3), to: at(middle, 1.3) }] }
    ];
  }
  if ('dot' in sign) {
    const half = ground(sheet, 1);
    const loop =
      sign.dot === 'diamond' ? diamond(at(SIGN_WIDTH / 2, 0), half) : circleLoop(at(SIGN_WIDTH / 2, 0), half);
    return [{ kind: 'outlines', key, ink: 'dot', loops: [loop] }];
  }
  if ('line' in sign) {
    // As beside an area: the outer half of the pen.
    return [
      {
        kind: 'outlines',
        key,
        ink: 'bar-dark',
        loops: [rectangleLoop(ground(sheet, SIGN_WIDTH), ground(sheet, 1), at(0, -0.5), 0)]
      }
    ];
  }
  if ('mark' in sign) {
    return [
      { kind: 'outlines', key, ink: 'mark', loops: [circleLoop(at(SIGN_WIDTH / 2, 0), ground(sheet, 1.9))] },
      letters(sign.mark, 1.9)
    ];
  }
  if ('cross' in sign || 'point' in sign) {
    const half = 'cross' in sign ? 2 : 1.5;
    const ink = 'cross' in sign ? 'start' : 'cross';
    const across = { from: at(SIGN_WIDTH / 2 - half, 0), to: at(SIGN_WIDTH / 2 + half, 0) };
    const up = { from: at(SIGN_WIDTH / 2, -1.5), to: at(SIGN_WIDTH / 2, 1.5) };
    return [
      { kind: 'line', key: `${key}/across`, ink, sides: [across] },
      { kind: 'line', key: `${key}/up`, ink, sides: [up] }
    ];
  }
  if ('gone' in sign) {
    const loop = rectangleLoop(ground(sheet, SIGN_WIDTH), ground(sheet, SIGN_HEIGHT), at(0, -SIGN_HEIGHT / 2), 0);
    return [{ kind: 'outlines', key, ink: 'goes', loops: [loop] }, ...goneCross(key, at(SIGN_WIDTH / 2, 0), sheet)];
  }
  if ('move' in sign) return moveShapes(key, at(0.4, 0), at(SIGN_WIDTH, 0), sheet);
  if ('fall' in sign) {
    const tip = cornerLoop([at(SIGN_WIDTH - 2.6, 0.8), at(SIGN_WIDTH, 0), at(SIGN_WIDTH - 2.6, -0.8)].reverse());
    return [
      { kind: 'line', key: `${key}/line`, ink: 'fall', sides: [{ from: at(0.4, 0), to: at(SIGN_WIDTH - 2.6, 0) }] },
      { kind: 'outlines', key: `${key}/head`, ink: 'fall', loops: [tip] }
    ];
  }
  const head = cornerLoop([at(SIGN_WIDTH - 3, 1.1), at(SIGN_WIDTH, 0), at(SIGN_WIDTH - 3, -1.1)].reverse());
  return [
    { kind: 'line', key: `${key}/line`, ink: 'start', sides: [{ from: at(0.4, 0), to: at(SIGN_WIDTH - 3, 0) }] },
    { kind: 'line', key: `${key}/bar`, ink: 'start', sides: [{ from: at(0.4, -1.1), to: at(0.4, 1.1) }] },
    { kind: 'outlines', key: `${key}/head`, ink: 'start', loops: [head] }
  ];
}
