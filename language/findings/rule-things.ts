import type { Material } from '../job/job.ts';
import type { Concern } from '../job/rule.ts';
import type { Judged, Thing } from './members/member.ts';

/** The things of a kind in an area; the site once, with the first area of the job. */
export function thingsOf(concern: Concern, judged: Judged, isFirst: boolean): readonly Thing[] {
  const { area } = judged;
  switch (concern) {
    case 'area':
      return [{ is: 'area', judged, key: area.key }];
    case 'site':
      return isFirst ? [{ is: 'site', judged, key: 'site' }] : [];
    case 'layer':
      return area.layers.map((layer, index) => ({ is: 'layer', judged, key: layer.key, layer, index }));
    case 'side':
      return area.edges.map((edge, index) => ({ is: 'side', judged, key: edge.key, edge, index }));
    case 'unit':
      return area.paving === undefined
        ? []
        : [{ is: 'unit', judged, key: area.paving.unit.key, unit: area.paving.unit }];
    case 'material':
      return materialsOf(judged).map(material => ({ is: 'material', judged, key: material.key, material }));
  }
}

function materialsOf({ area: { layers, jointFiller } }: Judged): Material[] {
  const all = [...layers.map(({ material }) => material), ...(jointFiller === undefined ? [] : [jointFiller])];
  return [...new Map(all.map(material => [material.key, material])).values()];
}
