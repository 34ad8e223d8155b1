import type { Drain } from '../job/heights.ts';
import type { Given, Key, Material, Unit } from '../job/job.ts';
import { nameIn, SPIKES } from '../job/key-names.ts';
import type { Allowances, PriceList, Stock } from '../job/prices.ts';
import { divide, type Expression, given, leaf, multiply, subtract, sum } from '../quantities/arithmetic.ts';
import type { NumbersOf } from '../quantities/catalogue.ts';
import { isSize } from '../quantities/layer-volumes.ts';
import type { Tray } from '../quantities/boxes.ts';
import { looseVolumeOf } from '../quantities/loose-volume.ts';
import { drainConcrete } from '../quantities/drain-concrete.ts';
import type { OrderArea } from './order-area.ts';

/** In what things are sold: SI, volumes loose. */
export type SoldBy = Stock['measure'];

/** As workings name it: pieces are counted. */
export function si(measure: SoldBy): string {
  return measure === 'piece' ? '' : measure;
}

/** What a need is for, by the words of the trade. */
export type NeedWork =
  'paving' | 'boxes' | 'bed' | 'base' | 'sub-base' | 'soft-spots' | 'joints' | 'edging' | 'drains' | 'geotextile';

/** Part of what is used of a thing: where, and how much in each measure that is known. */
export interface UsedPart {
  readonly area?: Key;
  /** The drain that it stands round; its area is the one that it drains. */
  readonly drain?: Key;
  readonly work: NeedWork;
  /** The side that it stands along. */
  readonly side?: string;
  readonly amounts: Readonly<Partial<Record<SoldBy, Expression>>>;
}

/** One thing that the whole job uses. */
export interface UsedThing {
  readonly key: Key;
  readonly name: string;
  readonly kind: 'unit' | 'edging' | 'curve-pieces' | 'spikes' | 'geotextile' | 'material';
  readonly parts: readonly UsedPart[];
  /** What it comes to, where that is not the sum of its parts. */
  readonly used?: UsedPart['amounts'];
  readonly unit?: Unit;
  readonly material?: Material;
  readonly allowances: Allowances;
}

export interface UsedInputs {
  /** In the order of their keys, which workings count them by. */
  readonly areas: readonly OrderArea[];
  readonly units: readonly Unit[];
  /** Units of the whole job, by name. */
  readonly jobUnits: readonly ({ readonly unit: string } & Pick<
    NumbersOf<'job-unit'>,
    'unitsUsed' | 'breakage' | 'keep' | 'toBuy'
  >)[];
  readonly drains: readonly Pick<Drain, 'key' | 'name' | 'area' | 'line' | 'width' | 'depth' | 'concrete'>[];
  readonly trays: readonly Tray[];
  /** What concrete is bought as. */
  readonly concrete: Material;
  readonly prices: readonly PriceList[];
}

/** All that the job uses, each thing once: units first, then as it goes down and out. */
export function usedThings(inputs: UsedInputs): UsedThing[] {
  const gathered = new Gathered();
  addUnits(gathered, inputs);
  inputs.areas.forEach((area, index) => addArea(gathered, area, `/areas/${index}`, inputs));
  for (const drain of inputs.drains) addSurround(gathered, drain, inputs.concrete);
  return gathered.things.map(thing => (thing.kind === 'geotextile' ? lappedAsSold(thing, inputs.prices) : thing));
}

/** Things by key, in the order in which they came up. */
class Gathered {
  readonly #things = new Map<Key, UsedThing & { readonly parts: UsedPart[] }>();

  add(thing: Omit<UsedThing, 'parts' | 'allowances'>, ...parts: readonly UsedPart[]): void {
    const known = this.#things.get(thing.key);
    if (known === undefined)
      this.#things.set(thing.key, { ...thing, allowances: thing.material?.allowances ?? {}, parts: [...parts] });
    else known.parts.push(...parts);
  }

  get things(): UsedThing[] {
    return [...this.#things.values()];
  }
}

function ofMaterial(material: Material): Omit<UsedThing, 'parts' | 'allowances'> {
  return { key: material.key, name: material.name, kind: 'material', material };
}

function known(amounts: Readonly<Partial<Record<SoldBy, Expression | undefined>>>): UsedPart['amounts'] {
  return Object.fromEntries(Object.entries(amounts).filter(([, amount]) => amount !== undefined));
}

// ---- units ----

function addUnits(gathered: Gathered, { areas, units, jobUnits, trays }: UsedInputs): void {
  jobUnits.forEach(({ unit: name, unitsUsed }, index) => {
    const unit = units.find(one => one.name === name);
    if (unit === undefined || unitsUsed === undefined) return;
    const parts = areas.flatMap((area, at) =>
      area.laying.flatMap(({ unit: other, used }, line): UsedPart[] => {
        if (other !== name || used === undefined) return [];
        const pointer = `/areas/${at}/laying/${line}/unitsUsed`;
        return [
          { area: area.key, work: 'paving', amounts: { piece: leaf(`${name} in ${area.name}`, used, '', { pointer }) } }
        ];
      })
    );
    const inTrays = trays
      .filter(tray => tray.unit === unit.key)
      .map(({ name: box, area, count, pointer }): UsedPart & { amounts: { piece: Expression } } => ({
        area,
        work: 'boxes',
        amounts: { piece: leaf(`${name} in the tray of ${box}`, count, '', { pointer }) }
      }));
    // Cut pieces of several areas may come out of fewer units together.
    const laid = leaf(`${name} used`, unitsUsed, '', { pointer: `/units/${index}/unitsUsed` });
    const [tray, ...others] = inTrays.map(({ amounts }) => amounts.piece);
    const used = { piece: tray === undefined ? laid : sum(laid, tray, ...others) };
    gathered.add({ key: unit.key, name, kind: 'unit', unit, used }, ...parts, ...inTrays);
  });
}

// ---- areas ----

function addArea(gathered: Gathered, area: OrderArea, at: string, inputs: UsedInputs): void {
  const place = { area: area.key };
  const { name } = area;
  area.layers.forEach(({ role, material, mass, looseVolume }, index) => {
    const number = (key: string, value: number | undefined, measure: string): Expression | undefined =>
      value === undefined
        ? undefined
        : leaf(`${role} of ${name}`, value, measure, { pointer: `${at}/layers/${index}/${key}` });
    const amounts = known({ kg: number('mass', mass, 'kg'), m3: number('looseVolume', looseVolume, 'm3') });
    gathered.add(ofMaterial(material), { ...place, work: role, amounts });
  });
  area.softSpots.forEach(({ material, volume, mass }, index) => {
    if (material === undefined) return;
    const spot = `${at}/softSpots/${index}`;
    const amounts = inPlace(material, `soft spot of ${name}`, `${spot}/stoneVolume`, volume, `${spot}/stoneMass`, mass);
    gathered.add(ofMaterial(material), { ...place, work: 'soft-spots', amounts });
  });
  if (area.fill !== undefined) {
    const { material, volume, mass } = area.fill;
    const words = `low ground of ${name}`;
    const amounts = inPlace(material, words, `${at}/dig/fillVolume`, volume, `${at}/dig/fillMass`, mass);
    gathered.add(ofMaterial(material), { ...place, work: 'base', amounts });
  }
  if (area.geotextile !== undefined) {
    const { material, area: size } = area.geotextile;
    const m2 = leaf(`geotextile of ${name}`, size, 'm2', { pointer: `${at}/geotextile/area` });
    gathered.add({ ...ofMaterial(material), kind: 'geotextile' }, { ...place, work: 'geotextile', amounts: { m2 } });
  }
  if (area.joints !== undefined) {
    const { material, volume, mass } = area.joints;
    const m3 = leaf(`joints of ${name}`, volume, 'm3', { pointer: `${at}/joints/volume` });
    const kg = mass === undefined ? undefined : leaf(`joints of ${name}`, mass, 'kg', { pointer: `${at}/joints/mass` });
    gathered.add(ofMaterial(material), { ...place, work: 'joints', amounts: known({ kg, m3 }) });
  }
  area.edging.forEach((_, index) => addEdging(gathered, area, index, at, inputs));
}

/** Stone besides that of the layers, by its volume in place. */
function inPlace(
  material: Material,
  words: string,
  volumeAt: string,
  volume: number,
  massAt: string,
  mass: number | undefined
): UsedPart['amounts'] {
  return known({
    kg: mass === undefined ? undefined : leaf(words, mass, 'kg', { pointer: massAt }),
    m3: looseVolumeOf(leaf(words, volume, 'm3', { pointer: volumeAt }), material)
  });
}

// ---- cloth ----

/** Cloth by the width of the rolls that it is sold in, where that is one alone and not the one its laps were counted for. */
function lappedAsSold(thing: UsedThing, prices: readonly PriceList[]): UsedThing {
  const { key, material, parts } = thing;
  const [first, ...others] = parts.map(({ amounts }) => amounts.m2!);
  const sold = rollWidthSold(key, prices);
  if (first === undefined || material === undefined || sold === undefined) return thing;
  const { lap, roll } = material;
  if (!isSize(lap) || sold.value <= lap.value || roll?.width.value === sold.value) return thing;
  const width = given('width of the roll sold', sold, 'm');
  const laps = given('lap', lap, 'm');
  const counted = others.length === 0 ? first : sum(first, ...others);
  const isLapped = roll !== undefined && roll.width.value > lap.value;
  const declared = roll && given('roll width', roll.width, 'm');
  const plain = isLapped ? multiply(counted, divide(subtract(declared!, laps), declared!)) : counted;
  return { ...thing, used: { m2: multiply(plain, divide(width, subtract(width, laps))) } };
}

/** The width of the rolls that cloth is sold in, where that is one alone. */
export function rollWidthSold(cloth: Key, prices: readonly PriceList[]): Given | undefined {
  const widths = rollWidths(cloth, prices);
  return new Set(widths.map(({ value }) => value)).size === 1 ? widths[0] : undefined;
}

export function rollWidths(cloth: Key, prices: readonly PriceList[]): Given[] {
  return prices
    .filter(({ thing }) => thing === cloth)
    .flatMap(({ ways }) => ways.flatMap(way => ('roll' in way && way.roll !== undefined ? [way.roll.width] : [])));
}

// ---- edging ----

function addEdging(gathered: Gathered, area: OrderArea, index: number, at: string, inputs: UsedInputs): void {
  const { material, spikes, concrete: volume } = area.edging[index]!;
  const place = { area: area.key, work: 'edging' as const };
  const pointer = `${at}/edging/${index}`;
  const straight = { key: material.key, name: material.name, kind: 'edging' as const, material };
  const { curvePieces } = material;
  const { concrete } = inputs;
  const straightPiece = material.length ?? lengthSold(material, inputs.prices);
  for (const { index: side, name, length, isCurved } of area.sides.filter(one => one.material === material.key)) {
    const run = leaf(`${name} of ${area.name}`, length, 'm', { pointer: `${at}/edges/${side}/length` });
    const [thing, piece] =
      isCurved && curvePieces !== undefined ? [curvePiecesOf(material), curvePieces] : [straight, straightPiece];
    gathered.add(thing, { ...place, side: name, amounts: lengths(run, piece) });
  }
  if (spikes !== undefined) {
    const piece = leaf(`spikes of ${area.name}`, spikes, '', { pointer: `${pointer}/spikes` });
    // One kind fits all edging: boxes are rounded over the job.
    gathered.add({ key: SPIKES, name: nameIn(SPIKES), kind: 'spikes' }, { ...place, amounts: { piece } });
  }
  if (volume !== undefined) {
    const placed = leaf(`concrete of ${area.name}`, volume, 'm3', { pointer: `${pointer}/concreteVolume` });
    gathered.add(ofMaterial(concrete), { ...place, amounts: concreteAmounts(placed, concrete) });
  }
}

/** The length that it is sold in, where that is one alone: that of a piece. */
function lengthSold({ key, curvePieces }: Material, prices: readonly PriceList[]): Given | undefined {
  const sold = prices
    .filter(({ thing }) => thing === key)
    .flatMap(({ ways }) => ways.flatMap(way => (way.word === 'length' ? [way.holds] : [])))
    .filter(({ value }) => value !== curvePieces?.value);
  return new Set(sold.map(({ value }) => value)).size === 1 ? sold[0] : undefined;
}

function curvePiecesOf(material: Material): Omit<UsedThing, 'parts' | 'allowances'> {
  return {
    key: `${material.key}/curve-pieces`,
    name: `${material.name} for curves`,
    kind: 'curve-pieces',
    material
  };
}

function lengths(run: Expression, piece: Material['length']): UsedPart['amounts'] {
  if (!isSize(piece)) return { m: run };
  return { m: run, piece: divide(run, given('length of a piece', piece, 'm')) };
}

// ---- concrete ----

function concreteAmounts(placed: Expression, material: Material): UsedPart['amounts'] {
  const { compacted } = material;
  return known({
    kg: isSize(compacted) ? multiply(placed, given('dry mix for one in place', compacted, 'kg/m3')) : undefined,
    m3: placed
  });
}

function addSurround(gathered: Gathered, drain: UsedInputs['drains'][number], material: Material): void {
  const { key, area } = drain;
  const volume = drainConcrete(drain);
  if (volume === undefined) return;
  const amounts = concreteAmounts(volume, material);
  gathered.add(ofMaterial(material), { ...(area === undefined ? {} : { area }), drain: key, work: 'drains', amounts });
}
