// What a person sees of a comparison: the lens since HEAD, the panel, and the texts that it leads to.
import path from 'node:path';
import type { FrameLocator, Page } from 'playwright-core';
import { withEditor, workbenchAddress } from './host/editor.ts';
import { HOSTILE_TITLE } from './host/history.ts';
import type { Installed } from './host/install-extension.ts';
import { withJobFolder } from './host/job-folder.ts';
import { box, failureOf, lens, line, newPage, picture, same, themes } from './host/view.ts';
import type { TestResult } from './suite/index.ts';

const spec = 'history/drive.paving';

/** The drive is made wider by 20 cm: what that comes to is worked out from the same text by the command line's tests. */
const edit = { before: '4.80', after: '5.00' };
const sinceHead = /^since HEAD: \+\d\.\d\d m2, \d+ cuts? more, \+\d+\.\d\d GBP/;

export async function checkCompared(installed: Installed): Promise<TestResult[]> {
  const results: TestResult[] = [];
  for (const theme of ['light', 'dark', 'high-contrast'] as const) {
    const failure = await failureOf(() => withJobFolder(folder => check(theme, installed, folder)));
    results.push({ title: `a comparison: ${theme}`, ...(failure === undefined ? {} : { failure }) });
  }
  return results;
}

async function check(theme: keyof typeof themes, installed: Installed, folder: string): Promise<void> {
  const wish = {
    extensions: installed.extensions,
    trusted: true,
    settings: { 'workbench.colorTheme': themes[theme], 'editor.minimap.enabled': false }
  };
  await withEditor(wish, async (server, browser) => {
    const page = await newPage(browser);
    const seen = (name: string): Promise<void> => picture(page, `compared-${theme}-${name}`);
    await page.goto(workbenchAddress(server, { folder, file: path.join(folder, spec) }), { waitUntil: 'commit' });
    try {
      await makeWider(page);
      await seen('lens');
      await lensSinceHead(page).click();
      const panel = page.frameLocator('iframe.webview.ready').frameLocator('iframe#active-frame');
      await lookAtPanel(panel);
      await seen('panel');
      await scrolledToDrawing(panel);
      await seen('drawing');
      await goToEdit(page, panel);
      await seen('edit');
      await goToOlderText(page, panel);
      await seen('older');
      await undo(page, panel);
      await seen('undone');
    } catch (error) {
      await seen('failed');
      throw error;
    }
  });
}

async function makeWider(page: Page): Promise<void> {
  await page.locator('.monaco-editor .view-line').first().waitFor({ timeout: 60_000 });
  await page.keyboard.press('Control+B');
  await page.locator('.part.sidebar').waitFor({ state: 'hidden', timeout: 20_000 });
  // As it was committed nothing differs.
  await lens(page, /costs [0-9.,]+ GBP|GBP to pay/).waitFor({ timeout: 60_000 });
  same(await lens(page, /since HEAD/).count(), 0, 'lenses since HEAD');
  await page.keyboard.press('Control+F');
  await page.keyboard.type(`let drive-width  = ${edit.before}`);
  await page.keyboard.press('Escape');
  await page.keyboard.press('ArrowRight');
  for (let left = edit.before.length; left > 0; left--) await page.keyboard.press('Shift+ArrowLeft');
  await page.keyboard.type(edit.after);
  await line(page, /^let drive-width {2}= 5\.00 m/).waitFor({ timeout: 20_000 });
  await page.keyboard.press('Control+Home');
  await lensSinceHead(page).waitFor({ timeout: 60_000 });
}

/** Lenses above one thing stand in one line. */
const lensSinceHead = (page: Page) => page.locator('.codelens-decoration a').filter({ hasText: sinceHead }).first();

/** The panel is drawn anew when the price is known: what was found before is then another. */
async function scrolledToDrawing(panel: FrameLocator): Promise<void> {
  await panel.locator('figure svg').first().waitFor({ timeout: 20_000 });
  await panel.locator('figure').first().evaluate(SCROLL_TO_TOP);
}

const SCROLL_TO_TOP = (figure: unknown) => (figure as { scrollIntoView: () => void }).scrollIntoView();

const editButton = (panel: FrameLocator) => panel.locator('button', { hasText: 'drive-width' }).first();

/** Headings, rows and words; a person's own words are words. */
async function lookAtPanel(panel: FrameLocator): Promise<void> {
  await panel.locator('h1').waitFor({ timeout: 30_000 });
  same(await panel.locator('h1').innerText(), HOSTILE_TITLE, 'title');
  same(await panel.locator('main img, main b').count(), 0, 'markup out of words');
  same(await panel.locator('h2').first().innerText(), 'Edited', 'first heading');
  const cells = await panel.locator('section').first().locator('tbody tr').first().locator('td, th').allInnerTexts();
  same(cells.join('|'), '1|let drive-width|4.80 m|5.00 m|+0.200 m', 'the edit');
  const heads = await panel.locator('th[scope="col"]').allInnerTexts();
  same(new Set(heads).has('Difference'), true, 'heads with a scope');
  await lookAtDrawing(panel);
}

/** Before and after over each other, as wide as the panel, drawn in the colours of the theme. */
async function lookAtDrawing(panel: FrameLocator): Promise<void> {
  const drawing = panel.locator('figure svg');
  const { width } = await box(drawing);
  const { width: room } = await box(panel.locator('main'));
  same(Math.round(width), Math.round(room), 'width of the drawing');
  same((await drawing.locator('path').count()) > 10, true, 'paths in the drawing');
  same(
    await drawing.locator(':scope > title').textContent(),
    `${HOSTILE_TITLE} · HEAD to the working copy`,
    'its title'
  );
}

/** By keys alone: what was edited stands first. */
async function goToEdit(page: Page, panel: FrameLocator): Promise<void> {
  await editButton(panel).focus();
  await page.keyboard.press('Enter');
  // The whole line of the edit.
  await page.locator('.statusbar-item', { hasText: /^Ln 74, Col \d+ \(25 selected\)/ }).waitFor({ timeout: 20_000 });
  await line(page, /^let drive-width/).waitFor({ timeout: 20_000 });
  await page.locator('.monaco-editor.focused').waitFor({ timeout: 20_000 });
}

async function goToOlderText(page: Page, panel: FrameLocator): Promise<void> {
  await panel.locator('button', { hasText: '4.80 m' }).first().click();
  await page.locator('.tab', { hasText: 'HEAD drive.paving' }).waitFor({ timeout: 20_000 });
  await line(page, /^let drive-width {2}= 4\.80 m/).waitFor({ timeout: 20_000 });
  await page.locator('.monaco-editor.focused').waitFor({ timeout: 20_000 });
  await page.keyboard.type('x');
  await line(page, /^let drive-width {2}= 4\.80 m/).waitFor({ timeout: 20_000 });
  same(await line(page, /^xlet/).count(), 0, 'letters typed into the older text');
}

/** The panel follows what is typed. */
async function undo(page: Page, panel: FrameLocator): Promise<void> {
  await page
    .locator('.tab', { hasText: /^drive\.paving/ })
    .first()
    .click();
  await line(page, /^let drive-width {2}= 5\.00 m/).waitFor({ timeout: 20_000 });
  for (let times = 0; times < 8 && (await line(page, /^let drive-width {2}= 4\.80 m/).count()) === 0; times++)
    await page.keyboard.press('Control+Z');
  await panel.locator('main', { hasText: 'Nothing differs in meaning.' }).waitFor({ timeout: 30_000 });
  await page.keyboard.press('Control+Home');
  await lens(page, /GBP to pay/).waitFor({ timeout: 20_000 });
  await lens(page, /since HEAD/).waitFor({ state: 'hidden', timeout: 20_000 });
}
