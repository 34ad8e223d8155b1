/** A date as people write it, and the days that it can mean: `2027-06-30`; none where too much is open. */
export interface OddDate {
  readonly written: string;
  readonly days: readonly string[];
}

/** `30/6/2027`, `30.06.2027`, `27-06-30`, `2027-6-30` */
const IN_NUMBERS = /([0-9]{1,4})([./-])[ \t]?([0-9]{1,2})\2[ \t]?([0-9]{1,4})(?![0-9\p{L}])/uy;
/** `30 June 2027`, `30th of June, 2027` */
const DAY_FIRST =
  /([0-9]{1,2})(?:st|nd|rd|th|\.)?[ \t]+(?:of[ \t]+)?(\p{L}{3,})\.?,?[ \t]+'?([0-9]{4}|[0-9]{2})(?![0-9\p{L}])/uy;
/** `June 30, 2027`, `June 30th 2027` */
const MONTH_FIRST = /(\p{L}{3,})\.?[ \t]+([0-9]{1,2})(?:st|nd|rd|th)?,?[ \t]+'?([0-9]{4}|[0-9]{2})(?![0-9\p{L}])/uy;

const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];
const MONTH_NAMES = [
  ...['january', 'february', 'march', 'april', 'may', 'june', 'july', 'august'],
  ...['september', 'october', 'november', 'december', 'sept']
];

/** What stands at an offset, if it is a date in another form than year, month and day with hyphens. */
export function oddDateAt(text: string, offset: number): OddDate | undefined {
  const [numbers, dayFirst, monthFirst] = [IN_NUMBERS, DAY_FIRST, MONTH_FIRST].map(pattern => {
    pattern.lastIndex = offset;
    return pattern.exec(text);
  });
  if (numbers) return inNumbers(numbers[0], numbers[1]!, numbers[3]!, numbers[4]!);
  const [written, day, month, year] = dayFirst ?? (monthFirst ? [0, 2, 1, 3].map(at => monthFirst[at]!) : []);
  const monthNumber = month === undefined ? undefined : monthNamed(month);
  if (written === undefined || monthNumber === undefined) return undefined;
  return { written, days: year!.length === 4 ? daysOf([year!, String(monthNumber), day!]) : [] };
}

function inNumbers(written: string, first: string, middle: string, last: string): OddDate {
  if (first.length === 4) return { written, days: daysOf([first, middle, last]) };
  // `27-06-30` may begin with the year or end with it.
  if (last.length !== 4) return { written, days: [] };
  return { written, days: daysOf([last, middle, first], [last, first, middle]) };
}

function monthNamed(word: string): number | undefined {
  const name = word.toLowerCase();
  if (!MONTHS.includes(name) && !MONTH_NAMES.includes(name)) return undefined;
  return MONTHS.indexOf(name.slice(0, 3)) + 1;
}

/** The readings that are days of the calendar, each once. */
function daysOf(...readings: readonly (readonly [string, string, string])[]): string[] {
  const written = readings.map(([year, month, day]) => [year, month.padStart(2, '0'), day.padStart(2, '0')].join('-'));
  return [...new Set(written)].filter(isDay);
}

/** Whether `2027-06-30` is a day; one that is not in the calendar, such as 2027-02-31, comes back as another. */
export function isDay(written: string): boolean {
  const day = new Date(`${written}T00:00:00Z`);
  return !Number.isNaN(day.valueOf()) && day.toISOString().slice(0, 10) === written;
}
