// The page of a panel: nothing but our own script and style, and no content yet.
import * as vscode from 'vscode';

export interface PageOf {
  readonly title: string;
  /** Of its script and its style. */
  readonly name: 'panel' | 'plan';
}

/** Only files in this folder can be loaded. */
export const panelFolder = (extensionFolder: vscode.Uri) => vscode.Uri.joinPath(extensionFolder, 'dist/panel');

export function pageFor(webview: vscode.Webview, extensionFolder: vscode.Uri, { title, name }: PageOf): string {
  const address = (file: string) =>
    webview.asWebviewUri(vscode.Uri.joinPath(panelFolder(extensionFolder), file)).toString();
  const once = randomWord();
  const policy = `default-src 'none'; style-src ${webview.cspSource}; script-src 'nonce-${once}'`;
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width">
<title>${title}</title>
<link rel="stylesheet" href="${address(`${name}.css`)}">
</head>
<body>
<main></main>
<script nonce="${once}" src="${address(`${name}.js`)}"></script>
</body>
</html>`;
}

function randomWord(): string {
  return [...crypto.getRandomValues(new Uint8Array(16))].map(byte => byte.toString(16).padStart(2, '0')).join('');
}
