import { distance, type Point } from '../../geometry/index.ts';
import type { Datum, NamedLine } from '../../job/heights.ts';
import type { Job } from '../../job/job.ts';
import { printThickness } from '../../measures/print.ts';
import { levelStyleOf, printDrop, printLevel } from '../../measures/print-level.ts';
import type { JobNumbers } from '../../quantities/contract.ts';
import { heightsFrom } from '../plan/heights-from.ts';
import { bodiesOf, linesOf, madeUpOf } from './bodies.ts';
import { crossedBy } from './crossed.ts';
import type { SectionInput, SectionMark, SectionStation } from './section-input.ts';
import { type CutLine, cutLine, placeAt } from './section-line.ts';
import { finishStations } from './finish-stations.ts';
import { sidesMet } from './sides-met.ts';
import { type CutArea, cutAreas, runsOf, type Stretch, stretchesOf, withoutOpenGround } from './stretches.ts';

/** The cut along a section or a line of the job; undefined where the job has none of that name, or its line has no length. */
export function sectionOfJob(
  job: Job,
  { quantities }: Pick<JobNumbers, 'quantities'>,
  name: string
): SectionInput | undefined {
  const section = [...job.sections, ...job.lines].find(one => one.name === name);
  return section && sectionAlong(job, { quantities }, section);
}

/** The cut along any line of the plan; undefined where it has no length. */
export function sectionAlong(
  job: Job,
  { quantities }: Pick<JobNumbers, 'quantities'>,
  { name, sides: along }: Pick<NamedLine, 'name' | 'sides'>
): SectionInput | undefined {
  const line = cutLine(along);
  if (line === undefined) return undefined;
  const { title, system, datum } = job;
  const areas = cutAreas(job, quantities.areas);
  const sides = sidesMet(line, areas);
  const stretches = withoutOpenGround(stretchesOf(line, areas, job), sides);
  const crossed = crossedBy(line, stretches, areas, sides, job, quantities);
  const strip = job.areas.map(({ site }) => site.topsoil?.value ?? 0).find(depth => depth > 0) ?? 0;
  const lines = linesOf(stretches);
  return {
    title: title || 'Job without a title',
    name,
    system,
    length: line.length,
    past: line.past,
    heights: datum === undefined ? '' : heightsFrom(datum, system),
    bodies: [...bodiesOf(stretches, strip), ...crossed.bodies],
    lines: [...lines, ...crossed.lines],
    marks: [...areaMarks(stretches), ...drainMarks(stretches, job), ...crossed.marks].sort((a, b) => a.at - b.at),
    stations: datum === undefined ? [] : stationsOf(line, stretches, job, datum, lines),
    layers: [...layersOf(stretches, job), ...madeUpLines(stretches, job)],
    missing: job.areas.filter(({ finish }) => finish === undefined).map(area => `${area.name} has no finish`)
  };
}

function areaMarks(stretches: readonly Stretch[]): SectionMark[] {
  return runsOf(stretches, ({ paved }) => paved).map(({ same: { area, heights }, run }, index) => {
    const middle = run[Math.floor(run.length / 2)]!;
    const z = middle.heights?.[0].finish ?? heights.at({ x: 0, y: 0 }).finish;
    return { key: `${area.key}/name-${index + 1}`, at: middle.from, z, text: `area ${area.name}` };
  });
}

/** Channels and gullies within areas. */
function drainMarks(stretches: readonly Stretch[], { drains }: Job): SectionMark[] {
  return runsOf(stretches, ({ box }) => (box?.kind === 'drain' ? box : undefined)).flatMap(({ same, run }, index) => {
    const drain = drains.find(({ name }) => name === same.name);
    const [first, last] = [run[0]!, run.at(-1)!];
    const z = first.heights?.[0].finish;
    if (z === undefined) return [];
    const text = `${drain?.kind ?? 'drain'} ${same.name}`;
    return [{ key: `${same.key}/mark-${index + 1}`, at: (first.from + last.to) / 2, z, text }];
  });
}

function layersOf(stretches: readonly Stretch[], { system }: Job): string[] {
  const cut = new Set(stretches.flatMap(({ paved }) => paved ?? []));
  return [...cut].map(({ area: { name, paving, layers } }: CutArea) => {
    const unit = paving?.units[0];
    const laid = unit === undefined ? [] : [`${unit.name} ${printThickness(unit.thickness.value, system)}`];
    const below = layers.map(
      ({ role, material, thickness }) => `${role} ${material.name} ${printThickness(thickness.value, system)}`
    );
    return `${name}: ${[...laid, ...below].join(', ')}`;
  });
}

function madeUpLines(stretches: readonly Stretch[], { system }: Job): string[] {
  return madeUpOf(stretches).map(({ area, stone, most }) => {
    const thick = printDrop(most, levelStyleOf(system));
    return `${area}: low ground made up with ${stone ?? 'stone'}, ${thick} at most along this line`;
  });
}

/** m: places nearer than this are one. */
const SAME = 0.002;

/** m: a smaller step in height is none. */
const STEP = 0.0005;

/** Ends of the line and of its sides, where areas begin and end, stations of a finish, boxes, and where ground, finish or dig bend. */
function stationsOf(
  line: CutLine,
  stretches: readonly Stretch[],
  job: Job,
  datum: Datum,
  lines: SectionInput['lines']
): SectionStation[] {
  const rims = runsOf(stretches, ({ paved }) => paved).flatMap(({ run }) => [run[0]!.from, run.at(-1)!.to]);
  const boxes = runsOf(stretches, ({ box }) => box).flatMap(({ run }) => [run[0]!.from, run.at(-1)!.to]);
  const bends = lines.flatMap(({ levels }) => levels.map(({ at }) => at));
  const wished = [
    ...[0, line.length].map(at => ({ at, rank: 0 })),
    ...line.parts.slice(2, -1).map(({ start }) => ({ at: start, rank: 1 })),
    ...rims.map(at => ({ at, rank: 1 })),
    ...finishStations(line, stretches).map(at => ({ at, rank: 1 })),
    ...boxes.map(at => ({ at, rank: 2 })),
    ...bends.map(at => ({ at, rank: 3 }))
  ];
  const within = wished.filter(({ at }) => at > SAME - line.past && at < line.length + line.past - SAME);
  const kept = within.filter(({ at }, index) => !within.slice(0, index).some(other => Math.abs(other.at - at) <= SAME));
  return kept
    .sort((a, b) => a.at - b.at)
    .map(({ at, rank }) => stationAt(at, rank, nameAt(placeAt(line, at), job), stretches, job, datum));
}

function nameAt(place: Point, { points }: Job): string | undefined {
  return points.find(point => distance(point, place) <= SAME)?.name;
}

/** `13 5/8 / 17 5/8 in below`: what both end with is told once. */
function bothTexts([first = '', second]: readonly string[]): string {
  if (second === undefined) return first;
  const words = first.split(' ');
  const others = second.split(' ');
  while (words.length > 1 && words.at(-1) === others.at(-1)) {
    words.pop();
    others.pop();
  }
  return `${words.join(' ')} / ${second}`;
}

/** Heights where two stretches meet; both of them where they differ. */
function stationAt(
  at: number,
  rank: number,
  name: string | undefined,
  stretches: readonly Stretch[],
  { system }: Job,
  datum: Datum
): SectionStation {
  const before = stretches.find(({ to }) => Math.abs(to - at) <= SAME);
  const after = stretches.find(({ from }) => Math.abs(from - at) <= SAME);
  const both = (heightOf: (stretch: Stretch, end: 0 | 1) => number | undefined): string | undefined => {
    const heights = [before && heightOf(before, 1), after && heightOf(after, 0)];
    const [first, second] = heights.filter(z => z !== undefined);
    // Rounding to either side of a half is no step.
    const told = second !== undefined && Math.abs(first! - second) < STEP ? [first] : [first, second];
    const texts = told.flatMap(z => (z === undefined ? [] : [printLevel(z, datum, levelStyleOf(system))]));
    return texts.length === 0 ? undefined : bothTexts([...new Set(texts)]);
  };
  const ground = both(({ ground: levels }, end) => levels?.[end]);
  const finish = both(({ paved, box, heights }, end) => (paved && !box ? heights?.[end].finish : undefined));
  const digBottom = both(({ box, heights }, end) => (box ? undefined : heights?.[end].digBottom));
  const here = after ?? before;
  const z = here?.heights?.[0].digBottom ?? here?.ground?.[0] ?? 0;
  return {
    at,
    rank,
    z,
    ...(name === undefined ? {} : { name }),
    ...(ground === undefined ? {} : { ground }),
    ...(finish === undefined ? {} : { finish }),
    ...(digBottom === undefined ? {} : { digBottom })
  };
}
