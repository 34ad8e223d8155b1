import path from 'node:path';
import { withEditor, workbenchAddress } from './host/editor.ts';
import { installExtension } from './host/install-extension.ts';
import { withJobFolder } from './host/job-folder.ts';
import { newPage, picture, pointAt, themes, word, squiggles } from './host/view.ts';
const installed = installExtension();
for (const [theme, name] of [['light', 'r-light'], ['dark', 'r-dark'], ['high-contrast', 'r-hc']] as const)
  await withJobFolder(folder =>
    withEditor({ extensions: installed.extensions, trusted: true, settings: { 'workbench.colorTheme': themes[theme], 'security.workspace.trust.startupPrompt': 'never' } } as never, async (server, browser) => {
      const page = await newPage(browser);
      await page.goto(workbenchAddress(server, { folder, file: path.join(folder, 'samples/town-rules.paving') }), { waitUntil: 'commit' });
      await page.locator('.monaco-editor .view-line').first().waitFor({ timeout: 60_000 });
      await page.keyboard.press('Control+B');
      await page.waitForTimeout(6000);
      await pointAt(page, word(page, /^ +needs +base at least 5/, 'base'), 'p').catch(e => console.log(e));
      await picture(page, name);
      await page.keyboard.press('Escape');
      await page.keyboard.press('Control+G');
      await page.keyboard.type('26:3');
      await page.keyboard.press('Enter');
      await page.keyboard.press('End');
      await page.keyboard.press('Enter');
      await page.keyboard.type('when wint');
      await page.waitForTimeout(2500);
      await picture(page, `${name}-completion`);
      void squiggles;
    })
  );
