import { distance, type Side } from '../../geometry/index.ts';
import { contactsBetween } from '../../geometry/contacts.ts';
import type { Drain, Pipe } from '../../job/heights.ts';
import type { Job, KeptOut } from '../../job/job.ts';
import { zOf } from '../../job/heights.ts';
import { deepestCut } from '../../quantities/boxes.ts';
import type { JobQuantities } from '../../quantities/contract.ts';
import { pipeTopAt } from '../../quantities/pipes.ts';
import { depthText, lidText } from '../plan/things-of-job.ts';
import { printMarked, roundedUp } from '../../measures/print.ts';
import { levelStyleOf, printLevel } from '../../measures/print-level.ts';
import { channelCut } from './channels.ts';
import { rectangle } from './edging-bodies.ts';
import type { SectionBody, SectionLine, SectionMark } from './section-input.ts';
import { type CutLine, placeAt, spanWithin } from './section-line.ts';
import { sidesCrossed } from './sides-crossed.ts';
import type { SideMet } from './sides-met.ts';
import type { CutArea, Stretch } from './stretches.ts';

/** What the line crosses besides layers: drawn bodies, and names for what is met. */
export interface Crossed {
  readonly bodies: readonly SectionBody[];
  readonly lines: readonly SectionLine[];
  readonly marks: readonly SectionMark[];
}

const TOUCH = 1e-6;

export function crossedBy(
  line: CutLine,
  stretches: readonly Stretch[],
  areas: readonly CutArea[],
  sides: readonly SideMet[],
  job: Job,
  quantities: JobQuantities
): Crossed {
  const met = new Set(sides.map(({ edge }) => edge.meets.drain));
  const isFree = ({ key, area }: Drain): boolean => area === undefined && !met.has(key);
  const all = [
    ...sidesCrossed(line, sides, stretches, job),
    ...job.drains.filter(isFree).flatMap(drain => channelCut(line, drain) ?? []),
    ...job.boxes.flatMap(box => boxCrossed(line, box, areas, job, quantities)),
    ...job.pipes.flatMap(pipe => pipeCrossed(line, pipe, stretches, job))
  ];
  return {
    bodies: all.flatMap(({ bodies }) => bodies),
    lines: all.flatMap(({ lines }) => lines),
    marks: all.flatMap(({ marks }) => marks)
  };
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
  const lidNow =
    today === undefined || datum === undefined ? [] : [`lid today ${printLevel(today, datum, levelStyleOf(system))}`];
  if (!use?.buried) {
    const change = lidText(box, quantities, system);
    const text = `${kind} ${name}${[...lidNow, ...(change === undefined ? [] : [change])].map(one => `, ${one}`).join('')}`;
    return [{ bodies: [], lines: [], marks: [{ key: `${key}/mark`, at, z: there.finish, text }] }];
  }
  const by = deepestCut(quantities.boxes?.find(({ id }) => id === key));
  const down = by === undefined ? 'cut down' : `cut down at least ${printMarked(roundedUp(by, system), system)}`;
  const top = today ?? there.finish;
  const corners = rectangle(span.from, 1, span.to - span.from, Math.min(there.digBottom, top), top);
  return [
    {
      bodies: [{ key: `${key}/cut`, role: 'buried', says: `box ${name}, ${down}`, corners }],
      lines: [],
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
    return [
      { bodies: [], lines: [], marks: [{ ...mark, text, ...(depth === undefined ? {} : { isPipe: true as const }) }] }
    ];
  });
}
