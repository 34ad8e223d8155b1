// Makes the package that an editor installs: `npm run package`.
import { createVSIX, listFiles } from '@vscode/vsce';
import { cpSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { root } from './bundles.mjs';

const wanted = [
  /^package(\.nls)?\.json$/,
  /^(README\.md|LICENSE|CHANGELOG\.md)$/,
  /^dist\/[a-z-]+\.c?js$/,
  /^dist\/(highs\.wasm|licences\.txt)$/,
  /^dist\/panel\/(panel|plan)\.(css|js)$/,
  /^dist\/pages\/[a-z0-9-]+\.md$/,
  /^dist\/library\/[a-z-]+\.paving$/,
  /^dist\/bin\/paving(\.cmd)?$/,
  /^dist\/samples\/[a-z-]+\.paving$/,
  /^extension\/(icon\.png|pictures\/terrace\.png|language-configuration\.json|syntaxes\/paving\.tmLanguage\.json)$/,
  /^extension\/(file-icon|walkthrough)\/[a-z-]+\.svg$/,
  /^extension\/l10n\/bundle\.l10n\.json$/
];

const packaged = await listFiles({ cwd: root, packageManager: 0 });
const unwanted = packaged.filter(file => !wanted.some(pattern => pattern.test(file)));
if (unwanted.length > 0) throw new Error(`These files do not belong in the package: ${unwanted.join(', ')}`);

const staged = path.join(root, '.cache/package');
rmSync(staged, { recursive: true, force: true });
for (const file of [...packaged, '.vscodeignore']) cpSync(path.join(root, file), path.join(staged, file));

// Everything is bundled: nothing is to be installed or run. And the bundles are CommonJS, which `type` would deny.
const { type, scripts, dependencies, devDependencies, overrides, ...manifest } = JSON.parse(
  readFileSync(path.join(root, 'package.json'), 'utf8')
);
writeFileSync(path.join(staged, 'package.json'), JSON.stringify(manifest, null, 2));

await createVSIX({
  cwd: staged,
  packagePath: path.join(root, 'dist/paving-job-spec.vsix'),
  dependencies: false,
  allowMissingRepository: true,
  // Links in the README lead to files beside it, whatever the package is published under.
  rewriteRelativeLinks: false
});
