// A drive half built, when its turning place is made 800 mm wider and its corners rounder. The expected values were worked
// by hand from the shapes: an area loses (1 - pi/4) r2 at each rounded corner, a quarter circle is pi r / 2 long.
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Comparison } from '../../language/comparing/contract.ts';
import type { BuiltPart } from '../../language/comparing/under-way/contract.ts';
import { minorOf } from '../../language/money/money.ts';
import { asText, compared } from './compared.ts';

const FOLDER = path.join(import.meta.dirname, '../jobs/terrace-and-drive');
const textOf = (file: string): string => readFileSync(path.join(FOLDER, file), 'utf8');
const PRICES = { 'merchant-prices.paving': textOf('merchant-prices.paving') };
const DRIVE = textOf('drive.paving');
const WIDER = DRIVE.replaceAll('at (9.40, ', 'at (10.20, ').replace('rounded 1.20 m', 'rounded 2.00 m');

let change: Comparison;

beforeAll(async () => {
  change = await compared({ ...PRICES, 'job.paving': DRIVE }, { ...PRICES, 'job.paving': WIDER });
});

const number = (id: string): { before: number; after: number } => {
  const found = change.numbers.find(one => one.id === id);
  return { before: found?.before?.value ?? Number.NaN, after: found?.after?.value ?? Number.NaN };
};

const built = (stage: BuiltPart['stage'], area: string): BuiltPart =>
  change.underWay!.built.find(one => one.stage === stage && one.name === area)!;

describe('the turning place of the drive, made wider half-way', () => {
  test('what was edited: two corners and their rounding', () => {
    const edits = change.edits.map(({ label, amount }) => [label, amount!.before.written, amount!.after.written]);
    expect(edits).toEqual([
      ['point T2', '9.40', '10.20'],
      ['point T3', '9.40', '10.20'],
      ['area turning, outline', '1.20 m', '2.00 m']
    ]);
  });

  test('what follows: area 22.48 to 25.78 m2, edging 30.17 to 31.08 m, finish at T2 10.179 to 10.195 m', () => {
    const area = number('areas/area:turning/netArea');
    const corners = (radius: number): number => 2 * (1 - Math.PI / 4) * radius ** 2;
    expect(area.before).toBeCloseTo(4.2 * 5.5 - corners(1.2), 9);
    expect(area.after).toBeCloseTo(5 * 5.5 - corners(2), 9);
    const edging = number('edging/kerb-100/length');
    expect(edging.before).toBeCloseTo(30.17, 2);
    expect(edging.after).toBeCloseTo(31.08, 2);
    const finish = number('areas/area:turning/levels/T2/finish');
    expect(finish.before).toBeCloseTo(10.179, 3);
    expect(finish.after).toBeCloseTo(10.195, 3);
    for (const { causes, id } of change.numbers) expect(causes, id).not.toEqual([]);
  });

  test('of the kerb the straight stays to the last piece, its curve of 1.88 m comes out in seven', () => {
    const kerb = built('edging', 'turning');
    const [length] = kerb.amounts;
    expect(length!.stays).toBeCloseTo(3, 9);
    expect(length!.comesOut).toBeCloseTo((Math.PI / 2) * 1.2, 9);
    expect(kerb.out).toEqual([{ shape: 'curve', length: expect.closeTo(1.885, 3) as number, pieces: 7 }]);
    expect(built('edging', 'drive').amounts[0]).toMatchObject({ comesOut: 0, toBuild: 0 });
  });

  test('kerb set along a side stays set when its corners are called otherwise', async () => {
    const renamed = await compared(
      { ...PRICES, 'job.paving': DRIVE.replace(/^log \{[^]*?^\}/m, '') },
      { ...PRICES, 'job.paving': WIDER.replace(/\bT1\b/g, 'Z1') }
    );
    const kerb = renamed.underWay!.built.find(({ stage, name }) => stage === 'edging' && name === 'turning')!;
    expect(kerb.amounts[0]!.stays).toBeCloseTo(3, 9);
  });

  test('the base stays; 3.53 m2 more are dug and filled with 0.71 m3 of stone', () => {
    // 3.30 of paving, and the strip outside it where there is kerb: 250 mm.
    const base = built('base', 'turning');
    const [area, volume, mass] = base.amounts;
    expect(base.because).toEqual([]);
    expect(area).toMatchObject({ madeOtherwise: 0, comesOut: 0 });
    expect(area!.stays).toBeCloseTo(area!.built, 9);
    expect(area!.toBuild).toBeCloseTo(3.53, 2);
    expect(volume!.toBuild).toBeCloseTo(0.71, 2);
    expect(mass!.toBuild / 1000).toBeCloseTo(1.6, 1);
    expect(built('dig', 'turning').amounts[0]!.toBuild).toBeCloseTo(3.53, 2);
    expect(built('dig', 'drive').amounts.every(({ toBuild }) => toBuild === 0)).toBe(true);
  });

  test('of stone 40 t came and 40.7 are needed; blocks are of another batch', () => {
    const { bought } = change.underWay!;
    const stone = bought.find(({ item }) => item === 'type-1')!;
    expect([stone.have, stone.wanted, stone.toBuy].map(kg => Math.round(kg / 100) / 10)).toEqual([40, 40.7, 0.7]);
    const blocks = bought.find(({ item }) => item === 'block-red')!;
    expect(blocks.have).toBe(9 * 430);
    expect(blocks.otherThanBatches).toEqual(['K-114']);
    expect(blocks.toBuy).toBe(blocks.wanted - blocks.have);
    // Kerb set in concrete is bought again for what is broken out of it.
    expect(bought.find(({ item }) => item === 'kerb-100 for curves')).toMatchObject({ again: 7, isTold: false });
  });

  test('the crew comes back to dig, kerb and stone, and waits three days for the concrete again', () => {
    const { again } = change.underWay!;
    expect(again.tasks.map(({ id }) => id)).toEqual(['locate', 'dig', 'cart-away', 'edging', 'base']);
    expect(again.holds.map(({ text }) => text)).toContain(
      '3 days for the concrete of kerb-100 to set before anything is compacted against it.'
    );
    expect(again.days).toBeGreaterThanOrEqual(1);
    expect(change.days!.after).toBeGreaterThan(change.days!.before);
  });

  test('it is priced at cost and for the client, and the parts come to the whole', () => {
    const { lines, together } = change.underWay!.price!;
    for (const key of ['costs', 'price', 'tax', 'toPay'] as const)
      expect(lines.reduce((sum, line) => sum + minorOf(line[key]), 0n)).toBe(minorOf(together[key]));
    const [whole, lost] = lines;
    const costs = change.money.find(({ id }) => id === 'costs')!;
    expect(minorOf(whole!.costs)).toBe(minorOf(costs.after!) - minorOf(costs.before!));
    // 10 % overhead on the costs, then a margin of 18 % of the price; tax 20 %.
    const price = (Number(lost!.costs) * 1.1) / (1 - 0.18);
    expect(Math.abs(Number(lost!.price) - price)).toBeLessThan(0.02);
    expect(Math.abs(Number(lost!.tax) - price * 0.2)).toBeLessThan(0.02);
  });

  test('the page for both to sign tells no costs', () => {
    const page = asText(change, true);
    expect(page).toContain('Accepted');
    expect(page).toContain('The change together');
    expect(page).toContain('Change, for The household.');
    expect(page).toContain('Not part of this work: Lamps');
    expect(page).toContain('another batch than "K-114"');
    expect(page).not.toMatch(/\bCosts\b|At cost|Findings|Hours|`/);
    expect(asText(change)).toContain('At cost');
  });
});
