// Panels of one kind: each shows one thing, and follows what is typed.
import * as vscode from 'vscode';
import { State, type BaseLanguageClient } from 'vscode-languageclient';
import { pageFor, panelFolder, type PageOf } from './panel-page.ts';
import type { ServerWork } from './server-work.ts';

export interface PanelKind<About> {
  readonly viewType: string;
  readonly page: PageOf;
  nameOf(about: About): string;
  titleOf(about: About): string;
  /** What a panel showed before the window was opened again; undefined where that can't be told. */
  aboutIn(state: unknown): About | undefined;
  fill(panel: vscode.WebviewPanel, about: About): ShownPanel;
}

export interface ShownPanel extends vscode.Disposable {
  /** A text has changed. */
  changed(): void;
}

export class Panels<About> implements vscode.Disposable {
  private readonly kind: PanelKind<About>;
  private readonly extensionFolder: vscode.Uri;
  private readonly open = new Map<string, { readonly panel: vscode.WebviewPanel; readonly shown: ShownPanel }>();
  private readonly listening: vscode.Disposable;

  constructor(kind: PanelKind<About>, client: BaseLanguageClient, work: ServerWork, extensionFolder: vscode.Uri) {
    this.kind = kind;
    this.extensionFolder = extensionFolder;
    this.listening = vscode.Disposable.from(
      vscode.workspace.onDidChangeTextDocument(({ document }) => {
        if (document.languageId === 'paving') this.changed();
      }),
      // A file that is used may have changed where it stands open nowhere.
      work.onDidChange(working => {
        if (!working) this.changed();
      }),
      client.onDidChangeState(({ newState }) => {
        if (newState === State.Running) this.changed();
      }),
      vscode.window.registerWebviewPanelSerializer(kind.viewType, {
        deserializeWebviewPanel: (panel, state: unknown) => {
          const about = kind.aboutIn(state);
          if (about === undefined) panel.dispose();
          else this.fill(panel, about);
          return Promise.resolve();
        }
      })
    );
  }

  /** Opens a panel, or brings the one to the front that shows the same. */
  show(about: About, preserveFocus = false): void {
    const known = this.open.get(this.kind.nameOf(about));
    if (known !== undefined) return known.panel.reveal(undefined, preserveFocus);
    const place = { viewColumn: vscode.ViewColumn.Beside, preserveFocus };
    this.fill(vscode.window.createWebviewPanel(this.kind.viewType, this.kind.titleOf(about), place), about);
  }

  changed(): void {
    for (const { shown } of this.open.values()) shown.changed();
  }

  dispose(): void {
    this.listening.dispose();
    for (const { panel } of this.open.values()) panel.dispose();
  }

  private fill(panel: vscode.WebviewPanel, about: About): void {
    const { kind, extensionFolder } = this;
    panel.webview.options = { enableScripts: true, localResourceRoots: [panelFolder(extensionFolder)] };
    const shown = kind.fill(panel, about);
    const name = kind.nameOf(about);
    this.open.set(name, { panel, shown });
    panel.onDidDispose(() => {
      shown.dispose();
      if (this.open.get(name)?.panel === panel) this.open.delete(name);
    });
    panel.webview.html = pageFor(panel.webview, extensionFolder, kind.page);
  }
}

/** The name of a file, as titles have it. */
export function baseOf(address: string): string {
  const { path } = vscode.Uri.parse(address);
  return path.slice(path.lastIndexOf('/') + 1);
}
