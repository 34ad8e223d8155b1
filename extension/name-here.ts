// After a value has been given a name of its own: the editor asks for another at once.
import * as vscode from 'vscode';
import { nameHereCommand } from '../server/protocol.ts';

export function registerNameHere(): vscode.Disposable {
  return vscode.commands.registerCommand(
    nameHereCommand,
    async (address: unknown, line: unknown, character: unknown) => {
      if (typeof address !== 'string' || typeof line !== 'number' || typeof character !== 'number') return;
      const uri = vscode.Uri.parse(address);
      const editor = vscode.window.visibleTextEditors.find(
        ({ document }) => document.uri.toString() === uri.toString()
      );
      if (editor === undefined) return;
      const at = new vscode.Position(line, character);
      editor.selection = new vscode.Selection(at, at);
      await vscode.commands.executeCommand('editor.action.rename', [uri, at]);
    }
  );
}
