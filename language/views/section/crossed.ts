import { distance, inside, type Side } from '../../geometry/index.ts';
import { contactsBetween } from '../../geometry/contacts.ts';
import type { Drain, Pipe } from '../../job/heights.ts';
import type { Area, Edge, Job, KeptOut } from '../../job/job.ts';
import { zOf } from '../../quantities/area-heights.ts';
import { deepestCut } from '../../quantities/boxes.ts';
import type { JobQuantities } from '../../quantities/contract.ts';
import { pipeTopAt } from '../../quantities/pipes.ts';
import { depthText, lidText } from '../plan/things-of-job.ts';
import { printMarked, roundedUp } from '../../measures/print.ts';
import { levelText } from '../plan/level-text.ts';
import type { Level, SectionBody, SectionMark } from './section-input.ts';
import { type CutLine, crossings, placeAt } from './section-line.ts';
import type { CutArea, Stretch } from './stretches.ts';

/** What the line crosses besides layers: drawn bodies, and names for what is met. */
export interface Crossed {
  readonly bodies: SectionBody[];
  readonly marks: SectionMark[];
}

const TOUCH = 1e-6;

/** m: a side is looked at so far before and after the line crosses it. */
const BESIDE = 0.004;

/** m: how wide a wall is drawn, and how far over what it stands beside; its true size is not told. */
const WALL_WIDTH = 0.2;
const WALL_OVER = 0.12;

/** m: an edging without a width of its own is drawn so wide. */
const THIN = 0.012;

/** m: a channel whose depth is not told is drawn so deep. */
const CHANNEL = 0.12;

export function crossedBy(
  line: CutLine,
  stretches: readonly Stretch[],
  areas: readonly CutArea[],
  job: Job,
  quantities: JobQuantities
): Crossed {
  const all = [
    ...areas.flatMap(cut => sidesCrossed(line, cut)),
    ...job.drains.filter(({ area }) => area === undefined).flatMap(drain => drainCrossed(line, drain)),
    ...job.boxes.flatMap(box => boxCrossed(line, box, areas, job, quantities)),
    ...job.pipes.flatMap(pipe => pipeCrossed(line, pipe, stretches, job))
  ];
  return { bodies: all.flatMap(({ bodies }) => bodies), marks: all.flatMap(({ marks }) => marks) };
}

/** What stands at each side that is crossed, on its outer side. */
function sidesCrossed(line: CutLine, { area, heights }: CutArea): Crossed[] {
  const seen = new Set<string>();
  return crossings(line, area.outline).flatMap(({ at, side }): Crossed[] => {
    const edge = area.edges[side];
    // Past an end at a corner the other side is met, too: once is enough.
    const outwards = outwardWay(line, area, at);
    const place = `${outwards} ${Math.round(at * 1000)}`;
    if (edge?.meets === undefined || outwards === 0 || seen.has(place)) return [];
    seen.add(place);
    const z = heights.at(placeAt(line, at)).finish;
    const key = `${area.key}/side-${side + 1}/${Math.round(at * 1000)}`;
    const what = [edge.meets.name, ...(edge.edging === undefined ? [] : [`edging ${edge.edging.name}`])].join(', ');
    const mark: SectionMark = { key: `${key}/mark`, at: at + outwards * 0.01, z, text: what };
    const floor = heights.at(placeAt(line, at)).digBottom;
    const bodies = [...edgingBodies(key, edge, at, outwards, z, area), ...wallBody(key, edge, at, outwards, z, floor)];
    return [{ bodies, marks: edge.meets.area === undefined ? [mark] : [] }];
  });
}

/** 1 where the line goes out of the area there, -1 where it comes in, else 0. */
function outwardWay(line: CutLine, { outline }: Area, at: number): -1 | 0 | 1 {
  const before = inside(outline, placeAt(line, at - BESIDE));
  const after = inside(outline, placeAt(line, at + BESIDE));
  return before === after ? 0 : before ? 1 : -1;
}

function rectangle(at: number, way: number, width: number, bottom: number, top: number): Level[] {
  const other = at + way * width;
  return [
    { at, z: bottom },
    { at: other, z: bottom },
    { at: other, z: top },
    { at, z: top }
  ];
}

function edgingBodies(
  key: string,
  { edging, standing }: Edge,
  at: number,
  way: number,
  z: number,
  area: Area
): SectionBody[] {
  if (edging === undefined) return [];
  const top = z + (standing?.value ?? 0);
  const unit = area.paving?.units[0].thickness.value ?? 0;
  const bed = area.layers.find(({ role }) => role === 'bed')?.thickness.value ?? 0;
  const foot = edging.height === undefined ? z - unit - bed : top - edging.height.value;
  const width = Math.max(THIN, edging.width?.value ?? 0);
  const says = `edging ${edging.name}`;
  const { concrete, haunch } = edging;
  return [
    ...(concrete === undefined
      ? []
      : [
          {
            key: `${key}/concrete`,
            role: 'concrete' as const,
            says: 'concrete',
            corners: rectangle(
              at - way * concrete.under.value,
              way,
              concrete.width.value,
              foot - concrete.depth.value,
              foot
            )
          }
        ]),
    ...(haunch === undefined
      ? []
      : [
          {
            key: `${key}/haunch`,
            role: 'concrete' as const,
            says: 'concrete haunch',
            corners: rectangle(at + way * width, way, haunch.width.value, foot, foot + haunch.height.value)
          }
        ]),
    { key: `${key}/edging`, role: 'edging', says, corners: rectangle(at, way, width, foot, top) }
  ];
}

/** A wall, or what else holds the paving there: how thick and deep it is, is not told. */
function wallBody(
  key: string,
  { meets, wall, edging }: Edge,
  at: number,
  way: number,
  z: number,
  floor: number
): SectionBody[] {
  const { holds, area, existing, drain, name, unknown } = meets!;
  if (!holds || area !== undefined || existing !== undefined || drain !== undefined || unknown || edging) return [];
  const foot = wall?.footing === undefined ? floor : zOf(wall.footing);
  const corners = rectangle(at, way, WALL_WIDTH, foot, z + WALL_OVER);
  return [{ key: `${key}/wall`, role: 'wall', says: name, corners }];
}

/** A channel beside the paving, where the line runs over it. */
function drainCrossed(line: CutLine, { key, name, kind, outline, grates, depth }: Drain): Crossed[] {
  const [z] = grates.map(grate => grate.z);
  const span = spanWithin(line, outline);
  if (z === undefined || span === undefined) return [];
  const corners = rectangle(span.from, 1, span.to - span.from, z - (depth?.value ?? CHANNEL), z);
  const at = (span.from + span.to) / 2;
  const says = `${kind} ${name}`;
  return [
    {
      bodies: [{ key: `${key}/cut`, role: 'drain', says, corners }],
      marks: [{ key: `${key}/mark`, at, z, text: says }]
    }
  ];
}

/** The stretch of the line within an outline, from where it first comes in. */
function spanWithin(line: CutLine, outline: readonly Side[]): { from: number; to: number } | undefined {
  const ends = [-line.past, line.length + line.past].filter(end => inside(outline, placeAt(line, end)));
  const stations = [...crossings(line, outline).map(({ at }) => at), ...ends].sort((a, b) => a - b);
  const index = stations.findIndex((at, one) => {
    const next = stations[one + 1];
    return next !== undefined && next - at > BESIDE && inside(outline, placeAt(line, (at + next) / 2));
  });
  return index < 0 ? undefined : { from: stations[index]!, to: stations[index + 1]! };
}

/** The lid of a box today, and what is done to it; one that is buried is drawn as far as it is cut down. */
function boxCrossed(
  line: CutLine,
  box: KeptOut,
  areas: readonly CutArea[],
  job: Job,
  quantities: JobQuantities
): Crossed[] {
  const { key, kind, name, outline, lid, use } = box;
  const span = spanWithin(line, outline);
  const cut = areas.find(({ area }) => area.key === box.area);
  if (span === undefined || cut === undefined || kind === 'drain') return [];
  const { system, datum } = job;
  const at = (span.from + span.to) / 2;
  const there = cut.heights.at(placeAt(line, at));
  const today = lid === undefined ? undefined : zOf(lid);
  const lidNow = today === undefined || datum === undefined ? [] : [`lid today ${levelText(today, datum, system)}`];
  if (!use?.buried) {
    const change = lidText(box, quantities, system);
    const text = `${kind} ${name}${[...lidNow, ...(change === undefined ? [] : [change])].map(one => `, ${one}`).join('')}`;
    return [{ bodies: [], marks: [{ key: `${key}/mark`, at, z: there.finish, text }] }];
  }
  const by = deepestCut(quantities.boxes?.find(({ id }) => id === key));
  const down = by === undefined ? 'cut down' : `cut down at least ${printMarked(roundedUp(by, system), system)}`;
  const top = today ?? there.finish;
  const corners = rectangle(span.from, 1, span.to - span.from, Math.min(there.digBottom, top), top);
  return [
    {
      bodies: [{ key: `${key}/cut`, role: 'buried', says: `box ${name}, ${down}`, corners }],
      marks: [{ key: `${key}/mark`, at, z: top, text: [`box ${name}`, ...lidNow, down].join(', ') }]
    }
  ];
}

/** A pipe where it crosses, by the depth that is told. */
function pipeCrossed(
  line: CutLine,
  pipe: Pipe,
  stretches: readonly Stretch[],
  { system, areas: [area] }: Job
): Crossed[] {
  const { key, name, depth } = pipe;
  const sides = pipe.line.slice(1).map(({ at }, index): Side => ({ from: pipe.line[index]!.at, to: at }));
  const met = sides.flatMap(side =>
    line.parts.flatMap(part =>
      contactsBetween(part.side, side, TOUCH).map(point => part.start + distance(part.side.from, point))
    )
  );
  return [...new Set(met)].flatMap((at, index): Crossed[] => {
    const here = stretches.find(({ from, to }) => at >= from && at <= to);
    const ground = here?.ground?.[0] ?? here?.heights?.[0].ground;
    if (ground === undefined) return [];
    const top = area && pipeTopAt(pipe, area.site, placeAt(line, at));
    const mark = { key: `${key}/mark-${index + 1}`, at, z: top ?? ground - (depth?.value ?? 0) };
    const text = `pipe ${name}: ${depthText(pipe, system)}`;
    return [{ bodies: [], marks: [{ ...mark, text, ...(depth === undefined ? {} : { isPipe: true as const }) }] }];
  });
}
