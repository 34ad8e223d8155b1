// Variants: the same job with some statements put otherwise, worked out beside it.
import { describe, expect, test } from 'vitest';
import { drain, type Evaluation, Paving } from '../../language/paving.ts';
import type { VariantEvaluation } from '../../language/variants.ts';
import { variantJson } from '../../language/views/json/variants-json.ts';
import { columnOf } from '../../language/views/variant-rows.ts';
import { variantsText } from '../../language/views/text/variants-text.ts';
import { occurrencesIn } from '../../language/lowering/occurrences.ts';
import { inMemory } from '../language/in-memory.ts';
import { DRIVE, PERMEABLE } from './permeable.ts';

interface Tried {
  readonly paving: Paving;
  readonly written: Required<Evaluation>;
  readonly variants: readonly VariantEvaluation[];
}

async function tried(text: string, others: Readonly<Record<string, string>> = {}): Promise<Tried> {
  const paving = new Paving(inMemory({ ...others, 'job.paving': text }));
  await paving.load('job.paving');
  const written = drain(paving.evaluate('job.paving')) as Required<Evaluation>;
  return { paving, written, variants: drain(paving.variants('job.paving')) };
}

/** The job as one would have written it in the variant's stead. */
async function alone(text: string): Promise<Required<Evaluation>> {
  return (await tried(text)).written;
}

const BY_HAND = DRIVE.replace('bed sharp-sand 30 mm', 'bed grit-2-6 50 mm')
  .replace('base type-1 250 mm', 'base open-graded-stone 300 mm')
  .replace('filled with kiln-dried-sand', 'filled with grit-2-6\n  geotextile')
  .replace(/drain garage-channel \{[^}]*\}/, 'side-kind garage-channel { ground closed, holds paving }');

describe('a variant', () => {
  test('comes to what the job would, were it written so', async () => {
    const { written, variants } = await tried(DRIVE + PERMEABLE);
    const byHand = await alone(BY_HAND);
    expect(variants.map(({ name }) => name)).toEqual(['permeable']);
    expect(variants[0]!.evaluation.numbers!.quantities).toEqual(byHand.numbers.quantities);
    const ids = (findings: Evaluation['findings']): string[] =>
      findings.filter(({ id }) => id !== 'never-used').map(({ id }) => id);
    expect(ids(variants[0]!.findings)).toEqual(ids(byHand.findings));
    expect(written.findings.filter(({ severity }) => severity === 'error')).toEqual([]);
  });

  test('leaves the job itself as it is', async () => {
    const { written } = await tried(DRIVE + PERMEABLE);
    const { numbers, job } = await alone(DRIVE);
    expect(written.numbers.quantities).toEqual(numbers.quantities);
    expect(written.job).toEqual(job);
  });

  test('may change what another file declares, and add what is not there', async () => {
    const at = DRIVE.indexOf('site {');
    const text = `${DRIVE.slice(0, at)}use "shared.paving"\n${PERMEABLE}`;
    const { variants } = await tried(text, { 'shared.paving': DRIVE.slice(at) });
    const [area] = variants[0]!.evaluation.numbers!.quantities.areas;
    expect(area!.layers.map(({ material, thickness }) => [material, thickness])).toEqual([
      ['grit-2-6', 0.05],
      ['open-graded-stone', 0.3]
    ]);
    expect(area!.geotextile?.area).toBeCloseTo(41.6, 9);
  });

  test('may be of other units or another bond, with its cuts', async () => {
    const variant = `unit slab { size 400 x 400 x 60 mm }
variant slabs { area drive { paving slab in running-bond, joints 4 mm } }
`;
    const { written, variants } = await tried(DRIVE + variant);
    const laid = variants[0]!.evaluation.numbers!.quantities.units;
    expect(laid.map(({ unit }) => unit)).toEqual(['slab']);
    expect(laid[0]!.cut).not.toBe(written.numbers.quantities.units[0]!.cut);
  });

  test('may be bought otherwise: its price stands instead of all prices of the thing', async () => {
    const variant = `variant by-pallet { price block-red { pallet of 400 for 180 GBP } }\n`;
    const { written, variants } = await tried(DRIVE + variant);
    const packs = ({ numbers }: Evaluation): string[] =>
      numbers!.quantities.order!.filter(({ item }) => item === 'block-red').map(({ pack }) => pack);
    expect(packs(written)).toEqual(['piece']);
    expect(packs(variants[0]!.evaluation)).toEqual(['pallet of 400']);
    expect(variants[0]!.evaluation.numbers!.quantities.areas).toEqual(written.numbers.quantities.areas);
  });

  test('knows nothing of others', async () => {
    const one = 'variant one { area drive { base type-1 300 mm } }\n';
    const other = 'variant other { area drive { bed sharp-sand 40 mm } }\n';
    const { variants } = await tried(DRIVE + one + other);
    const layers = variants.map(({ evaluation }) =>
      evaluation.numbers!.quantities.areas[0]!.layers.map(({ thickness }) => thickness)
    );
    expect(layers).toEqual([
      [0.03, 0.3],
      [0.04, 0.25]
    ]);
  });
});

describe('what is wrong in a variant', () => {
  test('is told in its place, and breaks nothing else', async () => {
    const { written, variants } = await tried(`${DRIVE}variant bad { area drive { base typ-1 300 mm } }\n${PERMEABLE}`);
    const { numbers, findings } = await alone(DRIVE + PERMEABLE);
    const more = written.findings.filter(({ message }) => !findings.some(other => other.message === message));
    expect(more.map(({ id, line, column }) => [id, line, column])).toEqual([
      ['unknown-name', DRIVE.split('\n').length, 'variant bad { area drive { base '.length + 1]
    ]);
    expect(written.numbers.quantities).toEqual(numbers.quantities);
    expect(variants.map(({ name, evaluation }) => [name, evaluation.numbers!.quantities.complete])).toEqual([
      ['bad', false],
      ['permeable', true]
    ]);
  });

  test('and one whose braces are not closed takes no area of the job with it', async () => {
    const broken = 'variant bad {\n  area drive {\n    base type-1 300 mm\n';
    for (const text of [broken + DRIVE.slice(DRIVE.indexOf('area drive')), broken + PERMEABLE]) {
      const head = text.includes('outline') ? DRIVE.slice(0, DRIVE.indexOf('area drive')) : DRIVE;
      const { written, variants } = await tried(head + text);
      expect(new Set(written.findings.filter(({ severity }) => severity === 'error').map(({ id }) => id))).toEqual(
        new Set(['brace-not-closed'])
      );
      expect(written.numbers.quantities.areas.length).toBe(1);
      expect(variants.map(({ name }) => name)).toEqual(text.includes('permeable') ? ['permeable'] : []);
    }
  });

  test('what a variant alone takes is used', async () => {
    const { written } = await tried(DRIVE + PERMEABLE);
    expect(written.findings.filter(({ id }) => id === 'never-used')).toEqual([]);
    const { findings } = await alone(DRIVE);
    expect(findings.filter(({ id }) => id === 'never-used').map(({ target }) => target)).toEqual(['material:grit-2-6']);
  });
});

test('names in a variant lead to what they name', async () => {
  const { paving } = await tried(DRIVE + PERMEABLE);
  const { text, project } = paving.look('job.paving')!;
  const from = DRIVE.length;
  const led = occurrencesIn(text, project)
    .filter(({ start }) => start >= from)
    .map(({ name, declared, isDeclaration }) => `${name}: ${isDeclaration ? 'declared' : declared?.kind}`);
  expect(led).toEqual([
    'permeable: declared',
    'drive: area',
    'grit-2-6: material',
    'open-graded-stone: material',
    'grit-2-6: material',
    'garage-channel: drain'
  ]);
});

test('side by side: what differs, cost, price, days, findings', async () => {
  const { paving, written, variants } = await tried(DRIVE + PERMEABLE);
  const priced = drain(paving.priced(written))!;
  const same = (words: string): string => words;
  const colours = { strong: same, faint: same, error: same, warning: same, note: same };
  const columns = variants.map(columnOf);
  const column = { name: 'as written', numbers: written.numbers, findings: written.findings, priced };
  const shown = variantsText(column, columns, 'metric', colours).join('\n');
  await expect(`${shown}\n`).toMatchFileSnapshot('golden/variants.txt');
});

test('in the JSON: the same keys where they differ, of the areas those that do', async () => {
  const second = `area path {
  outline rectangle 1 x 4 m, corner (8, 0) m
  traffic foot
  finish 10.000 m
  paving block-red in herringbone-90, joints 3 mm
  bed sharp-sand 30 mm
  base type-1 150 mm
  edges { the rest meets garden-wall }
}
`;
  const { written, variants } = await tried(DRIVE + second + PERMEABLE);
  const { quantities } = written.numbers;
  const { id, name, areas, findings, ...others } = variantJson(variants[0]!, quantities, []);
  expect([id, name]).toEqual(['variant:permeable', 'permeable']);
  expect(areas!.map(area => area.name)).toEqual(['drive']);
  expect(findings!.length).toBe(variants[0]!.findings.length);
  const all = variants[0]!.evaluation.numbers!.quantities;
  for (const key of Object.keys(all) as (keyof typeof all)[]) {
    if (key === 'areas' || key === 'id') continue;
    const differs = JSON.stringify(all[key]) !== JSON.stringify(quantities[key]);
    expect(key in others, key).toBe(differs);
  }
});

test('a second look works nothing out, and what is gone is let go', async () => {
  const { paving } = await tried(DRIVE + PERMEABLE);
  drain(paving.variants('job.paving'));
  const before = { ...paving.session.computations };
  drain(paving.variants('job.paving'));
  expect(paving.session.computations).toEqual(before);
  paving.setText('job.paving', DRIVE);
  drain(paving.evaluate('job.paving'));
  expect(drain(paving.variants('job.paving'))).toEqual([]);
  const fresh = await tried(DRIVE);
  expect(paving.session.size).toBe(fresh.paving.session.size);
});

test('variants are read once for a text, and of the texts those alone in which something differs', async () => {
  const at = DRIVE.indexOf('area drive');
  const prices = 'price type-1 { loose for 20 GBP per tonne }\n';
  const job = `use "prices.paving"\n${DRIVE}${PERMEABLE}`;
  const { paving } = await tried(job, { 'prices.paving': prices });
  const read = paving.parses;
  for (const look of [1, 2, 3]) {
    drain(paving.evaluate('job.paving'));
    drain(paving.variants('job.paving'));
    expect(paving.parses - read, `look ${look}`).toBe(0);
  }
  paving.setText('job.paving', `${job.slice(0, at)}// a note\n${job.slice(at)}`);
  drain(paving.evaluate('job.paving'));
  // The text itself, and as the variant has it; of the prices nothing.
  expect(paving.parses - read).toBe(2);
});
