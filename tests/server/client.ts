import { type ChildProcess, spawn } from 'node:child_process';
import { readdirSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import {
  createProtocolConnection,
  StreamMessageReader,
  StreamMessageWriter,
  type ClientCapabilities,
  type CodeLens,
  type Hover,
  type ProtocolConnection,
  type PublishDiagnosticsParams
} from 'vscode-languageserver/node.js';

const ROOT = path.resolve(import.meta.dirname, '../..');

/** The language server as an editor starts it, spoken to over its standard input and output. */
export class Client {
  readonly published = new Map<string, PublishDiagnosticsParams>();
  readonly history: PublishDiagnosticsParams[] = [];
  private readonly server: ChildProcess;
  private readonly connection: ProtocolConnection;
  private readonly waiting = new Set<() => void>();
  private readonly versions = new Map<string, number>();

  constructor() {
    this.server = spawn(process.execPath, [path.join(ROOT, 'dist/server.cjs'), '--stdio'], {
      stdio: ['pipe', 'pipe', 'inherit']
    });
    this.connection = createProtocolConnection(
      new StreamMessageReader(this.server.stdout!),
      new StreamMessageWriter(this.server.stdin!)
    );
    this.connection.onNotification('textDocument/publishDiagnostics', (params: PublishDiagnosticsParams) => {
      this.published.set(params.uri, params);
      this.history.push(params);
      for (const look of [...this.waiting]) look();
    });
    this.connection.onRequest('paving/listFiles', ({ folder }: { folder: string }) => ({
      uris: specsIn(fileURLToPath(folder)).map(file => pathToFileURL(file).href),
      all: true
    }));
    this.connection.listen();
  }

  async start(folder: string, capabilities: ClientCapabilities = {}): Promise<unknown> {
    const uri = pathToFileURL(folder).href;
    const result = await this.connection.sendRequest('initialize', {
      processId: process.pid,
      rootUri: uri,
      capabilities: { ...capabilities, workspace: { ...capabilities.workspace, workspaceFolders: true } },
      workspaceFolders: [{ uri, name: 'jobs' }]
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

  changedOnDisk(uri: string): Promise<void> {
    return this.connection.sendNotification('workspace/didChangeWatchedFiles', { changes: [{ uri, type: 2 }] });
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
  ask<R>(method: string, params: unknown): Promise<R> {
    return this.connection.sendRequest(method, params);
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
    await this.connection.sendNotification('exit');
    this.connection.dispose();
    this.server.kill();
  }
}

function specsIn(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter(name => name.endsWith('.paving'))
    .map(name => path.join(folder, name));
}
