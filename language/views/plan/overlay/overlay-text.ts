import type { System } from '../../../job/job.ts';
import { printAs, printLength } from '../../../measures/print.ts';
import { PIPES_CAUTION } from '../../text/cautions.ts';
import type { Colours } from '../../text/colours.ts';
import { plainLine } from '../../text/plain-line.ts';
import { table } from '../../text/table.ts';
import { SENTENCE_WIDTH, wrapped } from '../../text/wrapped.ts';
import type { PlanInput } from '../plan-input.ts';
import { areaLabel, called, markLabels, pointLabel, toldFromTo } from './change-words.ts';
import { lengthOf } from './edging-changes.ts';
import type { OverlayWords } from './overlay-drawing.ts';
import { NOTHING_ON_PLAN } from './overlay-legend.ts';
import { type PlanChanges, planChanges } from './plan-changes.ts';

/** What the plan with before and after over each other shows, in words. */
export function overlayText(
  before: PlanInput | undefined,
  after: PlanInput | undefined,
  { title, between, system }: OverlayWords,
  colours: Colours
): string {
  const changes = planChanges(before, after);
  const head = `${colours.strong(plainLine(`Plan of ${title}`))}${colours.faint(plainLine(` · ${between}`))}`;
  const { marks, notDrawn, differs } = changes;
  const hasPipes = marks.some(({ fate, after: now, before: old }) => fate !== 'stays' && (now ?? old)!.kind === 'pipe');
  return [
    head,
    ...(differs ? [] : [NOTHING_ON_PLAN]),
    ...block('Areas', areasTable(changes, system, colours), colours),
    ...block('Ground that goes from one area to another', passedLines(changes, system), colours),
    ...block('Laid otherwise', layingLines(changes), colours),
    ...block('Edging', edgingTable(changes, system, colours), colours),
    ...block('Boxes, drains, gates and the like', markLines(changes, system), colours),
    ...block('Points and heights', pointsTable(changes, system, colours), colours),
    ...heightsBlock(changes),
    ...(notDrawn.length === 0 ? [] : [notDrawn.flatMap(line => wrapped(plainLine(line), SENTENCE_WIDTH)).join('\n')]),
    ...(hasPipes ? [PIPES_CAUTION] : [])
  ].join('\n\n');
}

function block(heading: string, lines: readonly string[], colours: Colours): string[] {
  return lines.length === 0 ? [] : [[colours.strong(heading), ...lines.map(line => `  ${line}`)].join('\n')];
}

function areasTable({ areas, ground }: PlanChanges, system: System, colours: Colours): string[] {
  const print = (size: number | undefined): string => (size === undefined ? '' : printAs('area', size, system));
  const of = (all: PlanChanges['ground']['given'], key: string): string =>
    print(all.find(one => one.key === key)?.size);
  const rows = areas
    .filter(({ fate, isOutlineSame, calledBefore }) => fate !== 'stays' && !(isOutlineSame && !calledBefore))
    .map(({ key, name, calledBefore, fate, size }) => [
      plainLine(called(name, calledBefore)),
      fate === 'comes' ? 'new' : fate === 'goes' ? 'gone' : fate === 'unknown' ? 'not known' : '',
      print(size.before),
      print(size.after),
      of(ground.given, key),
      of(ground.added, key)
    ]);
  if (rows.length === 0) return [];
  const heads = ['Within the outline', '', 'Before', 'After', 'Given up', 'Added'];
  return table(
    heads.map((head, index) => ({ head, right: index > 1 })),
    rows,
    colours
  );
}

function passedLines({ ground }: PlanChanges, system: System): string[] {
  return ground.passed.map(({ name, to, size }) => plainLine(`${printAs('area', size, system)} of ${name} to ${to}`));
}

function layingLines({ areas }: PlanChanges): string[] {
  return areas.flatMap(({ name, laying }) => laying.map(line => plainLine(`${name}: ${line}`)));
}

function edgingTable({ edgings }: PlanChanges, system: System, colours: Colours): string[] {
  const rows = edgings
    .filter(({ gone, come }) => gone.length + come.length > 0)
    .map(({ area, edging, gone, come }) => [
      plainLine(edging),
      plainLine(area),
      gone.length === 0 ? '' : printLength(lengthOf(gone), system),
      come.length === 0 ? '' : printLength(lengthOf(come), system)
    ]);
  const heads = ['Edging', 'Round', 'Gone', 'New'];
  return rows.length === 0
    ? []
    : table(
        heads.map((head, index) => ({ head, right: index > 1 })),
        rows,
        colours
      );
}

function markLines({ marks }: PlanChanges, system: System): string[] {
  return marks
    .filter(({ fate }) => fate !== 'stays')
    .map(mark => {
      const [label] = markLabels(mark, system);
      const told = mark.isWhereItWas ? undefined : toldFromTo(mark);
      return plainLine(told === undefined ? label! : `${label!}; ${told}`);
    });
}

function pointsTable({ points }: PlanChanges, system: System, colours: Colours): string[] {
  const rows = points
    .filter(({ fate }) => fate !== 'stays')
    .map(point => {
      const { name, at, heights } = point;
      const corner = `corner at (${printLength(at.x, system)}, ${printLength(at.y, system)})`;
      return [plainLine(name === undefined ? corner : pointLabel(point, system)), plainLine(heights.join(', '))];
    });
  return rows.length === 0 ? [] : table([{ head: 'Point' }, { head: 'Finish' }], rows, colours);
}

function heightsBlock({ heightsFrom }: PlanChanges): string[] {
  if (heightsFrom === undefined) return [];
  return [`Before: ${plainLine(heightsFrom.before)}\nAfter: ${plainLine(heightsFrom.after)}`];
}

/** The same in a few sentences, for who cannot see the drawing. */
export function overlaySentences(changes: PlanChanges, system: System): string[] {
  if (!changes.differs) return [NOTHING_ON_PLAN];
  const { areas, edgings, marks, points } = changes;
  const changed = ({ fate }: { readonly fate: string }): boolean => fate !== 'stays';
  return [
    ...areas.filter(changed).map(area => `Area ${areaLabel(area, system).join(', ')}.`),
    ...edgings.flatMap(({ area, edging, gone, come }) => {
      const told = [
        ...(gone.length === 0 ? [] : [`${printLength(lengthOf(gone), system)} gone`]),
        ...(come.length === 0 ? [] : [`${printLength(lengthOf(come), system)} new`])
      ];
      return told.length === 0 ? [] : [`Edging ${edging} of ${area}: ${told.join(', ')}.`];
    }),
    ...marks.filter(changed).map(mark => sentence(markLabels(mark, system)[0]!)),
    ...points.filter(changed).map(point => {
      const heights = point.heights.length === 0 ? '' : `: ${point.heights.join(', ')}`;
      return `${point.name === undefined ? 'A corner' : `Point ${pointLabel(point, system)}`}${heights}.`;
    })
  ];
}

function sentence(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;
}
