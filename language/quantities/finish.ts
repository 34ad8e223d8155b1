import { middleOf } from '../geometry/index.ts';
import type { Finish } from '../job/heights.ts';
import { gradientAt } from '../levels/surface.ts';
import { given, subtract } from './arithmetic.ts';
import type { NumbersOf } from './catalogue.ts';
import type { LayeredArea } from './layers-stage.ts';
import type { Book, Page } from './page.ts';

/** Height of the finish against the benchmark `at`, and how it falls. */
export type FinishQuantities = NumbersOf<'finish'> & { readonly at: string };

/** Flatter than this is level: nobody can lay or measure less. */
const LEVEL = 1e-6;

/** The finish as the JSON tells it: where it falls, its height is that of the first place given. */
export function finishOf(area: LayeredArea, book: Book): FinishQuantities | undefined {
  const { finish, site } = area;
  if (finish === undefined) return undefined;
  const page = book.page('finish', '/finish');
  const at = finish.level?.benchmark ?? site.datum?.benchmark;
  if (at === undefined) return undefined;
  if (finish.level !== undefined) levelHeight(finish.level, page);
  else page.repeat('height', (finish.heights[0]?.z ?? 0) - (site.datum?.z ?? 0));
  fall(area, finish, page);
  return { at, ...page.numbers };
}

function levelHeight({ benchmark, above, base, fromNought }: NonNullable<Finish['level']>, page: Page<'finish'>): void {
  if (fromNought && base !== undefined)
    page.put('height', subtract(given('height given', above, 'm'), given(`height of ${benchmark}`, base, 'm')));
  else page.repeat('height', above.value);
}

function fall(area: LayeredArea, { surface, twist }: Finish, page: Page<'finish'>): void {
  const uphill = gradientAt(surface, middleOf(area.outline));
  const steepest = Math.hypot(uphill.x, uphill.y);
  if (steepest > LEVEL) {
    page.repeat('fall', steepest);
    page.repeat('direction', (Math.atan2(-uphill.y, -uphill.x) * 180) / Math.PI);
  }
  if (twist !== undefined) page.repeat('twist', twist);
}
