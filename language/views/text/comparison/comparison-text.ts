import type { Comparison, FindingChange, NumberChange } from '../../../comparing/contract.ts';
import type { Edit } from '../../../comparing/edits.ts';
import type { System } from '../../../job/job.ts';
import { printAs, printByMeasure } from '../../../measures/print.ts';
import { minorOf, moneyText } from '../../../money/money.ts';
import type { Colours } from '../colours.ts';
import { plainLine } from '../plain-line.ts';
import { table } from '../table.ts';
import { wrapped } from '../wrapped.ts';

export interface ComparisonTextInput {
  readonly title: string;
  /** What is compared: `quote-1 to the working copy`. */
  readonly between: string;
  readonly comparison: Comparison;
  readonly system: System;
  readonly colours: Colours;
}

/** A line stays readable in a terminal and in a mail. */
const WIDTH = 96;

/** What differs between two texts of a job: edits first, then what follows from them, thing by thing. */
export function comparisonText({ title, between, comparison, system, colours }: ComparisonTextInput): string {
  const { edits, renamed, numbers, findings, money, days } = comparison;
  const order = new Map(edits.map(({ id }, index) => [id, index + 1]));
  const head = `${colours.strong(plainLine(title))}${colours.faint(` · ${between}`)}`;
  const named = renamed.map(({ kind, before, after }) => [kind.replace('-', ' '), before, 'is now', after]);
  const sections = [
    ['Edited', editsText(edits, system, colours)],
    [
      'Called otherwise',
      table(
        ['', '', '', ''].map(head => ({ head })),
        named,
        colours
      )
    ],
    ...byThing(numbers).map(([of, changes]): [string, string[]] => [of, numbersText(changes, order, system, colours)]),
    ['Findings', findings.flatMap(change => findingText(change, order))],
    [
      'Price',
      table(
        HEADS,
        [...money.map(({ label, before, after, currency }) => moneyRow(label, before, after, currency))],
        colours
      )
    ],
    [
      'Days of the crew',
      days === undefined ? [] : [`${days.before} to ${days.after}, ${signed(days.after - days.before, String)}`]
    ]
  ] as const;
  const shown = sections.filter(([, lines]) => lines.length > 0);
  if (shown.length === 0) return [head, 'Nothing differs in meaning.'].join('\n');
  return [
    head,
    ...shown.map(([name, lines]) => [colours.strong(name), ...lines.map(line => `  ${line}`)].join('\n'))
  ].join('\n\n');
}

const HEADS = [
  { head: '' },
  { head: 'Before', right: true },
  { head: 'After', right: true },
  { head: 'Difference', right: true },
  { head: 'By' }
] as const;

function editsText(edits: readonly Edit[], system: System, colours: Colours): string[] {
  const rows = edits.map(({ label, kind, amount, before = '', after = '' }, index) => {
    const number = `${index + 1}`;
    if (amount === undefined)
      return [
        number,
        label,
        kind === 'added' ? 'new' : shorter(before),
        kind === 'removed' ? 'gone' : shorter(after),
        ''
      ];
    const { before: old, after: now } = amount;
    const difference = signed(now.value - old.value, value => printByMeasure(value, now.measure, system));
    return [number, label, old.written, now.written, difference];
  });
  return table(
    [{ head: '' }, { head: '' }, { head: 'Before' }, { head: 'After' }, { head: 'Difference', right: true }],
    rows,
    colours
  );
}

function shorter(text: string): string {
  return text.length <= 40 ? text : `${text.slice(0, 39)}…`;
}

/** What stands in tables of quantities; heights at every corner stand in the JSON. */
function byThing(numbers: readonly NumberChange[]): [string, NumberChange[]][] {
  const found = new Map<string, NumberChange[]>();
  for (const change of numbers) {
    const { quantity, of } = (change.after ?? change.before)!;
    if (quantity.sheetOnly === true || ON_SHEETS.has(quantity.owner)) continue;
    const name = of === '' ? 'Whole job' : of;
    found.set(name, [...(found.get(name) ?? []), change]);
  }
  return [...found];
}

const ON_SHEETS: ReadonlySet<string> = new Set(['level', 'tape', 'measured-height', 'edge', 'need', 'choice', 'order']);

function numbersText(
  changes: readonly NumberChange[],
  order: ReadonlyMap<string, number>,
  system: System,
  colours: Colours
): string[] {
  const rows = changes.flatMap(({ before, after, causes }) => {
    const { quantity } = (after ?? before)!;
    const print = (value: number | undefined): string =>
      value === undefined ? '' : printAs(quantity.print, value, system);
    const [old, now] = [print(before?.value), print(after?.value)];
    if (old === now) return [];
    const difference = before === undefined || after === undefined ? '' : signed(after.value - before.value, print);
    return [[quantity.words, old, now, difference, byText(causes, order)]];
  });
  return table(HEADS, rows, colours);
}

function byText(causes: readonly Edit[], order: ReadonlyMap<string, number>): string {
  return causes.map(({ id }) => order.get(id)).join(', ');
}

function findingText({ kind, finding, causes }: FindingChange, order: ReadonlyMap<string, number>): string[] {
  const by = causes.length === 0 ? '' : ` (${byText(causes, order)})`;
  return wrapped(`${kind}: ${finding.message} [${finding.id}]${by}`, WIDTH, '  ');
}

function moneyRow(label: string, before: string | undefined, after: string | undefined, currency: string): string[] {
  const print = (amount: string | undefined): string =>
    amount === undefined ? '' : moneyText(minorOf(amount), currency);
  const difference = before === undefined || after === undefined ? 0n : minorOf(after) - minorOf(before);
  return [
    label,
    print(before),
    print(after),
    `${difference < 0n ? '−' : '+'}${moneyText(difference < 0n ? -difference : difference, currency)}`,
    ''
  ];
}

function signed(difference: number, print: (value: number) => string): string {
  return `${difference < 0 ? '−' : '+'}${print(Math.abs(difference))}`;
}
