// The command that shows the live plan of a job, beside its text.
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { PlanPanels } from './plan-panel.ts';

const showPlanCommand = 'paving.showPlan';

export function registerPlan(client: BaseLanguageClient, extensionFolder: vscode.Uri): vscode.Disposable {
  const panels = new PlanPanels(client, extensionFolder);
  return vscode.Disposable.from(
    panels,
    vscode.commands.registerCommand(showPlanCommand, (asked: unknown) => {
      const document = vscode.window.activeTextEditor?.document;
      const file = asked instanceof vscode.Uri ? asked : document?.languageId === 'paving' ? document.uri : undefined;
      return file && panels.show(file);
    })
  );
}
