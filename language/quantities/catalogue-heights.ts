import type { Quantity } from './catalogue.ts';

const length = { kind: 'length', measure: 'm', computed: true } as const;
const volume = { kind: 'volume', measure: 'm3', print: 'stone-volume', computed: true } as const;
const mass = { kind: 'mass', measure: 'kg', print: 'mass', computed: true } as const;
const read = { kind: 'length', measure: 'm', computed: false } as const;
const height = { ...length, print: 'level' } as const;
const heightRead = { ...read, print: 'level' } as const;
const slope = { kind: 'share', measure: '', print: 'slope', computed: false } as const;

/** Heights, falls and digs of an area. */
export const AREA_HEIGHTS = [
  {
    ...slope,
    id: 'finish-fall',
    owner: 'finish',
    key: 'fall',
    words: 'Steepest fall',
    name: 'fall',
    always: false,
    describe: 'Steepest fall of the finish, in the middle of the area; absent where it lies level'
  },
  {
    id: 'finish-direction',
    owner: 'finish',
    key: 'direction',
    kind: 'angle',
    measure: 'degrees',
    words: 'Falls towards',
    name: 'direction of the fall',
    print: 'angle',
    computed: false,
    always: false,
    describe: 'The way down in the middle of the area, anticlockwise from the x axis'
  },
  {
    ...read,
    id: 'finish-twist',
    owner: 'finish',
    key: 'twist',
    words: 'Twist',
    name: 'twist',
    print: 'thickness',
    always: false,
    describe: 'How far the fourth corner lies off the plane of the other three; above it is more than nought'
  },
  {
    ...length,
    id: 'dig-layers-shallowest',
    owner: 'dig',
    sheetOnly: true,
    key: 'layersShallowest',
    words: 'Layers reach below the ground at least',
    name: 'least depth of the layers',
    print: 'thickness',
    always: false,
    describe:
      'How far the layers reach below the ground where they reach least; less than nought: they end above it. Where this is less than the topsoil the dig goes on down through it'
  },
  {
    ...volume,
    id: 'dig-topsoil-volume',
    owner: 'dig',
    key: 'topsoilVolume',
    words: 'Topsoil in it',
    name: 'volume of topsoil',
    always: false,
    describe: 'Topsoil stripped, as it lies in the ground; part of the bank volume'
  },
  {
    ...volume,
    id: 'dig-fill-volume',
    owner: 'dig',
    key: 'fillVolume',
    words: 'Made up with stone',
    name: 'fill volume',
    always: false,
    describe: 'Stone, compacted, between the ground stripped of topsoil and the underside of the layers; never soil'
  },
  {
    ...mass,
    id: 'dig-fill-mass',
    owner: 'dig',
    key: 'fillMass',
    words: 'Stone to make up',
    name: 'mass of the fill',
    always: false,
    describe: 'Mass of the stone that makes up low ground; absent where its density is not known'
  },
  {
    ...volume,
    id: 'dig-trench-volume',
    owner: 'dig',
    key: 'trenchVolume',
    words: 'Deeper at edges and drains',
    name: 'volume of trenches',
    always: false,
    describe: 'Dug deeper or wider than the layers need, for edging in concrete and for drains; part of the bank volume'
  },
  {
    ...volume,
    id: 'dig-old-paving-volume',
    owner: 'dig',
    key: 'oldPavingVolume',
    words: 'Old paving broken out',
    name: 'volume of old paving',
    always: false,
    describe: 'Old paving within the dig, as it lies; no part of the bank volume'
  },
  {
    ...mass,
    id: 'dig-old-paving-mass',
    owner: 'dig',
    key: 'oldPavingMass',
    words: 'Mass of old paving',
    name: 'mass of old paving',
    always: false,
    describe: 'Mass of the old paving broken out'
  },
  {
    ...volume,
    id: 'soft-spot-bank-volume',
    owner: 'soft-spot',
    key: 'bankVolume',
    words: 'Dig in the ground',
    name: 'volume of the soft spot',
    always: true,
    describe: 'Dug below the bottom of the dig, as it lies in the ground; no part of the dig'
  },
  {
    ...volume,
    id: 'soft-spot-loose-volume',
    owner: 'soft-spot',
    key: 'looseVolume',
    words: 'Dig loose',
    name: 'loose volume of the soft spot',
    always: true,
    describe: 'The same, loose as it is carted'
  },
  {
    ...mass,
    id: 'soft-spot-mass',
    owner: 'soft-spot',
    key: 'mass',
    words: 'Dig mass',
    name: 'mass dug from the soft spot',
    always: true,
    describe: 'Mass of what is dug there'
  },
  {
    ...volume,
    id: 'soft-spot-stone-volume',
    owner: 'soft-spot',
    key: 'stoneVolume',
    words: 'Stone, compacted',
    name: 'stone in the soft spot',
    printBed: 'sand-volume',
    always: true,
    describe: 'Stone that fills it, compacted'
  },
  {
    ...mass,
    id: 'soft-spot-stone-mass',
    owner: 'soft-spot',
    key: 'stoneMass',
    words: 'Stone mass',
    name: 'mass of stone in the soft spot',
    always: false,
    describe: 'Mass of the stone that fills it; absent where its density is not known'
  },
  {
    ...heightRead,
    id: 'edge-finish-from',
    owner: 'edge',
    sheetOnly: true,
    key: 'finishFrom',
    words: 'Finish at its start',
    head: 'Finish from',
    name: 'finish at the start of the side',
    always: false,
    describe: 'Height of the finish where the side begins'
  },
  {
    ...heightRead,
    id: 'edge-finish-to',
    owner: 'edge',
    sheetOnly: true,
    key: 'finishTo',
    words: 'Finish at its end',
    head: 'to',
    name: 'finish at the end of the side',
    always: false,
    describe: 'Height of the finish where the side ends'
  },
  {
    ...slope,
    id: 'edge-fall-away',
    owner: 'edge',
    sheetOnly: true,
    key: 'fallAway',
    words: 'Fall away from it',
    name: 'fall away from the side',
    always: false,
    describe: 'Least fall of the finish away from the side, into the area; less than nought: water runs to the side'
  },
  {
    ...slope,
    id: 'edge-fall-away-most',
    owner: 'edge',
    sheetOnly: true,
    key: 'fallAwayMost',
    words: 'Most fall away from it',
    name: 'most fall away from the side',
    always: false,
    describe: 'Greatest fall of the finish away from the side, where it is not the same all along'
  },
  {
    ...read,
    id: 'edge-step-up',
    owner: 'edge',
    sheetOnly: true,
    key: 'stepUp',
    words: 'Stands above the finish',
    name: 'most that the neighbour stands above the finish',
    print: 'thickness',
    always: false,
    describe: 'Most that what lies beyond the side stands above the finish along its length'
  },
  {
    ...read,
    id: 'edge-step-down',
    owner: 'edge',
    sheetOnly: true,
    key: 'stepDown',
    words: 'Lies below the finish',
    name: 'most that the neighbour lies below the finish',
    print: 'thickness',
    always: false,
    describe: 'Most that what lies beyond the side lies below the finish along its length'
  },
  {
    ...heightRead,
    id: 'level-ground',
    owner: 'level',
    key: 'ground',
    words: 'Ground',
    name: 'ground',
    always: false,
    describe: "Today's ground"
  },
  {
    ...height,
    id: 'level-dig-bottom',
    owner: 'level',
    key: 'digBottom',
    words: 'Bottom of dig',
    name: 'bottom of the dig',
    always: true,
    describe: 'Bottom of the dig: under the lowest layer, under the topsoil, and in soft spots deeper'
  },
  {
    ...height,
    id: 'level-base-top',
    owner: 'level',
    key: 'baseTop',
    words: 'Base top',
    name: 'top of the base',
    always: false,
    describe: 'Top of the compacted base'
  },
  {
    ...height,
    id: 'level-screed',
    owner: 'level',
    key: 'screed',
    words: 'Screed',
    name: 'bed as screeded',
    always: false,
    describe: 'Bed as screeded, before it settles: the top of the screed rails'
  },
  {
    ...height,
    id: 'level-bed-top',
    owner: 'level',
    key: 'bedTop',
    words: 'Bed settled',
    name: 'top of the settled bed',
    always: false,
    describe: 'Underside of the units when they are down'
  },
  {
    ...height,
    id: 'level-as-laid',
    owner: 'level',
    key: 'asLaid',
    words: 'As laid',
    name: 'units as laid',
    always: false,
    describe: 'Face of the units as laid, before they settle'
  },
  {
    ...heightRead,
    id: 'level-finish',
    owner: 'level',
    key: 'finish',
    words: 'Finish',
    name: 'finish',
    always: true,
    describe: 'Finished face of the units'
  },
  {
    ...length,
    id: 'level-below-string',
    owner: 'level',
    key: 'belowString',
    words: 'Below string',
    name: 'drop from the string to the finish',
    print: 'thickness',
    always: false,
    describe: 'Drop from the string to the finish'
  }
] as const satisfies readonly Quantity[];
