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
