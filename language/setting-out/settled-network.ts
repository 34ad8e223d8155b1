import { distance } from '../geometry/index.ts';
import { type Allowance, type Fit, fitted } from './tape-fit.ts';
import { type FreePoint, type Network, outOnSide, type Places } from './tape-network.ts';
import { type StartFault, startsOf } from './tape-starts.ts';

/**
 * One arrangement of the sides is told from another where its misfits (root of their squares' sum) are larger by this
 * ratio and, m, by this much: well above what careless reading does, well below what a wrong side does.
 */
const TELLING_RATIO = 1.5;
const TELLING_MISFIT = 0.03;
/** So far, m, two arrangements put a point in one place. */
const SAME_PLACE = 0.002;
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

/** Fits with the sides kept before others, then the best first. */
function fitsFrom(network: Network, arrangements: readonly Places[], allowance: Allowance): readonly Fit[] {
  const keys = network.free.map(({ key }) => key);
  return arrangements
    .map(start => fitted(network.tapes, start, keys, allowance))
    .map(fit => ({ fit, off: network.free.filter(point => (outOnSide(point, fit.places) ?? 0) < 0).length }))
    .sort((one, other) => one.off - other.off || one.fit.sumOfSquares - other.fit.sumOfSquares)
    .map(({ fit }) => fit);
}

function onWrongSide({ free }: Network, places: Places): SettlingFault[] {
  return free
    .filter(point => (outOnSide(point, places) ?? 0) < -ON_THE_LINE)
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
    fit => fit.settled && !isTold(best, fit) && free.every(point => (outOnSide(point, fit.places) ?? 0) >= 0)
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
