import type { FileRename, TextEdit, WorkspaceEdit } from 'vscode-languageserver';
import { URI } from 'vscode-uri';
import { mendedPaths } from '../../language/editing/used-files.ts';
import { pathFrom } from '../../language/path-from.ts';
import type { Feature } from '../feature.ts';
import { sameAddress } from '../folder-files.ts';
import { editsOf } from '../locations.ts';
import type { Seen, Workspace } from '../workspace.ts';

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
    workspace.connection.workspace.onWillRenameFiles(async ({ files }): Promise<WorkspaceEdit | null> => {
      const moves = files.map(({ oldUri, newUri }) => ({ oldUri: sameAddress(oldUri), newUri: sameAddress(newUri) }));
      const changes: Record<string, TextEdit[]> = {};
      for (const seen of await specsAround(workspace, moves))
        Object.assign(changes, editsOf(workspace, seen.files, mendedIn(seen, moves)));
      return Object.keys(changes).length === 0 ? null : { changes };
    });
  }
};

/** Every job spec in the folders that something moves in. */
async function specsAround(workspace: Workspace, moves: readonly FileRename[]): Promise<Iterable<Seen>> {
  const specs = new Map<string, Seen>();
  for (const { oldUri } of moves)
    for (const seen of (await workspace.lookAround(oldUri)).seen) specs.set(seen.uri, seen);
  return specs.values();
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
