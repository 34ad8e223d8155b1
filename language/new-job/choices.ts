import { SHIPPED_SIDES } from '../library/shipped.ts';
import type {
  CountryAnswer,
  NearAnswer,
  QuestionId,
  SoilAnswer,
  TrafficAnswer,
  WaterAnswer,
  WintersAnswer
} from './answers.ts';

export interface Choice {
  /** What is kept as the answer. */
  readonly id: string;
  readonly label: string;
  /** What it means, in a sentence or two; empty where the label says it all. */
  readonly detail: string;
}

const choices = <T extends string>(texts: Readonly<Record<T, readonly [label: string, detail: string]>>): Choice[] =>
  Object.entries<readonly [string, string]>(texts).map(([id, [label, detail]]) => ({ id, label, detail }));

const COUNTRIES = choices<CountryAnswer>({
  'north-america': ['North America, in feet and inches', 'North American rules; feet, inches, cubic yards.'],
  'north-america-metric': ['North America, metric', 'North American rules; millimetres, metres, tonnes.'],
  britain: ['Britain, metric', 'British rules; millimetres, metres, tonnes.'],
  ireland: ['Ireland, metric', 'Mostly British rules, Irish stone; millimetres, metres, tonnes.'],
  'continental-europe': [
    'Continental Europe, metric',
    'German guidance for the most part; millimetres, metres, tonnes.'
  ]
});

const TRAFFIC = choices<TrafficAnswer>({
  foot: ['People on foot', 'A patio, a path, a courtyard: slabs.'],
  cars: ['Cars and light vans', 'A drive or a parking place: blocks in herringbone, and a thicker base.'],
  turning: [
    'Cars that turn on the spot',
    'As for cars, where they turn round: firm edges and full joints matter most.'
  ],
  trucks: ['Trucks', 'A licensed engineer sets the layers: this is only a start. Not for turning trucks yet.']
});

const NEAR = choices<NearAnswer>({
  'house-door': ['House wall with a door', 'The heights hang from the door sill.'],
  'house-wall': [
    'House wall without a door',
    'The heights hang from the damp course, or from the lowest edge of the siding.'
  ],
  garage: ['Garage floor', 'The heights hang from the floor in the gateway.'],
  'garden-wall': ['Garden wall', 'The heights hang from a line drawn on the wall.'],
  'existing-paving': ['Paving that is there already', 'The new paving lies level with it.'],
  open: ['Nothing: it lies by itself in the lawn', 'The heights hang from a nail in a stake.']
});

/** Plain words for what a side can meet; a kind without them is offered by its name. */
const SIDE_WORDS: Readonly<Record<string, readonly [label: string, detail: string]>> = {
  lawn: ['Lawn', 'Open ground: gets edging.'],
  planting: ['Planting: a bed or a hedge', 'Open ground: gets edging.'],
  gravel: ['Gravel', 'Open ground: gets edging.'],
  'bare-ground': ['Bare ground', 'Open ground: gets edging.'],
  fence: ['Fence', 'It does not hold the paving: gets edging.'],
  boundary: ['Boundary of the plot', 'Open ground: gets edging. Water must not run over it.'],
  neighbour: ['Ground of a neighbour', 'Open ground: gets edging. Water must not run onto it.'],
  footway: ['Footway of a road', 'It holds the paving.'],
  'house-wall': ['House wall', 'It holds the paving.'],
  'garden-wall': ['Garden wall', 'It holds the paving.'],
  'existing-paving': ['Paving that is there already', 'It holds the paving.'],
  'concrete-slab': ['Concrete slab', 'It holds the paving.'],
  road: ['Road or street', 'It holds the paving.'],
  kerb: ['Kerb (curb) that is there already', 'It holds the paving.'],
  steps: ['Steps', 'They hold the paving.'],
  'drain-channel': ['Drain channel', 'It holds the paving.']
};

const ORDER = Object.keys(SIDE_WORDS);

const SIDES: readonly Choice[] = SHIPPED_SIDES.map(({ name }) => {
  const [label, detail] = SIDE_WORDS[name] ?? [name, ''];
  return { id: name, label, detail };
}).sort((one, other) => ORDER.indexOf(one.id) - ORDER.indexOf(other.id));

// Telling soils by hand: common practice.
const SOILS = choices<SoilAnswer>({
  clay: ['Clay', 'Sticky. Damp, it rolls into a long thin worm that bends without breaking.'],
  silt: ['Silt', 'Silky like flour. Damp, it rolls only into short pieces; a wet lump shines when shaken.'],
  'common-earth': ['Common earth', 'A mix. Squeezed damp it makes a ball, which crumbles when poked.'],
  sand: ['Sand', 'Gritty. Makes no ball; dry, it runs through the fingers.'],
  gravel: ['Gravel', 'Mostly stones as large as peas or larger, with sand between.']
});

// How long a test hole holds water: common practice.
const WATER = choices<WaterAnswer>({
  stays: ['It stays', 'Puddles for hours after rain; a hole filled with water still holds some the next day.'],
  drains: ['It drains away', 'No puddles soon after rain; a hole filled with water is empty the next day.']
});

const WINTERS = choices<WintersAnswer>({
  freeze: ['Winters freeze', 'In most winters the ground itself freezes hard.'],
  mild: ['Winters are mild', 'The ground seldom freezes more than skin deep.']
});

/** What is offered for each question; nothing where the answer is typed. */
export const CHOICES: Readonly<Record<QuestionId, readonly Choice[] | undefined>> = {
  country: COUNTRIES,
  traffic: TRAFFIC,
  near: NEAR,
  size: undefined,
  left: SIDES,
  far: SIDES,
  right: SIDES,
  soil: SOILS,
  water: WATER,
  winters: WINTERS
};
