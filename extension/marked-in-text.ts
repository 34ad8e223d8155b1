// What is selected in a plan is marked in the text, which doesn't scroll.
import * as vscode from 'vscode';
import { rangeOf } from './open-place.ts';
import type { TextLocation } from '../server/protocol.ts';

export class MarkedInText implements vscode.Disposable {
  /** A frame and a fill: never told by colour alone. */
  private readonly look = vscode.window.createTextEditorDecorationType({
    backgroundColor: new vscode.ThemeColor('editor.wordHighlightStrongBackground'),
    border: '1px solid',
    borderColor: new vscode.ThemeColor('focusBorder'),
    overviewRulerColor: new vscode.ThemeColor('focusBorder'),
    overviewRulerLane: vscode.OverviewRulerLane.Center
  });

  mark(place: TextLocation | undefined): void {
    const uri = place && vscode.Uri.parse(place.uri).toString();
    for (const editor of vscode.window.visibleTextEditors) {
      const isIn = place !== undefined && editor.document.uri.toString() === uri;
      if (editor.document.languageId === 'paving') editor.setDecorations(this.look, isIn ? [rangeOf(place.range)] : []);
    }
  }

  dispose(): void {
    this.look.dispose();
  }
}
