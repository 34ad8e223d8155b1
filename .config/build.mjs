// Bundles everything that ships into dist/: `npm run build` makes the parser first.
import { build } from 'esbuild';
import { chmodSync, cpSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { commonOptions, presentBundles, root, solverFiles } from './bundles.mjs';
import { licenceTexts, librariesIn } from './licences.mjs';
import { loadable } from './load.mjs';

const dist = path.join(root, 'dist');
mkdirSync(path.join(dist, 'meta'), { recursive: true });

const lists = await Promise.all(
  presentBundles().map(async ({ entry, file, options }) => {
    const result = await build({ ...commonOptions, ...options, entryPoints: [entry], outfile: file, minify: true });
    // A test reads these lists to say what is in a bundle, and what is not.
    const list = path.join(dist, 'meta', `${path.parse(file).name}.json`);
    writeFileSync(list, JSON.stringify(result.metafile));
    if (options.banner) chmodSync(path.join(root, file), 0o755);
    return result.metafile;
  })
);

// The editor opens the pages, and what ships as spec text, as files of the extension.
for (const [folder, ending] of [
  ['pages', '.md'],
  ['library', '.paving']
]) {
  rmSync(path.join(dist, folder), { recursive: true, force: true });
  cpSync(path.join(root, 'language', folder), path.join(dist, folder), {
    recursive: true,
    filter: source => !path.extname(source) || source.endsWith(ending)
  });
}

// The pages of rules are made from their texts.
const { shippedPages } = await import((await loadable('language/pages.ts')).href);
for (const [name, page] of shippedPages()) writeFileSync(path.join(dist, 'pages', `${name}.md`), page);

// The panels: each its own style, and that of drawings in it.
const { STYLE_IN_EDITOR } = await import((await loadable('language/drawing/svg/svg-style.ts')).href);
for (const [source, name] of [
  ['extension/panel/panel.css', 'panel.css'],
  ['extension/panel/plan/plan.css', 'plan.css']
]) {
  const style = readFileSync(path.join(root, source), 'utf8');
  writeFileSync(path.join(dist, 'panel', name), `${style}\n${STYLE_IN_EDITOR}\n`);
}

// The solver of orders, with its WebAssembly.
for (const [name, file] of Object.entries(solverFiles))
  cpSync(path.join(root, 'node_modules/highs/build', file), path.join(dist, name));

writeFileSync(path.join(dist, 'licences.txt'), licenceTexts([...librariesIn(lists), 'node_modules/highs']));

// The command line for the editor's terminal, and the samples that the first steps open.
const shipped = { 'extension/bin': ['paving', 'paving.cmd'], samples: ['first-job.paving', 'path.paving'] };
for (const [folder, names] of Object.entries(shipped)) {
  const to = path.join(dist, path.basename(folder));
  rmSync(to, { recursive: true, force: true });
  for (const name of names) cpSync(path.join(root, folder, name), path.join(to, name));
}
chmodSync(path.join(dist, 'bin/paving'), 0o755);

// Its time says when this build was made.
writeFileSync(path.join(dist, 'built'), '');
