import type { Quantity } from './catalogue.ts';

const dig = { owner: 'job-dig', computed: true, always: false } as const;
const volume = { ...dig, kind: 'volume', measure: 'm3', print: 'stone-volume' } as const;
const mass = { ...dig, kind: 'mass', measure: 'kg', print: 'mass' } as const;
const count = { ...dig, kind: 'count', measure: '', print: 'count' } as const;

/** What the whole job digs besides its layers, and how it is carted away. */
export const CARTING_QUANTITIES = [
  {
    ...volume,
    id: 'job-soft-spot-bank-volume',
    key: 'softSpotBankVolume',
    words: 'Soft spots in the ground',
    name: 'volume of soft spots',
    describe: 'Dug below the bottom of the dig in soft spots, as it lies in the ground; no part of the dig'
  },
  {
    ...volume,
    id: 'job-soft-spot-loose-volume',
    key: 'softSpotLooseVolume',
    words: 'Soft spots loose',
    name: 'loose volume of soft spots',
    describe: 'The same, loose as it is carted'
  },
  {
    ...mass,
    id: 'job-soft-spot-mass',
    key: 'softSpotMass',
    words: 'Soft spots mass',
    name: 'mass dug from soft spots',
    describe: 'Mass of what is dug in soft spots'
  },
  {
    ...volume,
    id: 'job-fill-volume',
    key: 'fillVolume',
    words: 'Made up with stone',
    name: 'fill volume',
    describe: 'Stone, compacted, that makes up low ground in all areas'
  },
  {
    ...mass,
    id: 'job-fill-mass',
    key: 'fillMass',
    words: 'Stone to make up',
    name: 'mass of the fill',
    describe: 'Mass of the stone that makes up low ground'
  },
  {
    ...volume,
    id: 'job-old-paving-volume',
    key: 'oldPavingVolume',
    words: 'Old paving broken out',
    name: 'volume of old paving',
    describe: 'Old paving within the digs, as it lies; no part of the bank volume'
  },
  {
    ...mass,
    id: 'job-old-paving-mass',
    key: 'oldPavingMass',
    words: 'Mass of old paving',
    name: 'mass of old paving',
    describe: 'Mass of the old paving broken out'
  },
  {
    ...count,
    id: 'job-barrows',
    key: 'barrows',
    words: 'Barrows',
    name: 'barrows',
    describe: 'Barrow loads of what is dug, loose, rounded up; soft spots not counted'
  },
  {
    ...count,
    id: 'job-barrows-with-soft-spots',
    key: 'barrowsWithSoftSpots',
    words: 'Barrows with soft spots',
    name: 'barrows with soft spots',
    describe: 'The same with soft spots'
  },
  {
    ...dig,
    kind: 'length',
    measure: 'm',
    print: 'run',
    id: 'job-barrow-walk',
    key: 'barrowWalk',
    words: 'Barrow walk',
    name: 'barrow walk',
    describe: 'Walked with barrows of what is dug, there and back, soft spots included'
  },
  {
    ...count,
    id: 'job-truck-loads',
    key: 'truckLoads',
    words: 'Truck loads',
    name: 'truck loads',
    describe: 'Truck loads of what is dug by its mass, rounded up, soft spots included'
  }
] as const satisfies readonly Quantity[];
