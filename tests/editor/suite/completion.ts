// What is offered while a person writes, and what becomes of the text when they take it.
import type Mocha from 'mocha';
import * as vscode from 'vscode';
import { closeAll, open } from './editing.ts';
import { same, soon } from './expect.ts';
import { bytesOf, inFolder, write } from './folder.ts';

const job = 'job "Offers" { rules north-america }\nunit slab-16 { size 15 7/8 x 15 7/8 x 2 in }\n';

/** What is offered at the drawn cursor; of the first so many also what is told once they are looked at closely. */
async function offeredAt(name: string, drawn: string, looked = 0): Promise<vscode.CompletionList> {
  const document = await open(name, drawn.replace('‸', ''));
  const position = document.positionAt(drawn.indexOf('‸'));
  return vscode.commands.executeCommand<vscode.CompletionList>(
    'vscode.executeCompletionItemProvider',
    document.uri,
    position,
    undefined,
    looked
  );
}

const labelOf = ({ label }: vscode.CompletionItem): string => (typeof label === 'string' ? label : label.label);

const labelsOf = ({ items }: vscode.CompletionList): string[] =>
  [...items].sort((left, right) => (left.sortText! < right.sortText! ? -1 : 1)).map(labelOf);

/** Writes at the start of an empty text, waits for what is offered, and takes the first. */
async function writeAndTake(document: vscode.TextDocument, word: string): Promise<void> {
  const editor = await vscode.window.showTextDocument(document);
  await vscode.commands.executeCommand('workbench.action.focusActiveEditorGroup');
  await editor.edit(edit => edit.insert(new vscode.Position(0, 0), word));
  editor.selection = new vscode.Selection(0, word.length, 0, word.length);
  await vscode.commands.executeCommand('editor.action.triggerSuggest');
  await soon('what is offered is taken', async () => {
    await vscode.commands.executeCommand('acceptSelectedSuggestion');
    return document.getText() !== word || undefined;
  });
}

export function completionTests({ suite, suiteSetup, test, teardown }: Mocha.MochaGlobals): void {
  suite('Completion', () => {
    // A folder of their own: what is written here is seen by no other test.
    suiteSetup(() => vscode.workspace.fs.createDirectory(inFolder('offers')));
    teardown(closeAll);

    test('offers the statements of an area that are not said yet', async () => {
      const drawn = `${job}area patio {\n  outline circle 3 m across\n  ‸\n}\n`;
      const list = await offeredAt('offers/1.paving', drawn);
      same(labelsOf(list).slice(0, 3), ['traffic', 'finish', 'paving']);
      const traffic = list.items.find(item => labelOf(item) === 'traffic');
      same((traffic?.label as vscode.CompletionItemLabel).description?.startsWith('What uses the area'), true);
      same((traffic?.insertText as vscode.SnippetString).value, 'traffic ${1|foot,cars,trucks,turning|}');
      const looked = await offeredAt('offers/1.paving', drawn, list.items.length);
      const help = looked.items.find(item => labelOf(item) === 'traffic')?.documentation as vscode.MarkdownString;
      same(help.value.includes('foot'), true);
    });

    test('offers materials by their role, and files of the folder', async () => {
      const base = await offeredAt('offers/2.paving', `${job}area patio {\n  base ‸\n}\n`);
      same(labelsOf(base).slice(0, 3), ['crushed-stone', 'type-1', 'clause-804']);
      await write('offers/used.paving', bytesOf('// nothing yet\n'));
      const files = await soon('the new file is offered', async () => {
        const found = await offeredAt('offers/3.paving', 'use "‸"\n');
        return labelsOf(found).includes('used.paving') ? found : undefined;
      });
      same(labelsOf(files).includes('3.paving'), false);
    });

    test('a whole job is taken in an empty file', async () => {
      const document = await open('offers/4.paving', '');
      await writeAndTake(document, 'jo');
      const lines = document.getText().split('\n');
      same(lines[0], 'job "My patio" {');
      same(
        lines.filter(line => /outline|near/.test(line)),
        [
          '  outline rectangle 12 x 16 ft',
          '  finish  2 1/2 in below door-sill along near, falling 1/4 in per ft away from near',
          '    near      meets house-wall'
        ]
      );
    });

    test('a hyphenated name is completed as one word', async () => {
      const drawn = `${job}area patio {\n  edges { near meets house-w‸ }\n}\n`;
      const list = await offeredAt('offers/5.paving', drawn);
      const wall = list.items.find(item => labelOf(item) === 'house-wall');
      const range = wall?.range instanceof vscode.Range ? wall.range : wall?.range?.replacing;
      same([range?.start.character, range?.end.character], [21, 28]);
    });
  });
}
