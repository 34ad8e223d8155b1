// What the extension does in an extension host.
import type Mocha from 'mocha';
import * as vscode from 'vscode';
import { linkToPage } from '../../../extension/pages.ts';
import { readFile } from '../../../extension/read-file.ts';
import { largestFile } from '../../../server/protocol.ts';
import { same, soon } from './expect.ts';
import { bytesOf, folder, inFolder, write } from './folder.ts';

function extension(): vscode.Extension<unknown> {
  const found = vscode.extensions.getExtension('paving-job-spec.paving-job-spec');
  if (!found) throw new Error('The extension is not installed.');
  return found;
}

export function extensionTests({ suite, test }: Mocha.MochaGlobals): void {
  suite('The extension', () => {
    test('starts its language server when a job spec is opened', async () => {
      same(extension().isActive, false);
      const document = await vscode.workspace.openTextDocument(inFolder('small-terrace.paving'));
      same(document.languageId, 'paving');
      await vscode.window.showTextDocument(document);
      // Starting ends only when the server has answered; without an answer the extension does not become active.
      await soon('the extension is active', () => extension().isActive || undefined);
    });

    test('opens the page about a finding, rendered and without a network', async () => {
      const job = inFolder('small-terrace.paving');
      const id = await soon('a finding with a page', () => {
        const linked = vscode.languages
          .getDiagnostics(job)
          .map(({ code }) => (typeof code === 'object' ? code : undefined));
        return linked.find(code => code?.target.scheme === 'command')?.value.toString();
      });
      const page = await vscode.workspace.openTextDocument(vscode.Uri.parse(`paving-page:/${id}.md`));
      same(page.languageId, 'markdown');
      same(page.lineAt(0).text.startsWith('# '), true);
      await vscode.commands.executeCommand('paving.openPage', id);
      await soon('the page is shown', () => {
        const tabs = vscode.window.tabGroups.all.flatMap(group => group.tabs);
        return tabs.find(tab => tab.input instanceof vscode.TabInputWebview && tab.label === `Preview ${id}.md`);
      });
    });

    test('turns the link of a finding into one that opens a page', () => {
      const finding = new vscode.Diagnostic(new vscode.Range(0, 0, 0, 1), 'words');
      finding.code = { value: 'some-id', target: vscode.Uri.parse('paving-page:/some-id') };
      const { code } = linkToPage(finding);
      if (typeof code !== 'object') throw new Error('no link');
      same(code.value, 'some-id');
      same(code.target.toString(true), 'command:paving.openPage?["some-id"]');
    });

    test('leaves other links as they are', () => {
      const finding = new vscode.Diagnostic(new vscode.Range(0, 0, 0, 1), 'words');
      const code = { value: 'some-id', target: vscode.Uri.parse('https://example.org/') };
      finding.code = code;
      same(linkToPage(finding).code === code, true);
    });
  });

  suite('Reading a used file for the server', () => {
    const read = (name: string) => readFile(inFolder(name), folder());

    test('gives the text of a file', async () => {
      await write('prices.paving', bytesOf('// Größe ½'));
      same(await read('prices.paving'), { text: '// Größe ½' });
    });
    test('leaves the mark at the start of some files out', async () => {
      await write('marked.paving', new Uint8Array([0xef, 0xbb, 0xbf, 0x61]));
      same(await read('marked.paving'), { text: 'a' });
    });
    test('says that a file is missing', async () => same(await read('none.paving'), { problem: 'missing' }));
    test('says that a folder is no file', async () => {
      await vscode.workspace.fs.createDirectory(inFolder('inner'));
      same(await read('inner'), { problem: 'folder' });
    });
    test('reads in an inner folder', async () => {
      await write('inner/deep.paving', bytesOf('deep'));
      same(await read('inner/deep.paving'), { text: 'deep' });
    });
    test('says that a file holds no text', async () => {
      await write('picture.paving', new Uint8Array([0x61, 0, 0x62]));
      same(await read('picture.paving'), { problem: 'binary' });
    });
    test('says that a text is not in UTF-8', async () => {
      await write('latin.paving', new Uint8Array([0x61, 0xe9, 0x62]));
      same(await read('latin.paving'), { problem: 'encoding' });
    });
    test('reads a file of the largest size, and none of one byte more', async () => {
      await write('largest.paving', new Uint8Array(largestFile).fill(0x20));
      same('text' in (await read('largest.paving')), true);
      await write('larger.paving', new Uint8Array(largestFile + 1).fill(0x20));
      same(await read('larger.paving'), { problem: 'too-large' });
    });
    test('reads nothing outside the folder', async () => {
      await write('beside.paving', bytesOf('beside'));
      const inner = inFolder('inner');
      same(await readFile(inFolder('beside.paving'), inner), { problem: 'outside' });
      same(await readFile(inFolder('inner/../beside.paving'), inner), { problem: 'outside' });
      const asWritten = inner.with({ path: `${inner.path}/../beside.paving` });
      same(await readFile(asWritten, inner), { problem: 'outside' });
    });
    test('follows no link', async () => {
      same(await read('link.paving'), { problem: 'outside' });
      same(await read('linked/there.paving'), { problem: 'outside' });
    });
  });
}
