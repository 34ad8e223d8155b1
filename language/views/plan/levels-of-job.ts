import { distance, inside, type Loop, type Point } from '../../geometry/index.ts';
import type { Bounds } from '../../geometry/bounds.ts';
import type { Datum } from '../../job/heights.ts';
import type { Area, Job, System } from '../../job/job.ts';
import { gradientAt, type Surface } from '../../levels/surface.ts';
import { printSlope, printLength } from '../../measures/print.ts';
import { levelStyleOf, printLevel } from '../../measures/print-level.ts';
import { areaHeights } from '../../quantities/area-heights.ts';
import type { JobNumbers } from '../../quantities/contract.ts';
import { footOn } from '../../setting-out/stationed-line.ts';
import type { FallPlace, PlanFall, PlanPoint, PlanSite } from './plan-site.ts';
import { isInView, spreadOver } from './view.ts';

/** m: what lies nearer is one place. */
const SAME_PLACE = 0.001;

/** Points of the job in view, and corners without a name where a finish is known; with its heights there. */
export function pointsOfJob(job: Job, view: Bounds): PlanPoint[] {
  const named = job.points
    .filter(point => isInView(point, view))
    .map(({ key, name, x, y }) => ({ key, name, at: { x, y } }));
  const corners = job.areas
    .filter(({ finish }) => finish !== undefined)
    .flatMap(area => cornersOf(area).map(({ index, at }) => ({ key: `${area.key}/corner-${index + 1}`, area, at })))
    .filter(({ at, area }) => !named.some(point => isSame(point.at, at)) && !isRoundedAtPoint(area.outline, at, named))
    .filter(({ at }, index, all) => all.findIndex(other => isSame(other.at, at)) === index);
  return [...named, ...corners.map(({ key, at }) => ({ key, at }))].map(point => ({
    ...point,
    heights: heightsAt(job, point.at)
  }));
}

/** Where one side ends and another begins: a side measured by offsets bends on its way, and is one side. */
function cornersOf({ outline, edges }: Area): { index: number; at: Point }[] {
  return outline
    .map(({ from }, index) => ({ index, at: from }))
    .filter(({ index }) => edges[index] === undefined || edges[index].key !== edges.at(index - 1)?.key);
}

function isSame(a: Point, b: Point): boolean {
  return distance(a, b) <= SAME_PLACE;
}

/** An end of an arc that rounds the corner at a named point: the height is told at the point. */
function isRoundedAtPoint(outline: Loop, at: Point, named: readonly { readonly at: Point }[]): boolean {
  return outline.some(side => {
    if (!isSame(side.from, at) && !isSame(side.to, at)) return false;
    const corner = cornerOf(side);
    return corner !== undefined && named.some(point => isSame(point.at, corner));
  });
}

/** Where the straights that an arc rounds off would meet. */
function cornerOf({ from, to, arc }: Loop[number]): Point | undefined {
  if (arc === undefined || Math.abs(arc.turn) > Math.PI * 0.99) return undefined;
  const middle = { x: (from.x + to.x) / 2 - arc.centre.x, y: (from.y + to.y) / 2 - arc.centre.y };
  const times = 1 / Math.cos(arc.turn / 2) ** 2;
  return { x: arc.centre.x + middle.x * times, y: arc.centre.y + middle.y * times };
}

/** The finish at a place of each area that it belongs to; once where they agree. */
function heightsAt({ areas, datum, system }: Job, at: Point): string[] {
  if (datum === undefined) return [];
  const all = areas.flatMap(area => {
    const heights = belongsTo(area, at) ? areaHeights(area) : undefined;
    return heights === undefined
      ? []
      : [{ name: area.name, text: printLevel(heights.at(at).finish, datum, levelStyleOf(system)) }];
  });
  const [first] = all;
  if (first === undefined) return [];
  return all.every(({ text }) => text === first.text) ? [first.text] : all.map(({ name, text }) => `${name} ${text}`);
}

/** Whether a place lies in an area, at a corner of it, or where its rounded sides would meet. */
export function belongsTo({ outline }: Area, at: Point): boolean {
  if (inside(outline, at)) return true;
  return outline.some(side => {
    if (isSame(side.from, at)) return true;
    const corner = cornerOf(side);
    return corner !== undefined && isSame(corner, at);
  });
}

/** Places looked at for arrows, each way, and arrows of an area at most. */
const EACH_WAY = 16;
const MOST_ARROWS = 4;
const MOST_PLACES = 60;

/** Two arrows that print alike and point so nearly alike, radians, are one. */
const SAME_WAY = 0.09;

/** For each area arrows down its steepest lines: more than one where it falls in several ways. */
export function fallsOf(area: Area, system: System): PlanFall[] {
  const surface = area.finish?.surface;
  if (surface === undefined) return [];
  const places = spreadOver(
    area.outline,
    area.keptOut.map(({ outline }) => outline),
    EACH_WAY
  );
  const parts = new Map<string, Point[]>();
  for (const place of places) {
    const part = partOf(surface, place);
    parts.set(part, [...(parts.get(part) ?? []), place]);
  }
  const largest = [...parts.values()].sort((a, b) => b.length - a.length).slice(0, MOST_ARROWS);
  const found: FallPlace[][] = [];
  for (const part of largest) {
    const falls = fromMiddle(part).flatMap(at => fallAt(surface, at, system));
    const [first] = falls;
    if (first !== undefined && !found.some(([other]) => other !== undefined && areAlike(other, first)))
      found.push(falls);
  }
  return found.map((falls, index) => ({ key: `${area.key}/fall-${index + 1}`, area: area.key, places: falls }));
}

/** Which part of a surface a place lies in: a plane is one part. */
function partOf(surface: Surface, at: Point): string {
  switch (surface.kind) {
    case 'plane':
      return '';
    case 'folded': {
      const { from, to } = surface;
      return String((to.x - from.x) * (at.y - from.y) >= (to.y - from.y) * (at.x - from.x));
    }
    case 'twisted': {
      const far = surface.corners.map(corner => distance(corner, at));
      return String(far.indexOf(Math.min(...far)));
    }
    case 'along': {
      const foot = footOn(surface.line, at);
      const passed = surface.stations.filter((station, index) => index > 0 && station.at <= foot.at).length;
      const part = surface.line.parts.filter(({ start }) => start <= foot.at).length;
      return [passed, part, surface.across.kind === 'camber' && foot.off > 0].join();
    }
  }
}

function fromMiddle(places: readonly Point[]): Point[] {
  const x = places.reduce((sum, place) => sum + place.x, 0) / places.length;
  const y = places.reduce((sum, place) => sum + place.y, 0) / places.length;
  return [...places].sort((a, b) => distance(a, { x, y }) - distance(b, { x, y })).slice(0, MOST_PLACES);
}

function fallAt(surface: Surface, at: Point, system: System): FallPlace[] {
  const up = gradientAt(surface, at);
  const text = fallText(Math.hypot(up.x, up.y), system);
  return text === 'level' ? [] : [{ at, down: Math.atan2(-up.y, -up.x), text }];
}

/** `1:48`, or `1/4 in per ft`: short enough for an arrow; `level` where it falls by next to nothing. */
function fallText(ratio: number, system: System): string {
  return printSlope(ratio, system).replace(/ \(.*\)$/, '');
}

function areAlike(a: FallPlace, b: FallPlace): boolean {
  return a.text === b.text && Math.cos(a.down - b.down) > Math.cos(SAME_WAY);
}

/** Heights of each area in words. */
export function levelsOfJob(
  { system }: Job,
  datum: Datum,
  { quantities }: Pick<JobNumbers, 'quantities'>
): PlanSite['levels'] {
  const text = (z: number | undefined): string | undefined =>
    z === undefined ? undefined : printLevel(z, datum, levelStyleOf(system));
  return quantities.areas.flatMap(({ id, levels }) => {
    const rows = (levels ?? []).flatMap(({ at, along, finish, ground, digBottom }) => {
      const [finished, today, dug] = [text(finish), text(ground), text(digBottom)];
      if (finished === undefined) return [];
      return [
        {
          at: along === undefined ? at : `${at}, ${printLength(along, system)}`,
          finish: finished,
          ...(today === undefined ? {} : { ground: today }),
          ...(dug === undefined ? {} : { digBottom: dug })
        }
      ];
    });
    return rows.length === 0 ? [] : [{ area: id, rows }];
  });
}
