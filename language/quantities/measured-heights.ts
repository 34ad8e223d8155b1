import type { SetUp } from '../job/heights.ts';
import type { Job, Site, Tape } from '../job/job.ts';
import { given, leaf, subtract } from './arithmetic.ts';
import type { Book } from './page.ts';
import type { MeasuredHeight, SiteQuantities, TapeQuantities } from './site-contract.ts';

/** What heights count from. */
export function datumOf({ datum }: Pick<Job, 'datum'>): SiteQuantities['datum'] {
  return datum && { benchmark: datum.benchmark, height: datum.z, fromNought: datum.fromNought };
}

/** Tapes as read and as fitted together. */
export function tapesOf(tapes: readonly Tape[], book: Book): TapeQuantities[] {
  return tapes.map(({ from, to, read, fitted, misfit, byTheOthers, worst }, index) => {
    const page = book.page('tape', `/tapes/${index}`);
    page.repeat('read', read.value);
    page.repeat('fitted', fitted);
    page.repeat('misfit', misfit);
    if (byTheOthers !== undefined) page.repeat('byTheOthers', byTheOthers);
    return { from, to, worst, ...page.numbers };
  });
}

/** Heights taken at points: of the ground first, then of what is there already. */
export function measuredHeightsOf(site: Site | undefined, setUps: readonly SetUp[], book: Book): MeasuredHeight[] {
  const heights = site?.heights;
  if (heights === undefined) return [];
  const all = [{ name: 'ground', spots: heights.ground }, ...heights.things].flatMap(({ name, spots }) =>
    spots.map(spot => ({ of: name, spot }))
  );
  return all.map(({ of, spot }, index) => {
    const page = book.page('measured-height', `/heights/${index}`);
    const setUp = spot.setUp === undefined ? undefined : setUps[spot.setUp];
    if (setUp === undefined) page.repeat('height', spot.z);
    else {
      page.repeat('reading', spot.written.value);
      const sight = leaf('line of sight', setUp.sight, 'm', { key: setUp.key });
      page.put('height', subtract(sight, given('rod reading', spot.written, 'm')));
    }
    return { of, at: spot.name, ...page.numbers };
  });
}
