/** The questions in their order; several of them make one step of the five. */
export const QUESTION_IDS = [
  'country',
  'traffic',
  'near',
  'size',
  'left',
  'far',
  'right',
  'soil',
  'water',
  'winters'
] as const;

export type QuestionId = (typeof QUESTION_IDS)[number];

/** What was answered so far: for each question the id of a choice, for `size` what was typed. */
export type Answers = Readonly<Partial<Record<QuestionId, string>>>;

export type CountryAnswer = 'north-america' | 'north-america-metric' | 'britain' | 'ireland' | 'continental-europe';
export type TrafficAnswer = 'foot' | 'cars' | 'turning' | 'trucks';
export type NearAnswer = 'house-door' | 'house-wall' | 'garage' | 'garden-wall' | 'existing-paving' | 'open';
export type SoilAnswer = 'clay' | 'silt' | 'common-earth' | 'sand' | 'gravel';
export type WaterAnswer = 'stays' | 'drains';
export type WintersAnswer = 'freeze' | 'mild';

/** Every question answered. */
export interface AllAnswers extends Record<QuestionId, string> {
  readonly country: CountryAnswer;
  readonly traffic: TrafficAnswer;
  readonly near: NearAnswer;
  readonly soil: SoilAnswer;
  readonly water: WaterAnswer;
  readonly winters: WintersAnswer;
}

/** The answers, and the usual one where none is given. Choices have to be among those offered. */
export function withUsual(answers: Answers): AllAnswers {
  const { country = 'north-america', soil = 'common-earth' } = answers;
  const usual: AllAnswers = {
    country: 'north-america',
    traffic: 'foot',
    near: 'house-door',
    size: country === 'north-america' ? '12 x 16 ft' : '4 x 5 m',
    left: 'lawn',
    far: 'lawn',
    right: 'lawn',
    soil: 'common-earth',
    water: soil === 'clay' || soil === 'silt' ? 'stays' : 'drains',
    winters: country === 'britain' || country === 'ireland' ? 'mild' : 'freeze'
  };
  return { ...usual, ...answers } as AllAnswers;
}
