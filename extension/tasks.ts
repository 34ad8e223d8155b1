// Checks all job specs of a folder, or some of them, by the command line: what it finds is listed with the rest.
import * as vscode from 'vscode';
import { nodeVariable, type Machine } from './terminal.ts';

const taskType = 'paving';

export interface CheckDefinition extends vscode.TaskDefinition {
  /** Job specs and folders, from the task's own folder. */
  readonly files?: readonly string[];
  /** The task fails from this weight on. */
  readonly severity?: 'error' | 'warning' | 'note';
}

type Context = Pick<vscode.ExtensionContext, 'asAbsolutePath'>;

/** Without a machine, in a browser, no program can be run: there are no tasks. */
export function registerTasks(context: Context, machine: Machine | undefined): vscode.Disposable {
  const check = (folder: vscode.WorkspaceFolder, definition: CheckDefinition): vscode.Task | undefined =>
    machine && folder.uri.scheme === 'file'
      ? checkTask(folder, definition, commandLine(context, machine), machine)
      : undefined;
  return vscode.Disposable.from(
    vscode.tasks.registerTaskProvider(taskType, {
      provideTasks: () =>
        (vscode.workspace.workspaceFolders ?? []).flatMap(folder => check(folder, { type: taskType }) ?? []),
      resolveTask: ({ definition, scope }) =>
        typeof scope === 'object' ? check(scope, definition as CheckDefinition) : undefined
    }),
    vscode.commands.registerCommand('paving.checkFolder', async () => {
      const folder = folderInFront();
      const task = folder && check(folder, { type: taskType });
      if (task) return vscode.tasks.executeTask(task);
      return vscode.window.showInformationMessage(
        vscode.l10n.t('A whole folder can be checked where it lies on this machine and the editor may start programs.')
      );
    })
  );
}

function commandLine(context: Context, { platform }: Machine): string {
  return context.asAbsolutePath(platform === 'win32' ? 'dist/bin/paving.cmd' : 'dist/bin/paving');
}

export function checkTask(
  folder: vscode.WorkspaceFolder,
  definition: CheckDefinition,
  program: string,
  { execPath }: Machine
): vscode.Task {
  const { files = ['.'], severity = 'error' } = definition;
  const asWritten = (value: string) => ({ value, quoting: vscode.ShellQuoting.Strong });
  const execution = new vscode.ShellExecution(
    asWritten(program),
    ['check', '--format', 'line', '--severity', severity, ...files.map(asWritten)],
    { cwd: folder.uri.fsPath, env: { [nodeVariable]: execPath } }
  );
  const task = new vscode.Task(definition, folder, vscode.l10n.t('check'), 'Paving', execution, '$paving');
  task.detail = vscode.l10n.t('Checks all job specs in this folder');
  if (definition.files) task.detail = definition.files.join(', ');
  task.presentationOptions = { clear: true, showReuseMessage: false };
  return task;
}

/** The folder of the text in front, else the first. */
function folderInFront(): vscode.WorkspaceFolder | undefined {
  const front = vscode.window.activeTextEditor?.document.uri;
  return (front && vscode.workspace.getWorkspaceFolder(front)) ?? vscode.workspace.workspaceFolders?.[0];
}
