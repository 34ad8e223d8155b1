// The page about a finding, opened from the finding's id: shipped with the extension, read without a network.
import * as vscode from 'vscode';
import { pageScheme } from '../server/protocol.ts';

const openPageCommand = 'paving.openPage';

export function registerPages(extensionFolder: vscode.Uri): vscode.Disposable {
  const pages = vscode.Uri.joinPath(extensionFolder, 'dist/pages');
  return vscode.Disposable.from(
    vscode.workspace.registerTextDocumentContentProvider(pageScheme, {
      async provideTextDocumentContent(page) {
        const bytes = await vscode.workspace.fs.readFile(vscode.Uri.joinPath(pages, page.path));
        return new TextDecoder().decode(bytes);
      }
    }),
    vscode.commands.registerCommand(openPageCommand, (id: unknown) => {
      // A link can be written by anyone: only the name of a finding is taken.
      if (typeof id !== 'string' || !/^[a-z-]+$/.test(id)) return undefined;
      return vscode.commands.executeCommand(
        'markdown.showPreviewToSide',
        vscode.Uri.from({ scheme: pageScheme, path: `/${id}.md` })
      );
    })
  );
}

/** The editor would show an address of our own scheme as plain text; a command shows it as a page. */
export function linkToPage(diagnostic: vscode.Diagnostic): vscode.Diagnostic {
  const { code } = diagnostic;
  if (typeof code === 'object' && code.target.scheme === pageScheme) {
    const given = encodeURIComponent(JSON.stringify([code.target.path.slice(1)]));
    diagnostic.code = { value: code.value, target: vscode.Uri.parse(`command:${openPageCommand}?${given}`) };
  }
  return diagnostic;
}
