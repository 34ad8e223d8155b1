import type { NeedQuantities } from '../../buying/order-contract.ts';
import type { NeedWork } from '../../buying/used.ts';
import type { Key, Unit } from '../../job/job.ts';
import type { LogEntry, Stage } from '../../job/log.ts';
import { isOnConcrete } from '../../schedule/edging-tasks.ts';
import { edgingNamed } from './built-edging.ts';
import { Logged } from '../../schedule/logged.ts';
import type { Side } from './built.ts';
import { edgeNow } from './sides-now.ts';
import type { Bought, Built } from './contract.ts';

type NeedIn = NeedQuantities['in'][number];

/** What is there of everything that is bought, against what is needed of it now and again for what comes out. */
export function boughtOf(
  older: Side,
  newer: Side,
  log: readonly LogEntry[],
  built: readonly Built[],
  keyNow: (key: Key) => Key
): Bought[] {
  const before = new Map((older.quantities.needs ?? []).map(need => [keyNow(need.id), need]));
  const now = new Map((newer.quantities.needs ?? []).map(need => [need.id, need]));
  const inputs = { older, newer, again: neededAgain(older, built, keyNow), logged: new Logged(log), keyNow };
  return [...new Set([...now.keys(), ...before.keys()])].flatMap((id): Bought[] => {
    const [was, is] = [before.get(id), now.get(id)];
    // What was bought of another size is of no use now.
    if (was !== undefined && is !== undefined && isOtherUnit(older, newer, id, keyNow))
      return [
        ...boughtOfOne(id, { was, is: undefined }, inputs).map(one => ({ ...one, isAsItWas: true as const })),
        ...boughtOfOne(id, { was: undefined, is: withoutDelivered(is) }, inputs)
      ];
    return boughtOfOne(id, { was, is }, inputs);
  });
}

interface BoughtInputs {
  readonly older: Side;
  readonly newer: Side;
  readonly again: ReadonlyMap<Key, Amounts>;
  readonly logged: Logged;
  readonly keyNow: (key: Key) => Key;
}

function boughtOfOne(
  id: Key,
  { was, is }: { readonly was: NeedQuantities | undefined; readonly is: NeedQuantities | undefined },
  { older, newer, again, logged, keyNow }: BoughtInputs
): Bought[] {
  const amounts = mainOf(is ?? was!, again.get(id));
  if (amounts === undefined) return [];
  const { measure } = amounts;
  const whole = (amount: number): number => (measure === 'piece' ? Math.ceil(amount - SMALLEST) : amount);
  const told = was?.in.find(one => one.measure === measure)?.wanted;
  const wantedBefore = told === undefined ? undefined : whole(told);
  // What is gone has no need to be read from: what was delivered of it stands in the log alone.
  const delivered =
    is === undefined ? deliveredOf(newer.job.log, was!, measure) : (amounts.onHand ?? 0) + (amounts.delivered ?? 0);
  const used = was === undefined ? 0 : inWholePacks((told ?? 0) * builtShare(was, older, logged, keyNow), was, measure);
  const have = Math.max(delivered, whole(used));
  const more = is === undefined && was === undefined ? 0 : (again.get(id)?.[measure] ?? 0);
  const wanted = is === undefined ? 0 : whole(amounts.wanted);
  const toBuy = settled(wanted + more - have);
  if (have === 0 && more === 0 && (toBuy === 0 || wanted === wantedBefore)) return [];
  return [
    {
      thing: id,
      item: (is ?? was!).item,
      measure: measure === 'piece' ? '' : measure,
      ...(wantedBefore === undefined ? {} : { wantedBefore }),
      wanted,
      have,
      isTold: delivered >= used,
      again: more,
      toBuy,
      over: settled(have - wanted - more),
      noLongerWanted: settled(Math.min(have - more, wantedBefore ?? 0) - wanted),
      packs: toBuy > 0 ? packsOf(newer, id, toBuy, more === 0 && delivered >= used) : [],
      otherThanBatches: id.startsWith('unit:') && toBuy > 0 ? batchesOf(newer.job.log, id) : []
    }
  ];
}

/** Less than a millionth is what rounding leaves. */
const SMALLEST = 1e-6;

/** A unit of the same name that is of another size, or of something else. */
function isOtherUnit(older: Side, newer: Side, id: Key, keyNow: (key: Key) => Key): boolean {
  const unitsOf = ({ job }: Side): Unit[] =>
    job.areas.flatMap(({ paving, borders, bands, insets }) => [
      ...(paving?.units ?? []),
      ...[...borders, ...bands].map(({ unit }) => unit),
      ...insets.flatMap(inset => inset.paving.units)
    ]);
  const was = unitsOf(older).find(({ key }) => keyNow(key) === id);
  const is = unitsOf(newer).find(({ key }) => key === id);
  if (was === undefined || is === undefined) return false;
  const sizes = ({ length, width, thickness, madeOf }: Unit): string =>
    [length, width, thickness].map(({ value }) => value.toFixed(5)).join(' ') + madeOf;
  return sizes(was) !== sizes(is);
}

function withoutDelivered(need: NeedQuantities): NeedQuantities {
  return { ...need, in: need.in.map(({ onHand: _onHand, delivered: _delivered, ...amounts }) => amounts) };
}

/** What is taken as bought came in whole packs, the smallest that there are. */
function inWholePacks(amount: number, { choices }: NeedQuantities, measure: NeedIn['measure']): number {
  const sizes = choices.filter(choice => choice.measure === measure).map(({ packHolds }) => packHolds);
  const holds = Math.min(...sizes);
  return sizes.length === 0 || !(holds > 0) || amount === 0 ? amount : Math.ceil(amount / holds - SMALLEST) * holds;
}

function settled(amount: number): number {
  return amount > SMALLEST ? amount : 0;
}

/** How much of what the older text wants of a thing lies in what the log tells as done. */
function builtShare({ for: places }: NeedQuantities, { job }: Side, logged: Logged, keyNow: (key: Key) => Key): number {
  const isDone = ({ area, work, side }: NeedQuantities['for'][number]): boolean => {
    const stage = STAGE_OF_WORK[work];
    const found = job.areas.find(({ key }) => key === area);
    if (stage === undefined || found === undefined) return false;
    const key = keyNow(found.key);
    if (stage !== 'edging') return logged.reached(key, stage) !== undefined;
    const sides = found.edges.filter(
      ({ name, edging }) => edging !== undefined && (side === undefined || name === side)
    );
    return sides.length > 0 && sides.every(edge => logged.edging(key, edgeNow(edge, keyNow)) !== undefined);
  };
  const sum = (of: typeof places): number => of.reduce((all, { amount = 0 }) => all + amount, 0);
  const all = sum(places);
  return all > 0 ? sum(places.filter(isDone)) / all : 0;
}

const STAGE_OF_WORK: Readonly<Partial<Record<NeedWork, Stage>>> = {
  paving: 'paving',
  bed: 'bed',
  base: 'base',
  'sub-base': 'sub-base',
  joints: 'joints',
  edging: 'edging',
  geotextile: 'geotextile'
};

/** In the measure that it came in; else one in which it is known what is needed again. */
function mainOf({ in: amounts }: NeedQuantities, again: Amounts | undefined): NeedIn | undefined {
  return (
    amounts.find(({ delivered = 0, onHand = 0 }) => delivered + onHand > 0) ??
    amounts.find(({ measure }) => again?.[measure] !== undefined) ??
    amounts[0]
  );
}

function deliveredOf(log: readonly LogEntry[], { id }: NeedQuantities, measure: NeedIn['measure']): number {
  return log.reduce((sum, entry) => {
    if (entry.kind !== 'delivered' || entry.thing !== id) return sum;
    const isSame = entry.measure === (measure === 'piece' ? '' : measure);
    return isSame ? sum + entry.amount.value : sum;
  }, 0);
}

/** As the order has it; where that knows not all that is to buy, in the first way that it is sold. */
function packsOf(
  { quantities: { order = [], needs = [] } }: Side,
  id: Key,
  toBuy: number,
  isOrdered: boolean
): Bought['packs'] {
  if (isOrdered)
    return order.flatMap(({ id: of, count, pack, amount }) =>
      of === id && count > 0 ? [{ count, pack, amount }] : []
    );
  const need = needs.find(one => one.id === id);
  const measure = need?.in[0]?.measure;
  const choice = need?.choices.find(one => one.measure === measure && one.packHolds > 0);
  if (choice === undefined) return [];
  const count = Math.ceil(toBuy / choice.packHolds - SMALLEST);
  return [{ count, pack: choice.pack, amount: count * choice.packHolds }];
}

function batchesOf(log: readonly LogEntry[], id: Key): string[] {
  const batches = log.flatMap(entry => (entry.kind === 'delivered' && entry.thing === id ? (entry.batch ?? []) : []));
  return [...new Set(batches)];
}

type Amounts = Partial<Record<NeedIn['measure'], number>>;

/** Edging that was set in concrete, and its concrete, are not used again when they come out; all else is. */
function neededAgain(
  { job, quantities }: Side,
  built: readonly Built[],
  keyNow: (key: Key) => Key
): ReadonlyMap<Key, Amounts> {
  const found = new Map<Key, Amounts>();
  const add = (id: Key, measure: NeedIn['measure'], amount: number): void => {
    if (amount > 0) found.set(id, { ...found.get(id), [measure]: (found.get(id)?.[measure] ?? 0) + amount });
  };
  for (const { area, material: name, amounts, out = [] } of built) {
    const material = edgingNamed(job, name);
    const length = amounts[0]?.comesOut ?? 0;
    if (material === undefined || length === 0 || !isOnConcrete(material)) continue;
    for (const { shape, length: run, pieces = 0 } of out) {
      const isForCurves = shape === 'curve' && material.curvePieces !== undefined;
      const id = isForCurves ? `${material.key}/curve-pieces` : material.key;
      add(id, 'm', run);
      add(id, 'piece', pieces);
    }
    const edging = quantities.areas.find(({ id }) => keyNow(id) === area)?.edging.find(one => one.material === name);
    if (edging?.concreteVolume !== undefined && edging.length > 0)
      add(job.concrete.key, 'm3', (edging.concreteVolume * length) / edging.length);
  }
  return found;
}
