// Which texts the server is told of: those a person can work on. The old side of a comparison is only looked at, and what
// is found in it can't be mended there.
import * as vscode from 'vscode';
import {
  DidCloseTextDocumentNotification,
  DidOpenTextDocumentNotification,
  type BaseLanguageClient,
  type Middleware
} from 'vscode-languageclient';

/** A file or a new text, whatever lies in an open folder, and what lies where it can be written. */
export function isChecked(uri: vscode.Uri): boolean {
  return (
    uri.scheme === 'file' ||
    uri.scheme === 'untitled' ||
    vscode.workspace.getWorkspaceFolder(uri) !== undefined ||
    vscode.workspace.fs.isWritableFileSystem(uri.scheme) === true
  );
}

type Sending = Required<Pick<Middleware, 'sendNotification' | 'sendRequest'>>;

/** Keeps every other text from the server: neither its coming and going nor a question about it gets through. */
export class CheckedTexts {
  /** Addresses of the texts that the server holds open. */
  private readonly told = new Set<string>();

  readonly middleware: Sending = {
    sendNotification: async (type, next, params) => {
      if (this.lets(methodOf(type), addressIn(params))) await next(type, params);
    },
    sendRequest: async (type, params, token, next) => {
      const address = addressIn(params);
      // Every question about a text may be answered with nothing.
      if (address !== undefined && !this.told.has(address)) return null as Awaited<ReturnType<typeof next>>;
      return next(type, params, token);
    }
  };

  /** Opens and closes texts for the server as folders come and go. */
  follow(client: BaseLanguageClient): vscode.Disposable {
    return vscode.workspace.onDidChangeWorkspaceFolders(async () => {
      if (!client.isRunning()) return;
      const { code2ProtocolConverter: converter } = client;
      for (const document of vscode.workspace.textDocuments) {
        const isTold = this.told.has(converter.asUri(document.uri));
        if (document.languageId !== 'paving' || isTold === isChecked(document.uri)) continue;
        if (isTold)
          await client.sendNotification(
            DidCloseTextDocumentNotification.type,
            converter.asCloseTextDocumentParams(document)
          );
        else
          await client.sendNotification(
            DidOpenTextDocumentNotification.type,
            converter.asOpenTextDocumentParams(document)
          );
      }
    });
  }

  private lets(method: string, address: string | undefined): boolean {
    if (address === undefined) return true;
    if (method === DidCloseTextDocumentNotification.method) return this.told.delete(address);
    if (method !== DidOpenTextDocumentNotification.method) return this.told.has(address);
    // After a restart texts are opened anew, and a folder may have gone meanwhile.
    this.told.delete(address);
    if (isChecked(vscode.Uri.parse(address))) this.told.add(address);
    return this.told.has(address);
  }
}

function methodOf(type: string | { readonly method: string }): string {
  return typeof type === 'string' ? type : type.method;
}

/** The text that a message is about. */
function addressIn(params: unknown): string | undefined {
  return (params as { textDocument?: { uri?: string } } | undefined)?.textDocument?.uri;
}
