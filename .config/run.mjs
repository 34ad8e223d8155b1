// Runs a TypeScript file with Node: node .config/run.mjs FILE ARGUMENTS…
import { build } from 'esbuild';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { commonOptions, root } from './bundles.mjs';

const [entry, ...given] = process.argv.slice(2);
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
process.argv = [process.argv[0], outfile, ...given];
await import(pathToFileURL(outfile).href);
