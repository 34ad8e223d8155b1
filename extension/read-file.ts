// Reads a used file for the server where the server has no file system of its own: in a browser, in a virtual folder.
import * as vscode from 'vscode';
import { largestFile, type ReadFileResult } from '../server/protocol.ts';

export async function readFile(file: vscode.Uri, folder: vscode.Uri): Promise<ReadFileResult> {
  const steps = stepsInto(folder, file);
  if (!steps) return { problem: 'outside' };
  try {
    for (const step of steps) {
      const { type, size } = await vscode.workspace.fs.stat(step);
      // The editor does not say where a link leads.
      if (type & vscode.FileType.SymbolicLink) return { problem: 'outside' };
      if (step === steps.at(-1) && type & vscode.FileType.Directory) return { problem: 'folder' };
      if (size > largestFile) return { problem: 'too-large' };
    }
    return textOf(await vscode.workspace.fs.readFile(file));
  } catch (error) {
    return {
      problem: error instanceof vscode.FileSystemError && error.code === 'NoPermissions' ? 'forbidden' : 'missing'
    };
  }
}

/** Every place on the way from the folder to the file; none when the file is not in the folder. */
function stepsInto(folder: vscode.Uri, file: vscode.Uri): vscode.Uri[] | undefined {
  const top = vscode.Uri.joinPath(folder, '/').path;
  const { path } = vscode.Uri.joinPath(file, '.');
  if (file.scheme !== folder.scheme || file.authority !== folder.authority || !path.startsWith(top)) return undefined;
  const names = path.slice(top.length).split('/');
  return names.map((_, index) => vscode.Uri.joinPath(folder, ...names.slice(0, index + 1)));
}

function textOf(bytes: Uint8Array): ReadFileResult {
  if (bytes.length > largestFile) return { problem: 'too-large' };
  if (bytes.includes(0)) return { problem: 'binary' };
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes) };
  } catch {
    return { problem: 'encoding' };
  }
}
