// The sheets of a price: the client's and the one with the costs behind it.
import { describe, expect, test } from 'vitest';
import { clientSheet } from '../../language/views/text/quote/client-sheet.ts';
import { costsSheet } from '../../language/views/text/quote/costs-sheet.ts';
import type { QuoteInput } from '../../language/views/text/quote/quote-input.ts';
import { extra, money, text } from './inputs.ts';
import { PATIO_MONEY, pricedPatio } from './priced-patio.ts';

const linesOf = (sheet: string): string[] => sheet.split('\n');
const under = (sheet: string, head: string): string =>
  sheet.split('\n\n').find(part => part.startsWith(head)) ?? `no ${head}`;

test('the client’s sheet', async () => {
  await expect(clientSheet(await pricedPatio())).toMatchFileSnapshot('golden/client.txt');
});

test('the sheet with the costs behind it', async () => {
  await expect(costsSheet(await pricedPatio(), true)).toMatchFileSnapshot('golden/costs.txt');
});

describe('both', () => {
  test('fit a page of 80 columns, and nothing stands behind the end of a line', async () => {
    const input = await pricedPatio();
    for (const line of [...linesOf(clientSheet(input)), ...linesOf(costsSheet(input, true))]) {
      expect(Array.from(line).length, line).toBeLessThanOrEqual(80);
      expect(line).toBe(line.trimEnd());
    }
  });

  test('state what is not priced, what is no part of the work, what was assumed, until when it holds, and the tax', async () => {
    const input = await pricedPatio();
    for (const sheet of [clientSheet(input), costsSheet(input, false)]) {
      expect(sheet).toContain('Dated 2026-03-02; holds 30 days, until 2026-04-01. All prices in USD.');
      expect(sheet).toContain('- washed-sand');
      expect(under(sheet, 'Not part of this work')).toContain('- Moving any service');
      expect(sheet).toMatch(/Tax, 7 % of 4,669\.28 +326\.85/);
    }
    expect(under(clientSheet(input), 'Taken as so')).toContain('The ground is taken to be common-earth.');
    expect(under(costsSheet(input, false), 'Taken as so')).toContain('swell of the soil 25 %');
  });

  test('say so where date, validity, tax and exclusions are not said', async () => {
    const { quote: _quote, tax: _tax, ...rest } = PATIO_MONEY;
    const sheet = clientSheet(await pricedPatio(all => ({ ...all, money: { ...rest, excludes: [] } })));
    expect(sheet).toContain('No date is said; how long it holds is not said.');
    expect(sheet).toContain('No tax is said, so none is in it.');
    expect(under(sheet, 'Not part of this work')).toContain('Nothing is named.');
    expect(sheet).not.toContain('To pay');
  });

  test('take a user’s words as text on one line', async () => {
    const excludes = ['Moving \u001b[31many service\nOffered for nothing'];
    const input = await pricedPatio(all => ({ ...all, money: { ...PATIO_MONEY, excludes } }));
    for (const sheet of [clientSheet(input), costsSheet(input, false)]) {
      expect(sheet).not.toContain('\u001b');
      expect(linesOf(sheet).filter(line => line.startsWith('Offered for'))).toEqual([]);
    }
  });
});

describe('the client’s sheet', () => {
  test('holds none of the costs behind the price', async () => {
    const input = await pricedPatio();
    const sheet = clientSheet(input);
    for (const word of ['Overhead', 'Margin', 'Markup', 'Contingency', 'hours', 'Deposit', 'Cost'])
      expect(sheet).not.toContain(word);
    const { lines, areas, overhead, profit } = input.costs;
    const shown = new Set(sheet.match(/[\d,]+\.\d\d/g));
    const hidden = [
      ...lines.filter(({ passedOn }) => !passedOn).map(({ cost }) => cost),
      ...areas.flatMap(({ cost, works }) => [cost, ...works.map(work => work.cost)]),
      overhead,
      profit
    ];
    for (const amount of hidden) expect([...shown]).not.toContain(text(amount).replace(/\B(?=(\d{3})+\.)/g, ','));
  });

  test('has lines that come to the price', async () => {
    const input = await pricedPatio();
    const amounts = new Map(
      linesOf(under(clientSheet(input), 'Price\n') + '\n' + clientSheet(input))
        .map(line => /^ {2}( *\S.*?) {2,}([\d,]+\.\d\d)/.exec(line))
        .flatMap(found => (found === null ? [] : [[found[1]!, Number(found[2]!.replaceAll(',', ''))] as const]))
    );
    const of = (words: string): number => amounts.get(words)!;
    const patio = ['Digging and taking away', 'Base', 'Edging', 'Paving'].reduce(
      (sum, each) => sum + of(`  ${each}`),
      0
    );
    expect(patio).toBeCloseTo(of('  patio together'), 9);
    const besides = [...amounts].filter(([words]) =>
      ['  Setting out', '  Permit', '  Downspout', '  Delivery', '  Machines'].some(start => words.startsWith(start))
    );
    expect(besides.length).toBe(5);
    const all = besides.reduce((sum, [, amount]) => sum + amount, of('  patio together'));
    expect(all).toBeCloseTo(of('Price without tax'), 9);
    expect(of('Price without tax') + of('Tax, 7 % of 4,669.28')).toBeCloseTo(of('To pay'), 9);
  });

  test('says nothing of a margin that makes no price', async () => {
    const profit = { way: 'margin' as const, share: { value: 1.2, written: '120 %' } };
    const input = await pricedPatio(all => ({ ...all, money: { ...PATIO_MONEY, profit } }));
    expect(under(clientSheet(input), 'Not priced yet')).not.toContain('argin');
    expect(under(costsSheet(input, false), 'Not priced\n')).toContain('less than all of it');
  });

  test('is whole where everything is priced', async () => {
    const sheet = clientSheet(
      await pricedPatio(all => ({
        ...all,
        ordered: all.ordered.filter(({ lines }) => lines !== undefined),
        tasks: all.tasks.filter(({ hours }) => hours !== undefined)
      }))
    );
    expect(sheet).not.toContain('not the whole price');
    expect(sheet).not.toContain('Not priced');
  });
});

test('what has no numbers is told as not priced', async () => {
  const input = await pricedPatio();
  const quantities = { ...input.numbers.quantities, missing: ['area:side-path'] };
  const broken: QuoteInput = { ...input, numbers: { ...input.numbers, quantities } };
  expect(under(clientSheet(broken), 'Not priced yet')).toContain('- side-path: not measured yet');
});

test('money in a working stands as it was written, or in hundredths', async () => {
  const input = await pricedPatio(all => ({
    ...all,
    money: { ...PATIO_MONEY, extras: [extra('Permit', money('1250'))] }
  }));
  const sheet = costsSheet(input, true).replaceAll(/\n {4,}/g, ' ');
  expect(sheet).toContain('crushed-stone as ordered 285.29 USD');
  expect(sheet).toContain('price of a container 290 USD');
});
