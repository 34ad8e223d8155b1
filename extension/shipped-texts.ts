// What ships as spec text (soils, materials, kinds of sides, rules), opened from a name that leads there: to be read, not changed.
import * as vscode from 'vscode';
import { shippedScheme } from '../server/protocol.ts';

export function registerShippedTexts(extensionFolder: vscode.Uri): vscode.Disposable {
  const library = vscode.Uri.joinPath(extensionFolder, 'dist/library');
  return vscode.workspace.registerTextDocumentContentProvider(shippedScheme, {
    async provideTextDocumentContent({ path }) {
      // An address can be written by anyone.
      if (!/^\/[a-z]+(?:-[a-z]+)*\.paving$/.test(path)) throw vscode.FileSystemError.FileNotFound(path);
      return new TextDecoder().decode(await vscode.workspace.fs.readFile(vscode.Uri.joinPath(library, path)));
    }
  });
}
