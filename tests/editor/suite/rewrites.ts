// Another way to write what stands at a place, and pasting coordinates by the command; by the keyboard: see pasted.ts.
import type Mocha from 'mocha';
import * as vscode from 'vscode';
import { becomes, closeAll, findingsBecome, open, rangeOf } from './editing.ts';
import { same } from './expect.ts';

const JOB = `job "Small patio" { rules britain }
site { soil common-earth, benchmark step, ground level with step }

area patio {
  outline rectangle 4 x 3 m
  traffic foot
  finish  level with step
  base    type-1 150 mm
  edges {
    near      meets house-wall
    the rest  meets lawn, edging spiked-strip
  }
}
`;

const TABLE = 'name\tx (m)\ty (m)\nA\t0\t0\nB 1\t3,6\t0,25\n';
const POINTS = 'point A   at (0, 0)\npoint B-1 at (3.6, 0.25) m';

async function offered(document: vscode.TextDocument, words: string, kind: string): Promise<vscode.CodeAction[]> {
  const found = await vscode.commands.executeCommand<vscode.CodeAction[]>(
    'vscode.executeCodeActionProvider',
    document.uri,
    new vscode.Range(rangeOf(document, words).start, rangeOf(document, words).start),
    kind
  );
  return found.filter(action => action.kind?.value.startsWith(kind));
}

/** Chooses what is offered; its command runs too, as in the editor's own menu. */
async function choose(document: vscode.TextDocument, words: string, kind: string, title: string): Promise<void> {
  const action = (await offered(document, words, kind)).find(each => each.title === title);
  if (action?.edit === undefined) throw new Error(`not offered: ${title}`);
  same(await vscode.workspace.applyEdit(action.edit), true);
  if (action.command)
    await vscode.commands.executeCommand(action.command.command, ...((action.command.arguments ?? []) as unknown[]));
}

function cursorAt(document: vscode.TextDocument, words: string): void {
  const { start } = rangeOf(document, words);
  vscode.window.activeTextEditor!.selection = new vscode.Selection(start, start);
}

const texts = (document: vscode.TextDocument, wanted: string) =>
  becomes('text', () => document.getText().replaceAll('\r\n', '\n'), wanted);

export function rewriteTests({ suite, test, teardown }: Mocha.MochaGlobals): void {
  suite('Another way to write it', () => {
    teardown(closeAll);

    test('in feet and inches', async () => {
      const document = await open('feet.paving', JOB);
      await findingsBecome(document, []);
      await choose(
        document,
        '4 x 3',
        'refactor.rewrite',
        'Write 13 ft 1 1/2 in x 9 ft 10 1/8 in, rounded by up to 0.5 mm'
      );
      await texts(document, JOB.replace('4 x 3 m', '13 ft 1 1/2 in x 9 ft 10 1/8 in'));
      await findingsBecome(document, []);
    });

    test('as points, with its edges', async () => {
      const document = await open('points.paving', JOB);
      await findingsBecome(document, []);
      await choose(document, 'rectangle', 'refactor.rewrite', 'Write the rectangle as four points');
      const points = ['(0, 0)', '(4, 0) m', '(4, 3) m', '(0, 3) m'].map(
        (at, index) => `point P${index + 1} at ${at}\n`
      );
      const after = JOB.replace('\narea', `\n${points.join('')}\narea`)
        .replace('rectangle 4 x 3 m', 'P1 to P2 to P3 to P4')
        .replace('near    ', 'P1 to P2');
      await texts(document, after);
      await findingsBecome(document, []);
    });

    test('with a name, at which the cursor then stands, and without it again', async () => {
      const document = await open('let.paving', JOB);
      await findingsBecome(document, []);
      await choose(document, '150 mm', 'refactor.extract', 'Name 150 mm with let');
      const named = JOB.replace('\narea', '\nlet layer-thickness = 150 mm\n\narea').replace(
        'type-1 150 mm',
        'type-1 layer-thickness'
      );
      await texts(document, named);
      const { selection } = vscode.window.activeTextEditor!;
      same(document.offsetAt(selection.active), named.indexOf('layer-thickness'));
      await findingsBecome(document, []);
      const back = 'Write 150 mm in the one place that says layer-thickness, and take the let out';
      await choose(document, 'layer-thickness', 'refactor.inline', back);
      await texts(document, JOB);
    });

    test('a shipped material is declared, to put the supplier’s figures in', async () => {
      const document = await open('stone.paving', JOB);
      await findingsBecome(document, []);
      await choose(document, 'type-1', 'refactor.rewrite', "Declare type-1 here, to put in your supplier's figures");
      same(document.getText().includes('material type-1 {'), true);
      await findingsBecome(document, []);
    });
  });

  suite('Coordinates on the clipboard', () => {
    const unused = ['never-used', 'never-used'];
    teardown(closeAll);

    test('are pasted as points by a command', async () => {
      const document = await open('command.paving', JOB);
      await findingsBecome(document, []);
      cursorAt(document, '\narea');
      await vscode.env.clipboard.writeText(TABLE);
      await vscode.commands.executeCommand('paving.pastePoints');
      await texts(document, JOB.replace('\narea', `${POINTS}\narea`));
      await findingsBecome(document, unused);
    });

    test('without a measure are pasted as is chosen', async () => {
      const document = await open('chosen.paving', JOB);
      await findingsBecome(document, []);
      cursorAt(document, '\narea');
      await vscode.env.clipboard.writeText('A 3600 250');
      const done = vscode.commands.executeCommand('paving.pastePoints');
      // The list of choices opens in its own time.
      await new Promise(resolve => setTimeout(resolve, 1_000));
      await vscode.commands.executeCommand('workbench.action.acceptSelectedQuickOpenItem');
      await done;
      await texts(document, JOB.replace('\narea', 'point A at (3600, 250) mm\narea'));
    });
  });
}
