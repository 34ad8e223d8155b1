import type { Drain } from '../../job/heights.ts';
import { alongSpots } from '../../quantities/edge-heights-stage.ts';
import type { Crossed } from './crossed.ts';
import { rectangle } from './edging-bodies.ts';
import type { SectionBody } from './section-input.ts';
import { type CutLine, placeAt, spanWithin } from './section-line.ts';
import type { SideMet } from './sides-met.ts';

/** m: a channel whose depth is not told is drawn so deep. */
const CHANNEL = 0.12;

/** A channel beside the paving with its concrete: at the side that meets it, else where the line runs over it. */
export function channelCut(
  line: CutLine,
  drain: Drain,
  met?: Pick<SideMet, 'at' | 'outwards' | 'cut'>
): Crossed | undefined {
  const { key, name, kind, depth } = drain;
  const span = spanOf(line, drain, met);
  if (span === undefined) return undefined;
  const { from, to } = span;
  const at = (from + to) / 2;
  const z = grateAt(line, drain, at);
  if (z === undefined) return undefined;
  const foot = z - (depth?.value ?? CHANNEL);
  const says = `${kind} ${name}`;
  const id = met === undefined ? key : `${key}/at-${Math.round(met.at * 1000)}`;
  const text = depth === undefined ? `${says}, its depth is not told` : says;
  const body: SectionBody = { key: `${id}/cut`, role: 'drain', says, corners: rectangle(from, 1, to - from, foot, z) };
  return {
    bodies: [...concreteOf(line, drain, id, { from, to, foot, z }, met), body],
    lines: [],
    marks: [{ key: `${id}/mark`, at, z, text }]
  };
}

/** Where the line passes the end of a channel at a corner of the paving, it is drawn square to its side. */
function spanOf(
  line: CutLine,
  { outline, width }: Drain,
  met: Pick<SideMet, 'at' | 'outwards'> | undefined
): { from: number; to: number } | undefined {
  const span = spanWithin(line, outline);
  if (met === undefined) return span;
  const { at, outwards } = met;
  if (span !== undefined && Math.min(Math.abs(span.from - at), Math.abs(span.to - at)) < NEAR) return span;
  if (width === undefined) return undefined;
  const other = at + outwards * width.value;
  return { from: Math.min(at, other), to: Math.max(at, other) };
}

/** m: what begins within it of the side, lies against it. */
const NEAR = 0.02;

function grateAt(line: CutLine, { grates }: Drain, at: number): number | undefined {
  const spots = grates.flatMap(({ at: place, z }) => (place === undefined ? [] : [{ at: place, z }]));
  return spots.length === 0 ? grates[0]?.z : alongSpots(spots, placeAt(line, at));
}

/** Below the channel and at its sides: on that of the paving up to what is laid on the bed. */
function concreteOf(
  line: CutLine,
  { concrete }: Drain,
  id: string,
  { from, to, foot, z }: { from: number; to: number; foot: number; z: number },
  met: Pick<SideMet, 'at' | 'outwards' | 'cut'> | undefined
): SectionBody[] {
  if (concrete === undefined) return [];
  const below = concrete.below.value;
  const beside = concrete.sides ? below : 0;
  const part = (name: string, corners: SectionBody['corners']): SectionBody => {
    return { key: `${id}/${name}`, role: 'concrete', says: 'concrete of the channel', corners };
  };
  const under = part('concrete', rectangle(from - beside, 1, to - from + 2 * beside, foot - below, foot));
  if (beside === 0) return [under];
  const top = (way: 1 | -1): number =>
    met !== undefined && met.outwards !== way ? Math.max(foot, underBed(line, met)) : z;
  return [
    under,
    part('concrete-before', rectangle(from, -1, beside, foot, top(-1))),
    part('concrete-after', rectangle(to, 1, beside, foot, top(1)))
  ];
}

/** Underside of units and bed where the paving ends. */
function underBed(line: CutLine, { at, cut: { area, heights } }: Pick<SideMet, 'at' | 'cut'>): number {
  const unit = area.paving?.units[0].thickness.value ?? 0;
  const bed = area.layers.find(({ role }) => role === 'bed')?.thickness.value ?? 0;
  return heights.at(placeAt(line, at)).finish - unit - bed;
}
