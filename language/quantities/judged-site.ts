import { distanceToSide, type Side } from '../geometry/index.ts';
import type { Gate } from '../job/heights.ts';
import type { Area, Job, Key, Meets, Site, System } from '../job/job.ts';
import type { MeasuredLayer } from '../job/log.ts';
import type { DrainQuantities, GateQuantities, ReadingQuantities, SiteQuantities } from './site-contract.ts';

export type JudgedDrain = DrainQuantities & { readonly kind: 'channel' | 'gully' };

export type JudgedGate = GateQuantities & {
  /** A channel lies along its opening, or the side that it is in meets one. */
  readonly channelAlong: boolean;
};

/** Something measured, against what it should be. What was not measured is absent. */
export interface JudgedReading {
  readonly id: Key;
  readonly kind: 'height' | 'gap' | 'slope';
  readonly date: string;
  /** The area's name. */
  readonly area?: string;
  readonly layer?: MeasuredLayer;
  /** The point, or the line. */
  readonly place?: string;
  readonly measured?: number;
  readonly design?: number;
  readonly above?: number;
  readonly gap?: number;
  readonly straightedge?: number;
  /** Slope along the line, more than nought where it rises. */
  readonly slope?: number;
  readonly designSlope?: number;
  /** Units there are tapped down by hand; else they are vibrated. */
  readonly setByHand?: boolean;
  /** How far the bed there settles, where that is said, m. */
  readonly settles?: number;
}

/** All that rules look at of a job besides its areas. */
export interface SiteToJudge extends Omit<
  SiteQuantities,
  'datum' | 'heights' | 'gates' | 'drains' | 'water' | 'readings' | 'gaps' | 'slopes'
> {
  readonly system: System;
  readonly site?: Site;
  readonly gates: readonly JudgedGate[];
  readonly drains: readonly JudgedDrain[];
  readonly readings: readonly JudgedReading[];
  /** By the thing delivered: its last entry in the log. */
  readonly deliveredAt: Readonly<Record<string, Key>>;
  /** By tape, in their order: its key. */
  readonly tapeKeys: readonly Key[];
}

/** What rules about gates, boxes, pipes and the like are judged from. */
export function siteToJudge(job: Job, quantities: SiteQuantities): SiteToJudge {
  const {
    datum: _datum,
    heights: _heights,
    boxes,
    gates,
    drains,
    water: _water,
    readings,
    gaps,
    slopes,
    ...others
  } = quantities;
  const site = job.areas[0]?.site;
  return {
    ...others,
    system: job.system,
    ...(site === undefined ? {} : { site }),
    // Numbers take one in use to stay, whatever the text asks.
    boxes: (boxes ?? []).map(box => ({
      ...box,
      buried: job.boxes.find(({ key }) => key === box.id)?.use?.buried === true
    })),
    gates: (gates ?? []).map(gate => ({
      ...gate,
      channelAlong: channelAlong(job, job.gates.find(({ key }) => key === gate.id)?.opening)
    })),
    drains: (drains ?? []).map(drain => ({ ...drain, kind: job.drains.find(({ key }) => key === drain.id)!.kind })),
    readings: [
      ...(readings ?? []).map(reading => heightRead(reading, areaOf(job, reading.area))),
      ...(gaps ?? []).map(({ area, ...gap }): JudgedReading => ({ ...gap, kind: 'gap', ...named(job, area) })),
      ...(slopes ?? []).map(({ area, along, measured, design, ...slope }): JudgedReading => ({
        ...slope,
        kind: 'slope',
        place: along,
        slope: measured,
        ...(design === undefined ? {} : { designSlope: design }),
        ...named(job, area)
      }))
    ],
    deliveredAt: Object.fromEntries(
      job.log.flatMap(entry => (entry.kind === 'delivered' ? [[entry.name, entry.key]] : []))
    ),
    tapeKeys: job.tapes.map(({ key }) => key)
  };
}

/** Doors of a job whose sill is said, with where it lies. */
export function doorsOf({ gates }: Job): readonly Gate[] {
  return gates.filter(({ sill, opening }) => sill !== undefined && opening !== undefined);
}

/** Metres: a channel or a side no further off runs along an opening. */
const ALONG = 0.3;

/** A channel takes the water before an opening. */
function channelAlong({ drains, areas }: Job, opening: Gate['opening']): boolean {
  if (opening === undefined) return false;
  const isAlong = (side: Side): boolean => [opening.from, opening.to].every(end => distanceToSide(side, end) <= ALONG);
  return (
    drains.some(({ line }) => line !== undefined && isAlong(line)) ||
    areas.some(({ edges, outline }) => edges.some(({ meets }, index) => isChannel(meets) && isAlong(outline[index]!)))
  );
}

function isChannel(meets: Meets | undefined): boolean {
  return meets !== undefined && (meets.drain !== undefined || meets.kind === CHANNEL || meets.name === CHANNEL);
}

/** The shipped kind of side that a channel is. */
const CHANNEL = 'drain-channel';

function areaOf({ areas }: Job, key: Key | undefined): Area | undefined {
  return areas.find(area => area.key === key);
}

function named(job: Job, key: Key | undefined): { readonly area?: string } {
  const area = areaOf(job, key);
  return area === undefined ? {} : { area: area.name };
}

function heightRead({ id, date, layer, at, measured, design, above }: ReadingQuantities, area?: Area): JudgedReading {
  const settles = area?.layers.find(({ role }) => role === 'bed')?.settles?.value;
  const byHand = area?.paving?.units[0].setByHand;
  return {
    id,
    kind: 'height',
    date,
    layer: layer as MeasuredLayer,
    place: at,
    measured,
    design,
    above,
    ...(area === undefined ? {} : { area: area.name, setByHand: byHand === true }),
    ...(settles === undefined ? {} : { settles })
  };
}
