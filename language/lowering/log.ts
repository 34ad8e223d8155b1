import type { Key, Missing } from '../job/job.ts';
import type { Delivered, Done, LogEntry, Measured, MeasuredLayer, SoftSpot, Stage } from '../job/log.ts';
import * as ast from '../syntax/generated/ast.ts';
import type { Expression } from './amounts.ts';
import { ANY, NOT_NEGATIVE, type Context } from './context.ts';
import { checkDay } from './days.ts';
import type { Heights } from './heights.ts';
import { zOf } from '../job/heights.ts';
import { keyOf } from './keys.ts';
import type { SpecText } from './names.ts';
import type { Packs } from './packs.ts';
import type { Points } from './points.ts';
import { saidAgain, saidOnce } from './said-once.ts';
import type { SoftSpots } from './soft-spots.ts';

type MeasuredHeights = Extract<Measured, { readonly kind: 'height' }>;

/** What a log came to; `broken`: keys of areas that a soft spot which can't be read may lie in. */
export interface ReadLog {
  readonly entries: readonly LogEntry[];
  readonly broken: readonly Key[];
}

const STAGES = [
  'dig',
  'geotextile',
  'edging',
  'sub-base',
  'base',
  'bed',
  'paving',
  'joints'
] as const satisfies readonly Stage[];

const LAYERS = ['dig', 'sub-base', 'base', 'bed', 'as-laid', 'finish'] as const satisfies readonly MeasuredLayer[];

/** Reads what was delivered, done, measured and met on the way. */
export class Logs {
  private readonly context: Context;
  private readonly points: Points;
  private readonly heights: Heights;
  private readonly softSpots: SoftSpots;
  private readonly packs: Packs;
  private readonly countOf = new Map<string, number>();

  constructor(context: Context, points: Points, heights: Heights, softSpots: SoftSpots, packs: Packs) {
    this.context = context;
    this.points = points;
    this.heights = heights;
    this.softSpots = softSpots;
    this.packs = packs;
  }

  /** All entries in the order of the text. */
  read(texts: readonly SpecText[], missing: Missing[]): ReadLog {
    const entries: LogEntry[] = [];
    const broken: Key[] = [];
    for (const text of texts)
      for (const node of text.parsed.root.elements.filter(ast.isLog)) {
        if (this.context.isBroken(text, node)) missing.push({ key: 'log', name: 'the log', because: 'log' });
        else for (const line of node.items) this.line(text, line, entries, broken);
      }
    return { entries, broken };
  }

  private line(text: SpecText, line: ast.LogLine, entries: LogEntry[], broken: Key[]): void {
    const { context } = this;
    const { date } = line;
    checkDay(context, text, `log:${date}`, line, 'date', date);
    for (const said of this.entriesOf(text, line)) {
      const { node } = said;
      const key = context.place(`log:${date}-${this.next(date)}`, text, node);
      const read = context.watch(() => this.entry(text, key, said));
      if (read.value !== undefined && read.broken.length === 0) entries.push({ ...read.value, key, date });
      else if (ast.isSoftSpot(node)) broken.push(...this.softSpots.areasOf(text, node).map(keyOf));
    }
  }

  /** Each entry with what goes on with it behind commas. */
  private entriesOf(text: SpecText, line: ast.LogLine): SaidEntry[] {
    const entries: SaidEntry[] = [];
    for (const node of line.entries) {
      if (!isMore(node)) {
        entries.push({ node, more: [] });
        continue;
      }
      const goesOn = GOES_ON[node.$type];
      const entry = entries.findLast(one => goesOn.with(one.node));
      if (entry !== undefined) entry.more.push(node);
      else this.goesOnWithNothing(text, `log:${line.date}`, node, goesOn.message);
    }
    return entries;
  }

  private next(date: string): number {
    const count = (this.countOf.get(date) ?? 0) + 1;
    this.countOf.set(date, count);
    return count;
  }

  private entry(
    text: SpecText,
    key: Key,
    { node, more }: SaidEntry
  ): Delivered | Done | Measured | SoftSpot | undefined {
    if (ast.isDelivered(node)) return this.delivered(text, key, node, more.filter(ast.isBatch));
    if (ast.isDone(node)) return this.done(text, key, node);
    if (ast.isMeasured(node)) return this.measured(text, key, node, more.filter(ast.isMeasuredHeight));
    return this.softSpots.read(text, key, node, more.filter(ast.isSoftSpotClause));
  }

  private goesOnWithNothing(text: SpecText, key: Key, node: More, message: string): void {
    this.context.fault(text, key, node, 'clause-does-not-fit', message, { harmless: true });
  }

  // ---- delivered and done ----

  private delivered(
    text: SpecText,
    key: Key,
    node: ast.Delivered,
    batches: readonly ast.Batch[]
  ): Delivered | undefined {
    const { context } = this;
    const batch = saidOnce(context, text, key, batches, () => 'batch').get('batch')?.batch;
    const found = context.find(text, key, node, 'thing', node.thing?.$refText, ['material', 'unit']);
    if (found === undefined) return undefined;
    const written = { amount: node.amount as Expression | undefined, pack: node.pack };
    const read = this.packs.soMuch(text, `${key}/amount`, found, written);
    if (read === undefined) return undefined;
    return {
      kind: 'delivered',
      thing: keyOf(found),
      name: found.name,
      ...read,
      measure: read.measure === 'piece' ? '' : read.measure,
      ...(batch === undefined ? {} : { batch })
    };
  }

  private done(text: SpecText, key: Key, node: ast.Done): Done | undefined {
    const stage = this.context.word(text, key, node, 'stage', node.stage, STAGES);
    const names = node.areas.map(area => area.$refText);
    saidAgain(this.context, text, key, node, 'areas', names);
    const areas = names.map((name, index) => this.context.find(text, key, node, ['areas', index], name, ['area']));
    const line = node.line && this.points.line(text, key, node.line);
    if (stage === undefined || areas.includes(undefined)) return undefined;
    if (node.line !== undefined && line === undefined) return undefined;
    return {
      kind: 'done',
      stage,
      areas: [...new Set(areas.map(area => keyOf(area!)))],
      ...(line === undefined ? {} : { along: line.name })
    };
  }

  // ---- measured ----

  private measured(
    text: SpecText,
    key: Key,
    node: ast.Measured,
    further: readonly ast.MeasuredHeight[]
  ): Measured | undefined {
    const { context } = this;
    const area = this.area(text, key, node);
    const of = area === undefined ? {} : { area };
    if (node.gap !== undefined) {
      const gap = context.given(text, `${key}/gap`, node.gap as Expression, 'm', NOT_NEGATIVE);
      const straightedge = context.given(text, `${key}/straightedge`, node.straightedge as Expression | undefined, 'm');
      return gap && straightedge && { kind: 'gap', gap, straightedge, ...of };
    }
    if (node.slope !== undefined) {
      const slope = context.given(text, `${key}/slope`, node.slope as Expression, '', ANY);
      const line = this.points.line(text, key, node.line);
      return slope && line && { kind: 'slope', slope, from: line.from, to: line.to, along: line.name, ...of };
    }
    const layer = context.word(text, key, node, 'layer', node.layer, LAYERS);
    const all = [node.first, ...further].filter(one => one !== undefined);
    const at = all.flatMap((one, index) => this.height(text, `${key}/at-${index + 1}`, one) ?? []);
    return layer && { kind: 'height', layer, at, ...of };
  }

  /** The area said, or the only one there is. */
  private area(text: SpecText, key: Key, node: ast.Measured): Key | undefined {
    const found = node.area && this.context.find(text, key, node, 'area', node.area.$refText, ['area']);
    if (node.area !== undefined) return found && keyOf(found);
    const [only, ...others] = this.context.names.areas();
    return only === undefined || others.length > 0 ? undefined : keyOf(only);
  }

  private height(text: SpecText, key: Key, node: ast.MeasuredHeight): MeasuredHeights['at'][number] | undefined {
    const name = node.at?.$refText;
    const point = this.points.named(text, key, node, 'at', name);
    const height = this.heights.read(text, key, node.height);
    return point && height && { name: name!, point, height, z: zOf(height) };
  }
}

type More = ast.Batch | ast.MeasuredHeight | ast.SoftSpotClause;

interface SaidEntry {
  readonly node: Exclude<ast.LogEntry, More>;
  readonly more: More[];
}

function isMore(node: ast.LogEntry): node is More {
  return Object.hasOwn(GOES_ON, node.$type);
}

const GOES_ON: Readonly<
  Record<More['$type'], { readonly with: (node: ast.LogEntry) => boolean; readonly message: string }>
> = {
  Batch: {
    with: ast.isDelivered,
    message: 'Say before it what was delivered: `delivered block 430, batch "K-114"`.'
  },
  MeasuredHeight: {
    with: node => ast.isMeasured(node) && node.first !== undefined,
    message:
      'Say before it what was measured: `measured base at …`. Only behind a comma does a height go on with the one before it.'
  },
  SoftSpotClause: {
    with: ast.isSoftSpot,
    message: 'This tells of a soft spot, and none stands before it. Write `soft-spot` and its size first.'
  }
};
