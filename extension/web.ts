import { Uri, type ExtensionContext } from 'vscode';
import { LanguageClient } from 'vscode-languageclient/browser.js';
import { clientOptions, start } from './client.ts';

let client: LanguageClient | undefined;

// The server's worker ends with the editor's own worker, so that it can answer the client's last request.
export function activate(context: ExtensionContext): Promise<void> {
  const worker = new Worker(Uri.joinPath(context.extensionUri, 'dist/server-browser.js').toString(true));
  client = new LanguageClient('paving', 'Paving job spec', clientOptions(), worker);
  return start(context, client);
}

export const deactivate = () => client?.stop();
