import type { CountryAnswer, NearAnswer } from './answers.ts';

/** What the heights hang from, and how the finish and today's ground lie to it. */
export interface Heights {
  readonly benchmark: string;
  /** What the benchmark is on site. */
  readonly means: string;
  readonly finish: string;
  readonly ground: string;
}

interface Usual extends Pick<Heights, 'means'> {
  readonly benchmark: string;
  /** The height of the finish where it is highest, so far below the benchmark: in inches and in millimetres. */
  readonly imperial: number;
  readonly metric: number;
}

/**
 * How much lower than the highest finish the ground lies, in inches or millimetres: about as much as the finish falls over
 * some 5 m (16 ft), so that the lawn drowns it nowhere, and so little that the dig goes through the topsoil everywhere.
 */
const GROUND_LOWER: Readonly<Record<CountryAnswer, number>> = {
  'north-america': 3.75,
  'north-america-metric': 95,
  britain: 75,
  ireland: 75,
  'continental-europe': 115
};

const SILL: Usual = {
  benchmark: 'door-sill',
  means: 'the top of the sill: heights hang from it',
  imperial: 2.5,
  metric: 65
};

// Britain: paving stays 150 mm below the damp course (Approved Document C, 5.5, as quoted in public texts). Elsewhere in
// Europe the same is common practice.
const DAMP_COURSE: Usual = {
  benchmark: 'damp-course',
  means: 'the strip low in the wall: heights hang from it',
  imperial: 6,
  metric: 150
};

// North America: 6 in below siding; from memory, common practice.
const SIDING: Usual = {
  ...DAMP_COURSE,
  benchmark: 'siding-edge',
  means: 'the lowest edge of the siding: heights hang from it'
};

const OTHERS: Readonly<Record<Exclude<NearAnswer, 'house-door' | 'house-wall'>, Usual>> = {
  garage: {
    benchmark: 'garage-floor',
    means: 'the floor in the gateway: heights hang from it',
    imperial: 1,
    metric: 25
  },
  'garden-wall': {
    benchmark: 'wall-line',
    means: 'a level line drawn on the wall: heights hang from it',
    imperial: 12,
    metric: 300
  },
  'existing-paving': {
    benchmark: 'old-paving',
    means: 'the face of the paving that is there: heights hang from it',
    imperial: 0,
    metric: 0
  },
  open: {
    benchmark: 'nail',
    means: 'a nail in a stake, as high as the paving where it is highest: heights hang from it',
    imperial: 0,
    metric: 0
  }
};

export function heightsFor(near: NearAnswer, country: CountryAnswer): Heights {
  const { benchmark, means, imperial, metric } = usual(near, country);
  const isImperial = country === 'north-america';
  const finish = isImperial ? imperial : metric;
  const below = (depth: number): string => {
    if (depth === 0) return `level with ${benchmark}`;
    return `${isImperial ? inches(depth) : `${depth} mm`} below ${benchmark}`;
  };
  return { benchmark, means, finish: below(finish), ground: below(finish + GROUND_LOWER[country]) };
}

/** To a quarter of an inch. */
function inches(depth: number): string {
  const quarters = ['', ' 1/4', ' 1/2', ' 3/4'][Math.round((depth % 1) * 4)]!;
  return `${Math.floor(depth)}${quarters} in`;
}

function usual(near: NearAnswer, country: CountryAnswer): Usual {
  if (near === 'house-wall') return country.startsWith('north-america') ? SIDING : DAMP_COURSE;
  // In Britain and Ireland a sill stands about as high as the damp course, and the paving well below both.
  if (near === 'house-door')
    return country === 'britain' || country === 'ireland' ? { ...SILL, metric: DAMP_COURSE.metric } : SILL;
  return OTHERS[near];
}
