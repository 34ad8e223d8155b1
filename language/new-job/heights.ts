import { USUAL_VALUES } from '../library/usual-values.ts';
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
  /**
   * Heights of the finish where it is highest, and of the ground: so much lower as the finish falls over some 5 m (16 ft), so
   * that the lawn drowns it nowhere.
   */
  readonly imperial: readonly [finish: string, ground: string];
  readonly metric: readonly [finish: string, ground: string];
}

const LEVEL = 'level with';

const { finishBelowSill, groundBelowSill } = USUAL_VALUES;

const SILL: Usual = {
  benchmark: 'door-sill',
  means: 'the top of the sill: heights hang from it',
  imperial: [`${finishBelowSill.imperial} below`, `${groundBelowSill.imperial} below`],
  metric: [`${finishBelowSill.metric} below`, `${groundBelowSill.metric} below`]
};

// Britain: paving stays 150 mm below the damp course (Approved Document C, 5.5, as quoted in public texts). Elsewhere in
// Europe the same is common practice.
const DAMP_COURSE: Usual = {
  benchmark: 'damp-course',
  means: 'the strip low in the wall: heights hang from it',
  imperial: ['6 in below', '10 1/2 in below'],
  metric: ['150 mm below', '265 mm below']
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
    imperial: ['1 in below', '5 1/2 in below'],
    metric: ['25 mm below', '140 mm below']
  },
  'garden-wall': {
    benchmark: 'wall-line',
    means: 'a level line drawn on the wall: heights hang from it',
    imperial: ['12 in below', '16 1/2 in below'],
    metric: ['300 mm below', '415 mm below']
  },
  'existing-paving': {
    benchmark: 'old-paving',
    means: 'the face of the paving that is there: heights hang from it',
    imperial: [LEVEL, '4 1/2 in below'],
    metric: [LEVEL, '115 mm below']
  },
  open: {
    benchmark: 'nail',
    means: 'a nail in a stake, as high as the paving at its highest: heights hang from it',
    imperial: [LEVEL, '4 1/2 in below'],
    metric: [LEVEL, '115 mm below']
  }
};

export function heightsFor(near: NearAnswer, country: CountryAnswer): Heights {
  const { benchmark, means, imperial, metric } = usual(near, country);
  const [finish, ground] = country === 'north-america' ? imperial : metric;
  return { benchmark, means, finish: `${finish} ${benchmark}`, ground: `${ground} ${benchmark}` };
}

function usual(near: NearAnswer, country: CountryAnswer): Usual {
  if (near === 'house-wall') return country.startsWith('north-america') ? SIDING : DAMP_COURSE;
  // In Britain and Ireland a sill stands about as high as the damp course, and the paving well below both.
  if (near === 'house-door')
    return country === 'britain' || country === 'ireland' ? { ...SILL, metric: DAMP_COURSE.metric } : SILL;
  return OTHERS[near];
}
