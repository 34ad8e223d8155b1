import type { NeedQuantities } from '../../buying/order-contract.ts';
import type { NeedWork } from '../../buying/used.ts';
import type { Key, Material } from '../../job/job.ts';
import type { LogEntry, Stage } from '../../job/log.ts';
import { Logged } from '../../schedule/logged.ts';
import type { Side } from './built.ts';
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
  const now = newer.quantities.needs ?? [];
  const again = neededAgain(older, built, keyNow);
  const logged = new Logged(log);
  const ids = [...now.map(({ id }) => id), ...[...before.keys()].filter(id => !now.some(need => need.id === id))];
  return ids.flatMap((id): Bought[] => {
    const [was, is] = [before.get(id), now.find(need => need.id === id)];
    const amounts = mainOf(is ?? was!, again.get(id));
    if (amounts === undefined) return [];
    const { measure } = amounts;
    const wantedBefore = was?.in.find(one => one.measure === measure)?.wanted;
    // What is gone has no need to be read from: what was delivered of it stands in the log alone.
    const told = is === undefined ? deliveredOf(log, was!, measure) : (amounts.onHand ?? 0) + (amounts.delivered ?? 0);
    const used = was === undefined ? 0 : (wantedBefore ?? 0) * builtShare(was, older, logged, keyNow);
    const have = Math.max(told, used);
    const more = again.get(id)?.[measure] ?? 0;
    if (have === 0 && more === 0) return [];
    const wanted = is === undefined ? 0 : amounts.wanted;
    const toBuy = settled(wanted + more - have);
    return [
      {
        thing: id,
        item: (is ?? was!).item,
        measure: measure === 'piece' ? '' : measure,
        ...(wantedBefore === undefined ? {} : { wantedBefore }),
        wanted,
        have,
        isTold: told >= used,
        again: more,
        toBuy,
        over: settled(have - wanted - more),
        // The order knows neither what comes out nor what was bought and not told.
        packs: more > 0 || told < used ? [] : packsOf(newer, id),
        otherThanBatches: id.startsWith('unit:') && toBuy > 0 ? batchesOf(log, id) : []
      }
    ];
  });
}

function settled(amount: number): number {
  return amount > 1e-6 ? amount : 0;
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
    return sides.length > 0 && sides.every(edge => logged.edging(key, edge) !== undefined);
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
    return isSame ? sum + entry.amount.value * (entry.packs?.holds.value ?? 1) : sum;
  }, 0);
}

function packsOf({ quantities: { order = [] } }: Side, id: Key): Bought['packs'] {
  return order.flatMap(line =>
    line.id === id && line.count > 0 ? [{ count: line.count, pack: line.pack, amount: line.amount }] : []
  );
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
    const material = job.areas.flatMap(({ edges }) => edges).find(({ edging }) => edging?.name === name)?.edging;
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

export function isOnConcrete({ concrete, haunch }: Material): boolean {
  return concrete !== undefined || haunch !== undefined;
}
