// The quantities in the side bar, through what a person can copy out of them.
import type Mocha from 'mocha';
import * as vscode from 'vscode';
import { becomes, closeAll, open, type } from './editing.ts';
import { same, soon } from './expect.ts';
import { inFolder } from './folder.ts';

const press = (command: string, ...given: unknown[]) => vscode.commands.executeCommand(command, ...given);

/** What a command has put on the clipboard; nothing where it left it alone. */
async function copied(command: string, ...given: unknown[]): Promise<string> {
  await vscode.env.clipboard.writeText('');
  await press(command, ...given);
  return vscode.env.clipboard.readText();
}

const copiedAll = () => copied('paving.copyAllAsTable');
const paved = async () => /\tPaved\t([^\t\n]+)/.exec(await copiedAll())?.[1] ?? 'nothing';

/** The rows follow the text in front, so this waits until those of a job stand there. */
const rowsOf = (title: string) =>
  soon(`the rows of ${title}`, async () =>
    (await copied('paving.copyTable', 'job')).includes(title) ? true : undefined
  );

export function quantitiesViewTests({ suite, test, teardown, setup }: Mocha.MochaGlobals): void {
  suite('The quantities', () => {
    setup(() => press('paving.quantities.focus'));
    teardown(closeAll);

    test('are copied as a table, all of them or a row with all in it', async () => {
      await open('samples/first-job.paving');
      await rowsOf('First patio');
      const all = (await copiedAll()).split('\n');
      same(all[0], 'In\tWhat\tNumber\tValue');
      same(all.includes('\tFirst patio\tPaved\t192.00 sq ft'), true);
      same((await copied('paving.copyTable', { id: 'area:patio/layers' })).split('\n'), [
        'What\tThickness\tLayer area\tCompacted volume\tLoose volume\tMass',
        'bed, washed-sand\t1 in\t192.00 sq ft\t16.00 cu ft\t18.53 cu ft\t0.88 short tons',
        'base, crushed-stone\t6 in\t214.50 sq ft\t3.97 cu yd\t4.97 cu yd\t7.51 short tons'
      ]);
      same(await copied('paving.copyTable', 'area:gone'), '');
    });

    test('follow what is typed, and say of what is from before an error that it is', async () => {
      const text = new TextDecoder().decode(await vscode.workspace.fs.readFile(inFolder('samples/first-job.paving')));
      const document = await open('typed-quantities.paving', text);
      await becomes('what is paved', paved, '192.00 sq ft');
      await type(document, 'rectangle 12 x 16 ft', 'rectangle 14 x 16 ft');
      await becomes('what is paved', paved, '224.00 sq ft');
      await rowsOf('First patio');
      await type(document, 'rectangle 14 x 16 ft', 'rectangle 14 x');
      const line = document.positionAt(document.getText().indexOf('rectangle 14 x')).line + 1;
      await becomes(
        'the layers as they were',
        async () =>
          (await copied('paving.copyTable', 'area:patio/layers'))
            .split('\n')
            .slice(1)
            .map(row => row.split('\t').at(-1)),
        [`before the error in line ${line}`, `before the error in line ${line}`]
      );
    });

    test('stay on the job while a file that it uses or another text is in front, and follow another job', async () => {
      await open('samples/square/square.paving');
      await rowsOf('Market square');
      await open('samples/square/merchant.paving');
      await becomes('the job of the used file', async () => (await copiedAll()).includes('\tMarket square\t'), true);
      await open('notes.txt', 'Ask about the kerb.');
      await becomes('the job shown last', async () => (await copiedAll()).includes('\tMarket square\t'), true);
      await open('samples/first-job.paving');
      await rowsOf('First patio');
      await becomes('the job in front', async () => (await copiedAll()).includes('\tMarket square\t'), false);
    });

    test('lead to the text', async () => {
      const document = await open('samples/first-job.paving');
      const at = document.positionAt(document.getText().indexOf('crushed-stone 6 in'));
      await press('paving.openQuantity', { uri: document.uri.toString(), range: { start: at, end: at } });
      const editor = vscode.window.activeTextEditor!;
      same([editor.document.uri.path, editor.selection.active.line], [document.uri.path, at.line]);
    });

    test('are none where no job is open', async () => {
      await open('samples/first-job.paving');
      await rowsOf('First patio');
      await closeAll();
      await becomes('the table of all', copiedAll, '');
      await press('notifications.clearAll');
    });
  });
}
