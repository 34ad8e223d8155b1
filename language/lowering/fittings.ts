import type { Drain } from '../job/heights.ts';
import type { Area, Country, Job, Key, Missing } from '../job/job.ts';
import { nameIn } from '../job/key-names.ts';
import type * as ast from '../syntax/generated/ast.ts';
import { isPavedOver } from './boxes.ts';
import type { Context } from './context.ts';
import { Drains, keptOutBy } from './drains.ts';
import type { Each } from './each-thing.ts';
import { Gates } from './gates.ts';
import type { Heights } from './heights.ts';
import { KeptOuts } from './kept-outs.ts';
import { keyOf } from './keys.ts';
import type { Laying } from './laying.ts';
import { Logs } from './log.ts';
import type { SpecText } from './names.ts';
import type { Outlines } from './outlines.ts';
import type { Packs } from './packs.ts';
import type { PathLines } from './path-lines.ts';
import { Pipes } from './pipes.ts';
import type { Points } from './points.ts';
import { readRoutes } from './routes.ts';
import { SoftSpots } from './soft-spots.ts';
import type { Things } from './things.ts';
import type { Usuals } from './usuals.ts';

/** What fittings are read with. */
export interface FittingsReaders {
  readonly context: Context;
  readonly points: Points;
  readonly heights: Heights;
  readonly outlines: Outlines;
  readonly lines: PathLines;
  readonly things: Things;
  readonly laying: Laying;
  readonly usuals: Usuals;
  readonly packs: Packs;
}

/** What stands in an area or along it. */
export type WithinArea = Pick<Area, 'keptOut' | 'insets' | 'drains' | 'softSpots'>;

/** What stands in areas and beside them, and what was done there. */
export interface Fittings {
  /** Of one area, with the names of what is broken there. */
  within(area: Key): { readonly within: WithinArea; readonly broken: readonly string[] };
  /** Of the job, without what stands in areas that have no numbers: these are added to the missing. */
  ofJob(areas: readonly Area[]): Pick<Job, 'boxes' | 'drains' | 'pipes' | 'gates' | 'routes' | 'log'>;
}

/** Reads them all; those without numbers are added to `missing`. */
export function readFittings(
  readers: FittingsReaders,
  texts: readonly SpecText[],
  missing: Missing[],
  country: Country | undefined
): Fittings {
  const { context, points, heights, outlines, lines, things, laying, usuals, packs } = readers;
  const keptOuts = new KeptOuts(texts, context, outlines, laying, heights).read(missing, country);
  const drainReader = new Drains(context, points, heights, outlines);
  const drains = drainReader.read(texts, missing);
  const sound = drains.flatMap(({ value }) => value ?? []);
  const pipes = new Pipes(context, points, outlines, sound).read(texts, missing);
  const gates = new Gates(context, points, heights, outlines, usuals).read(texts, missing, country);
  const routes = readRoutes(context, lines, texts, missing);
  const softSpots = new SoftSpots(context, points, outlines, things);
  const log = new Logs(context, points, heights, softSpots, packs).read(texts, missing);
  const meets = ({ name }: Drain, area: Key): boolean => drainReader.meeting(name).some(one => keyOf(one) === area);

  return {
    within(area) {
      const kept = keptOuts.filter(one => one.area === area);
      const boxes = kept.flatMap(({ keptOut }) => (keptOut === undefined || isPavedOver(keptOut) ? [] : [keptOut]));
      const channels = sound.filter(drain => drain.area === area).flatMap(drain => keptOutBy(drain) ?? []);
      const brokenDrains = drains.filter(drain => drain.value === undefined && areaSaid(drain) === area);
      return {
        within: {
          keptOut: [...boxes, ...channels],
          insets: kept.flatMap(({ inset }) => inset ?? []),
          drains: sound.filter(drain => drain.area === area || meets(drain, area)),
          softSpots: log.entries.flatMap(entry => (entry.kind === 'soft-spot' && entry.area === area ? [entry] : []))
        },
        broken: [
          ...kept.flatMap(({ broken }) => broken),
          ...brokenDrains.map(({ declared }) => declared.name),
          ...(log.broken.includes(area) ? ['log'] : [])
        ]
      };
    },

    ofJob(areas) {
      const known = new Set(areas.map(({ key }) => key));
      const standing = <T>(all: readonly Each<T>[], areaOf: (each: Each<T>) => Key | undefined): T[] =>
        all.flatMap(each => {
          const area = areaOf(each);
          if (each.value === undefined) return [];
          if (area === undefined || known.has(area)) return [each.value];
          missing.push({ key: each.key, name: each.declared.name, because: nameIn(area) });
          return [];
        });
      return {
        boxes: keptOuts.flatMap(({ keptOut }) => (keptOut !== undefined && known.has(keptOut.area) ? [keptOut] : [])),
        drains: standing(drains, areaSaid),
        pipes: standing(pipes, areaSaid),
        gates: standing(gates, ({ value }) => value?.leaf?.into),
        routes: standing(routes, () => undefined),
        log: log.entries
      };
    }
  };
}

/** The area that a drain or pipe says it is in, read or not. */
function areaSaid({ declared }: Each<unknown>): Key | undefined {
  const name = (declared.node as ast.Drain | ast.Pipe).area?.$refText;
  return name === undefined ? undefined : `area:${name}`;
}
