// What a person sees: the installed package in a real editor, with pictures to look at.
import path from 'node:path';
import type { Browser, Locator, Page } from 'playwright-core';
import { loadInBrowser, withEditor, withServedFolder, workbenchAddress } from './host/editor.ts';
import type { Installed } from './host/install-extension.ts';
import { withJobFolder } from './host/job-folder.ts';
import { places } from './host/places.ts';
import type { TestResult } from './suite/index.ts';

const themes = {
  light: 'Default Light Modern',
  dark: 'Default Dark Modern',
  'high-contrast': 'Default High Contrast'
};

interface Look {
  readonly title: string;
  readonly host: 'node' | 'web';
  readonly theme: keyof typeof themes;
  /** Whether the person said that they trust the folder. */
  readonly trusted: boolean;
  /** Where the person clicks the finding's id. */
  readonly clicks: 'hover' | 'list of problems';
}

const looks: readonly Look[] = [
  { title: 'light, installed', host: 'node', theme: 'light', trusted: true, clicks: 'hover' },
  {
    title: 'dark, installed, in a folder that is not trusted, by the list of problems',
    host: 'node',
    theme: 'dark',
    trusted: false,
    clicks: 'list of problems'
  },
  { title: 'high contrast, in the browser', host: 'web', theme: 'high-contrast', trusted: true, clicks: 'hover' }
];

export async function checkAsSeen(installed: Installed): Promise<TestResult[]> {
  const results: TestResult[] = [];
  for (const look of looks) {
    const failure = await failureOf(() => withJobFolder(folder => check(look, installed, folder)));
    results.push({ title: `as seen: ${look.title}`, ...(failure === undefined ? {} : { failure }) });
  }
  return results;
}

async function failureOf(work: () => Promise<void>): Promise<string | undefined> {
  try {
    await work();
    return undefined;
  } catch (error) {
    return error instanceof Error ? (error.stack ?? error.message) : String(error);
  }
}

async function check(look: Look, installed: Installed, folder: string): Promise<void> {
  const wish = {
    ...(look.host === 'node' ? { extensions: installed.extensions } : {}),
    trusted: look.trusted,
    settings: { 'workbench.colorTheme': themes[look.theme], 'security.workspace.trust.startupPrompt': 'never' }
  };
  await withEditor(wish, async (server, browser) => {
    const address = workbenchAddress(server, { folder, file: path.join(folder, 'small-terrace.paving') });
    if (look.host === 'node') return lookAt(await newPage(browser), address, look);
    return withServedFolder(path.dirname(installed.extension), async origin => {
      const page = await newPage(browser);
      await loadInBrowser(page, `${origin}/${path.basename(installed.extension)}`);
      await lookAt(page, address, look);
    });
  });
}

const newPage = (browser: Browser): Promise<Page> =>
  browser.newPage({ viewport: { width: 1280, height: 800 }, bypassCSP: true });

async function lookAt(page: Page, address: string, look: Look): Promise<void> {
  await page.goto(address, { waitUntil: 'commit' });
  try {
    await lookAtJob(page, look);
    await openPageOfFinding(page, look);
  } catch (error) {
    await picture(page, `${look.theme}-failed`);
    throw error;
  }
}

async function lookAtJob(page: Page, look: Look): Promise<void> {
  await page.locator('.monaco-editor .view-line').first().waitFor({ timeout: 60_000 });
  if (!look.trusted) await page.locator('.statusbar-item', { hasText: 'Restricted Mode' }).waitFor({ timeout: 20_000 });
  await page.locator('.squiggly-error, .squiggly-warning').first().waitFor({ timeout: 60_000 });
  await picture(page, look.theme);
}

/** Clicks the id of the finding, and reads the page that opens. */
async function openPageOfFinding(page: Page, look: Look): Promise<void> {
  const link = look.clicks === 'hover' ? await pointAtFinding(page) : await listFindings(page);
  await link.waitFor({ timeout: 20_000 });
  await picture(page, `${look.theme}-finding`);
  const id = (await link.innerText()).trim();
  await link.click();
  await page.locator('.tab', { hasText: `Preview ${id}.md` }).waitFor({ timeout: 20_000 });
  const shown = page.frameLocator('iframe.webview.ready').frameLocator('iframe#active-frame');
  await shown.locator('h1').waitFor({ timeout: 20_000 });
  await picture(page, `${look.theme}-page`);
}

async function pointAtFinding(page: Page): Promise<Locator> {
  const squiggle = await page.locator('.squiggly-error, .squiggly-warning').first().boundingBox();
  if (!squiggle) throw new Error('The finding is not drawn.');
  await page.mouse.move(squiggle.x + squiggle.width / 2, squiggle.y + squiggle.height / 2);
  return page.locator('.monaco-hover a.code-link').first();
}

async function listFindings(page: Page): Promise<Locator> {
  await page.keyboard.press('Control+Shift+M');
  const file = page.locator('.markers-panel .monaco-list-row').first();
  await file.waitFor({ timeout: 20_000 });
  if ((await file.getAttribute('aria-expanded')) === 'false') await file.locator('.monaco-tl-twistie').click();
  return page.locator('.markers-panel .details-container a').first();
}

async function picture(page: Page, name: string): Promise<void> {
  await page.screenshot({ path: path.join(places.screenshots, `${name}.png`) });
}
