// A new job from a few answers: given with the command, or by the dialog's own keys.
import type Mocha from 'mocha';
import * as vscode from 'vscode';
import { becomes, closeAll, findings, lenses } from './editing.ts';
import { same, soon } from './expect.ts';
import { bytesOf, inFolder, write } from './folder.ts';

const newJob = (answers?: object) => vscode.commands.executeCommand('paving.newJob', answers);
const press = (command: string) => vscode.commands.executeCommand(command);

/** The new text that stands open, by its name. */
const opened = () => vscode.window.activeTextEditor?.document;
const nameOf = (document?: vscode.TextDocument) => document?.uri.path.split('/').at(-1);

const lensOf = async (document: vscode.TextDocument) =>
  (await lenses(document)).some(text => text.startsWith('patio: 192.00 sq ft'));

async function remove(...names: string[]): Promise<void> {
  for (const name of names) await vscode.workspace.fs.delete(inFolder(name)).then(undefined, () => undefined);
}

export function newJobTests({ suite, test, teardown }: Mocha.MochaGlobals): void {
  suite('A new job', () => {
    teardown(async () => {
      await press('workbench.action.closeQuickOpen');
      await press('notifications.clearAll');
      await closeAll();
      await remove('patio.paving', 'patio-2.paving', 'drive.paving', 'drive-2.paving');
    });

    test('stands open as a file, without findings, with the cursor on what is measured first', async () => {
      await newJob({ country: 'north-america', size: '12 by 16 ft' });
      const document = opened()!;
      same([nameOf(document), document.languageId, document.isDirty], ['patio.paving', 'paving', false]);
      same(document.getText(vscode.window.activeTextEditor!.selection), '5 in');
      same(document.lineAt(vscode.window.activeTextEditor!.selection.start).text.includes('topsoil'), true);
      await becomes('lens of the patio', () => lensOf(document), true);
      same(findings(document), []);
    });

    test('is a file in the folder, and the next one gets another name', async () => {
      await newJob({ traffic: 'cars', country: 'britain', near: 'garage' });
      const first = opened()!;
      await newJob({ traffic: 'cars' });
      same([nameOf(first), nameOf(opened())], ['drive.paving', 'drive-2.paving']);
      same(new TextDecoder().decode(await vscode.workspace.fs.readFile(inFolder('drive.paving'))), first.getText());
    });

    test('is not undone by undoing what was typed in it', async () => {
      await newJob({});
      const document = opened()!;
      const text = document.getText();
      await press('deleteLeft');
      same(document.getText() === text, false);
      for (let times = 0; times < 5; times++) await press('undo');
      same(document.getText(), text);
    });

    test('never takes the name of a file that is there', async () => {
      await write('patio.paving', bytesOf('// mine\n'));
      await newJob({});
      same(nameOf(opened()), 'patio-2.paving');
      same(new TextDecoder().decode(await vscode.workspace.fs.readFile(inFolder('patio.paving'))), '// mine\n');
    });

    test('with an answer that can’t be taken opens nothing', async () => {
      await newJob({ size: '12' });
      same(opened() === undefined, true);
    });

    test('comes of the dialog by the Enter key alone', async () => {
      const asked = newJob();
      await soon('the new text', async () => {
        await press('workbench.action.acceptSelectedQuickOpenItem');
        return opened();
      });
      await asked;
      same([nameOf(opened()), findings(opened()!)], ['patio.paving', []]);
    });

    test('left half way opens nothing', async () => {
      let isOver = false;
      const asked = Promise.resolve(newJob()).then(() => (isOver = true));
      await press('workbench.action.acceptSelectedQuickOpenItem');
      await soon('the dialog is left', async () => {
        await press('workbench.action.closeQuickOpen');
        return isOver || undefined;
      });
      await asked;
      same(opened() === undefined, true);
    });

    test('is offered among new files and in the list of commands', async () => {
      same((await vscode.commands.getCommands(true)).includes('paving.newJob'), true);
      const { contributes } = vscode.extensions.getExtension('paving-job-spec.paving-job-spec')!.packageJSON as {
        contributes: {
          commands: { command: string; title: string; category: string }[];
          menus: Record<string, { command: string }[]>;
        };
      };
      same(
        contributes.menus['file/newFile']?.map(({ command }) => command),
        ['paving.newJob']
      );
      const { title, category } = contributes.commands.find(({ command }) => command === 'paving.newJob')!;
      same([title, category], ['New job…', 'Paving']);
    });
  });
}
