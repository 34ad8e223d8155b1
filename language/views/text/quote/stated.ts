import type { Key } from '../../../job/job.ts';
import type { Workings } from '../../../quantities/contract.ts';
import { nameIn } from '../../../job/key-names.ts';
import type { MoneyWords } from '../../../job/money-lines.ts';
import type { Unpriced } from '../../../pricing/cost-line.ts';
import { lastDay } from '../../../measures/days.ts';
import { assumedText } from '../assumed-text.ts';
import { missingText } from '../missing-text.ts';
import { plainLine } from '../plain-line.ts';
import { wrapped } from '../wrapped.ts';
import { type QuoteInput, SHEET_WIDTH } from './quote-input.ts';

/** A heading and what stands under it; nothing where nothing does. */
export function section(head: string, lines: readonly string[], { strong }: QuoteInput['colours']): string[] {
  return lines.length === 0 ? [] : [[strong(head), ...lines.map(line => (line === '' ? '' : `  ${line}`))].join('\n')];
}

/** Sentences, each begun with a dash and broken at the width of the sheet. */
export function points(sentences: readonly string[]): string[] {
  return sentences.flatMap(sentence => wrapped(`- ${plainLine(sentence)}`, SHEET_WIDTH - 2, '  '));
}

/** Of whom and of what day the price is, and how long it holds. */
export function validity({ client, quote }: MoneyWords, currency: string): string[] {
  const dated = quote?.on === undefined ? 'No date is said' : `Dated ${quote.on}`;
  const days = quote?.validDays && Math.floor(quote.validDays.value);
  const holds =
    days === undefined
      ? 'how long it holds is not said'
      : `holds ${days} ${days === 1 ? 'day' : 'days'}${quote?.on === undefined ? '' : `, until ${lastDay(quote.on, days)}`}`;
  return [
    ...(client === undefined ? [] : [`Client: ${plainLine(client)}`]),
    `${dated}; ${holds}. All prices in ${currency}.`
  ];
}

/** What the price leaves out because nothing prices or measures it; reasons are for the one who writes the job. */
export function notPriced({ job, numbers, costs }: QuoteInput, withReasons: boolean): string[] {
  const shown = withReasons ? costs.unpriced : costs.unpriced.filter(({ inside }) => inside !== true);
  const reason = ({ title, because }: Unpriced): string => (withReasons ? `${title}: ${because}` : title);
  const { missing } = numbers.quantities;
  const unmeasured = withReasons
    ? missingText(missing, job.missing)
    : notMeasured(missing, new Set(shown.map(({ title }) => title)));
  return points([...shown.map(reason), ...unmeasured]);
}

/** For the client: a price that has a fault is none, and its supplier is nobody's business. */
function notMeasured(missing: readonly Key[], told: ReadonlySet<string>): string[] {
  const named = missing.map((key): [string, string] => {
    const isMoney = /^(?:price|stock):/.test(key);
    return [nameIn(key).replace(/@.*/, ''), isMoney ? 'not priced yet' : 'not measured yet'];
  });
  return [...new Map(named.filter(([name]) => !told.has(name)))].map(([name, what]) => `${name}: ${what}`);
}

/** What was taken as so because the job does not say, for quantities; with sources for the one who writes the job. */
export function assumptions({ job, numbers, colours }: QuoteInput, withSources: boolean): string[] {
  const all = assumedText(withSources ? numbers.workings : forClients(numbers.workings), job.system, {
    ...colours,
    faint: text => text
  });
  const soils = [...new Set(job.areas.map(({ site }) => site.soil.name))];
  const ground = withSources || soils.length === 0 ? [] : points([`The ground is taken to be ${soils.join(', ')}.`]);
  const told = all.flatMap(line =>
    line.startsWith(SOURCE) ? (withSources ? wrapped(`  ${line.trim()}`, SHEET_WIDTH - 2, '    ') : []) : points([line])
  );
  return [...ground, ...told];
}

const SOURCE = '  Source: ';

function forClients(workings: Workings): Workings {
  return Object.fromEntries(
    Object.entries(workings)
      .filter(([pointer]) => !CARRYING.test(pointer))
      .map(([pointer, working]) => [
        pointer,
        { ...working, values: working.values.filter(({ name }) => !OF_THE_TRADE.has(name)) }
      ])
  );
}

/** How it is carried is the carrier's business alone. */
const CARRYING = /^\/dig\/(barrow|truck)/;

/** What soil and mixes do when they are dug and mixed says nothing to a client. */
const OF_THE_TRADE: ReadonlySet<string> = new Set([
  'swell of the soil',
  'density of the soil',
  'compacted density',
  'loose density',
  'dry mix for one in place',
  'concrete under the paving'
]);
