// What the editor tells of the word under the pointer.
import type Mocha from 'mocha';
import * as vscode from 'vscode';
import { closeAll, lenses, open, rangeOf } from './editing.ts';
import { same, soon } from './expect.ts';
import { bytesOf, write } from './folder.ts';

const job = `job "Words" { rules north-america }
use "words-units.paving"
site { soil clay, winters freeze, benchmark sill, ground level with sill }
area path {
  outline rectangle 4 x 20 ft
  traffic foot
  finish  level with sill
  paving  brick in third, joints 1/8 in
  base    crushed-stone 6 in
  edges   { all round meets lawn, edging spiked-strip }
}
area broken {
  outline rectangle 4 x
  traffic cars
}
`;
const units = `// From the pallet.
unit brick { size 7 7/8 x 3 7/8 x 2 3/8 in, made of clay }
bond third { offset 1/3 }
`;

/** The job, worked out with the file that it uses. */
async function openJob(): Promise<vscode.TextDocument> {
  const document = await open('words.paving', job);
  await soon('the numbers of the path', async () =>
    (await lenses(document)).find(text => text.startsWith('path: 80.00 sq ft'))
  );
  return document;
}

/** What is told at the first letter of words, as the editor renders it, and the words that it is told of. */
async function told(document: vscode.TextDocument, words: string): Promise<{ of: string; html: string }> {
  const hovers = await vscode.commands.executeCommand<vscode.Hover[]>(
    'vscode.executeHoverProvider',
    document.uri,
    rangeOf(document, words).start
  );
  const markdown = hovers.flatMap(({ contents }) => contents.map(part => (part as vscode.MarkdownString).value));
  const html = await vscode.commands.executeCommand<string>('markdown.api.render', markdown.join('\n'));
  const [range] = hovers.flatMap(({ range }) => range ?? []);
  return { of: range === undefined ? '' : document.getText(range), html };
}

const paragraphs = (html: string): string[] => [...html.matchAll(/<p[^>]*>(.*?)<\/p>/g)].map(([, text]) => text!);

export function wordTests({ suite, test, suiteSetup, teardown }: Mocha.MochaGlobals): void {
  suite('A word under the pointer', () => {
    suiteSetup(() => write('words-units.paving', bytesOf(units)));
    teardown(closeAll);

    test('of the language is explained, in a broken area too', async () => {
      const document = await openJob();
      const cars = await told(document, 'cars');
      same([cars.of, paragraphs(cars.html)[0]], ['cars', 'Cars and vans, such as on a drive.']);
      const freeze = await told(document, 'freeze');
      same([freeze.of, paragraphs(freeze.html)[0]], ['freeze', 'The ground freezes in most winters.']);
    });

    test('has the numbers of its thing above it, parted by a rule', async () => {
      const document = await openJob();
      const { of, html } = await told(document, 'base    crushed');
      same(of, 'base');
      const [numbers, help] = html.split(/<hr[^>]*>/);
      same(/<strong>(.*?)<\/strong>/.exec(numbers!)?.[1], 'base of path: crushed-stone');
      same(paragraphs(help!)[0], 'The compacted stone under the bed; it carries the load.');
    });

    test('that ships brings what the trade knows, its figures and their source', async () => {
      const document = await openJob();
      const { of, html } = await told(document, 'clay');
      same(of, 'clay');
      same(/<em>Source: (.*?)\./.exec(html)?.[1], 'Swell: US Army FM 5-434 table 1-1, from memory');
      same(html.replace(/<[^>]*>/g, '').includes('density      100 lb per cu ft'), true);
      same(paragraphs(html).includes('In the other system, rounded: density 1602 kg/m3.'), true);
    });

    test('of one’s own leads to its declaration in the file where it stands', async () => {
      const document = await openJob();
      const { html } = await told(document, 'brick');
      same(paragraphs(html).slice(-3), [
        '<strong>brick</strong>, unit, words-units.paving, line 2',
        'From the pallet.',
        'In the other system, rounded: size 200 mm x 98 mm x 60 mm.'
      ]);
    });

    test('that names a bond draws it in lines', async () => {
      const document = await openJob();
      const { html } = await told(document, 'third');
      same(html.includes('├───────┬───┴───────┬───┴───────┬───┤'), true);
    });

    test('that is a quantity tells the other system', async () => {
      const document = await openJob();
      const { of, html } = await told(document, '6 in');
      same(of, '6');
      same(paragraphs(html).at(-1), '<strong>6 in</strong> is about 152 mm.');
    });
  });
}
