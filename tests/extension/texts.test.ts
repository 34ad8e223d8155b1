// Every text of the extension stands where translators find it: the manifest's in package.nls.json, the client's in a bundle.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import ts from 'typescript';
import { describe, expect, test } from 'vitest';

const root = path.resolve(import.meta.dirname, '../..');
const read = (file: string): string => readFileSync(path.join(root, file), 'utf8');
const manifestText = read('package.json');
const nls = JSON.parse(read('package.nls.json')) as Record<string, string>;
const { contributes } = JSON.parse(manifestText) as Manifest;

interface Manifest {
  readonly contributes: {
    readonly commands: readonly { readonly command: string }[];
    readonly views: { readonly explorer: readonly [{ readonly id: string }] };
    readonly viewsWelcome: readonly [{ readonly view: string; readonly contents: string }];
    readonly menus: Readonly<Record<string, readonly { readonly command: string; readonly when?: string }[]>>;
    readonly walkthroughs: readonly {
      readonly steps: readonly {
        readonly description: string;
        readonly media: { readonly svg: string };
        readonly completionEvents: readonly string[];
      }[];
    }[];
  };
}

/** Keys that stand twice in one object of a JSON text: the first one counts for nothing, and nothing tells so. */
function keysSaidTwice(text: string): string[] {
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isObjectLiteralExpression(node)) {
      const keys = node.properties.map(({ name }) => name!.getText());
      found.push(...keys.filter((key, index) => keys.indexOf(key) < index));
    }
    ts.forEachChild(node, visit);
  };
  const source = ts.createSourceFile('file.ts', `(${text})`, ts.ScriptTarget.Latest, true);
  visit(source);
  return found;
}

/** What the client hands to `vscode.l10n.t`; a text that is put together can't be found by a translator. */
function clientTexts(): string[] {
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isCallExpression(node) && node.expression.getText() === 'vscode.l10n.t') {
      const [text] = node.arguments;
      if (text === undefined || !ts.isStringLiteral(text)) throw new Error(`No plain text: ${node.getText()}`);
      found.push(text.text);
    }
    ts.forEachChild(node, visit);
  };
  for (const name of readdirSync(path.join(root, 'extension')).filter(file => file.endsWith('.ts')))
    visit(ts.createSourceFile(name, read(`extension/${name}`), ts.ScriptTarget.Latest, true));
  return found;
}

describe('The texts of the extension', () => {
  test('the manifest names texts that exist, and all of them', () => {
    const named = [...manifestText.matchAll(/"%([^"%]+)%"/g)].map(([, key]) => key!);
    expect([...new Set(named)].sort()).toEqual(Object.keys(nls).sort());
  });

  test.each(['package.json', 'package.nls.json', 'extension/l10n/bundle.l10n.json'])('%s says nothing twice', file => {
    expect(keysSaidTwice('{ "a": { "b": 1 }, "c": { "b": 2 }, "a": 3 }')).toEqual(['"a"']);
    expect(keysSaidTwice(read(file))).toEqual([]);
  });

  test('the bundle for translators holds the client’s texts, and nothing else', () => {
    const bundle = JSON.parse(read('extension/l10n/bundle.l10n.json')) as Record<string, string>;
    const texts = [...new Set(clientTexts())].sort();
    expect(bundle).toEqual(Object.fromEntries(texts.map(text => [text, text])));
    expect(Object.keys(bundle)).toEqual(texts);
  });
});

test('menus offer a new job on a folder, points and its plan in a job spec, what it is compared with, and tables of its quantities', () => {
  const offered = (menu: string): string[] =>
    contributes.menus[menu]!.map(({ command, when }) => `${command}: ${when}`);
  expect(offered('explorer/context')).toEqual(['paving.newJob: explorerResourceIsFolder && !explorerResourceReadonly']);
  expect(offered('editor/context')).toEqual(['paving.pastePoints: editorLangId == paving && !editorReadonly']);
  expect(offered('editor/title')).toEqual([
    'paving.showPlan: resourceLangId == paving && resourceScheme != paving-older && resourceScheme != paving-shipped',
    'paving.compareWithHead: resourceLangId == paving && resourceScheme == file',
    'paving.compareWith: resourceLangId == paving && resourceScheme != paving-older && resourceScheme != paving-shipped'
  ]);
  const ofARow = 'paving.copyTable: view == paving.quantities && viewItem == row';
  expect(offered('view/item/context')).toEqual([ofARow, ofARow]);
  expect(offered('view/title')).toEqual(['paving.copyAllAsTable: view == paving.quantities && paving.jobOpened']);
  const commands = contributes.commands.map(({ command }) => command);
  const inMenus = Object.values(contributes.menus).flatMap(items => items.map(({ command }) => command));
  expect(inMenus.filter(command => !commands.includes(command))).toEqual([]);
});

test('where no job is open the view of quantities leads to a sample and to a new job', () => {
  const [view] = contributes.views.explorer;
  const [{ view: welcomed, contents }] = contributes.viewsWelcome;
  expect([view.id, welcomed]).toEqual(['paving.quantities', 'paving.quantities']);
  const links = [...nls[contents.slice(1, -1)]!.matchAll(/\(command:([\w.]+)\)/g)].map(([, id]) => id!);
  expect(links).toEqual(['paving.openSample', 'paving.newJob']);
  const commands = contributes.commands.map(({ command }) => command);
  expect(links.filter(id => !commands.includes(id))).toEqual([]);
});

describe('The first steps', () => {
  const steps = contributes.walkthroughs.flatMap(walkthrough => walkthrough.steps);
  const commands = new Set(contributes.commands.map(({ command }) => command));
  const descriptions = steps.map(({ description }) => nls[description.slice(1, -1)]!);

  test('lead to commands that there are', () => {
    const links = descriptions.flatMap(text => [...text.matchAll(/\(command:([\w.]+)/g)].map(([, id]) => id!));
    const events = steps.flatMap(({ completionEvents }) => completionEvents);
    const asked = events.flatMap(event => /^onCommand:(.+)/.exec(event)?.[1] ?? []);
    expect(links.length).toBeGreaterThan(4);
    expect([...links, ...asked].filter(id => id.startsWith('paving.') && !commands.has(id))).toEqual([]);
  });

  test('hand over to a command what it takes', () => {
    const given = descriptions.flatMap(text => [...text.matchAll(/\?(%5B[^)]*)\)/g)].map(([, words]) => words!));
    const samples = given.flatMap(words => JSON.parse(decodeURIComponent(words)) as string[]);
    expect(samples).toEqual(['first-job', 'path']);
    for (const sample of samples) expect(existsSync(path.join(root, `dist/samples/${sample}.paving`))).toBe(true);
  });

  test.each(steps.map(({ media }) => media.svg))('%s is drawn in the colours of the theme alone', picture => {
    const colours = [...read(picture).matchAll(/(?:fill|stroke)="([^"]+)"/g)].map(([, colour]) => colour!);
    expect(colours.length).toBeGreaterThan(5);
    expect(colours.filter(colour => colour !== 'none' && !/^var\(--vscode-[a-zA-Z-]+\)$/.test(colour))).toEqual([]);
  });
});
