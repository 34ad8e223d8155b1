import { distance, inside, type Point } from '../geometry/index.ts';
import type { Area, Key } from '../job/job.ts';
import type { LogEntry, Measured, MeasuredLayer } from '../job/log.ts';
import { heightAt } from '../levels/surface.ts';
import { leaf, subtract } from './arithmetic.ts';
import { type AreaHeights, areaHeights } from './area-heights.ts';
import type { Book } from './page.ts';
import type { SiteArea } from './site-area.ts';
import type { GapQuantities, ReadingQuantities, SlopeQuantities } from './site-contract.ts';

type Entry<Kind extends Measured['kind']> = LogEntry & Extract<Measured, { readonly kind: Kind }>;

/** Heights that were measured, against the design; those at places in no area whose heights are known are left out. */
export function readingsOf(log: readonly LogEntry[], areas: readonly SiteArea[], book: Book): ReadingQuantities[] {
  const readings: ReadingQuantities[] = [];
  for (const entry of log) {
    if (entry.kind !== 'height') continue;
    for (const [index, { name, point, z }] of entry.at.entries()) {
      const area = areaMeasured(entry.area, point, areas);
      const design = area && designHeight(area, entry.layer, point);
      if (area === undefined || design === undefined) continue;
      const at = `/readings/${readings.length}`;
      const page = book.page('reading', at);
      page.repeat('measured', z);
      page.repeat('design', design);
      page.put(
        'above',
        subtract(
          leaf('measured height', z, 'm', { pointer: `${at}/measured` }),
          leaf('design height', design, 'm', { pointer: `${at}/design` })
        )
      );
      const { key, date, layer } = entry;
      readings.push({ id: `${key}/at-${index + 1}`, date, layer, at: name, area: area.key, ...page.numbers });
    }
  }
  return readings;
}

/** Gaps under a straightedge. */
export function gapsOf(log: readonly LogEntry[], book: Book): GapQuantities[] {
  return log
    .filter((entry): entry is Entry<'gap'> => entry.kind === 'gap')
    .map(({ key, date, area, gap, straightedge }, index) => {
      const page = book.page('gap', `/gaps/${index}`);
      page.repeat('gap', gap.value);
      page.repeat('straightedge', straightedge.value);
      return { id: key, date, ...(area === undefined ? {} : { area }), ...page.numbers };
    });
}

/** Slopes that were measured along a line, against the finish as designed. */
export function slopesOf(log: readonly LogEntry[], areas: readonly SiteArea[], book: Book): SlopeQuantities[] {
  return log
    .filter((entry): entry is Entry<'slope'> => entry.kind === 'slope')
    .map((entry, index) => {
      const { key, date, along, slope, from, to } = entry;
      const page = book.page('slope', `/slopes/${index}`);
      page.repeat('measured', slope.value);
      const area = areaMeasured(entry.area, middle(from, to), areas);
      const surface = area?.finish?.surface;
      const run = distance(from, to);
      if (surface !== undefined && run > 0)
        page.repeat('design', Math.abs(heightAt(surface, to) - heightAt(surface, from)) / run);
      return { id: key, date, along, ...(area === undefined ? {} : { area: area.key }), ...page.numbers };
    });
}

/** The area named, else the one that the place lies in or on the edge of. */
function areaMeasured(named: Key | undefined, at: Point, areas: readonly SiteArea[]): Area | undefined {
  return areas.find(({ area }) => (named === undefined ? inside(area.outline, at) : area.key === named))?.area;
}

function middle(from: Point, to: Point): Point {
  return { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
}

/** Height that a layer has by the design; undefined where the area has no such layer or no height. */
function designHeight(area: Area, measured: MeasuredLayer, at: Point): number | undefined {
  const heights = areaHeights(area);
  if (heights === undefined) return undefined;
  const bed = area.layers.find(({ role }) => role === 'bed');
  const settles = bed?.settles?.value ?? 0;
  const { finish, digBottom } = heights.at(at);
  const unit = area.paving?.units[0].thickness.value ?? 0;
  switch (measured) {
    case 'dig':
      return digBottom;
    case 'sub-base':
    case 'base':
      return topOf(area, measured, heights, at);
    case 'bed':
      return bed && finish - unit + settles;
    case 'as-laid':
      return finish + settles;
    case 'finish':
      return finish;
  }
}

function topOf(area: Area, role: 'base' | 'sub-base', { depth }: AreaHeights, at: Point): number | undefined {
  const first = area.layers.findIndex(layer => layer.role === role);
  const surface = area.finish?.surface;
  if (first < 0 || surface === undefined) return undefined;
  const below = area.layers.slice(first).reduce((sum, layer) => sum + layer.thickness.value, 0);
  return heightAt(surface, at) - depth + below;
}
