import type { Loop, Region } from '../../language/geometry/index.ts';
import type { AreaToLay, FieldToLay } from '../../language/laying/area-to-lay.ts';
import { cellBond } from '../../language/laying/bonds/cell-bond.ts';
import { courseBond } from '../../language/laying/bonds/course-bond.ts';
import type { Placement } from '../../language/laying/laid.ts';
import { setOut } from '../../language/laying/lay-field.ts';
import type { BondPattern } from '../../language/laying/bonds/pattern.ts';
import { curvedRegions, moved, movedLoop, movedRegion, type Motion } from '../geometry/random-outlines.ts';
import { readAreas } from './spec.ts';

/** Bonds of a repeating cell, with the units that they are laid with. */
const BONDS: Readonly<Record<string, string>> = {
  'stack-bond': 'block',
  'running-bond': 'block',
  'running-bond-third': 'block',
  'herringbone-90': 'block',
  'herringbone-45': 'block',
  'basket-weave': 'block',
  pinwheel: 'slab-200, slab-100',
  'three-sizes': 'slab-600, plank-600, slab-300'
};

/** Bonds that no drawing can say. */
const CODED: Readonly<Record<string, string>> = {
  'random-courses': 'block, plank-300',
  hexagons: 'hex',
  rings: 'block'
};

/** The field of each bond that ships as a repeating cell, by its name. */
export function bondFields(): Promise<Map<string, FieldToLay>> {
  return fieldsOf(BONDS);
}

/** The same of those that are laid by code. */
export function codedFields(): Promise<Map<string, FieldToLay>> {
  return fieldsOf(CODED);
}

async function fieldsOf(bonds: Readonly<Record<string, string>>): Promise<Map<string, FieldToLay>> {
  const areas = Object.entries(bonds).map(
    ([bond, units], index) => `area field-${index} {
  outline rectangle 1 x 1 m, corner (${2 * index}, 0) m
  paving ${units} in ${bond}, joints 3 mm${bond === 'rings' ? ' from 3 to 40 mm' : ''}
}`
  );
  const read = await readAreas(areas.join('\n'));
  return new Map(Object.keys(bonds).map((bond, index) => [bond, read[index]!.field]));
}

export interface RandomArea {
  readonly bond: string;
  readonly area: AreaToLay;
  readonly next: () => number;
}

/**
 * Outlines with arcs and keep-outs, running either way round, each bond in turn, units up to three times as large, any
 * start along a straight side: an outline of arcs alone begins in the corner of a box that does not turn with it.
 */
export function randomAreas(fields: ReadonlyMap<string, FieldToLay>, count: number, seed: number): RandomArea[] {
  const bonds = [...fields];
  return curvedRegions(count, seed).flatMap(({ region, next }, index) => {
    const [bond, field] = bonds[index % bonds.length]!;
    const { outer, holes } = next() < 0.5 ? region : movedRegion(region, MIRRORED);
    if (outer.every(side => side.arc !== undefined)) return [];
    return [{ bond, area: areaOver(outer, holes, varied(field, next), next), next }];
  });
}

const MIRRORED: Motion = { mirrored: true, turn: 0, move: { x: 0, y: 0 } };

function varied(field: FieldToLay, next: () => number): FieldToLay {
  const scale = (1 + 2 * next()) * (field.units.length === 3 ? 0.4 : 1);
  const width = next() < 0.3 ? 0 : 0.02 * next();
  return {
    ...field,
    units: field.units.map(({ key, length, width: across }) => ({
      key,
      length: length * scale,
      width: across * scale
    })),
    bond: field.bond.way === 'courses' && next() < 0.5 ? { ...field.bond, offset: next() } : field.bond,
    // Only the joints of rings open.
    joint: { width, least: width, most: field.bond.way === 'rings' ? width + 0.02 : width }
  };
}

function areaOver(outline: Loop, holes: readonly Loop[], field: FieldToLay, next: () => number): AreaToLay {
  const straight = outline.flatMap((side, index) => (side.arc === undefined ? [index] : []));
  const along = straight[Math.floor(next() * straight.length)]!;
  const from = [outline[along]!.from, outline[along]!.to][Math.floor(3 * next())];
  return {
    outline,
    keptOut: holes.map((hole, index) => ({ key: `box:${index}`, outline: hole })),
    field: {
      ...field,
      start: {
        along,
        whole: next() < 0.3 ? [along] : [],
        equalCuts: next() < 0.2,
        ...(from === undefined ? {} : { from }),
        ...(next() < 0.5 ? {} : { shifted: { x: next(), y: next() } }),
        ...(next() < 0.3 ? {} : { turned: 6 * next() })
      }
    },
    insets: [],
    borders: [],
    bands: []
  };
}

/** What of an area is paved. */
export function regionOf({ outline, keptOut }: AreaToLay): Region {
  return { outer: outline, holes: keptOut.map(shape => shape.outline) };
}

/** The bond of an area's field, set out in courses or as a cell. */
export function patternOf(area: AreaToLay): BondPattern {
  const { outline, field } = area;
  const { frame, joint } = setOut({ outline, reach: [], regions: [regionOf(area)] }, field, undefined);
  const [unit] = field.units;
  if (field.bond.way === 'courses') return courseBond(frame, unit!, joint, field.bond.offset);
  if (field.bond.way !== 'cell') throw new Error(`${field.bond.way} are no lattice`);
  const laid = cellBond(frame, field.bond.cell, field.units, field.joint.width);
  if ('sizes' in laid) throw new Error(`a cell of ${laid.sizes} sizes`);
  return laid.pattern;
}

export function movedArea(area: AreaToLay, motion: Motion): AreaToLay {
  const { from, ...start } = area.field.start;
  return {
    ...area,
    outline: movedLoop(area.outline, motion),
    keptOut: area.keptOut.map(({ key, outline }) => ({ key, outline: movedLoop(outline, motion) })),
    field: { ...area.field, start: { ...start, ...(from === undefined ? {} : { from: moved(from, motion) }) } }
  };
}

/** An outline of a unit's own frame, where the unit lies: turned and moved, never mirrored. */
export function onPlan(loop: Loop, at: Placement): Loop {
  return movedLoop(loop, { mirrored: false, turn: at.direction, move: { x: at.x, y: at.y } });
}
