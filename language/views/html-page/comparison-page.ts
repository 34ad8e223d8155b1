import type { Drawing } from '../../drawing/drawing.ts';
import { escaped } from '../../drawing/svg/escaped.ts';
import { svgOf } from '../../drawing/svg/svg.ts';
import { type ComparisonSheet, NOTHING_DIFFERS, type SheetSection } from '../comparison/sheet.ts';
import { type ShownColumn, shownColumns } from '../comparison/shown-columns.ts';
import { PAGE_STYLE } from './page-style.ts';

export interface ComparedJob {
  readonly sheet: ComparisonSheet;
  /** Before and after laid over each other. */
  readonly overlay?: Drawing;
}

export interface PageFooter {
  /** What wrote the page, with its version. */
  readonly tool: string;
  /** The day of it. */
  readonly asOf: string;
  /** Said below the jobs: those that are new or gone, and how many are the same. */
  readonly besides: readonly string[];
}

/** Nothing but what stands in the page itself is ever loaded, and no script runs. */
const POLICY = "default-src 'none'; style-src 'unsafe-inline'";

/** Comparisons of jobs as a page in one file: it loads nothing, runs nothing, and prints as it is. */
export function comparisonPage(jobs: readonly ComparedJob[], { tool, asOf, besides }: PageFooter): string {
  const [only] = jobs;
  const title = jobs.length === 1 ? only!.sheet.title : `${jobs.length} jobs compared`;
  const level = jobs.length === 1 ? 1 : 2;
  return [
    '<!doctype html>',
    '<html lang="en-GB">',
    '<head>',
    '<meta charset="utf-8">',
    `<meta http-equiv="Content-Security-Policy" content="${POLICY}">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<title>${escaped(jobs.length === 1 ? `${title} · ${only!.sheet.between}` : title)}</title>`,
    `<style>\n${PAGE_STYLE}\n</style>`,
    '</head>',
    '<body>',
    '<main>',
    ...(jobs.length === 1 ? [] : [`<h1>${escaped(title)}</h1>`, ...contents(jobs)]),
    ...jobs.flatMap((job, index) => jobLines(job, `job-${index + 1}`, level)),
    ...besides.map(line => `<p>${escaped(line)}</p>`),
    '</main>',
    `<footer>${escaped(tool)} · ${escaped(asOf)}</footer>`,
    '</body>',
    '</html>',
    ''
  ].join('\n');
}

function contents(jobs: readonly ComparedJob[]): string[] {
  const items = jobs.map(({ sheet: { title, sections } }, index) => {
    const same = sections.length === 0 ? `: ${NOTHING_DIFFERS}` : '';
    return `<li><a href="#job-${index + 1}">${escaped(title)}</a>${same}</li>`;
  });
  return ['<nav aria-label="Jobs">', '<ul>', ...items, '</ul>', '</nav>'];
}

function jobLines({ sheet, overlay }: ComparedJob, id: string, level: number): string[] {
  const { title, between, notes, sections } = sheet;
  return [
    `<article class="job" id="${id}" aria-labelledby="${id}-title">`,
    `<h${level} id="${id}-title">${escaped(title)}</h${level}>`,
    `<p class="between">${escaped(between)}</p>`,
    ...notes.map(note => `<p><strong>${escaped(note)}</strong></p>`),
    ...(sections.length === 0 ? [`<p>${NOTHING_DIFFERS}</p>`] : []),
    ...sections.slice(0, 1).flatMap(section => sectionLines(section, id, 1, level + 1)),
    ...(overlay === undefined ? [] : figureLines(overlay, id, level + 1)),
    ...sections.slice(1).flatMap((section, index) => sectionLines(section, id, index + 2, level + 1)),
    '</article>'
  ];
}

/** The drawing, and the same in words for all. */
function figureLines(overlay: Drawing, id: string, level: number): string[] {
  return [
    `<section aria-labelledby="${id}-plan-heading">`,
    `<h${level} id="${id}-plan-heading">Plan, before and after</h${level}>`,
    '<figure>',
    svgOf(overlay, `${id}-plan`).trim(),
    `<figcaption>${escaped(overlay.description)}</figcaption>`,
    '</figure>',
    '</section>'
  ];
}

function sectionLines(section: SheetSection, job: string, number: number, level: number): string[] {
  const { heading, notes } = section;
  const id = `${job}-section-${number}`;
  return [
    `<section${section.id === 'sign' ? ' class="sign"' : ''} aria-labelledby="${id}">`,
    `<h${level} id="${id}">${escaped(heading)}</h${level}>`,
    ...notes.map(note => `<p>${escaped(note)}</p>`),
    // Where a narrow screen cuts it off it is moved by hand or by keys.
    `<div class="table" tabindex="0" role="region" aria-labelledby="${id}">`,
    ...tableLines(section, job),
    '</div>',
    '</section>'
  ];
}

function tableLines(section: SheetSection, job: string): string[] {
  const columns = shownColumns(section);
  const isEdits = section.id === 'edits';
  // A row is called by its first words; edits are counted before them.
  const named = isEdits ? 1 : 0;
  const heads = columns.map(({ head, right }) => {
    const align = right === true ? ' class="right"' : '';
    return head === '' ? `<td${align}></td>` : `<th scope="col"${align}>${escaped(head)}</th>`;
  });
  const rows = section.rows.map((_, row) => {
    const cells = columns.map((column, index) => cellOf(column, row, { isName: index === named, job }));
    return `<tr${isEdits ? ` id="${job}-edit-${row + 1}"` : ''}>${cells.join('')}</tr>`;
  });
  return [
    '<table>',
    ...(heads.every(head => head.startsWith('<td')) ? [] : [`<thead><tr>${heads.join('')}</tr></thead>`]),
    '<tbody>',
    ...rows,
    '</tbody>',
    '</table>'
  ];
}

function cellOf(
  { cells, head, right, prose, isBy }: ShownColumn,
  row: number,
  { isName, job }: { readonly isName: boolean; readonly job: string }
): string {
  const classes = [
    ...(right === true ? ['right'] : []),
    ...(prose === true ? ['prose'] : []),
    ...(head === 'Difference' ? ['difference'] : [])
  ];
  const marked = classes.length === 0 ? '' : ` class="${classes.join(' ')}"`;
  const text = cells[row]!;
  const content = isBy ? editLinks(text, job) : escaped(text);
  return isName && text !== '' ? `<th scope="row"${marked}>${content}</th>` : `<td${marked}>${content}</td>`;
}

/** Each number leads to its edit. */
function editLinks(by: string, job: string): string {
  if (by === '') return '';
  return by
    .split(', ')
    .map(number => `<a href="#${job}-edit-${number}" aria-label="Edit ${number}">${number}</a>`)
    .join(', ');
}
