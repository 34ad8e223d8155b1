import { CodeActionKind, type CancellationToken, type CodeAction, type CodeActionParams } from 'vscode-languageserver';
import { withSafeFixes } from '../../language/editing/safe-fixes.ts';
import { changeBetween } from '../../language/editing/apply-changes.ts';
import type { Told } from '../diagnostics.ts';
import { workspaceEdit } from '../edits.ts';
import type { Workspace } from '../workspace.ts';
import type { ActionProvider } from './code-actions.ts';

const FIX_ALL = `${CodeActionKind.SourceFixAll}.paving`;

/** What would mend the findings: worked out from the text as it stands, whatever findings the editor sends along. */
export const fixes: ActionProvider = {
  kinds: [CodeActionKind.QuickFix, FIX_ALL],
  async actionsAt(workspace, params, token) {
    const told = await workspace.findingsOf(params.textDocument.uri, token);
    const here = told.filter(({ diagnostic }) => touches(diagnostic.range, params.range));
    return [...here.flatMap(each => quickFixes(workspace, each)), ...(await fixAll(workspace, told, params, token))];
  }
};

type Range = Told['diagnostic']['range'];

/** Preferred is what is safe, or the only fix. */
function quickFixes(workspace: Workspace, { finding, diagnostic, files }: Told): CodeAction[] {
  return finding.fixes.map(({ title, safe, edits }) => ({
    title,
    kind: CodeActionKind.QuickFix,
    diagnostics: [diagnostic],
    isPreferred: safe || finding.fixes.length === 1,
    edit: workspaceEdit(workspace, files, edits)
  }));
}

/** Everything safe at once, where an editor asks for it: on save, or in its menu of source actions. */
async function fixAll(
  workspace: Workspace,
  told: readonly Told[],
  { textDocument, context }: CodeActionParams,
  token: CancellationToken
): Promise<CodeAction[]> {
  const document = workspace.documentOf(textDocument.uri);
  const files = told[0]?.files;
  if (document === undefined || files === undefined || context.only === undefined) return [];
  const safe = told.filter(({ finding }) => finding.fixes.some(fix => fix.safe));
  if (safe.length === 0) return [];
  const file = safe[0]!.finding.file;
  const text = document.getText();
  const mended = await withSafeFixes(
    file,
    text,
    safe.map(({ finding }) => finding),
    async changed => (await workspace.tryOut(textDocument.uri, changed, token))?.findings ?? []
  );
  if (mended === undefined) return [];
  const edit = workspaceEdit(workspace, files, [changeBetween(file, text, mended)]);
  return [
    { title: 'Fix all that is safe', kind: FIX_ALL, diagnostics: safe.map(({ diagnostic }) => diagnostic), edit }
  ];
}

function touches(one: Range, other: Range): boolean {
  return !isBefore(one.end, other.start) && !isBefore(other.end, one.start);
}

function isBefore(one: Range['start'], other: Range['start']): boolean {
  return one.line < other.line || (one.line === other.line && one.character < other.character);
}
