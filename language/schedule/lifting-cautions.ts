import { packMass } from '../buying/pack-mass.ts';
import type { Given, Key, Material, System, Unit } from '../job/job.ts';
import type { PriceList, SoldAs } from '../job/prices.ts';
import { measureNamed } from '../measures/measures.ts';
import { printAs } from '../measures/print.ts';
import { unitsOf } from '../quantities/units-of-area.ts';
import type { Belonging } from './cautions.ts';
import { fromNearTheGround, LIFTING_SOURCE, loadConstant } from './lifting.ts';
import { namesInRow, type Planned } from './planned.ts';

const POUND = measureNamed('lb')!.factor.valueOf();
const INCH = measureNamed('in')!.factor.valueOf();

/** Where a unit's weight is not told, kg/m3: common practice. */
const USUAL_DENSITY = { concrete: 2300, clay: 2100 } as const;

const LIMITS =
  "This equation is for two hands, standing on firm ground: not for laying on one's knees, one hand, shovels, barrows or tight places.";

/** What one person lifts: a unit, or a piece of an edging. */
interface Piece {
  readonly name: string;
  /** kg */
  readonly mass: number;
  readonly isTold: boolean;
  /** The short side of its face, m. */
  readonly side: number;
}

/** Weights of pieces against the lifting equation, what small ones add up to, and the weight of pallets. */
export function liftingCautions(planned: Planned, prices: readonly PriceList[]): Belonging[] {
  const { areas, job } = planned;
  const units = [...new Map(areas.flatMap(({ area }) => unitsOf(area)).map(unit => [unit.key, unit])).values()];
  const edging = areas.flatMap(({ area }) => area.edges.flatMap(edge => edge.edging ?? []));
  const isHeavy = (piece: Piece): boolean => inSystem(piece.mass, job.system) > limitFor(piece, job.system);
  const heavyUnits = units.map(unitPiece).filter(isHeavy);
  const heavyEdging = [...new Map(edging.map(one => [one.key, one])).values()]
    .flatMap(one => edgingPiece(one, prices))
    .filter(isHeavy);
  return [
    ...heavyPieces(heavyEdging, 'edging', [], planned),
    ...heavyPieces(heavyUnits, 'laying', heavyEdging, planned),
    ...(heavyUnits.length > 0 ? [] : smallPieces(units, planned)),
    ...pallets(units, prices, job.system)
  ];
}

function unitPiece(unit: Unit): Piece {
  const { name, weight, length, width } = unit;
  const side = Math.min(length.value, width.value);
  return { name, mass: massOf(unit), isTold: weight !== undefined, side };
}

/** Weighed as its price tells it, of pieces of its length. */
function edgingPiece({ key, name, length, width, height }: Material, prices: readonly PriceList[]): Piece[] {
  if (length === undefined || width === undefined || height === undefined) return [];
  const side = Math.min(width.value, height.value);
  const ways = prices.flatMap(list => (list.thing === key ? list.ways : []));
  const told = ways.find(way => way.word === 'length' && way.weight !== undefined && way.holds.value === length.value);
  if (told !== undefined) return [{ name, mass: told.weight!.value, isTold: true, side }];
  const mass = length.value * width.value * height.value * USUAL_DENSITY.concrete;
  return [{ name, mass, isTold: false, side }];
}

/** kg of one unit. */
function massOf({ weight, length, width, thickness, madeOf }: Unit): number {
  return weight?.value ?? length.value * width.value * thickness.value * USUAL_DENSITY[madeOf];
}

/** Pounds or kilograms. */
function inSystem(mass: number, system: System): number {
  return system === 'imperial' ? mass / POUND : mass;
}

/** The recommended weight from near the ground, lb or kg. */
function limitFor({ side }: Piece, system: System): number {
  return fromNearTheGround(system === 'imperial' ? side / INCH : side * 100, system);
}

function weightText(value: number, system: System): string {
  return system === 'imperial' ? `${value.toFixed(0)} lb` : `${Number(value.toFixed(value < 10 ? 1 : 0))} kg`;
}

/** Told at the task that lifts them; how the limits come about once, with what was lifted before. */
function heavyPieces(
  heavy: readonly Piece[],
  task: 'edging' | 'laying',
  before: readonly Piece[],
  { job }: Planned
): Belonging[] {
  if (heavy.length === 0) return [];
  const { system } = job;
  const pieces = heavy.map(({ name, mass, isTold }) => {
    const weight = weightText(inSystem(mass, system), system);
    return `${name} weighs ${isTold ? '' : 'about '}${weight}`;
  });
  const least = weightText(Math.min(...heavy.map(piece => limitFor(piece, system))), system);
  const british = job.rulebooks.some(({ id }) => id === 'britain')
    ? ' The British guide figures are 25 kg for men and 16 kg for women, close to the body at knuckle height (from memory).'
    : '';
  const measure = system === 'imperial' ? 'lb' : 'kg';
  const limits =
    before.length > 0
      ? `The equation told with ${namesInRow(before.map(({ name }) => name))} recommends about ${least} picked up near the ground: two people, or a carrier.`
      : `The lifting equation recommends ${loadConstant(system)} ${measure} at most when all is at its best, and about ${least} picked up near the ground, even seldom: two people, or a carrier.${british} ${LIMITS}`;
  return [
    {
      id: before.length > 0 ? 'lifting-units' : 'lifting',
      at: [task],
      text: `${namesInRow(pieces)}. ${limits}`,
      source: LIFTING_SOURCE
    }
  ];
}

/** Pieces of a light weight, laid by the thousand. */
function smallPieces(units: readonly Unit[], { quantities, job }: Planned): Belonging[] {
  const counts = new Map(quantities.units.map(({ unit, whole, cut }) => [unit, whole + cut]));
  const pieces = units.reduce((sum, { name }) => sum + (counts.get(name) ?? 0), 0);
  const mass = units.reduce((sum, unit) => sum + (counts.get(unit.name) ?? 0) * massOf(unit), 0);
  if (pieces === 0) return [];
  return [
    {
      id: 'lifting-often',
      at: ['laying'],
      text: `${pieces} pieces, ${printAs('mass', mass, job.system)} in all, are lifted by hand: set the stacks close by and take turns. Kneeling and one-handed laying are not covered by the lifting equation; no figure here says what a back bears.`,
      source: LIFTING_SOURCE
    }
  ];
}

function pallets(units: readonly Unit[], prices: readonly PriceList[], system: System): Belonging[] {
  const byKey = new Map<Key, Unit>(units.map(unit => [unit.key, unit]));
  const told = prices.flatMap(({ thing, name, ways }) => {
    const unit = thing === undefined ? undefined : byKey.get(thing);
    const masses = ways.flatMap(way => palletMass(way, unit) ?? []);
    return masses.length === 0 ? [] : [`${name} ${printAs('mass', Math.max(...masses), system)}`];
  });
  if (told.length === 0) return [];
  return [
    {
      id: 'pallets',
      at: ['laying'],
      text: `A pallet weighs: ${told.join(', ')}. Set down by fork or crane on firm, level ground, clear of edges and the open dig; nobody under it.`,
      source: 'common practice'
    }
  ];
}

function palletMass(way: SoldAs, unit: Unit | undefined): number | undefined {
  if (way.word !== 'pallet') return undefined;
  if (unit === undefined) return way.weight?.value;
  const weight: Given = unit.weight ?? { value: massOf(unit), written: '', assumed: { because: 'by its size' } };
  return packMass(way, { thing: unit.key, weightOf: () => weight })?.value;
}
