// The quantities in the side bar: what the job of the text in front comes to, row by row.
import * as vscode from 'vscode';
import { State, type BaseLanguageClient } from 'vscode-languageclient';
import {
  contentsTableRequest,
  jobContentsRequest,
  type ContentsRow,
  type ContentsTableParams,
  type ContentsTableResult,
  type JobContents,
  type JobContentsParams,
  type JobContentsResult
} from '../server/plan-protocol.ts';
import type { TextLocation } from '../server/protocol.ts';
import { isChecked } from './checked-texts.ts';
import { tellNoAnswer } from './commands.ts';
import { rangeOf } from './open-place.ts';
import { baseOf } from './panels.ts';
import type { ServerWork } from './server-work.ts';

const viewId = 'paving.quantities';
const copyCommand = 'paving.copyTable';
const copyAllCommand = 'paving.copyAllAsTable';
const openCommand = 'paving.openQuantity';

/** Typing pauses for so long before the rows are made anew, ms. */
const PAUSE = 200;

/** How long it is said that a table was copied, ms. */
const SAID_FOR = 4000;

export function registerQuantitiesView(client: BaseLanguageClient, work: ServerWork): vscode.Disposable {
  const quantities = new Quantities(client);
  const view = vscode.window.createTreeView(viewId, { treeDataProvider: quantities, showCollapseAll: true });
  quantities.shownIn(view);
  return vscode.Disposable.from(
    quantities,
    view,
    view.onDidExpandElement(({ element }) => quantities.opened(element, true)),
    view.onDidCollapseElement(({ element }) => quantities.opened(element, false)),
    view.onDidChangeVisibility(() => quantities.changed()),
    vscode.window.onDidChangeActiveTextEditor(() => quantities.changed(0)),
    vscode.workspace.onDidCloseTextDocument(document => quantities.closed(document)),
    // Between one tab and the next there may be none for a moment: it is looked at after the pause.
    vscode.window.tabGroups.onDidChangeTabs(() => quantities.changed()),
    work.onDidChange(working => {
      if (!working) quantities.changed();
    }),
    client.onDidChangeState(({ newState }) => {
      if (newState !== State.Starting) quantities.changed();
    }),
    vscode.commands.registerCommand(openCommand, openPlace),
    vscode.commands.registerCommand(copyCommand, (asked: unknown) => quantities.copyRow(asked)),
    vscode.commands.registerCommand(copyAllCommand, () => quantities.copyAll())
  );
}

/** The rows of the job of the text in front; while another text is in front those of the last one stay. */
class Quantities implements vscode.TreeDataProvider<ContentsRow>, vscode.Disposable {
  private readonly client: BaseLanguageClient;
  private readonly emitter = new vscode.EventEmitter<void>();
  readonly onDidChangeTreeData = this.emitter.event;
  private view: vscode.TreeView<ContentsRow> | undefined;
  private shown: JobContents | undefined;
  /** By row whether a person has opened or closed it. */
  private readonly isOpen = new Map<string, boolean>();
  /** The job that these rows are of. */
  private isOpenIn = '';
  private asking = new vscode.CancellationTokenSource();
  private timer: ReturnType<typeof setTimeout> | undefined;

  constructor(client: BaseLanguageClient) {
    this.client = client;
  }

  shownIn(view: vscode.TreeView<ContentsRow>): void {
    this.view = view;
    this.changed(0);
  }

  dispose(): void {
    clearTimeout(this.timer);
    this.asking.cancel();
    this.asking.dispose();
    this.emitter.dispose();
  }

  getChildren(row?: ContentsRow): ContentsRow[] {
    if (row !== undefined) return [...row.inside];
    return this.shown === undefined ? [] : [this.shown.row];
  }

  getTreeItem(row: ContentsRow): vscode.TreeItem {
    const { id, kind, label, value, place, stale } = row;
    const item = new vscode.TreeItem(label, this.stateOf(row));
    item.id = id;
    item.description = value;
    item.tooltip = spoken(row);
    item.accessibilityInformation = { label: spoken(row) };
    if (ICONS[kind] !== undefined) item.iconPath = iconOf(ICONS[kind], stale === true);
    item.contextValue = 'row';
    if (place !== undefined)
      item.command = { command: openCommand, title: vscode.l10n.t('Go to the text'), arguments: [place] };
    return item;
  }

  opened({ id }: ContentsRow, isOpen: boolean): void {
    this.isOpen.set(id, isOpen);
  }

  closed(document: vscode.TextDocument): void {
    if (document.uri.toString() !== this.address) return;
    this.show(undefined);
    this.changed(0);
  }

  /** Asks anew after a pause, where anybody sees it. */
  changed(pause = PAUSE): void {
    clearTimeout(this.timer);
    tellOfJob();
    if (this.view?.visible === true) this.timer = setTimeout(() => void this.refresh(), pause);
  }

  /** A row and all in it, as it stands now: the one asked for, else the one selected. */
  async copyRow(asked: unknown): Promise<void> {
    const row = idOf(asked) ?? this.view?.selection[0]?.id;
    if (row !== undefined && this.shown !== undefined) await this.copy(this.shown, row);
  }

  async copyAll(): Promise<void> {
    const found = await this.contents(new vscode.CancellationTokenSource().token);
    if (found) await this.copy(found, found.row.id);
    else if (!this.client.isRunning()) await tellNoAnswer();
    else void vscode.window.showInformationMessage(vscode.l10n.t('No job is open.'));
  }

  private async copy({ uri }: JobContents, row: string): Promise<void> {
    const params: ContentsTableParams = { textDocument: this.identified(vscode.Uri.parse(uri)), row };
    const answer = await this.answer<ContentsTableResult>(contentsTableRequest, params);
    if (answer?.table === undefined) return this.client.isRunning() ? this.changed(0) : tellNoAnswer();
    await vscode.env.clipboard.writeText(answer.table);
    vscode.window.setStatusBarMessage(vscode.l10n.t('Copied as a table.'), SAID_FOR);
  }

  private get address(): string | undefined {
    return this.shown && vscode.Uri.parse(this.shown.uri).toString();
  }

  private stateOf({ id, kind, inside }: ContentsRow): vscode.TreeItemCollapsibleState {
    const { Collapsed, Expanded, None } = vscode.TreeItemCollapsibleState;
    if (inside.length === 0) return None;
    return (this.isOpen.get(id) ?? kind === 'job') ? Expanded : Collapsed;
  }

  private async refresh(): Promise<void> {
    this.asking.cancel();
    this.asking.dispose();
    const { token } = (this.asking = new vscode.CancellationTokenSource());
    const found = await this.contents(token);
    // Something newer is being asked for.
    if (token.isCancellationRequested) return;
    // Where no answer came the rows stay.
    if (found !== undefined) this.show(found ?? undefined);
    if (this.view !== undefined)
      this.view.message = this.client.isRunning() ? '' : vscode.l10n.t('The language server does not answer.');
  }

  /** Of the text in front; where that has no job, of the job that was shown last. Null where neither is one any more. */
  private async contents(token: vscode.CancellationToken): Promise<JobContentsResult | undefined> {
    if (!this.client.isRunning()) return undefined;
    const front = vscode.window.activeTextEditor?.document;
    const addresses = [
      ...(front?.languageId === 'paving' && isChecked(front.uri) ? [front.uri] : []),
      ...(this.address !== undefined && isOpenText(this.address) ? [vscode.Uri.parse(this.address)] : [])
    ];
    for (const uri of addresses) {
      const params: JobContentsParams = { textDocument: this.identified(uri) };
      const answer = await this.answer<JobContentsResult>(jobContentsRequest, params, token);
      if (answer !== null) return answer;
    }
    return null;
  }

  private identified(uri: vscode.Uri): JobContentsParams['textDocument'] {
    return { uri: this.client.code2ProtocolConverter.asUri(uri) };
  }

  /** Undefined where no server answers: the rows stay, and what was asked is asked again when it does. */
  private async answer<R>(method: string, params: object, token?: vscode.CancellationToken): Promise<R | undefined> {
    if (!this.client.isRunning()) return undefined;
    try {
      return await this.client.sendRequest<R>(method, params, token);
    } catch {
      return undefined;
    }
  }

  private show(found: JobContents | undefined): void {
    if (JSON.stringify(found) === JSON.stringify(this.shown)) return;
    this.shown = found;
    if (found !== undefined && found.uri !== this.isOpenIn) this.isOpen.clear();
    this.isOpenIn = found?.uri ?? this.isOpenIn;
    if (this.view !== undefined) this.view.description = found === undefined ? '' : baseOf(found.uri);
    this.emitter.fire();
  }
}

/** From then on the side bar has the view: a job stands open, or stood open once. */
function tellOfJob(): void {
  if (!vscode.workspace.textDocuments.some(({ languageId }) => languageId === 'paving')) return;
  void vscode.commands.executeCommand('setContext', 'paving.jobOpened', true);
}

/** The editor holds on to a text for a while after it is closed: where no tab is left at all, that is not waited for. */
function isOpenText(address: string): boolean {
  const isHeld = vscode.workspace.textDocuments.some(({ uri, isClosed }) => !isClosed && uri.toString() === address);
  return isHeld && vscode.window.tabGroups.all.some(({ tabs }) => tabs.length > 0);
}

/** All of it in words. */
function spoken({ label, value }: ContentsRow): string {
  return value === '' ? label : `${label}: ${value}`;
}

/** A menu hands over the row, another program its id. */
function idOf(asked: unknown): string | undefined {
  if (typeof asked === 'string') return asked;
  const { id } = (asked ?? {}) as { id?: unknown };
  return typeof id === 'string' ? id : undefined;
}

const ICONS: Readonly<Record<string, string>> = {
  job: 'book',
  area: 'symbol-class',
  dig: 'arrow-down',
  layer: 'layers',
  unit: 'symbol-numeric',
  joints: 'dash',
  geotextile: 'symbol-array',
  edge: 'symbol-ruler',
  edging: 'symbol-ruler',
  level: 'location',
  box: 'package',
  gate: 'split-horizontal',
  drain: 'filter',
  order: 'tag',
  delivery: 'arrow-right',
  error: 'error',
  warning: 'warning',
  note: 'info',
  day: 'calendar',
  task: 'tools',
  caution: 'alert'
};

/** What is told from before an error is dimmed, besides saying so. */
function iconOf(icon: string, isStale: boolean): vscode.ThemeIcon {
  return isStale ? new vscode.ThemeIcon(icon, new vscode.ThemeColor('disabledForeground')) : new vscode.ThemeIcon(icon);
}

/** In the column where the text is in sight already. */
async function openPlace(place: TextLocation): Promise<void> {
  const uri = vscode.Uri.parse(place.uri);
  const shown = vscode.window.visibleTextEditors.find(({ document }) => document.uri.toString() === uri.toString());
  const column = shown?.viewColumn === undefined ? {} : { viewColumn: shown.viewColumn };
  await vscode.window.showTextDocument(uri, { selection: rangeOf(place.range), preserveFocus: false, ...column });
}
