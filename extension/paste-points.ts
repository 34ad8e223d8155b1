// Coordinates on the clipboard as points: offered when something is pasted, and as a command.
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { answerTo, tellWhyNot } from './asking.ts';
import {
  largestTable,
  pointsFromTableRequest,
  type PointsFromTableParams,
  type PointsFromTableResult
} from '../server/protocol.ts';

const POINTS = vscode.DocumentDropOrPasteEditKind.Empty.append('paving', 'points');

/** Two numbers on one line, near the beginning: without them no server need be asked. */
const MAY_BE_TABLE = /\d[^\d\n]*[\s,;][^\d\n]*\d/;
const BEGINNING = 1_000;

export function registerPastePoints(client: BaseLanguageClient): vscode.Disposable {
  const provider: vscode.DocumentPasteEditProvider = {
    async provideDocumentPasteEdits(document, ranges, dataTransfer) {
      const table = await dataTransfer.get('text/plain')?.asString();
      const [range] = ranges;
      if (table === undefined || range === undefined || ranges.length > 1 || !mayBeTable(table)) return undefined;
      const found = await pointsOf(client, document, range, table);
      if (found === undefined || 'problem' in found) return undefined;
      return found.choices.flatMap(choice => pasteEdit(document, range, choice, found.isPlain) ?? []);
    }
  };
  return vscode.Disposable.from(
    vscode.languages.registerDocumentPasteEditProvider({ language: 'paving' }, provider, {
      providedPasteEditKinds: [POINTS],
      pasteMimeTypes: ['text/plain']
    }),
    vscode.commands.registerCommand('paving.pastePoints', () => pasteFromClipboard(client))
  );
}

function mayBeTable(text: string): boolean {
  return text.length <= largestTable && MAY_BE_TABLE.test(text.slice(0, BEGINNING));
}

type Found = Extract<PointsFromTableResult, { readonly choices: unknown }>;
type Choice = Found['choices'][number];

async function pointsOf(
  client: BaseLanguageClient,
  document: vscode.TextDocument,
  range: vscode.Range,
  table: string
): Promise<PointsFromTableResult | undefined> {
  if (table.length > largestTable) return { problem: vscode.l10n.t('This is far too long for a table of points.') };
  const params: PointsFromTableParams = {
    textDocument: client.code2ProtocolConverter.asTextDocumentIdentifier(document),
    range: client.code2ProtocolConverter.asRange(range),
    table
  };
  return answerTo<PointsFromTableResult>(client, pointsFromTableRequest, params);
}

/** Unless it is plainly a table of points, the text as it is comes first. */
function pasteEdit(
  document: vscode.TextDocument,
  selected: vscode.Range,
  { title, text, range }: Choice,
  isPlain: boolean
): vscode.DocumentPasteEdit | undefined {
  const place = rangeOf(range);
  const isHere = place.isEqual(selected);
  // Elsewhere than at the cursor it is written beside the paste, which would leave what is selected empty.
  if (!isHere && !selected.isEmpty) return undefined;
  const edit = new vscode.DocumentPasteEdit(isHere ? text : '', title, POINTS);
  if (!isHere) {
    edit.additionalEdit = new vscode.WorkspaceEdit();
    edit.additionalEdit.replace(document.uri, place, text);
  }
  if (!isPlain) edit.yieldTo = [vscode.DocumentDropOrPasteEditKind.Text];
  return edit;
}

async function pasteFromClipboard(client: BaseLanguageClient): Promise<void> {
  const editor = vscode.window.activeTextEditor;
  if (editor?.document.languageId !== 'paving') return;
  const { document, selection } = editor;
  const { version } = document;
  const found = await pointsOf(client, document, selection, await vscode.env.clipboard.readText());
  if (found === undefined) return tellWhyNot(client);
  if ('problem' in found) {
    void vscode.window.showInformationMessage(found.problem);
    return;
  }
  const choice = await chosen(found.choices);
  if (choice === undefined || document.version !== version) return;
  const edit = new vscode.WorkspaceEdit();
  edit.replace(document.uri, rangeOf(choice.range), choice.text);
  await vscode.workspace.applyEdit(edit);
}

async function chosen(choices: readonly Choice[]): Promise<Choice | undefined> {
  if (choices.length === 1) return choices[0];
  const items = choices.map(choice => ({ label: choice.title, choice }));
  const picked = await vscode.window.showQuickPick(items, {
    placeHolder: vscode.l10n.t('Which measure is the table in?')
  });
  return picked?.choice;
}

function rangeOf({ start, end }: Choice['range']): vscode.Range {
  return new vscode.Range(start.line, start.character, end.line, end.character);
}
