import { distance } from '../geometry/index.ts';
import { redundantTapes } from './rigidity.ts';
import { equationsOf, shownShares } from './tape-equations.ts';
import { type Allowance, fitted } from './tape-fit.ts';
import type { Network, Places, Tape } from './tape-network.ts';

/** A tape between two placed points, m. */
export interface FittedTape extends Tape {
  /** Length between the fitted points. */
  readonly fitted: number;
  /** `fitted` − `read`. */
  readonly misfit: number;
  /** What it would have to read by the fit without it; where the other tapes still place both its ends. */
  readonly byTheOthers?: number;
}

/** A fitted tape, and how much of an error in its reading shows as its misfit (0 to 1, nought where nothing checks it). */
export interface CheckedTape extends FittedTape {
  readonly shown: number;
}

/** Misfits within this share of the largest count as equal to it. */
const TIE = 0.05;
/** Up to this, m, tapes fit: it is rounding, not reading. */
const FITS = 1e-6;
/** A tape that shows less than this share of its error is not judged: its misfit says too little. */
const LEAST_JUDGED = 1e-3;

/** The tapes of a network whose points have all been placed by `settled`. */
export function checkedTapes(network: Network, places: Places, allowance: Allowance): CheckedTape[] {
  const keys = network.free.map(({ key }) => key);
  const equations = equationsOf(network.tapes, places, new Map(keys.map((key, index) => [key, index])));
  const shares = shownShares(equations, 2 * keys.length);
  const redundant = redundantTapes(network);
  return equations.map(({ tape, misfit }, index) => {
    const known = { ...tape, fitted: tape.read + misfit, misfit };
    if (!redundant.has(tape.key)) return { ...known, shown: 0 };
    const others = network.tapes.filter(({ key }) => key !== tape.key);
    const fit = fitted(others, places, keys, allowance);
    if (!fit.settled) return { ...known, shown: shares[index]! };
    const byTheOthers = distance(fit.places.get(tape.from)!, fit.places.get(tape.to)!);
    return { ...known, byTheOthers, shown: shares[index]! };
  });
}

/**
 * Keys of the tapes most likely misread. A tape's own misfit shows but part of its error (the fit gives way to it), and
 * what the others would have it read blames it for theirs. Between the two stands the misfit over the root of the part
 * that shows, the standardised misfit of adjustment, largest at the tape in error where one alone is. With one spare tape
 * it is the same at every tape, for one spare tape cannot convict one: then, and at every tie, the tapes with the largest
 * misfits of their own are named.
 */
export function worstOf(tapes: readonly CheckedTape[]): string[] {
  const judged = tapes.filter(({ shown, misfit }) => shown >= LEAST_JUDGED && Math.abs(misfit) > FITS);
  const suspect = largestBy(judged, ({ misfit, shown }) => Math.abs(misfit) / Math.sqrt(shown));
  return largestBy(suspect, ({ misfit }) => Math.abs(misfit)).map(({ key }) => key);
}

function largestBy(tapes: readonly CheckedTape[], measure: (tape: CheckedTape) => number): CheckedTape[] {
  const largest = tapes.reduce((most, tape) => Math.max(most, measure(tape)), 0);
  return tapes.filter(tape => measure(tape) >= (1 - TIE) * largest);
}
