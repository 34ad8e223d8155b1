// What the desktop and the web client share.
import * as vscode from 'vscode';
import {
  CloseAction,
  ErrorAction,
  RevealOutputChannelOn,
  type BaseLanguageClient,
  type ErrorHandler,
  type LanguageClientOptions
} from 'vscode-languageclient';
import { listFilesRequest, readFileRequest, type ListFilesParams, type ReadFileParams } from '../server/protocol.ts';
import { CheckedTexts } from './checked-texts.ts';
import { registerCommands, startOrTell, tellCrashed } from './commands.ts';
import { registerComparison } from './comparison.ts';
import { Crashes } from './crashes.ts';
import { figuresMiddleware, followSettings } from './figures.ts';
import { followHistory, headMovesPattern, startOptions } from './history.ts';
import { listFiles } from './list-files.ts';
import { registerNameHere } from './name-here.ts';
import { registerNewJob } from './new-job.ts';
import { registerOlderTexts } from './older-texts.ts';
import { linkToPage, registerPages } from './pages.ts';
import { registerPastePoints } from './paste-points.ts';
import { registerPlan } from './plan.ts';
import { registerQuantitiesView } from './quantities-view.ts';
import { readFile } from './read-file.ts';
import { ServerWork } from './server-work.ts';
import { registerShippedTexts } from './shipped-texts.ts';
import { showStatus } from './status.ts';
import { registerWalkthrough } from './walkthrough.ts';

export type CreateClient = (options: LanguageClientOptions) => BaseLanguageClient;

export async function start(context: vscode.ExtensionContext, createClient: CreateClient): Promise<void> {
  const checked = new CheckedTexts();
  const client = createClient(clientOptions(checked));
  const work = new ServerWork(client);
  context.subscriptions.push(
    registerPages(context.extensionUri),
    registerShippedTexts(context.extensionUri),
    registerNameHere(),
    registerPastePoints(client),
    registerNewJob(client),
    registerOlderTexts(client),
    registerComparison(client, work, context.extensionUri),
    registerPlan(client, work, context.extensionUri),
    registerCommands(client),
    registerWalkthrough(context.extension),
    work,
    showStatus(client, work),
    registerQuantitiesView(client, work),
    checked.follow(client),
    followSettings(client),
    followHistory(client),
    client.onRequest(readFileRequest, ({ uri, folder }: ReadFileParams) =>
      readFile(vscode.Uri.parse(uri), folderAt(folder))
    ),
    client.onRequest(listFilesRequest, ({ folder }: ListFilesParams) => listFiles(folderAt(folder)))
  );
  await startOrTell(client);
}

const clientOptions = (checked: CheckedTexts): LanguageClientOptions => ({
  documentSelector: [{ language: 'paving' }],
  synchronize: {
    fileEvents: [
      vscode.workspace.createFileSystemWatcher('**/*.paving'),
      vscode.workspace.createFileSystemWatcher(headMovesPattern),
      // Of a folder that comes or goes with all that is in it, the editor tells the folder alone.
      vscode.workspace.createFileSystemWatcher('**', false, true, false)
    ]
  },
  initializationOptions: startOptions,
  // The name that the findings of the task have too: a file that is opened then has its findings once.
  diagnosticCollectionName: 'paving',
  // It outlives the server, so that what went wrong can still be read.
  outputChannel: vscode.window.createOutputChannel('Paving job spec'),
  revealOutputChannelOn: RevealOutputChannelOn.Never,
  errorHandler: errorHandler(),
  middleware: {
    ...checked.middleware,
    ...figuresMiddleware,
    handleDiagnostics: (uri, diagnostics, next) => next(uri, diagnostics.map(linkToPage))
  }
});

/** So many broken messages in a row, and there is no sense in going on. */
const MOST_BROKEN_MESSAGES = 3;

function errorHandler(): ErrorHandler {
  const crashes = new Crashes();
  return {
    error: (_error, _message, count = 1) => ({
      action: count <= MOST_BROKEN_MESSAGES ? ErrorAction.Continue : ErrorAction.Shutdown,
      handled: true
    }),
    closed: () => {
      if (!crashes.add(Date.now())) return { action: CloseAction.Restart, handled: true };
      void tellCrashed();
      return { action: CloseAction.DoNotRestart, handled: true };
    }
  };
}

/** The server writes a folder's address without a slash at its end; the top of a file system has a path of its own. */
function folderAt(address: string): vscode.Uri {
  const folder = vscode.Uri.parse(address);
  return folder.path === '' ? folder.with({ path: '/' }) : folder;
}
