// The command that shows the live plan of a job, beside its text.
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { answerTo } from './asking.ts';
import { PlanPanels } from './plan-panel.ts';
import type { ServerWork } from './server-work.ts';
import { planOwnerRequest, type PlanOwnerParams, type PlanOwnerResult } from '../server/plan-protocol.ts';

const showPlanCommand = 'paving.showPlan';

export function registerPlan(
  client: BaseLanguageClient,
  work: ServerWork,
  extensionFolder: vscode.Uri
): vscode.Disposable {
  const panels = new PlanPanels(client, work, extensionFolder);
  return vscode.Disposable.from(
    panels,
    vscode.commands.registerCommand(showPlanCommand, async (asked: unknown) => {
      const document = vscode.window.activeTextEditor?.document;
      const file = asked instanceof vscode.Uri ? asked : document?.languageId === 'paving' ? document.uri : undefined;
      if (file !== undefined) panels.show(await jobOf(client, file));
    })
  );
}

/** Of a file without a job the one that uses it, if that stands open: a job has one plan. */
async function jobOf(client: BaseLanguageClient, file: vscode.Uri): Promise<vscode.Uri> {
  await vscode.workspace.openTextDocument(file);
  const params: PlanOwnerParams = { textDocument: { uri: client.code2ProtocolConverter.asUri(file) } };
  const answer = await answerTo<PlanOwnerResult>(client, planOwnerRequest, params);
  return answer?.uri === undefined ? file : vscode.Uri.parse(answer.uri);
}
