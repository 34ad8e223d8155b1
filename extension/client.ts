// What the desktop and the web client share.
import * as vscode from 'vscode';
import type { BaseLanguageClient, LanguageClientOptions } from 'vscode-languageclient';
import {
  listFilesRequest,
  mostFilesListed,
  readFileRequest,
  type ListFilesParams,
  type ListFilesResult,
  type ReadFileParams
} from '../server/protocol.ts';
import { registerNewJob } from './new-job.ts';
import { linkToPage, registerPages } from './pages.ts';
import { readFile } from './read-file.ts';

export const clientOptions = (): LanguageClientOptions => ({
  documentSelector: [{ language: 'paving' }],
  synchronize: { fileEvents: vscode.workspace.createFileSystemWatcher('**/*.paving') },
  middleware: {
    handleDiagnostics: (uri, diagnostics, next) => next(uri, diagnostics.map(linkToPage))
  }
});

export async function start(context: vscode.ExtensionContext, client: BaseLanguageClient): Promise<void> {
  context.subscriptions.push(
    registerPages(context.extensionUri),
    registerNewJob(client),
    client.onRequest(readFileRequest, ({ uri, folder }: ReadFileParams) =>
      readFile(vscode.Uri.parse(uri), vscode.Uri.parse(folder))
    ),
    client.onRequest(listFilesRequest, ({ folder }: ListFilesParams) => listFiles(vscode.Uri.parse(folder)))
  );
  await client.start();
}

async function listFiles(folder: vscode.Uri): Promise<ListFilesResult> {
  const specs = new vscode.RelativePattern(folder, '**/*.paving');
  const found = await vscode.workspace.findFiles(specs, undefined, mostFilesListed + 1);
  return { uris: found.slice(0, mostFilesListed).map(uri => uri.toString()), all: found.length <= mostFilesListed };
}
