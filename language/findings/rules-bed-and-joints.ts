import type { Country, Given, Unit } from '../job/job.ts';
import { printFine } from '../measures/print.ts';
import { beyond, fixTo, inSystem, lengthValue, type Limit, limit, printLimit, shortOf } from './limits.ts';
import type { Breach, RuleInputs } from './rule.ts';

interface Limits {
  readonly least: Limit;
  readonly greatest: Limit;
}

type MadeOf = Unit['madeOf'];

const BED: Readonly<Record<Country, Readonly<Record<MadeOf, Limits>>>> = {
  'north-america': {
    concrete: { least: limit(3 / 4, 20), greatest: limit(3 / 2, 38) },
    clay: { least: limit(3 / 4, 19), greatest: limit(1, 25) }
  },
  britain: {
    concrete: { least: limit(3 / 4, 20), greatest: limit(1.575, 40) },
    clay: { least: limit(3 / 4, 20), greatest: limit(1.575, 40) }
  }
};

const JOINTS: Readonly<Record<Country, Readonly<Record<MadeOf, Limits>>>> = {
  'north-america': {
    concrete: { least: limit(1 / 16, 2), greatest: limit(3 / 16, 5) },
    clay: { least: limit(1 / 16, 1.6), greatest: limit(3 / 16, 4.8) }
  },
  britain: {
    concrete: { least: limit(1 / 16, 2), greatest: limit(3 / 16, 5) },
    clay: { least: limit(1 / 16, 2), greatest: limit(3 / 16, 5) }
  }
};

/** Sand beds under units of one kind (of any, where none is said) keep their limits; beds of grit have others. */
export function bedWithin({ area, system }: RuleInputs, only: MadeOf | undefined, country: Country): Breach[] {
  const { paving } = area;
  if (paving === undefined || (only !== undefined && paving.unit.madeOf !== only)) return [];
  return area.layers
    .filter(layer => layer.role === 'bed' && !layer.material.openGraded)
    .flatMap(layer => {
      const what = `The bed of ${area.name}`;
      const verdict = within(layer.thickness, BED[country][paving.unit.madeOf], system, ['thin', 'thick']);
      return verdict === undefined ? [] : [{ ...verdict, message: `${what}, ${verdict.message}`, target: layer.key }];
    });
}

/** Joints filled with sand keep their limits; joints filled with grit have others. */
export function jointsWithin({ area, system }: RuleInputs, only: MadeOf | undefined, country: Country): Breach[] {
  const { paving } = area;
  if (paving === undefined || (only !== undefined && paving.unit.madeOf !== only)) return [];
  if (area.jointFiller?.openGraded === true) return [];
  const verdict = within(paving.joint, JOINTS[country][paving.unit.madeOf], system, ['narrow', 'wide']);
  if (verdict === undefined) return [];
  return [
    {
      ...verdict,
      message: `The joints of ${area.name}, ${verdict.message}`,
      target: area.key,
      at: paving.joint.key ?? paving.key
    }
  ];
}

function within(
  given: Given,
  { least, greatest }: Limits,
  system: RuleInputs['system'],
  [below, above]: readonly [string, string]
): Pick<Breach, 'message' | 'values' | 'fixes'> | undefined {
  const length = given.value;
  const missing = shortOf(length, least, system);
  const excess = beyond(length, greatest, system);
  const by = missing ?? excess;
  if (by === undefined) return undefined;
  const limits = `${printLimit(least, system)} to ${printLimit(greatest, system)}`;
  const verb = below === 'thin' ? 'is' : 'are';
  const too = `${printFine(by, system)} too ${missing === undefined ? above : below}`;
  return {
    message: `${printFine(length, system)}, ${verb} ${too}: ${limits}.`,
    values: [
      lengthValue('as given', length),
      lengthValue('least', inSystem(least, system)),
      lengthValue('most', inSystem(greatest, system))
    ],
    ...fixTo(missing === undefined ? greatest : least, given, system)
  };
}
