// The page of the live plan in a browser by itself: what a person does with it, what is drawn, and who can use it.
import path from 'node:path';
import checker from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import type { FromPlan, PlanState, ToPlan } from '../../extension/panel/plan/messages.ts';
import type { LivePlan } from '../../server/plan-protocol.ts';
import { EMPTY, smallPlan, squareOf } from '../panel-plan/plans.ts';
import { ENGLISH } from '../panel-plan/words.ts';
import { startBrowser } from './host/editor.ts';
import type { Installed } from './host/install-extension.ts';
import { failureOf, picture, same } from './host/view.ts';
import type { TestResult } from './suite/index.ts';

/** Elements that the drawing is made of, at any scale. */
const MOST_NODES = 1_500;

const address = 'http://plan.test/';
const about = 'file:///terrace.paving';

/** As the editor's themes of these names set them. */
const THEMES = {
  light: { name: 'vscode-light', ink: '#3b3b3b', paper: '#fff', faint: '#3b3b3b', button: '#e5e5e5', line: '#c8c8c8' },
  dark: { name: 'vscode-dark', ink: '#ccc', paper: '#1f1f1f', faint: '#9d9d9d', button: '#313131', line: '#454545' },
  'high-contrast': {
    ...{ name: 'vscode-high-contrast', ink: '#fff', paper: '#000', faint: '#fff', button: '#000', line: '#6fc3df' }
  }
} as const;

type Theme = keyof typeof THEMES;

function pageText(theme: Theme): string {
  const { name, ink, paper, faint, button, line } = THEMES[theme];
  const style = [
    `--vscode-editor-foreground:${ink};--vscode-editor-background:${paper};--vscode-descriptionForeground:${faint}`,
    `--vscode-button-secondaryForeground:${ink};--vscode-button-secondaryBackground:${button}`,
    `--vscode-editorWidget-background:${paper};--vscode-editorWidget-border:${line};--vscode-focusBorder:#0078d4`,
    '--vscode-font-family:sans-serif;--vscode-font-size:13px'
  ].join(';');
  const policy = `default-src 'none'; style-src ${address} 'nonce-a'; script-src 'nonce-a'`;
  // What a page has of the editor; it keeps its state over a reload.
  const editor = `
    const said = [];
    let kept = JSON.parse(sessionStorage.getItem('kept') ?? 'null') ?? undefined;
    const keep = state => { kept = state; sessionStorage.setItem('kept', JSON.stringify(state)); };
    window.fake = { said, kept: () => kept };
    window.acquireVsCodeApi = () => ({ postMessage: one => said.push(one), getState: () => kept, setState: keep });`;
  return `<!DOCTYPE html><html lang="en"><head><meta charset="utf-8"><title>Plan</title>
    <meta http-equiv="Content-Security-Policy" content="${policy}">
    <style nonce="a">:root{${style}}</style><link rel="stylesheet" href="${address}plan.css"></head>
    <body class="${name}"><main></main><script nonce="a">${editor}</script>
    <script nonce="a" src="${address}plan.js"></script></body></html>`;
}

declare const fake: { said: FromPlan[]; kept: () => PlanState };
declare const axe: {
  run: () => Promise<{ violations: { id: string; nodes: { html: string; failureSummary: string }[] }[] }>;
};

class PlanOnScreen {
  readonly page: Page;
  readonly faults: string[] = [];

  constructor(page: Page) {
    this.page = page;
    page.on('pageerror', error => this.faults.push(String(error)));
    // What the policy forbids is told here.
    page.on('console', one => {
      if (one.type() === 'error') this.faults.push(one.text());
    });
  }

  get stage() {
    return this.page.locator('.stage');
  }

  async tell(message: ToPlan): Promise<void> {
    await this.page.evaluate(told => {
      window.postMessage(told);
    }, message);
    await this.drawn();
  }

  async show(plan: LivePlan, number = 1): Promise<void> {
    await this.tell({ kind: 'plan', about, number, words: ENGLISH, plan });
  }

  /** Two frames later all that was done is to be seen. */
  async drawn(): Promise<void> {
    await this.page.evaluate(
      () => new Promise(done => setTimeout(() => requestAnimationFrame(() => requestAnimationFrame(done))))
    );
  }

  async press(...keys: readonly string[]): Promise<void> {
    for (const key of keys) await this.page.keyboard.press(key);
    await this.drawn();
  }

  said(): Promise<FromPlan[]> {
    return this.page.evaluate(() => fake.said.splice(0));
  }

  kept(): Promise<PlanState> {
    return this.page.evaluate(() => fake.kept());
  }

  facts(): Promise<string> {
    return this.page.locator('.facts').innerText();
  }

  status(): Promise<string> {
    return this.page.locator('.said').innerText();
  }

  button(name: string) {
    return this.page.getByRole('button', { name, exact: true });
  }

  /** From thing to thing until that one is selected. */
  async walkTo(words: string): Promise<void> {
    await this.stage.focus();
    for (let tries = 0; tries < 30; tries++) {
      if ((await this.facts()).includes(words)) return;
      await this.press(']');
    }
    throw new Error(`Keys don't lead to ${words}.`);
  }

  async accessible(what: string): Promise<void> {
    const session = await this.page.context().newCDPSession(this.page);
    // Past the page's policy, as tools of a browser are.
    await session.send('Runtime.evaluate', { expression: checker.source });
    const { violations } = await this.page.evaluate(() => axe.run());
    const told = violations.map(({ id, nodes }) => `${id}: ${nodes.map(node => node.html).join(' ')}`);
    same(told.join('\n'), '', `what hinders people, ${what}`);
  }
}

export async function checkPlanPage(installed: Pick<Installed, 'extension'>): Promise<TestResult[]> {
  const browser = await startBrowser();
  const results: TestResult[] = [];
  const check = async (title: string, work: () => Promise<void>): Promise<void> => {
    const failure = await failureOf(work);
    results.push({ title: `the plan's page: ${title}`, ...(failure === undefined ? {} : { failure }) });
  };
  const on = (theme: Theme, width: number, height: number, use: (seen: PlanOnScreen) => Promise<void>) =>
    withPage(browser, installed.extension, { theme, width, height }, use);
  try {
    for (const theme of Object.keys(THEMES) as Theme[]) {
      await check(`nothing hinders people: ${theme}`, () => on(theme, 1000, 800, seen => looks(seen, theme)));
      await check(`nothing hinders people where it is narrow: ${theme}`, () =>
        on(theme, 500, 600, seen => looks(seen, `${theme}-narrow`))
      );
    }
    await check('pointer and wheel', () => on('light', 1000, 800, pointer));
    await check('keys', () => on('light', 1000, 800, keys));
    await check('tools and table', () => on('dark', 1000, 800, tools));
    await check('patches, problems, markup, and what is kept', () => on('light', 1000, 800, messages));
    for (const units of [1_000, 10_000, 100_000])
      await check(`drawn nodes stay few: ${units} units`, () => on('light', 1000, 800, seen => nodes(seen, units)));
  } finally {
    await browser.close();
  }
  return results;
}

async function withPage(
  browser: Browser,
  extension: string,
  { theme, width, height }: { readonly theme: Theme; readonly width: number; readonly height: number },
  use: (seen: PlanOnScreen) => Promise<void>
): Promise<void> {
  const context = await browser.newContext({ viewport: { width, height } });
  try {
    const page = await context.newPage();
    await page.route(`${address}**`, async route => {
      const name = route.request().url().slice(address.length);
      if (name === 'plan.js' || name === 'plan.css')
        await route.fulfill({ path: path.join(extension, 'dist/panel', name) });
      else if (name === '') await route.fulfill({ contentType: 'text/html', body: pageText(theme) });
      else await route.abort();
    });
    const seen = new PlanOnScreen(page);
    await page.goto(address);
    await use(seen);
    same(seen.faults.join('\n'), '', 'faults of the page');
  } finally {
    await context.close();
  }
}

async function looks(seen: PlanOnScreen, name: string): Promise<void> {
  await seen.show(smallPlan({ notes: ['Area terrace as it was before the error in line 12.'] }));
  await seen.tell({ kind: 'at-cursor', things: ['edge:B', 'area:terrace'] });
  await seen.walkTo('valves, selected');
  await picture(seen.page, `plan-page-${name}`);
  await seen.accessible('the plan');
  await seen.page.locator('.popup summary').last().click();
  await seen.accessible('what is shown');
  await seen.press('Escape');
  await seen.button('Table').click();
  await picture(seen.page, `plan-page-${name}-table`);
  await seen.accessible('the table');
  await seen.button('Table').click();
  const svg = { name: 'svg', attributes: { viewBox: '0 0 9 9' }, inside: [] };
  await seen.tell({ kind: 'section', drawing: svg, text: 'Section' });
  await seen.accessible('a section');
  await seen.tell({ kind: 'problem', about, words: ENGLISH, problem: 'No job can be read.' });
  await seen.accessible('a problem');
}

async function pointer(seen: PlanOnScreen): Promise<void> {
  const { page, stage } = seen;
  await seen.show(smallPlan());
  await seen.walkTo('valves, selected');
  await seen.said();
  const handle = (await page.locator('.handle').boundingBox())!;
  const at = { x: handle.x + handle.width / 2, y: handle.y + handle.height / 2 };
  const drag = async (): Promise<void> => {
    await page.mouse.move(at.x, at.y);
    await page.mouse.down();
    await page.mouse.move(at.x + 48, at.y - 24, { steps: 4 });
    await seen.drawn();
  };
  await drag();
  same(/^valves to x 3\.\d+ m, y 1\.\d+ m\./.test(await seen.status()), true, 'the new place is told');
  await page.mouse.up();
  await seen.drawn();
  const [dragged] = await seen.said();
  same(dragged?.kind === 'drag' && dragged.thing, 'box:valves', 'what is dragged');
  if (dragged?.kind === 'drag') {
    same(Math.round(((dragged.to[0] - 2800) / (dragged.to[1] - 1450)) * 10), 20, 'twice as far along as out');
  }
  await seen.tell({ kind: 'not-dragged', problem: 'The text has changed.' });
  same(await page.locator('.tool path').count(), 0, 'lines of what was dragged');
  await drag();
  await seen.press('Escape');
  await page.mouse.up();
  same(JSON.stringify(await seen.said()), '[]', 'what is said where a drag was given up');
  await page.mouse.click(at.x, at.y);
  await seen.drawn();
  same((await seen.said()).map(one => one.kind).join(), 'open', 'a click on a handle, which moves nothing');
  await page.mouse.click(at.x - 20, at.y);
  await seen.drawn();
  same((await seen.said()).map(one => one.kind).join(), 'open', 'a click on what is selected');
  // Moved and zoomed: what is under the pointer stays there.
  await page.mouse.move(at.x - 20, at.y);
  await page.mouse.wheel(0, -400);
  await seen.drawn();
  same((await seen.facts()).includes('valves'), true, 'still under the pointer');
  same((await seen.kept()).view !== undefined, true, 'the view is kept');
  const box = (await stage.boundingBox())!;
  await page.mouse.move(box.x + 20, box.y + box.height - 60);
  await page.mouse.down();
  await page.mouse.move(box.x + 220, box.y + box.height - 160, { steps: 6 });
  await page.mouse.up();
  await page.mouse.move(at.x + 180, at.y - 100);
  await seen.drawn();
  same((await seen.facts()).includes('valves'), true, 'moved with the pointer');
  same(JSON.stringify(await seen.said()), '[]', 'what is said where the plan was moved');
}

async function keys(seen: PlanOnScreen): Promise<void> {
  await seen.show(smallPlan());
  await seen.walkTo('A to B, selected');
  await seen.said();
  await seen.press('Enter');
  same(JSON.stringify(await seen.said()), '[{"kind":"open","thing":"edge:A"}]', 'Enter');
  await seen.press('+', 'ArrowLeft');
  same((await seen.kept()).view !== undefined, true, 'zoomed');
  await seen.press('0');
  same((await seen.kept()).view, undefined, 'fitted');
  await seen.press('m', 'Enter', 'Shift+ArrowRight', 'Enter');
  same(/^Distance 0\.\d+ m: 0\.\d+ m along x, 0\.000 m along y/.test(await seen.status()), true, 'measured by keys');
  await seen.press('Escape');
  await seen.walkTo('valves, selected');
  await seen.said();
  await seen.press('g', 'ArrowRight', 'Shift+ArrowUp', 'Alt+ArrowLeft', 'Enter');
  same(JSON.stringify(await seen.said()), '[{"kind":"drag","thing":"box:valves","to":[2809,1550]}]', 'moved by keys');
  await seen.tell({ kind: 'not-dragged', problem: 'No.' });
  await seen.walkTo('worked out');
  await seen.said();
  await seen.press('g');
  same(await seen.status(), 'x of B is worked out from terrace-width: change that in line 7.', 'why it stays');
  await seen.press('ArrowRight', 'Enter', 'Escape');
  const said = await seen.said();
  same(said.map(({ kind }) => kind).join(), 'open,select', 'what is said: nothing of a drag');
}

async function tools(seen: PlanOnScreen): Promise<void> {
  const { page } = seen;
  await seen.show(smallPlan());
  await seen.button('Turn to edge').click();
  same(await seen.status(), ENGLISH.chooseEdge, 'no edge');
  await seen.walkTo('D to A, selected');
  await seen.button('Turn to edge').click();
  await seen.drawn();
  same(Math.abs((await seen.kept()).turn).toFixed(4), '1.5708', 'turned');
  await seen.button('Turn to edge').click();
  await seen.drawn();
  same((await seen.kept()).turn, 0, 'turned back');
  await seen.said();
  await page.locator('.popup summary').first().click();
  await seen.button('Section through the gate').click();
  same(JSON.stringify(await seen.said()), '[{"kind":"section","along":{"key":"line:a"}}]', 'a section');
  const legend = page.locator('.legend');
  same((await legend.innerText()).includes('cut, numbered'), true, 'cuts in the legend');
  await page.locator('.popup summary').last().click();
  await page.getByLabel('Cut pieces').uncheck();
  await seen.drawn();
  same((await legend.innerText()).includes('cut, numbered'), false, 'hidden cuts in the legend');
  same((await seen.kept()).hidden.join(), 'cuts', 'what is hidden is kept');
  await seen.press('Escape');
  await seen.button('Table').click();
  same(await seen.stage.isVisible(), false, 'the plan beside the table');
  await seen.button('Go to the text of side-gate').click();
  await seen.button('side-gate').click();
  await seen.drawn();
  same(await seen.stage.isVisible(), true, 'the plan again');
  same(
    (await seen.said()).map(one => ('thing' in one ? `${one.kind} ${one.thing}` : '')).join(),
    'open gate:side,select gate:side',
    'the table'
  );
}

async function messages(seen: PlanOnScreen): Promise<void> {
  const { page } = seen;
  same((await seen.said()).map(({ kind }) => kind).join(), 'ready', 'at first');
  const hostile = '<img src=x onerror=alert(1)>';
  const plan = smallPlan();
  const named = <T extends { readonly name: string }>(one: T): T => ({ ...one, name: hostile, kind: hostile });
  const shapes = plan.shapes.map(shape => (shape.kind === 'text' ? { ...shape, text: hostile } : shape));
  const legend = plan.legend.map(line => ({ ...line, text: hostile }));
  const sections = plan.sections.map(named);
  await seen.show({
    ...plan,
    title: hostile,
    notes: [hostile],
    things: plan.things.map(named),
    shapes,
    legend,
    sections
  });
  await seen.stage.focus();
  await seen.press(']', 'm', 'Escape');
  await seen.button('Table').click();
  same(await page.locator('img').count(), 0, 'elements made of words');
  same(await page.locator('h1').innerText(), hostile, 'the title');
  await seen.button('Table').click();
  await seen.said();
  await seen.tell({ kind: 'patch', number: 9, since: 8, patch: {} });
  same((await seen.said()).map(({ kind }) => kind).join(), 'ready', 'a patch of another plan');
  await seen.tell({ kind: 'patch', number: 2, since: 1, patch: { title: 'Patched' } });
  same(await page.locator('h1').innerText(), 'Patched', 'a patch');
  await page.evaluate(() => {
    window.postMessage({ kind: 'plan', plan: {} });
  });
  await seen.tell({ kind: 'problem', about, words: ENGLISH, problem: 'No job.' });
  same(await page.locator('.stage.dimmed').count(), 1, 'dimmed');
  same(await page.locator('.notes').innerText(), 'No job.', 'the problem');
  await seen.show(plan, 3);
  same(await page.locator('.stage.dimmed').count(), 0, 'still dimmed');
  // Fitted until the person moves it.
  await seen.press('0');
  await seen.tell({ kind: 'at-cursor', things: ['area:terrace'] });
  same((await seen.kept()).view, undefined, 'moved by the cursor');
  await seen.stage.focus();
  await seen.press('+', 'ArrowRight');
  const before = JSON.stringify(await seen.kept());
  await seen.show({ ...EMPTY, title: 'Other' }, 4);
  same(JSON.stringify(await seen.kept()), before, 'what is kept while the plan is another');
  await page.reload();
  await seen.show(plan);
  same(JSON.stringify(await seen.kept()), before, 'what is kept over a reload');
}

async function nodes(seen: PlanOnScreen, units: number): Promise<void> {
  await seen.show(squareOf(units));
  for (let step = 0; step < 14; step++) {
    const counted = await seen.page.locator('.stage *').count();
    if (counted > MOST_NODES) throw new Error(`${counted} nodes after ${step} steps nearer`);
    same(Number(await seen.stage.getAttribute('data-nodes')), counted, 'nodes as counted');
    await seen.page.mouse.move(300, 300);
    await seen.page.mouse.wheel(0, -250);
    await seen.drawn();
  }
  same(await seen.stage.getAttribute('data-detail'), 'units', 'single units at last');
}
