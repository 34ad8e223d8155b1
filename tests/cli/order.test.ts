import { mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { parse } from 'csv-parse/sync';
import ExcelJS from 'exceljs';
import { describe, expect, test } from 'vitest';
import { COUPLED } from '../buying/coupled-job.ts';
import { FAULTY, folder, GOOD, paving } from './run.ts';

/** 12 x 16 ft, 1 in of sand and 6 in of stone; a supplier that brings the stone. */
const PRICED = `${GOOD.replace(
  '{ rules north-america }',
  `{
  rules north-america
  currency USD
  labour 30 USD per hour
  margin 20 %
}`
).replace('  base crushed', '  bed washed-sand 1 in\n  base crushed')}
supplier gravel-pit {
  prices on 2026-03-01, valid 365 days
  delivery 65 USD a load, load 8 short ton
}
price crushed-stone from gravel-pit {
  loose for 38 USD per short ton, in steps of 1/2 short ton, at least 1 short ton
}
price washed-sand {
  bag of 0.5 cu ft for 4.98 USD
  bulk-bag of 1 short ton for 400 USD
}
price slab-16 {
  piece for 3.95 USD
  pallet of 60 for 210 USD, deposit 20 USD
}
`;

const asked = (...more: string[]) => paving(['order', '--as-of', '2026-04-01', ...more, '-'], { input: PRICED });

describe('for a reader', () => {
  test('what to buy in its packs, what brings it, what it costs, what it is for', () => {
    const { code, out, err } = asked();
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toMatch(/^Back terrace · standard input · order\n/);
    for (const head of ['To buy', 'Brought by', 'Cost', 'What it is for', 'Other ways to buy it', 'Assumed'])
      expect(out).toContain(`\n${head}\n`);
    expect(out).toMatch(/^ {2}slab-16 .*(?:piece|pallet of 60)/m);
    expect(out).toMatch(/No order of these packs that covers the need costs less\./);
    expect(out).toContain('Deposits paid with it and given back: ');
    expect(out.endsWith('Local codes and licensed practice stand over everything here.\n')).toBe(true);
  });

  test('from whom, of which day each price is, and whether tax is in the sum', () => {
    const { out } = asked();
    expect(out).toMatch(/^ {2}Item .* From .* Cost, USD$/m);
    expect(out).toMatch(/^ {2}crushed-stone .* gravel-pit /m);
    expect(out).toMatch(
      /\nPrices\n.*Of the day {2}Holds until\n(?:.*\n)*? {2}crushed-stone +gravel-pit +2026-03-01 +2027-03-01/
    );
    expect(out).toContain('Whether tax is in it is not said.');
  });

  test('what has no price is told, and the rest is priced', () => {
    const { out } = asked();
    expect(out).toMatch(/\nWithout a price\n/);
    expect(out).toMatch(/^ {2}spiked-strip +\d/m);
  });

  test('the costs behind the price, and the sheet without them', () => {
    const costs = asked('--costs').out;
    const client = asked('--client').out;
    expect(costs).toContain('Not for the client.');
    expect(client).not.toContain('Margin');
    expect(client).toContain('Accepted');
    expect(client.split('\n').filter(line => line.length > 80)).toEqual([]);
  });

  test.each([
    [['--costs', '--client'], /two sheets/],
    [['--client', '--format', 'csv'], /leave out --format csv/],
    [['--workings'], /goes with --costs/],
    [['--format', 'spreadsheet'], /-o order\.xlsx/]
  ])('%s: said what to do instead', (more, wanted) => {
    const { code, err } = asked(...more);
    expect(code).toBe(2);
    expect(err).toMatch(wanted);
  });

  test('an error: exit code 1, and the sound areas all the same', () => {
    const { code, out } = paving(['order', '-'], { input: FAULTY });
    expect(code).toBe(1);
    expect(out).toContain('What it is for');
  });
});

describe('as data', () => {
  test('the JSON of quantities holds needs, order and cost', () => {
    const { out } = asked('--format', 'json');
    const [job] = (
      JSON.parse(out) as { jobs: { order: { item: string; cost: string }[]; orderCost: { total: string } }[] }
    ).jobs;
    expect(job!.order.map(({ item }) => item)).toEqual(
      expect.arrayContaining(['slab-16', 'crushed-stone', 'washed-sand'])
    );
    expect(job!.orderCost.total).toMatch(/^\d+\.\d\d$/);
  });

  /** What a spreadsheet would work out if it were no text. */
  const SLY = PRICED.replace('job "Back terrace"', 'job "=1+1"');

  test('the table is read back with its money, and nothing in it is a formula', () => {
    const { out } = paving(['order', '--format', 'csv', '--as-of', '2026-04-01', '-'], { input: SLY });
    const rows = parse(out, { bom: true, columns: true }) as Record<string, string>[];
    expect(rows.length).toBeGreaterThan(3);
    expect(rows.every(row => row['Job'] === "'=1+1")).toBe(true);
    const { orderCost } = (JSON.parse(asked('--format', 'json').out) as { jobs: { orderCost: { total: string } }[] })
      .jobs[0]!;
    const cents = rows.reduce((sum, row) => sum + Math.round(Number(row['Cost'] || 0) * 100), 0);
    expect(cents).toBe(Math.round(Number(orderCost.total) * 100));
  });

  test.each(['=1+1', '+1', '-1', '@SUM(A1)', '\t=1'])(
    'a job called %j is text in table and spreadsheet',
    async title => {
      const input = PRICED.replace('job "Back terrace"', `job "${title}"`);
      const { out } = paving(['order', '--format', 'csv', '--as-of', '2026-04-01', '-'], { input });
      const rows = parse(out, { bom: true, columns: true }) as Record<string, string>[];
      expect(rows.map(row => row['Job'])).toEqual(rows.map(() => `'${title.replace('\t', ' ')}`));
      const file = path.join(mkdtempSync(path.join(tmpdir(), 'order-')), 'order.xlsx');
      paving(['order', '--format', 'spreadsheet', '-o', file, '--as-of', '2026-04-01', '-'], { input });
      const book = new ExcelJS.Workbook();
      await book.xlsx.load(readFileSync(file) as unknown as ArrayBuffer);
      const cell = book.worksheets[0]!.getRow(2).getCell(1);
      expect([cell.type, String(cell.value).trim()]).toEqual([ExcelJS.ValueType.String, title.trim()]);
    }
  );

  test('the spreadsheet is read back by another reader: numbers, money and texts', async () => {
    const file = path.join(mkdtempSync(path.join(tmpdir(), 'order-')), 'order.xlsx');
    const { code } = paving(['order', '--format', 'spreadsheet', '-o', file, '--as-of', '2026-04-01', '-'], {
      input: SLY
    });
    expect(code).toBe(0);
    const book = new ExcelJS.Workbook();
    await book.xlsx.load(readFileSync(file) as unknown as ArrayBuffer);
    const [sheet] = book.worksheets;
    const heads = (sheet!.getRow(1).values as string[]).slice(1);
    expect(heads.slice(0, 3)).toEqual(['Job', 'Item', 'Needed']);
    const first = sheet!.getRow(2);
    expect(first.getCell(1).value).toBe('=1+1');
    expect(first.getCell(1).formula).toBeUndefined();
    expect(typeof first.getCell(heads.indexOf('Cost') + 1).value).toBe('number');
  });
});

describe('whatever order is shown is settled as far as can be', () => {
  /** The search alone leaves two loads, 453.00, where one load and a few bags come to 409.00. */
  const open = COUPLED;
  /** As it stands there is nothing to buy; its price is that of the whole job. */
  const delivered = `${COUPLED}log { 2026-04-25 delivered stone 9 short ton }\n`;
  const inVariant = `${COUPLED.replace('41 x 48 ft', '20 x 20 ft')}
variant large { area bed { outline rectangle 41 x 48 ft } }
`;
  const inFolder = (...given: string[]) =>
    paving(given, { cwd: folder({ 'open.paving': open, 'delivered.paving': delivered, 'variant.paving': inVariant }) })
      .out;

  test.each(['open', 'delivered'])('the sheets of price: %s', name => {
    for (const sheet of ['--costs', '--client'])
      expect(inFolder('order', sheet, `${name}.paving`)).toMatch(/^ *Price +409\.00/m);
  });

  test('a variant, for a reader and in JSON', () => {
    expect(inFolder('quantities', 'variant.paving')).toMatch(/^ *Cost +141\.00 USD.* 409\.00 USD/m);
    for (const verb of ['quantities', 'order']) {
      const told = inFolder(verb, '--format', 'json', 'variant.paving');
      expect(told).toContain('"total": "409.00"');
      expect(told).not.toContain('"proven": false');
    }
  });

  test('it does not hang on the order in which files are named', () => {
    interface Told {
      readonly jobs: readonly unknown[];
    }
    const jobsOf = (...files: string[]) => (JSON.parse(inFolder('order', '--format', 'json', ...files)) as Told).jobs;
    const files = ['open.paving', 'delivered.paving', 'variant.paving'];
    const alone = files.map(file => jobsOf(file)[0]);
    expect(jobsOf(...files)).toEqual(alone);
    expect(jobsOf(...files.toReversed())).toEqual(alone.toReversed());
  });
});
