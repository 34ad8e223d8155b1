// Lets the person choose what a job is compared with: a revision out of a list, one that is typed, or another file.
import * as vscode from 'vscode';
import type { ComparedWith, NamedRevision } from '../server/protocol.ts';
import { listFiles } from './list-files.ts';

interface Item extends vscode.QuickPickItem {
  readonly revision?: string;
}

/** The chosen revision, `another file`, or nothing: the person has left. */
export function pickRevision(revisions: readonly NamedRevision[]): Promise<string | 'another file' | undefined> {
  const list = vscode.window.createQuickPick<Item>();
  const otherFile: Item = { label: vscode.l10n.t('Another file…') };
  const known = [...revisions.map(itemOf), separator(vscode.l10n.t('Without history')), otherFile];
  list.title = vscode.l10n.t('Compare with a revision');
  list.placeholder = vscode.l10n.t('Choose a revision, or type any: a branch, a tag, HEAD~1');
  list.matchOnDescription = true;
  list.matchOnDetail = true;
  list.items = known;
  list.onDidChangeValue(value => (list.items = [...typed(value.trim(), revisions), ...known]));
  return new Promise<string | undefined>(resolve => {
    list.onDidAccept(() => {
      const [chosen] = list.selectedItems;
      if (chosen !== undefined) resolve(chosen === otherFile ? 'another file' : chosen.revision);
    });
    list.onDidHide(() => resolve(undefined));
    list.show();
  }).finally(() => list.dispose());
}

function itemOf({ name, kind, date, subject }: NamedRevision): Item {
  return {
    label: name,
    description: [date, subject].filter(words => words !== '').join(' · '),
    iconPath: new vscode.ThemeIcon(ICONS[kind]),
    revision: name
  };
}

const ICONS: Readonly<Record<NamedRevision['kind'], string>> = {
  head: 'git-commit',
  branch: 'git-branch',
  tag: 'tag',
  commit: 'git-commit'
};

/** Whatever name is typed can be asked for. */
function typed(value: string, revisions: readonly NamedRevision[]): Item[] {
  if (value === '' || revisions.some(({ name }) => name === value)) return [];
  return [{ label: value, description: vscode.l10n.t('as typed'), alwaysShow: true, revision: value }];
}

function separator(label: string): Item {
  return { label, kind: vscode.QuickPickItemKind.Separator };
}

/** Another job spec of the same folder: what the job was before. */
export async function pickFile(file: vscode.Uri): Promise<ComparedWith | undefined> {
  const folder = vscode.workspace.getWorkspaceFolder(file)?.uri ?? vscode.Uri.joinPath(file, '..');
  const { uris } = await listFiles(folder);
  const items = uris
    .filter(uri => uri !== file.toString())
    .map(uri => ({ label: vscode.workspace.asRelativePath(vscode.Uri.parse(uri), false), uri }))
    .sort((left, right) => left.label.localeCompare(right.label));
  if (items.length === 0) {
    void vscode.window.showInformationMessage(vscode.l10n.t('There is no other job spec in this folder.'));
    return undefined;
  }
  const placeHolder = vscode.l10n.t('Which file has the job as it was before?');
  const picked = await vscode.window.showQuickPick(items, { placeHolder });
  return picked && { uri: picked.uri };
}
