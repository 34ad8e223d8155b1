import type { CancellationToken, FileRename, WorkspaceEdit } from 'vscode-languageserver';
import { URI } from 'vscode-uri';
import { mendedPaths } from '../../language/editing/used-files.ts';
import { pathFrom } from '../../language/path-from.ts';
import { editInFolders } from '../edits.ts';
import type { Feature } from '../feature.ts';
import { sameAddress } from '../folder-files.ts';
import type { Seen } from '../languages.ts';
import type { Workspace } from '../workspace.ts';

/** When job specs or folders are moved or renamed in the editor, `use` leads to them still, and from them. */
export const movedFiles: Feature = {
  capabilities: {
    workspace: {
      fileOperations: {
        willRename: {
          filters: [
            { pattern: { glob: '**/*.paving', matches: 'file' } },
            { pattern: { glob: '**', matches: 'folder' } }
          ]
        }
      }
    }
  },
  register(workspace) {
    workspace.connection.workspace.onWillRenameFiles(async ({ files }, token): Promise<WorkspaceEdit | null> => {
      const moves = files.map(({ oldUri, newUri }) => ({ oldUri: sameAddress(oldUri), newUri: sameAddress(newUri) }));
      const mended = (await specsAround(workspace, moves, token))
        .map(seen => ({ files: seen.files, changes: mendedIn(seen, moves) }))
        .filter(({ changes }) => changes.length > 0);
      return mended.length === 0 ? null : editInFolders(workspace, mended);
    });
  }
};

/** Every job spec in the open folders that something moves in, out of or into: one may lie in another. */
async function specsAround(
  workspace: Workspace,
  moves: readonly FileRename[],
  token: CancellationToken
): Promise<readonly Seen[]> {
  const moved = moves.flatMap(({ oldUri, newUri }) => [oldUri, newUri]);
  const folders = workspace.openFolders.filter(folder => moved.some(uri => uri.startsWith(`${folder}/`)));
  const specs: Seen[] = [];
  for (const folder of folders) {
    const { seen, all } = await workspace.lookIn(folder, token);
    if (!all) workspace.tellTooMany(folder);
    specs.push(...seen);
  }
  return specs;
}

function mendedIn({ text, uri, files }: Seen, moves: readonly FileRename[]): ReturnType<typeof mendedPaths> {
  const from = movedTo(uri, moves);
  return mendedPaths(text, path => {
    const used = files.resolve(uri, path);
    if (used === undefined) return undefined;
    const to = movedTo(used, moves);
    if ((from === uri && to === used) || files.resolve(from, path) === to) return undefined;
    const mended = pathFrom(URI.parse(from).path, URI.parse(to).path);
    // What has left the folder can't be used any more: the path stays, and the finding says so.
    return files.resolve(from, mended) === to ? mended : undefined;
  });
}

/** Where a file lies after the moves: moved itself, or by a folder that it lies in. */
function movedTo(uri: string, moves: readonly FileRename[]): string {
  const move = moves.find(({ oldUri }) => uri === oldUri || uri.startsWith(`${oldUri}/`));
  return move === undefined ? uri : move.newUri + uri.slice(move.oldUri.length);
}
