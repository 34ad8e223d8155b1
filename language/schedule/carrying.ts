import type { Carting, Key } from '../job/job.ts';
import { COUNT_TOLERANCE } from '../quantities/arithmetic.ts';
import type { JobQuantities } from '../quantities/contract.ts';
import type { Amount, Carrying } from './contract.ts';
import { some } from './planned.ts';

/** Trips for so much, by what a load holds and by what it may weigh, whichever is more; undefined where neither is known. */
export function tripsFor(
  { volume, mass }: { readonly volume?: number | undefined; readonly mass?: number | undefined },
  load: { readonly volume?: number | undefined; readonly mass?: number | undefined }
): number | undefined {
  const trips = [loads(volume, load.volume), loads(mass, load.mass)].filter(count => count !== undefined);
  return trips.length === 0 ? undefined : Math.max(...trips);
}

function loads(amount: number | undefined, load: number | undefined): number | undefined {
  if (amount === undefined || load === undefined || !(load > 0)) return undefined;
  return Math.ceil(amount / load - COUNT_TOLERANCE);
}

/** Where no machine digs, or the way is told that barrows go, what goes out and comes in goes by barrow. */
function goesByBarrow({ digBy, barrow, run }: Carting): boolean {
  return (digBy !== 'machine' || run !== undefined) && barrow.value > 0;
}

/**
 * Barrow work on so much of something, by its measures: what is loaded, the mass that is shovelled in or the volume that
 * the digger puts in; the barrows; the way walked with them there and back where the run is told. Nothing where it does
 * not go by barrow; less than nought where it is counted twice elsewhere.
 */
export function barrowWork(
  name: string,
  { volume, mass }: { readonly volume: number | undefined; readonly mass: number | undefined },
  carting: Carting,
  area?: Key
): Amount[] {
  if (!goesByBarrow(carting) || volume === undefined) return [];
  const from = area === undefined ? {} : { area };
  const barrows = volume / carting.barrow.value;
  return [
    ...some(`barrows of ${name}`, barrows, 'piece', from),
    ...some(`barrow walk, ${name}`, barrows * 2 * (carting.run?.value ?? 0), 'm', from),
    ...(carting.digBy === 'machine' ? some(name, volume, 'm3', from) : some(name, mass, 'kg', from))
  ];
}

/** What goes out and comes in, and by how many loads. */
export function carryingOf({ dig, materials }: JobQuantities, carting: Carting): Carrying[] {
  const spoil = {
    volume: plus(dig.looseVolume, dig.softSpotLooseVolume),
    mass: plus(dig.mass, dig.softSpotMass)
  };
  const out = (what: string, volume: number | undefined, mass: number | undefined): Carrying => {
    const trucks = tripsFor({ mass }, { mass: carting.truck?.value });
    return { ...byBarrow(what, volume, mass, carting), ...(trucks === undefined ? {} : { truckLoads: trucks }) };
  };
  return [
    ...(spoil.volume > 0 ? [out('Spoil', spoil.volume, spoil.mass)] : []),
    ...(dig.oldPavingVolume === undefined ? [] : [out('Old paving', dig.oldPavingVolume, dig.oldPavingMass)]),
    ...materials.map(({ role, material, looseVolume, mass }) =>
      byBarrow(`${material} for the ${role}`, looseVolume, mass, carting)
    )
  ];
}

function byBarrow(what: string, volume: number | undefined, mass: number | undefined, carting: Carting): Carrying {
  const { barrow, run } = carting;
  const barrows = goesByBarrow(carting) ? tripsFor({ volume }, { volume: barrow.value }) : undefined;
  return {
    what,
    ...(volume === undefined ? {} : { volume }),
    ...(mass === undefined ? {} : { mass }),
    ...(barrows === undefined ? {} : { barrows }),
    ...(barrows === undefined || run === undefined ? {} : { walk: barrows * 2 * run.value })
  };
}

function plus(one: number, other: number | undefined): number {
  return one + (other ?? 0);
}
