// The commands that compare a job with an older text of it.
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { answerTo, tellWhyNot } from './asking.ts';
import { ComparisonPanels } from './comparison-panel.ts';
import { pickFile, pickRevision } from './revision-picker.ts';
import type { ServerWork } from './server-work.ts';
import {
  compareWithHeadCommand,
  revisionsRequest,
  type RevisionsParams,
  type RevisionsResult
} from '../server/protocol.ts';

const compareWithCommand = 'paving.compareWith';

/** From the lens the text is named, from a menu it is given, from the list of commands it is the one in front. */
export function registerComparison(
  client: BaseLanguageClient,
  work: ServerWork,
  extensionFolder: vscode.Uri
): vscode.Disposable {
  const panels = new ComparisonPanels(client, work, extensionFolder);
  return vscode.Disposable.from(
    panels,
    vscode.commands.registerCommand(compareWithHeadCommand, (asked: unknown) => {
      const file = fileOf(asked);
      return file && panels.show({ file: file.toString(), against: { revision: 'HEAD' } });
    }),
    vscode.commands.registerCommand(compareWithCommand, async (asked: unknown) => {
      const file = fileOf(asked);
      if (file !== undefined) await compareWithChosen(client, panels, file);
    })
  );
}

function fileOf(asked: unknown): vscode.Uri | undefined {
  if (asked instanceof vscode.Uri) return asked;
  if (typeof asked === 'string') return vscode.Uri.parse(asked);
  const document = vscode.window.activeTextEditor?.document;
  return document?.languageId === 'paving' ? document.uri : undefined;
}

async function compareWithChosen(
  client: BaseLanguageClient,
  panels: ComparisonPanels,
  file: vscode.Uri
): Promise<void> {
  await vscode.workspace.openTextDocument(file);
  const params: RevisionsParams = { textDocument: { uri: client.code2ProtocolConverter.asUri(file) } };
  const answer = await answerTo<RevisionsResult>(client, revisionsRequest, params);
  if (answer === undefined) return tellWhyNot(client);
  const chosen = 'problem' in answer ? await offerFileInstead(answer.problem) : await pickRevision(answer.revisions);
  if (chosen === undefined) return;
  const against = chosen === 'another file' ? await pickFile(file) : { revision: chosen };
  if (against !== undefined) await panels.show({ file: file.toString(), against });
}

/** Why no revision can be had, and what can be done all the same. */
async function offerFileInstead(problem: string): Promise<'another file' | undefined> {
  const otherFile = vscode.l10n.t('Compare with another file…');
  const trust = vscode.l10n.t('Manage trust');
  const offered = vscode.workspace.isTrusted ? [otherFile] : [trust, otherFile];
  const chosen = await vscode.window.showInformationMessage(problem, ...offered);
  if (chosen === trust) await vscode.commands.executeCommand('workbench.trust.manage');
  return chosen === otherFile ? 'another file' : undefined;
}
