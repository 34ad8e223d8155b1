// The panels of live plans, one for each job: they follow what is typed, and lead to the text and back.
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { dragged } from './drag.ts';
import { Follower } from './follower.ts';
import { MarkedInText } from './marked-in-text.ts';
import { openPlace } from './open-place.ts';
import { isFromPlan, isPlanState, type FromPlan, type ToPlan } from './panel/plan/messages.ts';
import { baseOf, Panels, type ShownPanel } from './panels.ts';
import { planWords } from './plan-words.ts';
import type { ServerWork } from './server-work.ts';
import { askAbout } from './text-asking.ts';
import type { TextLocation } from '../server/protocol.ts';
import {
  placeOfThingRequest,
  planRequest,
  sectionRequest,
  thingsAtRequest,
  type PlaceOfThingResult,
  type PlanResult,
  type SectionLine,
  type SectionResult,
  type ThingsAtResult
} from '../server/plan-protocol.ts';

/** The server waits for a pause in typing by itself, ms. */
const PAUSE = 30;

/** The cursor stands still for so long before the plan is told, ms. */
const CURSOR_PAUSE = 80;

export class PlanPanels implements vscode.Disposable {
  private readonly panels: Panels<string>;

  constructor(client: BaseLanguageClient, work: ServerWork, extensionFolder: vscode.Uri) {
    this.panels = new Panels<string>(
      {
        viewType: 'paving.plan',
        page: { title: 'Plan', name: 'plan' },
        nameOf: file => file,
        titleOf: file => vscode.l10n.t('Plan of {0}', baseOf(file)),
        aboutIn: state => (isPlanState(state) ? state.about : undefined),
        fill: (panel, file) => new PlanPanel(client, panel, file)
      },
      client,
      work,
      extensionFolder
    );
  }

  show(file: vscode.Uri): void {
    this.panels.show(file.toString());
  }

  dispose(): void {
    this.panels.dispose();
  }
}

class PlanPanel implements ShownPanel {
  private readonly client: BaseLanguageClient;
  private readonly panel: vscode.WebviewPanel;
  /** Address of the text. */
  private readonly file: string;
  private readonly follower: Follower;
  private readonly cursor: Follower;
  private readonly marked = new MarkedInText();
  private readonly listening: vscode.Disposable;
  /** Of the plan that the page has. */
  private number: number | undefined;
  private selected = '';

  constructor(client: BaseLanguageClient, panel: vscode.WebviewPanel, file: string) {
    this.client = client;
    this.panel = panel;
    this.file = file;
    const isSeen = () => panel.visible;
    this.follower = new Follower({ pause: PAUSE, isSeen, renew: token => this.renew(token) });
    this.cursor = new Follower({ pause: CURSOR_PAUSE, isSeen, renew: token => this.tellCursor(token) });
    this.listening = vscode.Disposable.from(
      panel.webview.onDidReceiveMessage((message: unknown) => {
        if (isFromPlan(message)) void this.hear(message).catch((error: unknown) => this.tellFailed(message, error));
      }),
      panel.onDidChangeViewState(() => {
        if (!panel.visible) return;
        this.follower.seen();
        this.cursor.seen();
      }),
      vscode.window.onDidChangeTextEditorSelection(({ textEditor }) => {
        if (textEditor.document.languageId === 'paving') this.cursor.changed();
      }),
      vscode.window.onDidChangeVisibleTextEditors(() => void this.markSelected())
    );
  }

  changed(): void {
    this.follower.changed();
  }

  dispose(): void {
    this.follower.dispose();
    this.cursor.dispose();
    this.marked.dispose();
    this.listening.dispose();
  }

  private tell(message: ToPlan): Thenable<boolean> {
    return this.panel.webview.postMessage(message);
  }

  private async hear(message: FromPlan): Promise<void> {
    if (message.kind === 'ready') {
      // A page that was hidden begins anew.
      this.number = undefined;
      await this.follower.renew();
    } else if (message.kind === 'open') {
      const place = await this.placeOf(message.thing);
      if (place !== undefined) await openPlace(place, this.panel);
    } else if (message.kind === 'select') {
      this.selected = message.thing;
      await this.markSelected();
    } else if (message.kind === 'drag') {
      const problem = await dragged(this.client, this.file, message);
      if (problem !== undefined) await this.tell({ kind: 'not-dragged', problem });
    } else {
      await this.tellSection(message.along);
    }
  }

  /** What waits for an answer gets one. */
  private async tellFailed({ kind }: FromPlan, error: unknown): Promise<void> {
    const problem = error instanceof Error ? error.message : String(error);
    if (kind === 'drag') await this.tell({ kind: 'not-dragged', problem });
    else if (kind === 'section') await this.tell({ kind: 'no-section', problem });
    else await vscode.window.showErrorMessage(problem);
  }

  // ---- the plan follows the text ----

  private async renew(token: vscode.CancellationToken): Promise<void> {
    const has = this.number === undefined ? {} : { has: this.number };
    const result = await this.ask<PlanResult>(planRequest, has, token);
    if (result === undefined) return;
    const { file: about } = this;
    const words = planWords();
    if ('problem' in result) {
      this.number = undefined;
      await this.tell({ kind: 'problem', about, words, problem: result.problem });
      return;
    }
    this.number = result.number;
    if ('plan' in result) await this.tell({ kind: 'plan', about, words, ...result });
    else if (result.number !== result.since) await this.tell({ kind: 'patch', ...result });
    this.cursor.changed();
    await this.markSelected();
  }

  /** Which things of the plan the cursor stands in, of the text that was last worked in. */
  private async tellCursor(token: vscode.CancellationToken): Promise<void> {
    const editor = vscode.window.activeTextEditor;
    if (editor?.document.languageId !== 'paving') return;
    const { line, character } = editor.selection.active;
    const uri = this.client.code2ProtocolConverter.asUri(editor.document.uri);
    const asked = { uri, position: { line, character } };
    const answer = await this.ask<ThingsAtResult>(thingsAtRequest, asked, token);
    if (answer !== undefined && !('problem' in answer)) await this.tell({ kind: 'at-cursor', things: answer.things });
  }

  // ---- the text follows the plan ----

  private async markSelected(): Promise<void> {
    const { selected } = this;
    const place = selected === '' ? undefined : await this.placeOf(selected);
    if (selected === this.selected) this.marked.mark(place);
  }

  private async placeOf(thing: string): Promise<TextLocation | undefined> {
    const answer = await this.ask<PlaceOfThingResult>(placeOfThingRequest, { thing });
    return answer === undefined || 'problem' in answer ? undefined : (answer.place ?? undefined);
  }

  private async tellSection(along: SectionLine): Promise<void> {
    const answer = await this.ask<SectionResult>(sectionRequest, { along });
    if (answer === undefined) return;
    await this.tell('problem' in answer ? { kind: 'no-section', ...answer } : { kind: 'section', ...answer });
  }

  private ask<R extends object>(method: string, params: object, token?: vscode.CancellationToken) {
    return askAbout<R>(this.client, this.file, method, params, token);
  }
}
