/* Wherever the cursor stands in a sample: what is offered reads without a new finding, and keeps what it says it keeps. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Rewrite } from '../../language/editing/rewrites/rewrite.ts';
import { sumsIn, type WrittenSum } from '../../language/lowering/sums.ts';
import { drain, type Paving } from '../../language/paving.ts';
import { offeredBy } from '../language/rewriting.ts';
import { FILES, JOBS, newPaving, pathOf, textOf } from './samples.ts';

const SEED = 20260418;
const PLACES = 40;

/** The findings and numbers of a file, and the lengths that are written in it. */
function comesTo(paving: Paving, file: string) {
  const { findings, numbers } = drain(paving.evaluate(pathOf(file)))!;
  const { points: _points, ...quantities } = numbers?.quantities ?? {};
  return {
    findings: findings.map(({ id, target }) => `${id} ${target}`).sort(),
    numbers: rounded(quantities),
    lengths: lengthsIn(paving, file)
  };
}

/**
 * Numbers to a nanometre: sums in another order end in other digits. Sides and corners may have new names, and a pack is
 * called by what it holds as that is written.
 */
function rounded(value: unknown): unknown {
  if (typeof value === 'number') return Number(value.toFixed(9));
  if (Array.isArray(value)) return value.map(rounded);
  if (typeof value !== 'object' || value === null) return value;
  const parts = Object.entries(value).filter(
    ([name, part]) => !['name', 'side', 'pack'].includes(name) && !(name === 'at' && typeof part === 'string')
  );
  return Object.fromEntries(parts.map(([name, part]) => [name, rounded(part)]));
}

/** In m, in the text's order; of brackets with a measure what they come to. */
function lengthsIn(paving: Paving, file: string): number[] {
  const { text, project } = paving.look(pathOf(file))!;
  const leaves = (sum: WrittenSum): WrittenSum[] =>
    sum.form === 'quantity' || sum.measure !== undefined || isBareProduct(sum) ? [sum] : sum.inside.flatMap(leaves);
  return sumsIn(text, project)
    .flatMap(({ sums }) => sums.flatMap(leaves))
    .map(({ amount }) => (amount?.measure === 'm' ? amount.value.valueOf() : 0));
}

/** `9.20 / 2` in a list whose end says the measure. */
function isBareProduct({ form, inside }: WrittenSum): boolean {
  return form === 'times' && inside.every(({ amount }) => amount?.measure !== 'm');
}

/** What a title says of rounding, m, to a tenth of a millimetre. */
function saidRounding({ title }: Rewrite): number {
  const said = /rounded by (?:up to |less than )?([0-9.]+) mm$/.exec(title)?.[1];
  return said === undefined ? 0 : (Number(said) + 0.05) / 1000;
}

/** What a file without a job is for: a job of the samples that uses it. */
async function jobUsing(paving: Paving, file: string): Promise<string | undefined> {
  if (JOBS.includes(file)) return undefined;
  for (const job of JOBS) {
    await paving.load(pathOf(job));
    if (paving.filesOf(pathOf(job)).includes(pathOf(file))) return job;
  }
  return undefined;
}

describe.each(FILES)('%s', file => {
  test('whatever is offered holds', async () => {
    const text = textOf(file);
    const paving = newPaving();
    await paving.load(pathOf(file));
    const job = await jobUsing(paving, file);
    const before = comesTo(paving, file);
    const jobBefore = job === undefined ? undefined : comesTo(paving, job);
    const tried = new Set<string>();
    let checked = 0;
    const check = (rewrite: Rewrite): void => {
      checked++;
      if (tried.has(rewrite.text)) return;
      tried.add(rewrite.text);
      paving.setText(pathOf(file), rewrite.text);
      const after = comesTo(paving, file);
      const jobAfter = job === undefined ? undefined : comesTo(paving, job);
      paving.setText(pathOf(file), text);
      expect(after.findings, rewrite.title).toEqual(before.findings);
      // What is rounded in a file without a job may be told in the job: the file alone can't know.
      if (jobAfter !== undefined && saidRounding(rewrite) === 0) {
        expect(jobAfter.findings, rewrite.title).toEqual(jobBefore!.findings);
        expect(jobAfter.numbers, rewrite.title).toEqual(jobBefore!.numbers);
      }
      if (rewrite.keeps.but?.includes('centre') !== true) {
        expect(after.numbers, rewrite.title).toEqual(before.numbers);
        return;
      }
      expect(after.lengths, rewrite.title).toHaveLength(before.lengths.length);
      after.lengths.forEach((length, index) =>
        expect(Math.abs(length - before.lengths[index]!), rewrite.title).toBeLessThanOrEqual(saidRounding(rewrite))
      );
    };
    fc.assert(
      fc.property(fc.nat(text.length), fc.nat(30), fc.boolean(), (start, more, selects) => {
        const end = selects ? Math.min(text.length, start + more) : start;
        offeredBy(paving, pathOf(file), start, end).forEach(check);
      }),
      { seed: SEED, numRuns: PLACES }
    );
    // Nothing is rewritten in rules.
    expect(checked > 0).toBe(/^(?:area|unit|material|site|price) /m.test(text));
  }, 300_000);
});
