import type { System } from '../../job/job.ts';

/** A measure as it is mostly written, in words, and what it is compared with in the other system. */
export interface MeasureWords {
  readonly written: string;
  readonly words: string;
  readonly system?: System;
  readonly compare?: string;
}

export const MEASURE_WORDS: readonly MeasureWords[] = [
  { written: 'in', words: 'An inch', system: 'imperial', compare: 'mm' },
  { written: 'ft', words: 'A foot: 12 inches', system: 'imperial', compare: 'm' },
  { written: 'yd', words: 'A yard: 3 feet', system: 'imperial', compare: 'm' },
  { written: 'mm', words: 'A millimetre: a thousandth of a metre', system: 'metric', compare: 'in' },
  { written: 'cm', words: 'A centimetre: 10 millimetres', system: 'metric', compare: 'in' },
  { written: 'm', words: 'A metre: 1,000 millimetres', system: 'metric', compare: 'ft' },
  { written: 'sq in', words: 'A square inch', system: 'imperial', compare: 'sq mm' },
  { written: 'sq ft', words: 'A square foot', system: 'imperial', compare: 'm2' },
  { written: 'sq yd', words: 'A square yard: 9 square feet', system: 'imperial', compare: 'm2' },
  { written: 'sq mm', words: 'A square millimetre', system: 'metric', compare: 'sq in' },
  { written: 'm2', words: 'A square metre', system: 'metric', compare: 'sq ft' },
  { written: 'cu in', words: 'A cubic inch', system: 'imperial', compare: 'litre' },
  { written: 'cu ft', words: 'A cubic foot', system: 'imperial', compare: 'm3' },
  { written: 'cu yd', words: 'A cubic yard: 27 cubic feet', system: 'imperial', compare: 'm3' },
  { written: 'm3', words: 'A cubic metre', system: 'metric', compare: 'cu yd' },
  { written: 'litre', words: 'A litre: a thousandth of a cubic metre', system: 'metric', compare: 'cu ft' },
  { written: 'lb', words: 'A pound', system: 'imperial', compare: 'kg' },
  { written: 'kg', words: 'A kilogram', system: 'metric', compare: 'lb' },
  { written: 'short ton', words: 'A short ton: 2,000 lb', system: 'imperial', compare: 'kg' },
  { written: 'tonne', words: 'A tonne, the metric ton: 1,000 kg', system: 'metric', compare: 'lb' },
  { written: 'min', words: 'A minute' },
  { written: 'h', words: 'An hour: 60 minutes' },
  { written: 'day', words: 'A day: 24 hours' },
  { written: 'week', words: 'A week: 7 days' },
  { written: 'degrees', words: 'Degrees of an angle; a right angle has 90' },
  { written: '%', words: 'Parts in a hundred' },
  { written: 'usd', words: 'US dollars' },
  { written: 'gbp', words: 'British pounds' },
  { written: 'eur', words: 'Euros' },
  { written: 'cad', words: 'Canadian dollars' },
  { written: 'aud', words: 'Australian dollars' },
  { written: 'nzd', words: 'New Zealand dollars' }
];
