import { spawn } from 'node:child_process';
import { readdirSync } from 'node:fs';
import path from 'node:path';
import type { Readable, Writable } from 'node:stream';
import { fileURLToPath, pathToFileURL } from 'node:url';
import {
  createProtocolConnection,
  StreamMessageReader,
  StreamMessageWriter,
  type CancellationToken,
  type CodeLens,
  type Hover,
  type ProtocolConnection,
  type PublishDiagnosticsParams
} from 'vscode-languageserver/node.js';

const ROOT = path.resolve(import.meta.dirname, '../..');

/** What a server writes and reads. */
export interface Wires {
  readonly from: Readable;
  readonly to: Writable;
  readonly cut: () => void;
}

/** The built server in a process of its own, as an editor starts it. */
function ownProcess(): Wires {
  const server = spawn(process.execPath, [path.join(ROOT, 'dist/server.cjs'), '--stdio'], {
    stdio: ['pipe', 'pipe', 'inherit']
  });
  return { from: server.stdout, to: server.stdin, cut: () => server.kill() };
}

/** Speaks to a language server as an editor does. */
export class Client {
  readonly published = new Map<string, PublishDiagnosticsParams>();
  readonly history: PublishDiagnosticsParams[] = [];
  /** False for a folder with more job specs than are listed. */
  listsAll = true;
  /** What was told of the server's work: true as it began, false as it ended. */
  readonly work: boolean[] = [];
  /** How often the editor was told to ask anew, by what for: `codeLens`, `inlayHint`, `semanticTokens`. */
  readonly refreshes: Record<string, number> = { codeLens: 0, inlayHint: 0, semanticTokens: 0 };
  /** How often the server told that HEAD is another commit. */
  headMoves = 0;
  /** Warnings shown to the person. */
  readonly warnings: string[] = [];
  private readonly wires: Wires;
  private readonly connection: ProtocolConnection;
  private readonly waiting = new Set<() => void>();
  private readonly versions = new Map<string, number>();

  constructor(wires: Wires = ownProcess()) {
    this.wires = wires;
    this.connection = createProtocolConnection(new StreamMessageReader(wires.from), new StreamMessageWriter(wires.to));
    this.connection.onNotification('textDocument/publishDiagnostics', (params: PublishDiagnosticsParams) => {
      this.published.set(params.uri, params);
      this.history.push(params);
      for (const look of [...this.waiting]) look();
    });
    this.connection.onNotification('paving/work', ({ working }: { working: boolean }) => this.work.push(working));
    this.connection.onRequest('paving/listFiles', ({ folder }: { folder: string }) => ({
      uris: specsIn(fileURLToPath(folder)).map(file => pathToFileURL(file).href),
      all: this.listsAll
    }));
    this.connection.onNotification('paving/headMoved', () => void this.headMoves++);
    for (const shown of Object.keys(this.refreshes))
      this.connection.onRequest(`workspace/${shown}/refresh`, () => {
        this.refreshes[shown]!++;
        return null;
      });
    this.connection.onRequest('window/showMessageRequest', ({ message }: { message: string }) => {
      this.warnings.push(message);
      return null;
    });
    this.connection.listen();
  }

  /** Without a folder the editor stands empty. */
  async start(folder?: string, capabilities: object = {}, initializationOptions?: object): Promise<unknown> {
    const uri = folder === undefined ? null : pathToFileURL(folder).href;
    const result = await this.connection.sendRequest('initialize', {
      processId: process.pid,
      rootUri: uri,
      capabilities: { workspace: { workspaceFolders: true }, ...capabilities },
      workspaceFolders: uri === null ? null : [{ uri, name: 'jobs' }],
      initializationOptions
    });
    await this.connection.sendNotification('initialized', {});
    return result;
  }

  async open(uri: string, text: string): Promise<void> {
    this.versions.set(uri, 1);
    await this.connection.sendNotification('textDocument/didOpen', {
      textDocument: { uri, languageId: 'paving', version: 1, text }
    });
  }

  async change(uri: string, text: string): Promise<number> {
    const version = this.versions.get(uri)! + 1;
    this.versions.set(uri, version);
    await this.connection.sendNotification('textDocument/didChange', {
      textDocument: { uri, version },
      contentChanges: [{ text }]
    });
    return version;
  }

  close(uri: string): Promise<void> {
    return this.connection.sendNotification('textDocument/didClose', { textDocument: { uri } });
  }

  /** `type` as the protocol has it: 1 come, 2 changed, 3 gone. */
  changedOnDisk(uri: string, type: 1 | 2 | 3 = 2): Promise<void> {
    return this.connection.sendNotification('workspace/didChangeWatchedFiles', { changes: [{ uri, type }] });
  }

  changeFolders(added: readonly string[], removed: readonly string[]): Promise<void> {
    const named = (uri: string): { uri: string; name: string } => ({ uri, name: uri });
    return this.connection.sendNotification('workspace/didChangeWorkspaceFolders', {
      event: { added: added.map(named), removed: removed.map(named) }
    });
  }

  /** Waits until an answer is as wanted. */
  async becomes(ask: () => Promise<string | undefined>, wanted: RegExp): Promise<void> {
    let last: string | undefined;
    for (let tries = 0; tries < 100; tries++) {
      last = await ask();
      if (wanted.test(last ?? '')) return;
      await new Promise(resume => setTimeout(resume, 50));
    }
    throw new Error(`never became ${String(wanted)}: ${last ?? 'nothing'}`);
  }

  /** Any request of the protocol; `params` as the protocol has them. */
  ask<R>(method: string, params: unknown, token?: CancellationToken): Promise<R> {
    return token === undefined
      ? this.connection.sendRequest(method, params)
      : this.connection.sendRequest(method, params, token);
  }

  /** Any notification of the protocol. */
  tell(method: string, params: object): Promise<void> {
    return this.connection.sendNotification(method, params);
  }

  hover(uri: string, line: number, character: number): Promise<Hover | null> {
    return this.connection.sendRequest('textDocument/hover', { textDocument: { uri }, position: { line, character } });
  }

  lenses(uri: string): Promise<CodeLens[]> {
    return this.connection.sendRequest('textDocument/codeLens', { textDocument: { uri } });
  }

  /** Waits for findings of a file that satisfy what is wanted. */
  findings(
    uri: string,
    wanted: (params: PublishDiagnosticsParams) => boolean = () => true
  ): Promise<PublishDiagnosticsParams> {
    return new Promise(resolve => {
      const look = (): void => {
        const params = this.published.get(uri);
        if (params === undefined || !wanted(params)) return;
        this.waiting.delete(look);
        resolve(params);
      };
      this.waiting.add(look);
      look();
    });
  }

  async stop(): Promise<void> {
    await this.connection.sendRequest('shutdown');
    this.connection.dispose();
    this.wires.cut();
  }
}

function specsIn(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter(name => name.endsWith('.paving'))
    .map(name => path.join(folder, name));
}
