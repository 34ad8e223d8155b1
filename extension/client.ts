// What the desktop and the web client share.
import * as vscode from 'vscode';
import type { BaseLanguageClient, LanguageClientOptions } from 'vscode-languageclient';
import { listFilesRequest, readFileRequest, type ListFilesParams, type ReadFileParams } from '../server/protocol.ts';
import { listFiles } from './list-files.ts';
import { linkToPage, registerPages } from './pages.ts';
import { readFile } from './read-file.ts';
import { registerShippedTexts } from './shipped-texts.ts';

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
    registerShippedTexts(context.extensionUri),
    client.onRequest(readFileRequest, ({ uri, folder }: ReadFileParams) =>
      readFile(vscode.Uri.parse(uri), vscode.Uri.parse(folder))
    ),
    client.onRequest(listFilesRequest, ({ folder }: ListFilesParams) => listFiles(vscode.Uri.parse(folder)))
  );
  await client.start();
}
