import { CodeActionKind, type CodeAction } from 'vscode-languageserver';
import { workspaceEdit } from '../edits.ts';
import type { Workspace } from '../workspace.ts';
import type { ActionProvider } from './code-actions.ts';
import type { Told } from '../diagnostics.ts';

/** What would mend the findings at a place: worked out from the text as it stands, whatever findings the editor sends along. */
export const fixes: ActionProvider = {
  kinds: [CodeActionKind.QuickFix],
  async actionsAt(workspace, { textDocument, range }, token) {
    const told = await workspace.findingsOf(textDocument.uri, token);
    const here = told.filter(({ diagnostic }) => touches(diagnostic.range, range));
    return here.flatMap(each => quickFixes(workspace, each));
  }
};

type Range = Told['diagnostic']['range'];

function quickFixes(workspace: Workspace, { finding, diagnostic, files }: Told): CodeAction[] {
  return finding.fixes.map(({ title, safe, edits }) => ({
    title,
    kind: CodeActionKind.QuickFix,
    diagnostics: [diagnostic],
    isPreferred: safe || finding.fixes.length === 1,
    edit: workspaceEdit(workspace, files, edits)
  }));
}

function touches(one: Range, other: Range): boolean {
  return !isBefore(one.end, other.start) && !isBefore(other.end, one.start);
}

function isBefore(one: Range['start'], other: Range['start']): boolean {
  return one.line < other.line || (one.line === other.line && one.character < other.character);
}
