// Loaded by the extension host, the one on Node and the one in the browser alike.
import 'mocha/mocha.js';
import type Mocha from 'mocha';
import * as vscode from 'vscode';
import { comparisonTests } from './comparison.ts';
import { completionTests } from './completion.ts';
import { editTests } from './edits.ts';
import { extensionTests } from './extension.ts';
import { soon } from './expect.ts';
import { bytesOf, inFolder } from './folder.ts';
import { gettingAboutTests } from './getting-about.ts';
import { jobTests } from './jobs.ts';
import { planTests } from './plan.ts';
import { wordTests } from './words.ts';
import { rewriteTests } from './rewrites.ts';
import { ruleTests } from './rules.ts';
import { newJobTests } from './new-job.ts';
import { quantitiesViewTests } from './quantities-view.ts';
import { surroundingsTests } from './surroundings.ts';

export interface TestResult {
  readonly title: string;
  readonly failure?: string;
}

export async function run(): Promise<void> {
  // The host in a browser may be ready before its folders are; and what was found is written where they were at first.
  // An editor that starts for the first time on a slow machine takes its time.
  const resultsFile = await soon(
    'the folders are open',
    () => (vscode.workspace.workspaceFolders?.length ? inFolder('results.json') : undefined),
    60
  );
  const { Mocha } = globalThis as unknown as { Mocha: new (options: Mocha.MochaOptions) => Mocha };
  // This reporter only counts: the others write to a page or to a terminal, and neither is here.
  const mocha = new Mocha({ ui: 'tdd', timeout: 60_000, reporter: 'base' });
  const words = {} as Mocha.MochaGlobals;
  mocha.suite.emit('pre-require', words, '', mocha);
  extensionTests(words);
  jobTests(words);
  wordTests(words);
  completionTests(words);
  gettingAboutTests(words);
  rewriteTests(words);
  ruleTests(words);
  newJobTests(words);
  surroundingsTests(words);
  editTests(words);
  comparisonTests(words);
  planTests(words);
  quantitiesViewTests(words);

  const results: TestResult[] = [];
  await new Promise(resolve => {
    mocha
      .run(resolve)
      .on('pass', test => results.push({ title: test.fullTitle() }))
      .on('fail', (test, error: Error) =>
        results.push({ title: test.fullTitle(), failure: error.stack ?? error.message })
      );
  });
  await vscode.workspace.fs.writeFile(resultsFile, bytesOf(JSON.stringify(results)));
}
