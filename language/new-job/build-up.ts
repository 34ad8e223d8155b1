// What is laid, and on what: usual units, layers and edging for the traffic and the country. All of it is common practice
// but for the base, whose thickness the rules themselves are asked for.
import type { Country, System, Traffic } from '../job/job.ts';
import { USUAL_VALUES } from '../library/usual-values.ts';
import type { AllAnswers, CountryAnswer, TrafficAnswer } from './answers.ts';

export function countryOf({ country }: AllAnswers): Country {
  return country === 'north-america-metric' ? 'north-america' : country;
}

export function systemOf({ country }: AllAnswers): System {
  return country === 'north-america' ? 'imperial' : 'metric';
}

export function trafficOf({ traffic }: AllAnswers): readonly Traffic[] {
  return traffic === 'turning' ? ['cars', 'turning'] : [traffic];
}

// ---- units ----

export interface UnitText {
  readonly name: string;
  readonly size: string;
}

/** Slabs for people; for wheels blocks, thicker ones for trucks. Sizes as such units measure, not as they are sold. */
export function unitFor(answers: AllAnswers): UnitText {
  const usual = UNITS[systemOf(answers)][answers.traffic];
  if (answers.country !== 'continental-europe' || answers.traffic === 'foot') return usual;
  return { ...usual, size: CONTINENTAL_BLOCKS[answers.traffic] };
}

/** Sold there by the room that they take with their joint, 200 x 100 mm (common practice): herringbone closes with 4 mm. */
const CONTINENTAL_BLOCKS: Readonly<Record<Exclude<TrafficAnswer, 'foot'>, string>> = {
  cars: '197 x 97 x 60 mm',
  turning: '197 x 97 x 60 mm',
  trucks: '197 x 97 x 80 mm'
};

const METRIC_BLOCK: UnitText = { name: USUAL_VALUES.unitName.metric, size: USUAL_VALUES.unitSize.metric };
const IMPERIAL_BLOCK: UnitText = { name: 'block', size: '7 7/8 x 3 15/16 x 2 3/8 in' };

const UNITS: Readonly<Record<System, Readonly<Record<TrafficAnswer, UnitText>>>> = {
  imperial: {
    foot: { name: USUAL_VALUES.unitName.imperial, size: USUAL_VALUES.unitSize.imperial },
    cars: IMPERIAL_BLOCK,
    turning: IMPERIAL_BLOCK,
    trucks: { name: 'block', size: '7 7/8 x 3 15/16 x 3 1/8 in' }
  },
  metric: {
    foot: { name: 'slab-400', size: '400 x 400 x 50 mm' },
    cars: METRIC_BLOCK,
    turning: METRIC_BLOCK,
    trucks: { name: 'block', size: '200 x 100 x 80 mm' }
  }
};

/** Herringbone where wheels turn, push and brake: its units hold each other both ways (common practice). */
export function bondFor({ traffic }: Pick<AllAnswers, 'traffic'>): string {
  return traffic === 'foot' ? 'running-bond' : 'herringbone-90';
}

// ---- layers ----

export interface LayerTexts {
  readonly joints: string;
  readonly jointFiller: string;
  readonly bed: string;
  readonly base: string;
}

export function layersFor(answers: AllAnswers, leastBase: string): LayerTexts {
  const { stone, ...others } = LAYERS[answers.country];
  return { ...others, base: `${stone} ${leastBase}` };
}

/** What the site says of the ground. */
export function siteFor({ soil, water, winters }: AllAnswers): string[] {
  return [`soil ${soil}, ${water === 'stays' ? 'poorly-drained' : 'well-drained'}`, `winters ${winters}`];
}

const LAYERS: Readonly<Record<CountryAnswer, Omit<LayerTexts, 'base'> & { readonly stone: string }>> = {
  'north-america': {
    joints: USUAL_VALUES.joint.imperial,
    jointFiller: 'joint-sand',
    bed: `washed-sand ${USUAL_VALUES.bed.imperial}`,
    stone: 'crushed-stone'
  },
  'north-america-metric': {
    joints: USUAL_VALUES.joint.metric,
    jointFiller: 'joint-sand',
    bed: 'washed-sand 25 mm',
    stone: 'crushed-stone'
  },
  britain: {
    joints: USUAL_VALUES.joint.metric,
    jointFiller: 'kiln-dried-sand',
    bed: `sharp-sand ${USUAL_VALUES.bed.metric}`,
    stone: 'type-1'
  },
  ireland: {
    joints: USUAL_VALUES.joint.metric,
    jointFiller: 'kiln-dried-sand',
    bed: `sharp-sand ${USUAL_VALUES.bed.metric}`,
    stone: 'clause-804'
  },
  'continental-europe': {
    joints: '4 mm',
    jointFiller: 'kiln-dried-sand',
    bed: 'sharp-sand 40 mm',
    stone: 'stone-0-32'
  }
};

/** Stone sinks into soft fine soil (association guidance on installation: over silt and clay). */
export function needsGeotextile({ soil, water }: AllAnswers): boolean {
  return soil === 'clay' || soil === 'silt' || water === 'stays';
}

// ---- edging ----

/** What holds the units where the ground is open; `declared` where it does not ship. */
export interface EdgingText {
  readonly clause: string;
  readonly declared?: { readonly name: string; readonly statements: readonly string[] };
}

export function edgingFor(answers: AllAnswers): EdgingText {
  const { country, traffic } = answers;
  if (traffic === 'trucks') return kerb(systemOf(answers) === 'imperial' ? KERB_6 : KERB_125);
  return country.startsWith('north-america') ? { clause: 'edging spiked-strip' } : kerb(KERB_50);
}

function kerb(declared: NonNullable<EdgingText['declared']>): EdgingText {
  return { clause: `edging ${declared.name} set before laying`, declared };
}

const KERB_50 = {
  name: 'kerb-50',
  statements: [
    'role edging',
    `size ${USUAL_VALUES.kerbSize.metric}`,
    'concrete 250 x 100 mm below, 50 mm of it under the paving',
    `haunch ${USUAL_VALUES.haunchSize.metric} behind`
  ]
};

const KERB_125 = {
  name: 'kerb-125',
  statements: [
    'role edging',
    'size 915 x 125 x 255 mm',
    'concrete 325 x 150 mm below, 75 mm of it under the paving',
    'haunch 125 x 150 mm behind'
  ]
};

const KERB_6 = {
  name: 'kerb-6',
  statements: [
    'role edging',
    'size 36 x 6 x 12 in',
    'concrete 14 x 6 in below, 3 in of it under the paving',
    'haunch 5 x 6 in behind'
  ]
};
