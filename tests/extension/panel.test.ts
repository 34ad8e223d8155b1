/// <reference lib="dom" />
// The panel of a comparison: what it builds, and what it and the editor take from each other.
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { comparisonToDom, type Opening } from '../../extension/panel/comparison-to-dom.ts';
import { drawingToDom } from '../../extension/panel/drawing-to-dom.ts';
import { isFromPanel, isPanelState, isToPanel, type PanelWords } from '../../extension/panel/messages.ts';
import type { Drawing } from '../../language/drawing/drawing.ts';
import { svgOf, svgTree } from '../../language/drawing/svg/svg.ts';
import { STYLE, STYLE_IN_EDITOR } from '../../language/drawing/svg/svg-style.ts';
import { overlayDrawing } from '../../language/views/plan/overlay/overlay-drawing.ts';
import { planDrawing } from '../../language/views/plan/plan-drawing.ts';
import type { ShownComparison, ShownRow } from '../../server/protocol.ts';
import { JOBS, planned } from '../drawing/jobs.ts';
import { circle, drive, terrace, yard } from '../drawing/plans.ts';
import { SITE_JOBS } from '../drawing/site-jobs.ts';
import { BuiltElement, BuiltPage } from './page.ts';

const root = path.resolve(import.meta.dirname, '../..');
let page: BuiltPage;

beforeEach(() => {
  page = new BuiltPage();
  vi.stubGlobal('document', page);
});

afterEach(() => {
  vi.unstubAllGlobals();
});

const drawn = (drawing: Parameters<typeof drawingToDom>[0]): BuiltElement =>
  drawingToDom(drawing, page as unknown as Document) as unknown as BuiltElement;

describe('A drawing in the panel', () => {
  /** As it is printed, but for the style that the panel has of its own, and line breaks. */
  const printed = (drawing: Drawing): string =>
    svgOf(drawing)
      .replace(/<style>[^]*<\/style>\n/, '')
      .replace(/ xmlns="[^"]*"/, '')
      .replaceAll('\n', '')
      .replaceAll(/<(\w+)([^<>]*)><\/\1>/g, '<$1$2/>');

  const PLANS = { terrace: terrace(), yard: yard(), circle: circle() };

  test.each(Object.entries(PLANS))('is built as it is printed: %s', (_, plan) => {
    expect(drawn(svgTree(planDrawing(plan))).markup).toBe(printed(planDrawing(plan)));
  });

  test.each([...Object.entries(JOBS), ...Object.entries(SITE_JOBS)])(
    'is built as it is printed: %s',
    async (_, text) => {
      const drawing = planDrawing(await planned(text));
      expect(drawn(svgTree(drawing)).markup).toBe(printed(drawing));
    }
  );

  test('is built as it is printed: before and after over each other', () => {
    const drawing = overlayDrawing(drive(), drive(5.2, 11.4, 4.2), { title: 'A', between: 'b to c', system: 'metric' });
    expect(drawn(svgTree(drawing)).markup).toBe(printed(drawing));
  });

  test('holds words as words, and all of it in the space of drawings', () => {
    const nasty = '"><script>alert(1)</script>&\u202e';
    const built = drawn(svgTree(planDrawing({ ...terrace(), title: nasty })));
    expect(built.find('script')).toEqual([]);
    expect(built.find('title')[0]!.text).toContain('"><script>alert(1)</script>& ');
    expect(new Set(built.all().map(({ space }) => space))).toEqual(new Set(['http://www.w3.org/2000/svg']));
  });

  test('is built of nothing else than a drawing is made of', () => {
    const foreign = { name: 'foreignObject', attributes: {}, inside: [] };
    const script = { name: 'script', attributes: {}, inside: ['alert(1)'] };
    const attributes = { onload: 'alert(1)', style: 'fill:red', href: 'x', d: 'M0 0' };
    const built = drawn({
      name: 'svg',
      attributes: {},
      inside: [foreign, script, { name: 'path', attributes, inside: [] }]
    });
    expect(built.markup).toBe('<svg><path d="M0 0"/></svg>');
  });

  test('has in the panel every class that it has in print', () => {
    const style = readFileSync(path.join(root, 'dist/panel/panel.css'), 'utf8');
    expect(style.endsWith(`\n${STYLE_IN_EDITOR}\n`)).toBe(true);
    const rules = STYLE.split('\n').filter(rule => /^\.plan(?:-| )/.test(rule));
    expect(rules.length).toBeGreaterThan(10);
    expect(rules.filter(rule => !style.includes(rule))).toEqual([]);
    const properties = new Set([...STYLE.matchAll(/var\((--plan-\w+)\)/g)].map(([, name]) => name!));
    for (const theme of [/^\.plan\{.*\}$/m, /^\.vscode-dark \.plan\{.*\}$/m, /^\.vscode-high-contrast \.plan\{.*\}$/m])
      expect([...properties].filter(name => !theme.exec(style)![0].includes(`${name}:`))).toEqual([]);
  });
});

const WORDS: PanelWords = {
  by: 'By',
  edit: 'Edit',
  nothingDiffers: 'Nothing differs in meaning.',
  toText: 'Go to the text',
  toOlderText: 'Go to the text as it was'
};

const place = (uri: string): NonNullable<ShownRow['places']['after']> => {
  return { uri, range: { start: { line: 1, character: 2 }, end: { line: 1, character: 9 } } };
};

const COMPARISON: ShownComparison = {
  title: 'A <b>title</b>',
  between: 'HEAD to the working copy',
  notes: [],
  sections: [
    {
      id: 'edits',
      heading: 'Edited',
      notes: [],
      columns: [{ head: '' }, { head: '' }, { head: 'Before' }, { head: 'After' }, { head: 'Difference', right: true }],
      rows: [
        {
          cells: ['1', 'area <i>a</i>, base', '150 mm', '200 mm', '+50 mm'],
          places: { before: place('paving-older:/a'), after: place('file:///a') },
          by: []
        },
        { cells: ['2', 'gate', 'old', 'gone', ''], places: { before: place('paving-older:/a') }, by: [] }
      ]
    },
    {
      id: 'numbers',
      heading: 'a, base',
      notes: ['A note.'],
      columns: [{ head: '' }, { head: 'Before', right: true }, { head: 'After', right: true }],
      rows: [{ cells: ['Mass', '1 t', '2 t'], places: {}, by: [1, 2] }]
    }
  ]
};

describe('A comparison in the panel', () => {
  let opened: Opening[];
  const build = (comparison = COMPARISON): BuiltElement[] => {
    opened = [];
    const building = { words: WORDS, open: (opening: Opening) => void opened.push(opening) };
    return comparisonToDom(comparison, building) as unknown as BuiltElement[];
  };
  const buttons = (): BuiltElement[] => build().flatMap(element => element.find('button'));

  test('has headings, tables whose heads have a scope, and words as words', () => {
    const markup = build().map(element => element.markup);
    expect(markup[0]).toBe('<h1>A &lt;b&gt;title&lt;/b&gt;</h1>');
    expect(markup[1]).toBe('<p class="between">HEAD to the working copy</p>');
    expect(markup[3]).toBe(
      '<section aria-labelledby="section-1"><h2 id="section-1">a, base</h2><p>A note.</p>' +
        '<table aria-labelledby="section-1"><thead><tr><td/><th scope="col" class="right">Before</th>' +
        '<th scope="col" class="right">After</th><th scope="col">By</th></tr></thead>' +
        '<tbody><tr><th scope="row">Mass</th><td class="right">1 t</td><td class="right">2 t</td>' +
        '<td><button type="button" aria-label="Edit 1" data-key="numbers\na, base\nMass\nby 1">1</button>, ' +
        '<button type="button" aria-label="Edit 2" data-key="numbers\na, base\nMass\nby 2">2</button></td>' +
        '</tr></tbody></table></section>'
    );
  });

  test('leads to the newer text, to the older one, and where a thing is gone to that alone', () => {
    const [label, before, gone] = buttons();
    expect([label, before, gone].map(button => button!.text)).toEqual(['area <i>a</i>, base', '150 mm', 'gate']);
    for (const button of [label, before, gone]) button!.click();
    expect(opened).toEqual([
      { section: 0, row: 0, side: 'after' },
      { section: 0, row: 0, side: 'before' },
      { section: 0, row: 1, side: 'before' }
    ]);
  });

  test('leads from a number to the edit behind it', () => {
    const [edit, , , by] = buttons();
    by!.click();
    expect(page.focused).toBe(edit);
  });

  test('says that nothing differs; the drawing stands behind the edits', () => {
    expect(build({ ...COMPARISON, sections: [] }).at(-1)!.markup).toBe('<p>Nothing differs in meaning.</p>');
    const drawing = svgTree(planDrawing(terrace()));
    expect(build({ ...COMPARISON, drawing }).map(({ name }) => name)).toEqual([
      'h1',
      'p',
      'section',
      'figure',
      'section'
    ]);
  });
});

describe('What panel and editor take from each other', () => {
  const about = { file: 'file:///a.paving', against: { revision: 'HEAD' } };
  const message = { kind: 'comparison', about, version: 1, words: WORDS, comparison: COMPARISON };

  test('is what they say', () => {
    const drawing = svgTree(planDrawing(terrace()));
    for (const said of [
      message,
      { ...message, comparison: { ...COMPARISON, drawing } },
      { kind: 'problem', about: { ...about, against: { uri: 'file:///b.paving' } }, problem: 'No git.' }
    ])
      expect(isToPanel(said)).toBe(true);
    expect(isFromPanel({ kind: 'ready' })).toBe(true);
    expect(isFromPanel({ kind: 'open', version: 1, section: 0, row: 2, side: 'after' })).toBe(true);
    expect(isPanelState({ about, scroll: 120.5 })).toBe(true);
  });

  const withSection = (changes: object): object => ({
    ...message,
    comparison: { ...COMPARISON, sections: [{ ...COMPARISON.sections[0], ...changes }] }
  });

  test.each([
    undefined,
    null,
    'comparison',
    [],
    { ...message, kind: 'other' },
    { ...message, about: { file: 1, against: {} } },
    { ...message, version: -1 },
    { ...message, words: { ...WORDS, by: 1 } },
    { ...message, comparison: { ...COMPARISON, notes: 'none' } },
    { ...message, comparison: { ...COMPARISON, drawing: { name: 'svg', attributes: { d: {} }, inside: [] } } },
    { ...message, comparison: { ...COMPARISON, drawing: { name: 'svg', attributes: {}, inside: [7] } } },
    withSection({ rows: [{ cells: ['a'], places: {}, by: ['1'] }] }),
    withSection({ rows: [{ cells: [1], places: {}, by: [] }] }),
    withSection({ rows: [{ cells: [], places: { after: { uri: 'x', range: { start: 1, end: 2 } } }, by: [] }] }),
    withSection({ columns: [{ head: 'x', right: 'yes' }] }),
    { kind: 'problem', about, problem: 7 }
  ])('is nothing else, to the panel: %j', said => {
    expect(isToPanel(said)).toBe(false);
  });

  test.each([
    undefined,
    7,
    { kind: 'open', version: 1, section: 0, row: 0, side: 'aside' },
    { kind: 'open', version: 1, section: -1, row: 0, side: 'after' },
    { kind: 'open', version: 1, section: 0.5, row: 0, side: 'after' },
    { kind: 'open', uri: 'file:///etc/passwd' },
    { kind: 'run', command: 'x' }
  ])('is nothing else, from the panel: %j', said => {
    expect(isFromPanel(said)).toBe(false);
    expect(isPanelState(said)).toBe(false);
  });
});
