// The command line in the editor's own terminal, whether or not Node is installed: the editor brings one.
import * as vscode from 'vscode';

/** The program that the editor runs its extensions with, and the machine it runs on. */
export interface Machine {
  readonly execPath: string;
  readonly platform: string;
}

/** Read by the launchers in dist/bin. */
export const nodeVariable = 'PAVING_NODE';

type Context = Pick<vscode.ExtensionContext, 'asAbsolutePath' | 'environmentVariableCollection'>;

export function offerCommandLine(context: Context, machine: Machine): void {
  const variables = context.environmentVariableCollection;
  variables.description = vscode.l10n.t('Puts the `paving` command on the path of the terminal.');
  const separator = machine.platform === 'win32' ? ';' : ':';
  // A shell that sets its path anew when it starts would lose it.
  const whenever = { applyAtProcessCreation: true, applyAtShellIntegration: true };
  variables.prepend('PATH', `${context.asAbsolutePath('dist/bin')}${separator}`, whenever);
  variables.replace(nodeVariable, machine.execPath);
}
