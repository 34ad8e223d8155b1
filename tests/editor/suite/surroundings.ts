// What stands around the language in an editor: commands, settings, the status, tasks, first steps; and which texts count.
import type Mocha from 'mocha';
import * as vscode from 'vscode';
import { isChecked } from '../../../extension/checked-texts.ts';
import { figuresMiddleware } from '../../../extension/figures.ts';
import { shownStatus } from '../../../extension/status.ts';
import { checkTask } from '../../../extension/tasks.ts';
import { offerCommandLine } from '../../../extension/terminal.ts';
import {
  becomes,
  closeAll,
  findings,
  findingsBecome,
  hover,
  idOf,
  lenses,
  lensesBecome,
  open,
  type
} from './editing.ts';
import { same, soon } from './expect.ts';
import { bytesOf, inFolder, write } from './folder.ts';
import { registerMemory } from './memory.ts';

const flag = 'unit flag { size 495 x 495 x 50 mm }\n';
const job = 'job "Yard" { rules britain }\nsite { benchmark sill, ground level with sill }\n';
const patio = `
area patio {
  outline rectangle 4 x 3 m
  traffic foot
  finish  level with sill
  paving  flag in stack-bond, joints 5 mm
  bed     sharp-sand 40 mm
  base    type-1 100 mm
  edges   { all round meets house-wall }
}
`;
const faulty = job + flag + patio.replace('type-1', 'typ-1');
const sound = job + flag + patio;
const soundLenses = ['"Yard": 12.00 m2 paved, 2.28 m3 to dig', 'patio: 12.00 m2 · 48 whole, 0 cut · dig 190 mm deep'];

const isBrowser = 'importScripts' in globalThis;
const extension = () => vscode.extensions.getExtension('paving-job-spec.paving-job-spec')!;
const shown = async (uri: vscode.Uri) => {
  const document = await vscode.workspace.openTextDocument(uri);
  await vscode.window.showTextDocument(document);
  return document;
};
/** A while in which the server would have told of it: another file's findings come and go. */
async function whileOthersAreFound(): Promise<void> {
  await write('while.paving', bytesOf(faulty));
  const other = await vscode.workspace.openTextDocument(inFolder('while.paving'));
  await findingsBecome(other, ['unknown-name']);
  await type(other, 'typ-1', 'type-1');
  await findingsBecome(other, []);
  await other.save();
}

export function surroundingsTests({ suite, test, teardown }: Mocha.MochaGlobals): void {
  suite('Commands and settings', () => {
    teardown(closeAll);

    test('every command that the manifest names is there', async () => {
      const { contributes } = extension().packageJSON as { contributes: { commands: { command: string }[] } };
      const there = new Set(await vscode.commands.getCommands(true));
      same(
        contributes.commands.map(({ command }) => command).filter(command => !there.has(command)),
        []
      );
    });

    test('a restart loses no finding, no figure and no text that is not saved', async () => {
      const document = await open('restarted.paving', sound);
      await lensesBecome(document, soundLenses);
      await type(document, 'type-1', 'typ-1');
      await findingsBecome(document, ['unknown-name']);
      await vscode.commands.executeCommand('paving.restartServer');
      await findingsBecome(document, ['unknown-name']);
      await type(document, 'typ-1', 'type-1');
      await findingsBecome(document, []);
      await lensesBecome(document, soundLenses);
      await vscode.commands.executeCommand('paving.restartServer');
      await vscode.commands.executeCommand('paving.restartServer');
      await lensesBecome(document, soundLenses);
    });

    test('figures above areas can be switched off and on', async () => {
      const document = await open('switched.paving', sound);
      await lensesBecome(document, soundLenses);
      const settings = vscode.workspace.getConfiguration('paving', document.uri);
      await settings.update('figuresAboveAreas', false, vscode.ConfigurationTarget.WorkspaceFolder);
      await lensesBecome(document, []);
      await settings.update('figuresAboveAreas', undefined, vscode.ConfigurationTarget.WorkspaceFolder);
      await lensesBecome(document, soundLenses);
    });

    test('so can figures at the end of lines', async () => {
      const document = await open('hinted.paving', sound);
      const hint = new vscode.InlayHint(new vscode.Position(0, 0), '12 m');
      const token = new vscode.CancellationTokenSource().token;
      const range = new vscode.Range(0, 0, 1, 0);
      const hints = () => figuresMiddleware.provideInlayHints(document, range, token, () => [hint]);
      const settings = vscode.workspace.getConfiguration('paving', document.uri);
      same(((await hints()) as vscode.InlayHint[]).length, 1);
      await settings.update('computedHints', false, vscode.ConfigurationTarget.WorkspaceFolder);
      same(((await hints()) as vscode.InlayHint[]).length, 0);
      await settings.update('computedHints', undefined, vscode.ConfigurationTarget.WorkspaceFolder);
    });

    test('the status tells how the server is and what is found, by weight', async () => {
      const document = await open('counted.paving', faulty);
      await findingsBecome(document, ['unknown-name']);
      const { Information, Error } = vscode.LanguageStatusSeverity;
      const { text, detail, severity, busy, command } = shownStatus('ready', document);
      same([text, detail], ['Paving: ready', 'In this file: errors 1, warnings 0, notes 0']);
      same([severity, busy, command.command], [Information, false, 'paving.showLog']);
      same(shownStatus('working', document).busy, true);
      const stopped = shownStatus('stopped', document);
      same([stopped.severity, stopped.busy, stopped.command.command], [Error, false, 'paving.restartServer']);
      await type(document, 'typ-1', 'type-1');
      await findingsBecome(document, []);
      same(shownStatus('ready', document).detail, 'No findings in this file');
    });
  });

  suite('Tasks and the terminal', () => {
    test('each folder on this machine has a task; in a browser there is none', async () => {
      const tasks = await vscode.tasks.fetchTasks({ type: 'paving' });
      const folders = tasks.map(({ scope }) => (scope as vscode.WorkspaceFolder).name);
      same(folders.sort(), isBrowser ? [] : ['jobs', 'second']);
      for (const { name, source, problemMatchers } of tasks)
        same([source, name, problemMatchers], ['Paving', 'check', ['$paving']]);
    });

    test('a task checks the files that it names, from the weight that it names', () => {
      const [folder] = vscode.workspace.workspaceFolders!;
      const definition = { type: 'paving', files: ['my job.paving', 'parts'], severity: 'warning' } as const;
      const { execution } = checkTask(folder!, definition, '/some/paving', {
        execPath: '/some/node',
        platform: 'linux'
      });
      const { command, args, options } = execution as vscode.ShellExecution;
      const words = [command!, ...args!].map(word => (typeof word === 'string' ? word : word.value));
      same(words.join('|'), '/some/paving|check|--format|line|--severity|warning|my job.paving|parts');
      same([options!.cwd, options!.env], [folder!.uri.fsPath, { PAVING_NODE: '/some/node' }]);
    });

    test('the terminal finds the command line, with the Node of the editor', () => {
      const set: string[] = [];
      const environmentVariableCollection = {
        prepend: (name: string, value: string) => void set.push(`${name}: ${value}`),
        replace: (name: string, value: string) => void set.push(`${name}: ${value}`)
      } as unknown as vscode.GlobalEnvironmentVariableCollection;
      const context = { asAbsolutePath: (path: string) => `/ours/${path}`, environmentVariableCollection };
      offerCommandLine(context, { execPath: '/some/node', platform: 'linux' });
      offerCommandLine(context, { execPath: '/some/node', platform: 'win32' });
      const node = 'PAVING_NODE: /some/node';
      same(set, ['PATH: /ours/dist/bin:', node, 'PATH: /ours/dist/bin;', node]);
    });
  });

  suite('First steps', () => {
    teardown(closeAll);

    test('a sample opens as a new text, and nothing but notes is told of it', async () => {
      for (const [name, title] of [
        ['first-job', 'First patio'],
        ['path', 'Orchard path']
      ]) {
        await vscode.commands.executeCommand('paving.openSample', name);
        const { document } = vscode.window.activeTextEditor!;
        same([document.uri.scheme, document.languageId], ['untitled', 'paving']);
        await soon('its figures', async () => (await lenses(document)).find(lens => lens.startsWith(`"${title}": `)));
        same(
          findings(document).filter(({ severity }) => severity !== vscode.DiagnosticSeverity.Information),
          []
        );
        await vscode.commands.executeCommand('workbench.action.revertAndCloseActiveEditor');
      }
    });

    test('open from the list of commands', async () => {
      await vscode.commands.executeCommand('paving.openWalkthrough');
      const label = () => vscode.window.tabGroups.activeTabGroup.activeTab?.label ?? '';
      await becomes('first steps in front', () => label().startsWith('Walkthrough: '), true);
      await vscode.commands.executeCommand('workbench.action.closeActiveEditor');
    });
  });

  suite('Which texts count', () => {
    teardown(closeAll);

    test('the old side of a comparison is only looked at', async () => {
      const provider = vscode.workspace.registerTextDocumentContentProvider('older', {
        provideTextDocumentContent: () => faulty
      });
      const readOnly = registerMemory('older-files', { '/compared.paving': faulty }, { isReadonly: true });
      await write('compared.paving', bytesOf(faulty));
      for (const scheme of ['older', 'older-files']) {
        const left = vscode.Uri.from({ scheme, path: '/compared.paving' });
        await vscode.commands.executeCommand('vscode.diff', left, inFolder('compared.paving'), 'Older and newer');
        const [older, newer] = await soon('both sides', () => {
          const sides = [left, inFolder('compared.paving')].map(uri =>
            vscode.workspace.textDocuments.find(document => document.uri.toString() === uri.toString())
          );
          return sides.every(side => side?.languageId === 'paving') ? sides : undefined;
        });
        await findingsBecome(newer!, ['unknown-name']);
        await whileOthersAreFound();
        same(findings(older!), []);
        same(await lenses(older!), []);
        same(await hover(older!, 'unit flag'), '');
        same(shownStatus('ready', older).detail, 'This text is only for reading: it is not checked.');
        await closeAll();
      }
      provider.dispose();
      readOnly.dispose();
    });

    test('what changes in a text that does not count, or its closing, troubles nobody', async () => {
      let text = faulty;
      const changed = new vscode.EventEmitter<vscode.Uri>();
      const provider = vscode.workspace.registerTextDocumentContentProvider('changing', {
        onDidChange: changed.event,
        provideTextDocumentContent: () => text
      });
      const uri = vscode.Uri.from({ scheme: 'changing', path: '/x.paving' });
      const document = await shown(uri);
      text = sound;
      changed.fire(uri);
      await becomes('its text', () => document.getText(), sound);
      await closeAll();
      await whileOthersAreFound();
      same(vscode.languages.getDiagnostics(uri), []);
      provider.dispose();
    });

    test('a new text counts, and a file that can be written wherever it lies', async () => {
      const untitled = await vscode.workspace.openTextDocument({ language: 'paving', content: faulty });
      await findingsBecome(untitled, ['unknown-name']);
      const memory = registerMemory('elsewhere', { '/jobs/yard.paving': sound }, { isReadonly: false });
      const document = await shown(vscode.Uri.from({ scheme: 'elsewhere', path: '/jobs/yard.paving' }));
      await lensesBecome(document, soundLenses);
      await type(document, 'type-1', 'typ-1');
      await findingsBecome(document, ['unknown-name']);
      await closeAll();
      memory.dispose();
    });

    test('so do both open folders, each with files of its own', async () => {
      const second = vscode.workspace.workspaceFolders![1]!.uri;
      const at = (name: string) => vscode.Uri.joinPath(second, name);
      await vscode.workspace.fs.writeFile(at('units.paving'), bytesOf(flag));
      await vscode.workspace.fs.writeFile(at('yard.paving'), bytesOf(`${job}use "units.paving"\n${patio}`));
      await lensesBecome(await shown(at('yard.paving')), soundLenses);
      const first = await open('reaching.paving', `${job}${flag}use "../second/units.paving"\n${patio}`);
      await findingsBecome(first, ['use-outside']);
    });

    test('a folder that lies elsewhere counts while it is open, also where it can only be read', async () => {
      const texts = { '/yard.paving': `${job}use "units.paving"\n${patio}`, '/units.paving': flag };
      const memory = registerMemory('archive', texts, { isReadonly: true });
      const folder = vscode.Uri.from({ scheme: 'archive', path: '/' });
      const yard = vscode.Uri.joinPath(folder, 'yard.paving');
      const document = await shown(yard);
      await whileOthersAreFound();
      same([isChecked(yard), await lenses(document)], [false, []]);
      const folders = (): number => vscode.workspace.workspaceFolders!.length;
      same(vscode.workspace.updateWorkspaceFolders(folders(), 0, { uri: folder, name: 'archive' }), true);
      await lensesBecome(document, soundLenses);
      same(findings(document), []);
      same(vscode.workspace.updateWorkspaceFolders(folders() - 1, 1), true);
      await lensesBecome(document, []);
      await closeAll();
      memory.dispose();
    });

    test('a used file goes with its folder, and comes back with it', async () => {
      await write('yards/deep/units.paving', bytesOf(flag));
      const main = await open('moved.paving', `${job}use "yards/deep/units.paving"\n${patio}`);
      await lensesBecome(main, soundLenses);
      await vscode.workspace.fs.rename(inFolder('yards'), inFolder('elsewhere'));
      await soon('the finding', () => findings(main).map(idOf).includes('use-missing') || undefined);
      await vscode.workspace.fs.rename(inFolder('elsewhere'), inFolder('yards'));
      await lensesBecome(main, soundLenses);
      await vscode.workspace.fs.delete(inFolder('yards'), { recursive: true });
      await soon('the finding', () => findings(main).map(idOf).includes('use-missing') || undefined);
    });
  });
}
