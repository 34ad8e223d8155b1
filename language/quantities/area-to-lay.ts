import type { Area, Bond, Given, Joint, KeptOut, Paving, Start, Unit } from '../job/job.ts';
import type { AreaToLay, BondToLay, FieldToLay, JointLimits, KeptOutShape } from '../laying/area-to-lay.ts';
import type { SizedUnit } from '../laying/bonds/cell-bond.ts';

/** What laying an area goes by; absent where the area has no paving. Others may be where its joint lines come from. */
export function areaToLay(area: Area, others: ReadonlyMap<string, Area>): AreaToLay | undefined {
  return toLay(area, others, new Set());
}

function toLay(area: Area, others: ReadonlyMap<string, Area>, before: ReadonlySet<string>): AreaToLay | undefined {
  if (area.paving === undefined) return undefined;
  const on = area.start.carriedOnFrom;
  const round = new Set([...before, area.key]);
  const from = on === undefined || round.has(on) ? undefined : others.get(on);
  const carriedOnFrom = from && toLay(from, others, round);
  return {
    outline: area.outline,
    keptOut: area.keptOut.map(shapeOf),
    field: {
      ...fieldToLay(area.paving, area.start),
      ...(area.inboardCuts === undefined ? {} : { inboardCuts: area.inboardCuts.value }),
      ...(carriedOnFrom === undefined ? {} : { carriedOnFrom })
    },
    insets: area.insets.map(inset => ({ ...shapeOf(inset), field: fieldToLay(inset.paving, inset.start) })),
    borders: area.borders.map(({ key, unit, course, joint, along, corners }) => ({
      key,
      unit: sizeOf(unit),
      soldier: course === 'soldier-course',
      joint: limitsOf(joint),
      along,
      mitred: corners === 'mitred'
    })),
    bands: area.bands.map(({ key, unit, course, joint, side, at }) => ({
      key,
      unit: sizeOf(unit),
      soldier: course === 'soldier-course',
      joint: limitsOf(joint),
      side,
      at: at.value
    }))
  };
}

function shapeOf({ key, outline }: Pick<KeptOut, 'key' | 'outline'>): KeptOutShape {
  return { key, outline };
}

function sizeOf({ key, length, width }: Unit): SizedUnit {
  return { key, length: length.value, width: width.value };
}

function limitsOf({ width, least, most }: Joint): JointLimits {
  return { width: width.value, least: least.value, most: most.value };
}

function fieldToLay({ units, bond, joint }: Paving, start: Start): FieldToLay {
  const { along, whole, equalCuts, from, shifted, turned, jointLine } = start;
  return {
    units: units.map(sizeOf),
    bond: bondToLay(bond),
    joint: limitsOf(joint),
    turned: radians(bond.turned),
    start: {
      ...(along === undefined ? {} : { along }),
      whole,
      equalCuts,
      ...(from === undefined ? {} : { from }),
      ...(shifted === undefined ? {} : { shifted: { x: shifted.along.value, y: shifted.across.value } }),
      ...(turned === undefined ? {} : { turned: radians(turned) }),
      ...(jointLine === undefined ? {} : { jointLine })
    }
  };
}

function bondToLay(bond: Bond): BondToLay {
  switch (bond.way) {
    case 'courses':
      return { way: 'courses', offset: bond.offset.value };
    case 'cell':
      return { way: 'cell', cell: bond.cell };
    case 'random-courses':
      return { way: 'random-courses', seed: bond.seed, jointsApart: bond.jointsApart.value };
    default:
      return { way: bond.way };
  }
}

function radians(degrees: Given | undefined): number {
  return ((degrees?.value ?? 0) * Math.PI) / 180;
}
