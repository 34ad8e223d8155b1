import type { Comparison, FindingChange, NumberChange } from '../../comparing/contract.ts';
import { type Edit, placesOfEdit } from '../../comparing/edits.ts';
import type { System } from '../../job/job.ts';
import type { MoneyWords } from '../../job/money-lines.ts';
import type { Amount } from '../../comparing/written-statements.ts';
import { printAs, printLength } from '../../measures/print.ts';
import { type LevelDatum, levelStyleOf, printDrop, printLevelWithMark } from '../../measures/print-level.ts';
import { minorOf, moneyText } from '../../money/money.ts';
import { plainLine } from '../text/plain-line.ts';
import { NOWHERE, type ComparisonSheet, type SheetColumn, type SheetRow, type SheetSection } from './sheet.ts';
import { hoursText } from '../schedule-days.ts';
import { printedAmount } from './printed-amount.ts';
import { signed } from './signed.ts';
import { underWaySections } from './under-way-sections.ts';

export interface ComparisonSheetInput {
  readonly title: string;
  readonly between: string;
  readonly comparison: Comparison;
  readonly system: System;
  /** What heights count from. */
  readonly datum?: LevelDatum;
  /** The page that both sides sign: no costs of the one who works, no findings, no lines of every layer. */
  readonly forClient?: Pick<MoneyWords, 'client' | 'quote' | 'excludes'>;
}

/** What differs between two texts of a job: edits first, then what follows from them, thing by thing. */
export function comparisonSheet(input: ComparisonSheetInput): ComparisonSheet {
  const { title, between, comparison, forClient } = input;
  const sections = (forClient === undefined ? allSections(input) : clientSections(input)).filter(
    ({ rows }) => rows.length > 0
  );
  const isWhole = comparison.broken.length === 0 && (comparison.underWay?.price?.unpriced ?? []).length === 0;
  const isSigned = forClient !== undefined && sections.length > 0 && isWhole;
  return {
    title: plainLine(title),
    between: plainLine(between),
    notes: [...(forClient === undefined ? [] : quoteText(forClient)), ...comparison.broken.map(brokenText)].map(
      plainLine
    ),
    sections: (isSigned ? [...sections, signSection(comparison, forClient)] : sections).map(onPlainLines)
  };
}

function brokenText({ side, errors, first, isComplete }: Comparison['broken'][number]): string {
  const count = errors === 0 ? 'parts without numbers' : errors === 1 ? 'an error' : `${errors} errors`;
  const where = first === undefined ? '' : ` The first: ${first.file}, line ${first.line}.`;
  const what = isComplete ? '.' : ': what is sound is compared, without totals, price and days.';
  return `The ${side === 'before' ? 'older' : 'newer'} text has ${count}${what}${where}`;
}

function allSections(input: ComparisonSheetInput): SheetSection[] {
  const { comparison, system } = input;
  const by = byNumbers(comparison);
  const { underWay } = comparison;
  return [
    editsSection(comparison.edits, system),
    renamedSection(comparison),
    ...(underWay === undefined ? [] : underWaySections(underWay, { system, isForClient: false })),
    findingsSection(comparison.findings, by),
    moneySection(comparison, false),
    daysSection(comparison),
    orderSection(comparison.numbers, by, system),
    tasksSection(comparison),
    ...numberSections(comparison.numbers, by, input)
  ];
}

function clientSections(input: ComparisonSheetInput): SheetSection[] {
  const { comparison, system } = input;
  const { underWay } = comparison;
  const edits = comparison.edits.filter(({ label }) => !OWN_BUSINESS.test(label));
  const main = comparison.numbers.filter(({ before, after }) => FOR_CLIENTS.has((after ?? before)!.quantity.id));
  return [
    editsSection(edits, system, LONGEST_SIGNED),
    ...numberSections(main, () => [], input),
    ...(underWay === undefined ? [] : underWaySections(underWay, { system, isForClient: true })),
    // What the change comes to tells it already.
    ...(underWay?.price === undefined ? [moneySection(comparison, true)] : []),
    daysSection(comparison)
  ];
}

/** What is the crew's own business, or the record of it, is no change that a client signs. */
const OWN_BUSINESS =
  /^(?:job, (?:labour|overhead|margin|markup|contingency|hire|disposal|breakage|keep|crew|rate|begins)|price |supplier |stock|log|accept |rate |treat|prefer)/;

/** What a client can see on the ground. */
const FOR_CLIENTS: ReadonlySet<string> = new Set(['net-area', 'edging-length']);

function byNumbers({ edits }: Comparison): By {
  const order = new Map(edits.map(({ id }, index) => [id, index + 1]));
  return causes => causes.map(({ id }) => order.get(id)!);
}

function quoteText({ client, quote }: Pick<MoneyWords, 'client' | 'quote'>): string[] {
  if (client === undefined && quote === undefined) return [];
  const on = quote?.on === undefined ? '' : ` of ${quote.on}`;
  const what = quote === undefined ? 'Change' : `Change to "${quote.name}"${on}`;
  return [`${what}${client === undefined ? '' : `, for ${client}`}.`];
}

function signSection({ underWay }: Comparison, { excludes }: Pick<MoneyWords, 'excludes'>): SheetSection {
  const notes = [
    ...excludes.map(words => `Not part of this work: ${words}`),
    ...(underWay === undefined ? [] : ['No work on the change begins before both have signed.']),
    'Local codes and licensed practice stand over everything here.'
  ];
  const rows = ['Name', 'Date', 'Sign'].map(label => ({ cells: [label, '', ''], places: NOWHERE, by: [] }));
  const columns = [{ head: '' }, { head: 'Offered' }, { head: 'Accepted' }];
  return { id: 'sign', heading: 'Agreed', notes, columns, rows };
}

/** Text of a spec never moves to another line or column. */
function onPlainLines(section: SheetSection): SheetSection {
  const rows = section.rows.map(row => ({ ...row, cells: row.cells.map(plainLine) }));
  return { ...section, heading: plainLine(section.heading), notes: section.notes.map(plainLine), rows };
}

const FROM_TO: readonly SheetColumn[] = [
  { head: '' },
  { head: 'Before', right: true },
  { head: 'After', right: true },
  { head: 'Difference', right: true }
];

function editsSection(edits: readonly Edit[], system: System, most = LONGEST_SHOWN): SheetSection {
  const shorter = (text: string): string => shortened(text, most);
  const fromWhereTheyDiffer = (text: string, other: string): string => fromDifference(text, other, most);
  const rows = edits.map((edit, index): SheetRow => {
    const { label, kind, amount, order, before = '', after = '' } = edit;
    const row = { places: placesOfEdit(edit), by: [] };
    const number = String(index + 1);
    if (order !== undefined) {
      const [old, now] = [order.before, order.after].map(place => `in place ${place}`);
      return { ...row, cells: [number, `${label}: ${shorter(after)}`, old!, now!, ''] };
    }
    if (amount === undefined) {
      const [old, now] =
        kind === 'added'
          ? ['new', shorter(after)]
          : kind === 'removed'
            ? [shorter(before), 'gone']
            : [shorter(fromWhereTheyDiffer(before, after)), shorter(fromWhereTheyDiffer(after, before))];
      return { ...row, cells: [number, label, old, now, ''] };
    }
    const { before: old, after: now } = amount;
    const difference = editDifference(old, now, system);
    // Of several amounts in a row it has to be seen which of them it is.
    const isAlone = edit.new!.amounts.length === 1;
    const written = [
      [before, after, old],
      [after, before, now]
    ] as const;
    const shown = written.map(([text, other, one]) =>
      isAlone ? one.written : shorter(fromWhereTheyDiffer(text, other))
    );
    return { ...row, cells: [number, label, ...shown, difference] };
  });
  const columns = [{ head: '' }, { head: '' }, { head: 'Before' }, { head: 'After' }, FROM_TO[3]!];
  return { id: 'edits', heading: 'Edited', notes: [], columns, rows };
}

/** In the measure that the larger of both is read in; of prices and rates both stand there as they are written. */
function editDifference(old: Amount, now: Amount, system: System): string {
  if (!SIMPLE.has(now.measure)) return '';
  const isLong = now.measure === 'm' && Math.max(Math.abs(old.value), Math.abs(now.value)) >= 1;
  return signed(now.value - old.value, value =>
    isLong ? printLength(value, system) : printedAmount(value, now.measure, system)
  );
}

const SIMPLE: ReadonlySet<string> = new Set(['', 'm', 'm2', 'm3', 'kg', 'kg/m3']);

/** A long statement begins a few words before what is written otherwise. */
function fromDifference(text: string, other: string, most: number): string {
  if (text === other || Math.max(text.length, other.length) <= most) return text;
  const [words, others] = [text.split(' '), other.split(' ')];
  const first = words.findIndex((word, index) => word !== others[index]);
  const from = Math.max(0, (first === -1 ? words.length : first) - WORDS_BEFORE);
  return from === 0 ? text : `… ${words.slice(from).join(' ')}`;
}

const WORDS_BEFORE = 2;

function shortened(text: string, most: number): string {
  return text.length <= most ? text : `${text.slice(0, most - 1)}…`;
}

/** Before and after still stand beside each other. */
const LONGEST_SHOWN = 40;

/** Nothing that is signed is cut off. */
const LONGEST_SIGNED = 1000;

function renamedSection({ renamed }: Comparison): SheetSection {
  const rows = renamed.map(({ kind, before, after }): SheetRow => ({
    cells: [kind.replace('-', ' '), before, after],
    places: NOWHERE,
    by: []
  }));
  const columns = [{ head: '' }, { head: 'Before' }, { head: 'After' }];
  return { id: 'renamed', heading: 'Called otherwise', notes: [], columns, rows };
}

type By = (causes: readonly Edit[]) => number[];

/** What stands in tables of quantities, one section a thing; heights at every corner stand in the JSON. */
function numberSections(
  numbers: readonly NumberChange[],
  by: By,
  input: Pick<ComparisonSheetInput, 'system' | 'datum'>
): SheetSection[] {
  const found = new Map<string, SheetRow[]>();
  for (const change of numbers) {
    const { quantity, of } = (change.after ?? change.before)!;
    if (quantity.sheetOnly === true || ON_SHEETS.has(quantity.owner)) continue;
    const row = numberRow(change, by, input);
    const name = of === '' ? 'Whole job' : of;
    if (row !== undefined) found.set(name, [...(found.get(name) ?? []), row]);
  }
  return [...found].map(([heading, rows]) => ({ id: 'numbers', heading, notes: [], columns: FROM_TO, rows }));
}

const ON_SHEETS: ReadonlySet<string> = new Set([
  'level',
  'tape',
  'measured-height',
  'edge',
  'delivery',
  'need',
  'choice',
  'order'
]);

/** None where both print alike. */
function numberRow(
  { before, after, causes, places }: NumberChange,
  by: By,
  { system, datum }: Pick<ComparisonSheetInput, 'system' | 'datum'>
): SheetRow | undefined {
  const { quantity } = (after ?? before)!;
  const isLevel = quantity.print === 'level' && datum !== undefined;
  const print = (value: number | undefined): string =>
    value === undefined
      ? ''
      : isLevel
        ? printLevelWithMark(value, datum, levelStyleOf(system))
        : printAs(quantity.print, value, system);
  const printDifference = (value: number): string => (isLevel ? printDrop(value, levelStyleOf(system)) : print(value));
  const [old, now] = [print(before?.value), print(after?.value)];
  if (old === now) return undefined;
  const difference =
    before === undefined || after === undefined ? '' : signed(after.value - before.value, printDifference);
  return { cells: [quantity.words, old, now, difference], places, by: by(causes) };
}

/** Of what is or was set aside. */
const ASIDE: Readonly<Partial<Record<FindingChange['kind'], string>>> = {
  appeared: 'appeared, set aside',
  cleared: 'cleared, was set aside'
};

function findingsSection(findings: readonly FindingChange[], by: By): SheetSection {
  const rows = findings.map(({ kind, finding, acceptance, causes, places }): SheetRow => ({
    cells: [acceptance === undefined ? kind : (ASIDE[kind] ?? kind), `${plainLine(finding.message)} [${finding.id}]`],
    places,
    by: by(causes)
  }));
  const alike = new Map<string, SheetRow[]>();
  for (const row of rows) {
    const words = row.cells.join('\n');
    alike.set(words, [...(alike.get(words) ?? []), row]);
  }
  const once = [...alike.values()].map(([first, ...others]): SheetRow => {
    const [kind, words] = first!.cells;
    return others.length === 0 ? first! : { ...first!, cells: [kind!, `${words} (${others.length + 1} times)`] };
  });
  return {
    id: 'findings',
    heading: 'Findings',
    notes: [],
    columns: [{ head: '' }, { head: '', prose: true }],
    rows: once
  };
}

function moneySection({ money }: Comparison, isForClient: boolean): SheetSection {
  const shown = isForClient ? money.filter(({ id }) => id !== 'costs') : money;
  const rows = shown.map(({ label, before, after, currency }): SheetRow => {
    const print = (amount: string | undefined): string =>
      amount === undefined ? '' : moneyText(minorOf(amount), currency);
    const difference = before === undefined || after === undefined ? undefined : minorOf(after) - minorOf(before);
    const change =
      difference === undefined
        ? ''
        : `${difference < 0n ? '−' : '+'}${moneyText(difference < 0n ? -difference : difference, currency)}`;
    return { cells: [label, print(before), print(after), change], places: NOWHERE, by: [] };
  });
  return { id: 'price', heading: 'Price of the whole job', notes: [], columns: FROM_TO, rows };
}

/** Packs of the order, as they are sold. */
function orderSection(numbers: readonly NumberChange[], by: By, system: System): SheetSection {
  const rows = numbers.flatMap((change): SheetRow[] => {
    const { quantity, of, measure } = (change.after ?? change.before)!;
    // Loose goods come in steps: nobody counts them.
    const isLoose = of.endsWith(' loose');
    if (quantity.id !== (isLoose ? 'order-amount' : 'order-count')) return [];
    const print = (value: number): string => (isLoose ? printedAmount(value, measure, system) : String(value));
    const [old, now] = [change.before?.value, change.after?.value];
    const cells = [old, now].map(value => (value === undefined ? '' : print(value)));
    const difference = signed((now ?? 0) - (old ?? 0), print);
    return [{ cells: [of, ...cells, difference], places: change.places, by: by(change.causes) }];
  });
  return { id: 'order', heading: 'To buy', notes: [], columns: FROM_TO, rows };
}

/** Hours of one person. */
function tasksSection({ tasks }: Comparison): SheetSection {
  const print = (hours: number | undefined): string => (hours === undefined ? '' : hoursText(hours));
  const rows = tasks.flatMap(({ title, before, after }): SheetRow[] => {
    const [old, now] = [print(before), print(after)];
    if (old === now) return [];
    const difference = before === undefined || after === undefined ? '' : signed(after - before, print);
    return [{ cells: [title, old, now, difference], places: NOWHERE, by: [] }];
  });
  return { id: 'tasks', heading: 'Hours of one person', notes: [], columns: FROM_TO, rows };
}

function daysSection({ days }: Comparison): SheetSection {
  const rows =
    days === undefined
      ? []
      : [
          {
            cells: [
              'Days of the crew',
              String(days.before),
              String(days.after),
              signed(days.after - days.before, String)
            ],
            places: NOWHERE,
            by: []
          }
        ];
  return { id: 'days', heading: 'Days', notes: [], columns: FROM_TO, rows };
}
