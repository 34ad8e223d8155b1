import { MOST_UNITS, sideLength } from '../geometry/index.ts';
import type { Area, Border, System, Unit } from '../job/job.ts';
import type { SideFit } from '../laying/lay-field.ts';
import type { AreaToLay } from '../laying/area-to-lay.ts';
import type { AreaNotLaid, LaidArea } from '../laying/lay-area.ts';
import { type SawnSide, sawnSides } from '../laying/sawn-sides.ts';
import type { NoRing } from '../laying/bonds/ring.ts';
import { printFine, printLength, printThickness } from '../measures/print.ts';
import { tooManyUnits } from './area-faults.ts';
import type { RawFinding } from './finding.ts';

/** Why the units of an area could not be laid. */
export function notLaid(area: Area, why: AreaNotLaid, system: System): RawFinding {
  if ('tooMany' in why) return tooManyUnits(area, why.tooMany, MOST_UNITS);
  const inset = area.insets.find(({ key }) => key === why.part);
  const paving = inset?.paving ?? area.paving!;
  const about = { target: area.key, at: paving.key };
  const where = inset === undefined ? '' : `In the inset ${inset.name}: `;
  if ('noOrderFor' in why)
    return {
      ...about,
      id: 'units-do-not-fit-bond',
      message: `${where}The lengths ${listed(paving.units.map(({ length }) => length.written))} leave no way to keep the cross joints of neighbouring courses ${apartOf(paving.bond)} apart. Write a smaller \`joints-apart\`, at most half the shortest unit, into the bond ${paving.bond.name}.`
    };
  if ('noRingWithin' in why)
    return {
      ...about,
      id: 'units-do-not-fit-bond',
      message: where + noRing(why, system)
    };
  const border = [...area.borders, ...area.bands].find(({ key }) => key === why.part)!;
  return {
    id: 'border-does-not-fit',
    target: area.key,
    at: border.key,
    message: `The ${courseWords(border)} of ${border.unit.name} does not fit${why.side === undefined ? '' : ` along ${area.edges[why.side]?.name ?? 'its side'}`}: ${REASONS[why.fault]}`
  };
}

const REASONS = {
  'too-narrow': 'there is less room than it takes. Leave it out there, or take sailors instead of soldiers.',
  'too-tight': 'the curve is too tight for these units. Take shorter units, or leave it out there.',
  'too-sharp': 'a corner is too sharp. Leave it out on one of the sides that meet there.',
  'not-a-size': 'its units have no size.'
} as const;

function courseWords({ course }: Pick<Border, 'course'>): string {
  return course.replace('-', ' ');
}

function apartOf(bond: NonNullable<Area['paving']>['bond']): string {
  return bond.way === 'random-courses' ? bond.jointsApart.written : '';
}

function noRing({ noRingWithin, least }: NoRing, system: System): string {
  const most = printFine(noRingWithin, system);
  if (least !== undefined)
    return `No ring fits here: with joints of at most ${most} the innermost one leaves ${printLength(2 * least, system)} open. Let the joints open further, such as \`joints ${usualRings(system)}\`, or take smaller units.`;
  return `In rings the joints open outward, and here they may not: at most ${most}. Say how far they may open, such as \`joints ${usualRings(system)}\`.`;
}

function usualRings(system: System): string {
  return system === 'imperial' ? '1/8 in from 1/8 to 1/2 in' : '3 mm from 3 to 12 mm';
}

function listed(all: readonly string[]): string {
  return all.length < 2 ? all.join('') : `${all.slice(0, -1).join(', ')} and ${all.at(-1)!}`;
}

/** Borders and bands that come to lie nowhere. */
export function edgingFaults(area: Area, { parts }: LaidArea, system: System): RawFinding[] {
  const nowhere = new Set(parts.flatMap(({ part, runs }) => (runs?.length === 0 ? [part] : [])));
  const about = (key: string, message: string): RawFinding => ({
    id: 'border-does-not-fit',
    target: area.key,
    at: key,
    message
  });
  const bands = area.bands.filter(({ key }) => nowhere.has(key));
  const borders = area.borders.filter(({ key }) => nowhere.has(key));
  return [
    ...borders.map(border =>
      about(border.key, `The ${courseWords(border)} of ${border.unit.name} runs along nothing in ${area.name}.`)
    ),
    ...bands.map(({ key, at, side }) => {
      const long = sideLength(area.outline[side]!);
      return about(
        key,
        `A band ${at.written} along ${area.edges[side]!.name} meets nothing to be paved: that side is ${printLength(long, system)} long.`
      );
    })
  ];
}

/** A start that asks for whole units along sides where units are cut all the same. */
export function startFaults(area: Area, toLay: AreaToLay, laid: LaidArea, system: System): RawFinding[] {
  const field = laid.parts.find(({ part }) => part === 'field')?.how;
  const fits = (field?.fits ?? []).filter(one => !one.fits);
  const told = new Set(fits.flatMap(({ sides }) => sides));
  return [
    ...fits.map(fit => startFault(area, fit, system)),
    ...sawnSides(toLay, laid)
      .filter(({ side }) => !told.has(side))
      .map(sawn => notWhole(area, sawn))
  ];
}

function notWhole({ key, edges, start, paving }: Area, { side, cut }: SawnSide): RawFinding {
  const name = edges[side]!.name;
  const bond = paving!.bond.name;
  return {
    id: 'start-does-not-fit',
    target: key,
    ...(start.key === undefined ? {} : { at: start.key }),
    message:
      cut === 0
        ? `Whole units can't lie along ${name}: it is bowed. Name a straight side, or lay a border there.`
        : `Along ${name} ${cut} ${cut === 1 ? 'unit is' : 'units are'} cut: in ${bond}, with what else is said of the start, not all can be whole there. Say less of the start, or lay a border there.`,
    values: [{ name: 'cut units', value: cut, measure: '' }]
  };
}

function startFault(area: Area, { sides, units, joint, way }: SideFit, system: System): RawFinding {
  const [one, other] = sides.map(side => area.edges[side]!.name);
  const unit: Unit = area.paving!.units[0];
  const { width, least, most } = area.paving!.joint;
  const what = `whole units along both ${one!} and ${other!}`;
  const size = (way === 'along' ? unit.length : unit.width).written;
  const how =
    units > 1 && joint < 0
      ? `${units} of ${size} are longer than what is between them, and one fewer would need joints wider than ${printThickness(most.value, system)}`
      : units > 1
        ? `${units} of ${size} would need joints of ${printFine(joint, system)}, and they may be ${printThickness(least.value, system)} to ${printThickness(most.value, system)}`
        : `${unit.name} is too large for what is between them`;
  return {
    id: 'start-does-not-fit',
    target: area.key,
    ...(area.start.key === undefined ? {} : { at: area.start.key }),
    message: `There can't be ${what}: ${how}. The units begin whole along ${one!}; move a side, or name one side.`,
    values: [
      { name: 'joint', value: width.value, measure: 'm' },
      { name: 'joint needed', value: joint, measure: 'm' }
    ]
  };
}
