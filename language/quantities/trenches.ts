import { distance, type Point, pointAlong } from '../geometry/index.ts';
import type { Drain } from '../job/heights.ts';
import type { Edge } from '../job/job.ts';
import {
  type Expression,
  given,
  leaf,
  measured,
  multiply,
  notBelowNought,
  plainNumber,
  subtract,
  sum
} from './arithmetic.ts';
import { type AreaHeights, areaHeights, depthOf } from './area-heights.ts';
import type { DigShape } from './dig.ts';
import type { LayeredArea } from './layers-stage.ts';

/** What is dug deeper or wider than the layers need, for edging on concrete and for channels; undefined where nothing is. */
export function trenchesOf(area: LayeredArea, shape: DigShape): Expression | undefined {
  const heights = areaHeights(area);
  const edging = area.edges.flatMap((edge, index) => edgingTrench(area, edge, index, shape, heights));
  const drains = area.drains.flatMap(drain => channelTrench(drain, heights));
  const [first, ...others] = [...edging, ...drains].filter(({ value }) => value > 0);
  return first === undefined
    ? undefined
    : others.length === 0
      ? multiply(plainNumber(1), first)
      : sum(first, ...others);
}

/** Concrete under a kerb goes down as far as the kerb's height, less what stands up, and its own depth. */
function edgingTrench(
  area: LayeredArea,
  { edging, standing }: Edge,
  index: number,
  shape: DigShape,
  heights: AreaHeights | undefined
): Expression[] {
  const concrete = edging?.concrete;
  if (edging === undefined || concrete === undefined || edging.height === undefined) return [];
  const side = area.outline[index];
  if (side === undefined) return [];
  const name = edging.name;
  const length = leaf('length of the side', shape.edgeLengths[index] ?? 0, 'm', { pointer: `/edges/${index}/length` });
  const up = standing === undefined ? [] : [given(`${name} standing up`, standing, 'm')];
  const down = subtract(
    sum(given(`height of ${name}`, edging.height, 'm'), given('concrete depth', concrete.depth, 'm')),
    ...up
  );
  const layers = measured('depth of the layers', depthOf(area), 'm', area.key);
  const width = given('concrete width', concrete.width, 'm');
  const deeper = multiply(length, width, notBelowNought(subtract(down, layers)));
  const reach = subtract(width, given('concrete under the paving', concrete.under, 'm'));
  const past = leaf('base past the units', shape.overhangs[index] ?? 0, 'm', { pointer: `/edges/${index}/overhang` });
  const wider = subtract(reach, past);
  if (wider.value <= 0) return [deeper];
  const ground = measured('ground above the finish there', groundAbove(pointAlong(side, 0.5), heights), 'm', area.key);
  return [deeper, multiply(length, wider, notBelowNought(sum(down, ground)))];
}

function channelTrench(drain: Drain, heights: AreaHeights | undefined): Expression[] {
  const { line, width, depth, concrete, grates, key, name } = drain;
  if (line === undefined || width === undefined || depth === undefined) return [];
  const grate = grates.length === 0 ? undefined : grates.reduce((total, { z }) => total + z, 0) / grates.length;
  if (grate === undefined || heights === undefined) return [];
  const middle = { x: (line.from.x + line.to.x) / 2, y: (line.from.y + line.to.y) / 2 };
  const above = heights.at(middle).ground - grate;
  const beside = concrete?.sides === true ? [given('concrete beside', concrete.below, 'm')] : [];
  const below = concrete === undefined ? [] : [given('concrete below', concrete.below, 'm')];
  const across = sum(given(`width of ${name}`, width, 'm'), ...beside, ...beside);
  const down = sum(
    measured(`ground above the grate of ${name}`, above, 'm', key),
    given(`depth of ${name}`, depth, 'm'),
    ...below
  );
  const length = measured(`length of ${name}`, distance(line.from, line.to), 'm', key);
  return [multiply(length, across, notBelowNought(down))];
}

function groundAbove(at: Point, heights: AreaHeights | undefined): number {
  if (heights?.ground === undefined) return 0;
  const { ground, finish } = heights.at(at);
  return ground - finish;
}
