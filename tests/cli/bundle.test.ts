// What is in the bundle of the command line, read from the bundler's own list.
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { root } from './run.ts';

interface BundleList {
  readonly inputs: Readonly<Record<string, { readonly imports: readonly { readonly path: string }[] }>>;
}

const { inputs } = JSON.parse(readFileSync(path.join(root, 'dist/meta/paving.json'), 'utf8')) as BundleList;

/** Of the editor's protocol, what the parser library's own core imports; nothing of ours may. */
const IMPORTED_BY_THE_PARSER_LIBRARY = [
  'vscode-jsonrpc',
  'vscode-languageserver-protocol',
  'vscode-languageserver-textdocument',
  'vscode-languageserver-types',
  'vscode-uri'
];

const packageOf = (file: string): string | undefined => /(?:^|\/)node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(file)?.[1];

describe('the bundle of the command line', () => {
  test('holds of the editor’s protocol only what the parser library imports', () => {
    const packages = new Set(Object.keys(inputs).map(packageOf));
    const ofTheEditor = [...packages].filter(name => name !== undefined && /^vscode/.test(name));
    expect(ofTheEditor.sort()).toEqual(IMPORTED_BY_THE_PARSER_LIBRARY);
  });

  test('and it is the parser library that imports it', () => {
    const importers = Object.entries(inputs)
      .filter(([, { imports }]) => imports.some(({ path: imported }) => /^vscode/.test(packageOf(imported) ?? '')))
      .map(([file]) => packageOf(file) ?? file);
    expect([...new Set(importers)].filter(name => !IMPORTED_BY_THE_PARSER_LIBRARY.includes(name))).toEqual(['langium']);
  });

  test('has nothing of the parser library’s language server', () => {
    expect(Object.keys(inputs).filter(file => /(?:^|\/)node_modules\/langium\/lib\/lsp\//.test(file))).toEqual([]);
  });

  test('has of the server only the command line and its files, and nothing of the extension', () => {
    const ours = Object.keys(inputs).filter(file => packageOf(file) === undefined);
    // Of the protocol's file the command line takes how large a file may be, no more.
    const allowed = /^(?:language\/|server\/(?:cli|git)\/|server\/(?:node-files|protocol|today)\.ts$)/;
    expect(ours.filter(file => !allowed.test(file))).toEqual([]);
    expect(ours).toContain('server/cli/main.ts');
  });

  test('has of other packages these alone', () => {
    const others = [...new Set(Object.keys(inputs).map(packageOf))].filter(
      name => name !== undefined && !/^vscode/.test(name)
    );
    expect(others.sort()).toEqual([
      '@chevrotain/cst-dts-gen',
      '@chevrotain/gast',
      '@chevrotain/regexp-to-ast',
      '@chevrotain/utils',
      '@kninnug/constrainautor',
      'chevrotain',
      'chevrotain-allstar',
      'clipper2-ts',
      'commander',
      'csv-stringify',
      'delaunator',
      'fflate',
      'fraction.js',
      'ical-generator',
      'langium',
      'lodash-es',
      'picocolors',
      'robust-predicates',
      'write-excel-file'
    ]);
  });

  test('goes with the licence of every library that is in it, and of the solver beside it', () => {
    const licences = readFileSync(path.join(root, 'dist/licences.txt'), 'utf8');
    const libraries = new Set(Object.keys(inputs).map(packageOf));
    for (const library of [...libraries, 'highs'])
      if (library !== undefined) expect(licences).toMatch(new RegExp(`^${library} \\d+\\.\\d+`, 'm'));
  });
});
