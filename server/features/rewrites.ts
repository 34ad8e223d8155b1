import { CodeActionKind, type CodeAction } from 'vscode-languageserver';
import { holds } from '../../language/editing/rewrites/holds.ts';
import type { Rewrite } from '../../language/editing/rewrites/rewrite.ts';
import { rewritesAt } from '../../language/editing/rewrites/rewrites-at.ts';
import { rangeOf } from '../diagnostics.ts';
import { workspaceEdit } from '../edits.ts';
import { nameHereCommand } from '../protocol.ts';
import type { Seen } from '../languages.ts';
import type { Workspace } from '../workspace.ts';
import type { ActionProvider } from './code-actions.ts';

const KINDS: Readonly<Record<Rewrite['kind'], CodeActionKind>> = {
  rewrite: CodeActionKind.RefactorRewrite,
  extract: CodeActionKind.RefactorExtract,
  inline: CodeActionKind.RefactorInline
};

/**
 * Other ways to write what stands at a place. Each is tried out first, and only what holds is offered; that works out the
 * job anew for each, so it is done for whoever opens the menu, and not at every move of the cursor.
 */
export const rewrites: ActionProvider = {
  kinds: Object.values(KINDS),
  async actionsAt(workspace, { textDocument, range, isUnasked, wants }, token) {
    if (isUnasked) return [];
    const { uri } = textDocument;
    const result = await workspace.settled(uri, token);
    const seen = await workspace.look(uri);
    const document = workspace.documentOf(uri);
    if (result === undefined || seen === undefined || document === undefined) return [];
    const [start, end] = [document.offsetAt(range.start), document.offsetAt(range.end)];
    const offered: CodeAction[] = [];
    for (const rewrite of rewritesAt(seen, result.evaluation, start, end, kind => wants(KINDS[kind]))) {
      const after = await workspace.tryOut(uri, rewrite.text, token);
      if (after !== undefined && holds(rewrite, result.evaluation, after))
        offered.push(action(workspace, seen, rewrite));
    }
    return offered;
  }
};

function action(workspace: Workspace, seen: Seen, { title, kind, edits, cursor }: Rewrite): CodeAction {
  const edit = workspaceEdit(workspace, seen.files, edits);
  if (cursor === undefined) return { title, kind: KINDS[kind], edit };
  const { line, character } = rangeOf(cursor).start;
  const nameIt = {
    title: 'Give it another name',
    command: nameHereCommand,
    arguments: [workspace.editorsAddress(seen.uri), line, character]
  };
  return { title, kind: KINDS[kind], edit, command: nameIt };
}
