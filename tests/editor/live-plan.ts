// The live plan as a person uses it beside the text: typing, clicking, dragging, hiding, breaking and mending; in one theme
// with the keyboard alone, in the browser. And pictures of three jobs in three themes.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import type { Frame, FrameLocator, Page } from 'playwright-core';
import { loadInBrowser, withEditor, withServedFolder, workbenchAddress } from './host/editor.ts';
import type { Installed } from './host/install-extension.ts';
import { withJobFolder } from './host/job-folder.ts';
import { box, failureOf, lens, line, newPage, picture, same, themes } from './host/view.ts';
import type { TestResult } from './suite/index.ts';

type Theme = keyof typeof themes;

const spec = 'samples/terrace.paving';

/** The clean-out's lid before it is dragged. */
const lidBefore = /centre \(20 ft, 11½ ft\)/;

export async function checkLivePlan(installed: Installed, only = ''): Promise<TestResult[]> {
  const results: TestResult[] = [];
  const look = async (title: string, work: (folder: string) => Promise<void>): Promise<void> => {
    if (!title.includes(only)) return;
    const failure = await failureOf(() => withJobFolder(work));
    results.push({ title: `the live plan: ${title}`, ...(failure === undefined ? {} : { failure }) });
  };
  await look('light, installed, with the mouse', folder => withMouse('light', installed, folder));
  await look('high contrast, installed, with the mouse', folder => withMouse('high-contrast', installed, folder));
  await look('dark, in the browser, with the keyboard alone', folder => withKeys('dark', installed, folder));
  for (const theme of ['light', 'dark', 'high-contrast'] as const)
    await look(`pictures in ${theme}`, folder => pictures(theme, installed, folder));
  return results;
}

// ---- with the mouse ----

async function withMouse(theme: Theme, installed: Installed, folder: string): Promise<void> {
  await withEditor({ extensions: installed.extensions, ...wishOf(theme) }, async (server, browser) => {
    const page = await newPage(browser);
    const seen = (name: string): Promise<void> => picture(page, `plan-${theme}-${name}`);
    await page.goto(workbenchAddress(server, { folder, file: path.join(folder, spec) }), { waitUntil: 'commit' });
    try {
      await settled(page);
      await page.locator('.editor-actions .action-label[aria-label^="Show the plan"]').first().click();
      const panel = await drawnPanel(page);
      await isAccessible(page);
      await seen('open');
      await followsTyping(page, panel);
      await clickCut(page, panel);
      await seen('cut');
      const before = await dragBox(page, panel);
      await seen('dragged');
      await undo(page, panel, before);
      await hideNumbers(page, panel);
      await breakAndMend(page, panel, seen);
      await measures(panel);
      await table(panel);
      await isAccessible(page);
      await seen('table');
    } catch (error) {
      await seen('failed');
      throw error;
    }
  });
}

async function settled(page: Page): Promise<void> {
  await page.locator('.monaco-editor .view-line').first().waitFor({ timeout: 60_000 });
  await page.keyboard.press('Control+B');
  await page.locator('.part.sidebar').waitFor({ state: 'hidden', timeout: 20_000 });
  await lens(page, /sq ft paved, .* cu yd to dig/).waitFor({ timeout: 60_000 });
}

const panelOf = (page: Page): FrameLocator =>
  page.frameLocator('iframe.webview.ready').frameLocator('iframe#active-frame');

const drawing = (panel: FrameLocator) => panel.locator('.stage svg.plan');
const numbers = (panel: FrameLocator) => panel.locator('svg.plan .letters text').filter({ hasText: /^\d+$/ });
const facts = (panel: FrameLocator) => panel.locator('section.facts');

async function drawnPanel(page: Page): Promise<FrameLocator> {
  const panel = panelOf(page);
  await panel.locator('h1').waitFor({ timeout: 60_000 });
  await drawing(panel).locator('path').nth(5).waitFor({ state: 'attached', timeout: 30_000 });
  await numbers(panel).first().waitFor({ timeout: 30_000 });
  return panel;
}

/** By the rules of an independent checker, in the panel's own page. */
async function isAccessible(page: Page): Promise<void> {
  const source = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
  const frame = await frameOf(page);
  await frame.evaluate(source);
  const violations = await frame.evaluate(
    `axe.run(document, { resultTypes: ['violations'] }).then(({ violations }) => violations.map(({ id, nodes }) => id + ': ' + nodes.map(({ target }) => target.join(' ')).join(', ')))`
  );
  same(JSON.stringify(violations), '[]', 'what an accessibility checker finds');
}

async function frameOf(page: Page): Promise<Frame> {
  for (let tries = 0; tries < 40; tries++) {
    for (const frame of page.frames())
      if (
        (await frame
          .locator('main section.facts')
          .count()
          .catch(() => 0)) > 0
      )
        return frame;
    await page.waitForTimeout(250);
  }
  throw new Error('The panel has no page.');
}

/** A yard of depth more: more slabs, and another drawing. */
async function followsTyping(page: Page, panel: FrameLocator): Promise<void> {
  await panel.locator('summary', { hasText: 'Legend' }).click();
  await until(page, 'the legend tells the units', async () => (await counts(panel)).whole === 170);
  await replace(page, 'unit slab-18', 'size   17 7/8 x 17 7/8', 'size   17 7/8 x 8 7/8');
  await until(page, 'the drawing has more units', async () => (await counts(panel)).whole > 300);
  await undoTyping(page, /^ +size +17 7\/8 x 17 7\/8 /);
  await until(page, 'the drawing has the units it had', async () => (await counts(panel)).whole === 170);
}

/** As the legend tells them. */
async function counts(panel: FrameLocator): Promise<{ whole: number; cut: number }> {
  const text = await panel.locator('main').innerText();
  const found = /(\d+) whole, (\d+) cut/.exec(text);
  return { whole: Number(found?.[1] ?? NaN), cut: Number(found?.[2] ?? NaN) };
}

async function clickCut(page: Page, panel: FrameLocator): Promise<void> {
  const { x, y, width, height } = await box(numbers(panel).first());
  await page.mouse.move(x + width / 2, y + height / 2);
  await facts(panel)
    .filter({ hasText: /cut \d+ of terrace/i })
    .waitFor({ timeout: 10_000 });
  await page.mouse.click(x + width / 2, y + height / 2);
  await line(page, /^area terrace/).waitFor({ timeout: 20_000 });
  await until(page, 'the cursor stands in the area', async () => {
    const at = Number(/Ln (\d+)/.exec(await page.locator('#status\\.editor\\.selection').innerText())?.[1]);
    return at >= lineOf(/^area terrace/) && at <= lineOf(/^door garden-door/);
  });
  // Where the cursor is, the plan shows.
  await panel.locator('svg.plan .at-cursor').first().waitFor({ state: 'attached', timeout: 10_000 });
}

/** What was told of it before. */
async function dragBox(page: Page, panel: FrameLocator): Promise<string> {
  await choose(panel, 'box clean-out');
  const before = await facts(panel).innerText();
  const { x, y } = middle(await box(panel.locator('svg.plan .handle').first()));
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + 10, y, { steps: 3 });
  await page.mouse.move(x + 30, y + 20, { steps: 5 });
  await page.mouse.up();
  await goTo(page, lineOf(/circle 10 in across/));
  await until(page, 'the text has another place', async () => (await line(page, lidBefore).count()) === 0);
  await until(page, 'its facts follow', async () => (await facts(panel).innerText()) !== before);
  return before;
}

const middle = ({ x, y, width, height }: { x: number; y: number; width: number; height: number }) => ({
  x: x + width / 2,
  y: y + height / 2
});

/** By its row in the table: it is then selected and in sight. */
async function choose(panel: FrameLocator, name: string): Promise<void> {
  await panel.getByRole('button', { name: 'Table', exact: true }).click();
  await panel.locator('section.table').getByRole('button', { name, exact: true }).first().click();
  await facts(panel)
    .filter({ hasText: `${name}, selected` })
    .waitFor({ timeout: 10_000 });
}

/** One undo takes it back. */
async function undo(page: Page, panel: FrameLocator, before: string): Promise<void> {
  await page.keyboard.press('Control+Z');
  await line(page, lidBefore).waitFor({ timeout: 20_000 });
  await until(page, 'the plan has it where it was', async () => (await facts(panel).innerText()) === before);
}

async function hideNumbers(page: Page, panel: FrameLocator): Promise<void> {
  await panel.locator('summary', { hasText: 'Show' }).first().click();
  await panel.getByLabel('Numbers of cuts').uncheck();
  await until(page, 'no number is drawn', async () => (await numbers(panel).count()) === 0);
  await panel.getByLabel('Numbers of cuts').check();
  await numbers(panel).first().waitFor({ timeout: 10_000 });
  await page.keyboard.press('Escape');
}

async function breakAndMend(page: Page, panel: FrameLocator, seen: (name: string) => Promise<void>): Promise<void> {
  const paths = await drawing(panel).locator('path').count();
  await replace(page, 'area terrace', 'D to E', 'D to');
  const at = lineOf(/^ +outline +A to B/);
  await panel
    .locator('.notes')
    .filter({ hasText: new RegExp(`line ${at}\\b`) })
    .waitFor({ timeout: 30_000 });
  same((await drawing(panel).locator('.stale').count()) > 0, true, 'what is from before the error is dimmed');
  same((await drawing(panel).locator('path').count()) >= paths / 2, true, 'the last good drawing stays');
  await seen('broken');
  await undoTyping(page, /^ +outline +A to B to C to D to E /);
  await until(page, 'nothing is dimmed', async () => (await drawing(panel).locator('.stale').count()) === 0);
  same(await panel.locator('.notes').innerText(), '', 'notes once it is mended');
}

async function measures(panel: FrameLocator): Promise<void> {
  await panel.getByRole('button', { name: 'Fit', exact: true }).click();
  await panel.getByRole('button', { name: 'Measure', exact: true }).click();
  const at = await box(drawing(panel));
  await drawing(panel).click({ position: { x: at.width * 0.3, y: at.height * 0.4 } });
  await drawing(panel).click({ position: { x: at.width * 0.6, y: at.height * 0.6 } });
  await panel
    .locator('.said')
    .filter({ hasText: /^Distance \d+ ft/ })
    .waitFor({ timeout: 10_000 });
}

/** The same content in words. */
async function table(panel: FrameLocator): Promise<void> {
  await panel.getByRole('button', { name: 'Table', exact: true }).click();
  const text = await panel.locator('section.table').innerText();
  for (const kind of ['Areas', 'Edges', 'Points', 'Cut units'])
    same(text.includes(kind), true, `heading ${kind} in the table`);
  same(/A to B/.test(text), true, 'an edge in the table');
}

// ---- with the keyboard alone ----

async function withKeys(theme: Theme, installed: Installed, folder: string): Promise<void> {
  await withEditor(wishOf(theme), async (server, browser) => {
    const page = await newPage(browser);
    await withServedFolder(path.dirname(installed.extension), async origin => {
      await loadInBrowser(page, `${origin}/${path.basename(installed.extension)}`);
      const address = workbenchAddress(server, { folder, file: path.join(folder, spec) });
      await page.goto(address, { waitUntil: 'commit' });
      try {
        await settled(page);
        await byKeys(page);
      } catch (error) {
        await picture(page, `plan-${theme}-failed`);
        throw error;
      }
      await picture(page, `plan-${theme}-keys`);
    });
  });
}

async function byKeys(page: Page): Promise<void> {
  await page.keyboard.press('Control+K');
  await page.keyboard.press('V');
  const panel = await drawnPanel(page);
  await isAccessible(page);
  // Through the tools to the drawing, as a person finds it.
  const isOnDrawing = () => panel.locator('.stage:focus').count();
  for (let tabs = 0; tabs < 20 && (await isOnDrawing()) === 0; tabs++) await page.keyboard.press('Tab');
  same(await isOnDrawing(), 1, 'the drawing is reached by Tab');
  // On from thing to thing until the box.
  const isOnBox = async () => (await facts(panel).innerText()).includes('clean-out, selected');
  for (let steps = 0; steps < 120 && !(await isOnBox()); steps++) {
    await page.keyboard.press(']');
    await page.waitForTimeout(40);
  }
  same(await isOnBox(), true, 'the box is reached by keys');
  await page.keyboard.press('G');
  for (let steps = 0; steps < 6; steps++) await page.keyboard.press('Shift+ArrowRight');
  await page.keyboard.press('Enter');
  await until(page, 'the box was moved by keys', async () => (await facts(panel).innerText()).includes('21 ft'));
  await until(page, 'what is moved is told no more', async () => (await panel.locator('.said').innerText()) === '');
  await page.keyboard.press('Enter');
  await line(page, /^box clean-out/).waitFor({ timeout: 20_000 });
  await line(page, /circle 10 in across, centre \(2[1-9] ft/).waitFor({ timeout: 20_000 });
  await page.keyboard.press('Control+Z');
  await line(page, lidBefore).waitFor({ timeout: 20_000 });
}

// ---- pictures ----

const PICTURED = {
  terrace: 'samples/terrace.paving',
  path: 'samples/path.paving',
  square: 'samples/square/square.paving'
};

async function pictures(theme: Theme, installed: Installed, folder: string): Promise<void> {
  await withEditor({ extensions: installed.extensions, ...wishOf(theme) }, async (server, browser) => {
    for (const [name, file] of Object.entries(PICTURED)) {
      const page = await newPage(browser);
      await page.setViewportSize({ width: 1440, height: 900 });
      await page.goto(workbenchAddress(server, { folder, file: path.join(folder, file) }), { waitUntil: 'commit' });
      await page.locator('.monaco-editor .view-line').first().waitFor({ timeout: 60_000 });
      await page.keyboard.press('Control+B');
      await lens(page, /paved, .* to dig/).waitFor({ timeout: 60_000 });
      await page.keyboard.press('Control+K');
      await page.keyboard.press('V');
      const panel = panelOf(page);
      await drawing(panel).locator('path').nth(5).waitFor({ state: 'attached', timeout: 60_000 });
      await page.waitForTimeout(500);
      await picture(page, `plan-of-${name}-${theme}`);
      await page.close();
    }
  });
}

// ---- what all do ----

const wishOf = (theme: Theme) => ({
  trusted: true,
  settings: { 'workbench.colorTheme': themes[theme], 'editor.minimap.enabled': false }
});

function lineOf(words: RegExp): number {
  return (
    readFileSync(spec, 'utf8')
      .split('\n')
      .findIndex(found => words.test(found)) + 1
  );
}

async function goTo(page: Page, at: number, column = 1): Promise<void> {
  await page
    .locator('.tab', { hasText: /^terrace\.paving/ })
    .first()
    .click();
  await page.locator('.monaco-editor.focused').waitFor({ timeout: 10_000 });
  await page.keyboard.press('Control+G');
  await page.keyboard.type(`${at}:${column}`);
  await page.keyboard.press('Enter');
}

/** Types over words in the line that follows some others. */
async function replace(page: Page, after: string, before: string, now: string): Promise<void> {
  const text = readFileSync(spec, 'utf8').split('\n');
  const from = text.findIndex(found => found.startsWith(after));
  const index = text.findIndex((found, at) => at >= from && found.includes(before));
  await goTo(page, index + 1, text[index]!.indexOf(before) + 1);
  for (let left = before.length; left > 0; left--) await page.keyboard.press('Shift+ArrowRight');
  await page.keyboard.type(now);
}

/** Typing is taken back in several steps. */
async function undoTyping(page: Page, before: RegExp): Promise<void> {
  for (let steps = 0; steps < 8 && (await line(page, before).count()) === 0; steps++) {
    await page.keyboard.press('Control+Z');
    await page.waitForTimeout(150);
  }
  await line(page, before).waitFor({ timeout: 10_000 });
}

async function until(page: Page, what: string, look: () => Promise<boolean>): Promise<void> {
  for (let tries = 0; tries < 120; tries++) {
    if (await look()) return;
    await page.waitForTimeout(250);
  }
  throw new Error(`It never came to this: ${what}.`);
}
