import type { Country, System, Unit } from '../job/job.ts';
import { printFine } from '../measures/print.ts';
import { fixTo, inSystem, lengthValue, type Limit, limit, printLimit, shortOf, TIE } from './limits.ts';
import type { Breach, RuleInputs } from './rule.ts';
import { carriesTrucks, carriesWheels, underTraffic } from './traffic.ts';

/** Largest face of a block: 101 sq in, in m2 (ASTM C936, 5.1). */
const LARGEST_FACE = 101 * 0.0254 ** 2;

/** A block is at most so many times as long as thick (ASTM C936, 5.1). */
const LONGEST_BLOCK = 4;

/** Under trucks at most so many times (Tech Spec 4, from memory). */
const LONGEST_UNDER_TRUCKS = 3;

/** Blocks, and clay units where a value is known, are thick enough for the traffic. Slabs have a rule of their own. */
export function unitAtLeast(inputs: RuleInputs, only: Unit['madeOf'], country: Country): Breach[] {
  const { area, system } = inputs;
  const unit = area.paving?.unit;
  if (unit === undefined || unit.madeOf !== only || (only === 'concrete' && slabBy(unit, country, system))) return [];
  const least = leastThickness(inputs, only, country);
  const missing = least && shortOf(unit.thickness.value, least, system);
  if (least === undefined || missing === undefined) return [];
  return [
    {
      message: `The unit ${unit.name}, ${printFine(unit.thickness.value, system)} thick, is ${printFine(missing, system)} too thin ${underTraffic(inputs)}: ${printLimit(least, system)} at least.`,
      ...place(inputs),
      values: [lengthValue('thickness', unit.thickness.value), lengthValue('least', inSystem(least, system))],
      ...fixTo(least, unit.thickness, system)
    }
  ];
}

function leastThickness(inputs: RuleInputs, madeOf: Unit['madeOf'], country: Country): Limit | undefined {
  if (madeOf === 'clay') return limit(1.575, 40);
  if (carriesTrucks(inputs)) return limit(3.125, 80);
  if (country === 'britain' && !carriesWheels(inputs)) return undefined;
  return limit(2.36, 60);
}

/** Where wheels run, concrete units are blocks. */
export function blockNeeded(inputs: RuleInputs, country: Country): Breach[] {
  const { area, system } = inputs;
  const unit = area.paving?.unit;
  if (unit === undefined || unit.madeOf !== 'concrete' || !carriesWheels(inputs)) return [];
  const slab = slabBy(unit, country, system);
  if (slab === undefined) return [];
  const message = `The unit ${unit.name} is a slab, and ${underTraffic(inputs)} a block is needed: ${slab.message}.`;
  return [{ message, ...place(inputs), values: slab.values }];
}

/** Under trucks, units are short for their thickness; what is a slab anyway is told by {@link blockNeeded}. */
export function lengthUnderTrucks(inputs: RuleInputs): Breach[] {
  const { area, system } = inputs;
  const unit = area.paving?.unit;
  if (unit === undefined || unit.madeOf !== 'concrete' || !carriesTrucks(inputs)) return [];
  if (slabBy(unit, 'north-america', system) !== undefined) return [];
  const long = tooLong(unit, LONGEST_UNDER_TRUCKS, system);
  return long === undefined
    ? []
    : [{ message: `The unit ${unit.name} under trucks: ${long.message}.`, ...place(inputs), values: long.values }];
}

type Why = Pick<Breach, 'message' | 'values'>;

/** What makes a unit a slab in a country: too large a face, or too long for its thickness. */
function slabBy(unit: Unit, country: Country, system: System): Why | undefined {
  const face = unit.length.value * unit.width.value;
  if (country === 'north-america' && face > LARGEST_FACE * (1 + TIE)) {
    const [printed, largest] = [printFace(face, system), printFace(LARGEST_FACE, system)];
    return {
      message: `its face has ${printed}, a block at most ${largest}`,
      values: [
        { name: 'face', value: face, measure: 'm2' },
        { name: 'largest face of a block', value: LARGEST_FACE, measure: 'm2' }
      ]
    };
  }
  return tooLong(unit, LONGEST_BLOCK, system);
}

function tooLong(unit: Unit, most: number, system: System): Why | undefined {
  const length = Math.max(unit.length.value, unit.width.value);
  const thickness = unit.thickness.value;
  if (length <= most * thickness + TIE) return undefined;
  return {
    message: `it is ${printFine(length, system)} long and ${printFine(thickness, system)} thick, and may be at most ${most} times as long as thick`,
    values: [lengthValue('length', length), lengthValue('thickness', thickness)]
  };
}

/** Faces are small: square inches, or square metres to the fourth decimal. */
function printFace(squareMetres: number, system: System): string {
  return system === 'imperial'
    ? `${Number((squareMetres / 0.0254 ** 2).toFixed(1))} sq in`
    : `${Number(squareMetres.toFixed(4))} m2`;
}

function place({ area }: RuleInputs): { target: string; at?: string } {
  return { target: area.key, ...(area.paving === undefined ? {} : { at: area.paving.key }) };
}
