import type { Ground } from '../../geometry/index.ts';
import type { Area, Job, Key, System } from '../../job/job.ts';
import type { LogEntry } from '../../job/log.ts';
import type { AreaQuantities, JobQuantities } from '../../quantities/contract.ts';
import { Logged } from '../../schedule/logged.ts';
import { whyNotAsBuilt } from './as-made.ts';
import type { BuiltAmount, Built } from './contract.ts';
import { type AreaStage, groundOf, sharedSize, sizeOf } from './grounds.ts';

/** A job with its numbers. */
export interface Side {
  readonly job: Job;
  readonly quantities: JobQuantities;
}

const AREA_STAGES: readonly AreaStage[] = ['dig', 'geotextile', 'sub-base', 'base', 'bed', 'paving', 'joints'];

/** Shares of ground below this are what rounding leaves. */
const NOTHING = 1e-6;

/** One stage of one area. */
interface Staged {
  readonly area: Area;
  readonly numbers: AreaQuantities;
  /** As the newer text calls it. */
  readonly key: Key;
  readonly ground: Ground;
  /** m2 */
  readonly size: number;
}

/**
 * What of the stages that the log tells as done stays, is made otherwise or comes out, ground by ground; and what is
 * still to build of them. `keyNow` tells how the newer text calls an area of the older one.
 */
export function builtParts(older: Side, newer: Side, log: readonly LogEntry[], keyNow: (key: Key) => Key): Built[] {
  const logged = new Logged(log);
  return AREA_STAGES.flatMap(stage => {
    const built = stagedOf(older, stage, keyNow).filter(({ key }) => logged.reached(key, stage) !== undefined);
    return built.length === 0
      ? []
      : partsOf(
          stage,
          built,
          stagedOf(newer, stage, key => key),
          newer.job
        );
  });
}

function stagedOf({ job, quantities }: Side, stage: AreaStage, keyNow: (key: Key) => Key): Staged[] {
  return job.areas.flatMap(area => {
    const numbers = quantities.areas.find(({ id }) => id === area.key);
    if (numbers === undefined || amountsOf(numbers, stage, 1) === undefined) return [];
    const ground = groundOf(area, numbers, stage);
    return [{ area, numbers, key: keyNow(area.key), ground, size: sizeOf(ground) }];
  });
}

/** Where one built ground lies in the newer text: under the areas that have it so, and under those that want it otherwise. */
interface Kept {
  readonly built: Staged;
  readonly so: readonly Staged[];
  readonly otherwise: readonly Staged[];
  readonly because: readonly string[];
}

function partsOf(stage: AreaStage, built: readonly Staged[], wanted: readonly Staged[], { system }: Job): Built[] {
  const kept = built.map(one => keptOf(stage, one, wanted, system));
  const keys = [
    ...new Set([...built, ...kept.flatMap(({ so, otherwise }) => [...so, ...otherwise])].map(({ key }) => key))
  ];
  return keys.map(key => partOf(stage, key, kept, wanted));
}

/** The area of the same name first: ground that it takes up is judged by no other. */
function keptOf(stage: AreaStage, built: Staged, wanted: readonly Staged[], system: System): Kept {
  const inOrder = [...wanted].sort((one, other) => Number(other.key === built.key) - Number(one.key === built.key));
  const lists = { so: [] as Staged[], otherwise: [] as Staged[] };
  const because: string[] = [];
  let [grounds, covered]: [readonly Ground[], number] = [[], 0];
  for (const other of inOrder) {
    if (covered > built.size * (1 - NOTHING)) break;
    const together = [...grounds, other.ground];
    const shared = sharedSize(built.ground, together);
    if (shared - covered <= built.size * NOTHING) continue;
    [grounds, covered] = [together, shared];
    const why = whyNotAsBuilt(stage, built.area, other.area, system);
    lists[why.length === 0 ? 'so' : 'otherwise'].push(other);
    because.push(...why);
  }
  return { built, ...lists, because: [...new Set(because)] };
}

function partOf(stage: AreaStage, key: Key, kept: readonly Kept[], wanted: readonly Staged[]): Built {
  const own = kept.find(({ built }) => built.key === key);
  const is = wanted.find(one => one.key === key);
  const [was, because] = [own?.built, own?.because ?? []];
  const stays = own === undefined ? 0 : shareOfGround(own.built, own.so);
  const found = own === undefined ? 0 : shareOfGround(own.built, [...own.so, ...own.otherwise]);
  const here = is === undefined ? [] : kept.filter(({ so, otherwise }) => so.includes(is) || otherwise.includes(is));
  const others = here.filter(one => one !== own).map(({ built }) => built);
  // What others built reaches here counts by its ground, as far as it goes beyond the area's own.
  const more =
    is === undefined || others.length === 0
      ? 0
      : shareOfGround(is, [...(was === undefined ? [] : [was]), ...others]) -
        (was === undefined ? 0 : shareOfGround(is, [was]));
  const amounts = (['m2', 'm3', 'kg'] as const).flatMap((measure): BuiltAmount[] => {
    const amount = (one: Staged | undefined): number =>
      (one && amountsOf(one.numbers, stage, one.size)?.[measure]) ?? 0;
    const [before, now] = [amount(was), amount(is)];
    if (before === 0 && now === 0) return [];
    return [
      {
        measure,
        built: before,
        stays: before * stays,
        madeOtherwise: before * settled(found - stays),
        comesOut: before * settled(1 - found),
        toBuild: settled(now * (1 - more) - before * found)
      }
    ];
  });
  return { stage, area: key, name: (is ?? was)!.area.name, amounts, because };
}

function shareOfGround({ ground, size }: Staged, others: readonly Staged[]): number {
  if (!(size > 0)) return 0;
  return Math.min(
    1,
    sharedSize(
      ground,
      others.map(other => other.ground)
    ) / size
  );
}

/** What rounding leaves is nothing, and so is less than nothing. */
function settled(amount: number): number {
  return amount > NOTHING ? amount : 0;
}

type Amounts = Partial<Record<BuiltAmount['measure'], number>>;

/** What a stage of an area comes to; undefined where it has no such stage. `size` is that of its ground, m2. */
function amountsOf(
  { dig, layers, geotextile, joints, netArea }: AreaQuantities,
  stage: AreaStage,
  size: number
): Amounts | undefined {
  switch (stage) {
    case 'dig':
      return dig.bankVolume === 0 ? undefined : { m2: size, m3: dig.bankVolume };
    case 'geotextile':
      return geotextile && { m2: geotextile.area };
    case 'paving':
      return { m2: netArea };
    case 'joints':
      return joints && { m2: netArea };
    default: {
      const layer = layers.find(({ role }) => role === stage);
      return (
        layer && { m2: layer.area, m3: layer.compactedVolume, ...(layer.mass === undefined ? {} : { kg: layer.mass }) }
      );
    }
  }
}
