import { CodeActionKind, type CancellationToken, type CodeAction } from 'vscode-languageserver';
import { withSafeFixes } from '../../language/editing/safe-fixes.ts';
import { changeBetween } from '../../language/editing/apply-changes.ts';
import type { Finding, TextChange } from '../../language/findings/finding.ts';
import type { Told } from '../diagnostics.ts';
import { workspaceEdit } from '../edits.ts';
import { sameAddress, type FolderFiles } from '../folder-files.ts';
import type { Workspace } from '../workspace.ts';
import type { ActionProvider, AskedActions } from './code-actions.ts';

const FIX_ALL = `${CodeActionKind.SourceFixAll}.paving`;

/** What would mend the findings: worked out from the text as it stands, whatever findings the editor sends along. */
export const fixes: ActionProvider = {
  kinds: [CodeActionKind.QuickFix, FIX_ALL],
  async actionsAt(workspace, { textDocument, range, wants }, token) {
    const told = await workspace.findingsOf(textDocument.uri, token);
    const here = wants(CodeActionKind.QuickFix)
      ? told.filter(({ diagnostic }) => touches(diagnostic.range, range))
      : [];
    return [
      ...once(here.flatMap(each => quickFixes(workspace, each))),
      ...(wants(FIX_ALL) ? await fixAll(workspace, told, textDocument, token) : [])
    ];
  }
};

type Range = Told['diagnostic']['range'];

/** What is preferred an editor may do unasked: only what is safe. */
function quickFixes(workspace: Workspace, { finding, diagnostic, files }: Told): CodeAction[] {
  return finding.fixes.map(({ title, safe, edits }) => ({
    title,
    kind: CodeActionKind.QuickFix,
    diagnostics: [diagnostic],
    isPreferred: safe,
    edit: workspaceEdit(workspace, files, edits)
  }));
}

/** One change that mends several findings is offered once, for all of them. */
function once(actions: readonly CodeAction[]): CodeAction[] {
  const byChange = new Map<string, CodeAction>();
  for (const action of actions) {
    const change = JSON.stringify([action.title, action.edit]);
    const first = byChange.get(change);
    if (first === undefined) byChange.set(change, action);
    else first.diagnostics = [...first.diagnostics!, ...action.diagnostics!];
  }
  return [...byChange.values()];
}

/** Everything safe at once, where an editor asks for it: on save, or in its menu of source actions. */
async function fixAll(
  workspace: Workspace,
  told: readonly Told[],
  { uri }: AskedActions['textDocument'],
  token: CancellationToken
): Promise<CodeAction[]> {
  const document = workspace.documentOf(uri);
  const result = workspace.resultOf(uri);
  const safe = told.filter(({ finding }) => finding.fixes.some(fix => fix.safe));
  if (document === undefined || result === undefined || safe.length === 0) return [];
  const [file, text] = [sameAddress(uri), document.getText()];
  const mended = await withSafeFixes(
    file,
    text,
    safe.map(({ finding, files }) => byAddress(finding, files)),
    async changed => {
      const tried = await workspace.tryOut(uri, changed, token);
      return tried?.findings.map(finding => byAddress(finding, result.files)) ?? [];
    }
  );
  if (mended === undefined) return [];
  const edit = workspaceEdit(workspace, result.files, [changeBetween(file, text, mended)]);
  return [
    { title: 'Fix all that is safe', kind: FIX_ALL, diagnostics: safe.map(({ diagnostic }) => diagnostic), edit }
  ];
}

/** Jobs of two folders may use one file, each by a path of its own: an address is the same for both. */
function byAddress(finding: Finding, files: FolderFiles): Finding {
  const inFile = ({ place, text }: TextChange): TextChange => ({
    place: { ...place, file: files.uriOf(place.file) },
    text
  });
  return { ...finding, fixes: finding.fixes.map(fix => ({ ...fix, edits: fix.edits.map(inFile) })) };
}

function touches(one: Range, other: Range): boolean {
  return !isBefore(one.end, other.start) && !isBefore(other.end, one.start);
}

function isBefore(one: Range['start'], other: Range['start']): boolean {
  return one.line < other.line || (one.line === other.line && one.character < other.character);
}
