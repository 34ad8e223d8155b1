// Makes a TypeScript file into one that Node can import.
import { build } from 'esbuild';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { commonOptions, root } from './bundles.mjs';

/** Bundles the file, and gives the address of the result. */
export async function loadable(entry) {
  const outfile = path.join(root, '.cache/run', `${entry.replaceAll('/', '-').replace(/\.m?ts$/, '')}.mjs`);
  await build({
    ...commonOptions,
    platform: 'node',
    target: 'node20',
    format: 'esm',
    packages: 'external',
    sourcemap: 'inline',
    entryPoints: [entry],
    outfile
  });
  return pathToFileURL(outfile);
}
