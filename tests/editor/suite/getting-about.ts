// Getting about in job specs by the editor's own commands: from a name to its thing and back, new names, files that move.
import type Mocha from 'mocha';
import * as vscode from 'vscode';
import { becomes, closeAll, findings, open, rangeOf } from './editing.ts';
import { same, soon } from './expect.ts';
import { bytesOf, folder, inFolder, write } from './folder.ts';

const shared = `site { soil clay, benchmark step, ground level with step }
unit yard-slab { size 450 x 450 x 50 mm }
existing hedge { kind lawn }
`;
const yard = `job "Getting about" { rules britain }
use "shared.paving"
let about-depth = 150 mm
point A at (0, 0)
point B at (6, 0) m
point C at (6, 4) m
area about-yard {
  outline A to B to C
  traffic foot
  finish level with step
  paving yard-slab in running-bond, joints 3 mm
  base type-1 about-depth
  edges {
    A to B meets house-wall
    the rest meets hedge, edging spiked-strip
  }
}
let about-spare = 1 m // never used: a finding
`;
const other = `job "Another" { rules britain }
use "shared.paving"
unit spare { size 1 x 1 x 0.1 m }
area about-court {
  outline rectangle 2 x 2 m
  paving yard-slab in stack-bond
}
`;

/** The files of a yard in a folder of their own, as no other test has left them. */
async function openYard(where: string): Promise<vscode.TextDocument> {
  await vscode.workspace.fs.createDirectory(inFolder(`about/${where}`));
  await write(`about/${where}/shared.paving`, bytesOf(shared));
  await write(`about/${where}/other.paving`, bytesOf(other));
  return open(`about/${where}/yard.paving`, yard);
}

const run = <T>(command: string, ...given: unknown[]) => vscode.commands.executeCommand<T>(command, ...given);

/** The path from the folder, or the whole address of what lies elsewhere. */
function nameOf(uri: vscode.Uri): string {
  const top = `${folder().path}/`;
  return uri.scheme === folder().scheme && uri.path.startsWith(top) ? uri.path.slice(top.length) : uri.toString();
}

const placeOf = ({ uri, range }: vscode.Location) =>
  `${nameOf(uri)} ${range.start.line + 1}:${range.start.character + 1}`;

async function definition(document: vscode.TextDocument, words: string): Promise<vscode.Location[]> {
  const at = rangeOf(document, words).start;
  const found = await run<(vscode.Location | vscode.LocationLink)[]>(
    'vscode.executeDefinitionProvider',
    document.uri,
    at
  );
  return found.map(each =>
    'targetUri' in each ? new vscode.Location(each.targetUri, each.targetSelectionRange!) : each
  );
}

function editsOf(edit: vscode.WorkspaceEdit): string[] {
  return edit
    .entries()
    .flatMap(([uri, edits]) =>
      edits.map(({ range, newText }) => `${placeOf(new vscode.Location(uri, range))} ${newText}`)
    )
    .sort();
}

/** What each word is told to be, by its line and the word. */
async function coloursOf(document: vscode.TextDocument): Promise<Map<string, string>> {
  const legend = await run<vscode.SemanticTokensLegend>('vscode.provideDocumentSemanticTokensLegend', document.uri);
  const { data } = await run<vscode.SemanticTokens>('vscode.provideDocumentSemanticTokens', document.uri);
  const coloured = new Map<string, string>();
  let [line, character] = [0, 0];
  for (let at = 0; at < data.length; at += 5) {
    const [down, along, length, type, modifiers] = data.slice(at, at + 5) as unknown as number[];
    character = down! > 0 ? along! : character + along!;
    line += down!;
    const word = document.getText(new vscode.Range(line, character, line, character + length!));
    const names = legend.tokenModifiers.filter((_, bit) => modifiers! & (1 << bit));
    coloured.set(`${line + 1} ${word}`, [legend.tokenTypes[type!], ...names].join('.'));
  }
  return coloured;
}

async function refusal(asked: Thenable<unknown>): Promise<string> {
  try {
    await asked;
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
  return 'not refused';
}

function contains(told: string, wanted: string): void {
  if (!told.includes(wanted)) throw new Error(`found ${told}, wanted ${wanted}`);
}

export function gettingAboutTests({ suite, test, teardown }: Mocha.MochaGlobals): void {
  suite('Getting about', () => {
    teardown(closeAll);

    test('a name leads to its declaration, a path to its file', async () => {
      const document = await openYard('names');
      same((await definition(document, 'about-depth\n')).map(placeOf), ['about/names/yard.paving 3:5']);
      same((await definition(document, 'yard-slab in')).map(placeOf), ['about/names/shared.paving 2:6']);
      same((await definition(document, 'shared.paving')).map(placeOf), ['about/names/shared.paving 1:1']);
    });

    test('what ships leads to its text, to be read with its sources', async () => {
      const document = await openYard('ships');
      const [found] = await definition(document, 'type-1');
      same(found!.uri.toString(), 'paving-shipped:/materials.paving');
      const shipped = await vscode.workspace.openTextDocument(found!.uri);
      same(shipped.getText(found!.range), 'type-1');
      same(shipped.languageId, 'paving');
      same(shipped.getText().includes('according-to'), true);
      same(
        (await refusal(vscode.workspace.openTextDocument(vscode.Uri.parse('paving-shipped:/../package.json')))) !==
          'not refused',
        true
      );
    });

    test('a name leads to every place that names its thing, in files that are open nowhere too', async () => {
      const document = await openYard('uses');
      const at = rangeOf(document, 'yard-slab in').start;
      const references = async (): Promise<string[]> => {
        const found = await run<vscode.Location[]>('vscode.executeReferenceProvider', document.uri, at);
        return found.map(placeOf).sort();
      };
      await becomes('places', references, [
        'about/uses/other.paving 6:10',
        'about/uses/shared.paving 2:6',
        'about/uses/yard.paving 11:10'
      ]);
      // Another program writes into one of them.
      await write('about/uses/other.paving', bytesOf(other.replace('paving yard-slab', 'paving spare')));
      await becomes('places', references, ['about/uses/shared.paving 2:6', 'about/uses/yard.paving 11:10']);
    });

    test('the thing under the cursor stands out: declared as written, used as read', async () => {
      const document = await openYard('marked');
      const at = rangeOf(document, 'about-depth').start;
      const found = await run<vscode.DocumentHighlight[]>('vscode.executeDocumentHighlights', document.uri, at);
      same(
        found.map(({ range, kind }) => [document.getText(range), range.start.line, kind]),
        [
          ['about-depth', 2, vscode.DocumentHighlightKind.Write],
          ['about-depth', 11, vscode.DocumentHighlightKind.Read]
        ]
      );
    });

    test('a new name goes to every file, and nothing else changes', async () => {
      const document = await openYard('renamed');
      await soon('the findings', () => findings(document)[0]);
      const before = findings(document).map(({ message }) => message);
      const at = rangeOf(document, 'yard-slab in').start;
      const prepared = await run<{ range: vscode.Range; placeholder: string }>(
        'vscode.prepareRename',
        document.uri,
        at
      );
      same([prepared.placeholder, document.getText(prepared.range)], ['yard-slab', 'yard-slab']);
      const edit = await run<vscode.WorkspaceEdit>(
        'vscode.executeDocumentRenameProvider',
        document.uri,
        at,
        'big-slab'
      );
      same(editsOf(edit), [
        'about/renamed/other.paving 6:10 big-slab',
        'about/renamed/shared.paving 2:6 big-slab',
        'about/renamed/yard.paving 11:10 big-slab'
      ]);
      same(await vscode.workspace.applyEdit(edit), true);
      const changed = await vscode.workspace.openTextDocument(inFolder('about/renamed/shared.paving'));
      same(changed.lineAt(1).text, 'unit big-slab { size 450 x 450 x 50 mm }');
      await becomes(
        'findings',
        () => findings(document).map(({ message }) => message.replaceAll('big-slab', 'yard-slab')),
        before
      );
      await vscode.workspace.saveAll();
    });

    test('a new name that can not be is refused with the reason', async () => {
      const document = await openYard('refused');
      const at = rangeOf(document, 'A to B to C').start;
      const taken = await refusal(run('vscode.executeDocumentRenameProvider', document.uri, at, 'B'));
      contains(taken, 'A point called `B` is declared in line 5 of about/refused/yard.paving already.');
      const shipped = await refusal(run('vscode.prepareRename', document.uri, rangeOf(document, 'type-1').start));
      contains(shipped, '`type-1` is a material that ships');
    });

    test('contents, folds and growing selections', async () => {
      const document = await openYard('contents');
      const contents = await run<vscode.DocumentSymbol[]>('vscode.executeDocumentSymbolProvider', document.uri);
      same(
        contents.map(({ name, detail }) => `${name}: ${detail}`),
        [
          'Getting about: britain',
          'shared.paving: ',
          'about-depth: = 150 mm',
          'A: at (0, 0)',
          'B: at (6, 0) m',
          'C: at (6, 4) m',
          'about-yard: A to B to C',
          'about-spare: = 1 m'
        ]
      );
      same(
        contents
          .at(-2)!
          .children.at(-1)!
          .children.map(({ name }) => name),
        ['A to B', 'the rest']
      );
      const folds = await run<vscode.FoldingRange[]>('vscode.executeFoldingRangeProvider', document.uri);
      same(
        folds.map(({ start, end }) => [start, end]),
        [
          [3, 5],
          [6, 15],
          [12, 14]
        ]
      );
      const at = rangeOf(document, '150 mm').start;
      const [selection] = await run<vscode.SelectionRange[]>('vscode.executeSelectionRangeProvider', document.uri, [
        at
      ]);
      const grown: string[] = [];
      for (let each: vscode.SelectionRange | undefined = selection; each; each = each.parent)
        grown.push(document.getText(each.range));
      same(grown.includes('150 mm') && grown.includes('let about-depth = 150 mm'), true);
    });

    test('things are found by name in the whole folder', async () => {
      await openYard('found');
      const court = 'about-court, about/found/other.paving, about/found/other.paving 4:6';
      const search = async (): Promise<string[]> => {
        const found = await run<vscode.SymbolInformation[]>('vscode.executeWorkspaceSymbolProvider', 'about-court');
        return found
          .map(({ name, containerName, location }) => `${name}, ${containerName}, ${placeOf(location)}`)
          .filter(told => told.includes('about/found/'));
      };
      await becomes('things found', search, [court]);
    });

    test('used files are links', async () => {
      const document = await openYard('linked');
      const found = await run<vscode.DocumentLink[]>('vscode.executeLinkProvider', document.uri);
      const ours = found.filter(({ range }) => document.getText(range) === 'shared.paving');
      same(
        ours.map(({ target }) => nameOf(target!)),
        ['about/linked/shared.paving']
      );
    });

    test('words have colours by what they mean', async () => {
      const document = await openYard('coloured');
      const wanted = {
        '7 area': 'keyword',
        '7 about-yard': 'class.declaration',
        '9 foot': 'enumMember',
        '11 yard-slab': 'struct',
        '11 in': 'modifier',
        '11 running-bond': 'enum.defaultLibrary',
        '11 3': 'number',
        '11 mm': 'number.static',
        '12 about-depth': 'variable'
      };
      await becomes(
        'colours',
        async () => {
          const coloured = await coloursOf(document);
          return Object.fromEntries(Object.keys(wanted).map(word => [word, coloured.get(word)]));
        },
        wanted
      );
    });

    test('a file that is renamed takes `use` along, also in what is not saved', async () => {
      const document = await openYard('moved');
      await soon('the findings', () => findings(document)[0]);
      const before = findings(document).map(({ message }) => message);
      const typed = new vscode.WorkspaceEdit();
      typed.insert(document.uri, new vscode.Position(0, 0), '// Typed, not saved.\n');
      same(await vscode.workspace.applyEdit(typed), true);
      const move = new vscode.WorkspaceEdit();
      move.renameFile(inFolder('about/moved/shared.paving'), inFolder('about/moved/parts/of all jobs.paving'));
      same(await vscode.workspace.applyEdit(move), true);
      await becomes('the path of the open file', () => document.lineAt(2).text, 'use "parts/of all jobs.paving"');
      const elsewhere = await vscode.workspace.openTextDocument(inFolder('about/moved/other.paving'));
      await becomes('the path of another file', () => elsewhere.lineAt(1).text, 'use "parts/of all jobs.paving"');
      await becomes('findings', () => findings(document).map(({ message }) => message), before);
      await vscode.workspace.saveAll();
    });
  });
}
