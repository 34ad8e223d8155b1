import type { Job, Key } from '../job/job.ts';
import type { AreaResult } from './area-result.ts';
import { traysOf } from './boxes.ts';
import { type Memory, recall } from './job-memory.ts';
import { nestingStage, type NestedTogether, type UnitsForCuts } from './nesting-stage.ts';
import type { JobBuying } from './together.ts';
import { kindOfUnit, unitsOf } from './units-of-area.ts';

/** What is bought for the whole job, and what the pieces of several areas come out of together. */
export interface BoughtTogether {
  readonly buying: JobBuying;
  /** Absent where no offcut can go from one area to another. */
  readonly nestedTogether?: NestedTogether;
}

/** What the job says of buying units; offcuts that may leave their area are nested over all areas that cut the unit. */
export function* jobBuying(job: Job, results: readonly AreaResult[], memory: Memory): Generator<void, BoughtTogether> {
  const { breakage, keep } = job.buying;
  const units = [...new Map(results.flatMap(({ area }) => unitsOf(area)).map(unit => [unit.key, unit])).values()];
  const together = yield* nestedTogether(job, results, memory);
  const trays = traysOf(job.boxes, results);
  const buying: JobBuying = {
    ...(breakage === undefined ? {} : { breakage }),
    units: units.map(({ key, name }) => {
      const kept = keep.find(({ unit }) => unit === key)?.count;
      const found = together?.units.find(({ unit }) => unit === key);
      return {
        unit: name,
        ...(kept === undefined ? {} : { keep: kept }),
        trays: trays.filter(({ unit }) => unit === key),
        ...(found === undefined
          ? {}
          : { nested: { used: found.used, lowerBound: found.lowerBound, proven: found.proven } })
      };
    })
  };
  return { buying, ...(together === undefined ? {} : { nestedTogether: together }) };
}

function* nestedTogether(
  job: Job,
  results: readonly AreaResult[],
  memory: Memory
): Generator<void, NestedTogether | undefined> {
  const { sawCut, offcutsStay } = job.buying;
  const shared = offcutsStay ? [] : cutInSeveral(results);
  if (shared.length === 0) return undefined;
  // By key, so that an area moved in the text changes nothing.
  const cut = results
    .flatMap(({ area, laid }) => (laid === undefined ? [] : [{ area: area.key, ...laid }]))
    .sort((a, b) => (a.area < b.area ? -1 : 1));
  const units = new Map(results.flatMap(({ area }) => unitsOf(area)).map(unit => [unit.key, unit]));
  const inputs = {
    lists: cut.map(({ cuts }) => cuts.list),
    shapes: shared.map(key => kindOfUnit(units.get(key)!)),
    sawCut: sawCut.value
  };
  const found = yield* recall(memory, 'nesting', [job.key], inputs, () => nestingStage(inputs));
  const alone = cut.map(({ nested }) => nested ?? []);
  return { areas: cut.map(({ area }) => area), units: found.map(one => noMoreThanApart(one, alone)) };
}

/** Keys of the units that more than one area cuts. */
function cutInSeveral(results: readonly AreaResult[]): Key[] {
  const areas = new Map<Key, number>();
  for (const { laid } of results)
    for (const { unit, cut } of laid?.cuts.units ?? []) if (cut > 0) areas.set(unit, (areas.get(unit) ?? 0) + 1);
  return [...areas].filter(([, count]) => count > 1).map(([unit]) => unit);
}

/** A search that stops at its limit may do worse for all areas than for each: then each keeps its own plan. */
function noMoreThanApart(together: UnitsForCuts, areas: readonly (readonly UnitsForCuts[])[]): UnitsForCuts {
  const apart = areas.flatMap((all, list) =>
    all.filter(({ unit }) => unit === together.unit).map(one => ({ list, ...one }))
  );
  const used = apart.reduce((sum, one) => sum + one.used, 0);
  if (used >= together.used) return together;
  const pieces = apart.flatMap(({ list, pieces: own }) => own.map(piece => ({ ...piece, list })));
  let before = 0;
  const plan = apart.flatMap(({ plan: own, pieces: { length } }) => {
    const first = before;
    before += length;
    return own.map(pattern => ({
      ...pattern,
      pieces: pattern.pieces.map(piece => ({ ...piece, group: first + piece.group }))
    }));
  });
  return { ...together, used, proven: used === together.lowerBound, plan, pieces };
}
