import type { Area, Edge, Key, System } from '../job/job.ts';
import { printLength } from '../measures/print.ts';
import { type SideAlong, TOUCHING } from '../quantities/neighbour-stage.ts';
import type { RawFinding, RawFix } from './finding.ts';
import { lengthValue, TIE } from './limits.ts';
import { alike, sidesFirst, usualNeighbours } from './sides.ts';

/** In metres: a side that runs along another area for less may only brush its corner. */
const BRUSHING = 0.1;

/** How the sides of an area lie along one other area of the job; `known`: whether an area has a sound outline. */
export interface Beside {
  readonly area: Area;
  readonly other: Area;
  /** For each side; undefined where that is not judged. */
  readonly sides: readonly (SideAlong | undefined)[];
  readonly known: (area: Key) => boolean;
  readonly system: System;
}

/** Sides said to meet an area that do not lie along it, and sides that lie along it and are said to meet something else. */
export function neighbourFaults(beside: Beside): RawFinding[] {
  return [...notAlong(beside), ...notSaid(beside)];
}

/** Sides of which nothing is said, by their keys, that lie along the other area: all of each, or a part. */
export function unsaidAlong({ area, other, sides }: Beside): [Key, Along][] {
  return area.edges.flatMap(({ key, meets }, index): [Key, Along][] => {
    const side = sides[index];
    if (meets !== undefined || side === undefined || side.along <= BRUSHING) return [];
    return [[key, { area: other.name, whole: side.length - side.along <= TOUCHING + TIE }]];
  });
}

export interface Along {
  readonly area: string;
  readonly whole: boolean;
}

function notAlong(beside: Beside): RawFinding[] {
  const { area, other, system } = beside;
  const apart = area.edges.filter((edge, index) => {
    const side = beside.sides[index];
    return edge.meets?.area === other.key && side !== undefined && side.length - side.along > TOUCHING + TIE;
  });
  const touches = (edge: Edge): boolean => beside.sides[area.edges.indexOf(edge)]!.along > TOUCHING;
  return alike(apart, edge => String(touches(edge))).map(edges => {
    const { sides, several } = sidesFirst(edges);
    const { along, length } = together(beside, edges);
    const said = `${sides} of ${area.name} ${several ? 'are' : 'is'} said to meet ${other.name}, but`;
    const lengths = `${printLength(along, system)} of ${printLength(length, system)}`;
    const message = touches(edges[0]!)
      ? `${said} ${several ? 'lie' : 'lies'} along it for ${lengths} only. ${setPoint(edges)} so that the rest can meet something else.`
      : `${said} ${several ? 'lie' : 'lies'} nowhere along it. Say what stands there, or draw the two against each other.`;
    const fixes = touches(edges[0]!) ? [] : usualNeighbours(area.edges).map(what => meeting(edges, what));
    return { ...finding('neighbour-not-along', message, beside, edges), fixes };
  });
}

function notSaid(beside: Beside): RawFinding[] {
  const { area, other, system } = beside;
  const along = area.edges.filter((edge, index) => {
    const { meets } = edge;
    const sound = meets !== undefined && meets.unknown === undefined;
    if (!sound || meets.area === other.key || (meets.area !== undefined && !beside.known(meets.area))) return false;
    return (beside.sides[index]?.along ?? 0) > BRUSHING;
  });
  return alike(along, edge => edge.meets!.name).map(edges => {
    const { sides, several } = sidesFirst(edges);
    const { along, length } = together(beside, edges);
    const whole = length - along <= TOUCHING + TIE;
    const lengths = whole
      ? printLength(along, system)
      : `${printLength(along, system)} of ${printLength(length, system)}`;
    const said = edges[0]!.meets!.name;
    const advice = whole
      ? `Write \`meets ${other.name}\`, or draw the two apart.`
      : `${setPoint(edges)} so that only the rest meets ${said}.`;
    const message = `${sides} of ${area.name} ${several ? 'run' : 'runs'} along ${other.name} for ${lengths} but ${several ? 'are' : 'is'} said to meet ${said}. ${advice}`;
    const fixes = whole && !several ? [meeting(edges.slice(0, 1), other.name)] : [];
    return { ...finding('neighbour-not-said', message, beside, edges), fixes };
  });
}

/** How a side is parted: a rectangle or a circle has no points, and a walk has legs. */
function setPoint(edges: readonly Edge[]): string {
  const several = new Set(edges.map(({ name }) => name)).size > 1;
  if (edges.some(({ name }) => WITHOUT_POINTS.includes(name)))
    return 'Write its outline from point to point, `outline A to B to C …`, with a point where the two part,';
  if (edges.some(({ name }) => name.startsWith('leg ')))
    return several ? 'Make two legs of each where they part,' : 'Make two legs of it where the two part,';
  return several ? 'Set a point on each side where they part,' : 'Set a point on the side where the two part,';
}

/** The sides of a rectangle and of a circle. */
const WITHOUT_POINTS: readonly string[] = ['near', 'right', 'far', 'left', 'all round'];

function meeting(edges: readonly Edge[], what: string): RawFix {
  const edits = edges.map(({ key }) => ({ gap: `${key}/thing`, statements: [what] }));
  return { title: `Write \`meets ${what}\``, edits };
}

function together({ area, sides }: Beside, edges: readonly Edge[]): SideAlong {
  const all = edges.map(edge => sides[area.edges.indexOf(edge)]!);
  return {
    length: all.reduce((sum, side) => sum + side.length, 0),
    along: all.reduce((sum, side) => sum + side.along, 0)
  };
}

function finding(id: string, message: string, beside: Beside, edges: readonly Edge[]): RawFinding {
  const { along, length } = together(beside, edges);
  return {
    id,
    message,
    target: beside.area.key,
    at: edges[0]!.key,
    values: [lengthValue('along the other area', along), lengthValue('length of the sides', length)],
    related: [{ key: beside.other.key, message: `The area ${beside.other.name}` }]
  };
}
