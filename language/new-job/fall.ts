import { usualFall } from '../library/usual-fall.ts';
import type { AllAnswers, NearAnswer } from './answers.ts';
import { countryOf, systemOf } from './build-up.ts';

/** How the finish falls, as written behind its height. */
export interface FallWords {
  readonly words: string;
  /** What is to be settled on site, for a comment. */
  readonly means: string;
}

type SideName = 'near' | 'left' | 'far' | 'right';

/** Where water can go, the best first: it soaks away on one's own ground, a channel takes it, other paving leads it on. */
const TAKES_WATER: readonly (readonly string[])[] = [
  ['lawn', 'planting', 'gravel', 'bare-ground', 'fence'],
  ['drain-channel'],
  ['existing-paving', 'concrete-slab', 'kerb', 'road', 'footway']
];

/** Away from the house first. */
const LOW_SIDES: readonly SideName[] = ['far', 'left', 'right', 'near'];

const ACROSS: Readonly<Record<SideName, SideName>> = { far: 'near', left: 'right', right: 'left', near: 'far' };

/** To the side that takes the water best; where none does away from the house, and a drain has to take it. */
export function fallFor(answers: AllAnswers): FallWords {
  const { country: _, ...sides } = answers;
  const near = (sides.near as NearAnswer) === 'open' ? 'lawn' : '';
  const meets: Readonly<Record<SideName, string>> = { ...sides, near };
  const low = TAKES_WATER.flatMap(kinds => LOW_SIDES.filter(side => kinds.includes(meets[side])))[0];
  const high = ACROSS[low ?? 'far'];
  const means =
    low === undefined
      ? 'water has no way off yet: draw in a channel or a gully'
      : `water runs off over the ${low} side`;
  return {
    words: `along ${high}, falling ${usualFall(countryOf(answers), systemOf(answers))} away from ${high}`,
    means
  };
}
