// A file system that lies in memory alone, as a folder somewhere else than on this machine does.
import * as vscode from 'vscode';
import { bytesOf } from './folder.ts';

/** Files by their path in it. */
export function registerMemory(
  scheme: string,
  texts: Readonly<Record<string, string>>,
  options: { readonly isReadonly: boolean }
): vscode.Disposable {
  const bytes = new Map(Object.entries(texts).map(([path, text]) => [path, bytesOf(text)]));
  const isFolder = (path: string) => [...bytes.keys()].some(file => file.startsWith(path.replace(/\/?$/, '/')));
  const refuse = (): never => {
    throw vscode.FileSystemError.NoPermissions();
  };
  const missing = (uri: vscode.Uri): never => {
    throw vscode.FileSystemError.FileNotFound(uri);
  };
  const provider: vscode.FileSystemProvider = {
    onDidChangeFile: new vscode.EventEmitter<vscode.FileChangeEvent[]>().event,
    watch: () => new vscode.Disposable(() => undefined),
    stat: uri => {
      const size = bytes.get(uri.path)?.length;
      if (size === undefined && !isFolder(uri.path)) missing(uri);
      const type = size === undefined ? vscode.FileType.Directory : vscode.FileType.File;
      return { type, ctime: 0, mtime: 0, size: size ?? 0 };
    },
    readDirectory: ({ path }) =>
      [...bytes.keys()]
        .filter(file => file.startsWith(path.replace(/\/?$/, '/')))
        .map(file => [file.slice(path.length).replace(/^\//, ''), vscode.FileType.File]),
    readFile: uri => bytes.get(uri.path) ?? missing(uri),
    writeFile: ({ path }, content) => void bytes.set(path, new Uint8Array(content)),
    createDirectory: refuse,
    delete: refuse,
    rename: refuse
  };
  return vscode.workspace.registerFileSystemProvider(scheme, provider, options);
}
