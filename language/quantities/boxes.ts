import { areaOf, inside, type Loop, type Point, pointAlong, type Side, middleOf } from '../geometry/index.ts';
import type { Area, Given, Key, KeptOut, NamedPoint, Unit } from '../job/job.ts';
import { extremesBetween } from '../levels/extremes.ts';
import {
  divide,
  type Expression,
  given,
  leaf,
  measured,
  multiply,
  notBelowNought,
  roundedUp,
  subtract,
  sum
} from './arithmetic.ts';
import { zOf } from '../job/heights.ts';
import { type AreaHeights, areaHeights } from './area-heights.ts';
import { tapedFrom } from './taped-from.ts';
import type { Book, Page } from './page.ts';
import { digBottomAt, type SiteArea, stretchesIn } from './site-area.ts';
import type { BoxQuantities } from './site-contract.ts';
import { unitsOf } from './units-of-area.ts';

/** Boxes of the job: how their lids come to the finish, or how far they are cut down, and how they are found again. */
export function boxesOf(
  boxes: readonly KeptOut[],
  areas: readonly SiteArea[],
  points: readonly NamedPoint[],
  book: Book
): BoxQuantities[] {
  return boxes
    .filter(({ kind }) => kind === 'box')
    .map((box, index) => {
      const at = `/boxes/${index}`;
      const page = book.page('box', at);
      const area = areas.find(({ area: { key } }) => key === box.area)?.area;
      const heights = area && areaHeights(area);
      const middle = middleOf(box.outline);
      if (heights !== undefined) page.repeat('finish', heights.at(middle).finish);
      if (box.lid !== undefined) page.repeat('lid', zOf(box.lid));
      if (heights !== undefined && box.lid !== undefined) lidNumbers(box, area!, heights, at, page);
      if (box.use?.tray !== undefined) {
        const paved = page.put('trayArea', trayArea(box));
        const units = trayUnits(box, paved, areas);
        if (units !== undefined) page.put('trayUnits', units.count);
      }
      return {
        id: box.key,
        name: box.name,
        area: box.area,
        ...(box.use === undefined ? {} : { inUse: box.use.inUse }),
        buried: isCutDown(box),
        x: middle.x,
        y: middle.y,
        tapedFrom: tapedFrom(points, middle),
        ...page.numbers
      };
    });
}

/** How far a box is cut down at least: to the bottom of the dig, or of a soft spot over it; undefined where that is not known. */
export function deepestCut(box: Pick<BoxQuantities, 'cutDown' | 'cutDownInSoftSpot'> | undefined): number | undefined {
  return box?.cutDown === undefined ? undefined : Math.max(box.cutDown, box.cutDownInSoftSpot ?? 0);
}

function isCutDown({ use }: KeptOut): boolean {
  return use !== undefined && use.buried && !use.inUse;
}

function lidNumbers(box: KeptOut, area: Area, heights: AreaHeights, at: string, page: Page<'box'>): void {
  const middle = middleOf(box.outline);
  const lid = leaf('height of the lid', zOf(box.lid!), 'm', { pointer: `${at}/lid` });
  if (!isCutDown(box)) {
    const finish = leaf('finish at the box', heights.at(middle).finish, 'm', { pointer: `${at}/finish` });
    page.put('change', subtract(finish, lid));
    return;
  }
  const cut = (key: 'cutDown' | 'cutDownAtMiddle' | 'cutDownInSoftSpot', words: string, bottom: number): void => {
    page.put(key, notBelowNought(subtract(lid, measured(words, bottom, 'm', box.key))));
  };
  const bottomAt = (place: Point): number => digBottomAt(heights, place);
  cut('cutDown', 'lowest bottom of the dig over it', leastOver(box.outline, area, bottomAt));
  cut('cutDownAtMiddle', 'bottom of the dig at its middle', bottomAt(middle));
  const soft = lowestSoftSpot(box.outline, area, heights);
  if (soft !== undefined) cut('cutDownInSoftSpot', 'lowest bottom of the soft spot over it', soft);
}

/** The lowest bottom under a shape of the soft spots that reach over it; undefined where none does. */
function lowestSoftSpot(outline: Loop, area: Area, heights: AreaHeights): number | undefined {
  const bottoms = area.softSpots.flatMap(({ outline: spot, deeper }) => {
    const shared = [...clipped(outline, spot), ...clipped(spot, outline)];
    return shared.length === 0 ? [] : [leastAlong(shared, at => digBottomAt(heights, at)) - deeper.value];
  });
  return bottoms.length === 0 ? undefined : Math.min(...bottoms);
}

/** What is lowest over a shape lies on its edge, or at a place where the ground was measured. */
function leastOver(outline: Loop, { site }: Area, heightOf: (at: Point) => number): number {
  const spots = (site.heights?.ground ?? []).filter(({ at }) => inside(outline, at)).map(({ at }) => heightOf(at));
  return Math.min(leastAlong(outline, heightOf), ...spots);
}

function leastAlong(sides: readonly Side[], heightOf: (at: Point) => number): number {
  const least = sides.map(side => extremesBetween(share => heightOf(pointAlong(side, share)), 0, 1).least.value);
  return Math.min(Infinity, ...least);
}

function clipped(sides: readonly Side[], within: Loop): Side[] {
  return sides.flatMap(side =>
    stretchesIn(side, [within]).map(({ from, to }) => ({
      from: pointAlong(side, from),
      to: pointAlong(side, to),
      ...(side.arc === undefined ? {} : { arc: { centre: side.arc.centre, turn: side.arc.turn * (to - from) } })
    }))
  );
}

type TrayArea = Pick<SiteArea, 'area'>;

/** The unit named, where some area lays it; else what is laid round the box. */
function unitOfTray({ use }: KeptOut, area: Area | undefined, areas: readonly TrayArea[]): Unit | undefined {
  const named = use?.tray?.unit;
  if (named === undefined) return area?.paving?.units[0];
  return areas.flatMap(one => unitsOf(one.area)).find(({ key }) => key === named);
}

function trayArea(box: KeptOut): Expression {
  return sum(measured('area of the cover', areaOf(box.outline), 'm2', box.key));
}

interface TrayUnits {
  readonly unit: Unit;
  readonly count: Expression;
}

function trayUnits(box: KeptOut, paved: Expression, areas: readonly TrayArea[]): TrayUnits | undefined {
  const area = areas.find(({ area: { key } }) => key === box.area)?.area;
  const unit = unitOfTray(box, area, areas);
  const joint = area?.paving?.joint.width;
  if (unit === undefined || joint === undefined) return undefined;
  const withJoint = (size: Given, words: string): Expression =>
    sum(given(words, size, 'm'), given('joint', joint, 'm'));
  const one = multiply(withJoint(unit.length, 'unit length'), withJoint(unit.width, 'unit width'));
  return one.value > 0 ? { unit, count: roundedUp(divide(paved, one)) } : undefined;
}

/** Units for a paved tray, to be bought with those of the areas. */
export interface Tray {
  readonly box: Key;
  readonly name: string;
  readonly area: Key;
  readonly unit: Key;
  readonly count: number;
  /** To its count: `/boxes/0/trayUnits`. */
  readonly pointer: string;
}

/** The paved trays of a job whose units are known. */
export function traysOf(boxes: readonly KeptOut[], areas: readonly TrayArea[]): Tray[] {
  return boxes
    .filter(({ kind }) => kind === 'box')
    .flatMap((box, index) => {
      const found = box.use?.tray === undefined ? undefined : trayUnits(box, trayArea(box), areas);
      if (found === undefined) return [];
      const { unit, count } = found;
      const pointer = `/boxes/${index}/trayUnits`;
      return [{ box: box.key, name: box.name, area: box.area, unit: unit.key, count: count.value, pointer }];
    });
}
