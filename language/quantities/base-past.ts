import type { Edge, Layer } from '../job/job.ts';
import {
  type Expression,
  given,
  largerOf,
  leaf,
  multiply,
  notBelowNought,
  nothing,
  subtract,
  sum
} from './arithmetic.ts';

/** The stone layers among an area's layers: all but the bed. */
export function stoneLayers(layers: readonly Layer[]): readonly Layer[] {
  return layers.filter(layer => layer.role !== 'bed');
}

/** Thickness of all stone under the bed, m. */
function stoneThickness(stone: readonly Layer[]): Expression {
  const [first, ...others] = stone.map(layer => given(`${layer.role} thickness`, layer.thickness, 'm'));
  return first === undefined ? nothing('base thickness', 'm', 'no stone layer is named') : sum(first, ...others);
}

/**
 * How far the base runs past the face of the units at a side, m. On open ground: past the edging by what the base says,
 * else by what the edging says; else to the back of the concrete that the edging stands on; else past the edging by the
 * base's own thickness (Tech Spec 3, edge restraints: as far past the restraint as the base is thick). Elsewhere nought.
 */
export function basePast(edge: Edge, stone: readonly Layer[]): Expression {
  if (edge.meets?.openGround !== true) return multiply(closedSide(edge), stoneThickness(stone));
  const { edging } = edge;
  const edgingWidth =
    edging?.width === undefined
      ? nothing('edging width', 'm', edging === undefined ? 'no edging stands here' : 'the edging states no width')
      : given('edging width', edging.width, 'm');
  const [past, ...otherPasts] = stone.flatMap(layer =>
    layer.past === undefined ? [] : [given(`${layer.role} past the edging`, layer.past, 'm')]
  );
  if (past !== undefined) return notBelowNought(sum(edgingWidth, largerOf(past, ...otherPasts)));
  if (edging?.basePast !== undefined) {
    return notBelowNought(sum(edgingWidth, given('base past the edging', edging.basePast, 'm')));
  }
  if (edging?.concrete !== undefined) {
    const { width, under } = edging.concrete;
    return notBelowNought(
      subtract(given('concrete width', width, 'm'), given('concrete under the paving', under, 'm'))
    );
  }
  return notBelowNought(sum(edgingWidth, stoneThickness(stone)));
}

function closedSide(edge: Edge): Expression {
  const name = 'share on open ground';
  if (edge.meets === undefined) return nothing(name, '', 'nothing is said of this side: no base past it');
  return leaf(name, 0, '', { key: edge.key });
}
