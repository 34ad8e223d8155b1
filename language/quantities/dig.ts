import type { Loop, Point } from '../geometry/index.ts';
import type { Height } from '../job/job.ts';
import { cutAndFill, type Earthwork } from '../levels/earthwork.ts';
import {
  type Expression,
  given,
  largerOf,
  measured,
  multiply,
  notBelowNought,
  nothing,
  plainNumber,
  subtract,
  sum
} from './arithmetic.ts';
import { areaHeights, dugRegion } from './area-heights.ts';
import type { NumbersOf } from './catalogue.ts';
import type { LayeredArea } from './layers-stage.ts';
import { oldPavingOf } from './old-paving.ts';
import type { Book, Page } from './page.ts';
import { trenchesOf } from './trenches.ts';

export interface DigResult {
  readonly numbers: NumbersOf<'dig'>;
  readonly area: Expression;
  /** Height of the ground above the bottom of the layers, m, where it is least: below nought, nothing need be dug. */
  readonly groundAboveLayers: number;
  /** What the ground's heights do not tell, m2 of the dig. */
  readonly beyond: number;
  /** Where the underside lies deepest and least deep below the ground. */
  readonly deepestAt?: Point;
  readonly shallowestAt?: Point;
}

/** Where a dig reaches to on the plan. */
export interface DigShape {
  readonly area: Expression;
  readonly loops: readonly Loop[];
  readonly keptOut: readonly Loop[];
  readonly edgeLengths: readonly number[];
  readonly overhangs: readonly number[];
}

/** The dig of one area: from the ground down to the underside of the layers, out to the edge of the base. */
export function digOf(area: LayeredArea, shape: DigShape, book: Book): DigResult {
  const page = book.page('dig', '/dig');
  const heights = areaHeights(area);
  const uneven = heights !== undefined && heights.ground !== undefined && !heights.isEven;
  if (!uneven) return evenDig(area, shape, page);
  const region = dugRegion(shape.loops, shape.keptOut);
  const { surface, ground, depth, strip } = heights;
  const work = cutAndFill({ region, ground: ground!, surface, depth, strip });
  return unevenDig(area, shape, work, page);
}

function evenDig(area: LayeredArea, shape: DigShape, page: Page<'dig'>): DigResult {
  const wanted = digDepth(area);
  const areaDug = page.put('area', shape.area);
  const topsoil = topsoilOf(area);
  const strip = topsoil !== undefined && topsoil.value > wanted.value ? topsoil : undefined;
  const down = strip === undefined ? notBelowNought(wanted) : largerOf(strip, notBelowNought(wanted));
  const depth = page.put('deepest', down);
  page.put('shallowest', down);
  if (topsoil !== undefined) page.put('layersShallowest', wanted);
  spoil(area, shape, multiply(areaDug, depth), page);
  if (strip !== undefined) fill(area, multiply(areaDug, subtract(strip, wanted)), page);
  else if (wanted.value < 0) fill(area, multiply(areaDug, subtract(plainZero(), wanted)), page);
  return { numbers: page.numbers, area: areaDug, groundAboveLayers: wanted.value, beyond: 0 };
}

function unevenDig(area: LayeredArea, shape: DigShape, work: Earthwork, page: Page<'dig'>): DigResult {
  const areaDug = page.put('area', shape.area);
  const least = work.shallowest?.depth ?? 0;
  const topsoil = topsoilOf(area);
  const down = (layers: Expression): Expression =>
    topsoil !== undefined && topsoil.value > layers.value ? largerOf(topsoil, layers) : notBelowNought(layers);
  const shallowest = measured('layers at least below the ground', least, 'm', area.key);
  page.put('deepest', down(measured('layers deepest below the ground', work.deepest?.depth ?? 0, 'm', area.key)));
  page.put('shallowest', down(shallowest));
  if (topsoil !== undefined) page.put('layersShallowest', shallowest);
  spoil(area, shape, measured('ground above the bottom of the dig', work.cut, 'm3', area.key), page);
  if (work.fill > 0) fill(area, measured('room under the layers', work.fill, 'm3', area.key), page);
  return {
    numbers: page.numbers,
    area: areaDug,
    groundAboveLayers: least,
    beyond: work.beyond,
    ...(work.deepest === undefined ? {} : { deepestAt: work.deepest.at }),
    ...(work.shallowest === undefined ? {} : { shallowestAt: work.shallowest.at })
  };
}

/** What is dug: in the ground, loose, and its mass; with trenches beside, and old paving taken off. */
function spoil(area: LayeredArea, shape: DigShape, layersDig: Expression, page: Page<'dig'>): void {
  const { soil } = area.site;
  const trenches = trenchesOf(area, shape);
  const trench = trenches && page.put('trenchVolume', trenches);
  const old = oldPavingOf(area, shape, page);
  const dug = trench === undefined ? layersDig : sum(layersDig, trench);
  const topsoil = topsoilOf(area);
  if (topsoil !== undefined) page.put('topsoilVolume', multiply(shape.area, topsoil));
  const bank = page.put('bankVolume', old === undefined ? dug : notBelowNought(subtract(dug, old)));
  page.put('looseVolume', multiply(bank, sum(plainNumber(1), given('swell of the soil', soil.swell, ''))));
  page.put('mass', multiply(bank, given('density of the soil', soil.density, 'kg/m3')));
}

/** The topsoil that is stripped under layers; none is built on. */
function topsoilOf({ site, layers }: LayeredArea): Expression | undefined {
  if (site.topsoil === undefined || layers.length === 0) return undefined;
  return given('topsoil', site.topsoil, 'm');
}

/** Low ground is made up with stone in layers, as the base is: never with soil. */
function fill(area: LayeredArea, room: Expression, page: Page<'dig'>): void {
  const volume = page.put('fillVolume', room);
  const stone = area.layers.findLast(layer => layer.role !== 'bed')?.material;
  if (stone?.compacted !== undefined)
    page.put('fillMass', multiply(volume, given('compacted density', stone.compacted, 'kg/m3')));
}

function plainZero(): Expression {
  return nothing('bottom of the dig', 'm', 'no topsoil is named: the layers stand on the ground');
}

function digDepth(area: LayeredArea): Expression {
  const unit = area.paving === undefined ? [] : [given('unit thickness', area.paving.units[0].thickness, 'm')];
  const layers = area.layers.map(layer => given(`${layer.role} thickness`, layer.thickness, 'm'));
  const below = [...unit, ...layers];
  const depths = below.length > 0 ? below : [nothing('layer thickness', 'm', 'no layer is named')];
  return sum(groundAboveFinish(area), ...depths);
}

function groundAboveFinish({ site, finish: said }: LayeredArea): Expression {
  const finish = said?.level;
  const { ground } = site;
  const name = 'ground above the finish';
  if (ground === undefined) return nothing(name, 'm', 'no height of the ground is given: taken level with the finish');
  if (finish === undefined) return nothing(name, 'm', 'no height of the finish is given: taken level with the ground');
  const groundHeight = given('ground height', ground.above, 'm');
  const finishHeight = given('finish height', finish.above, 'm');
  const alike = ground.fromNought === finish.fromNought && (ground.fromNought || ground.benchmark === finish.benchmark);
  if (alike) return subtract(groundHeight, finishHeight);
  return subtract(aboveNought(ground, groundHeight), aboveNought(finish, finishHeight));
}

function aboveNought({ benchmark, base, fromNought }: Height, height: Expression): Expression {
  return fromNought || base === undefined ? height : sum(given(`height of ${benchmark}`, base, 'm'), height);
}
