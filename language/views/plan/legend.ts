import type { Ink } from '../../drawing/inks.ts';
import { wrapped } from '../../drawing/lettering.ts';
import { type Tint, tintOf } from '../../drawing/tints.ts';
import { CUTTING_CAUTION, PIPES_CAUTION } from '../text/cautions.ts';
import { countsOf, countText, unitText } from './counts.ts';
import { ofTheFinish } from './heights-from.ts';
import { COLUMN } from './page.ts';
import type { PlanInput } from './plan-input.ts';
import type { PlanThing, ThingKind } from './plan-site.ts';
import { hasTangents } from './tangent-ticks.ts';
import { wholeInk } from './unit-shapes.ts';

/** One thing that the legend tells: a sign as it is drawn, and words. */
export interface LegendEntry {
  readonly sign?: Sign;
  readonly strong?: true;
  readonly lines: readonly string[];
}

export type Sign =
  | { readonly ink: Ink; readonly tint?: Tint; readonly text?: string }
  | { readonly line: 'edging' }
  | { readonly stroke: Ink }
  | { readonly leaf: true }
  | { readonly fall: true }
  | { readonly point: true }
  | { readonly tick: true }
  | { readonly dot: 'round' | 'diamond' }
  | { readonly arrow: true }
  | { readonly cross: true }
  | { readonly gone: true }
  | { readonly move: true }
  | { readonly mark: string };

/** mm on paper. */
export const LEGEND_SIZE = 2.6;
export const LEGEND_LINE = 3.7;
const ENTRY_GAP = 1.1;
export const SIGN_WIDTH = 8;
export const SIGN_GAP = 2;

/** Words as wide as the column leaves, with a sign or without; each text begins a line. */
export function entry(texts: string | readonly string[], rest: Omit<LegendEntry, 'lines'> = {}): LegendEntry {
  const width = COLUMN - 2 - (rest.sign ? SIGN_WIDTH + SIGN_GAP : 0);
  return { ...rest, lines: [texts].flat().flatMap(text => wrapped(text, width / LEGEND_SIZE)) };
}

/** What the legend of a printed plan of these areas tells, at any scale. */
export function legendEntries(input: PlanInput): LegendEntry[] {
  return [
    ...legendTold(input).map(({ texts, ...rest }) => entry(texts, rest)),
    entry('Before taking measures from a print, check the bar with a rule.'),
    ...(hasCuts(input) ? [entry(CUTTING_CAUTION)] : [])
  ];
}

/** The same free of any paper: a sign as it is drawn, and texts that each begin a line. */
export interface LegendTold {
  readonly sign?: Sign;
  readonly strong?: true;
  readonly texts: readonly string[];
}

/** What there is on a plan of these areas. The caution about cutting is left to who shows it. */
export function legendTold(input: PlanInput): LegendTold[] {
  const { areas } = input;
  const kept = areas.flatMap(area => area.keptOut).some(({ kind }) => kind === 'box' || kind === 'pit');
  const edgings = new Set(areas.flatMap(area => area.sides.flatMap(({ edging }) => edging ?? [])));
  const inRings = areas.some(({ start }) => start?.inRings);
  const inCourses = areas.some(({ start }) => start && !start.inRings);
  return [
    ...areas.flatMap(area => unitEntries(input, area)),
    ...missingEntries(input),
    ...(hasCuts(input) ? [told(numberedText(areas.length), { sign: { ink: 'cut', text: '1' } })] : []),
    ...(kept ? [told('kept out: nothing is laid there', { sign: { ink: 'kept-out' } })] : []),
    ...[...edgings].map(name => told(`edging ${name}`, { sign: { line: 'edging' } })),
    ...(inCourses ? [told('start and way of the courses', { sign: { arrow: true } })] : []),
    ...(inRings ? [told('centre of the rings', { sign: { cross: true } })] : []),
    ...(areas.some(hasTangents) ? [told('tick: a curve begins or ends there', { sign: { tick: true } })] : []),
    ...siteEntries(input)
  ];
}

export function hasCuts({ areas }: PlanInput): boolean {
  return areas.some(area => area.parts.some(({ laid }) => laid.cuts.length > 0));
}

function told(texts: string | readonly string[], rest: Omit<LegendTold, 'texts'> = {}): LegendTold {
  return { ...rest, texts: [texts].flat() };
}

/** Signs of what stands or lies there, for kinds that there are. */
const THINGS: readonly { readonly kinds: readonly ThingKind[]; readonly sign: Sign; readonly words: string }[] = [
  { kinds: ['channel', 'gully'], sign: { ink: 'drain' }, words: 'drain' },
  { kinds: ['outlet'], sign: { dot: 'round' }, words: 'outlet of a drain' },
  { kinds: ['gate', 'door'], sign: { leaf: true }, words: 'gate or door, shut; in broken lines its swing' },
  { kinds: ['buried box'], sign: { ink: 'below' }, words: 'cut down and buried' },
  { kinds: ['soft spot'], sign: { ink: 'soft-spot' }, words: 'soft spot, dug deeper' },
  { kinds: ['old paving'], sign: { ink: 'broken-out' }, words: 'old paving, broken out' },
  { kinds: ['break line'], sign: { stroke: 'break-line' }, words: 'break line of the ground' },
  { kinds: ['route'], sign: { stroke: 'route' }, words: 'route' },
  { kinds: ['section'], sign: { stroke: 'section' }, words: 'section, drawn by its name' },
  { kinds: ['set-out point'], sign: { dot: 'diamond' }, words: 'set-out point outside the dig' }
];

function siteEntries({ site }: PlanInput): LegendTold[] {
  if (site === undefined) return [];
  const { points, falls, things, heights } = site;
  const of = (...kinds: readonly ThingKind[]): readonly PlanThing[] =>
    things.filter(({ kind }) => kinds.includes(kind));
  const pipes = of('pipe').map(({ labels }) => told(labels[0] ?? '', { sign: { stroke: 'pipe' } }));
  const noDig = of('no dig').map(thing => told(thing.told, { sign: { stroke: 'no-dig' } }));
  return [
    ...(points.some(({ name }) => name !== undefined) ? [told('point', { sign: { point: true } })] : []),
    ...(heights === undefined ? [] : [told(ofTheFinish(heights))]),
    ...(falls.length === 0 ? [] : [told('steepest fall, downhill', { sign: { fall: true } })]),
    ...THINGS.filter(({ kinds }) => of(...kinds).length > 0).map(({ sign, words }) => told(words, { sign })),
    ...noDig,
    ...pipes,
    ...(pipes.length === 0 ? [] : [told(PIPES_CAUTION)])
  ];
}

function numberedText(areas: number): string {
  return areas > 1 ? 'cut, numbered as in the cut list of its area' : 'cut, numbered as in the cut list';
}

function unitEntries({ units }: PlanInput, area: PlanInput['areas'][number]): LegendTold[] {
  const counts = area.parts.flatMap(part =>
    countsOf(part, units).map(count => {
      const tint = tintOf(count.unit.colour);
      const sign = { ink: wholeInk(part), ...(tint === undefined ? {} : { tint }) };
      return told([`${part.name}: ${unitText(count.unit)}`, countText(count)], { sign });
    })
  );
  const { name, noNumbers } = area;
  const why = noNumbers === undefined ? [] : [told(`no numbers: ${noNumbers}`, { sign: { ink: 'outline-only' } })];
  return [told(`Area ${name}`, { strong: true }), ...counts, ...why];
}

function missingEntries({ missing }: PlanInput): LegendTold[] {
  return missing.length === 0 ? [] : [told('No numbers', { strong: true }), ...missing.map(one => told(one))];
}

/** What depends on the scale: sides with no room for their words, and numbers that found none. */
export function notesOf(
  sides: readonly { readonly mark: string; readonly text: string }[],
  { alike, without }: { readonly alike: number; readonly without: number }
): LegendEntry[] {
  return [
    ...sides.map(({ mark, text }) => entry(text, { sign: { mark } })),
    ...(alike === 0
      ? []
      : [entry('A small piece without a number is like the nearest one of its shape that has one.')]),
    ...(without === 0 ? [] : [entry(withoutText(without))])
  ];
}

function withoutText(without: number): string {
  const pieces =
    without === 1
      ? '1 piece is too small here for its number'
      : `${without} pieces are too small here for their numbers`;
  return `${pieces}: see the cut list.`;
}

/** Height of an entry and the gap under it, mm on paper. */
export function entryHeight({ lines }: LegendEntry): number {
  return lines.length * LEGEND_LINE + ENTRY_GAP;
}

export function heightOf(entries: readonly LegendEntry[]): number {
  return entries.reduce((sum, one) => sum + entryHeight(one), 0);
}
