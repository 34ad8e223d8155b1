import type { Job } from '../job/job.ts';
import type { AreaResult } from './area-result.ts';
import { type Memory, recall } from './job-memory.ts';
import { nestingStage } from './nesting-stage.ts';
import type { JobBuying } from './together.ts';
import { kindOfUnit, unitsOf } from './units-of-area.ts';

/** What the job says of buying units; offcuts that may leave their area are nested over all areas that cut the unit. */
export function* jobBuying(job: Job, results: readonly AreaResult[], memory: Memory): Generator<void, JobBuying> {
  const { breakage, keep, sawCut, offcutsStay } = job.buying;
  const units = [...new Map(results.flatMap(({ area }) => unitsOf(area)).map(unit => [unit.key, unit])).values()];
  const cutIn = (key: string): number =>
    results.filter(({ laid }) => laid?.cuts.units.some(({ unit, cut }) => unit === key && cut > 0)).length;
  const shared = offcutsStay ? [] : units.filter(({ key }) => cutIn(key) > 1);
  const inputs = {
    // By key, so that an area moved in the text changes nothing.
    lists: [...results].sort((a, b) => (a.area.key < b.area.key ? -1 : 1)).flatMap(({ laid }) => laid?.cuts.list ?? []),
    shapes: shared.map(kindOfUnit),
    sawCut: sawCut.value
  };
  const nested =
    shared.length === 0 ? [] : yield* recall(memory, 'nesting', [job.key], inputs, () => nestingStage(inputs));
  return {
    ...(breakage === undefined ? {} : { breakage }),
    units: units.map(({ key, name }) => {
      const kept = keep.find(({ unit }) => unit === key)?.count;
      const found = nested.find(({ unit }) => unit === key);
      return {
        unit: name,
        ...(kept === undefined ? {} : { keep: kept }),
        ...(found === undefined
          ? {}
          : { nested: { used: found.used, lowerBound: found.lowerBound, proven: found.proven } })
      };
    })
  };
}
