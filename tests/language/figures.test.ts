// What the editor shows of cost, days and things to buy: above the job, and under the pointer marked ‸.
import { expect, test, describe } from 'vitest';
import { hoverAt, isVariantAt } from '../../language/editing/hover.ts';
import { drain, Paving } from '../../language/paving.ts';
import { lensesIn } from '../../language/views/lenses.ts';
import { COUPLED } from '../buying/coupled-job.ts';
import { withCursor } from '../cursor.ts';
import { inMemory } from './in-memory.ts';

/** Flags lie in a grid of half a metre: 48 of them. Of stone there are 12 m2 by 100 mm at 2.2 t/m3. */
const JOB = `job "Patio" {
  rules    britain
  currency GBP
  crew     2, Monday to Friday, 8 h a day
  begins   on 2026-04-13
  hire     "Plate" 45 GBP a week, for base
  overhead 10 %
  tax      20 %
  task     "Soakaway" 6 h, after dig, before base
}
site { soil clay, benchmark sill, ground level with sill }
supplier merchant { tax added, delivery 30 GBP a load, load 10 t }
unit flag { size 495 x 495 x 50 mm }
material quarry-stone { role base, compacted 2.2 t/m3, loose 1.76 t/m3, loss 5 % }
price flag from merchant {
  piece for 3 GBP
  pack of 10 for 25 GBP
}
price quarry-stone from merchant { loose for 20 GBP per tonne, in steps of 0.5 t }
stock 8 flag
area patio {
  outline rectangle 4 x 3 m
  traffic foot
  finish  level with sill
  paving  flag in stack-bond, joints 5 mm
  bed     sharp-sand 40 mm
  base    quarry-stone 100 mm
  edges   { all round meets house-wall }
}
variant thick { area patio { base quarry-stone 200 mm } }
`;

class Editor {
  readonly paving: Paving;

  constructor(text = JOB, others: Readonly<Record<string, string>> = {}) {
    this.paving = new Paving(inMemory({ ...others, 'job.paving': text }));
  }

  async lenses(text?: string): Promise<string[]> {
    if (text !== undefined) this.paving.setText('job.paving', text);
    await this.paving.load('job.paving');
    const evaluation = drain(this.paving.evaluate('job.paving'))!;
    const figures = drain(this.paving.figures(evaluation));
    const line = evaluation.places.get('job')?.line;
    const lenses = lensesIn(evaluation, 'job.paving', figures);
    return lenses.filter(({ place }) => place.line === line).map(({ text: title }) => title);
  }

  /** In the job with a mark in it, or in another file that it uses. */
  async hover(marked: string, file = 'job.paving'): Promise<string> {
    const { text, start } = withCursor(marked);
    this.paving.setText(file, text);
    await this.paving.load('job.paving');
    const evaluation = drain(this.paving.evaluate('job.paving'))!;
    const figures = drain(this.paving.figures(evaluation))!;
    const look = this.paving.look(file)!;
    const variants = isVariantAt(look, start) ? drain(this.paving.variants('job.paving')) : [];
    return hoverAt(look, start, { evaluation, file, figures, variants })?.markdown ?? '';
  }
}

const at = (words: string): string => JOB.replace(words.replace('‸', ''), words);

describe('Above the job', () => {
  test('stand its price, what has none, and its days', async () => {
    // 4 packs and no flag for 40 are 100.00; 2.772 t are 3.0 t for 60.00; a load 30.00; the plate for a week 45.00: 235.00.
    expect((await new Editor().lenses()).slice(1)).toEqual([
      expect.stringMatching(/^258\.50 GBP without tax · 310\.20 GBP to pay · without \d+ prices$/),
      expect.stringMatching(/^\d+ days, Mon 2026-04-13 to [A-Z][a-z]{2} 2026-\d\d-\d\d$/)
    ]);
  });

  test('costs are no price, and goods are not all costs', async () => {
    const untaxed = JOB.replace(/ {2}tax .*\n/, '');
    expect((await new Editor(untaxed).lenses())[1]).toMatch(/^price 258\.50 GBP · without /);
    const costs = untaxed.replace(/ {2}overhead .*\n/, '');
    expect((await new Editor(costs).lenses())[1]).toMatch(/^costs 235\.00 GBP · without /);
    const goods = costs.replace(/ {2}hire .*\n/, '');
    expect((await new Editor(goods).lenses())[1]).toMatch(/^goods and delivery 190\.00 GBP · without /);
  });

  test('nothing is told of money and days where nobody told any', async () => {
    const bare = JOB.replace(/ {2}(crew|begins|hire|overhead|tax|task) .*\n/g, '').replace(/^price [^}]*\}\n/gm, '');
    expect(await new Editor(bare).lenses()).toHaveLength(1);
  });

  test('what is left counts from what was done, the price does not', async () => {
    const log = (words: string): string => `${JOB}log {\n  2026-04-14 ${words}\n}\n`;
    const [, cost, days] = await new Editor(log('done dig of patio')).lenses();
    expect(cost).toMatch(/^258\.50 GBP without tax/);
    expect(days).toMatch(/^\d+ days? left, to [A-Z][a-z]{2} 2026-04-\d\d$/);
  });

  test('a broken text keeps the last good figures, with the line of its error', async () => {
    const editor = new Editor();
    const [, cost, days] = await editor.lenses();
    const broken = JOB.replace('4 x 3 m', '4 x');
    const [what, ...others] = await editor.lenses(broken);
    expect(what).toBe('no numbers while there are errors');
    expect(others).toEqual([cost, days].map(line => `before the error in line 22: ${line!}`));
    expect((await editor.lenses(JOB.replace('3 GBP', '3')))[1]).toBe(`before the error in line 16: ${cost!}`);
    expect((await editor.lenses(JOB)).slice(1)).toEqual([cost, days]);
    // Never sound so far: what there is, and that it is not all.
    expect((await new Editor(JOB.replace('3 GBP', '3')).lenses())[1]).toMatch(/ · not complete$/);
  });

  test('without the solver an order that may not be the cheapest says so', async () => {
    expect((await new Editor(COUPLED).lenses())[1]).toMatch(
      /^goods and delivery 453\.00 USD .*cheapest order not proven$/
    );
    expect(await new Editor(COUPLED).hover(COUPLED.replace('material stone', 'material ‸stone'))).toContain(
      'Whether another order costs less is not settled here; `paving order` searches longer.'
    );
  });
});

describe('Under the pointer', () => {
  test('a material tells where it goes, what is needed, what to buy and what is left over', async () => {
    const told = await new Editor().hover(at('material ‸quarry-stone'));
    expect(told.split('\n\n---\n\n')[0]).toBe(
      [
        '**quarry-stone** for Patio',
        '|  |  |\n|:--|--:|\n| Base of patio | 2.64 t |\n| Used | 2.64 t |\n| For loss | 132 kg |\n| Wanted | 2.77 t |\n| To buy | 2.77 t |',
        '| Sold as | Buy | That is | Left over | Cost |\n|:--|--:|--:|--:|--:|\n| loose, merchant |  | 3.00 t | 228 kg | 60.00 GBP |'
      ].join('\n\n')
    );
  });

  test.each(['unit ‸flag', 'price ‸flag', 'stock 8 ‸flag', 'paving  ‸flag'])('at %s', async words => {
    const told = await new Editor().hover(at(words));
    expect(told).toContain('| Wanted | 48 pieces |\n| On hand | 8 pieces |\n| To buy | 40 pieces |');
    expect(told).toContain('| pack of 10, merchant | 4 | 40 pieces | 0 pieces | 100.00 GBP |');
  });

  test('a price list that jobs share tells of the job that uses it', async () => {
    const [price] = /^price flag [^}]*\}\n/m.exec(JOB)!;
    const job = JOB.replace(price, 'use "prices.paving"\n').replace(/^supplier .*\n/m, '');
    const [supplier] = /^supplier .*\n/m.exec(JOB)!;
    const prices = supplier + price;
    const editor = new Editor(job, { 'prices.paving': prices });
    await editor.lenses();
    expect(await editor.hover(prices.replace('price flag', 'price ‸flag'), 'prices.paving')).toMatch(
      /^\*\*flag\*\* for Patio\n[^]*\| To buy \| 40 pieces \|/
    );
  });

  test('a supplier tells loads, goods and delivery', async () => {
    const told = await new Editor().hover(at('supplier ‸merchant'));
    expect(told).toContain(
      '| flag | 4 | pack of 10 | 40 pieces | 100.00 GBP |\n| quarry-stone |  | loose | 3.00 t | 60.00 GBP |'
    );
    expect(told).toContain('| Goods | 160.00 GBP |\n| Loads | 1 |');
    expect(told).toContain('| Delivery | 30.00 GBP |');
  });

  test('a way to sell tells how much is bought so, or what it would cost', async () => {
    expect(await new Editor().hover(at('‸pack of 10'))).toMatch(
      /^\*\*flag, pack of 10\*\* for Patio\n\nTo buy: 4 of them, 40 pieces, nothing left over, for 100\.00 GBP\.\n\n---/
    );
    expect(await new Editor().hover(at('‸piece for'))).toMatch(
      /None to buy\. All of it bought so would be 40 of them, nothing left over, for 120\.00 GBP\./
    );
  });

  test('a task tells hours and days, what is hired its days, tasks and cost', async () => {
    expect(await new Editor().hover(at('"‸Soakaway"'))).toMatch(
      /^\*\*Soakaway\*\* for Patio\n\n.*\n.*\n\| Hours of one person \| 6\.0 \|\n\| When \| [A-Z][a-z]{2} 2026-04-\d\d/
    );
    expect(await new Editor().hover(at('"‸Plate"'))).toMatch(
      /\| Days with work for it \| \d \|\n\| For \| .*base.* \|\n(?:.*\n)?\| Cost \| 45\.00 GBP \|/
    );
  });

  test('a variant stands beside the job as it is written', async () => {
    const told = await new Editor().hover(at('variant ‸thick'));
    expect(told).toMatch(/^\*\*thick\*\*\n\n\| {2}\| as written \| thick \|/);
    expect(told).toContain('| quarry-stone as base, mass | 2.64 t | 5.28 t |');
    // 5.544 t are 6.0 t for 120.00: 60.00 more, and a tenth of it.
    expect(told).toContain('| Price without tax | 258.50 GBP \\* | 324.50 GBP \\* |');
  });

  test('in a broken text the figures are those from before it', async () => {
    const editor = new Editor();
    await editor.lenses();
    const told = await editor.hover(at('material ‸quarry-stone').replace('4 x 3 m', '4 x'));
    expect(told).toMatch(/^\*\*quarry-stone\*\* for Patio, before the error in line 22\n[^]*\| To buy \| 2\.77 t \|/);
  });
});

describe('What is held', () => {
  const work = async (editor: Editor, ask: () => Promise<unknown>): Promise<Record<string, number>> => {
    const before = editor.paving.session.computations;
    await ask();
    const more = Object.entries(editor.paving.session.computations).map(([stage, count]): [string, number] => [
      stage,
      count - before[stage as keyof typeof before]
    ]);
    return Object.fromEntries(more.filter(([, count]) => count > 0));
  };
  const DELIVERED = `${JOB}log {\n  2026-04-14 delivered flag 10\n  2026-04-15 done dig of patio\n}\n`;

  test.each([
    ['nothing delivered', JOB],
    ['some of it delivered', DELIVERED]
  ])('%s: lens and hover work nothing out twice', async (_, text) => {
    const editor = new Editor(text);
    await editor.lenses();
    const marked = text.replace('unit flag', 'unit ‸flag');
    expect(await work(editor, () => editor.hover(marked))).toEqual({});
    expect(await work(editor, () => editor.lenses())).toEqual({});
    const variant = text.replace('variant thick', 'variant ‸thick');
    await editor.hover(variant);
    expect(await work(editor, () => editor.hover(variant))).toEqual({});
  });

  test('an edit that touches no price works the order out at most once', async () => {
    const editor = new Editor();
    await editor.lenses();
    expect(await work(editor, () => editor.lenses(`${JOB}// Seen by the neighbour.\n`))).toEqual({});
    expect(await work(editor, () => editor.lenses(JOB.replace('2, Monday', '1, Monday')))).toEqual({
      schedule: 1,
      price: 1
    });
    const thicker = await work(editor, () =>
      editor.lenses(JOB.replace('base    quarry-stone 100', 'base    quarry-stone 110'))
    );
    expect(thicker).toMatchObject({ layers: 1, order: 1, schedule: 1, price: 1 });
    const dearer = await work(editor, () =>
      editor.lenses(
        JOB.replace('base    quarry-stone 100', 'base    quarry-stone 110').replace('20 GBP per', '21 GBP per')
      )
    );
    expect(dearer).toMatchObject({ order: 1 });
    expect(dearer.layers).toBeUndefined();
  });

  test('the price of all of it, and the order of what is left: nothing is laid or dug twice', async () => {
    const editor = new Editor(DELIVERED);
    const all = await work(editor, () => editor.lenses());
    expect(all).toMatchObject({ outline: 1, laying: 1, layers: 1, order: 2, schedule: 2, price: 1 });
    // Another delivery changes what is left, not the price.
    const more = await work(editor, () => editor.lenses(DELIVERED.replace('flag 10', 'flag 20')));
    expect(more).toMatchObject({ order: 1 });
    expect(more.layers).toBeUndefined();
  });

  test('a file let go is let go whole', async () => {
    const editor = new Editor(DELIVERED);
    await editor.lenses();
    await editor.hover(DELIVERED.replace('variant thick', 'variant ‸thick'));
    editor.paving.forget('job.paving');
    expect(editor.paving.session.size).toBe(0);
  });
});
