import { describe, expect, it } from 'vitest';
import { comparisonPage } from '../../language/views/html-page/comparison-page.ts';
import { PAGE_STYLE } from '../../language/views/html-page/page-style.ts';
import { overlayDrawing } from '../../language/views/plan/overlay/overlay-drawing.ts';
import { terrace, yard } from '../drawing/plans.ts';
import { contrast, luminance } from '../drawing/contrast.ts';
import { NASTY, SAME, section, SHEET, sheetOf } from './sheets.ts';

const FOOTER = { tool: 'paving 0.1.0', asOf: '2026-05-01', besides: ['New job: Path'] };
const overlay = overlayDrawing(undefined, terrace(), {
  title: 'Terrace',
  between: 'HEAD to the working copy',
  system: 'metric'
});

/** Tags with nothing in their quotes that could end them. */
const TAG = /<(\/?)([a-zA-Z][a-zA-Z0-9]*)((?: [a-zA-Z:-]+(?:="[^"<>]*")?)*)\/?>/g;

interface Element {
  readonly name: string;
  readonly attributes: string;
}

function elementsOf(page: string): Element[] {
  return [...page.matchAll(TAG)]
    .filter(([, closing]) => closing === '')
    .map(([, , name, attributes]) => ({ name: name!.toLowerCase(), attributes: attributes! }));
}

const attribute = (name: string, { attributes }: Element): string | undefined =>
  new RegExp(` ${name}="([^"]*)"`).exec(attributes)?.[1];

describe('a comparison as a page', () => {
  const page = comparisonPage([{ sheet: SHEET, overlay }], FOOTER);

  it('is whole in itself: it runs no script and loads nothing', () => {
    expect(page).toMatch(/^<!doctype html>\n<html lang="en-GB">/);
    expect(page).toContain(
      `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">`
    );
    const elements = elementsOf(page);
    expect(
      elements.filter(({ name }) => ['script', 'link', 'img', 'iframe', 'object', 'form', 'base'].includes(name))
    ).toEqual([]);
    expect(elements.filter(({ attributes }) => / (?:on\w+|src|style|xlink:href)="/.test(attributes))).toEqual([]);
    const addresses = elements.flatMap(element => attribute('href', element) ?? []);
    expect(addresses.filter(address => !address.startsWith('#'))).toEqual([]);
    expect(page).not.toMatch(/@import|url\((?!#)/);
  });

  it('closes what it opens, and has no name twice', () => {
    const open: string[] = [];
    const bare = new Set(['meta', 'br']);
    for (const [tag, closing, name] of page.matchAll(TAG)) {
      if (closing === '/') expect(open.pop()).toBe(name);
      else if (!bare.has(name!) && !tag.endsWith('/>')) open.push(name!);
    }
    expect(open).toEqual([]);
    const several = comparisonPage([{ sheet: SHEET, overlay }, { sheet: SHEET, overlay }, { sheet: SAME }], FOOTER);
    const ids = elementsOf(several).flatMap(element => attribute('id', element) ?? []);
    expect(ids.length).toBeGreaterThan(15);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it.each([
    ['one job', [{ sheet: SHEET, overlay }]],
    ['several jobs', [{ sheet: SHEET, overlay }, { sheet: SAME }]]
  ])('of %s leads whoever cannot see it: headings in order, names for tables, drawings and regions', (_, jobs) => {
    const whole = comparisonPage(jobs, FOOTER);
    const elements = elementsOf(whole);
    const levels = elements.flatMap(({ name }) => (/^h[1-6]$/.test(name) ? [Number(name[1])] : []));
    expect(levels.filter(level => level === 1)).toHaveLength(1);
    expect(levels.every((level, index) => level - (levels[index - 1] ?? 0) <= 1)).toBe(true);
    const ids = new Set(elements.flatMap(element => attribute('id', element) ?? []));
    const leads = elements.flatMap(element => [
      ...(attribute('aria-labelledby', element)?.split(' ') ?? []),
      ...(attribute('href', element)?.slice(1).split(' ') ?? [])
    ]);
    expect(leads.filter(id => !ids.has(id))).toEqual([]);
    expect(elements.filter(({ name }) => name === 'main')).toHaveLength(1);
    for (const element of elements.filter(({ name }) => name === 'svg')) {
      expect([attribute('role', element), attribute('aria-labelledby', element)]).toEqual(['img', expect.any(String)]);
    }
    for (const element of elements.filter(({ name }) => name === 'th')) {
      expect(attribute('scope', element)).toMatch(/^(?:col|row)$/);
    }
    // What can be moved by keys says what it is.
    for (const element of elements.filter(one => attribute('tabindex', one) === '0')) {
      expect([attribute('role', element), attribute('aria-labelledby', element)]).toEqual([
        'region',
        expect.any(String)
      ]);
    }
  });

  it('has each row under its head, called by its first words, and each cause leads to its edit', () => {
    expect(page).toContain('<th scope="col" class="right">Difference</th>');
    expect(page).toContain('<tr id="job-1-edit-1"><td>1</td><th scope="row">area drive, base</th><td>225 mm</td>');
    expect(page).toContain('<td class="right difference">+3.69 t</td>');
    expect(page).toContain('<a href="#job-1-edit-2" aria-label="Edit 2">2</a>');
  });

  it('tells in words what the drawing shows, and who wrote it when', () => {
    expect(page).toContain(`<figcaption>${overlay.description}</figcaption>`);
    expect(page).toContain('<footer>paving 0.1.0 · 2026-05-01</footer>');
  });

  it('has lines to sign where both sign', () => {
    const sign = {
      ...section('sign', 'Agreed', [
        ['Name', '', ''],
        ['Date', '', '']
      ]),
      columns: [{ head: '' }, { head: 'Offered' }, { head: 'Accepted' }]
    };
    const signed = comparisonPage([{ sheet: { ...SHEET, sections: [...SHEET.sections, sign] } }], FOOTER);
    expect(signed).toContain('<section class="sign"');
    expect(signed).toContain('<tr><th scope="row">Name</th><td></td><td></td></tr>');
    expect(PAGE_STYLE).toMatch(/\.sign td\{[^}]*border-bottom:1px solid/);
  });

  it('says so where nothing differs', () => {
    expect(comparisonPage([{ sheet: SAME }], FOOTER)).toContain('<p>Nothing differs in meaning.</p>');
    expect(comparisonPage([], FOOTER)).toContain('<h1>0 jobs compared</h1>');
  });

  it.each(NASTY)('shows %j as text', words => {
    const plan = yard();
    const nasty = overlayDrawing(
      undefined,
      { ...plan, areas: [{ ...plan.areas[0]!, name: words }] },
      { title: words, between: words, system: 'metric' }
    );
    const whole = comparisonPage([{ sheet: sheetOf(words), overlay: nasty }, { sheet: sheetOf(words) }], {
      tool: words,
      asOf: words,
      besides: [words]
    });
    const rest = whole
      .replace(/<style>[^]*?<\/style>/g, '')
      .replace('<!doctype html>', '')
      .replace(TAG, '');
    expect(rest).not.toMatch(/[<>]/);
    expect(elementsOf(whole).filter(({ name }) => name === 'script')).toEqual([]);
    expect(whole).not.toMatch(/\p{Cf}/u);
  });

  it('stands out from its ground in light and dark, and needs no colour in print and forced colours', () => {
    const [light, dark] = [
      ...PAGE_STYLE.matchAll(/:root\{[^}]*--paper:(#\w+);--ink:(#\w+);--faint:(#\w+);--line:(#\w+);--band:(#\w+)/g)
    ];
    for (const [, paper, ink, faint, line, band] of [light!, dark!]) {
      for (const ground of [paper!, band!]) {
        expect(contrast(luminance(ink!), luminance(ground))).toBeGreaterThan(7);
        expect(contrast(luminance(faint!), luminance(ground))).toBeGreaterThan(4.5);
      }
      expect(contrast(luminance(line!), luminance(paper!))).toBeGreaterThan(3);
    }
    expect(PAGE_STYLE).toMatch(/forced-colors:active\)\{:root\{--paper:Canvas;--ink:CanvasText/);
    expect(PAGE_STYLE).toMatch(/@media print\{[^]*tr,figure,\.sign\{break-inside:avoid\}/);
  });
});
