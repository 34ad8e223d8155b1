import { sideLength } from '../geometry/index.ts';
import type { Key, Layer, Material } from '../job/job.ts';
import type { AreaResult } from '../quantities/area-result.ts';

/** What an area takes of materials and units, without the places where anything lies: all that the order hangs on. */
export interface OrderArea {
  readonly key: Key;
  readonly name: string;
  readonly layers: readonly {
    readonly role: Layer['role'];
    readonly material: Material;
    readonly mass?: number;
    readonly looseVolume?: number;
  }[];
  /** Stone that makes up low ground. */
  readonly fill?: { readonly material: Material; readonly volume: number; readonly mass?: number };
  readonly softSpots: readonly { readonly material?: Material; readonly volume: number; readonly mass?: number }[];
  readonly geotextile?: { readonly material: Material; readonly area: number };
  readonly joints?: { readonly material: Material; readonly volume: number; readonly mass?: number };
  readonly edging: readonly {
    readonly material: Material;
    readonly spikes?: number;
    readonly concrete?: number;
  }[];
  /** Sides with edging, by their place among the sides. */
  readonly sides: readonly {
    readonly index: number;
    readonly name: string;
    readonly material: Key;
    readonly length: number;
    readonly isCurved: boolean;
  }[];
  /** Some last course stands against concrete. */
  readonly isBacked: boolean;
  readonly laying: readonly { readonly unit: string; readonly used?: number }[];
}

export function orderArea({ area, layers: worked }: AreaResult): OrderArea {
  const stone = area.layers.findLast(({ role }) => role !== 'bed')?.material;
  const { fillVolume, fillMass } = worked.dig;
  const materials = new Map(area.edges.flatMap(({ edging }) => (edging === undefined ? [] : [[edging.name, edging]])));
  return {
    key: area.key,
    name: area.name,
    layers: area.layers.map(({ role, material }, index) => {
      const { mass, looseVolume } = worked.layers[index]!;
      return { role, material, ...some({ mass, looseVolume }) };
    }),
    ...(stone === undefined || fillVolume === undefined
      ? {}
      : { fill: { material: stone, volume: fillVolume, ...some({ mass: fillMass }) } }),
    softSpots: area.softSpots.map((spot, index) => {
      const { stoneVolume, stoneMass } = worked.softSpots[index]!;
      return { ...some({ material: spot.material ?? stone, mass: stoneMass }), volume: stoneVolume };
    }),
    ...(area.geotextile === undefined || worked.geotextile === undefined
      ? {}
      : { geotextile: { material: area.geotextile, area: worked.geotextile.area } }),
    ...(area.jointFiller === undefined || worked.joints === undefined
      ? {}
      : {
          joints: {
            material: area.jointFiller,
            volume: worked.joints.volume,
            ...some({ mass: worked.joints.mass })
          }
        }),
    edging: worked.edging.map(({ material, spikes, concreteVolume }) => ({
      material: materials.get(material)!,
      ...some({ spikes, concrete: concreteVolume })
    })),
    sides: area.edges.flatMap(({ edging, name }, index) => {
      const side = area.outline[index]!;
      return edging === undefined
        ? []
        : [{ index, name, material: edging.key, length: sideLength(side), isCurved: side.arc !== undefined }];
    }),
    isBacked: area.edges.some(({ backed }) => backed === true),
    laying: (worked.laying ?? []).map(({ unit, unitsUsed }) => ({ unit, ...some({ used: unitsUsed }) }))
  };
}

type Some<T> = { readonly [K in keyof T]?: Exclude<T[K], undefined> };

/** What of it is known. */
function some<T extends object>(all: T): Some<T> {
  return Object.fromEntries(Object.entries(all).filter(([, value]) => value !== undefined)) as Some<T>;
}
