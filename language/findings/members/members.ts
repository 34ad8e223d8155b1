import type { Concern } from '../../job/rule.ts';
import { AREA_MEMBERS } from './area-members.ts';
import {
  BOX_MEMBERS,
  DELIVERY_MEMBERS,
  DRAIN_MEMBERS,
  GATE_MEMBERS,
  PIPE_MEMBERS,
  READING_MEMBERS,
  ROUTE_MEMBERS,
  TAPE_MEMBERS
} from './job-members.ts';
import { LAYER_MEMBERS } from './layer-members.ts';
import { MATERIAL_MEMBERS } from './material-members.ts';
import type { Member } from './member.ts';
import { SIDE_MEMBERS } from './side-members.ts';
import { SITE_MEMBERS } from './site-members.ts';
import { UNIT_MEMBERS } from './unit-members.ts';

const SITE = SITE_MEMBERS as readonly Member[];
const AREA = [...AREA_MEMBERS, ...SITE_MEMBERS] as readonly Member[];

/** What a rule about each kind of thing can look at: the thing's own first, then what it has from its area and site. */
const MEMBERS: Readonly<Record<Concern, ReadonlyMap<string, Member>>> = {
  area: byName(AREA),
  layer: byName([...LAYER_MEMBERS, ...AREA] as Member[]),
  side: byName([...SIDE_MEMBERS, ...AREA] as Member[]),
  unit: byName([...UNIT_MEMBERS, ...AREA] as Member[]),
  material: byName([...MATERIAL_MEMBERS, ...AREA] as Member[]),
  site: byName(SITE),
  gate: byName([...GATE_MEMBERS, ...SITE] as Member[]),
  box: byName([...BOX_MEMBERS, ...SITE] as Member[]),
  pipe: byName([...PIPE_MEMBERS, ...SITE] as Member[]),
  drain: byName([...DRAIN_MEMBERS, ...SITE] as Member[]),
  route: byName([...ROUTE_MEMBERS, ...SITE] as Member[]),
  tape: byName([...TAPE_MEMBERS, ...SITE] as Member[]),
  reading: byName([...READING_MEMBERS, ...SITE] as Member[]),
  delivery: byName([...DELIVERY_MEMBERS, ...SITE] as Member[])
};

export const CONCERNS = [
  'area',
  'layer',
  'side',
  'unit',
  'material',
  'site',
  'gate',
  'box',
  'pipe',
  'drain',
  'route',
  'tape',
  'reading',
  'delivery'
] as const satisfies readonly Concern[];

/** Every name that a rule about some kind of thing can look at. */
export const MEMBER_NAMES: ReadonlySet<string> = new Set(CONCERNS.flatMap(concern => [...MEMBERS[concern].keys()]));

export function memberOf(concern: Concern, name: string): Member | undefined {
  return MEMBERS[concern].get(name);
}

export function membersOf(concern: Concern): readonly Member[] {
  return [...MEMBERS[concern].values()];
}

function byName(all: readonly Member[]): ReadonlyMap<string, Member> {
  const members = new Map<string, Member>();
  for (const member of all) if (!members.has(member.name)) members.set(member.name, member);
  return members;
}
