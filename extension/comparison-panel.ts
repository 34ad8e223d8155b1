// The panels of comparisons: each shows one pair of texts, and follows what is typed.
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { Follower } from './follower.ts';
import { openPlace } from './open-place.ts';
import { isFromPanel, isPanelState, type About, type PanelWords, type ToPanel } from './panel/messages.ts';
import { baseOf, Panels, type ShownPanel } from './panels.ts';
import type { ServerWork } from './server-work.ts';
import { askAbout } from './text-asking.ts';
import {
  compareRequest,
  headMovedNotification,
  type CompareParams,
  type CompareResult,
  type ShownComparison
} from '../server/protocol.ts';

/** ms */
const PAUSE = 300;

export class ComparisonPanels implements vscode.Disposable {
  private readonly panels: Panels<About>;
  private readonly listening: vscode.Disposable;

  constructor(client: BaseLanguageClient, work: ServerWork, extensionFolder: vscode.Uri) {
    const panels = new Panels<About>(
      {
        viewType: 'paving.comparison',
        page: { title: 'Comparison', name: 'panel' },
        nameOf,
        titleOf,
        aboutIn: state => (isPanelState(state) ? state.about : undefined),
        fill: (panel, about) => new ComparisonPanel(client, panel, about)
      },
      client,
      work,
      extensionFolder
    );
    this.panels = panels;
    this.listening = client.onNotification(headMovedNotification, () => panels.changed());
  }

  /** Opens a panel, or brings the one to the front that shows the same. */
  show(about: About): void {
    this.panels.show(about);
  }

  dispose(): void {
    this.listening.dispose();
    this.panels.dispose();
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

/** One panel: what it shows is asked for as soon as it is seen, and anew whenever a text has changed. */
class ComparisonPanel implements ShownPanel {
  private readonly client: BaseLanguageClient;
  private readonly panel: vscode.WebviewPanel;
  private readonly about: About;
  private readonly follower: Follower;
  private version = 0;
  private shown: ShownComparison | undefined;

  constructor(client: BaseLanguageClient, panel: vscode.WebviewPanel, about: About) {
    this.client = client;
    this.panel = panel;
    this.about = about;
    const follower = new Follower({
      pause: PAUSE,
      isSeen: () => panel.visible,
      renew: token => this.renew(token)
    });
    this.follower = follower;
    panel.webview.onDidReceiveMessage((message: unknown) => {
      if (!isFromPanel(message)) return;
      // A page that was hidden begins anew.
      if (message.kind === 'ready') return void follower.renew();
      const place = this.shown?.sections[message.section]?.rows[message.row]?.places[message.side];
      if (message.version === this.version && place !== undefined) void openPlace(place, panel);
    });
    panel.onDidChangeViewState(() => {
      if (panel.visible) follower.seen();
    });
  }

  changed(): void {
    this.follower.changed();
  }

  dispose(): void {
    this.follower.dispose();
  }

  private async renew(token: vscode.CancellationToken): Promise<void> {
    const { file, against } = this.about;
    const params: Omit<CompareParams, 'textDocument'> = { against };
    const result = await askAbout<CompareResult>(this.client, file, compareRequest, params, token);
    if (result !== undefined) await this.panel.webview.postMessage(this.messageOf(result));
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

const words = (): PanelWords => ({
  by: vscode.l10n.t('By'),
  edit: vscode.l10n.t('Edit'),
  nothingDiffers: vscode.l10n.t('Nothing differs in meaning.'),
  toText: vscode.l10n.t('Go to the text'),
  toOlderText: vscode.l10n.t('Go to the text as it was')
});
