import { checkedTapes, type FittedTape, worstOf } from './fitted-tapes.ts';
import { settled, type SettlingFault } from './settled-network.ts';
import type { Allowance } from './tape-fit.ts';
import {
  byKey,
  endsAround,
  type FreePoint,
  type NamedPoint,
  type Network,
  networksOf,
  type Places,
  type Tape
} from './tape-network.ts';
import { type WeakPoint, weakPoints } from './weak-points.ts';

export type { FittedTape } from './fitted-tapes.ts';
export type { FreePoint, NamedPoint, Tape } from './tape-network.ts';
export type { WeakPoint } from './weak-points.ts';

/**
 * Points, and tapes, that are fitted together at most: far more than one yard ties to each other, few enough that the
 * worst of them is fitted while one types. Points taped from fixed ones alone do not count together.
 */
export const MOST_POINTS_TOGETHER = 30;
export const MOST_TAPES_TOGETHER = 150;
/** Fitting steps for one network, and once more for what each tape should read by the others: a fit takes about ten. */
const MOST_STEPS_TOGETHER = 3000;

export interface TapedPoints {
  /** Where tapes begin: each key once, m. */
  readonly fixed: readonly NamedPoint[];
  readonly free: readonly FreePoint[];
  /** Each key once. */
  readonly tapes: readonly Tape[];
}

export interface PointsFromTapes {
  /** The free points that have a place, in the order given. */
  readonly points: readonly NamedPoint[];
  /** The tapes between points that have a place, in the order given. */
  readonly tapes: readonly FittedTape[];
  /** The tapes most likely misread; several where the tapes cannot tell them apart, none where all fit. */
  readonly worst: readonly string[];
  /** Points with a place that their tapes hold only loosely. */
  readonly weak: readonly WeakPoint[];
  /** In the order of the points. */
  readonly faults: readonly TapeFault[];
}

/** Why a point has no place, or a tape does not count. */
export type TapeFault =
  | SettlingFault
  | { readonly kind: 'tape-from-itself'; readonly tape: string; readonly point: string }
  /** `has`: from how many other points it is taped. */
  | { readonly kind: 'too-few-tapes'; readonly point: string; readonly has: number }
  /** Taped from, or on a side of, points that have no place themselves. */
  | { readonly kind: 'others-not-found'; readonly point: string; readonly others: readonly string[] }
  | { readonly kind: 'too-many-together'; readonly points: readonly string[]; readonly tapes: number };

/**
 * Places of points by the tapes between them: all tapes of points that hang together fitted at once, each of equal
 * weight, for the least sum of squared misfits. The order of what is given changes no digit.
 */
export function pointsFromTapes(given: TapedPoints): PointsFromTapes {
  const known: Places = new Map(given.fixed.map(({ key, x, y }) => [key, { x, y }]));
  const tapes = given.tapes.filter(({ from, to }) => from !== to).sort(byKey);
  const { networks, faults } = placedNetworks(given.free, tapes, known);
  const betweenFixed = tapes.filter(({ from, to }) => known.has(from) && known.has(to));
  networks.push({ network: { free: [], tapes: betweenFixed, fixed: known }, places: known });

  const places = new Map(
    networks.flatMap(({ network, places }) => network.free.map(({ key }) => [key, places.get(key)!]))
  );
  const checked = networks.flatMap(one => checkedTapes(one.network, one.places, { left: MOST_STEPS_TOGETHER }));
  const byTape = new Map(checked.map(({ shown: _, ...tape }) => [tape.key, tape]));
  const weak = new Map(networks.flatMap(one => weakPoints(one.network, one.places)).map(one => [one.point, one]));
  const worst = new Set(worstOf(checked));
  return {
    points: given.free.flatMap(({ key }) => (places.has(key) ? [{ key, ...places.get(key)! }] : [])),
    tapes: given.tapes.flatMap(({ key }) => byTape.get(key) ?? []),
    worst: given.tapes.map(({ key }) => key).filter(key => worst.has(key)),
    weak: given.free.flatMap(({ key }) => weak.get(key) ?? []),
    faults: inOrder([...fromThemselves(given.tapes), ...faults], given.free)
  };
}

function fromThemselves(tapes: readonly Tape[]): TapeFault[] {
  return tapes
    .filter(({ from, to }) => from === to)
    .map(({ key, from }) => ({ kind: 'tape-from-itself', tape: key, point: from }));
}

interface PlacedNetwork {
  readonly network: Network;
  readonly places: Places;
}

/** Networks with all their points placed; points with a fault are taken out, and what is left is placed without them. */
function placedNetworks(
  free: readonly FreePoint[],
  tapes: readonly Tape[],
  fixed: Places
): { networks: PlacedNetwork[]; faults: TapeFault[] } {
  const networks: PlacedNetwork[] = [];
  const faults: TapeFault[] = [];
  const allowances = new Map<string, Allowance>();
  const faulty = new Set<string>();
  const waiting = networksOf(free, tapes, fixed);
  for (const network of waiting) {
    // What is left of a network goes on with the steps that are left.
    const first = network.free[0]!.key;
    const allowance = allowances.get(first) ?? { left: MOST_STEPS_TOGETHER };
    const outcome = tooMany(network) ?? tooFew(network) ?? settled(network, allowance);
    if ('places' in outcome) {
      networks.push({ network, places: outcome.places });
      continue;
    }
    const its = outcome.faults.flatMap(fault => withoutBlame(fault, { free, tapes, fixed }, faulty));
    faults.push(...its);
    const out = new Set(its.flatMap(pointsOf));
    for (const key of out) faulty.add(key);
    const left = network.free.filter(({ key }) => !out.has(key));
    const rest = networksOf(left, network.tapes, fixed);
    for (const { free } of rest) allowances.set(free[0]!.key, allowance);
    waiting.push(...rest);
  }
  return { networks, faults };
}

function tooMany({ free, tapes }: Network): { faults: TapeFault[] } | undefined {
  if (free.length <= MOST_POINTS_TOGETHER && tapes.length <= MOST_TAPES_TOGETHER) return undefined;
  return { faults: [{ kind: 'too-many-together', points: free.map(({ key }) => key), tapes: tapes.length }] };
}

function tooFew({ free, tapes }: Network): { faults: TapeFault[] } | undefined {
  const faults = free
    .map(({ key }) => ({ kind: 'too-few-tapes' as const, point: key, has: endsAround(tapes, key).length }))
    .filter(({ has }) => has < 2);
  return faults.length > 0 ? { faults } : undefined;
}

/** A point that lost a tape, or the line of its side, with another point is not at fault itself. */
function withoutBlame(fault: TapeFault, all: Network, faulty: ReadonlySet<string>): TapeFault[] {
  const lost = (key: string): string[] => {
    const side = all.free.find(point => point.key === key)?.side;
    const ends = [...endsAround(all.tapes, key), ...(side ? [side.from, side.to] : [])];
    return [...new Set(ends)].filter(end => faulty.has(end)).sort();
  };
  const blameless = pointsOf(fault).flatMap((point): TapeFault[] => {
    const others = lost(point);
    return others.length > 0 ? [{ kind: 'others-not-found', point, others }] : [];
  });
  return blameless.length > 0 ? blameless : [fault];
}

function pointsOf(fault: TapeFault): readonly string[] {
  return 'points' in fault ? fault.points : [fault.point];
}

function inOrder(faults: readonly TapeFault[], free: readonly FreePoint[]): TapeFault[] {
  const order = new Map(free.map(({ key }, index) => [key, index]));
  const placeOf = (fault: TapeFault): number => Math.min(...pointsOf(fault).map(key => order.get(key) ?? -1));
  return [...faults].sort((one, other) => placeOf(one) - placeOf(other));
}
