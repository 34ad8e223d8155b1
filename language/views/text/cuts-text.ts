import type { Given, Job, System } from '../../job/job.ts';
import type { CutGroup } from '../../laying/cut-list/cut-list.ts';
import { HOW_MARKED, markingsText } from '../../laying/cut-list/marking-out-text.ts';
import { printAs, printFine, printMarked } from '../../measures/print.ts';
import type { JobNumbers } from '../../quantities/contract.ts';
import type { NestedTogether } from '../../quantities/nesting-stage.ts';
import { unitNamed } from '../../quantities/units-of-area.ts';
import { CUTTING_CAUTION } from './cautions.ts';
import type { Colours } from './colours.ts';
import { cuttingPlanText } from './cutting-plan-text.ts';
import { type Column, table } from './table.ts';
import { SENTENCE_WIDTH, wrapped } from './wrapped.ts';

/** Room for how a cut is marked out, where the columns before it leave less. */
const LEAST_MARKING_WIDTH = 32;

const SPLITTER =
  'Straight cuts can be split where the narrowest part is wide enough for the splitter: the piece, or what falls off a unit cut once. Notches, curves and holes are sawn.';

const COLUMNS: readonly Column[] = [
  { head: 'No.', right: true },
  { head: 'Units', right: true },
  { head: 'Unit' },
  { head: 'Kind' },
  { head: 'Saw length', right: true },
  { head: 'Narrowest', right: true }
];

const GAP = 2;

type Laid = JobNumbers['laid'][number];

/** The cut list of each area with the plan of what its pieces come out of, then the plan for all areas together. */
export function cutsText(
  { laid, nestedTogether }: Pick<JobNumbers, 'laid' | 'nestedTogether'>,
  { system, buying }: Pick<Job, 'system' | 'buying'>,
  colours: Colours
): string[] {
  const areas = laid.filter(one => one.laid !== undefined);
  const lists = areas.map(one => block(colours.strong(`Cuts of ${one.area.name}`), listText(one, system, colours)));
  const plans = areas.flatMap(one => areaPlan(one, nestedTogether));
  const together = nestedTogether === undefined ? [] : jobPlan(nestedTogether, areas);
  const how = [HOW_MARKED, SPLITTER, howParted(buying.sawCut, system), CUTTING_CAUTION];
  const sentences = how.flatMap(sentence => wrapped(sentence, SENTENCE_WIDTH));
  return [
    ...(plans.length + together.length === 0 ? [] : [block(colours.strong('Cutting'), sentences)]),
    ...lists,
    ...[...plans, ...together].map(([head, plan]) => block(colours.strong(head), plan))
  ];
}

/** What the plans go by. */
function howParted({ value, assumed }: Given, system: System): string {
  const why = assumed === undefined ? '' : ` (${assumed.because})`;
  return `Pieces are parted by straight cuts right through, ${printFine(value, system)} wide${why}; all lie face up.`;
}

function block(head: string, lines: readonly string[]): string {
  return [head, ...lines.map(line => (line === '' ? '' : `  ${line}`))].join('\n');
}

function listText({ area, laid }: Laid, system: System, colours: Colours): string[] {
  const { groups } = laid!.cuts.list;
  if (groups.length === 0) return ['Nothing is cut.'];
  const rows = groups.map(group => cutRow(group, unitNamed(area, group.unit).name, system));
  // The last line: the head may carry colours.
  const before = table(COLUMNS, rows, colours).at(-1)!.length;
  const width = Math.max(SENTENCE_WIDTH - before - GAP, LEAST_MARKING_WIDTH);
  const marked = groups.map((group, index) => [...rows[index]!, howMarked(group, width, system)]);
  return table([...COLUMNS, { head: 'How each is marked out' }], marked, colours);
}

/** Number, units, unit, kind, saw length and narrowest part of a group, as its columns have them. */
export function cutRow(
  { number, count, kind, straightCuts, sawLength, narrowest, offcutNarrowest }: CutGroup,
  unit: string,
  system: System
): string[] {
  return [
    String(number),
    String(count),
    unit,
    straightCuts > 1 ? `${straightCuts} straight` : kind,
    printAs('length', count * sawLength, system),
    printMarked(Math.min(narrowest, offcutNarrowest ?? Infinity), system)
  ];
}

/** The cuts of a unit in words; of several pieces each by itself. */
function howMarked(group: CutGroup, width: number, system: System): string {
  return markedLines(group, system)
    .flatMap(line => wrapped(line, width, '  '))
    .join('\n');
}

/** The same, a line for each piece. */
export function markedLines({ pieces }: CutGroup, system: System): string[] {
  const print = (metres: number): string => printMarked(metres, system);
  return pieces.map(({ markings }, index) => {
    const piece = pieces.length === 1 ? '' : `piece ${index + 1}: `;
    return piece + markingsText(markings, print);
  });
}

type Plan = readonly [head: string, lines: string[]];

/** The plan for one area alone: of units whose offcuts go nowhere else. */
function areaPlan({ area, laid }: Laid, together: NestedTogether | undefined): Plan[] {
  const elsewhere = new Set(together?.units.map(({ unit }) => unit));
  const own = (laid!.nested ?? []).filter(({ unit, used }) => used > 0 && !elsewhere.has(unit));
  const lists = { lists: [laid!.cuts.list] };
  const lines = own.map(one => cuttingPlanText(unitNamed(area, one.unit).name, one, lists));
  return lines.length === 0 ? [] : [[`Cutting plan of ${area.name}`, parted(lines)]];
}

/** The plan for all areas that cut a unit. */
function jobPlan({ areas, units }: NestedTogether, laid: readonly Laid[]): Plan[] {
  const inOrder = areas.map(key => laid.find(({ area }) => area.key === key)!);
  const lists = { lists: inOrder.map(one => one.laid!.cuts.list), areas };
  const lines = units.map(one => {
    const { area } = inOrder[one.pieces[0]!.list]!;
    return cuttingPlanText(unitNamed(area, one.unit).name, one, lists);
  });
  return [['Cutting plan of all areas together', parted(lines)]];
}

/** An empty line between parts. */
function parted(parts: readonly (readonly string[])[]): string[] {
  return parts.flatMap((part, index) => (index === 0 ? part : ['', ...part]));
}
