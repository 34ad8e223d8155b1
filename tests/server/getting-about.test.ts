import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type {
  DefinitionLink,
  DocumentHighlight,
  DocumentLink,
  DocumentSymbol,
  FoldingRange,
  Location,
  Position,
  Range,
  SelectionRange,
  SemanticTokens,
  SymbolInformation,
  TextDocumentEdit,
  WorkspaceEdit
} from 'vscode-languageserver/node.js';
import { withCursor, withPosition } from '../cursor.ts';
import { YARD } from '../language/editing/yard.ts';
import { Client } from './client.ts';

let folder: string;
let client: Client;
const at = (name: string): string => pathToFileURL(path.join(folder, name)).href;
const nameOf = (uri: string): string =>
  uri.startsWith('file:') ? path.relative(folder, fileURLToPath(uri)).replaceAll(path.sep, '/') : uri;

/** Files of the folder as they stand, on the disk or as typed. */
const texts = new Map<string, string>();

function save(name: string, text: string): void {
  texts.set(name, text);
  mkdirSync(path.dirname(path.join(folder, name)), { recursive: true });
  writeFileSync(path.join(folder, name), text);
}

async function open(name: string): Promise<void> {
  await client.open(at(name), texts.get(name)!);
}

/** The place in a file where words stand, their ‸ being the cursor. */
function cursor(name: string, words: string): { textDocument: { uri: string }; position: Position } {
  const plain = withCursor(words).text;
  const text = texts.get(name)!;
  if (!text.includes(plain)) throw new Error(`${name} has no ${words}`);
  return { textDocument: { uri: at(name) }, position: withPosition(text.replace(plain, () => words)).position };
}

function wordsAt(name: string, { start, end }: Range): string {
  const lines = texts.get(name)!.split('\n');
  return start.line === end.line ? lines[start.line]!.slice(start.character, end.character) : '…';
}

/** The line of a text that ships which begins so. */
function lineOf(name: string, words: string): number {
  const text = readFileSync(path.resolve(import.meta.dirname, '../../language/library', name), 'utf8');
  return text.split('\n').findIndex(line => line.startsWith(words)) + 1;
}

/** The files that edits are made in, as they read after them. */
function edited({ changes }: WorkspaceEdit): Record<string, string> {
  return Object.fromEntries(
    Object.entries(changes ?? {}).map(([uri, edits]) => {
      const lines = texts.get(nameOf(uri))!.split('\n');
      for (const { range, newText } of [...edits].sort((a, b) => b.range.start.character - a.range.start.character)) {
        const line = lines[range.start.line]!;
        lines[range.start.line] = line.slice(0, range.start.character) + newText + line.slice(range.end.character);
      }
      return [nameOf(uri), lines.join('\n')];
    })
  );
}

beforeEach(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'paving-about-'));
  texts.clear();
  for (const [name, text] of Object.entries(YARD)) save(name, text);
  client = new Client();
  await client.start(folder);
});

afterEach(async () => {
  await client.stop();
  rmSync(folder, { recursive: true });
});

describe('From a place to another', () => {
  const definition = async (name: string, words: string): Promise<string[]> => {
    const links = await client.ask<DefinitionLink[]>('textDocument/definition', cursor(name, words));
    return links.map(
      ({ targetUri, targetSelectionRange: to, originSelectionRange: from }) =>
        `${wordsAt(name, from!)} > ${nameOf(targetUri)} ${to.start.line + 1}:${to.start.character + 1}`
    );
  };

  test('a name to its declaration in a file that is not open, a neighbour to its area, a path to its file', async () => {
    await open('yard.paving');
    await open('walk.paving');
    expect(await definition('yard.paving', 'paving sl‸ab')).toEqual(['slab > shared.paving 6:6']);
    expect(await definition('walk.paving', 'left meets ya‸rd')).toEqual(['yard > yard.paving 5:6']);
    expect(await definition('yard.paving', 'use "wa‸lk.paving')).toEqual(['walk.paving > walk.paving 1:1']);
    expect(await definition('yard.paving', 'meets house-‸wall')).toEqual([
      'house-wall > paving-shipped:/sides.paving 3:11'
    ]);
    expect(await definition('yard.paving', 'traffic fo‸ot')).toEqual([]);
  });

  test('all places that name a thing, in files that are open nowhere too', async () => {
    await open('yard.paving');
    const references = async (words: string, includeDeclaration: boolean): Promise<string[]> => {
      const params = { ...cursor('yard.paving', words), context: { includeDeclaration } };
      const found = await client.ask<Location[]>('textDocument/references', params);
      return found.map(({ uri, range }) => `${nameOf(uri)} ${range.start.line + 1}`).sort();
    };
    expect(await references('paving sl‸ab', true)).toEqual([
      'other.paving 5',
      'shared.paving 6',
      'walk.paving 6',
      'yard.paving 9'
    ]);
    expect(await references('paving sl‸ab', false)).toHaveLength(3);
    expect(await references('running-b‸ond', true)).toEqual([
      'other.paving 5',
      `paving-shipped:/defaults.paving ${lineOf('defaults.paving', 'bond running-bond')}`,
      'yard.paving 9'
    ]);
    // What another program writes meanwhile is seen.
    save('other.paving', texts.get('other.paving')!.replace('paving slab', 'paving flag'));
    await client.changedOnDisk(at('other.paving'));
    expect(await references('paving sl‸ab', false)).toEqual(['walk.paving 6', 'yard.paving 9']);
  });

  test('the same name in the text: declared is written, used is read', async () => {
    await open('yard.paving');
    const found = await client.ask<DocumentHighlight[]>(
      'textDocument/documentHighlight',
      cursor('yard.paving', 'stone de‸pth')
    );
    expect(found.map(({ range, kind }) => [range.start.line + 1, kind])).toEqual([
      [4, 3],
      [10, 2]
    ]);
  });

  test('links on used files, none out of the folder', async () => {
    save('links.paving', 'use "shared.paving"\nuse "../elsewhere.paving"\nuse "prices.txt"\n');
    await open('links.paving');
    const found = await client.ask<DocumentLink[]>('textDocument/documentLink', {
      textDocument: { uri: at('links.paving') }
    });
    expect(found.map(({ range, target }) => [wordsAt('links.paving', range), nameOf(target!)])).toEqual([
      ['shared.paving', 'shared.paving']
    ]);
  });
});

describe('Another name', () => {
  const rename = (words: string, newName: string): Promise<WorkspaceEdit> =>
    client.ask('textDocument/rename', { ...cursor('yard.paving', words), newName });

  test('in all files that see the thing', async () => {
    await open('yard.paving');
    expect(await client.ask('textDocument/prepareRename', cursor('yard.paving', 'front-w‸alk'))).toEqual({
      range: { start: { line: 13, character: 19 }, end: { line: 13, character: 29 } },
      placeholder: 'front-walk'
    });
    const after = edited(await rename('outline ‸A to', 'hinge'));
    const changed = Object.entries(after).flatMap(([name, text]) => {
      const before = texts.get(name)!.split('\n');
      return text
        .split('\n')
        .filter((line, index) => line !== before[index])
        .map(line => `${name}: ${line.trim()}`);
    });
    expect(changed.sort()).toEqual([
      'other.paving: outline hinge to door to C',
      'shared.paving: point hinge at (0, 0)',
      'yard.paving: C to hinge meets hedge, edging spiked-strip set before laying',
      'yard.paving: hinge to door meets house-wall',
      'yard.paving: outline hinge to door bowed 3 m out to C'
    ]);
  });

  test('counts what is typed and not saved', async () => {
    await open('yard.paving');
    await open('other.paving');
    texts.set('other.paving', YARD['other.paving']!.replace('paving slab', 'paving flag'));
    await client.change(at('other.paving'), texts.get('other.paving')!);
    await expect(rename('paving ‸slab', 'flag')).rejects.toThrow(
      '`flag` in line 5 of other.paving leads nowhere so far'
    );
    texts.set('other.paving', `// Typed.\n${YARD['other.paving']!}`);
    await client.change(at('other.paving'), texts.get('other.paving')!);
    const after = edited(await rename('paving ‸slab', 'flag'));
    expect(after['other.paving']).toBe(texts.get('other.paving')!.replace('slab', 'flag'));
  });

  test('is made in the version of each text that it was worked out for', async () => {
    const versioned = new Client();
    await versioned.start(folder, { workspace: { workspaceEdit: { documentChanges: true } } });
    await versioned.open(at('yard.paving'), texts.get('yard.paving')!);
    const params = { ...cursor('yard.paving', 'outline ‸A to'), newName: 'hinge' };
    const { documentChanges } = await versioned.ask<WorkspaceEdit>('textDocument/rename', params);
    const moved = await versioned.ask<WorkspaceEdit>('workspace/willRenameFiles', {
      files: [{ oldUri: at('shared.paving'), newUri: at('common.paving') }]
    });
    const made = [documentChanges, moved.documentChanges].map(edits =>
      (edits as TextDocumentEdit[])
        .map(({ textDocument: { uri, version } }) => `${nameOf(uri)} ${String(version)}`)
        .sort()
    );
    expect(made).toEqual([
      ['other.paving null', 'shared.paving null', 'yard.paving 1'],
      ['other.paving null', 'walk.paving null', 'yard.paving 1']
    ]);
    await versioned.stop();
  });

  test('is refused with a reason', async () => {
    await open('yard.paving');
    await expect(rename('outline ‸A to', 'door')).rejects.toThrow(
      'A point called `door` is declared in line 4 of shared.paving already.'
    );
    await expect(client.ask('textDocument/prepareRename', cursor('yard.paving', 'house-w‸all'))).rejects.toThrow(
      'that ships'
    );
    client.listsAll = false;
    await expect(rename('outline ‸A to', 'hinge')).rejects.toThrow('more job specs than can be looked through');
  });
});

describe('What an editor shows of a text', () => {
  const about = <R>(method: string, more: object = {}): Promise<R> =>
    client.ask<R>(`textDocument/${method}`, { textDocument: { uri: at('yard.paving') }, ...more });

  test('its contents, folds and growing selections', async () => {
    await open('yard.paving');
    const contents = await about<DocumentSymbol[]>('documentSymbol');
    expect(contents.map(({ name, detail }) => `${name}: ${detail}`)).toEqual([
      'Pear tree yard: britain',
      'shared.paving: ',
      'walk.paving: ',
      'depth: = 150 mm',
      'yard: A to door bowed 3 m out to C',
      'lid: in yard'
    ]);
    expect(contents[4]!.children!.map(({ name }) => name)).toEqual([
      'outline',
      'traffic',
      'finish',
      'paving',
      'base',
      'edges'
    ]);
    expect(await about<FoldingRange[]>('foldingRange')).toEqual([
      { startLine: 1, endLine: 2, kind: 'imports' },
      { startLine: 4, endLine: 14 },
      { startLine: 10, endLine: 13 }
    ]);
    const { position } = cursor('yard.paving', 'front-w‸alk');
    const [selection] = await about<SelectionRange[]>('selectionRange', { positions: [position] });
    const grown: string[] = [];
    for (let each: SelectionRange | undefined = selection; each !== undefined; each = each.parent)
      grown.push(wordsAt('yard.paving', each.range));
    expect(grown.slice(0, 3)).toEqual(['front-walk', 'the rest meets front-walk', 'the rest meets front-walk, flush']);
  });

  test('its colours, whole and in part', async () => {
    await open('yard.paving');
    const all = (await about<SemanticTokens>('semanticTokens/full')).data;
    const range = { start: { line: 3, character: 0 }, end: { line: 3, character: 5 } };
    const part = (await about<SemanticTokens>('semanticTokens/range', { range })).data;
    // let, its name, the sign, the figure and its measure: keyword, declared variable, operator, number, static number.
    expect(part).toEqual([3, 0, 3, 0, 0, 0, 4, 5, 2, 1, 0, 6, 1, 9, 0, 0, 2, 3, 8, 0, 0, 4, 2, 8, 4]);
    expect(all.length / 5).toBeGreaterThan(50);
  });

  test('things of all open folders by name', async () => {
    const search = async (query: string): Promise<string[]> => {
      const found = await client.ask<SymbolInformation[]>('workspace/symbol', { query });
      return found
        .map(({ name, location, containerName }) => `${name}, ${containerName}, ${nameOf(location.uri)}`)
        .sort();
    };
    expect(await search('yard')).toEqual([
      'Another yard, other.paving, other.paving',
      'Pear tree yard, yard.paving, yard.paving',
      'yard, yard.paving, yard.paving'
    ]);
    expect(await search('lid')).toEqual(['lid, yard, yard.paving']);
  });
});

describe('Files that move', () => {
  const willRename = async (...moves: [string, string][]): Promise<Record<string, string>> => {
    const files = moves.map(([from, to]) => ({ oldUri: at(from), newUri: at(to) }));
    const edit = await client.ask<WorkspaceEdit | null>('workspace/willRenameFiles', { files });
    return edited(edit ?? {});
  };

  test('a file that others use', async () => {
    expect(await willRename(['shared.paving', 'parts/common ½.paving'])).toEqual({
      'yard.paving': texts.get('yard.paving')!.replace('shared.paving', 'parts/common ½.paving'),
      'walk.paving': texts.get('walk.paving')!.replace('shared.paving', 'parts/common ½.paving'),
      'other.paving': texts.get('other.paving')!.replace('shared.paving', 'parts/common ½.paving')
    });
  });

  test('a file that uses others, unsaved as it stands', async () => {
    await open('walk.paving');
    texts.set('walk.paving', `// typed\n${texts.get('walk.paving')!}`);
    await client.change(at('walk.paving'), texts.get('walk.paving')!);
    expect(await willRename(['walk.paving', 'front/walk.paving'])).toEqual({
      'walk.paving': texts.get('walk.paving')!.replace('shared.paving', '../shared.paving'),
      'yard.paving': texts.get('yard.paving')!.replace('walk.paving', 'front/walk.paving')
    });
  });

  test('a folder: what lies in it together keeps its paths, what leads in or out of it is mended', async () => {
    save('parts/prices.paving', 'unit flag { size 1 x 1 x 0.1 m }\n');
    save('parts/all.paving', 'use "prices.paving"\nuse "../shared.paving"\n');
    save('job.paving', 'use "parts/all.paving"\n');
    expect(await willRename(['parts', 'old/parts'])).toEqual({
      'parts/all.paving': 'use "prices.paving"\nuse "../../shared.paving"\n',
      'job.paving': 'use "old/parts/all.paving"\n'
    });
  });

  test('from one open folder into another that holds it', async () => {
    save('parts/prices.paving', 'unit flag { size 1 x 1 x 0.1 m }\n');
    save('job.paving', 'use "parts/prices.paving"\n');
    await client.changeFolders([at('parts')], []);
    expect(await willRename(['parts/prices.paving', 'prices.paving'])).toEqual({
      'job.paving': 'use "prices.paving"\n'
    });
  });

  test('two files at once, and one that leaves the folder', async () => {
    expect(await willRename(['shared.paving', 'a/shared.paving'], ['walk.paving', 'a/walk.paving'])).toEqual({
      'yard.paving': texts
        .get('yard.paving')!
        .replace('shared.paving', 'a/shared.paving')
        .replace('walk.paving', 'a/walk.paving'),
      'other.paving': texts.get('other.paving')!.replace('shared.paving', 'a/shared.paving')
    });
    expect(await willRename(['shared.paving', '../shared.paving'])).toEqual({});
  });
});
