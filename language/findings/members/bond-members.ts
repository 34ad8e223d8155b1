import type { Area, Bond, Paving } from '../../job/job.ts';
import type { Slot } from '../../laying/bonds/cell-bond.ts';
import { BOND_LOOKS, type BondLook, lookOfCell } from '../../laying/bonds/bond-look.ts';
import type { RawFix } from '../finding.ts';
import { writing } from '../limits.ts';
import { length, type Member, words } from './member.ts';
import { longerSide } from './unit-members.ts';

/** What rules can look at in how the units of an area's paving are meant to lie. Insets and borders are no part of it. */
export const BOND_MEMBERS: readonly Member<'area'>[] = [
  {
    ...words('area', 'bond', 'The name of the bond'),
    read: ({ judged: { area } }) => (area.paving === undefined ? [] : [area.paving.bond.name]),
    at: ({ judged }) => judged.area.paving?.key,
    write: ({ judged }, to) => (typeof to === 'string' ? inBond(judged.area, to) : [])
  },
  {
    ...words('area', 'bond-way', 'How the units lie to each other, whatever the bond is called', BOND_LOOKS),
    read: ({ judged: { area } }) => (area.paving === undefined ? [] : [lookOf(area.paving.bond)]),
    at: ({ judged }) => judged.area.paving?.key
  },
  {
    ...length(
      'area',
      'joints-apart',
      'How far cross joints of neighbouring courses lie apart at least, in running bond and random courses'
    ),
    print: 'thickness',
    read: ({ judged: { area } }) => area.paving && jointsApart(area.paving),
    at: ({ judged }) => judged.area.paving?.key
  },
  {
    ...length('area', 'joint-most', 'The most that its joints may be: as said, else what is usual'),
    read: ({ judged }) => judged.area.paving?.joint.most.value,
    at: ({ judged: { area } }) => area.paving?.joint.most.key ?? area.paving?.key
  },
  {
    ...length('area', 'unit-width', 'The shorter side of the units laid here; of several sizes the shortest'),
    read: ({ judged: { area } }) =>
      area.paving && Math.min(...area.paving.units.map(unit => Math.min(unit.length.value, unit.width.value)))
  },
  {
    ...length('area', 'mean-length', 'The longer side of the units laid here, of several lengths the mean'),
    read: ({ judged: { area } }) => area.paving && meanLength(area.paving)
  },
  {
    ...length(
      'area',
      'closing-length',
      'How long units of this width are to be for a bond that lays them both ways to close'
    ),
    read: ({ judged: { area } }) => area.paving && closingLength(area.paving)
  }
];

function lookOf(bond: Bond): BondLook {
  if (bond.way === 'cell') return lookOfCell(bond.cell);
  if (bond.way === 'courses') return bond.offset.value === 0 ? 'stack' : 'running';
  return bond.way;
}

function jointsApart({ bond, units: [unit], joint }: Paving): number | undefined {
  if (bond.way === 'random-courses') return bond.jointsApart.value;
  if (bond.way !== 'courses' || bond.offset.value === 0) return undefined;
  const { value } = bond.offset;
  return Math.min(value, 1 - value) * (unit.length.value + joint.width.value);
}

function meanLength({ units }: Paving): number {
  return units.reduce((sum, unit) => sum + longerSide(unit), 0) / units.length;
}

/** Another bond in the place of the one that is named: nothing where these units would open its joints too wide. */
function inBond({ paving }: Area, bond: string): RawFix[] {
  return paving === undefined || !closes(paving) ? [] : [writing(`${paving.key}/bond`, bond)];
}

/** In herringbone and basket weave a unit is as long as several are wide, with the joints between. */
function closingLength({ bond, units: [unit], joint }: Paving): number | undefined {
  if (bond.way !== 'cell' || !BOTH_WAYS.includes(lookOfCell(bond.cell))) return undefined;
  const [{ across, up }] = bond.cell.slots as [Slot];
  const wide = Math.max(across, up) / Math.min(across, up);
  return wide * unit.width.value + (wide - 1) * joint.width.value;
}

const BOTH_WAYS: readonly BondLook[] = ['herringbone', 'basket-weave'];

/**
 * Whether units close in bonds that lay them both ways: as long as they are wide twice over, with the joint between. What
 * they are longer or shorter opens joints by half of it.
 */
function closes({ units: [unit, ...others], joint: { width, most } }: Paving): boolean {
  const spare = Math.abs(unit.length.value - 2 * unit.width.value - width.value);
  return others.length === 0 && unit.shape === 'rectangle' && width.value + spare / 2 <= most.value;
}
