// The folder that the host has open; it is there for this run alone.
import * as vscode from 'vscode';

export const folder = () => {
  const first = vscode.workspace.workspaceFolders?.[0];
  if (!first) throw new Error('No folder is open.');
  return first.uri;
};
export const inFolder = (name: string) => vscode.Uri.joinPath(folder(), name);
export const write = (name: string, bytes: Uint8Array) => vscode.workspace.fs.writeFile(inFolder(name), bytes);
export const bytesOf = (text: string) => new TextEncoder().encode(text);
