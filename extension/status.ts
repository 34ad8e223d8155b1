// The one status item: how the server is, and how much it found in the text in front.
import * as vscode from 'vscode';
import { State, type BaseLanguageClient } from 'vscode-languageclient';
import { isChecked } from './checked-texts.ts';
import { restartCommand, showLogCommand } from './commands.ts';
import type { ServerWork } from './server-work.ts';

export type ServerState = 'starting' | 'ready' | 'working' | 'stopped';

interface Shown {
  readonly text: string;
  readonly detail: string;
  readonly severity: vscode.LanguageStatusSeverity;
  readonly busy: boolean;
  readonly command: vscode.Command;
}

/** What the item shows while a text is in front. */
export function shownStatus(server: ServerState, document: vscode.TextDocument | undefined): Shown {
  const restart = { title: vscode.l10n.t('Restart'), command: restartCommand };
  const showLog = { title: vscode.l10n.t('Show the log'), command: showLogCommand };
  const isStopped = server === 'stopped';
  return {
    text: serverText(server),
    detail: isStopped ? vscode.l10n.t('No findings and no figures: see the log') : findingsText(document),
    severity: isStopped ? vscode.LanguageStatusSeverity.Error : vscode.LanguageStatusSeverity.Information,
    busy: server === 'starting' || server === 'working',
    command: isStopped ? restart : showLog
  };
}

function serverText(server: ServerState): string {
  switch (server) {
    case 'starting':
      return vscode.l10n.t('Paving: starting');
    case 'ready':
      return vscode.l10n.t('Paving: ready');
    case 'working':
      return vscode.l10n.t('Paving: working it out');
    case 'stopped':
      return vscode.l10n.t('Paving: stopped');
  }
}

function findingsText(document: vscode.TextDocument | undefined): string {
  if (document === undefined) return '';
  if (!isChecked(document.uri)) return vscode.l10n.t('This text is only for reading: it is not checked.');
  const ours = vscode.languages.getDiagnostics(document.uri).filter(({ source }) => source === 'paving');
  if (ours.length === 0) return vscode.l10n.t('No findings in this file');
  const count = (weight: vscode.DiagnosticSeverity) => ours.filter(({ severity }) => severity === weight).length;
  const { Error, Warning, Information } = vscode.DiagnosticSeverity;
  return vscode.l10n.t(
    'In this file: errors {0}, warnings {1}, notes {2}',
    count(Error),
    count(Warning),
    count(Information)
  );
}

/** Work that ends sooner than this is not shown: it would only flicker, ms. */
const UNSEEN = 400;

export function showStatus(client: BaseLanguageClient, work: ServerWork): vscode.Disposable {
  const item = vscode.languages.createLanguageStatusItem('paving.status', { language: 'paving' });
  item.name = vscode.l10n.t('Paving job spec');
  let server: ServerState = 'starting';
  let timer: ReturnType<typeof setTimeout> | undefined;
  const show = (): void => {
    Object.assign(item, shownStatus(server, frontDocument()));
  };
  const become = (state: ServerState): void => {
    clearTimeout(timer);
    server = state;
    show();
  };
  show();
  return vscode.Disposable.from(
    item,
    new vscode.Disposable(() => clearTimeout(timer)),
    client.onDidChangeState(({ newState }) => become(SERVER_STATES[newState])),
    work.onDidChange(working => {
      clearTimeout(timer);
      if (working) timer = setTimeout(() => become('working'), UNSEEN);
      else become('ready');
    }),
    vscode.languages.onDidChangeDiagnostics(show),
    vscode.window.onDidChangeActiveTextEditor(show)
  );
}

const SERVER_STATES: Readonly<Record<State, ServerState>> = {
  [State.Starting]: 'starting',
  [State.Running]: 'ready',
  [State.Stopped]: 'stopped'
};

function frontDocument(): vscode.TextDocument | undefined {
  const document = vscode.window.activeTextEditor?.document;
  return document?.languageId === 'paving' ? document : undefined;
}
