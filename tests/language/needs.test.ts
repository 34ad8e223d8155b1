import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { drain, Paving } from '../../language/paving.ts';
import { inMemory } from './in-memory.ts';

const root = path.resolve(import.meta.dirname, '../..');

/** Every spec of the samples and of the faulty ones, by its path from the project's folder. */
function specs(): Record<string, string> {
  const files = ['samples', 'tests/faulty'].flatMap(folder =>
    readdirSync(path.join(root, folder), { recursive: true, encoding: 'utf8' }).map(name =>
      path.posix.join(folder, name)
    )
  );
  const texts = files.filter(file => file.endsWith('.paving'));
  return Object.fromEntries(texts.map(file => [file, readFileSync(path.join(root, file), 'utf8')]));
}

test('findings are the same whether numbers are wanted or not, and without them no cut piece is nested', async () => {
  const texts = specs();
  const [all, few] = [new Paving(inMemory(texts)), new Paving(inMemory(texts))];
  let found = 0;
  for (const file of Object.keys(texts)) {
    await all.load(file);
    await few.load(file);
    const before = few.session.computations.nesting;
    const [numbers, findings] = [drain(all.evaluate(file))!, drain(few.evaluate(file, 'findings'))!];
    expect(findings.findings, file).toEqual(numbers.findings);
    // Units that were delivered are held against those that are needed, cut pieces and all; what is taken off, against
    // what the whole job costs.
    if (!/\bdelivered\b|\bextra .* -[0-9]/.test(texts[file]!))
      expect(few.session.computations.nesting, file).toBe(before);
    found += findings.findings.length;
  }
  expect(found).toBeGreaterThan(100);
  expect(all.session.computations.nesting).toBeGreaterThan(50);
});
