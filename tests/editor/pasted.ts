// What becomes of coordinates that a person pastes by the keyboard, in the installed package. The editor's own paste
// command does not ask extensions; the keyboard does.
import path from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { loadInBrowser, withEditor, withServedFolder, workbenchAddress } from './host/editor.ts';
import type { Installed } from './host/install-extension.ts';
import { withJobFolder } from './host/job-folder.ts';
import type { TestResult } from './suite/index.ts';

const spec = 'samples/terrace.paving';
const plain = { table: 'name\tx (m)\ty (m)\nA\t1,5\t0\nQ 1\t3,6\t0,25\n', line: /^point Q-1 at \(3\.6, 0\.25\) m$/ };
const unclear = { table: 'Q2 3.6 2.5', line: /^point Q2 at \(3\.6, 2\.5\) in$/, choice: 'Paste as one point in in' };

export async function checkPasted(installed: Installed): Promise<TestResult[]> {
  const results: TestResult[] = [];
  for (const host of ['node', 'web'] as const) {
    const title = `pasted by the keyboard, ${host} host: a table of points`;
    try {
      await withJobFolder(folder => check(host, installed, folder));
      results.push({ title });
    } catch (error) {
      results.push({ title, failure: error instanceof Error ? (error.stack ?? error.message) : String(error) });
    }
  }
  return results;
}

async function check(host: 'node' | 'web', installed: Installed, folder: string): Promise<void> {
  const wish = { ...(host === 'node' ? { extensions: installed.extensions } : {}), trusted: true };
  await withEditor(wish, async (server, browser) => {
    const page = await pageWithClipboard(browser, server.origin);
    const address = workbenchAddress(server, { folder, file: path.join(folder, spec) });
    if (host === 'node') return pasteInto(page, address);
    await withServedFolder(path.dirname(installed.extension), async origin => {
      await loadInBrowser(page, `${origin}/${path.basename(installed.extension)}`);
      await pasteInto(page, address);
    });
  });
}

async function pageWithClipboard(browser: Browser, origin: string): Promise<Page> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, bypassCSP: true });
  await context.grantPermissions(['clipboard-read', 'clipboard-write'], { origin });
  return context.newPage();
}

async function pasteInto(page: Page, address: string): Promise<void> {
  await page.goto(address, { waitUntil: 'commit' });
  await page.locator('.codelens-decoration', { hasText: 'sq ft paved' }).first().waitFor({ timeout: 60_000 });
  await page.locator('.monaco-editor .view-line').first().click();
  await paste(page, plain.table);
  await lineThatReads(page, plain.line);
  await paste(page, unclear.table);
  await lineThatReads(page, /^Q2 3\.6 2\.5$/);
  await page.locator('.post-edit-widget').waitFor({ timeout: 10_000 });
  await page.keyboard.press('Control+.');
  const choices = page.locator('.action-widget .monaco-list-row');
  await choices.filter({ hasText: unclear.choice }).waitFor({ timeout: 10_000 });
  // The text as it is comes first, then the likelier measure.
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Enter');
  await lineThatReads(page, unclear.line);
}

interface BrowserWindow {
  readonly navigator: { readonly clipboard: { writeText(text: string): Promise<void> } };
}

/** At the end of the file, on a line of its own. */
async function paste(page: Page, table: string): Promise<void> {
  await page.evaluate(text => (globalThis as unknown as BrowserWindow).navigator.clipboard.writeText(text), table);
  await page.keyboard.press('Control+End');
  await page.keyboard.press('Enter');
  await page.keyboard.press('Home');
  await page.keyboard.press('Control+V');
}

async function lineThatReads(page: Page, words: RegExp): Promise<void> {
  // The editor draws a space as one that does not break.
  const drawn = new RegExp(words.source.replaceAll(' ', '[\\s\\u00a0]'));
  await page.locator('.monaco-editor .view-line').filter({ hasText: drawn }).first().waitFor({ timeout: 10_000 });
}
