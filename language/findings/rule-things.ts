import type { Material } from '../job/job.ts';
import type { Concern } from '../job/rule.ts';
import { unitsOf } from '../quantities/units-of-area.ts';
import type { SiteToJudge } from '../quantities/judged-site.ts';
import type { AreaThing, Judged, JobThing, Thing, ThingAlone, Value } from './members/member.ts';
import { memberOf } from './members/members.ts';

/** What rules are judged on, by kind. Many rules ask for the same. */
export class Things {
  private readonly thingsOf: (concern: Concern) => readonly ThingAlone[];
  private readonly known = new Map<Concern, readonly Thing[]>();

  constructor(thingsOf: (concern: Concern) => readonly ThingAlone[]) {
    this.thingsOf = thingsOf;
  }

  of(concern: Concern): readonly Thing[] {
    let things = this.known.get(concern);
    if (things === undefined) {
      things = this.thingsOf(concern).map(withValues);
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

/** The things of an area; the site once, with the first area of the job. */
export function thingsOfArea(concern: Concern, judged: Judged, isFirst: boolean): readonly AreaThing[] {
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
    default:
      return [];
  }
}

/** What a job holds besides its areas. */
export function thingsOfJob(concern: Concern, all: SiteToJudge): readonly JobThing[] {
  const { system, site } = all;
  const judged = { system, ...(site === undefined ? {} : { site }) };
  switch (concern) {
    case 'gate':
      return all.gates.map(gate => ({ is: 'gate', judged, key: gate.id, gate }));
    case 'box':
      return (all.boxes ?? []).map(box => ({ is: 'box', judged, key: box.id, box }));
    case 'pipe':
      return (all.pipes ?? []).map(pipe => ({ is: 'pipe', judged, key: pipe.id, pipe }));
    case 'drain':
      return all.drains.map(drain => ({ is: 'drain', judged, key: drain.id, drain }));
    case 'route':
      return (all.routes ?? []).map(route => ({ is: 'route', judged, key: route.id, route }));
    case 'tape':
      return (all.tapes ?? []).map((tape, index) => ({ is: 'tape', judged, key: all.tapeKeys[index]!, tape }));
    case 'reading':
      return all.readings.map(reading => ({ is: 'reading', judged, key: reading.id, reading }));
    case 'delivery':
      return (all.deliveries ?? []).map(delivery => {
        const at = all.deliveredAt[delivery.thing];
        return {
          is: 'delivery',
          judged,
          key: delivery.id,
          delivery,
          ...(at === undefined ? {} : { at })
        };
      });
    default:
      return [];
  }
}

function materialsOf({ area: { layers, jointFiller } }: Judged): Material[] {
  const all = [...layers.map(({ material }) => material), ...(jointFiller === undefined ? [] : [jointFiller])];
  return [...new Map(all.map(material => [material.key, material])).values()];
}
