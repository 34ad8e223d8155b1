import type { ExtensionContext } from 'vscode';
import { LanguageClient, TransportKind } from 'vscode-languageclient/node.js';
import { clientOptions, start } from './client.ts';

let client: LanguageClient | undefined;

export function activate(context: ExtensionContext): Promise<void> {
  const server = { module: context.asAbsolutePath('dist/server.cjs'), transport: TransportKind.ipc };
  client = new LanguageClient('paving', 'Paving job spec', server, clientOptions());
  return start(context, client);
}

export const deactivate = () => client?.stop();
