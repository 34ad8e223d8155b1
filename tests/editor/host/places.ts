// Where the editor tests keep things: all below .cache/, which is not in version control.
import path from 'node:path';

/** Scripts are started by npm, in the project's folder. */
export const root = process.cwd();
const cache = path.join(root, '.cache');

export const places = {
  /** The editor itself. */
  editor: path.join(cache, 'editor-host'),
  /** The browser, unpacked. */
  browser: path.join(cache, 'browser'),
  /** Served to the extension host that runs in the browser. */
  served: path.join(cache, 'editor'),
  /** The unpacked package. */
  extension: path.join(cache, 'editor/extension'),
  /** The bundled suite: a host runs only tests that lie inside the extension. */
  suite: path.join(cache, 'editor/extension/suite/suite.js'),
  /** The program that stands for a desktop editor. */
  program: path.join(cache, 'editor/program.mjs'),
  package: path.join(root, 'dist/paving-job-spec.vsix'),
  screenshots: path.join(cache, 'screenshots'),
  results: path.join(cache, 'results')
};
