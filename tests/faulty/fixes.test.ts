import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { badlyFixed, fixed } from './fix-checks.ts';
import { evaluate, FOLDER, SPECS } from './specs.ts';

describe.each(SPECS)('$name', ({ file }) => {
  it('loses each finding by each of its fixes, and gets no other', async () => {
    const before = await evaluate(file);
    const odd: string[] = [];
    for (const finding of before.findings)
      for (const fix of finding.fixes) {
        const changed = [...fixed(before, fix)].map(([shown, text]) => [path.join(FOLDER, shown), text] as const);
        odd.push(...badlyFixed(finding, fix, before, await evaluate(file, new Map(changed))));
      }
    expect(odd).toEqual([]);
  });
});

it('a fix that leaves its finding with other figures, or makes it of another thing, is told', async () => {
  const before = await evaluate(SPECS.find(({ name }) => name === 'base-too-thin.paving')!.file);
  const finding = before.findings.find(({ id }) => id === 'base-too-thin')!;
  const fix = { title: 'Do so', safe: false, edits: [] };
  const mended = { ...before, findings: before.findings.filter(other => other !== finding) };
  expect(badlyFixed(finding, fix, before, mended)).toEqual([]);
  const thinner = { ...finding, message: finding.message.replace(/\d+/, '99') };
  const elsewhere = { ...finding, target: 'layer:elsewhere/1' };
  for (const other of [thinner, elsewhere])
    expect(badlyFixed(finding, fix, before, { ...mended, findings: [...mended.findings, other] })).toEqual([
      `base-too-thin, Do so: adds base-too-thin: ${other.message}`
    ]);
});
