// The editor's colours know every word of the language.
import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import oniguruma from 'vscode-oniguruma';
import textmate from 'vscode-textmate';
import { MEASURES } from '../language/measures/measures.ts';
import { wordKindsIn } from '../language/editing/word-kinds.ts';
import { Paving } from '../language/paving.ts';
import { BLOCKS } from '../language/syntax/words.ts';
import { colourOf } from '../server/features/colours.ts';
import { inMemory } from './language/in-memory.ts';
import { FILES, newPaving, pathOf } from './samples/samples.ts';

const grammarFile = path.resolve(import.meta.dirname, '../extension/syntaxes/paving.tmLanguage.json');
const program = createRequire(import.meta.url).resolve('vscode-oniguruma/release/onig.wasm');
await oniguruma.loadWASM(readFileSync(program));
const registry = new textmate.Registry({
  onigLib: Promise.resolve({
    createOnigScanner: patterns => new oniguruma.OnigScanner(patterns),
    createOnigString: text => new oniguruma.OnigString(text)
  }),
  loadGrammar: () => Promise.resolve(textmate.parseRawGrammar(readFileSync(grammarFile, 'utf8'), grammarFile))
});
const grammar = await registry.loadGrammar('source.paving');
if (!grammar) throw new Error('The colours have no grammar.');

/** The coloured pieces of a line: [text, kind]. */
function coloured(line: string): [string, string][] {
  return grammar!
    .tokenizeLine(line, textmate.INITIAL)
    .tokens.map(({ startIndex, endIndex, scopes }): [string, string] => [
      line.slice(startIndex, endIndex),
      scopes.at(-1)!.replace(/\.paving$/, '')
    ])
    .filter(([, kind]) => kind !== 'source');
}

const { spec, ...inner } = BLOCKS;
const statements = Object.values(inner).flatMap(block => Object.keys(block.statements));
const clauses = Object.values(BLOCKS).flatMap(block => [
  ...Object.values(block.statements).flatMap(statement => statement.clauses),
  ...(block.lines?.clauses ?? [])
]);

describe('Colours', () => {
  const things = Object.keys(spec.statements).filter(word => !['accept', 'price', 'stock'].includes(word));
  test.each(things)('`%s` begins a thing, and its name stands out', word => {
    expect(coloured(`${word} garden-path`)).toEqual([
      [word, 'keyword.control'],
      ['garden-path', 'entity.name.type']
    ]);
  });

  test('`accept` begins a statement about a rule that is declared elsewhere, up to a date', () => {
    expect(coloured('accept base-too-thin on site because "Rock." until 2027-06-30')).toEqual([
      ['accept', 'keyword.control'],
      ['base-too-thin', 'variable.other'],
      ['on', 'keyword.other.clause'],
      ['site', 'keyword.other.clause'],
      ['because', 'keyword.other.clause'],
      ['"Rock."', 'string.quoted.double'],
      ['until', 'keyword.other.clause'],
      ['2027-06-30', 'constant.numeric']
    ]);
  });

  test('a price is that of something declared elsewhere, and words behind its commas go on with it', () => {
    expect(coloured('price slab-16 from yard { pallet of 90 for 315 USD, weight 3900 lb, piece for 4 USD }')).toEqual([
      ['price', 'keyword.control'],
      ['slab-16', 'variable.other'],
      ['from', 'keyword.other.clause'],
      ['yard', 'variable.other'],
      ['pallet', 'keyword.control'],
      ['of', 'keyword.other.clause'],
      ['90', 'constant.numeric'],
      ['for', 'keyword.other.clause'],
      ['315', 'constant.numeric'],
      ['USD', 'keyword.other.unit'],
      ['weight', 'keyword.other.clause'],
      ['3900', 'constant.numeric'],
      ['lb', 'keyword.other.unit'],
      ['piece', 'keyword.control'],
      ['for', 'keyword.other.clause'],
      ['4', 'constant.numeric'],
      ['USD', 'keyword.other.unit']
    ]);
  });

  test('what is in stock is an amount of something declared elsewhere', () => {
    expect(coloured('stock 2 bag plain-sand')).toEqual([
      ['stock', 'keyword.control'],
      ['2', 'constant.numeric'],
      ['bag', 'keyword.other.clause'],
      ['plain-sand', 'variable.other']
    ]);
  });

  test('quantities of rules are names, also where another statement has a word for them', () => {
    expect(coloured('  needs edging is said when bearing at most 5 % // in the shade').slice(1)).toEqual([
      ['edging', 'variable.other'],
      ['is', 'keyword.other.clause'],
      ['said', 'keyword.other.clause'],
      ['when', 'keyword.other.clause'],
      ['bearing', 'variable.other'],
      ['at', 'keyword.other.clause'],
      ['most', 'keyword.other.clause'],
      ['5', 'constant.numeric'],
      ['%', 'keyword.other.unit'],
      ['// in the shade', 'comment.line.double-slash']
    ]);
  });

  test.each([...new Set(statements)])('`%s` begins a statement', word => {
    expect(coloured(`  ${word} something`)[0]).toEqual([word, 'keyword.control']);
  });

  test.each([...new Set(clauses)])('`%s` is a word of a clause', word => {
    expect(coloured(`  A ${word} B`)[1]).toEqual([word, 'keyword.other.clause']);
  });

  test.each([...MEASURES.keys()])('a number in %s', measure => {
    expect(coloured(`  A 2 1/2 ${measure}`).slice(1)).toEqual([
      ['2 1/2', 'constant.numeric'],
      [measure, 'keyword.other.unit']
    ]);
  });

  test.each(['3', '.5', '2.5', '1/2', '6 1/2', '2-3/8', '2½', '½', '1:60'])('the number %s', number => {
    expect(coloured(`  A ${number}`).slice(1)).toEqual([[number, 'constant.numeric']]);
  });

  test('sizes, also written together', () => {
    const pieces = [
      ['200', 'constant.numeric'],
      ['x', 'keyword.operator'],
      ['100', 'constant.numeric'],
      ['mm', 'keyword.other.unit']
    ];
    expect(coloured('  size 200x100 mm').slice(1)).toEqual(pieces);
    expect(coloured('  size 200 x 100 mm').slice(1)).toEqual(pieces);
  });

  test('feet and inches by their signs are no text', () => {
    expect(coloured('point A at (12\' 6 1/2", 0)').map(([text]) => text)).toEqual([
      'point',
      'A',
      'at',
      '12',
      "'",
      '6 1/2',
      '"',
      '0'
    ]);
  });

  test('words inside names, texts and comments are left alone', () => {
    expect(coloured('  A base-course')[1]).toEqual(['base-course', 'variable.other']);
    expect(coloured('  A "base in"')[1]).toEqual(['"base in"', 'string.quoted.double']);
    expect(coloured('// base in')).toEqual([['// base in', 'comment.line.double-slash']]);
  });
});

const library = path.resolve(import.meta.dirname, '../language/library');
const LIBRARY = readdirSync(library).filter(name => name.endsWith('.paving'));

interface Manifest {
  readonly contributes: {
    readonly semanticTokenScopes: readonly [{ readonly scopes: Readonly<Record<string, readonly [string]>> }];
  };
}

const manifestFile = path.resolve(import.meta.dirname, '../package.json');
const manifest = JSON.parse(readFileSync(manifestFile, 'utf8')) as Manifest;
const { scopes } = manifest.contributes.semanticTokenScopes[0];

/** Words whose colour changes when the server has told what they are: `line: word, before > after`. */
function flashesIn(paving: Paving, file: string): string[] {
  const look = paving.look(file)!;
  const lines = look.text.parsed.text.split('\n').map(line => grammar!.tokenizeLine(line, textmate.INITIAL).tokens);
  return wordKindsIn(look).flatMap(word => {
    const { line, column, endColumn } = word.place;
    const { type, modifiers } = colourOf(word);
    const after = scopes[[type, ...modifiers].join('.')]?.[0];
    const before = lines[line - 1]!.filter(
      ({ startIndex, endIndex }) => startIndex < endColumn - 1 && endIndex > column - 1
    ).map(piece => piece.scopes.at(-1)!);
    const text = look.text.parsed.text.split('\n')[line - 1]!.slice(column - 1, endColumn - 1);
    return before.every(scope => scope === after) ? [] : [`${line}: ${text}, ${before.join(' ')} > ${String(after)}`];
  });
}

describe('Colours by meaning', () => {
  test.each(FILES)('%s: nothing changes its colour when the server answers', async file => {
    const paving = newPaving();
    await paving.load(pathOf(file));
    expect(flashesIn(paving, pathOf(file))).toEqual([]);
  });

  test.each(LIBRARY)('%s, which ships, neither', name => {
    const paving = new Paving(inMemory({}));
    paving.setText(name, readFileSync(path.join(library, name), 'utf8'));
    expect(flashesIn(paving, name)).toEqual([]);
  });
});
