// The editor tests: the suite in both extension hosts, then what a person sees, all on the installed package.
import { build } from 'esbuild';
import { chmodSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { runTests } from '@vscode/test-electron';
import { checkAsSeen } from './as-seen.ts';
import { checkCompared } from './compared.ts';
import { checkFirstJob } from './first-job.ts';
import { checkLivePlan } from './live-plan.ts';
import { checkPasted } from './pasted.ts';
import { checkPlanPage } from './plan-page.ts';
import { installBrowser, installEditor } from './host/install.ts';
import { installExtension } from './host/install-extension.ts';
import { withJobFolder, workspaceOf } from './host/job-folder.ts';
import { places, root } from './host/places.ts';
import type { TestResult } from './suite/index.ts';

const results: TestResult[] = [];

mkdirSync(places.served, { recursive: true });
mkdirSync(places.results, { recursive: true });
mkdirSync(places.screenshots, { recursive: true });
installEditor();
await installBrowser();
const installed = installExtension();
results.push(packageIsClean());
await bundleForHosts();
results.push(...(await suiteIn('node')), ...(await suiteIn('web')));
results.push(...(await checkAsSeen(installed)), ...(await checkPasted(installed)), ...(await checkFirstJob(installed)));
results.push(...(await checkCompared(installed)), ...(await checkPlanPage(installed)));
results.push(...(await checkLivePlan(installed)));

for (const { title, failure } of results)
  console.log(failure === undefined ? `  ok      ${title}` : `  FAILED  ${title}\n${failure}`);
const failed = results.filter(({ failure }) => failure !== undefined).length;
const counts = { passed: results.length - failed, failed };
writeFileSync(path.join(places.results, 'editor.json'), JSON.stringify(counts));
console.log(`Editor: ${counts.passed} passed, ${counts.failed} failed`);
if (failed > 0) process.exitCode = 1;

function packageIsClean(): TestResult {
  const title = 'package: only bundles, pages and what the editor reads';
  const files = readdirSync(installed.extension, { recursive: true, encoding: 'utf8' });
  const unwanted = files.filter(file =>
    /(^|\/)node_modules(\/|$)|\.m?ts$|\.map$|^(language|server|tests|samples)(\/|$)/.test(file)
  );
  const wanted = ['package.json', 'package.nls.json', 'dist/extension.cjs', 'dist/extension-web.js', 'dist/pages'];
  const panel = ['panel.js', 'panel.css', 'plan.js', 'plan.css'].map(name => `dist/panel/${name}`);
  const missing = [...wanted, ...panel, 'dist/bin/paving.cmd'].filter(file => !files.includes(file));
  const launcher = statSync(path.join(installed.extension, 'dist/bin/paving'), { throwIfNoEntry: false });
  if (!((launcher?.mode ?? 0) & 0o100)) missing.push('dist/bin/paving that may be run');
  if (unwanted.length + missing.length === 0) return { title };
  return { title, failure: `not wanted: ${unwanted.join(', ')}; missing: ${missing.join(', ')}` };
}

/** One bundle is loaded by both hosts; the other is the program that stands for a desktop editor. */
async function bundleForHosts(): Promise<void> {
  const common = { bundle: true, absWorkingDir: root, logLevel: 'warning', sourcemap: 'inline' } as const;
  await build({
    ...common,
    entryPoints: ['tests/editor/suite/index.ts'],
    outfile: places.suite,
    format: 'cjs',
    platform: 'browser',
    external: ['vscode']
  });
  await build({
    ...common,
    entryPoints: ['tests/editor/host/program.ts'],
    outfile: places.program,
    format: 'esm',
    platform: 'node',
    packages: 'external',
    banner: { js: '#!/usr/bin/env node' }
  });
  chmodSync(places.program, 0o755);
}

async function suiteIn(host: 'node' | 'web'): Promise<TestResult[]> {
  return withJobFolder(async folder => {
    let failure: unknown;
    try {
      await runTests({
        vscodeExecutablePath: places.program,
        extensionDevelopmentPath: installed.extension,
        extensionTestsPath: places.suite,
        launchArgs: [workspaceOf(folder), ...(host === 'web' ? ['--extensionDevelopmentKind=web'] : [])]
      });
    } catch (error) {
      failure = error;
    }
    const inHost = (test: TestResult) => ({ ...test, title: `${host} host: ${test.title}` });
    try {
      const text = readFileSync(path.join(folder, 'results.json'), 'utf8');
      const found = JSON.parse(text) as TestResult[];
      if (found.length === 0) throw new Error('The suite has no tests.');
      return found.map(inHost);
    } catch {
      return [inHost({ title: 'the suite runs to its end', failure: String(failure ?? 'It left no results.') })];
    }
  });
}
