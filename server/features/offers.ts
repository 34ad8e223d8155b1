import { CodeActionKind, type CodeAction } from 'vscode-languageserver';
import { keepsPromise, offersAt } from '../../language/editing/offers/offers-at.ts';
import { workspaceEdit } from '../edits.ts';
import type { ActionProvider } from './code-actions.ts';

/**
 * Better starts, sizes without cuts, slivers avoided. Each is tried out first, and only what keeps its promise is offered;
 * that lays the area many times over, so it is done for whoever opens the menu, and not at every move of the cursor.
 */
export const offers: ActionProvider = {
  kinds: [CodeActionKind.QuickFix],
  async actionsAt(workspace, { textDocument, range, isUnasked }, token) {
    if (isUnasked) return [];
    const { uri } = textDocument;
    const result = await workspace.settled(uri, token);
    const seen = await workspace.look(uri);
    const document = workspace.documentOf(uri);
    if (result === undefined || seen === undefined || document === undefined) return [];
    const [start, end] = [document.offsetAt(range.start), document.offsetAt(range.end)];
    const found = await workspace.sliced(offersAt(seen, result.evaluation, start, end), token);
    const offered: CodeAction[] = [];
    for (const offer of found ?? []) {
      const after = await workspace.tryOut(uri, offer.text, token);
      if (after === undefined) continue;
      if (await workspace.sliced(keepsPromise(offer, result.evaluation, after), token))
        offered.push({
          title: offer.title,
          kind: CodeActionKind.QuickFix,
          edit: workspaceEdit(workspace, seen.files, offer.edits)
        });
    }
    return offered;
  }
};
