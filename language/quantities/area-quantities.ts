import type { Point, Side } from '../geometry/index.ts';
import type { Area } from '../job/job.ts';
import type { CutGroup } from '../laying/cut-list/cut-list.ts';
import type { AreaResult } from './area-result.ts';
import type { AreaQuantities, CutQuantities, Place2d, SideShape } from './contract.ts';
import { unitNamed } from './units-of-area.ts';

/** One area as it stands in the JSON contract. */
export function areaQuantities({ area, shapes, layers, edgeHeights, levels, laid }: AreaResult): AreaQuantities {
  return {
    id: area.key,
    name: area.name,
    traffic: area.traffic,
    outline: area.outline.map(sideShape),
    keptOut: area.keptOut.map((shape, index) => ({
      id: shape.key,
      outline: shape.outline.map(sideShape),
      ...shapes.keptOut[index]!
    })),
    ...shapes.area,
    edges: area.edges.map((edge, index) => ({
      name: edge.name,
      from: place(area.outline[index]!.from),
      to: place(area.outline[index]!.to),
      ...shapes.edgeLengths[index]!,
      ...(edge.meets === undefined ? {} : { meets: edge.meets.name }),
      ...(edge.edging === undefined ? {} : { edging: edge.edging.name }),
      ...layers.overhangs[index]!,
      ...edgeHeights[index]!
    })),
    ...(layers.finish === undefined ? {} : { finish: layers.finish }),
    dig: layers.dig,
    ...(layers.softSpots.length === 0 ? {} : { softSpots: layers.softSpots }),
    ...(levels === undefined || levels.levels.length === 0 ? {} : { levels: levels.levels }),
    ...(levels === undefined || levels.leftOut === 0 ? {} : { levelsLeftOut: levels.leftOut }),
    ...(levels === undefined || levels.offsetPoints.length === 0 ? {} : { offsetPoints: levels.offsetPoints }),
    layers: layers.layers,
    ...(layers.geotextile === undefined ? {} : { geotextile: layers.geotextile }),
    ...(layers.laying === undefined ? {} : { laying: layers.laying }),
    ...(layers.borderRows === undefined ? {} : { borderRows: layers.borderRows }),
    ...(laid === undefined ? {} : { cuts: laid.cuts.list.groups.map(group => cutOf(area, group)) }),
    ...(layers.runningSizes === undefined ? {} : { runningSizes: layers.runningSizes }),
    ...(layers.joints === undefined ? {} : { joints: layers.joints }),
    edging: layers.edging
  };
}

function cutOf(area: Area, { number, unit, count, pieces, area: size, sawLength }: CutGroup): CutQuantities {
  const outlines = pieces.flatMap(({ outline, holes }) => [outline, ...holes]).map(loop => loop.map(sideShape));
  return { number, unit: unitNamed(area, unit).name, count, outlines, area: size, sawLength };
}

function sideShape({ from, to, arc }: Side): SideShape {
  if (arc === undefined) return { from: place(from), to: place(to) };
  return { from: place(from), to: place(to), centre: place(arc.centre), turn: (arc.turn * 180) / Math.PI };
}

function place({ x, y }: Point): Place2d {
  return [x, y];
}
