// A job compared with what was committed: the lens, the commands, the panel's tab, the older text.
import type Mocha from 'mocha';
import * as vscode from 'vscode';
import { becomes, closeAll, lenses, open, type } from './editing.ts';
import { same, soon } from './expect.ts';
import { bytesOf, inFolder, write } from './folder.ts';

// A browser has no git.
const isBrowser = 'importScripts' in globalThis;

const spec = 'history/drive.paving';
const lensSinceHead = async (document: vscode.TextDocument) =>
  (await lenses(document)).find(lens => lens.includes('since HEAD')) ?? 'none';
const tabs = () => vscode.window.tabGroups.all.flatMap(group => group.tabs.map(({ label }) => label));

/** Its figures are there, and with them what could be told since HEAD. */
async function opened(): Promise<vscode.TextDocument> {
  const document = await open(spec);
  await soon('the figures of the drive', async () =>
    (await lenses(document)).find(lens => lens.includes(' GBP to pay'))
  );
  return document;
}

export function comparisonTests({ suite, test, teardown }: Mocha.MochaGlobals): void {
  suite('A job compared', () => {
    teardown(closeAll);

    test('has a lens since HEAD once something differs, where git can be asked', async () => {
      const document = await opened();
      same(await lensSinceHead(document), 'none');
      await type(document, 'drive-width  = 4.80 m', 'drive-width  = 5.00 m');
      if (isBrowser) {
        await soon('the wider drive', async () => (await lenses(document)).find(lens => lens.includes('92.01 m2')));
        same(await lensSinceHead(document), 'none');
        return;
      }
      const told = await soon('the lens since HEAD', async () => {
        const found = await lensSinceHead(document);
        return found === 'none' ? undefined : found;
      });
      same(/: since HEAD: \+2\.11 m2, 1 cut more, \+\d+\.\d\d GBP, 1 finding appeared$/.test(told), true);
      await type(document, 'drive-width  = 5.00 m', 'drive-width  = 4.80 m');
      await becomes('the lens since HEAD', () => lensSinceHead(document), 'none');
    });

    test('opens in a panel beside the text, once for the same two texts', async () => {
      const document = await opened();
      const count = () => tabs().filter(label => label === 'drive.paving since HEAD').length;
      await vscode.commands.executeCommand('paving.compareWithHead', document.uri.toString());
      await becomes('tabs of the comparison', count, 1);
      await vscode.commands.executeCommand('paving.compareWithHead', document.uri);
      await becomes('tabs of the comparison', count, 1);
    });

    test('of a text that is not there any more opens no text', async () => {
      const query = JSON.stringify({
        folder: inFolder('history').toString(),
        commit: '0'.repeat(40),
        path: 'x.paving'
      });
      const uri = vscode.Uri.from({ scheme: 'paving-older', path: '/HEAD x.paving', query });
      const failed = await vscode.workspace.openTextDocument(uri).then(
        () => 'opened',
        () => 'refused'
      );
      same(failed, 'refused');
    });

    test('a file that was never committed has no lens, and none that lies under no version control', async () => {
      const text = new TextDecoder().decode(await vscode.workspace.fs.readFile(inFolder(spec)));
      for (const name of ['history/new.paving', 'samples/drive-again.paving']) {
        await write(name, bytesOf(text));
        const document = await open(name);
        await soon('its figures', async () => (await lenses(document)).find(lens => lens.includes(' GBP')));
        same(await lensSinceHead(document), 'none');
      }
    });
  });
}
