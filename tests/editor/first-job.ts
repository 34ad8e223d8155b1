// A first job as a person does it, from nothing to a sound spec: with the mouse, and once with the keyboard alone.
import path from 'node:path';
import type { Page } from 'playwright-core';
import { loadInBrowser, withEditor, withServedFolder, workbenchAddress } from './host/editor.ts';
import type { Installed } from './host/install-extension.ts';
import { withJobFolder } from './host/job-folder.ts';
import { box, failureOf, lens, line, newPage, picture, same, squiggles, themes, word } from './host/view.ts';
import type { TestResult } from './suite/index.ts';

interface Way {
  readonly title: string;
  readonly host: 'node' | 'web';
  readonly theme: keyof typeof themes;
  readonly keyboardAlone: boolean;
}

const ways: readonly Way[] = [
  { title: 'light, installed', host: 'node', theme: 'light', keyboardAlone: false },
  { title: 'dark, in the browser, with the keyboard alone', host: 'web', theme: 'dark', keyboardAlone: true },
  { title: 'high contrast, installed', host: 'node', theme: 'high-contrast', keyboardAlone: false }
];

export async function checkFirstJob(installed: Installed): Promise<TestResult[]> {
  const results: TestResult[] = [];
  for (const way of ways) {
    const failure = await failureOf(() => withJobFolder(folder => check(way, installed, folder)));
    results.push({ title: `a first job: ${way.title}`, ...(failure === undefined ? {} : { failure }) });
  }
  return results;
}

async function check(way: Way, installed: Installed, folder: string): Promise<void> {
  const wish = {
    ...(way.host === 'node' ? { extensions: installed.extensions } : {}),
    trusted: true,
    settings: { 'workbench.colorTheme': themes[way.theme], 'workbench.startupEditor': 'none' }
  };
  await withEditor(wish, async (server, browser) => {
    const page = await newPage(browser);
    const address = workbenchAddress(server, { folder });
    if (way.host === 'node') return doJob(page, address, way);
    await withServedFolder(path.dirname(installed.extension), async origin => {
      await loadInBrowser(page, `${origin}/${path.basename(installed.extension)}`);
      await doJob(page, address, way);
    });
  });
}

async function doJob(page: Page, address: string, way: Way): Promise<void> {
  const seen = (name: string): Promise<void> => picture(page, `first-job-${way.theme}-${name}`);
  await page.goto(address, { waitUntil: 'commit' });
  try {
    await page.locator('.monaco-workbench .part.editor').waitFor({ timeout: 60_000 });
    await askedFiveQuestions(page, way);
    // 12 x 16 ft are 192 sq ft; units as the README works them out; at the wall the finish lies 3 3/4 in above the ground and
    // at the far side, 16 ft off, 1/4 in below it: 9 in of layers reach 9 1/4 in down there, and half a foot past it, where the base ends, 1/8 in more.
    await lens(page, /^192\.00 sq ft · 102 whole, 12 cut · dig 9 3\/8 in deep · falls 1:48$/).waitFor({
      timeout: 60_000
    });
    same(await page.locator(squiggles.any).count(), 0, 'squiggles in the new job');
    await seen('written');
    await changeSize(page, way);
    await seen('changed');
    await takeFix(page, way);
    await seen('fixed');
    await rename(page, way);
    await complete(page, way);
    await seen('completed');
    await format(page);
    await lens(page, /^224\.00 sq ft · .* · dig 9 3\/8 in deep · falls 1:48$/).waitFor({ timeout: 20_000 });
    same(await page.locator(squiggles.any).count(), 0, 'squiggles at the end');
    await seen('done');
  } catch (error) {
    await seen('failed');
    throw error;
  }
}

// ---- the steps ----

async function askedFiveQuestions(page: Page, way: Way): Promise<void> {
  await command(page, 'Paving: New job');
  const asked = page.locator('.quick-input-widget');
  for (let prompt = 1; prompt <= 10; prompt++) {
    const title = asked.locator('.quick-input-title', { hasText: 'New job' });
    await title.waitFor({ timeout: 20_000 });
    const before = await asked.innerText();
    if (prompt === 1 || prompt === 4) await picture(page, `first-job-${way.theme}-question-${prompt}`);
    const usual = asked.locator('.monaco-list-row.focused').first();
    if (way.keyboardAlone || (await usual.count()) === 0) await page.keyboard.press('Enter');
    else await usual.click();
    if (prompt < 10) await until('the next question', async () => (await asked.innerText()) !== before);
  }
  await asked.waitFor({ state: 'hidden', timeout: 20_000 });
}

/** 14 ft along the wall for 12. */
async function changeSize(page: Page, way: Way): Promise<void> {
  await select(page, way, /^ +outline rectangle 12 x/, '12');
  await page.keyboard.type('14');
  await lens(page, /^224\.00 sq ft · /).waitFor({ timeout: 20_000 });
}

/** A base of 3 in is too thin: the finding offers what it lacks. */
async function takeFix(page: Page, way: Way): Promise<void> {
  await select(page, way, /^ +base +crushed-stone 6 in/, '6');
  await page.keyboard.type('3');
  await page.locator(squiggles.any).first().waitFor({ timeout: 20_000 });
  await picture(page, `first-job-${way.theme}-finding`);
  await page.keyboard.press('Control+.');
  const fix = page.locator('.action-widget .monaco-list-row', { hasText: 'Write `6 in`' }).first();
  await fix.waitFor({ timeout: 20_000 });
  await picture(page, `first-job-${way.theme}-fixes`);
  if (way.keyboardAlone) await page.keyboard.press('Enter');
  else {
    const { x, y, width, height } = await box(fix);
    // The list takes no click before the pointer has moved in it.
    await page.mouse.move(x + width / 4, y + height / 2, { steps: 4 });
    await page.mouse.click(x + width / 4, y + height / 2);
  }
  await line(page, /^ +base +crushed-stone 6 in/).waitFor({ timeout: 20_000 });
  await page.locator(squiggles.any).first().waitFor({ state: 'detached', timeout: 20_000 });
}

/** The unit is called otherwise, where it is declared and where it is laid. */
async function rename(page: Page, way: Way): Promise<void> {
  await select(page, way, /^unit slab-16/, 'slab-16', 0);
  await page.keyboard.press('F2');
  // It is drawn a moment before it takes what is typed.
  const input = page.locator('.rename-box input:focus');
  await input.waitFor({ timeout: 20_000 });
  same(await input.inputValue(), 'slab-16', 'the name that is offered');
  await page.keyboard.press('Control+A');
  await page.keyboard.type('garden-slab');
  await page.keyboard.press('Enter');
  await line(page, /^unit garden-slab/).waitFor({ timeout: 20_000 });
  await line(page, /^ +paving +garden-slab in running-bond/).waitFor({ timeout: 20_000 });
}

/** A word begun is offered whole, with the material that fits. */
async function complete(page: Page, way: Way): Promise<void> {
  await select(page, way, /^ +joints +filled with/, 'joints', 0);
  await page.keyboard.press('End');
  await page.keyboard.press('Enter');
  await page.keyboard.type('geo', { delay: 60 });
  const offered = page.locator('.suggest-widget .monaco-list-row', { hasText: 'geotextile' }).first();
  await offered.waitFor({ timeout: 20_000 });
  await picture(page, `first-job-${way.theme}-offered`);
  await page.keyboard.press('Tab');
  await line(page, /^ +geotextile separation-cloth/).waitFor({ timeout: 20_000 });
  await page.keyboard.press('Escape');
}

/** Words that stand askew are lined up again. */
async function format(page: Page): Promise<void> {
  await page.keyboard.press('Home');
  await page.keyboard.type('     ');
  await line(page, /^ {7,}geotextile/).waitFor({ timeout: 20_000 });
  await command(page, 'Format Document');
  await line(page, /^ {2}geotextile separation-cloth/).waitFor({ timeout: 20_000 });
}

// ---- by mouse or by keys ----

/** The list of commands is drawn up as it opens: where the editor is still starting, a person opens it again. */
async function command(page: Page, title: string): Promise<void> {
  const offered = page.locator('.quick-input-widget .monaco-list-row', { hasText: title }).first();
  for (let tries = 0; tries < 10; tries++) {
    await page.keyboard.press('F1');
    await page.locator('.quick-input-widget input').first().waitFor({ timeout: 20_000 });
    await page.keyboard.type(title);
    const isThere = await offered.waitFor({ timeout: 3_000 }).then(
      () => true,
      () => false
    );
    if (isThere) return page.keyboard.press('Enter');
    await page.keyboard.press('Escape');
  }
  throw new Error(`There is no command called: ${title}`);
}

/** Selects a word of a line, or with `letters` nought stands before it. */
async function select(page: Page, way: Way, inLine: RegExp, words: string, letters = words.length): Promise<void> {
  if (way.keyboardAlone) {
    const numbers = page.locator('.monaco-editor .margin-view-overlays .line-numbers');
    const at = await lineNumberOf(page, inLine);
    const text = (await line(page, inLine).first().innerText()).replaceAll('\u00a0', ' ');
    await numbers.first().waitFor();
    await page.keyboard.press('Control+G');
    await page.keyboard.type(`${at}:${text.indexOf(words) + 1}`);
    await page.keyboard.press('Enter');
    await page.locator('.quick-input-widget').waitFor({ state: 'hidden', timeout: 20_000 });
  } else {
    const { x, y, height } = await box(word(page, inLine, words));
    await page.mouse.click(x + 1, y + height / 2);
  }
  for (let left = letters; left > 0; left--) await page.keyboard.press('Shift+ArrowRight');
}

/** Lenses stand between the lines: the number beside the line tells. */
async function lineNumberOf(page: Page, inLine: RegExp): Promise<string> {
  const { y } = await box(line(page, inLine).first());
  const numbers = page.locator('.monaco-editor .margin-view-overlays .line-numbers');
  for (const number of await numbers.all()) {
    const place = await number.boundingBox();
    if (place !== null && Math.abs(place.y - y) < 3) return (await number.innerText()).trim();
  }
  throw new Error(`No line has the number of ${String(inLine)}.`);
}

async function until(what: string, look: () => Promise<boolean>): Promise<void> {
  for (let tries = 0; tries < 200; tries++) {
    if (await look()) return;
    await new Promise(resolve => setTimeout(resolve, 50));
  }
  throw new Error(`${what}: not within ten seconds`);
}
