import type { Material, System, Unit } from '../job/job.ts';
import { printArea, printAs, printFine } from '../measures/print.ts';
import { stoneLayers } from '../quantities/base-past.ts';
import type { RawFix } from './finding.ts';
import { beyond, lengthValue, type Limit, limit, printLimit, shortOf } from './limits.ts';
import type { Breach, RuleInputs } from './rule.ts';

const CHECK = 'Check the number and its measure.';

const THINNEST_LAYER = limit(1, 25);
const THICKEST_LAYER = limit(36, 1000);
const THICKEST_UNIT = limit(12, 300);
const LONGEST_UNIT = limit(78, 2000);

/** Compacted stone and sand, kg/m3, and the same as it is said in each system; the two differ by a hair. */
const LIGHTEST = 993;
const HEAVIEST = 3000;
const WEIGHTS: Readonly<Record<System, string>> = {
  imperial: '62 to 187 lb per cu ft',
  metric: '1,000 to 3,000 kg/m3'
};

const LARGEST_AREA = 20_000;

/**
 * Quantities that are seldom meant: a slip of the thumb, a wrong measure, numbers in the wrong order. What stands in a
 * layer, unit or material that several areas share names no area, so that it is told once.
 */
export function quantitiesLikely(inputs: RuleInputs): Breach[] {
  const { area, system } = inputs;
  return [
    ...areaSlips(inputs),
    ...(area.paving === undefined ? [] : unitSlips(area.paving.unit, system)),
    ...layerSlips(inputs),
    ...materialsOf(inputs).flatMap(material => densitySlips(material, system))
  ];
}

function areaSlips({ area, grossArea, system }: RuleInputs): Breach[] {
  if (grossArea <= LARGEST_AREA) return [];
  return [
    {
      message: `The area ${area.name} was read as ${printArea(grossArea, system)}; more than 20,000 m2 (215,000 sq ft) is rare. Check the numbers of its outline and their measures.`,
      target: area.key,
      values: [{ name: 'area', value: grossArea, measure: 'm2' }]
    }
  ];
}

function layerSlips({ area, system }: RuleInputs): Breach[] {
  return stoneLayers(area.layers).flatMap(({ key, role, thickness }) => {
    const rare = rareLength(thickness.value, [THINNEST_LAYER, THICKEST_LAYER], ['thinner', 'thicker'], system);
    if (rare === undefined) return [];
    return [
      {
        message: `The ${role} was read as ${printFine(thickness.value, system)} thick; ${rare} is rare. ${CHECK}`,
        target: key,
        ...(thickness.key === undefined ? {} : { at: thickness.key }),
        values: [lengthValue('thickness', thickness.value)]
      }
    ];
  });
}

function unitSlips(unit: Unit, system: System): Breach[] {
  const [long, wide, thick] = [unit.length.value, unit.width.value, unit.thickness.value];
  const read = `The unit ${unit.name} was read as ${printFine(long, system)} long, ${printFine(wide, system)} wide and ${printFine(thick, system)} thick`;
  const values = [lengthValue('length', long), lengthValue('width', wide), lengthValue('thickness', thick)];
  const breach = (message: string): Breach => ({ message, target: unit.key, values });
  if (thick > Math.max(long, wide)) {
    const told = breach(`${read}: thicker than long. The thickness stands last. Check the numbers and their order.`);
    return [{ ...told, fixes: inOrder(unit) }];
  }
  const tooThick = rareLength(thick, [undefined, THICKEST_UNIT], ['', 'thicker'], system);
  const tooLong = rareLength(Math.max(long, wide), [undefined, LONGEST_UNIT], ['', 'longer'], system);
  const rare = [tooThick, tooLong].filter(words => words !== undefined);
  return rare.length === 0 ? [] : [breach(`${read}; ${rare.join(' or ')} is rare. ${CHECK}`)];
}

/** The sizes in the places of each other, the longest first. */
function inOrder({ length, width, thickness }: Unit): RawFix[] {
  const places = [length, width, thickness];
  const sizes = [...places].sort((one, other) => other.value - one.value);
  const edits = places.flatMap(({ key }, at) => (key === undefined ? [] : [{ over: key, text: sizes[at]!.written }]));
  return edits.length < places.length ? [] : [{ title: 'Put the thickness last', edits }];
}

function materialsOf({ area }: RuleInputs): Material[] {
  const materials = area.layers.map(layer => layer.material);
  return [
    ...new Map([...materials, ...(area.jointFiller ? [area.jointFiller] : [])].map(one => [one.key, one])).values()
  ];
}

function densitySlips({ key, name, compacted }: Material, system: System): Breach[] {
  if (compacted === undefined || (compacted.value >= LIGHTEST && compacted.value <= HEAVIEST)) return [];
  return [
    {
      message: `The material ${name} was read as ${printAs('density', compacted.value, system)} compacted; stone and sand have ${WEIGHTS[system]}. ${CHECK}`,
      target: key,
      ...(compacted.key === undefined ? {} : { at: compacted.key }),
      values: [{ name: 'compacted density', value: compacted.value, measure: 'kg/m3' }]
    }
  ];
}

/** `thicker than 36 in`; undefined where the length is nothing rare. */
function rareLength(
  length: number,
  [least, greatest]: readonly [Limit | undefined, Limit],
  [below, above]: readonly [string, string],
  system: System
): string | undefined {
  if (least !== undefined && shortOf(length, least, system) !== undefined)
    return `${below} than ${printLimit(least, system)}`;
  return beyond(length, greatest, system) === undefined ? undefined : `${above} than ${printLimit(greatest, system)}`;
}
