// The panels of comparisons: each shows one pair of texts, and follows what is typed.
import * as vscode from 'vscode';
import { State, type BaseLanguageClient } from 'vscode-languageclient';
import { pageFor, panelFolder } from './comparison-page.ts';
import { isFromPanel, isPanelState, type About, type PanelWords, type ToPanel } from './panel/messages.ts';
import {
  compareRequest,
  headMovedNotification,
  type CompareParams,
  type CompareResult,
  type ShownComparison,
  type TextLocation
} from '../server/protocol.ts';

const viewType = 'paving.comparison';

/** Typing pauses for so long before a comparison is made anew, ms. */
const PAUSE = 300;

export class ComparisonPanels implements vscode.Disposable {
  private readonly client: BaseLanguageClient;
  private readonly extensionFolder: vscode.Uri;
  private readonly open = new Map<string, ComparisonPanel>();
  private readonly listening: vscode.Disposable;

  constructor(client: BaseLanguageClient, extensionFolder: vscode.Uri) {
    this.client = client;
    this.extensionFolder = extensionFolder;
    const refreshAll = () => this.open.forEach(panel => panel.changed());
    this.listening = vscode.Disposable.from(
      vscode.workspace.onDidChangeTextDocument(({ document }) => {
        if (document.languageId === 'paving') refreshAll();
      }),
      client.onNotification(headMovedNotification, refreshAll),
      client.onDidChangeState(({ newState }) => {
        if (newState === State.Running) refreshAll();
      }),
      vscode.window.registerWebviewPanelSerializer(viewType, {
        deserializeWebviewPanel: (panel, state: unknown) => {
          if (isPanelState(state)) this.fill(panel, state.about);
          else panel.dispose();
          return Promise.resolve();
        }
      })
    );
  }

  /** Opens a panel, or brings the one to the front that shows the same. */
  show(about: About): void {
    const known = this.open.get(nameOf(about));
    if (known !== undefined) return known.reveal();
    const place = { viewColumn: vscode.ViewColumn.Beside, preserveFocus: false };
    this.fill(vscode.window.createWebviewPanel(viewType, titleOf(about), place), about);
  }

  dispose(): void {
    this.listening.dispose();
    for (const panel of this.open.values()) panel.dispose();
  }

  private fill(webviewPanel: vscode.WebviewPanel, about: About): void {
    webviewPanel.webview.options = { enableScripts: true, localResourceRoots: [panelFolder(this.extensionFolder)] };
    const panel = new ComparisonPanel(this.client, webviewPanel, about);
    this.open.set(nameOf(about), panel);
    webviewPanel.onDidDispose(() => {
      panel.stop();
      this.open.delete(nameOf(about));
    });
    webviewPanel.webview.html = pageFor(webviewPanel.webview, this.extensionFolder);
  }
}

function nameOf({ file, against }: About): string {
  return JSON.stringify([file, 'revision' in against ? against.revision : { uri: against.uri }]);
}

function titleOf({ file, against }: About): string {
  const name = baseOf(file);
  return 'revision' in against
    ? vscode.l10n.t('{0} since {1}', name, against.revision)
    : vscode.l10n.t('{0} compared with {1}', name, baseOf(against.uri));
}

function baseOf(address: string): string {
  const { path } = vscode.Uri.parse(address);
  return path.slice(path.lastIndexOf('/') + 1);
}

/** One panel: what it shows is asked for as soon as it is seen, and anew whenever a text has changed. */
class ComparisonPanel {
  private readonly client: BaseLanguageClient;
  private readonly panel: vscode.WebviewPanel;
  private readonly about: About;
  private version = 0;
  private shown: ShownComparison | undefined;
  private asking = new vscode.CancellationTokenSource();
  private timer: ReturnType<typeof setTimeout> | undefined;
  /** Its script runs, and something has changed since it was told last. */
  private isOld = true;

  constructor(client: BaseLanguageClient, panel: vscode.WebviewPanel, about: About) {
    this.client = client;
    this.panel = panel;
    this.about = about;
    panel.webview.onDidReceiveMessage((message: unknown) => {
      if (!isFromPanel(message)) return;
      // A page that was hidden begins anew.
      if (message.kind === 'ready') void this.refresh();
      else if (message.version === this.version)
        void openPlace(this.shown?.sections[message.section]?.rows[message.row]?.places[message.side], panel);
    });
    panel.onDidChangeViewState(() => {
      if (panel.visible && this.isOld) this.changed();
    });
  }

  reveal(): void {
    this.panel.reveal();
  }

  dispose(): void {
    this.panel.dispose();
  }

  stop(): void {
    clearTimeout(this.timer);
    this.asking.cancel();
    this.asking.dispose();
  }

  /** Compares anew once typing pauses. */
  changed(): void {
    this.isOld = true;
    clearTimeout(this.timer);
    if (this.panel.visible) this.timer = setTimeout(() => void this.refresh(), PAUSE);
  }

  private async refresh(): Promise<void> {
    this.asking.cancel();
    this.asking.dispose();
    const asking = (this.asking = new vscode.CancellationTokenSource());
    this.isOld = false;
    const result = await this.ask(asking.token);
    // Something newer is being asked for, or the panel is gone.
    if (result === undefined || asking.token.isCancellationRequested) return;
    await this.panel.webview.postMessage(this.messageOf(result));
  }

  private async ask(token: vscode.CancellationToken): Promise<CompareResult | undefined> {
    const { file, against } = this.about;
    try {
      // The server is told of texts that stand open alone.
      const { uri } = await vscode.workspace.openTextDocument(vscode.Uri.parse(file));
      const textDocument = { uri: this.client.code2ProtocolConverter.asUri(uri) };
      const params: CompareParams = { textDocument, against };
      const answer = await this.client.sendRequest<CompareResult | null>(compareRequest, params, token);
      return answer ?? { problem: vscode.l10n.t('This text is only for reading: it is not checked.') };
    } catch (error) {
      if (token.isCancellationRequested || error instanceof vscode.CancellationError) return undefined;
      if (!this.client.isRunning()) return { problem: vscode.l10n.t('The language server does not answer.') };
      // The text has moved on while it was compared: it is asked for again as it changes.
      return isOfMovedText(error) ? undefined : { problem: error instanceof Error ? error.message : String(error) };
    }
  }

  private messageOf(result: CompareResult): ToPanel {
    const { about } = this;
    if ('problem' in result) {
      this.shown = undefined;
      return { kind: 'problem', about, problem: result.problem };
    }
    const comparison = this.readable(result);
    this.version++;
    return { kind: 'comparison', about, version: this.version, words: words(), comparison };
  }

  /** While a text has an error, what was shown before stays: numbers that come and go say nothing. */
  private readable(result: ShownComparison): ShownComparison {
    const { broken } = result;
    const { shown } = this;
    if (broken === undefined || shown === undefined || shown.broken !== undefined) return (this.shown = result);
    return { ...shown, notes: [vscode.l10n.t('As it was before {0}.', broken), ...shown.notes] };
  }
}

/** As the protocol numbers them: a request that is taken back, and a text that was changed. */
function isOfMovedText(error: unknown): boolean {
  const { code } = error as { code?: unknown };
  return code === -32800 || code === -32801;
}

const words = (): PanelWords => ({
  by: vscode.l10n.t('By'),
  edit: vscode.l10n.t('Edit'),
  nothingDiffers: vscode.l10n.t('Nothing differs in meaning.'),
  toText: vscode.l10n.t('Go to the text'),
  toOlderText: vscode.l10n.t('Go to the text as it was')
});

/** In the column where the text is in sight already, else beside the panel. */
async function openPlace(place: TextLocation | undefined, panel: vscode.WebviewPanel): Promise<void> {
  if (place === undefined) return;
  const uri = vscode.Uri.parse(place.uri);
  const { start, end } = place.range;
  const selection = new vscode.Range(start.line, start.character, end.line, end.character);
  const editors = vscode.window.visibleTextEditors;
  const besides = editors.filter(({ viewColumn }) => viewColumn !== undefined && viewColumn !== panel.viewColumn);
  const shown = besides.find(({ document }) => document.uri.toString() === uri.toString()) ?? besides[0];
  const viewColumn = shown?.viewColumn ?? (panel.viewColumn === 1 ? vscode.ViewColumn.Beside : 1);
  await vscode.window.showTextDocument(uri, { selection, viewColumn });
}
