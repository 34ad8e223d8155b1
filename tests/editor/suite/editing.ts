// What a person does in the editor, and what they see there.
import * as vscode from 'vscode';
import { same, soon } from './expect.ts';
import { bytesOf, inFolder, write } from './folder.ts';

export async function open(name: string, text?: string): Promise<vscode.TextDocument> {
  if (text !== undefined) await write(name, bytesOf(text));
  const document = await vscode.workspace.openTextDocument(inFolder(name));
  await vscode.window.showTextDocument(document);
  return document;
}

/** Types over the first place that reads so. */
export async function type(document: vscode.TextDocument, before: string, after: string): Promise<void> {
  const edit = new vscode.WorkspaceEdit();
  edit.replace(document.uri, rangeOf(document, before), after);
  same(await vscode.workspace.applyEdit(edit), true);
}

export function rangeOf(document: vscode.TextDocument, words: string): vscode.Range {
  const start = document.getText().indexOf(words);
  if (start < 0) throw new Error(`The text has no: ${words}`);
  return new vscode.Range(document.positionAt(start), document.positionAt(start + words.length));
}

/** Lenses with the words they stand above, from the top down. */
export async function lenses(document: vscode.TextDocument): Promise<string[]> {
  const found = await vscode.commands.executeCommand<vscode.CodeLens[]>(
    'vscode.executeCodeLensProvider',
    document.uri,
    100
  );
  return found
    .sort((left, right) => left.range.start.compareTo(right.range.start))
    .map(({ range, command }) => `${document.getText(range)}: ${command?.title}`);
}

export const lensesBecome = (document: vscode.TextDocument, wanted: readonly string[]) =>
  becomes(`lenses of ${document.uri.path}`, () => lenses(document), wanted);

export const findings = ({ uri }: vscode.TextDocument) => vscode.languages.getDiagnostics(uri);

export function idOf({ code }: vscode.Diagnostic): string {
  return String(typeof code === 'object' ? code.value : code);
}

export const findingsBecome = (document: vscode.TextDocument, ids: readonly string[]) =>
  becomes(`findings of ${document.uri.path}`, () => findings(document).map(idOf), ids);

/** Waits until something reads as it should, and says what it reads when it does not. */
export async function becomes(what: string, look: () => unknown, wanted: unknown): Promise<void> {
  let last: unknown;
  await soon('', async () => {
    last = await look();
    return JSON.stringify(last) === JSON.stringify(wanted) || undefined;
  }).catch(() => {
    throw new Error(`${what}: found ${JSON.stringify(last)}, wanted ${JSON.stringify(wanted)}`);
  });
}

export async function hover(document: vscode.TextDocument, words: string): Promise<string> {
  const hovers = await vscode.commands.executeCommand<vscode.Hover[]>(
    'vscode.executeHoverProvider',
    document.uri,
    rangeOf(document, words).start
  );
  return hovers.flatMap(({ contents }) => contents.map(part => (part as vscode.MarkdownString).value)).join('\n');
}

/** A moment after the last editor has gone another may still come up behind it. */
export function closeAll(): Promise<true> {
  return soon('all editors are closed', async () => {
    const tabs = vscode.window.tabGroups.all.flatMap(group => group.tabs);
    if (tabs.length === 0 && vscode.window.activeTextEditor === undefined) return true;
    await vscode.commands.executeCommand('workbench.action.revertAndCloseActiveEditor');
    return undefined;
  });
}
