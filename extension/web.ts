import { Uri, type ExtensionContext } from 'vscode';
import {
  BaseLanguageClient,
  BrowserMessageReader,
  BrowserMessageWriter,
  type LanguageClientOptions,
  type MessageTransports
} from 'vscode-languageclient/browser.js';
import { start } from './client.ts';
import { registerTasks } from './tasks.ts';

let client: WorkerClient | undefined;

export function activate(context: ExtensionContext): Promise<void> {
  const script = Uri.joinPath(context.extensionUri, 'dist/server-browser.js').toString(true);
  context.subscriptions.push(registerTasks(context, undefined));
  return start(context, options => (client = new WorkerClient(script, options)));
}

// The server's worker ends with the editor's own worker, so that it can answer the client's last request.
export const deactivate = () => client?.stop();

/** Starts its server in a worker; each start has a worker of its own, since a server that was stopped hears no more. */
class WorkerClient extends BaseLanguageClient {
  private readonly script: string;
  private worker: Worker | undefined;

  constructor(script: string, options: LanguageClientOptions) {
    super('paving', 'Paving job spec', options);
    this.script = script;
  }

  protected createMessageTransports(): Promise<MessageTransports> {
    this.worker?.terminate();
    const worker = new Worker(this.script);
    this.worker = worker;
    worker.addEventListener('error', ({ message }) => this.error(message, undefined, false));
    return Promise.resolve({ reader: new BrowserMessageReader(worker), writer: new BrowserMessageWriter(worker) });
  }
}
