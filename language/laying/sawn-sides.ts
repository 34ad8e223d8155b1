import { distance, pointAlong, type Side, turnedAbout } from '../geometry/index.ts';
import type { AreaToLay } from './area-to-lay.ts';
import { isOnUnitSide } from './cut-list/saw-lines.ts';
import { type UnitOutline, unitOutline } from './cut-list/unit-shape.ts';
import { lineWithin } from './field-frame.ts';
import type { CutUnit } from './laid.ts';
import type { LaidArea } from './lay-area.ts';
import { reachOf } from './reach.ts';

/** A side along which whole units were asked for, and how many are cut there. */
export interface SawnSide {
  readonly side: number;
  readonly cut: number;
}

/** In metres: a sawn side this near to a line lies on it. */
const ON_LINE = 1e-4;

/** In metres: shorter sides of a piece are corners that something else cuts off. */
const SHORTEST = 1e-3;

/** The sides along which whole units were asked for, and along which units of the field are sawn all the same. */
export function sawnSides(area: AreaToLay, { parts }: LaidArea): SawnSide[] {
  const field = parts.find(({ part }) => part === 'field');
  const { whole } = area.field.start;
  if (field === undefined || whole.length === 0) return [];
  const hexagon = area.field.bond.way === 'hexagons';
  const shapes = new Map(
    area.field.units.map(({ key, length, width }): [string, UnitOutline] => [
      key,
      unitOutline({ shape: hexagon ? 'hexagon' : 'rectangle', length, width })
    ])
  );
  const reach = reachOf(area);
  return whole.flatMap((side): SawnSide[] => {
    const bowed = area.outline[side]!.arc !== undefined;
    const { at, inward } = lineWithin(area.outline, reach, side);
    const onLine = ({ x, y }: { readonly x: number; readonly y: number }): boolean =>
      Math.abs((x - at.x) * inward.x + (y - at.y) * inward.y) <= ON_LINE;
    const cut = field.laid.cuts.filter(unit => {
      const shape = shapes.get(unit.unit);
      return shape !== undefined && sawnIn(unit, shape).some(({ from, to }) => onLine(from) && onLine(to));
    }).length;
    return bowed || cut > 0 ? [{ side, cut }] : [];
  });
}

/** The straight sawn sides of a cut unit's pieces, on the plan. */
function sawnIn({ at, pieces }: CutUnit, shape: UnitOutline): Side[] {
  const placed = (point: Side['from']): Side['from'] => {
    const turned = turnedAbout(point, { x: 0, y: 0 }, at.direction);
    return { x: at.x + turned.x, y: at.y + turned.y };
  };
  return pieces
    .flatMap(({ outline }) => outline)
    .filter(side => side.arc === undefined && distance(side.from, side.to) > SHORTEST && !isOnUnitSide(side, shape))
    .map(side => ({ from: placed(pointAlong(side, 0)), to: placed(pointAlong(side, 1)) }));
}
