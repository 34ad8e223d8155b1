// A patio and a path under way: invented, each change small enough to work out by hand.
import { describe, expect, test } from 'vitest';
import type { Comparison } from '../../language/comparing/contract.ts';
import type { Bought, BuiltPart } from '../../language/comparing/under-way/contract.ts';
import { asText, compared, read } from './compared.ts';

const JOB = `job "Yard" {
  rules    britain
  show     metric
  currency EUR
  crew     2, Monday to Friday, 8 h a day
  labour   30 EUR per hour
  hire     "Plate" 50 EUR a day, for base
  tax      20 %
}
site { soil sand }
unit flag { size 400 x 400 x 40 mm, pack 10 }
unit brick { size 200 x 100 x 60 mm }
material kerb { role edging, size 1000 x 50 x 150 mm, concrete 200 x 100 mm below }
price flag { pack of 10 for 60 EUR }
price kerb { piece for 5 EUR }
area patio {
  outline rectangle 6 x 4 m
  traffic foot
  paving  flag in stack-bond
  bed     sharp-sand 30 mm
  base    type-1 100 mm
  joints  filled with kiln-dried-sand
  edges   { the rest meets lawn, edging kerb }
}
area path {
  outline rectangle 2 x 5 m, corner (20, 0) m
  traffic foot
  paving  brick in running-bond
  bed     sharp-sand 30 mm
  base    type-1 100 mm
  edges   { the rest meets lawn, edging kerb }
}
log {
  2026-04-01 done dig of patio and path
  2026-04-02 done edging of patio
  2026-04-03 done base of patio
  2026-04-03 delivered flag 20 pack, batch "A-1"
}
`;

const change = (from: string, to: string, text = JOB): string => {
  expect(text, `${from} stands in the text`).toContain(from);
  return text.replaceAll(from, to);
};

const to = (newer: string): Promise<Comparison> => compared({ 'job.paving': JOB }, { 'job.paving': newer });

const part = ({ underWay }: Comparison, stage: BuiltPart['stage'], name = 'patio'): BuiltPart | undefined =>
  underWay?.built.find(one => one.stage === stage && one.name === name);

const bought = ({ underWay }: Comparison, item: string): Bought | undefined =>
  underWay?.bought.find(one => one.item === item);

const rounded = (value: number | undefined): number => Math.round((value ?? 0) * 1000) / 1000;

describe('a job under way', () => {
  test('the job that all of this is about has no error', async () => {
    const { evaluation } = await read({ 'job.paving': JOB });
    expect(evaluation.findings.filter(({ severity }) => severity === 'error')).toEqual([]);
  });

  test('a log that tells nothing, and a change of nothing, say nothing', async () => {
    const [start] = JOB.split('log {');
    const fresh = await compared({ 'job.paving': start! }, { 'job.paving': change('6 x 4 m', '6 x 5 m', start) });
    expect(fresh.underWay).toBeUndefined();
    expect((await to(JOB)).underWay).toBeUndefined();
  });

  test('a patio made longer: what is built stays, one side of the kerb comes out', async () => {
    const longer = await to(change('6 x 4 m', '7 x 4 m'));
    const kerb = part(longer, 'edging')!.amounts[0]!;
    // Near, far and left stay where they are; the right side moves by a metre.
    expect([kerb.built, kerb.stays, kerb.comesOut, kerb.toBuild].map(rounded)).toEqual([20, 16, 4, 6]);
    expect(part(longer, 'edging')!.out).toEqual([{ shape: 'straight', length: 4, pieces: 4 }]);
    const base = part(longer, 'base')!.amounts[0]!;
    expect(base.comesOut).toBe(0);
    expect(base.toBuild).toBeCloseTo(
      longer.numbers.find(({ id }) => id === 'areas/area:patio/layers/base/area')!.after!.value - base.built,
      9
    );
    expect(part(longer, 'paving')).toBeUndefined();
  });

  test('a patio made shorter: what lies outside comes out, and flags are left over', async () => {
    const shorter = await to(change('6 x 4 m', '3 x 4 m'));
    const base = part(shorter, 'base')!.amounts[0]!;
    expect(base.toBuild).toBe(0);
    expect(base.stays + base.comesOut).toBeCloseTo(base.built, 9);
    expect(base.comesOut).toBeGreaterThan(12);
    const flags = bought(shorter, 'flag')!;
    expect(flags.have).toBe(200);
    expect(flags.over).toBe(flags.have - flags.wanted);
    expect(flags.over).toBeGreaterThan(0);
    expect(asText(shorter)).toContain('Built, and taken out');
  });

  test('a thicker base and another stone are made otherwise, a thinner one is not', async () => {
    const becauseOf = async (newer: string): Promise<readonly string[]> => part(await to(newer), 'base')!.because;
    const [patio, path] = JOB.split('area path');
    const inPatio = (from: string, now: string): string => `${change(from, now, patio)}area path${path}`;
    expect(await becauseOf(inPatio('type-1 100 mm', 'type-1 150 mm'))).toEqual([
      'is 100 mm thick, and 150 mm is wanted'
    ]);
    expect(await becauseOf(inPatio('type-1 100 mm', 'type-1 75 mm'))).toEqual([]);
    expect(await becauseOf(inPatio('type-1 100 mm', 'crushed-stone 100 mm'))).toEqual([
      'is type-1, and crushed-stone is wanted'
    ]);
    // A thicker bed under the same finish: the base lies too high for it.
    expect(await becauseOf(inPatio('sharp-sand 30 mm', 'sharp-sand 40 mm'))).toEqual(['lies up to 10 mm too high']);
  });

  test('an area renamed is the one that was built', async () => {
    const renamed = await to(change('patio', 'terrace', change('type-1 100 mm', 'type-1 90 mm')));
    expect(part(renamed, 'base', 'terrace')!.amounts[0]).toMatchObject({ comesOut: 0, toBuild: 0 });
    expect(part(renamed, 'edging', 'terrace')!.amounts[0]).toMatchObject({ comesOut: 0, toBuild: 0 });
  });

  test('an area given up comes out whole; ground that another area takes over stays', async () => {
    const [, path] = JOB.split('area path');
    const start = JOB.slice(0, JOB.indexOf('area patio'));
    const noPatio = `${start}area path${path}`.replace(/ {2}.*of patio\n/g, '').replace('patio and path', 'path');
    const gone = await to(noPatio);
    expect(part(gone, 'base')!.amounts[0]).toMatchObject({ stays: 0, toBuild: 0 });
    expect(part(gone, 'base')!.amounts[0]!.comesOut).toBeCloseTo(part(gone, 'base')!.amounts[0]!.built, 9);
    // Two areas on the ground of one, built alike: all stays.
    const halves = JOB.replace('rectangle 6 x 4 m', 'rectangle 3 x 4 m')
      .replace(
        'area path',
        `area other {
  outline rectangle 3 x 4 m, corner (3, 0) m
  traffic foot
  paving  flag in stack-bond
  bed     sharp-sand 30 mm
  base    type-1 100 mm
  edges   { left meets patio  the rest meets lawn, edging kerb }
}
area path`
      )
      .replace(
        'edges   { the rest meets lawn, edging kerb }',
        'edges   { right meets other  the rest meets lawn, edging kerb }'
      );
    const split = await to(halves);
    const base = part(split, 'base')!.amounts[0]!;
    expect(base.stays).toBeCloseTo(base.built, 3);
    const kerb = part(split, 'edging')!.amounts[0]!;
    expect([kerb.stays, kerb.comesOut].map(rounded)).toEqual([20, 0]);
  });

  test('hired once more by the day, priced with tax, and parts come to the whole', async () => {
    const longer = await to(change('6 x 4 m', '7 x 4 m'));
    const { again, price } = longer.underWay!;
    expect(again.hires).toEqual([{ title: 'Plate', days: 1, cost: '50.00' }]);
    const hired = price!.lines.find(({ id }) => id === 'again')!;
    expect(hired).toEqual({ id: 'again', costs: '50.00', price: '50.00', tax: '10.00', toPay: '60.00' });
    // Four metres of kerb at 5 EUR, their concrete without a price, and the hours it took to set them.
    const lost = price!.lines.find(({ id }) => id === 'lost')!;
    expect(Number(lost.costs)).toBeGreaterThan(20);
    expect(asText(longer)).toContain('no rate tells its hours');
  });

  test('goods that are there and not wanted any more are paid for all the same', async () => {
    // 200 flags there, 150 wanted, 75 wanted now: half of what was wanted, at 6 EUR each.
    const shorter = await to(change('6 x 4 m', '3 x 4 m'));
    const flags = bought(shorter, 'flag')!;
    expect([flags.wantedBefore, flags.wanted, flags.noLongerWanted]).toEqual([150, 75, 75]);
    const goods = shorter.underWay!.price!.lines.find(({ id }) => id === 'goods')!;
    expect(Number(goods.costs)).toBeGreaterThanOrEqual(75 * 6);
    // Another unit: none of the flags is wanted, and the new one has to be bought.
    const other = await to(change('flag in stack-bond', 'brick in running-bond'));
    expect(bought(other, 'flag')).toMatchObject({ wanted: 0, over: 200, noLongerWanted: 150 });
    expect(bought(other, 'brick')!.toBuy).toBeGreaterThan(1000);
    expect(other.underWay!.price!.unpriced).toEqual(['brick', 'kiln-dried-sand']);
    expect(asText(other, true)).toContain(
      'This is not the whole change: there is no price for brick and kiln-dried-sand.'
    );
    expect(asText(other, true)).not.toContain('Accepted');
  });

  test('a unit of the same name and another size is not the one that was delivered', async () => {
    const other = await to(change('400 x 400 x 40 mm', '400 x 400 x 50 mm'));
    const rows = other.underWay!.bought.filter(({ item }) => item === 'flag');
    expect(rows.map(({ isAsItWas, have, wanted, toBuy }) => [isAsItWas, have, wanted, toBuy])).toEqual([
      [true, 200, 0, 0],
      [undefined, 0, 150, 150]
    ]);
    expect(asText(other)).toContain('flag, as it was');
  });

  test('the spoil of a new dig takes a load of its own, and spent loads are not saved', async () => {
    const withLoads = JOB.replace(
      '  tax      20 %\n',
      '  truck-load 8 t\n  disposal 200 EUR per load\n  tax      20 %\n'
    );
    const between = (newer: string): Promise<Comparison> =>
      compared({ 'job.paving': withLoads }, { 'job.paving': newer });
    const again = (comparison: Comparison, id: string): number =>
      Number(comparison.underWay!.price!.lines.find(one => one.id === id)?.costs ?? 0);
    const little = await between(change('6 x 4 m', '6.2 x 4 m', withLoads));
    // A plate for a day, 50 EUR, and one load, whether or not it fits into the last one.
    const loads = little.money.find(({ id }) => id === 'costs') === undefined ? 0 : again(little, 'again');
    expect([50, 250]).toContain(loads);
    const less = await between(change('6 x 4 m', '2 x 4 m', withLoads));
    expect(again(less, 'spent')).toBeGreaterThanOrEqual(200);
  });

  test('cloth under a deeper dig comes up, and ground dug in vain has to be filled', async () => {
    const [patio, path] = JOB.split('area path');
    const cloth = `${patio!.replace('  joints  filled', '  geotextile separation-cloth\n  joints  filled')}area path${path}`;
    const deeper = cloth.replace('type-1 100 mm', 'type-1 150 mm');
    const comparison = await compared({ 'job.paving': cloth }, { 'job.paving': deeper });
    expect(part(comparison, 'geotextile')!.because).toEqual(['lies up to 50 mm too high']);
    const shorter = await to(change('6 x 4 m', '3 x 4 m'));
    expect(asText(shorter)).toContain('Filling what was dug in vain');
  });

  test('more of a unit is of another batch, in the packs that it is sold in', async () => {
    const longer = await to(change('6 x 4 m', '9 x 4 m'));
    const flags = bought(longer, 'flag')!;
    expect(flags.otherThanBatches).toEqual(['A-1']);
    // 225 flags of 400 mm, 200 there: three packs of ten.
    expect(flags.toBuy).toBe(25);
    expect(flags.packs).toEqual([{ count: 3, pack: 'pack of 10', amount: 30 }]);
  });
});
