// The live plan's tab: beside the text, one for each job.
import type Mocha from 'mocha';
import * as vscode from 'vscode';
import { becomes, closeAll, open } from './editing.ts';

const tabs = () => vscode.window.tabGroups.all.flatMap(group => group.tabs.map(({ label }) => label));
const plans = () => tabs().filter(label => label.startsWith('Plan of '));

export function planTests({ suite, test, teardown }: Mocha.MochaGlobals): void {
  suite('The live plan', () => {
    teardown(closeAll);

    test('opens beside the text, once for each job', async () => {
      const document = await open('samples/terrace.paving');
      await vscode.commands.executeCommand('paving.showPlan');
      await becomes('plans', plans, ['Plan of terrace.paving']);
      await vscode.commands.executeCommand('paving.showPlan', document.uri);
      await becomes('plans', plans, ['Plan of terrace.paving']);
      const [text, plan] = vscode.window.tabGroups.all.map(({ tabs: inGroup }) => inGroup.map(({ label }) => label));
      await becomes('beside', () => [text, plan], [['terrace.paving'], ['Plan of terrace.paving']]);
    });

    test('stands once more for another job, and neither takes the place of the other', async () => {
      const first = await open('samples/path.paving');
      await vscode.commands.executeCommand('paving.showPlan', first.uri);
      const second = await open('samples/drive.paving');
      await vscode.commands.executeCommand('paving.showPlan', second.uri);
      await becomes('plans', () => plans().sort(), ['Plan of drive.paving', 'Plan of path.paving']);
    });
  });
}
