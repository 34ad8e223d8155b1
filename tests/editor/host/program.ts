// Stands for a desktop editor: takes the command line that runTests gives one, and runs it on the server and the browser.
import path from 'node:path';
import type { Page } from 'playwright-core';
import { loadInBrowser, withEditor, withServedFolder, workbenchAddress } from './editor.ts';

const longest = 240_000;

const log: string[] = [];
const given = process.argv.slice(2);
const option = (name: string) => given.find(word => word.startsWith(`--${name}=`))?.slice(name.length + 3);
const extension = needed(option('extensionDevelopmentPath'));
const tests = needed(option('extensionTestsPath'));
const folder = needed(given.find(word => !word.startsWith('--')));

try {
  await withEditor({ trusted: true }, async (server, browser) => {
    log.push(server.origin);
    if (option('extensionDevelopmentKind') === 'web') {
      const served = path.dirname(extension);
      await withServedFolder(served, async origin => {
        const address = (file: string) => `${origin}/${path.relative(served, file)}`;
        // The policy of the page would refuse the address of our worker.
        const page = await browser.newPage({ bypassCSP: true });
        await loadInBrowser(page, address(extension), address(tests).replace(/\.js$/, ''));
        process.exitCode = await runIn(page, workbenchAddress(server, { folder }));
      });
    } else {
      const page = await browser.newPage();
      process.exitCode = await runIn(page, workbenchAddress(server, { folder, extension, tests }));
    }
    log.push(server.log());
  });
} catch (error) {
  log.push(String(error));
  process.exitCode = 1;
}
// The editor says much that is of no interest while all goes well.
if (process.exitCode !== 0) console.error(log.join('\n'));

function needed(value: string | undefined): string {
  if (value === undefined) throw new Error(`Something is missing in: ${given.join(' ')}`);
  return path.resolve(value);
}

/** Opens the workbench, which calls two functions of its page: when it logs, and when the tests have ended. */
async function runIn(page: Page, address: string): Promise<number> {
  await page.exposeFunction('codeAutomationLog', (_: string, words: unknown[]) => keep(words));
  const ended = new Promise<number>((resolve, reject) => {
    const timer = setTimeout(() => reject(new Error('The tests did not end in time.')), longest);
    page.on('crash', () => reject(new Error('The page crashed.')));
    void page.exposeFunction('codeAutomationExit', (code: number) => {
      clearTimeout(timer);
      resolve(code);
    });
  });
  await page.goto(address, { waitUntil: 'commit' });
  return ended;
}

/** The first word may hold places (%s) for the next ones, and places for a style (%c). */
function keep([first, ...rest]: unknown[]): void {
  const filled = String(first).replace(/%[csdio]/g, place => {
    const word = rest.shift();
    return place === '%c' ? '' : String(word);
  });
  log.push([filled, ...rest].join(' '));
}
