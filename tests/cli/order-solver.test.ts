// The solver of orders ships beside the bundle, and only an order that needs it loads it.
import { copyFileSync, existsSync, mkdirSync } from 'node:fs';
import { spawnSync } from 'node:child_process';
import path from 'node:path';
import { expect, test } from 'vitest';
import { COUPLED } from '../buying/coupled-job.ts';
import { folder, paving, root } from './run.ts';

test('an order that items share is the cheapest, proven', () => {
  const at = folder({ 'job.paving': COUPLED });
  const { out, code } = paving(['quantities', '--format', 'json', '--as-of', '2026-05-01', 'job.paving'], { cwd: at });
  expect(code).toBe(0);
  const [job] = (JSON.parse(out) as { jobs: { orderCost: object }[] }).jobs;
  expect(job!.orderCost).toMatchObject({ total: '409.00', proven: true });
});

test('without the files of the solver everything else works', () => {
  const at = folder({ 'job.paving': COUPLED });
  const alone = path.join(at, 'alone');
  mkdirSync(alone);
  copyFileSync(path.join(root, 'dist/paving.cjs'), path.join(alone, 'paving.cjs'));
  expect(existsSync(path.join(root, 'dist/highs.wasm'))).toBe(true);
  for (const verb of [['check'], ['quantities']]) {
    const { status } = spawnSync(process.execPath, [path.join(alone, 'paving.cjs'), ...verb, 'job.paving'], {
      cwd: at
    });
    expect(status).toBe(0);
  }
});
