import type { Material } from '../job/job.ts';
import type { Concern } from '../job/rule.ts';
import { unitsOf } from '../quantities/units-of-area.ts';
import type { Judged, Thing, ThingAlone, Value } from './members/member.ts';
import { memberOf } from './members/members.ts';

/** The things of an area by kind; the site once, with the first area of the job. Many rules ask for the same. */
export class Things {
  private readonly judged: Judged;
  private readonly isFirst: boolean;
  private readonly known = new Map<Concern, readonly Thing[]>();

  constructor(judged: Judged, isFirst: boolean) {
    this.judged = judged;
    this.isFirst = isFirst;
  }

  of(concern: Concern): readonly Thing[] {
    let things = this.known.get(concern);
    if (things === undefined) {
      things = thingsOf(concern, this.judged, this.isFirst).map(withValues);
      this.known.set(concern, things);
    }
    return things;
  }
}

/** Each value is read once. */
function withValues(thing: ThingAlone): Thing {
  const values = new Map<string, Value>();
  const value = (name: string): Value => {
    if (!values.has(name)) values.set(name, memberOf(thing.is, name)?.read(thing as never));
    return values.get(name);
  };
  return { ...thing, value };
}

function thingsOf(concern: Concern, judged: Judged, isFirst: boolean): readonly ThingAlone[] {
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
      return unitsOf(area).map(unit => ({ is: 'unit', judged, key: unit.key, unit }));
    case 'material':
      return materialsOf(judged).map(material => ({ is: 'material', judged, key: material.key, material }));
  }
}

function materialsOf({ area: { layers, jointFiller } }: Judged): Material[] {
  const all = [...layers.map(({ material }) => material), ...(jointFiller === undefined ? [] : [jointFiller])];
  return [...new Map(all.map(material => [material.key, material])).values()];
}
