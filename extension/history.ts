// What the server is told so that it can compare with the past: whether git may be started, and when to look again.
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { lookAgainNotification, trustedNotification, type StartOptions } from '../server/protocol.ts';

export const startOptions = (): StartOptions => ({ trusted: vscode.workspace.isTrusted });

/** Git writes there whenever HEAD becomes another commit. */
export const headMovesPattern = '**/.git/logs/HEAD';

export function followHistory(client: BaseLanguageClient): vscode.Disposable {
  const tell = (notification: string): void => {
    if (client.isRunning()) void client.sendNotification(notification, {});
  };
  return vscode.Disposable.from(
    vscode.workspace.onDidGrantWorkspaceTrust(() => tell(trustedNotification)),
    // The person may have committed elsewhere meanwhile.
    vscode.window.onDidChangeWindowState(({ focused }) => {
      if (focused) tell(lookAgainNotification);
    }),
    vscode.window.onDidChangeActiveTextEditor(editor => {
      if (editor?.document.languageId === 'paving') tell(lookAgainNotification);
    })
  );
}
