import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';

export const restartCommand = 'paving.restartServer';
export const showLogCommand = 'paving.showLog';

export function registerCommands(client: BaseLanguageClient): vscode.Disposable {
  return vscode.Disposable.from(
    vscode.commands.registerCommand(restartCommand, () => restart(client)),
    vscode.commands.registerCommand(showLogCommand, () => client.outputChannel.show())
  );
}

async function restart(client: BaseLanguageClient): Promise<void> {
  // A server that is gone, or answers no more, can't be asked to stop.
  await client.stop().catch(() => undefined);
  await startOrTell(client);
}

/** A server that does not start leaves its colours and commands; the person is told. */
export async function startOrTell(client: BaseLanguageClient): Promise<void> {
  try {
    await client.start();
  } catch {
    await tell(vscode.l10n.t('The language server of Paving job spec did not start: no findings and no figures.'));
  }
}

export const tellNoAnswer = (): Promise<void> =>
  tell(vscode.l10n.t('The language server of Paving job spec does not answer. Restart it, and try again.'));

export const tellCrashed = (): Promise<void> =>
  tell(
    vscode.l10n.t(
      'The language server of Paving job spec failed three times and is not started again. Your files are not touched.'
    )
  );

async function tell(message: string): Promise<void> {
  const [showLog, restart] = [vscode.l10n.t('Show the log'), vscode.l10n.t('Restart')];
  const chosen = await vscode.window.showErrorMessage(message, showLog, restart);
  if (chosen === showLog) await vscode.commands.executeCommand(showLogCommand);
  if (chosen === restart) await vscode.commands.executeCommand(restartCommand);
}
