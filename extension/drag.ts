// What is dragged in a plan is written into the text, as one edit that one undo takes back.
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { rangeOf } from './open-place.ts';
import { askAbout } from './text-asking.ts';
import { dragRequest, type DragParams, type DragResult } from '../server/plan-protocol.ts';

/** Why nothing was written; undefined where it was. */
export async function dragged(
  client: BaseLanguageClient,
  file: string,
  { thing, to }: Pick<DragParams, 'thing' | 'to'>
): Promise<string | undefined> {
  const ask = () => askAbout<DragResult>(client, file, dragRequest, { thing, to });
  let result = await ask();
  if (result !== undefined && 'uri' in result && result.version === null) {
    // It stands open nowhere: once it does, the server knows of every change of it.
    await vscode.workspace.openTextDocument(vscode.Uri.parse(result.uri));
    result = await ask();
  }
  if (result === undefined) return MOVED_ON();
  if ('problem' in result) return result.problem;
  const document = await vscode.workspace.openTextDocument(vscode.Uri.parse(result.uri));
  if (document.version !== result.version) return MOVED_ON();
  if (await isForReading(document.uri))
    return vscode.l10n.t('{0} is only for reading.', vscode.workspace.asRelativePath(document.uri));
  const edit = new vscode.WorkspaceEdit();
  for (const { range, newText } of result.edits) edit.replace(document.uri, rangeOf(range), newText);
  return (await vscode.workspace.applyEdit(edit))
    ? undefined
    : vscode.l10n.t('{0} can’t be changed.', vscode.workspace.asRelativePath(document.uri));
}

async function isForReading(uri: vscode.Uri): Promise<boolean> {
  if (uri.scheme === 'untitled') return false;
  if (vscode.workspace.fs.isWritableFileSystem(uri.scheme) === false) return true;
  const { permissions = 0 } = await vscode.workspace.fs.stat(uri);
  return (permissions & vscode.FilePermission.Readonly) !== 0;
}

const MOVED_ON = () => vscode.l10n.t('The text has changed meanwhile. Drag it again.');
