import type { AstNode } from 'langium';
import type { LevelledThing } from '../job/heights.ts';
import type { Edge, Key, Meets } from '../job/job.ts';
import * as ast from '../syntax/generated/ast.ts';
import { MOST_SIDES } from '../syntax/limits.ts';
import { nearest } from '../syntax/nearest.ts';
import { beginsLine, endOfLine, indentAt, lineBreakOf } from '../syntax/text-edit.ts';
import { KEYWORD, type Context, type Property } from './context.ts';
import { EdgeClauses, type EdgeSaid } from './edge-clauses.ts';
import type { GapInText } from './gap.ts';
import type { Heights } from './heights.ts';
import { keyOf } from './keys.ts';
import type { Declared, Kind, SpecText } from './names.ts';
import type { NamedOutline } from './outlines.ts';
import { writing, type SaidFix } from './said-fix.ts';
import { saidAgain, saidOnce, takingOut } from './said-once.ts';
import { spanOf } from './text-changes.ts';
import type { Things } from './things.ts';

interface Said {
  readonly item: ast.EdgeItem;
  readonly meets: Meets | undefined;
  readonly clauses: EdgeSaid;
}

/** The statement `edges` of an area, if it has one, and where else a side is placed. */
export interface EdgesToRead {
  readonly text: SpecText;
  readonly key: Key;
  readonly node: ast.Edges | undefined;
  readonly outlineNode: ast.Outline;
}

/** Reads what each side of an area meets. */
export class Edges {
  private readonly context: Context;
  private readonly things: Things;
  private readonly clauses: EdgeClauses;

  constructor(context: Context, things: Things, heights: Heights) {
    this.context = context;
    this.things = things;
    this.clauses = new EdgeClauses(context, things, heights);
  }

  /** One for each side; `levelled`: things that are there and whose heights were taken. */
  read(
    { text, key, node, outlineNode }: EdgesToRead,
    outline: NamedOutline,
    levelled: readonly LevelledThing[]
  ): Edge[] {
    const { sideNames } = outline;
    const bySide = new Map<number, Said>();
    const items = node?.items ?? [];
    const rest = items.filter(item => item.where?.rest);
    for (const item of [...items.filter(item => !item.where?.rest), ...rest]) {
      if (item.where === undefined) continue;
      const said: Said = {
        item,
        meets: this.meets(text, key, item, levelled),
        clauses: this.clauses.read(text, key, `${key}/edge-${items.indexOf(item) + 1}`, item)
      };
      const sides = item.where.rest
        ? sideNames.map((_, side) => side).filter(side => !bySide.has(side))
        : this.sides(text, key, item.where, outline);
      if (rest.indexOf(item) > 0)
        this.context.fault(text, key, item.where, 'edge-said-twice', '`the rest` is said twice. Take one out.', {
          harmless: true,
          fixes: [takingOut(this.context, text, item, { like: rest[0]! })]
        });
      for (const side of sides) {
        const first = bySide.get(side);
        if (first === undefined) bySide.set(side, said);
        else if (first.item !== item)
          this.context.fault(
            text,
            key,
            item.where,
            'edge-said-twice',
            `The side ${sideNames[side]!} is said twice; the first counts.`,
            {
              harmless: true,
              related: [{ node: first.item, text, message: 'Said first here.' }],
              fixes: this.saidTwiceFixes(text, first.item, item, [sides, side], outline)
            }
          );
      }
    }
    this.gaps(text, key, node, bySide, outline);
    return sideNames.map((name, side) => {
      const said = bySide.get(side);
      const edgeKey = this.context.place(
        `${key}/edges/${name}`,
        text,
        said?.item ?? node ?? outlineNode,
        said === undefined ? KEYWORD : undefined
      );
      return {
        name,
        key: edgeKey,
        ...(said?.meets === undefined ? {} : { meets: said.meets }),
        ...(said?.clauses ?? { flush: false })
      };
    });
  }

  /** The whole statement goes if it speaks of that side alone, else the side goes from its list. */
  private saidTwiceFixes(
    text: SpecText,
    first: ast.EdgeItem,
    item: ast.EdgeItem,
    [sides, side]: readonly [sides: readonly number[], side: number],
    { sideNames }: NamedOutline
  ): SaidFix[] {
    const name = sideNames[side]!;
    if (sides.every(other => sideNames[other] === name)) return [takingOut(this.context, text, item, { like: first })];
    const at = item.where.sides.indexOf(name);
    return at < 0 ? [] : [takingOut(this.context, text, item.where, { property: ['sides', at] })];
  }

  /** Where it can be written what a side meets: that of which nothing is said, and that which is to meet something else. */
  private gaps(
    text: SpecText,
    key: Key,
    node: ast.Edges | undefined,
    bySide: ReadonlyMap<number, Said>,
    { sideNames }: NamedOutline
  ): void {
    const { changes } = this.context;
    if (node !== undefined)
      changes.gap(`${key}/sides`, text, node, node.items.at(-1), { commas: false, secondColumn: 'meets' });
    else changes.wrapGap(`${key}/edges`, `${key}/sides`, ['edges { ', ' }']);
    for (const [side, { item }] of bySide) {
      const name = sideNames[side]!;
      const isAlone = [...bySide].every(([other, said]) => said.item !== item || sideNames[other] === name);
      const gap = isAlone ? overThing(item) : item.where.rest ? lineBefore(text, item, name) : undefined;
      if (gap !== undefined) changes.gapAt(`${key}/edges/${name}/thing`, text, gap);
    }
  }

  // ---- which sides ----

  /** The sides, from nought in the order of the outline, that a person means; `the rest` is none here. */
  sides(text: SpecText, key: Key, where: ast.EdgeWhere, outline: NamedOutline): number[] {
    const { sideNames, form } = outline;
    if (where.round) return sideNames.map((_, side) => side);
    if (where.legs.length > 0) return where.legs.flatMap(range => this.legs(text, key, range, outline));
    if (where.points.length > 0) return this.chain(text, key, where, outline);
    saidAgain(this.context, text, key, where, 'sides', where.sides);
    return where.sides.flatMap((name, index) => {
      const sides = form === 'rectangle' || form === 'strip' ? sidesNamed(sideNames, name) : [];
      if (sides.length === 0) this.noSuchSide(text, key, where, ['sides', index], name, outline);
      return sides;
    });
  }

  /** The sides that legs of a walk are, by their numbers. */
  legs(text: SpecText, key: Key, range: ast.LegRange, outline: NamedOutline): number[] {
    const first = Number(range.first);
    const last = range.last === undefined ? first : Number(range.last);
    const sides: number[] = [];
    for (let leg = first; leg <= last && leg <= first + outline.sideNames.length; leg++) {
      const found = sidesNamed(outline.sideNames, `leg ${leg}`);
      if (found.length === 0) {
        this.noSuchSide(text, key, range, undefined, `leg ${leg}`, outline);
        return sides;
      }
      sides.push(...found);
    }
    if (sides.length === 0)
      this.noSuchSide(text, key, range, undefined, `leg ${range.first} to ${range.last ?? range.first}`, outline);
    return sides;
  }

  /** `A to B to C`: the sides from point to point, named in either direction. */
  private chain(text: SpecText, key: Key, where: ast.EdgeWhere, outline: NamedOutline): number[] {
    const names = where.points.map(point => point.$refText);
    for (const [index, name] of names.entries())
      if (this.context.find(text, key, where, ['points', index], name, ['point']) === undefined) return [];
    const sides: number[] = [];
    for (let index = 1; index < names.length; index++) {
      const [from, to] = [names[index - 1]!, names[index]!];
      const there = sidesNamed(outline.sideNames, `${from} to ${to}`);
      const found = there.length > 0 ? there : sidesNamed(outline.sideNames, `${to} to ${from}`);
      if (found.length === 0)
        this.noSuchSide(text, key, where, ['points', index - 1, index], `${from} to ${to}`, outline);
      sides.push(...found);
    }
    return sides;
  }

  private noSuchSide(
    text: SpecText,
    key: Key,
    node: ast.EdgeWhere | ast.LegRange,
    property: Property | undefined,
    name: string,
    outline: NamedOutline
  ): void {
    const known = [...new Set(outline.sideNames)];
    this.context.fault(
      text,
      key,
      node,
      'no-such-side',
      `The outline has no side ${name}. Its sides are: ${known.slice(0, 12).join(', ')}${known.length > 12 ? ', …' : ''}.`,
      { ...(property === undefined ? {} : { property }), fixes: this.sideFixes(node, property, name, known) }
    );
  }

  /** The side that is nearly called so, else those of which nothing is said yet, if they are few. */
  private sideFixes(
    node: ast.EdgeWhere | ast.LegRange,
    property: Property | undefined,
    name: string,
    known: readonly string[]
  ): SaidFix[] {
    if (ast.isLegRange(node) && node.last !== undefined) return [];
    if (property !== undefined && ast.isEdgeWhere(node) && node.points.length > 2) return [];
    const near = nearest(name, known);
    if (near !== undefined) return [writing(near)];
    const edges = (ast.isLegRange(node) ? node.$container : node).$container.$container;
    if (!ast.isEdges(edges)) return known.length > MOST_SIDES_OFFERED ? [] : known.map(writing);
    if (edges.items.length > MOST_SIDES) return [];
    const said = new Set(
      edges.items.flatMap(({ where }) => [...where.sides, ...nameOfChain(where), ...namesOfLegs(where)])
    );
    const free = known.filter(side => !said.has(side));
    return free.length > MOST_SIDES_OFFERED ? [] : free.map(writing);
  }

  // ---- what they meet ----

  /** A neighbour that is unknown or broken doesn't break this area: the side then counts as closed and held. */
  private meets(text: SpecText, key: Key, item: ast.EdgeItem, levelled: readonly LevelledThing[]): Meets | undefined {
    const name = item.thing?.$refText;
    const seen = name !== undefined && MEETABLE.some(kind => this.context.names.find(text, kind, name) !== undefined);
    if (name !== undefined && !seen && this.context.names.neighbour(name) !== undefined) return neighbour(name);
    const { value: found, broken } = this.context.watch(() =>
      this.context.find(text, key, item, 'thing', name, MEETABLE, { otherwise: () => this.existing(text, item, name) })
    );
    if (name === undefined) {
      this.context.breaks(key);
      return undefined;
    }
    if (found === undefined) return { name, openGround: false, holds: true, unknown: true };
    if (found.kind === 'area') return neighbour(name);
    if (found.kind === 'drain') return { name, openGround: false, holds: true, drain: keyOf(found) };
    for (const thing of broken) this.context.breaks(thing);
    const kind = found.kind === 'side-kind' ? found : this.kindOfExisting(found);
    const side = kind && this.sideKind(kind, name);
    if (kind === undefined || side === undefined || found.kind === 'side-kind') return side;
    const existing = keyOf(found);
    const heights = levelled.find(thing => thing.key === existing)?.spots;
    return { ...side, existing, kind: kind.name, ...(heights === undefined ? {} : { heights }) };
  }

  /** Something that is there already can be declared right before the area. */
  private existing(text: SpecText, item: ast.EdgeItem, name: string | undefined): SaidFix[] {
    let area: AstNode = item;
    while (area.$container !== undefined && !ast.isArea(area)) area = area.$container;
    const { start } = spanOf(area);
    const lineBreak = lineBreakOf(text.parsed.text);
    const edit = { start, end: start, text: `existing ${name ?? ''}${lineBreak}${lineBreak}` };
    return [{ title: `Declare \`existing ${name ?? ''}\``, does: [this.context.changes.change(text, edit)] }];
  }

  /** Tells the faults of a kind of side, or of something existing. */
  check(declared: Declared): void {
    const kind = declared.kind === 'side-kind' ? declared : this.kindOfExisting(declared);
    if (kind !== undefined) this.sideKind(kind, declared.name);
  }

  private kindOfExisting(found: Declared): Declared | undefined {
    const node = found.node as ast.Existing;
    // It may have several edges.
    const once = node.items.filter(item => !ast.isMeasuredEdge(item));
    const said = saidOnce(this.context, found.text, `existing:${node.name}`, once, item =>
      ast.isExistingMeasure(item) ? (item.what ?? '') : item.$type
    );
    const item = said.get('ExistingKind') as ast.ExistingKind | undefined;
    const name = item === undefined ? 'existing-paving' : item.kind?.$refText;
    return this.context.find(found.text, `existing:${node.name}`, item ?? node, 'kind', name, ['side-kind']);
  }

  private sideKind(found: Declared, name: string): Meets | undefined {
    const node = found.node as ast.SideKind;
    const key = `side-kind:${node.name}`;
    const said = saidOnce(this.context, found.text, key, node.items, item => item.what ?? '');
    const word = <T extends string>(what: string, known: readonly T[]): T | undefined => {
      const item = said.get(what);
      if (item === undefined)
        return this.context.incomplete(
          found.text,
          key,
          node,
          `The kind of side ${node.name} does not say \`${what}\`. Write \`${what} ${known[0]!}\` or \`${what} ${known[1]!}\`.`,
          this.things.sayings(
            found.text,
            key,
            node,
            node.items.at(-1),
            known.map(say => `${what} ${say}`)
          )
        );
      return this.context.word(found.text, key, item, 'word', item.word, known);
    };
    const ground = word('ground', ['open', 'closed'] as const);
    const holds = word('holds', ['paving', 'nothing'] as const);
    return ground && holds && { name, openGround: ground === 'open', holds: holds === 'paving' };
  }
}

/** More sides to choose from help nobody. */
const MOST_SIDES_OFFERED = 4;

function nameOfChain({ points }: ast.EdgeWhere): string[] {
  return points.slice(1).flatMap((to, at) => {
    const [one, other] = [points[at]!.$refText, to.$refText];
    return [`${one} to ${other}`, `${other} to ${one}`];
  });
}

function namesOfLegs({ legs }: ast.EdgeWhere): string[] {
  return legs.flatMap(({ first, last }) => {
    const count = Math.min(Number(last ?? first) - Number(first) + 1, MOST_SIDES);
    return Array.from({ length: Math.max(0, count) }, (_, index) => `leg ${Number(first) + index}`);
  });
}

/** From the thing met to the end of the statement. */
function overThing(item: ast.EdgeItem): GapInText | undefined {
  if (item.thing === undefined) return undefined;
  return { start: spanOf(item, 'thing').start, end: spanOf(item).end, ...NOTHING_AROUND };
}

/** A line for one side above the one for the rest. */
function lineBefore(text: SpecText, item: ast.EdgeItem, name: string): GapInText | undefined {
  const source = text.parsed.text;
  const { start } = spanOf(item);
  const indent = indentAt(source, start);
  if (!beginsLine(source, start)) return undefined;
  const rest = /^.*?[ \t]+(?=meets\b)/.exec(source.slice(start, endOfLine(source, start)))?.[0] ?? '';
  const head = name.padEnd(rest.length - 1);
  return { ...NOTHING_AROUND, start, end: start, before: `${head} meets `, after: lineBreakOf(source) + indent };
}

const NOTHING_AROUND = { before: '', between: '', after: '', column: 0 };

const MEETABLE: readonly Kind[] = ['existing', 'area', 'side-kind', 'drain'];

function neighbour(name: string): Meets {
  return { name, area: `area:${name}`, openGround: false, holds: true };
}

function sidesNamed(names: readonly string[], name: string): number[] {
  return names.flatMap((other, side) => (other === name ? [side] : []));
}
