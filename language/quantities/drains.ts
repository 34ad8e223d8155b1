import { type Loop, pointAlong, type Point, middleOf } from '../geometry/index.ts';
import type { Drain } from '../job/heights.ts';
import type { Area } from '../job/job.ts';
import { extremesBetween } from '../levels/extremes.ts';
import { heightAt } from '../levels/surface.ts';
import { leaf, measured, subtract, sum } from './arithmetic.ts';
import type { Book, Page } from './page.ts';
import type { SiteArea } from './site-area.ts';
import type { DrainQuantities } from './site-contract.ts';
import type { DrainedBy } from './water-stage.ts';

/** Drains: how their grates lie to the finish, and what of the paving runs to them. */
export function drainsOf(
  drains: readonly Drain[],
  areas: readonly SiteArea[],
  drained: readonly DrainedBy[],
  book: Book
): DrainQuantities[] {
  return drains.map((drain, index) => {
    const at = `/drains/${index}`;
    const page = book.page('drain', at);
    const from = drained
      .filter(one => one.drain === drain.key)
      .map(({ area, drained: size }) => ({ area, drained: size }));
    const parts = from.map(({ area, drained: size }) =>
      measured(`area of ${nameOf(areas, area)} that drains to it`, size, 'm2', area)
    );
    const [first = measured('area that drains to it', 0, 'm2', drain.key), ...others] = parts;
    page.put('drained', sum(first, ...others));
    grateNumbers(drain, areas, at, page);
    return { id: drain.key, name: drain.name, from, ...page.numbers };
  });
}

function nameOf(areas: readonly SiteArea[], key: string): string {
  return areas.find(({ area }) => area.key === key)?.area.name ?? key;
}

function grateNumbers(drain: Drain, areas: readonly SiteArea[], at: string, page: Page<'drain'>): void {
  if (drain.grates.length === 0) return;
  const grate = Math.min(...drain.grates.map(({ z }) => z));
  page.repeat('grate', grate);
  const beside = areas.map(({ area }) => area).filter(area => area.drains.some(({ key }) => key === drain.key));
  const least = beside
    .flatMap(area => leastAbove(drain, area) ?? [])
    .reduce<Above | undefined>((best, next) => (best && best.above <= next.above ? best : next), undefined);
  if (least === undefined) return;
  const grateThere = measured('grate there', least.grate, 'm', drain.key);
  const lowest = leaf('grate', grate, 'm', { pointer: `${at}/grate` });
  page.put(
    'finishAbove',
    subtract(measured('finish beside it', least.finish, 'm', drain.key), least.grate === grate ? lowest : grateThere)
  );
}

interface Above {
  readonly above: number;
  readonly finish: number;
  readonly grate: number;
}

/** Where the finish of an area stands least above the grate. */
function leastAbove(drain: Drain, { finish }: Area): Above | undefined {
  if (finish === undefined) return undefined;
  const { surface } = finish;
  const aboveOn = (place: (share: number) => Point): Above => {
    const { least } = extremesBetween(share => heightAt(surface, place(share)) - grateAt(drain, place(share)), 0, 1);
    const at = place(least.at);
    return { above: least.value, finish: heightAt(surface, at), grate: grateAt(drain, at) };
  };
  const { line } = drain;
  if (line !== undefined) return aboveOn(share => pointAlong(line, share));
  return round(drain.outline)
    .map(aboveOn)
    .reduce((best, next) => (best.above <= next.above ? best : next));
}

function round(outline: Loop): ((share: number) => Point)[] {
  const middle = middleOf(outline);
  return outline.length === 0
    ? [() => middle]
    : outline.map(
        side =>
          (share: number): Point =>
            pointAlong(side, share)
      );
}

/** Height of the grate: straight between the places where it is told, beyond them as at the nearest. */
function grateAt({ grates, line }: Drain, { x, y }: Point): number {
  const [only] = grates;
  const told = grates.flatMap(({ at, z }) => (at === undefined ? [] : [{ at, z }]));
  if (line === undefined || told.length < 2) return only!.z;
  const [dx, dy] = [line.to.x - line.from.x, line.to.y - line.from.y];
  const along = (place: Point): number => place.x * dx + place.y * dy;
  const inOrder = told.map(({ at, z }) => ({ s: along(at), z })).sort((a, b) => a.s - b.s);
  const s = along({ x, y });
  const after = inOrder.findIndex(one => one.s >= s);
  if (after === 0) return inOrder[0]!.z;
  if (after < 0) return inOrder.at(-1)!.z;
  const [low, high] = [inOrder[after - 1]!, inOrder[after]!];
  return low.z + ((high.z - low.z) * (s - low.s)) / (high.s - low.s);
}
