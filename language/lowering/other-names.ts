import { SHIPPED_NAMES } from '../library/shipped.ts';

/** What people say for names that ship, on both sides of the Atlantic: a name of one's own may still be any of them. */
export const OTHER_NAMES: Readonly<Record<string, readonly string[]>> = {
  grass: ['lawn'],
  turf: ['lawn'],
  flowerbed: ['planting'],
  flowers: ['planting'],
  hedge: ['planting'],
  dirt: ['bare-ground', 'common-earth'],
  earth: ['common-earth'],
  loam: ['common-earth'],
  soil: ['common-earth', 'bare-ground'],
  wall: ['house-wall', 'garden-wall'],
  building: ['house-wall'],
  curb: ['kerb'],
  street: ['road'],
  sidewalk: ['existing-paving'],
  pavement: ['existing-paving'],
  concrete: ['concrete-slab'],
  channel: ['drain-channel'],
  stone: ['crushed-stone'],
  gravel: ['crushed-stone'],
  hardcore: ['type-1'],
  cloth: ['separation-cloth'],
  fabric: ['separation-cloth'],
  membrane: ['separation-cloth'],
  stretcher: ['running-bond'],
  'stretcher-bond': ['running-bond'],
  'brick-bond': ['running-bond'],
  'half-bond': ['running-bond'],
  'third-bond': ['running-bond-third'],
  stacked: ['stack-bond'],
  grid: ['stack-bond'],
  'grid-bond': ['stack-bond'],
  parquet: ['basket-weave'],
  hopscotch: ['pinwheel'],
  windmill: ['pinwheel'],
  honeycomb: ['hexagons'],
  hexagonal: ['hexagons'],
  circles: ['rings'],
  circular: ['rings']
};

/** Whether a name is one that ships, one that people say for it, or a course of a border. */
export function isKnownName(name: string): boolean {
  return SHIPPED_NAMES.has(name) || Object.hasOwn(OTHER_NAMES, name) || /^(?:soldier|sailor)-course$/.test(name);
}
