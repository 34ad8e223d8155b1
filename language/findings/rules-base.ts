import type { Country, Edge, Given, Site, System } from '../job/job.ts';
import { printFine, printHeight, printPercent, roundedUp } from '../measures/print.ts';
import { stoneLayers } from '../quantities/base-past.ts';
import type { RawFix } from './finding.ts';
import {
  fixTo,
  inSystem,
  lengthValue,
  type Limit,
  limit,
  printLimit,
  saying,
  shortOf,
  TIE,
  writing
} from './limits.ts';
import type { Breach, RuleInputs } from './rule.ts';
import { alike, sidesInWords } from './sides.ts';
import { carriesTrucks, carriesWheels, underTraffic } from './traffic.ts';

/** How thick a base has to be, and why. */
interface Need {
  readonly thickness: Limit;
  /** `at least under foot traffic`, `is usual under cars where winters freeze`. */
  readonly why: string;
}

/** The base is as thick as the least published for its traffic. */
export function baseAtLeast(inputs: RuleInputs, country: Country): Breach[] {
  const { system } = inputs;
  const need = leastNeed(inputs, country);
  const missing = shortOf(thicknessOf(inputs), need.thickness, system);
  if (missing === undefined) return [];
  const greatest = greatestNeed(inputs);
  const more = greatest.thickness.millimetres > need.thickness.millimetres ? `; ${asked(greatest, system)}` : '';
  return [breach(inputs, need, `${printFine(missing, system)} too thin`, `${asked(need, system)}${more}`)];
}

/** The base, thick enough for {@link baseAtLeast}, is also as thick as is usual for winters, soil and trucks. */
export function baseUsual(inputs: RuleInputs, country: Country): Breach[] {
  const { system } = inputs;
  const thickness = thicknessOf(inputs);
  if (shortOf(thickness, leastNeed(inputs, country).thickness, system) !== undefined) return [];
  const [need] = thickestFirst(usualNeeds(inputs, country));
  if (need === undefined || shortOf(thickness, need.thickness, system) === undefined) return [];
  const missing = inSystem(need.thickness, system) - thickness;
  return [breach(inputs, need, `${printFine(missing, system)} thinner than usual`, asked(need, system))];
}

function asked({ thickness, why }: Need, system: System): string {
  return `${printLimit(thickness, system)} ${why}`;
}

/** What satisfies every rule about the thickness of the base in all countries that the job names. */
function greatestNeed(inputs: RuleInputs): Need {
  const needs = inputs.countries.flatMap(country => [leastNeed(inputs, country), ...usualNeeds(inputs, country)]);
  return thickestFirst(needs)[0]!;
}

function thickestFirst(needs: readonly Need[]): Need[] {
  return [...needs].sort((a, b) => b.thickness.millimetres - a.thickness.millimetres);
}

function thicknessOf({ area }: RuleInputs): number {
  return stoneLayers(area.layers).reduce((sum, layer) => sum + layer.thickness.value, 0);
}

function breach(inputs: RuleInputs, need: Need, verdict: string, asked: string): Breach {
  const { area, system } = inputs;
  const thickness = thicknessOf(inputs);
  const stone = stoneLayers(area.layers);
  const first = stone[0];
  return {
    message:
      first === undefined
        ? `The area ${area.name} has no base: ${asked}.`
        : `The base of ${area.name}, ${printFine(thickness, system)}, is ${verdict}: ${asked}.`,
    target: first?.key ?? area.key,
    values: [lengthValue('base', thickness), lengthValue('needed', inSystem(need.thickness, system))],
    fixes: thickerBase(inputs)
  };
}

/** As thick as satisfies all rules: the one layer, the upper of two by what both lack, or a base where there is none. */
function thickerBase(inputs: RuleInputs): readonly RawFix[] {
  const { area, system, countries } = inputs;
  const need = greatestNeed(inputs).thickness;
  const [first, ...others] = stoneLayers(area.layers);
  if (first === undefined) {
    const stone = USUAL_STONE[countries[0] ?? 'north-america'];
    return [saying(`${area.key}/base`, `base ${stone} ${printLimit(need, system)}`)];
  }
  if (others.length === 0) return fixTo(need, first.thickness, system).fixes;
  return thickerBy(first.thickness, inSystem(need, system) - thicknessOf(inputs), system);
}

const USUAL_STONE: Readonly<Record<Country, string>> = { 'north-america': 'crushed-stone', britain: 'type-1' };

function thickerBy({ key, value, assumed }: Given, missing: number, system: System): RawFix[] {
  if (key === undefined || assumed !== undefined) return [];
  return [writing(key, printFine(roundedUp(value + missing, system), system))];
}

function leastNeed(inputs: RuleInputs, country: Country): Need {
  const wheels = carriesWheels(inputs);
  const why = `at least ${underTraffic(inputs)}`;
  // Where the bearing ratio was measured it tells more than the name of the soil.
  if (country === 'britain' && wheels && inputs.area.site.bearing === undefined && isClay(inputs.area.site)) {
    return { thickness: limit(8, 200), why: `${why} on clay` };
  }
  return { thickness: wheels ? limit(6, 150) : limit(4, 100), why };
}

function usualNeeds(inputs: RuleInputs, country: Country): Need[] {
  return country === 'britain' ? bearingNeeds(inputs) : northAmericanNeeds(inputs);
}

function northAmericanNeeds(inputs: RuleInputs): Need[] {
  const { site } = inputs.area;
  const wheels = carriesWheels(inputs);
  const usual = `is usual ${underTraffic(inputs)}`;
  const needs: Need[] = [];
  if (site.winters === 'freeze') {
    needs.push({ thickness: wheels ? limit(10, 250) : limit(6, 150), why: `${usual} where winters freeze` });
  }
  const soil = poorSoil(site);
  if (soil !== undefined) needs.push({ thickness: wheels ? limit(8, 200) : limit(6, 150), why: `${usual} on ${soil}` });
  if (carriesTrucks(inputs)) needs.push({ thickness: limit(8, 200), why: usual });
  return needs;
}

/** A soil of this bearing ratio or less counts as poor (pavement design course text: poor is 3 to 5). */
const POOR_BEARING = 0.05;

function poorSoil(site: Site): string | undefined {
  if (site.drains === 'poorly') return `${site.soil.name} that drains poorly`;
  if (site.bearing !== undefined) {
    return site.bearing.value <= POOR_BEARING + TIE ? bearingText(site.bearing.value) : undefined;
  }
  return isClay(site) ? site.soil.name : undefined;
}

/** Under cars, base by bearing ratio; from memory, BS 7533 family. The first row whose ratio is not exceeded counts. */
const BASE_BY_BEARING: readonly (readonly [number, Limit])[] = [
  [0.02, limit(12, 300)],
  [0.03, limit(9, 225)],
  [0.04, limit(8, 200)],
  [0.05, limit(6, 150)]
];

function bearingNeeds(inputs: RuleInputs): Need[] {
  const bearing = inputs.area.site.bearing?.value;
  if (bearing === undefined || !carriesWheels(inputs)) return [];
  const row = BASE_BY_BEARING.find(([ratio]) => bearing <= ratio + TIE);
  const why = `is usual ${underTraffic(inputs)} on ${bearingText(bearing)}`;
  return row === undefined ? [] : [{ thickness: row[1], why }];
}

function bearingText(bearing: number): string {
  return `soil with a bearing ratio of ${printPercent(bearing)}`;
}

function isClay({ soil }: Site): boolean {
  return /\bclay\b/.test(soil.name);
}

/** The dig reaches the underside of the topsoil. */
export function baseOnTopsoil(inputs: RuleInputs): Breach[] {
  const { area, depth, system } = inputs;
  const { topsoil, ground } = area.site;
  if (topsoil === undefined || depth >= topsoil.value - TIE) return [];
  const left = printFine(topsoil.value - depth, system);
  const level = ground === undefined || area.finish === undefined ? ' (ground taken level with the finish)' : '';
  return [
    {
      message: `The dig of ${area.name}, ${printFine(depth, system)} deep${level}, leaves ${left} of the topsoil, which is ${printFine(topsoil.value, system)} thick: the base may not lie on topsoil.`,
      target: area.key,
      ...atLowestLayer(area),
      values: [lengthValue('dig', depth), lengthValue('topsoil', topsoil.value)],
      fixes: depth > 0 ? deeperBy(inputs, topsoil.value - depth) : []
    }
  ];
}

/** A base that is thicker, and thick enough for all rules; or a lower finish. */
function deeperBy(inputs: RuleInputs, missing: number): RawFix[] {
  const { area, system } = inputs;
  const [base] = stoneLayers(area.layers);
  const least = inSystem(greatestNeed(inputs).thickness, system) - thicknessOf(inputs);
  const thicker = base === undefined ? [] : thickerBy(base.thickness, Math.max(missing, least), system);
  const { finish } = area;
  if (finish?.above.key === undefined || finish.fromNought) return thicker;
  const below = roundedUp(missing - finish.above.value, system);
  return [...thicker, writing(finish.above.key, printHeight(-below, finish.benchmark, system))];
}

function atLowestLayer(area: RuleInputs['area']): { at?: string } {
  const lowest = area.layers.at(-1);
  return lowest === undefined ? {} : { at: lowest.key };
}

/** At open edges with edging that does not stand on concrete, the base reaches as far past it as it is thick. */
export function basePastEdging(inputs: RuleInputs): Breach[] {
  const { area, overhangs, system } = inputs;
  const thickness = thicknessOf(inputs);
  const pastOf = (edge: Edge): number => overhangs[area.edges.indexOf(edge)]! - (edge.edging?.width?.value ?? 0);
  const short = area.edges.filter(
    edge =>
      edge.meets?.openGround === true &&
      edge.edging !== undefined &&
      edge.edging.concrete === undefined &&
      pastOf(edge) < thickness - TIE
  );
  return alike(short, edge => `${edge.meets!.name} ${edge.edging!.name} ${pastOf(edge)}`).map(edges => {
    const past = pastOf(edges[0]!);
    return {
      message: `At ${sidesInWords(edges)} of ${area.name} the base runs ${printFine(past, system)} past the edging: as far as it is thick, ${printFine(thickness, system)}, is advised.`,
      target: area.key,
      at: edges[0]!.key,
      values: [lengthValue('base past the edging', past), lengthValue('base', thickness)],
      fixes: pastFixes(area, thickness, system)
    };
  });
}

/** As far past the edging as the base is thick. */
function pastFixes(area: RuleInputs['area'], thickness: number, system: System): RawFix[] {
  const [base] = stoneLayers(area.layers);
  if (base === undefined) return [];
  const past = printFine(roundedUp(thickness, system), system);
  if (base.past?.key !== undefined) return [writing(base.past.key, past)];
  return [saying(`${area.key}/${base.role}/past`, `${past} past the edging`)];
}
