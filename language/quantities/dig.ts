import type { Height } from '../job/job.ts';
import { type Expression, given, multiply, notBelowNought, nothing, plainNumber, subtract, sum } from './arithmetic.ts';
import type { NumbersOf } from './catalogue.ts';
import type { LayeredArea } from './layers-stage.ts';
import type { Book } from './page.ts';

export interface DigResult {
  readonly numbers: NumbersOf<'dig'>;
  readonly area: Expression;
  /** Height of the ground above the bottom of the layers, m: below nought, nothing is dug. */
  readonly groundAboveLayers: number;
}

/** The dig of one area: from the ground down to the underside of the layers, out to the edge of the base. */
export function digOf(area: LayeredArea, digArea: Expression, book: Book): DigResult {
  const page = book.page('dig', '/dig');
  const soil = area.site.soil;
  const wanted = digDepth(area);
  const areaDug = page.put('area', digArea);
  const depth = page.put('deepest', notBelowNought(wanted));
  page.put('shallowest', notBelowNought(wanted));
  const bank = page.put('bankVolume', multiply(areaDug, depth));
  page.put('looseVolume', multiply(bank, sum(plainNumber(1), given('swell of the soil', soil.swell, ''))));
  page.put('mass', multiply(bank, given('density of the soil', soil.density, 'kg/m3')));
  return { numbers: page.numbers, area: areaDug, groundAboveLayers: wanted.value };
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

/** The finish against its benchmark, as the JSON tells it. */
export function finishOf({ finish: said }: LayeredArea, book: Book): { at: string; height: number } | undefined {
  const finish = said?.level;
  if (finish === undefined) return undefined;
  const { benchmark, above, base, fromNought } = finish;
  const page = book.page('finish', '/finish');
  if (fromNought && base !== undefined)
    page.put('height', subtract(given('height given', above, 'm'), given(`height of ${benchmark}`, base, 'm')));
  else page.repeat('height', above.value);
  return { at: benchmark, ...page.numbers };
}
