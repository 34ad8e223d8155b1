import type { ExtensionContext } from 'vscode';
import { LanguageClient, TransportKind } from 'vscode-languageclient/node.js';
import { start } from './client.ts';
import { registerTasks } from './tasks.ts';
import { offerCommandLine } from './terminal.ts';

let client: LanguageClient | undefined;

export function activate(context: ExtensionContext): Promise<void> {
  offerCommandLine(context, process);
  context.subscriptions.push(registerTasks(context, process));
  const server = { module: context.asAbsolutePath('dist/server.cjs'), transport: TransportKind.ipc };
  return start(context, options => (client = new LanguageClient('paving', 'Paving job spec', server, options)));
}

export const deactivate = () => client?.stop();
