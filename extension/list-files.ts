// Finds the job specs of a folder for the server, wherever the folder lies.
import * as vscode from 'vscode';
import { mostFilesListed, type ListFilesResult } from '../server/protocol.ts';

/** Folders are looked through by hand up to so many: a tree that is larger is no folder of jobs. */
const mostFolders = 2_000;

export async function listFiles(folder: vscode.Uri): Promise<ListFilesResult> {
  const specs = new vscode.RelativePattern(folder, '**/*.paving');
  const found = await vscode.workspace.findFiles(specs, undefined, mostFilesListed + 1).then(
    uris => uris,
    () => []
  );
  // Not every place that folders come from can be searched; each can be looked through.
  return found.length > 0 ? listed(found, true) : lookThrough(folder);
}

async function lookThrough(top: vscode.Uri): Promise<ListFilesResult> {
  const found: vscode.Uri[] = [];
  const folders = [top];
  for (const folder of folders) {
    if (found.length > mostFilesListed) break;
    for (const [name, type] of await entriesOf(folder)) {
      const uri = vscode.Uri.joinPath(folder, name);
      // A folder that is a link can lead round in a circle.
      if (type === vscode.FileType.Directory && !/^\.|^node_modules$/.test(name) && folders.length <= mostFolders)
        folders.push(uri);
      else if (type & vscode.FileType.File && name.endsWith('.paving')) found.push(uri);
    }
  }
  return listed(found, folders.length <= mostFolders);
}

/** None of a folder that may not be read: no job spec in it can be used either. */
async function entriesOf(folder: vscode.Uri): Promise<[string, vscode.FileType][]> {
  try {
    return await vscode.workspace.fs.readDirectory(folder);
  } catch {
    return [];
  }
}

function listed(found: readonly vscode.Uri[], all: boolean): ListFilesResult {
  const uris = found.slice(0, mostFilesListed).map(uri => uri.toString());
  return { uris, all: all && found.length <= mostFilesListed };
}
