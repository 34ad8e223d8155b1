// What a person sees: the installed package in a real editor, with pictures to look at.
import { readFileSync } from 'node:fs';
import path from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { loadInBrowser, withEditor, withServedFolder, workbenchAddress } from './host/editor.ts';
import type { Installed } from './host/install-extension.ts';
import { withJobFolder } from './host/job-folder.ts';
import { root } from './host/places.ts';
import { box, failureOf, lens, line, newPage, picture, pointAt, same, squiggles, themes, word } from './host/view.ts';
import type { TestResult } from './suite/index.ts';

interface Look {
  readonly title: string;
  readonly host: 'node' | 'web';
  readonly theme: keyof typeof themes;
  /** Whether the person said that they trust the folder. */
  readonly trusted: boolean;
  /** Where the person clicks the finding's id. */
  readonly clicks: 'hover' | 'list of problems';
  /** Only the text, larger: for the picture in the README. */
  readonly plain?: true;
}

const looks: readonly Look[] = [
  { title: 'light, installed', host: 'node', theme: 'light', trusted: true, clicks: 'hover', plain: true },
  {
    title: 'dark, installed, in a folder that is not trusted, by the list of problems',
    host: 'node',
    theme: 'dark',
    trusted: false,
    clicks: 'list of problems'
  },
  { title: 'high contrast, in the browser', host: 'web', theme: 'high-contrast', trusted: true, clicks: 'hover' }
];

const plainSettings = {
  'workbench.activityBar.location': 'hidden',
  'workbench.layoutControl.enabled': false,
  'window.commandCenter': false,
  'breadcrumbs.enabled': false,
  'editor.minimap.enabled': false,
  'editor.overviewRulerBorder': false,
  'editor.hideCursorInOverviewRuler': true,
  'editor.fontSize': 17,
  'editor.codeLensFontSize': 15,
  'editor.scrollbar.horizontal': 'hidden'
};

const spec = 'samples/terrace.paving';
/** The lines of the spec that are looked at, and the mistake that is then typed into one. */
const lines = { area: /^area terrace/, base: /^ +base +crushed-stone/ };
const right = 'base-depth';
const mistake = '2 in';
const findingOfMistake = 'base-too-thin';
/** Marks of a table, of weight and of slant that would be there if they were not turned into such. */
const rawMarkdown = /\||\*\*|:--|(^|\s)_/;

export async function checkAsSeen(installed: Installed): Promise<TestResult[]> {
  const results: TestResult[] = [];
  for (const look of looks) {
    const failure = await failureOf(() => withJobFolder(folder => check(look, installed, folder)));
    results.push({ title: `as seen: ${look.title}`, ...(failure === undefined ? {} : { failure }) });
  }
  return results;
}

async function check(look: Look, installed: Installed, folder: string): Promise<void> {
  const wish = {
    ...(look.host === 'node' ? { extensions: installed.extensions } : {}),
    trusted: look.trusted,
    settings: {
      'workbench.colorTheme': themes[look.theme],
      'security.workspace.trust.startupPrompt': 'never',
      // Below the line, so that the lens above the area stays in sight.
      'editor.hover.above': false,
      ...(look.plain ? plainSettings : {})
    }
  };
  await withEditor(wish, async (server, browser) => {
    const address = workbenchAddress(server, { folder, file: path.join(folder, spec) });
    if (look.host === 'node') return lookAt(await newPage(browser), address, look);
    return withServedFolder(path.dirname(installed.extension), async origin => {
      const page = await newPage(browser);
      await loadInBrowser(page, `${origin}/${path.basename(installed.extension)}`);
      await lookAt(page, address, look);
    });
  });
}

async function lookAt(page: Page, address: string, look: Look): Promise<void> {
  await page.goto(address, { waitUntil: 'commit' });
  try {
    await lookAtJob(page, look);
    await makeMistake(page, look);
    await openPageOfFinding(page, look);
  } catch (error) {
    await picture(page, `${look.theme}-failed`);
    throw error;
  }
}

/** The job as it stands: colours, lenses, no finding, and the numbers of the base under the pointer. */
async function lookAtJob(page: Page, look: Look): Promise<void> {
  await page.locator('.monaco-editor .view-line').first().waitFor({ timeout: 60_000 });
  if (!look.trusted) await page.locator('.statusbar-item', { hasText: 'Restricted Mode' }).waitFor({ timeout: 20_000 });
  // The side bar takes room that the text needs.
  await page.keyboard.press('Control+B');
  await page.locator('.part.sidebar').waitFor({ state: 'hidden', timeout: 20_000 });
  await lens(page, /sq ft paved, .* cu yd to dig\s*\|\s*costs [0-9.,]+ USD .*days left, to /).waitFor({
    timeout: 60_000
  });
  await goTo(page, lines.base);
  const above = lens(page, /sq ft · \d+ whole, \d+ cut · dig .* in deep · falls 1:48$/);
  await above.waitFor({ timeout: 20_000 });
  const [lensBox, areaBox] = [await box(above), await box(line(page, lines.area))];
  const gap = areaBox.y - lensBox.y - lensBox.height;
  if (Math.abs(gap) > 6) throw new Error(`The lens stands ${gap} above its area.`);
  // Notes are told of lids and of the ground, and nothing worse.
  same(await page.locator(squiggles.faulty).count(), 0, 'squiggles');
  const problems = page.locator('[id="status.problems"] [aria-label]').first();
  same(await problems.getAttribute('aria-label'), 'Infos: 4', 'problems');
  await lookAtColours(page);
  const hover = await pointAt(page, word(page, lines.base, 'base'), 'table');
  const shown = (await hover.innerText()).trim();
  if (rawMarkdown.test(shown)) throw new Error(`The hover shows its marks: ${shown}`);
  const row = hover.locator('tr', { hasText: 'Compacted volume' });
  if (!/^Compacted volume\s+\d+\.\d\d cu yd\s+\d+\.\d\d m3$/.test((await row.innerText()).trim()))
    throw new Error(shown);
  const view = await box(hover);
  if (view.x + view.width > 1280 || view.y + view.height > 800) throw new Error('The hover is cut off.');
  await picture(page, look.theme);
  if (look.plain) await picture(page, 'readme');
  await page.keyboard.press('Escape');
}

interface BrowserPage {
  getComputedStyle(element: unknown): { color: string };
}

/** Words that begin a statement, names, numbers and notes are told apart. */
async function lookAtColours(page: Page): Promise<void> {
  const colourOf = (token: Locator) =>
    token.evaluate((element: unknown) => (globalThis as unknown as BrowserPage).getComputedStyle(element).color);
  const tokens = [
    word(page, lines.area, 'area'),
    word(page, lines.area, 'terrace'),
    word(page, /^ +bed /, 'washed-sand'),
    word(page, /^ +bed /, '1'),
    word(page, /^ +outline /, '// the face')
  ];
  // A word that is drawn anew at that moment has no colour: it is looked at again.
  let colours = await Promise.all(tokens.map(colourOf));
  for (let looks = 1; looks < 20 && colours.includes(''); looks++) {
    await page.waitForTimeout(250);
    colours = await Promise.all(tokens.map(colourOf));
  }
  if (new Set(colours).size < 5) throw new Error(`Colours are missing: ${colours.join('; ')}`);
}

async function makeMistake(page: Page, look: Look): Promise<void> {
  await goTo(page, lines.base, right);
  let left = right.length;
  while (left-- > 0) await page.keyboard.press('Shift+ArrowRight');
  await page.keyboard.type(mistake);
  await page.locator(squiggles.faulty).first().waitFor({ timeout: 20_000 });
  await line(page, new RegExp(`^ +base +crushed-stone ${mistake}, `)).waitFor({ timeout: 5_000 });
  // A slab of 2 in, 1 in of sand and 2 in of stone end within the topsoil: the dig goes under its 6 in everywhere.
  await lens(page, /dig 6 in deep · falls 1:48$/).waitFor({ timeout: 20_000 });
  await picture(page, `${look.theme}-mistake`);
}

/** Clicks the id of the finding, and reads the page that opens. */
async function openPageOfFinding(page: Page, look: Look): Promise<void> {
  const link = look.clicks === 'hover' ? await findingUnderPointer(page) : await findingInList(page);
  await link.waitFor({ timeout: 20_000 });
  await picture(page, `${look.theme}-finding`);
  await link.click();
  await page.locator('.tab', { hasText: `Preview ${findingOfMistake}.md` }).waitFor({ timeout: 20_000 });
  const shown = page.frameLocator('iframe.webview.ready').frameLocator('iframe#active-frame');
  await shown.locator('h1').waitFor({ timeout: 20_000 });
  // The box with the finding stays as long as the pointer is in it.
  await page.mouse.move(640, 10);
  await page.locator('.monaco-hover-content').first().waitFor({ state: 'hidden', timeout: 20_000 });
  await picture(page, `${look.theme}-page`);
}

async function findingUnderPointer(page: Page): Promise<Locator> {
  const hover = await pointAt(page, page.locator(squiggles.faulty), 'a.code-link');
  return hover.locator('a.code-link', { hasText: findingOfMistake }).first();
}

async function findingInList(page: Page): Promise<Locator> {
  await page.keyboard.press('Control+Shift+M');
  const file = page.locator('.markers-panel .monaco-list-row').first();
  await file.waitFor({ timeout: 20_000 });
  if ((await file.getAttribute('aria-expanded')) === 'false') await file.locator('.monaco-tl-twistie').click();
  return page.locator('.markers-panel .details-container a', { hasText: findingOfMistake }).first();
}

async function goTo(page: Page, words: RegExp, before = ''): Promise<void> {
  const text = readFileSync(path.join(root, spec), 'utf8').split('\n');
  const index = text.findIndex(found => words.test(found));
  await page.keyboard.press('Control+G');
  await page.keyboard.type(`${index + 1}:${text[index]!.indexOf(before) + 1}`);
  await page.keyboard.press('Enter');
  await line(page, words).waitFor({ timeout: 20_000 });
}
