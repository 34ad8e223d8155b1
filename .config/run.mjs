// Runs a TypeScript file with Node: node .config/run.mjs FILE ARGUMENTS…
import { fileURLToPath } from 'node:url';
import { loadable } from './load.mjs';

const [entry, ...given] = process.argv.slice(2);
const file = await loadable(entry);
process.argv = [process.argv[0], fileURLToPath(file), ...given];
await import(file.href);
