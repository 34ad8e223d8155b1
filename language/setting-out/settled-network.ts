import { distance } from '../geometry/index.ts';
import { type Allowance, type Fit, fitted } from './tape-fit.ts';
import { type FreePoint, isOnSide, type Network, type Places } from './tape-network.ts';
import { type StartFault, startsOf } from './tape-starts.ts';
import { FLAT } from './two-tapes.ts';

/**
 * One arrangement of the sides is told from another where its misfits (root of their squares' sum) are larger by this
 * ratio and, m, by this much: well above what careless reading does, well below what a wrong side does.
 */
const TELLING_RATIO = 1.5;
const TELLING_MISFIT = 0.03;
/** So far, m, two arrangements put a point in one place. */
const SAME_PLACE = 0.002;
/** Sums of squared misfits, m², that differ by less are one. */
const SAME_SUM = 1e-12;
/** So far, m, across the line of its side a point may come to lie by the fit: tapes tell little across a flat triangle. */
const ON_THE_LINE = 0.01;

export type SettlingFault =
  | StartFault
  | { readonly kind: 'wrong-side'; readonly point: string }
  | { readonly kind: 'no-fit'; readonly points: readonly string[] };

export type Settled = { readonly places: Places } | { readonly faults: readonly SettlingFault[] };

/** The places that fit all tapes of a network best, each point on its side; or what keeps points from having one. */
export function settled(network: Network, allowance: Allowance): Settled {
  const starts = startsOf(network, true, allowance);
  if ('fault' in starts) return { faults: [starts.fault] };
  const fits = fitsFrom(network, starts.arrangements, allowance);
  const [best] = fits;
  if (!best?.settled) return { faults: [{ kind: 'no-fit', points: network.free.map(({ key }) => key) }] };
  const contradicted = onWrongSide(network, best.places);
  const faults = contradicted.length > 0 ? contradicted : contradictedSides(network, best, allowance);
  if (faults.length > 0) return { faults };
  const either = undecided(network, best, fits);
  return either.length > 0 ? { faults: either } : { places: best.places };
}

/** The best first: fits with the sides kept, then the least misfits, then what is off its side by a hair. */
function fitsFrom(network: Network, arrangements: readonly Places[], allowance: Allowance): readonly Fit[] {
  const keys = network.free.map(({ key }) => key);
  const off = ({ places }: Fit, tolerance: number): number =>
    network.free.filter(point => !isOnSide(point, places, tolerance)).length;
  const grades = arrangements.map(start => {
    const fit = fitted(network.tapes, start, keys, allowance);
    return { fit, grade: [off(fit, FLAT), Math.round(fit.sumOfSquares / SAME_SUM), off(fit, 0)] };
  });
  return grades.sort((one, other) => compared(one.grade, other.grade)).map(({ fit }) => fit);
}

function compared(one: readonly number[], other: readonly number[]): number {
  return one.map((value, index) => value - other[index]!).find(difference => difference !== 0) ?? 0;
}

function onWrongSide({ free }: Network, places: Places): SettlingFault[] {
  return free
    .filter(point => !isOnSide(point, places, ON_THE_LINE))
    .map(({ key }) => ({ kind: 'wrong-side', point: key }));
}

/** Sides against which the tapes fit far better. */
function contradictedSides(network: Network, best: Fit, allowance: Allowance): SettlingFault[] {
  if (Math.sqrt(best.sumOfSquares) <= TELLING_MISFIT) return [];
  const starts = startsOf(network, false, allowance);
  if ('fault' in starts) return [];
  const [anyhow] = [...fitsFrom(network, starts.arrangements, allowance)]
    .filter(fit => fit.settled)
    .sort((one, other) => one.sumOfSquares - other.sumOfSquares);
  return anyhow && isTold(anyhow, best) ? onWrongSide(network, anyhow.places) : [];
}

/** Points for which another arrangement fits as well. */
function undecided({ free }: Network, best: Fit, fits: readonly Fit[]): SettlingFault[] {
  const asGood = fits.filter(
    fit => fit.settled && !isTold(best, fit) && free.every(point => isOnSide(point, fit.places, FLAT))
  );
  const differing = free.filter(({ key }) =>
    asGood.some(({ places }) => distance(places.get(key)!, best.places.get(key)!) > SAME_PLACE)
  );
  const unsaid = differing.filter(({ side }) => !side);
  if (unsaid.length > 0) return unsaid.map(faultOfUnsaid);
  return differing.map(({ key }) => ({ kind: 'side-does-not-tell', point: key }));
}

function faultOfUnsaid({ key }: FreePoint): SettlingFault {
  return { kind: 'side-not-said', point: key };
}

function isTold(better: Fit, worse: Fit): boolean {
  const [least, more] = [Math.sqrt(better.sumOfSquares), Math.sqrt(worse.sumOfSquares)];
  return more > TELLING_RATIO * least && more > least + TELLING_MISFIT;
}
