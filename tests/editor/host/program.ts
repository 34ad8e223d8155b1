// Stands for a desktop editor: takes the command line that runTests gives one, and runs it on the server and the browser.
import path from 'node:path';
import type { Page } from 'playwright-core';
import { loadInBrowser, serveFolder, startBrowser, startServer, workbenchAddress } from './editor.ts';

const longest = 240_000;

const log: string[] = [];
const given = process.argv.slice(2);
const option = (name: string) => given.find(word => word.startsWith(`--${name}=`))?.slice(name.length + 3);
const extension = needed(option('extensionDevelopmentPath'));
const tests = needed(option('extensionTestsPath'));
const folder = needed(given.find(word => !word.startsWith('--')));

const server = await startServer({ trusted: true });
const browser = await startBrowser();
const web = option('extensionDevelopmentKind') === 'web' ? await serveFolder(path.dirname(extension)) : undefined;
try {
  // The policy of the page would refuse our worker's address.
  const page = await browser.newPage({ bypassCSP: web !== undefined });
  const ended = endOfTests(page);
  if (web) {
    const served = (file: string) => `${web.origin}/${path.relative(path.dirname(extension), file)}`;
    await loadInBrowser(page, served(extension), served(tests).replace(/\.js$/, ''));
    await page.goto(workbenchAddress(server, { folder }), { waitUntil: 'commit' });
  } else {
    await page.goto(workbenchAddress(server, { folder, extension, tests }), { waitUntil: 'commit' });
  }
  process.exitCode = await ended;
} catch (error) {
  log.push(String(error), server.log());
  process.exitCode = 1;
} finally {
  // The editor says much that is of no interest while all goes well.
  if (process.exitCode !== 0) console.error(log.join('\n'));
  await browser.close();
  await web?.stop();
  await server.stop();
}

function needed(value: string | undefined): string {
  if (value === undefined) throw new Error(`Something is missing in: ${given.join(' ')}`);
  return path.resolve(value);
}

/** The workbench calls these two functions of the page when it logs and when the tests have ended. */
function endOfTests(page: Page): Promise<number> {
  return new Promise((resolve, reject) => {
    const timer = setTimeout(() => reject(new Error('The tests did not end in time.')), longest);
    void page.exposeFunction('codeAutomationLog', (_: string, words: unknown[]) => keep(words));
    void page.exposeFunction('codeAutomationExit', (code: number) => {
      clearTimeout(timer);
      resolve(code);
    });
    page.on('crash', () => reject(new Error('The page crashed.')));
  });
}

/** The first word may hold places (%s) for the next ones, and places for a style (%c). */
function keep([first, ...rest]: unknown[]): void {
  const filled = String(first).replace(/%[csdio]/g, place => {
    const word = rest.shift();
    return place === '%c' ? '' : String(word);
  });
  log.push([filled, ...rest].join(' '));
}
