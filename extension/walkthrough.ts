// The first steps, and what they open. A step is done when the person did what it says.
import * as vscode from 'vscode';

/** Samples that ship, by the name of their file. */
const SAMPLES = ['first-job', 'path'] as const;
type Sample = (typeof SAMPLES)[number];

export function registerWalkthrough({ id, extensionUri }: vscode.Extension<unknown>): vscode.Disposable {
  return vscode.Disposable.from(
    vscode.commands.registerCommand('paving.openWalkthrough', () =>
      vscode.commands.executeCommand('workbench.action.openWalkthrough', `${id}#start`, false)
    ),
    vscode.commands.registerCommand('paving.openSample', async (asked: unknown) => {
      const sample = SAMPLES.find(name => name === asked) ?? (await pickSample());
      if (sample !== undefined) await openSample(extensionUri, sample);
    }),
    vscode.workspace.onDidChangeTextDocument(({ document, contentChanges }) => {
      if (document.languageId === 'paving' && contentChanges.some(({ text }) => /\d/.test(text)))
        void vscode.commands.executeCommand('setContext', 'paving.numberChanged', true);
    }),
    vscode.workspace.onDidSaveTextDocument(({ languageId }) => {
      if (languageId === 'paving') void vscode.commands.executeCommand('setContext', 'paving.jobSaved', true);
    })
  );
}

async function pickSample(): Promise<Sample | undefined> {
  const labels: Readonly<Record<Sample, string>> = {
    'first-job': vscode.l10n.t('A patio, in feet and inches'),
    path: vscode.l10n.t('A garden path, in metres')
  };
  const picked = await vscode.window.showQuickPick(
    SAMPLES.map(name => ({ name, label: labels[name] })),
    { placeHolder: vscode.l10n.t('Which sample?') }
  );
  return picked?.name;
}

/** As a new text: whoever tries things out spoils no file. */
async function openSample(extensionFolder: vscode.Uri, name: Sample): Promise<void> {
  const file = vscode.Uri.joinPath(extensionFolder, `dist/samples/${name}.paving`);
  const content = new TextDecoder().decode(await vscode.workspace.fs.readFile(file));
  const document = await vscode.workspace.openTextDocument({ language: 'paving', content });
  await vscode.window.showTextDocument(document, vscode.ViewColumn.Beside);
}
