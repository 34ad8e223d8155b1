import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { defineConfig, type Plugin } from 'vitest/config';

// The same as the bundler's text loader: a shipped text is imported as a string.
const shippedTexts: Plugin = {
  name: 'shipped-texts',
  enforce: 'pre',
  async load(id) {
    if (!/\.(?:paving|md)$/.test(id)) return undefined;
    return `export default ${JSON.stringify(await readFile(id, 'utf8'))};`;
  }
};

export default defineConfig({
  root: path.resolve(import.meta.dirname, '..'),
  plugins: [shippedTexts],
  cacheDir: '.cache/vite',
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/editor/**'],
    globalSetup: ['.config/vitest-setup.ts'],
    // One core is left idle else.
    maxWorkers: '100%',
    // Two cores are common in CI: whole-job tests need their time.
    testTimeout: 180_000,
    hookTimeout: 180_000
  }
});
