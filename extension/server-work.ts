// When the server begins and ends work: the client lets one alone listen to what the server tells.
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { workNotification, type WorkParams } from '../server/protocol.ts';

export class ServerWork implements vscode.Disposable {
  private readonly emitter = new vscode.EventEmitter<boolean>();
  private readonly listening: vscode.Disposable;
  /** True as work begins, false when nothing is left to do. */
  readonly onDidChange = this.emitter.event;

  constructor(client: BaseLanguageClient) {
    this.listening = client.onNotification(workNotification, ({ working }: WorkParams) => this.emitter.fire(working));
  }

  dispose(): void {
    this.listening.dispose();
    this.emitter.dispose();
  }
}
