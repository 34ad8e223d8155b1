// What the editor shows without being asked: findings as they are sent, figures and colours as it asks anew for them.
import {
  CodeLensRefreshRequest,
  InlayHintRefreshRequest,
  SemanticTokensRefreshRequest,
  type ClientCapabilities,
  type Connection,
  type Diagnostic
} from 'vscode-languageserver';
import type { TextDocument } from 'vscode-languageserver-textdocument';

export class Shown {
  private readonly connection: Connection;
  /** What was last sent of each file that has findings. */
  private readonly published = new Map<string, string>();
  private areFiguresOld = false;
  private areColoursOld = false;

  constructor(connection: Connection) {
    this.connection = connection;
  }

  /** Findings by address, of every open file and of the files they use; what nothing speaks of any more is cleared. */
  publish(all: Map<string, Diagnostic[]>, open: ReadonlyMap<string, TextDocument>): void {
    for (const uri of this.published.keys()) if (!all.has(uri)) all.set(uri, []);
    for (const [uri, diagnostics] of all) {
      const document = open.get(uri);
      const version = document === undefined ? {} : { version: document.version };
      const params = { uri: document?.uri ?? uri, diagnostics, ...version };
      const sent = JSON.stringify(params);
      // Two jobs that use one file end one after the other: what has not changed is not sent twice.
      if (this.published.get(uri) === sent) continue;
      if (diagnostics.length === 0 && document === undefined) this.published.delete(uri);
      else this.published.set(uri, sent);
      void this.connection.sendDiagnostics(params);
    }
  }

  /** Lenses and hints of a text hang on another file that has changed: the editor asks anew only where it was typed. */
  figuresAreOld(): void {
    this.areFiguresOld = true;
  }

  /** What a name is hangs on another file, as figures do. */
  coloursAreOld(): void {
    this.areColoursOld = true;
  }

  /** Has the editor ask anew for what is old. */
  refresh({ workspace }: ClientCapabilities): void {
    const send = (type: typeof CodeLensRefreshRequest.type, isKnown: boolean | undefined): void => {
      if (isKnown) this.connection.sendRequest(type).catch(() => undefined);
    };
    if (this.areFiguresOld) {
      send(CodeLensRefreshRequest.type, workspace?.codeLens?.refreshSupport);
      send(InlayHintRefreshRequest.type, workspace?.inlayHint?.refreshSupport);
    }
    if (this.areColoursOld) send(SemanticTokensRefreshRequest.type, workspace?.semanticTokens?.refreshSupport);
    this.areFiguresOld = this.areColoursOld = false;
  }
}
