// The layers: what each folder may not know. See DEVELOPERS.md.
import { readdirSync, readFileSync } from 'node:fs';
import { isBuiltin } from 'node:module';
import path from 'node:path';
import ts from 'typescript';
import { describe, expect, test } from 'vitest';

const root = path.resolve(import.meta.dirname, '..');

/** Clock, console, randomness, waiting and the machine: all of it is passed in, or stays with the server. */
const outsideWorld = new Set([
  ...['console', 'process', 'globalThis', 'performance', 'crypto', 'fetch'],
  ...['setTimeout', 'setInterval', 'setImmediate', 'queueMicrotask']
]);

interface Source {
  readonly file: string;
  readonly imports: readonly string[];
  /** Those of the imports that bring more than types. */
  readonly values: readonly string[];
  readonly uses: readonly string[];
}

function read(file: string, text: string): Source {
  const imports: string[] = [];
  const values: string[] = [];
  const uses: string[] = [];
  const visit = (node: ts.Node): void => {
    const module = importedModule(node);
    if (module) imports.push(module);
    if (module && !isOfTypes(node)) values.push(module);
    const use = useOfOutsideWorld(node);
    if (use) uses.push(use);
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true));
  const whole = (name: string): string => (name.startsWith('.') ? path.posix.join(path.dirname(file), name) : name);
  return { file, imports: imports.map(whole), values: values.map(whole), uses };
}

/** Nothing of it is left when it runs. */
function isOfTypes(node: ts.Node): boolean {
  if (ts.isImportTypeNode(node)) return true;
  if (ts.isExportDeclaration(node)) return node.isTypeOnly;
  return ts.isImportDeclaration(node) && node.importClause?.isTypeOnly === true;
}

function importedModule(node: ts.Node): string | undefined {
  const named =
    ts.isImportDeclaration(node) || ts.isExportDeclaration(node)
      ? node.moduleSpecifier
      : ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument)
        ? node.argument.literal
        : ts.isCallExpression(node) &&
            (node.expression.kind === ts.SyntaxKind.ImportKeyword || node.expression.getText() === 'require')
          ? node.arguments[0]
          : undefined;
  return named && ts.isStringLiteralLike(named) ? named.text : undefined;
}

function useOfOutsideWorld(node: ts.Node): string | undefined {
  if (ts.isPropertyAccessExpression(node)) {
    const text = node.getText();
    if (text === 'Date.now' || text === 'Math.random') return text;
  }
  if (ts.isNewExpression(node) && node.expression.getText() === 'Date' && !node.arguments?.length) return 'new Date()';
  if (!ts.isIdentifier(node) || !outsideWorld.has(node.text)) return undefined;
  const { parent } = node;
  const isMember = ts.isPropertyAccessExpression(parent) && parent.name === node;
  const isKey = (ts.isPropertyAssignment(parent) || ts.isPropertySignature(parent)) && parent.name === node;
  return isMember || isKey ? undefined : node.text;
}

/** What numbers and their workings are written with; it knows no stage. */
const ARITHMETIC = /^language\/quantities\/(?:arithmetic|contract|formula-text)\.ts$/;

/** What leads a job through all stages. */
const COMPUTED = /^language\/(?:quantities\/compute-job|priced-job|job-figures|paving)\.ts$/;

/** What the panels' pages and the editor's client share. */
const PANEL_MESSAGES = ['extension/panel/messages.ts', 'extension/panel/plan/messages.ts'];

/** What the page of the live plan draws and prints with, as printed plans do: looks, letters and measures, which know no job. */
const DRAWN_WITH =
  /^language\/(?:drawing\/(?:inks|tints|lettering)|drawing\/svg\/(?:svg-hatches|escaped)|measures\/print)\.ts$/;

/** What the server shares with the extension. */
const PROTOCOL = ['server/protocol.ts', 'server/plan-protocol.ts'];

function faultsOf({ file, imports, values, uses }: Source): string[] {
  const inFolder = (...folders: string[]) => folders.some(folder => file.startsWith(`${folder}/`));
  const faults = imports.filter(name => {
    const isOurs = /^(language|server|extension|tests|\.\.)\//.test(name);
    if (file === 'server/protocol.ts') return true;
    if (file === 'server/plan-protocol.ts') return name !== 'server/protocol.ts';
    // It runs in a page of its own: of the protocol it knows the shapes alone.
    if (inFolder('extension/panel/plan') && DRAWN_WITH.test(name)) return false;
    if (inFolder('extension/panel'))
      return !name.startsWith('extension/panel/') && (!PROTOCOL.includes(name) || values.includes(name));
    if (inFolder('extension') && name.startsWith('extension/panel/')) return !PANEL_MESSAGES.includes(name);
    if (isOurs) {
      if (name.startsWith('language/syntax/generated/')) return !inFolder('language/syntax', 'language/lowering');
      if (name.startsWith('language/editing/') && inFolder('language')) return !inFolder('language/editing');
      if (inFolder('language/geometry')) return !name.startsWith('language/geometry/');
      if (inFolder('language/laying')) return !/^language\/(geometry|laying)\//.test(name);
      if (inFolder('language/levels')) return !/^language\/(geometry|setting-out|levels)\//.test(name);
      if (inFolder('language/setting-out')) return !/^language\/(geometry|setting-out)\//.test(name);
      if (inFolder('language/money')) return !/^language\/(money|job|measures)\//.test(name) && !ARITHMETIC.test(name);
      if (inFolder('language/buying', 'language/schedule', 'language/pricing') && COMPUTED.test(name)) return true;
      if (inFolder('language/quantities') && /^language\/(schedule|pricing)\//.test(name)) return true;
      if (inFolder('language')) return !name.startsWith('language/');
      if (inFolder('server')) return !/^(language|server)\//.test(name);
      return !name.startsWith('extension/') && !PROTOCOL.includes(name);
    }
    if (isBuiltin(name)) return !inFolder('server');
    if (/^vscode-languageserver/.test(name)) return !inFolder('server');
    if (/^vscode(-languageclient)?(\/|$)/.test(name)) return !inFolder('extension');
    if (/^(langium|chevrotain)(\/|$)/.test(name)) return !inFolder('language/syntax', 'language/lowering');
    return inFolder('extension');
  });
  return [
    ...faults.map(name => `${file} may not import ${name}`),
    ...(inFolder('language') ? uses.map(use => `${file} may not use ${use}`) : [])
  ];
}

/** What the browser's server is made of, and where Node is in it. */
function nodeInBrowser(sources: readonly Source[]): string[] {
  const byFile = new Map(sources.map(source => [source.file, source]));
  const reached = new Set<string>();
  const reach = (file: string): void => {
    const source = byFile.get(file);
    if (!source || reached.has(file)) return;
    reached.add(file);
    source.imports.forEach(reach);
  };
  reach('server/browser.ts');
  return [...reached].flatMap(file =>
    (byFile.get(file)?.imports ?? [])
      .filter(name => isBuiltin(name) || /^server\/(node\.ts|cli\/)/.test(name) || /\/node(\.js)?$/.test(name))
      .map(name => `${file} is part of the browser's server and may not import ${name}`)
  );
}

function sourcesIn(folder: string): Source[] {
  return readdirSync(path.join(root, folder), { recursive: true, encoding: 'utf8' })
    .map(name => `${folder}/${name.replaceAll(path.sep, '/')}`)
    .filter(file => file.endsWith('.ts') && !file.startsWith('language/syntax/generated/'))
    .map(file => read(file, readFileSync(path.join(root, file), 'utf8')));
}

describe('The layers', () => {
  const sources = ['language', 'server', 'extension'].flatMap(sourcesIn);

  test.each(['language', 'server', 'extension'])('%s/ knows only what it may', folder => {
    const own = sources.filter(({ file }) => file.startsWith(`${folder}/`));
    expect(own).not.toHaveLength(0);
    expect(own.flatMap(faultsOf)).toEqual([]);
  });

  test("the browser's server has no Node in it", () => {
    expect(nodeInBrowser(sources)).toEqual([]);
  });
});

describe('The test of the layers itself', () => {
  test.each([
    ['language/job/made-up.ts', "import { readFileSync } from 'node:fs';"],
    ['language/job/made-up.ts', "import path from 'path';"],
    ['language/job/made-up.ts', "import type { Hover } from 'vscode-languageserver';"],
    ['language/job/made-up.ts', "export * from 'langium';"],
    ['language/job/made-up.ts', "import { Job } from '../syntax/generated/ast.ts';"],
    ['language/job/made-up.ts', "const later = await import('langium');"],
    ['language/job/made-up.ts', "type Node = import('langium').AstNode;"],
    ['language/job/made-up.ts', "import { readFileRequest } from '../../server/protocol.ts';"],
    ['language/views/made-up.ts', "import { wordAt } from '../editing/word-at.ts';"],
    ['language/paving.ts', "export { wordAt } from './editing/word-at.ts';"],
    ['language/geometry/made-up.ts', "import type { Area } from '../job/job.ts';"],
    ['language/laying/bonds/made-up.ts', "import type { Bond } from '../../job/job.ts';"],
    ['language/levels/made-up.ts', "import type { Bond } from '../job/job.ts';"],
    ['language/setting-out/made-up.ts', "import type { Plane } from '../levels/surface.ts';"],
    ['language/money/made-up.ts', "import { costsOf } from '../pricing/costs.ts';"],
    ['language/buying/made-up.ts', "import { computeJob } from '../quantities/compute-job.ts';"],
    ['language/pricing/made-up.ts', "import { pricedJob } from '../priced-job.ts';"],
    ['language/quantities/made-up.ts', "import { scheduleOf } from '../schedule/schedule.ts';"],
    ['language/editing/made-up.ts', "import type { Area } from '../syntax/generated/ast.ts';"],
    ['language/job/made-up.ts', "console.log('words');"],
    ['language/job/made-up.ts', 'const today = new Date();'],
    ['language/job/made-up.ts', 'const now = Date.now();'],
    ['language/job/made-up.ts', 'const chance = Math.random();'],
    ['language/job/made-up.ts', 'const place = process.cwd();'],
    ['language/job/made-up.ts', 'setTimeout(work, 10);'],
    ['server/made-up.ts', "import * as vscode from 'vscode';"],
    ['server/made-up.ts', "import { LanguageClient } from 'vscode-languageclient/node.js';"],
    ['server/made-up.ts', "import { AstUtils } from 'langium';"],
    ['server/made-up.ts', "import { start } from '../extension/client.ts';"],
    ['server/protocol.ts', "import type { Key } from '../language/job/job.ts';"],
    ['extension/made-up.ts', "import type { Job } from '../language/job/job.ts';"],
    ['extension/made-up.ts', "import { serve } from '../server/node.ts';"],
    ['extension/made-up.ts', "import { readFile } from 'node:fs/promises';"],
    ['extension/made-up.ts', "import { drawingToDom } from './panel/drawing-to-dom.ts';"],
    ['extension/panel/made-up.ts', "import type { Uri } from 'vscode';"],
    ['extension/panel/made-up.ts', "import path from 'node:path';"],
    ['extension/panel/made-up.ts', "import { client } from '../client.ts';"],
    ['extension/panel/made-up.ts', "import { olderScheme } from '../../server/protocol.ts';"],
    ['extension/panel/made-up.ts', "import type { Drawing } from '../../language/drawing/drawing.ts';"],
    ['extension/panel/made-up.ts', "import { INKS } from '../../language/drawing/inks.ts';"],
    ['extension/panel/plan/made-up.ts', "import { planDrawing } from '../../../language/views/plan/plan-drawing.ts';"],
    ['extension/panel/plan/made-up.ts', "import { planRequest } from '../../../server/plan-protocol.ts';"],
    ['extension/panel/made-up.ts', "import { setUp } from 'some-library';"]
  ])('finds the fault in %s: %s', (file, text) => {
    expect(faultsOf(read(file, text))).toHaveLength(1);
  });

  test.each([
    ['language/syntax/made-up.ts', "import { EmptyFileSystem } from 'langium'; // console"],
    ['language/editing/rewrites/made-up.ts', "import { wordAt } from '../word-at.ts';"],
    ['language/levels/made-up.ts', "import { stationOf } from '../setting-out/stationed-line.ts';"],
    ['server/features/made-up.ts', "import { wordAt } from '../../language/editing/word-at.ts';"],
    ['language/job/made-up.ts', "const text = 'console'; const at = new Date(given); task.process = 1;"],
    [
      'server/made-up.ts',
      "import { createConnection } from 'vscode-languageserver'; import fs from 'node:fs'; console.log(Date.now());"
    ],
    ['extension/made-up.ts', "import * as vscode from 'vscode'; import { largestFile } from '../server/protocol.ts';"],
    ['extension/made-up.ts', "import { isFromPanel } from './panel/messages.ts';"],
    ['extension/panel/made-up.ts', "import type { ShownRow } from '../../server/protocol.ts';"],
    ['extension/panel/made-up.ts', "import { isToPanel, type Side } from './messages.ts';"],
    ['extension/panel/plan/made-up.ts', "import { INKS } from '../../../language/drawing/inks.ts';"]
  ])('finds no fault in %s: %s', (file, text) => {
    expect(faultsOf(read(file, text))).toEqual([]);
  });

  test("finds Node behind the browser's server", () => {
    const browser = read('server/browser.ts', "import { serve } from './shared.ts';");
    const faulty = read('server/shared.ts', "import fs from 'node:fs';");
    expect(nodeInBrowser([browser, faulty])).toHaveLength(1);
    expect(nodeInBrowser([browser, read('server/shared.ts', "import { parse } from '../language/x.ts';")])).toEqual([]);
  });
});
