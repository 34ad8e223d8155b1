import type { Job } from '../../job/job.ts';
import { zOf } from '../../job/heights.ts';
import { alongSpots } from '../../quantities/edge-heights-stage.ts';
import { channelCut } from './channels.ts';
import { edgingBodies, rectangle } from './edging-bodies.ts';
import type { Crossed } from './crossed.ts';
import type { SectionBody, SectionLine, SectionMark } from './section-input.ts';
import { type CutLine, placeAt } from './section-line.ts';
import { type SideMet, standsUp } from './sides-met.ts';
import type { Stretch } from './stretches.ts';

/** m: how wide a wall is drawn, and how far over what it stands beside; its true size is not told. */
const WALL_WIDTH = 0.2;
const WALL_OVER = 0.12;

/** m: what lies there already is drawn so far, and no further than to the next area. */
const SURFACE = 0.6;

/** What stands or lies at each side that is crossed, on its outer side. */
export function sidesCrossed(
  line: CutLine,
  sides: readonly SideMet[],
  stretches: readonly Stretch[],
  { drains }: Job
): Crossed[] {
  return sides.map((met): Crossed => {
    const { cut, edge, key, at, outwards } = met;
    const { meets, edging } = edge;
    const there = cut.heights.at(placeAt(line, at));
    const drain = drains.find(one => one.key === meets.drain && one.area === undefined);
    const channel = drain && channelCut(line, drain, met);
    if (channel !== undefined) return channel;
    const text = [meets.name, ...(edging === undefined ? [] : [`edging ${edging.name}`])].join(', ');
    const mark: SectionMark = { key: `${key}/mark`, at: at + outwards * 0.01, z: there.finish, text };
    return {
      bodies: [
        ...edgingBodies(key, edge, at, outwards, there.finish, cut.area),
        ...wallBody(met, there.finish, there.digBottom)
      ],
      lines: surfaceLine(line, met, stretches),
      marks: meets.area === undefined ? [mark] : []
    };
  });
}

/** How thick and deep a wall is, is not told. */
function wallBody({ edge, key, at, outwards }: SideMet, z: number, floor: number): SectionBody[] {
  if (edge.edging !== undefined || !standsUp(edge)) return [];
  const foot = edge.wall?.footing === undefined ? floor : zOf(edge.wall.footing);
  const corners = rectangle(at, outwards, WALL_WIDTH, foot, z + WALL_OVER);
  return [{ key: `${key}/wall`, role: 'wall', says: edge.meets.name, corners }];
}

/** The face of what lies there already, where its height was taken. */
function surfaceLine(
  line: CutLine,
  { edge, key, at, outwards }: SideMet,
  stretches: readonly Stretch[]
): SectionLine[] {
  const spots = edge.meets.heights;
  if (spots === undefined || spots.length === 0 || standsUp(edge)) return [];
  const end = outwards > 0 ? Math.min(line.length + line.past, at + SURFACE) : Math.max(-line.past, at - SURFACE);
  const next = stretches
    .filter(({ paved }) => paved !== undefined)
    .map(({ from, to }) => (outwards > 0 ? from : to))
    .filter(other => (other - at) * outwards > 0 && (end - other) * outwards > 0);
  const to = outwards > 0 ? Math.min(end, ...next) : Math.max(end, ...next);
  const levels = [at, to].sort((a, b) => a - b).map(one => ({ at: one, z: alongSpots(spots, placeAt(line, one)) }));
  return [{ key: `${key}/surface`, role: 'beside', levels }];
}
