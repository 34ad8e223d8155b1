// Everything that must hold: `npm test`. Every step runs, also after one that failed; the last line adds the tests up.
import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { root } from './bundles.mjs';

const results = path.join(root, '.cache/results');
rmSync(results, { recursive: true, force: true });
mkdirSync(results, { recursive: true });

const vitestReport = path.join(results, 'unit.json');
const steps = [
  { name: 'Build and package', run: ['npm', 'run', '--silent', 'package'] },
  { name: 'Types', run: ['npm', 'run', '--silent', 'typecheck'] },
  { name: 'Lint', run: ['npm', 'run', '--silent', 'lint'] },
  { name: 'Format', run: ['npm', 'run', '--silent', 'format:check'] },
  { name: 'Unused code', run: ['npm', 'run', '--silent', 'unused'] },
  {
    name: 'Tests',
    run: [
      'npm',
      'run',
      '--silent',
      'test:unit',
      '--',
      '--reporter=default',
      '--reporter=json',
      `--outputFile.json=${vitestReport}`
    ],
    counts() {
      const { numPassedTests, numFailedTests } = JSON.parse(readFileSync(vitestReport, 'utf8'));
      return { passed: numPassedTests, failed: numFailedTests };
    }
  },
  {
    name: 'Editor tests',
    run: ['node', '.config/run.mjs', 'tests/editor/run.ts'],
    counts: () => JSON.parse(readFileSync(path.join(results, 'editor.json'), 'utf8'))
  }
];

const total = { passed: 0, failed: 0 };
for (const { name, run, counts } of steps) {
  console.log(`\n== ${name}`);
  const [program, ...given] = run;
  const ok = spawnSync(program, given, { cwd: root, stdio: 'inherit' }).status === 0;
  const { passed, failed } = countsOf(counts);
  total.passed += passed;
  // A step can fail without a failed test: a check, or tests that could not even start.
  total.failed += ok ? failed : Math.max(failed, 1);
  if (!ok) console.log(`== ${name}: failed`);
}

const line = `${total.passed} passed, ${total.failed} failed`;
writeFileSync(path.join(results, 'total'), `${line}\n`);
console.log(`\nTotal: ${line}`);
process.exitCode = total.failed === 0 ? 0 : 1;

function countsOf(counts) {
  try {
    return counts?.() ?? { passed: 0, failed: 0 };
  } catch {
    return { passed: 0, failed: 0 };
  }
}
