import type { TextEdit, WorkspaceEdit } from 'vscode-languageserver';
import type { TextChange } from '../language/findings/finding.ts';
import { rangeOf } from './diagnostics.ts';
import type { FolderFiles } from './folder-files.ts';
import type { Workspace } from './workspace.ts';

/** Changes of one or several texts; where the editor knows how, each for the version of the text that it was made for. */
export function workspaceEdit(workspace: Workspace, files: FolderFiles, changes: readonly TextChange[]): WorkspaceEdit {
  return editInFolders(workspace, [{ files, changes }]);
}

/** The same in several folders. */
export function editInFolders(
  workspace: Workspace,
  folders: readonly { readonly files: FolderFiles; readonly changes: readonly TextChange[] }[]
): WorkspaceEdit {
  const byAddress = new Map<string, TextEdit[]>();
  for (const { files, changes } of folders)
    for (const { place, text } of changes) {
      const address = workspace.editorsAddress(files.uriOf(place.file));
      const edits = byAddress.get(address) ?? [];
      byAddress.set(address, edits);
      edits.push({ range: rangeOf(place), newText: text });
    }
  if (!workspace.knowsVersionedEdits) return { changes: Object.fromEntries(byAddress) };
  return {
    documentChanges: [...byAddress].map(([uri, edits]) => ({
      textDocument: { uri, version: workspace.documentOf(uri)?.version ?? null },
      edits
    }))
  };
}
