// Starts the editor's server, and opens its workbench in a browser without a window.
import { spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import http from 'node:http';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { chromium, type Browser, type Page } from 'playwright-core';
import { installBrowser } from './install.ts';
import { places } from './places.ts';

export interface EditorServer {
  readonly origin: string;
  readonly authority: string;
  readonly log: () => string;
  readonly stop: () => Promise<void>;
}

interface EditorWish {
  /** The folder of installed extensions. */
  readonly extensions?: string;
  readonly settings?: object;
  /** Whether the person said that they trust the folder. */
  readonly trusted: boolean;
}

/** Starts an editor, and ends it and all it started, whatever happens. */
export async function withEditor(
  wish: EditorWish,
  use: (server: EditorServer, browser: Browser) => Promise<void>
): Promise<void> {
  const server = await startServer(wish);
  try {
    const browser = await startBrowser();
    try {
      await use(server, browser);
    } finally {
      await browser.close();
    }
  } finally {
    await server.stop();
  }
}

// In a browser the editor saves by itself: a test that types would change the files on disk.
const quietSettings = {
  'files.autoSave': 'off',
  'extensions.autoCheckUpdates': false,
  'extensions.ignoreRecommendations': true,
  'telemetry.telemetryLevel': 'off',
  'chat.disableAIFeatures': true,
  'git.enabled': false
};

async function startServer(wish: EditorWish): Promise<EditorServer> {
  const data = mkdtempSync(path.join(tmpdir(), 'paving-editor-'));
  mkdirSync(path.join(data, 'data/User'), { recursive: true });
  writeFileSync(path.join(data, 'data/User/settings.json'), JSON.stringify({ ...quietSettings, ...wish.settings }));
  const server = spawn(
    process.execPath,
    [
      path.join(places.editor, 'out/server-main.js'),
      ...['--host', '127.0.0.1', '--port', '0', '--without-connection-token', '--accept-server-license-terms'],
      ...['--telemetry-level', 'off', '--force-disable-user-env', '--server-data-dir', data],
      ...(wish.extensions ? ['--extensions-dir', wish.extensions] : []),
      ...(wish.trusted ? ['--disable-workspace-trust'] : [])
    ],
    // The editor leaves sockets in its folder for temporary files: that folder goes with the rest.
    { stdio: ['ignore', 'pipe', 'pipe'], detached: true, env: { ...process.env, TMPDIR: data } }
  );
  let log = '';
  const port = await new Promise<string>((resolve, reject) => {
    const timer = setTimeout(
      () => reject(new Error(`The editor's server did not start within a minute:\n${log}`)),
      60_000
    );
    const read = (said: Buffer) => {
      log += said;
      const listening = /Extension host agent listening on (\d+)/.exec(log)?.[1];
      if (!listening) return;
      clearTimeout(timer);
      resolve(listening);
    };
    server.stdout.on('data', read);
    server.stderr.on('data', read);
    server.on('exit', code => reject(new Error(`The editor's server ended with ${code}:\n${log}`)));
  });
  const authority = `127.0.0.1:${port}`;
  return {
    origin: `http://${authority}`,
    authority,
    log: () => log,
    async stop() {
      if (server.exitCode === null && server.signalCode === null) {
        const ended = new Promise(resolve => server.once('exit', resolve));
        // The whole group: the extension hosts and the language server too.
        if (server.pid) process.kill(-server.pid, 'SIGKILL');
        await ended;
      }
      rmSync(data, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
    }
  };
}

export async function startBrowser(): Promise<Browser> {
  const flags = ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-sync'];
  return chromium.launch({
    executablePath: await installBrowser(),
    args: [...flags, '--disable-background-networking', '--disable-component-update']
  });
}

/** Serves a folder over http: the extension host in the browser loads extensions, and their workers, from there only. */
export async function withServedFolder(folder: string, use: (origin: string) => Promise<void>): Promise<void> {
  const types: Record<string, string> = {
    '.css': 'text/css',
    '.js': 'text/javascript',
    '.json': 'application/json',
    '.svg': 'image/svg+xml'
  };
  const web = http.createServer((request, response) => {
    const asked = new URL(request.url ?? '/', 'http://localhost').pathname;
    const file = path.join(folder, path.normalize(decodeURIComponent(asked)));
    response.setHeader('access-control-allow-origin', '*');
    if (file.startsWith(folder) && statSync(file, { throwIfNoEntry: false })?.isFile()) {
      response.setHeader('content-type', types[path.extname(file)] ?? 'application/octet-stream');
      response.end(readFileSync(file));
    } else {
      response.statusCode = 404;
      response.end();
    }
  });
  await new Promise<void>(resolve => web.listen(0, '127.0.0.1', resolve));
  const address = web.address();
  try {
    if (address === null || typeof address === 'string') throw new Error('The folder is not served on a port.');
    await use(`http://127.0.0.1:${address.port}`);
  } finally {
    web.closeAllConnections();
    web.close();
  }
}

/** The workbench's address for a folder and what to load with it. */
export function workbenchAddress(
  server: EditorServer,
  wish: {
    /** A folder, or a file that names several. */
    readonly folder: string;
    readonly file?: string;
    readonly extension?: string;
    readonly tests?: string;
  }
): string {
  const remote = (file: string) => `vscode-remote://${server.authority}${encodeURI(file)}`;
  const payload = [
    ['skipWelcome', 'true'],
    ...(wish.extension ? [['extensionDevelopmentPath', remote(wish.extension)]] : []),
    ...(wish.tests ? [['extensionTestsPath', remote(wish.tests)]] : []),
    ...(wish.file ? [['openFile', remote(wish.file)]] : [])
  ];
  const what = wish.folder.endsWith('.code-workspace') ? 'workspace' : 'folder';
  return `${server.origin}/?${new URLSearchParams({ [what]: wish.folder, payload: JSON.stringify(payload) })}`;
}

/**
 * Puts an extension into the extension host that runs in the browser. The workbench takes such extensions from the
 * configuration in its page, which is amended before the workbench's script reads it.
 */
export async function loadInBrowser(page: Page, extension: string, tests?: string): Promise<void> {
  const parts = (address: string) => {
    const { protocol, host, pathname } = new URL(address);
    return { scheme: protocol.slice(0, -1), authority: host, path: pathname };
  };
  const options = { extensions: [parts(extension)], ...(tests ? { extensionTestsPath: parts(tests) } : {}) };
  await page.addInitScript(`
    if (window === window.top) new MutationObserver((_, observer) => {
      const element = document.getElementById('vscode-workbench-web-configuration');
      if (!element) return;
      observer.disconnect();
      const configuration = JSON.parse(element.getAttribute('data-settings'));
      configuration.developmentOptions = { ...configuration.developmentOptions, ...${JSON.stringify(options)} };
      element.setAttribute('data-settings', JSON.stringify(configuration));
    }).observe(document, { childList: true, subtree: true });
  `);
}
