// What a person sees on the screen of an editor, by the words in it; and pictures of it.
import path from 'node:path';
import type { Browser, Locator, Page } from 'playwright-core';
import { places } from './places.ts';

export const themes = {
  light: 'Default Light Modern',
  dark: 'Default Dark Modern',
  'high-contrast': 'Default High Contrast'
};

export const newPage = (browser: Browser): Promise<Page> =>
  browser.newPage({ viewport: { width: 1280, height: 800 }, bypassCSP: true });

export async function failureOf(work: () => Promise<void>): Promise<string | undefined> {
  try {
    await work();
    return undefined;
  } catch (error) {
    return error instanceof Error ? (error.stack ?? error.message) : String(error);
  }
}

const faulty = '.squiggly-error, .squiggly-warning';
export const squiggles = { faulty, any: `${faulty}, .squiggly-info` };

/** The editor draws a space as one that does not break. */
const drawn = (words: RegExp) => new RegExp(words.source.replaceAll(' ', '[\\s\\u00a0]'));

export const line = (page: Page, words: RegExp) =>
  page.locator('.monaco-editor .view-line').filter({ hasText: drawn(words) });

export const word = (page: Page, inLine: RegExp, words: string) =>
  line(page, inLine).locator('span span').filter({ hasText: words }).first();

export const lens = (page: Page, words: RegExp) => page.locator('.codelens-decoration').filter({ hasText: words });

export async function pointAt(page: Page, at: Locator, shows: string): Promise<Locator> {
  const hover = page.locator('.monaco-hover:not(.hidden) .monaco-hover-content', { has: page.locator(shows) }).first();
  // Where the text still moves under the pointer, a person points again.
  for (let tries = 0; tries < 5; tries++) {
    const { x, y, width, height } = await box(at.first());
    await page.mouse.move(x + width / 2, y - 60);
    await page.mouse.move(x + width / 2, y + height / 2, { steps: 4 });
    const shown = await hover.waitFor({ timeout: 3_000 }).then(
      () => true,
      () => false
    );
    if (shown) return hover;
  }
  throw new Error('Nothing is told of what is under the pointer.');
}

export async function box(at: Locator): Promise<{ x: number; y: number; width: number; height: number }> {
  // The editor draws lines and lenses anew now and then.
  for (let tries = 0; tries < 20; tries++) {
    const found = await at.boundingBox({ timeout: 5_000 });
    if (found) return found;
    await at.page().waitForTimeout(50);
  }
  throw new Error('It is not drawn.');
}

export function same(found: unknown, wanted: unknown, what: string): void {
  if (found !== wanted) throw new Error(`${what}: found ${String(found)}, wanted ${String(wanted)}`);
}

export async function picture(page: Page, name: string): Promise<void> {
  await page.screenshot({ path: path.join(places.screenshots, `${name}.png`) });
}
