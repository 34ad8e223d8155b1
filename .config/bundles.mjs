// What is bundled, and how: shared by the build, by the tools that run TypeScript directly, and by the tests.
import { existsSync } from 'node:fs';
import path from 'node:path';

export const root = path.resolve(import.meta.dirname, '..');

/** Shipped texts (spec text and pages) become strings in the bundle. */
export const textLoaders = { '.paving': 'text', '.md': 'text' };

const node = { platform: 'node', target: 'node20', format: 'cjs' };
const browser = { platform: 'browser', target: 'es2022' };
// The editor's host for web extensions loads CommonJS, but has no Node modules.
const editorWeb = { ...browser, format: 'cjs', external: ['vscode'] };

/** The solver's library stays a file of its own beside the bundle: only an order that needs it loads it. */
const besideTheBundle = {
  name: 'beside-the-bundle',
  setup: ({ onResolve }) => onResolve({ filter: /^highs$/ }, () => ({ path: './highs.cjs', external: true }))
};

/** Files of that library by their names beside the bundle. */
export const solverFiles = { 'highs.cjs': 'highs.js', 'highs.wasm': 'highs.wasm' };

const bundles = [
  { entry: 'server/node.ts', file: 'dist/server.cjs', options: node },
  { entry: 'server/browser.ts', file: 'dist/server-browser.js', options: { ...browser, format: 'iife' } },
  { entry: 'extension/desktop.ts', file: 'dist/extension.cjs', options: { ...node, external: ['vscode'] } },
  { entry: 'extension/web.ts', file: 'dist/extension-web.js', options: editorWeb },
  { entry: 'extension/panel/main.ts', file: 'dist/panel/panel.js', options: { ...browser, format: 'iife' } },
  { entry: 'extension/panel/plan/main.ts', file: 'dist/panel/plan.js', options: { ...browser, format: 'iife' } },
  {
    entry: 'server/cli/main.ts',
    file: 'dist/paving.cjs',
    options: { ...node, banner: { js: '#!/usr/bin/env node' }, plugins: [besideTheBundle] }
  }
];

export const presentBundles = () => bundles.filter(({ entry }) => existsSync(path.join(root, entry)));

/** The options every bundle has in common. */
export const commonOptions = {
  absWorkingDir: root,
  bundle: true,
  metafile: true,
  logLevel: 'warning',
  loader: textLoaders
};
