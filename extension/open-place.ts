// From a panel to a place in a text.
import * as vscode from 'vscode';
import type { TextLocation, TextRange } from '../server/protocol.ts';

export function rangeOf({ start, end }: TextRange): vscode.Range {
  return new vscode.Range(start.line, start.character, end.line, end.character);
}

/** In the column where the text is in sight already, else beside the panel. */
export async function openPlace(place: TextLocation, panel: vscode.WebviewPanel): Promise<void> {
  const uri = vscode.Uri.parse(place.uri);
  const editors = vscode.window.visibleTextEditors;
  const besides = editors.filter(({ viewColumn }) => viewColumn !== undefined && viewColumn !== panel.viewColumn);
  const shown = besides.find(({ document }) => document.uri.toString() === uri.toString()) ?? besides[0];
  const viewColumn = shown?.viewColumn ?? (panel.viewColumn === 1 ? vscode.ViewColumn.Beside : 1);
  await vscode.window.showTextDocument(uri, { selection: rangeOf(place.range), viewColumn });
}
