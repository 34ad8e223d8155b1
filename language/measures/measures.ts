import Fraction from 'fraction.js';

/**
 * What a quantity is measured in: exponents of the SI base measures, degrees and currencies. Shares, slopes and counts
 * have none.
 */
export type Dimensions = Readonly<Record<string, number>>;

export interface Measure {
  readonly dimensions: Dimensions;
  /** SI value of one, exact. */
  readonly factor: Fraction;
}

const LENGTH: Dimensions = { m: 1 };
const AREA: Dimensions = { m: 2 };
const VOLUME: Dimensions = { m: 3 };
const MASS: Dimensions = { kg: 1 };
const TIME: Dimensions = { s: 1 };
const ANGLE: Dimensions = { degrees: 1 };
const NONE: Dimensions = {};

const measure = (dimensions: Dimensions, factor: string | number): Measure => ({
  dimensions,
  factor: new Fraction(factor)
});

// 1 in = 25.4 mm and 1 lb = 0.453 592 37 kg are exact by definition (NIST SP 811).
export const INCH = new Fraction('0.0254');
const POUND = new Fraction('0.45359237');
const inches = (count: number): Measure => ({ dimensions: LENGTH, factor: INCH.mul(count) });
const squared = (length: Measure): Measure => ({ dimensions: AREA, factor: length.factor.pow(2)! });
const cubed = (length: Measure): Measure => ({ dimensions: VOLUME, factor: length.factor.pow(3)! });
const pounds = (count: number): Measure => ({ dimensions: MASS, factor: POUND.mul(count) });

const inch = inches(1);
const foot = inches(12);
const yard = inches(36);
const metre = measure(LENGTH, 1);
const centimetre = measure(LENGTH, '0.01');
const millimetre = measure(LENGTH, '0.001');
const shortTon = pounds(2000);
const tonne = measure(MASS, 1000);
const hour = measure(TIME, 3600);
const day = measure(TIME, 86400);
const degree = measure(ANGLE, 1);

/** Every way a measure may be written, lower case; several words with one space between them. */
export const MEASURES: ReadonlyMap<string, Measure> = new Map<string, Measure>([
  ...names(inch, 'in', 'inch', 'inches', '"', '″', '”', "''", '′′', '’’'),
  ...names(foot, 'ft', 'foot', 'feet', "'", '′', '’'),
  ...names(yard, 'yd', 'yard', 'yards'),
  ...names(millimetre, 'mm'),
  ...names(centimetre, 'cm'),
  ...names(metre, 'm', 'metre', 'metres', 'meter', 'meters'),
  ...names(squared(inch), 'sq in', 'in2', 'in²'),
  ...names(squared(foot), 'sq ft', 'ft2', 'ft²'),
  ...names(squared(yard), 'sq yd', 'yd2', 'yd²'),
  ...names(squared(millimetre), 'sq mm', 'mm2', 'mm²'),
  ...names(squared(metre), 'sq m', 'm2', 'm²'),
  ...names(cubed(inch), 'cu in', 'in3', 'in³'),
  ...names(cubed(foot), 'cu ft', 'ft3', 'ft³'),
  ...names(cubed(yard), 'cu yd', 'yd3', 'yd³'),
  ...names(cubed(metre), 'cu m', 'm3', 'm³'),
  ...names(measure(VOLUME, '0.001'), 'l', 'litre', 'litres'),
  ...names(pounds(1), 'lb', 'lbs', 'pound', 'pounds'),
  ...names(measure(MASS, 1), 'kg'),
  ...names(shortTon, 'short ton', 'short tons'),
  ...names(tonne, 't', 'tonne', 'tonnes'),
  ...names(measure(TIME, 60), 'min', 'minute', 'minutes'),
  ...names(hour, 'h', 'hour', 'hours'),
  ...names(day, 'day', 'days'),
  ...names(measure(TIME, 7 * 86400), 'week', 'weeks'),
  ...names(degree, 'degrees', 'degree', '°'),
  ...names(measure(NONE, '1/100'), '%'),
  ...['USD', 'GBP', 'EUR', 'CAD', 'AUD', 'NZD'].map((code): [string, Measure] => [
    code.toLowerCase(),
    measure({ [code]: 1 }, 1)
  ])
]);

/** `ton` alone could be 2,000 lb, 2,240 lb or 1,000 kg: it is read as a measure and then refused. */
export const AMBIGUOUS_MEASURES: ReadonlySet<string> = new Set(['ton', 'tons']);

function names(is: Measure, ...spellings: string[]): [string, Measure][] {
  return spellings.map(spelling => [spelling, is]);
}

/** The measure of a spelling such as `cu ft` or `kg/m3`; undefined if the language does not know it. */
export function measureNamed(spelling: string): Measure | undefined {
  const [whole, ...per] = spelling.toLowerCase().replaceAll('.', '').replace(/\s+/g, ' ').split('/');
  const first = MEASURES.get(whole!.trim());
  if (first === undefined || per.length > 1) return undefined;
  if (per.length === 0) return first;
  const second = MEASURES.get(per[0]!.trim());
  return (
    second && { dimensions: combine(first.dimensions, second.dimensions, -1), factor: first.factor.div(second.factor) }
  );
}

export function combine(left: Dimensions, right: Dimensions, times: 1 | -1): Dimensions {
  const sum: Record<string, number> = { ...left };
  for (const [name, power] of Object.entries(right)) {
    const together = (sum[name] ?? 0) + times * power;
    if (together === 0) delete sum[name];
    else sum[name] = together;
  }
  return sum;
}

/** The SI measure as printed in the JSON: `m`, `m2`, `kg/m3`, `degrees`, `USD`; empty for shares, slopes and counts. */
export function measureText(dimensions: Dimensions): string {
  const part = (wanted: (power: number) => boolean): string =>
    Object.entries(dimensions)
      .filter(([, power]) => wanted(power))
      .map(([name, power]) => name + (Math.abs(power) === 1 ? '' : Math.abs(power)))
      .join(' ');
  const above = part(power => power > 0);
  const below = part(power => power < 0);
  return below === '' ? above : `${above || '1'}/${below}`;
}

const KINDS: Readonly<Record<string, string>> = {
  '': 'a plain number',
  m: 'a length',
  m2: 'an area',
  m3: 'a volume',
  kg: 'a mass',
  'kg/m3': 'a density',
  s: 'a time',
  degrees: 'an angle'
};

/** The kind of quantity in words: `a length`, `a density`. */
export function kindOf(dimensions: Dimensions): string {
  const text = measureText(dimensions);
  return KINDS[text] ?? (/^[A-Z]{3}$/.test(text) ? 'an amount of money' : `a rate in ${text}`);
}
