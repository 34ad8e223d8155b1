// Questions about a text that a panel asks while it follows what is typed.
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';

export interface Problem {
  readonly problem: string;
}

/** The answer of the server about a text, or why there is none; undefined where something newer is asked for meanwhile. */
export async function askAbout<R extends object>(
  client: BaseLanguageClient,
  file: string,
  method: string,
  params: object,
  token = NEVER
): Promise<R | Problem | undefined> {
  try {
    // The server is told of texts that stand open alone.
    const { uri } = await vscode.workspace.openTextDocument(vscode.Uri.parse(file));
    const textDocument = { uri: client.code2ProtocolConverter.asUri(uri) };
    const answer = await client.sendRequest<R | null>(method, { textDocument, ...params }, token);
    if (token.isCancellationRequested) return undefined;
    return answer ?? { problem: vscode.l10n.t('This text is only for reading: it is not checked.') };
  } catch (error) {
    if (token.isCancellationRequested || error instanceof vscode.CancellationError) return undefined;
    if (!client.isRunning()) return { problem: vscode.l10n.t('The language server does not answer.') };
    // The text has moved on meanwhile: it is asked for again as it changes.
    return isOfMovedText(error) ? undefined : { problem: error instanceof Error ? error.message : String(error) };
  }
}

/** For what is asked once, and waited for. */
const NEVER = new vscode.CancellationTokenSource().token;

/** As the protocol numbers them: a request that is taken back, and a text that was changed. */
function isOfMovedText(error: unknown): boolean {
  const { code } = error as { code?: unknown };
  return code === -32800 || code === -32801;
}
