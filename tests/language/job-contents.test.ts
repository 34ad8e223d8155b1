// What a job holds, as rows for a list: the numbers are those of the JSON, what is old is marked, and any row is a table.
import { describe, expect, test } from 'vitest';
import { printAs, type PrintStyle } from '../../language/measures/print.ts';
import { drain, Paving, type Evaluation } from '../../language/paving.ts';
import { type ContentRow, rowWith, shownValue } from '../../language/views/job-contents/content-row.ts';
import { jobContents } from '../../language/views/job-contents/job-contents.ts';
import { tableOf } from '../../language/views/job-contents/table-of-row.ts';
import { quantitiesJson } from '../../language/views/json/quantities-json.ts';
import { evaluated, JOBS, newPaving } from '../samples/samples.ts';
import { PATIO } from '../server/patio.ts';
import { inMemory } from './in-memory.ts';
import { seeded } from './seeded.ts';

/** Keeps its language, so that what was there before is known while a text is broken. */
class Editor {
  readonly paving: Paving;

  constructor(texts: Readonly<Record<string, string>>) {
    this.paving = new Paving(inMemory(texts));
  }

  async evaluation(text?: string, file = 'job.paving'): Promise<Evaluation> {
    if (text !== undefined) this.paving.setText(file, text);
    await this.paving.load('job.paving');
    return drain(this.paving.evaluate('job.paving'))!;
  }

  async rows(text?: string, file?: string): Promise<ContentRow | undefined> {
    return contentsOf(this.paving, await this.evaluation(text, file));
  }
}

function contentsOf(paving: Paving, evaluation: Evaluation): ContentRow | undefined {
  return jobContents(evaluation, drain(paving.figures(evaluation)));
}

async function sample(file: string): Promise<{ readonly evaluation: Evaluation; readonly row: ContentRow }> {
  const paving = newPaving();
  const evaluation = await evaluated(file, paving);
  return { evaluation, row: contentsOf(paving, evaluation)! };
}

function allIn(row: ContentRow): ContentRow[] {
  return [row, ...row.inside.flatMap(allIn)];
}

const value = (row: ContentRow | undefined, id: string): string | undefined => {
  const found = row && rowWith(row, id);
  return found && shownValue(found);
};

/** What stands directly in a row: `Layers: 2`. */
const lines = (row: ContentRow | undefined, id: string): string[] =>
  rowWith(row!, id)!.inside.map(each => `${each.label}: ${shownValue(each)}`);

describe('The rows of a job', () => {
  test('first-job, by its printed quantities', async () => {
    const { row } = await sample('first-job.paving');
    expect(lines(row, 'job')).toEqual([
      'Paved: 192.00 sq ft',
      'To dig: 5.63 cu yd',
      'Areas: 1',
      'To buy: 6',
      'Findings: none',
      expect.stringMatching(/^Schedule: \d+\.\d hours of one person$/),
      'Local codes and licensed practice stand over everything here.: '
    ]);
    expect(value(row, 'area:patio')).toBe('192.00 sq ft · 102 whole, 12 cut · dig 8 1/2 in deep');
    expect(lines(row, 'area:patio/layers')).toEqual([
      'bed, washed-sand: 1 in · 16.00 cu ft · 0.88 short tons',
      'base, crushed-stone: 6 in · 3.97 cu yd · 7.51 short tons'
    ]);
    expect(lines(row, 'area:patio/edges/right')).toEqual([
      'Meets: lawn',
      'Edging: spiked-strip',
      'Length: 16 ft',
      'Base past the units: 6 in'
    ]);
    expect(lines(row, 'area:patio/edging/spiked-strip')).toEqual(['Edging length: 44 ft', 'Spikes: 45']);
    expect(value(row, 'order/unit:slab-16')).toBe('111 pieces');
    expect(value(row, 'schedule#crew')).toBe('1 person, Monday to Friday, 8 h a day, assumed');
  });

  test('terrace: cost, days, boxes, gates, order, findings and days with their tasks', async () => {
    const { row } = await sample('terrace.paving');
    expect(value(row, 'job#cost')).toMatch(/^costs [\d,]+\.\d\d USD/);
    expect(value(row, 'job#days')).toBe('9 days left, to Sun 2026-06-07');
    expect(value(row, 'box:shut-off')).toBe('raise the lid by 7/8 in');
    expect(value(row, 'gate:side-gate')).toBe('clears by 5/8 in');
    expect(value(row, 'gate:garden-door')).toBe('step of 3 in up to the sill');
    expect(value(row, 'order')).toBe('1,510.33 USD');
    expect(lines(row, 'order').slice(0, 3)).toEqual([
      'slab-18: 11 × piece, 76.45 USD',
      'slab-18: 3 × pack layer of 12, 237.00 USD',
      'slab-18: 2 × pallet of 72, 864.00 USD'
    ]);
    expect(lines(row, 'order').at(-1)).toBe('Delivery from gravel-yard: 1 load, 65.00 USD');
    expect(value(row, 'findings')).toBe('4 notes, 1 finding set aside');
    expect(allIn(rowWith(row, 'findings')!).filter(({ kind }) => kind === 'note')).toHaveLength(4);
    const days = rowWith(row, 'schedule')!.inside.filter(({ kind }) => kind === 'day');
    expect(days[0]!.label).toBe('Sun 2026-05-10');
    expect(days[0]!.inside.map(task => `${task.label}: ${shownValue(task)}`)).toEqual([
      'Set lids to the finish: shut-off and clean-out: 3.0 h',
      'Screed the bed: washed-sand 1 in: 3.1 h, to Sun 2026-05-24'
    ]);
    // Three lengths of one side, and heights at 35 places, of which those along the sides are left to the level sheet.
    expect(
      rowWith(row, 'area:terrace/edges')!
        .inside.map(({ id }) => id)
        .slice(-2)
    ).toEqual(['area:terrace/edges/E to A (2)', 'area:terrace/edges/E to A (3)']);
    expect(value(row, 'area:terrace/levels')).toBe('16 of 35');
  });

  test.each(['first-job.paving', 'terrace.paving', 'square/square.paving'])(
    '%s has the numbers of its JSON, in its own measures',
    async file => {
      const { evaluation, row } = await sample(file);
      const { job, numbers, findings, places } = evaluation;
      const print = (style: PrintStyle, amount: number): string => printAs(style, amount, job!.system);
      const input = { numbers: numbers!, findings, placeOf: (key: string) => places.get(key)! };
      const json = quantitiesJson({ tool: '', asOf: '', files: [], jobs: [input] }).jobs[0]!;
      expect(json.areas.length).toBe(rowWith(row, 'areas')!.inside.length);
      expect(value(row, 'job#paved')).toBe(print('area', json.totals.netArea));
      expect(value(row, 'job#dig')).toBe(print('stone-volume', json.dig.bankVolume));
      for (const area of json.areas) {
        expect(value(row, `${area.id}#netArea`)).toBe(print('area', area.netArea));
        expect(value(row, `${area.id}/dig#deepest`)).toBe(print('thickness', area.dig.deepest));
        expect(value(row, `${area.id}/dig#bankVolume`)).toBe(print('stone-volume', area.dig.bankVolume));
        for (const layer of area.layers) {
          const id = `${area.id}/layers/${layer.role}`;
          const volume = print(layer.role === 'bed' ? 'sand-volume' : 'stone-volume', layer.compactedVolume);
          expect(value(row, `${id}#thickness`)).toBe(print('thickness', layer.thickness));
          expect(value(row, `${id}#compactedVolume`)).toBe(volume);
          expect(value(row, `${id}#mass`)).toBe(print('mass', layer.mass!));
        }
        for (const { unit, whole, cut, unitsUsed } of area.laying!) {
          expect(value(row, `${area.id}/units/${unit}#whole`)).toBe(print('count', whole));
          expect(value(row, `${area.id}/units/${unit}#cut`)).toBe(print('count', cut));
          expect(value(row, `${area.id}/units/${unit}#unitsUsed`)).toBe(print('count', unitsUsed!));
        }
        const lengths = rowWith(row, `${area.id}/edges`)!.inside.map(({ id }) => value(row, `${id}#length`));
        expect(lengths).toEqual(area.edges.map(({ length }) => print('length', length)));
      }
      for (const { id, sold, count, cost } of (json.order ?? []).filter(({ pack }) => pack !== 'loose')) {
        expect(value(row, `order/${id}/${sold}#Buy`)).toBe(print('count', count));
        expect(value(row, `order/${id}/${sold}#Cost, ${json.orderCost!.currency}`)?.replaceAll(',', '')).toBe(cost);
      }
      const told = allIn(rowWith(row, 'findings')!).filter(({ place }) => place !== undefined);
      expect(told.map(({ label }) => label).sort()).toEqual(json.findings.map(({ message }) => message).sort());
    }
  );

  test.each(JOBS)('%s: no two rows have one id, and each place lies in its texts', async file => {
    const { evaluation, row } = await sample(file);
    const rows = allIn(row);
    const ids = rows.map(({ id }) => id);
    expect(rows.length).toBeGreaterThan(40);
    expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual([]);
    const texts = new Map(evaluation.texts.map(({ file: name, text }) => [name, text.split('\n').length]));
    const places = rows.flatMap(({ place }) => (place === undefined ? [] : [place]));
    expect(places.length).toBeGreaterThan(30);
    for (const place of places.filter(({ file: name }) => texts.has(name)))
      expect(place.line).toBeLessThanOrEqual(texts.get(place.file)!);
    expect(rows.filter(({ before }) => before !== undefined)).toEqual([]);
  });
});

const TWO = `${PATIO}
area path {
  outline rectangle 1 x 5 m, corner (10 m, 0)
  traffic foot
  finish  level with step
  paving  block in running-bond, joints 3 mm
  bed     sharp-sand 30 mm
  base    type-1 150 mm
  edges   { all round meets house-wall }
}
`;

describe('While the text is broken', () => {
  test('an area and the figures are those from before, each number marked; the rest goes on', async () => {
    const editor = new Editor({ 'job.paving': TWO });
    const sound = await editor.rows();
    expect(lines(sound, 'areas').map(line => line.split(':')[0])).toEqual(['patio', 'path']);
    const broken = (await editor.rows(TWO.replace('3 x 4 m', '3 x')))!;
    const mark = 'before the error in line 8';
    expect(lines(broken, 'areas')).toEqual([
      `patio: ${mark}: ${value(sound, 'area:patio')!}`,
      `path: ${value(sound, 'area:path')!}`
    ]);
    const marked = allIn(rowWith(broken, 'area:patio')!);
    expect(marked.length).toBeGreaterThan(20);
    expect(marked.filter(({ before }) => before !== mark)).toEqual([]);
    expect(allIn(rowWith(broken, 'area:path')!).filter(({ before }) => before !== undefined)).toEqual([]);
    expect(value(broken, 'job')).toMatch(/^5\.00 m2 paved, .* · not complete$/);
    expect(value(broken, 'order')).toBe(`${mark}: ${value(sound, 'order')!}`);
    expect(value(broken, 'findings')).toMatch(/1 error/);
    // Rows that stay keep their ids.
    const ids = new Set(allIn(broken).map(({ id }) => id));
    expect(allIn(sound!).filter(({ id }) => !ids.has(id))).toEqual([]);
    const again = await editor.rows(TWO);
    expect(again).toEqual(sound);
  });

  test('an area that was never sound says where to look, and the figures that they are not of all', async () => {
    const broken = (await new Editor({ 'job.paving': TWO.replace('3 x 4 m', '3 x') }).rows())!;
    expect(value(broken, 'area:patio')).toBe('no numbers: see the error in line 8');
    expect(value(broken, 'order')).toMatch(/ · not complete$/);
    expect(tableOf(rowWith(broken, 'order')!)).toMatch(/^What\tNeeded\tState\n.*\tnot complete\n/);
  });

  test('an error in another file is told with its name', async () => {
    const [unit] = /^unit .*\n/m.exec(TWO)!;
    const editor = new Editor({ 'job.paving': TWO.replace(unit, 'use "units.paving"\n'), 'units.paving': unit });
    expect(value(await editor.rows(), 'area:path')).toMatch(/^5\.00 m2/);
    const broken = await editor.rows(unit.replace('60 mm', '60'), 'units.paving');
    expect(value(broken, 'area:path')).toMatch(/^before the error in line 1 of units\.paving: 5\.00 m2/);
  });

  test('at any cut no area without numbers is told as fresh', async () => {
    const editor = new Editor({ 'job.paving': TWO });
    await editor.rows();
    const next = seeded(7);
    let stale = 0;
    for (let count = 0; count < 40; count++) {
      const at = next(TWO.length);
      const evaluation = await editor.evaluation(TWO.slice(0, at) + TWO.slice(at + next(60)));
      const row = contentsOf(editor.paving, evaluation);
      const fresh = new Set(evaluation.numbers?.quantities.areas.map(({ id }) => id));
      const numbered = (row === undefined ? [] : allIn(row)).filter(({ id }) => /^area:\w+#/.test(id));
      const old = numbered.filter(({ id }) => !fresh.has(id.split('#')[0]!));
      expect(old.filter(({ before }) => before === undefined)).toEqual([]);
      stale += old.length;
    }
    expect(stale).toBeGreaterThan(10);
  });
});

describe('A row as a table', () => {
  test('of layers and of the order: a line each, under heads, with measures', async () => {
    const { row } = await sample('terrace.paving');
    expect(tableOf(rowWith(row, 'area:terrace/layers')!).split('\n')).toEqual([
      'What\tThickness\tLayer area\tCompacted volume\tLoose volume\tMass',
      'bed, washed-sand\t1 in\t423.17 sq ft\t35.26 cu ft\t41.14 cu ft\t1.97 short tons',
      'base, crushed-stone\t8 in\t452.68 sq ft\t11.18 cu yd\t13.90 cu yd\t20.82 short tons'
    ]);
    const [heads, first, ...others] = tableOf(rowWith(row, 'order')!).split('\n');
    expect(heads).toBe('What\tNeeded\tBuy\tSold as\tFrom\tThat is\tLeft over\tWeight\tCost, USD\tLoads');
    expect(first).toBe('slab-18\t191 pieces\t11\tpiece\tgarden-store\t11 pieces\tnone\t594 lb\t76.45\t');
    expect(others).toHaveLength(rowWith(row, 'order')!.inside.length - 1);
  });

  test('of much is a line for each number, behind what it is of', async () => {
    const { row } = await sample('first-job.paving');
    const table = tableOf(row).split('\n');
    expect(table[0]).toBe('In\tWhat\tNumber\tValue');
    expect(table).toContain('Areas, patio, Layers\tbase, crushed-stone\tThickness\t6 in');
    expect(table).toContain('\tFirst patio\tPaved\t192.00 sq ft');
    expect(new Set(table.map(line => line.split('\t').length))).toEqual(new Set([4]));
    const numbers = allIn(row).filter(({ kind }) => kind === 'number');
    expect(table.filter(line => line.split('\t')[2] !== '')).toHaveLength(numbers.length + 1);
  });

  test('of one number is that number', async () => {
    const { row } = await sample('first-job.paving');
    expect(tableOf(rowWith(row, 'area:patio/layers/base#thickness')!)).toBe('What\tValue\nThickness\t6 in');
  });

  test('holds no formula, and no cell that falls into two', async () => {
    const title = '=HYPERLINK(1)\tand 3/4"';
    const job: ContentRow = {
      id: 'job',
      kind: 'job',
      label: title,
      inside: [{ id: 'job#paved', kind: 'number', label: '+1', value: '-3 mm', inside: [] }]
    };
    expect(tableOf(job)).toBe(`What\t'+1\n"'=HYPERLINK(1) and 3/4"""\t'-3 mm`);
    const row = (await new Editor({ 'job.paving': PATIO.replace('Small patio', '=1+1') }).rows())!;
    expect(tableOf(row)).toContain(`\t'=1+1\tPaved\t`);
    expect(tableOf(row)).not.toMatch(/(^|\t)[=+@-]/m);
  });

  test('says of what is old that it is', async () => {
    const editor = new Editor({ 'job.paving': PATIO });
    await editor.rows();
    const broken = (await editor.rows(PATIO.replace('3 x 4 m', '3 x')))!;
    const [heads, ...told] = tableOf(rowWith(broken, 'area:patio/layers')!).split('\n');
    expect(heads).toMatch(/\tState$/);
    expect(told).toHaveLength(2);
    expect(told.filter(line => !line.endsWith('\tbefore the error in line 8'))).toEqual([]);
  });
});
