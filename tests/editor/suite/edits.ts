// What the editor changes in a job when it is asked, or as its settings say: the formatter, and fixes of findings.
import type Mocha from 'mocha';
import * as vscode from 'vscode';
import { becomes, closeAll, findingsBecome, open, rangeOf, type } from './editing.ts';
import { same, soon } from './expect.ts';

const JOB = `job "Yard" { rules britain }

site { benchmark sill, ground level with sill }

unit flag { size 495 x 495 x 50 mm }

area patio {
  outline rectangle 4 x 3 m
  traffic foot
  finish  level with sill
  paving  flag in stack-bond, joints 5 mm
  bed     sharp-sand 40 mm
  base    type-1 100 mm
  edges   { all round  meets house-wall }
}
`;
const UNTIDY = JOB.replace('  traffic foot', '      traffic    foot').replace('unit flag', 'unit   flag');
const OPTIONS: vscode.FormattingOptions = { tabSize: 8, insertSpaces: false };

async function edited(document: vscode.TextDocument, edits: readonly vscode.TextEdit[]): Promise<string> {
  const edit = new vscode.WorkspaceEdit();
  edit.set(document.uri, [...edits]);
  same(await vscode.workspace.applyEdit(edit), true);
  return document.getText();
}

function actions(document: vscode.TextDocument, words: string, kind?: string): Thenable<vscode.CodeAction[]> {
  return vscode.commands.executeCommand(
    'vscode.executeCodeActionProvider',
    document.uri,
    rangeOf(document, words),
    kind
  );
}

const FIX_ON_SAVE = { 'source.fixAll.paving': 'explicit' };

async function onSave(document: vscode.TextDocument, setting: object | undefined): Promise<void> {
  const editor = vscode.workspace.getConfiguration('editor', { uri: document.uri, languageId: 'paving' });
  await editor.update('codeActionsOnSave', setting, vscode.ConfigurationTarget.Global, true);
}

export function editTests({ suite, test, teardown }: Mocha.MochaGlobals): void {
  suite('The formatter', () => {
    teardown(closeAll);

    test('puts a text in order, and the cursor stays at its word', async () => {
      const document = await open('untidy.paving', UNTIDY);
      const editor = vscode.window.activeTextEditor!;
      const { start } = rangeOf(document, 'type-1');
      editor.selection = new vscode.Selection(start, start);
      await vscode.commands.executeCommand('editor.action.formatDocument');
      await becomes('the text', () => document.getText(), JOB);
      same(document.getText(document.getWordRangeAtPosition(editor.selection.active)), 'type-1');
    });

    test('and of a text that is broken in one part, the others', async () => {
      const broken = UNTIDY.replace('unit   flag {', 'unit   flag').replace('flag in', 'flag  in');
      const document = await open('broken-format.paving', broken);
      const edits = await vscode.commands.executeCommand<vscode.TextEdit[]>(
        'vscode.executeFormatDocumentProvider',
        document.uri,
        OPTIONS
      );
      same(await edited(document, edits), JOB.replace('unit flag {', 'unit   flag'));
    });

    test('only the lines of a selection', async () => {
      const document = await open('selection.paving', UNTIDY);
      const edits = await vscode.commands.executeCommand<vscode.TextEdit[]>(
        'vscode.executeFormatRangeProvider',
        document.uri,
        rangeOf(document, '    foot'),
        OPTIONS
      );
      same(await edited(document, edits), JOB.replace('unit flag', 'unit   flag'));
    });

    test('the indent of a new line and of a brace, in a block that is only begun', async () => {
      const document = await open('typed.paving', 'area a {\n  edges {\n\n    }');
      const type = (line: number, column: number, sign: string): Thenable<vscode.TextEdit[]> =>
        vscode.commands.executeCommand(
          'vscode.executeFormatOnTypeProvider',
          document.uri,
          new vscode.Position(line, column),
          sign,
          OPTIONS
        );
      same(await edited(document, await type(2, 0, '\n')), 'area a {\n  edges {\n    \n    }');
      same(await edited(document, await type(3, 5, '}')), 'area a {\n  edges {\n    \n  }');
    });

    test('while a person types, too', async () => {
      const document = await open('typing.paving', 'area a {\n  outline A to B,');
      const editor = vscode.window.activeTextEditor!;
      const end = document.positionAt(document.getText().length);
      editor.selection = new vscode.Selection(end, end);
      await vscode.commands.executeCommand('type', { text: '\n' });
      await becomes('the text', () => document.getText(), 'area a {\n  outline A to B,\n      ');
    });
  });

  suite('Fixes', () => {
    teardown(closeAll);

    test('are offered where a finding stands, and take it away', async () => {
      const document = await open('fix.paving', JOB.replace('type-1', 'typ-1').replace('  traffic foot\n', ''));
      await findingsBecome(document, ['traffic-not-said', 'unknown-name']);
      const [fix, ...others] = await actions(document, 'typ-1', 'quickfix');
      same([fix!.title, fix!.isPreferred === true, others.length], ['Write `type-1`', false, 0]);
      same(await vscode.workspace.applyEdit(fix!.edit!), true);
      await findingsBecome(document, ['traffic-not-said']);
      const choices = await actions(document, 'patio', 'quickfix');
      same(
        choices.map(({ title }) => title),
        ['Write `traffic foot`', 'Write `traffic cars`', 'Write `traffic trucks`']
      );
      same(await vscode.workspace.applyEdit(choices[0]!.edit!), true);
      await findingsBecome(document, []);
      same(document.getText(), JOB);
    });

    test('all that are safe are made on save, where the settings say so, before any finding is shown', async () => {
      const document = await open('on-save.paving', JOB);
      await findingsBecome(document, []);
      await onSave(document, FIX_ON_SAVE);
      try {
        await type(document, '  traffic foot\n', '  traffic foot\n'.repeat(3));
        await type(document, '  base    type-1', '  sub-base type-1');
        await type(document, 'house-wall', 'lawn');
        same(await document.save(), true);
        const wanted = JOB.replace('base    type-1', 'base type-1').replace('house-wall', 'lawn');
        await becomes('the saved text', () => document.getText(), wanted);
        await findingsBecome(document, ['open-edge-without-edging']);
      } finally {
        await onSave(document, undefined);
      }
    });

    test('and are not made on save otherwise', async () => {
      const document = await open('no-fix-on-save.paving', JOB);
      const twice = JOB.replace('  traffic foot\n', '  traffic foot\n  traffic foot\n');
      await type(document, '  traffic foot\n', '  traffic foot\n  traffic foot\n');
      same(await document.save(), true);
      await findingsBecome(document, ['said-twice']);
      same(document.getText(), twice);
      const [all] = await soon('the action for all', async () => {
        const offered = await actions(document, 'patio', 'source.fixAll');
        return offered.length > 0 ? offered : undefined;
      });
      same([all!.title, all!.kind?.value], ['Fix all that is safe', 'source.fixAll.paving']);
    });
  });
}
