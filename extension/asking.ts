// Questions to the server that a person waits for.
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { tellNoAnswer } from './commands.ts';

/** Undefined where no server runs, or where it is not told of the text that is asked about. */
export async function answerTo<R>(client: BaseLanguageClient, method: string, params: object): Promise<R | undefined> {
  try {
    return (await client.sendRequest<R | null>(method, params)) ?? undefined;
  } catch {
    return undefined;
  }
}

/** Says why there was no answer. */
export async function tellWhyNot(client: BaseLanguageClient): Promise<void> {
  if (!client.isRunning()) return tellNoAnswer();
  await vscode.window.showInformationMessage(vscode.l10n.t('This text is only for reading: it is not checked.'));
}
