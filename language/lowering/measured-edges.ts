import type { AstNode } from 'langium';
import { distance, type Point, type Side, signedAreaOf } from '../geometry/index.ts';
import { SAME_POINT } from '../geometry/moved-side.ts';
import type { Edge, Key } from '../job/job.ts';
import { printLength } from '../measures/print.ts';
import { type OffsetAt, withMeasuredEdges } from '../setting-out/measured-edge.ts';
import * as ast from '../syntax/generated/ast.ts';
import type { Expression } from './amounts.ts';
import { NOT_NEGATIVE, type Context } from './context.ts';
import type { Declared, SpecText } from './names.ts';
import type { NamedOutline } from './outlines.ts';
import type { PointLine, Points } from './points.ts';
import { takingOut } from './said-once.ts';

/** An edge of something that is there, and how it lies off the straight line between its ends. */
interface MeasuredEdge {
  readonly line: PointLine;
  readonly node: ast.MeasuredEdge;
  readonly text: SpecText;
  /** Into the thing positive; in order from the first point, from end to end. None: it is only told where the edge is. */
  readonly offsets: readonly OffsetAt[];
}

/** A tape to the end of an edge may miss it by this: a quarter of an inch, m. */
const AT_END = 0.00635;

/** A side lies on the line that an edge was measured from within this, m. */
const ON_LINE = 0.005;

/** Reads edges of existing things that were measured by offsets, and sets them in the place of the sides that meet them. */
export class MeasuredEdges {
  private readonly context: Context;
  private readonly points: Points;
  private readonly known = new Map<
    ast.Existing,
    { value: readonly MeasuredEdge[] | undefined; broken: readonly string[] }
  >();

  constructor(context: Context, points: Points) {
    this.context = context;
    this.points = points;
  }

  /** The edges of a thing by what declares it; undefined where one can't be read. */
  of(found: Declared): readonly MeasuredEdge[] | undefined {
    const node = found.node as ast.Existing;
    const known = this.known.get(node) ?? this.context.watch(() => this.edgesOf(found.text, node));
    this.known.set(node, known);
    for (const name of known.broken) this.context.breaks(name);
    return known.value;
  }

  /** The outline with what was measured in the place of its sides, and the edges for it; one of these for each part. */
  applied(
    text: SpecText,
    key: Key,
    outline: NamedOutline,
    edges: readonly Edge[]
  ): { outline: NamedOutline; edges: readonly Edge[] } | undefined {
    const measured = new Map<number, readonly OffsetAt[]>();
    for (const [side, edge] of edges.entries()) {
      if (edge.meets?.existing === undefined) continue;
      const found = this.context.names.find(text, 'existing', edge.meets.name);
      const all = found && this.of(found);
      if (all === undefined) return undefined;
      const one = all.find(({ line }) => isOf(line, edge.name));
      if (one === undefined) {
        if (!this.isApart(key, outline.loop[side]!, edge, all)) return undefined;
        continue;
      }
      if (one.offsets.length === 0) continue;
      if (!runsBetween(outline.loop[side]!, one.line)) return this.notStraight(key, edge, one);
      measured.set(side, edge.name === one.line.name ? one.offsets : backward(one));
    }
    if (measured.size === 0) return { outline, edges };
    const parts = withMeasuredEdges(outline.loop, measured, signedAreaOf(outline.loop) >= 0);
    return {
      outline: {
        loop: parts.flat(),
        sideNames: parts.flatMap((some, side) => some.map(() => outline.sideNames[side]!)),
        form: outline.form
      },
      edges: parts.flatMap((some, side) => some.map(() => edges[side]!))
    };
  }

  /** A side that is a part of the line that an edge was measured from would silently stay straight. */
  private isApart(key: Key, { from, to, arc }: Side, edge: Edge, all: readonly MeasuredEdge[]): boolean {
    const on = all.find(({ line, offsets }) => {
      if (offsets.length === 0 || arc !== undefined) return false;
      const ends = [placeAlong(line, from), placeAlong(line, to)];
      const length = distance(line.from, line.to);
      const [first, last] = [Math.min(ends[0]!.at, ends[1]!.at), Math.max(ends[0]!.at, ends[1]!.at)];
      return ends.every(({ off }) => Math.abs(off) <= ON_LINE) && first < length - ON_LINE && last > ON_LINE;
    });
    if (on === undefined) return true;
    this.doesNotFit(
      on,
      key,
      `This edge was measured from ${on.line.name}, and an area meets it from ${edge.name}: give the offsets of ${edge.name}, or draw the side of the area from ${on.line.name}.`
    );
    return false;
  }

  private notStraight(key: Key, edge: Edge, one: MeasuredEdge): undefined {
    return this.doesNotFit(
      one,
      key,
      `Offsets are taken from a straight line, and the side ${edge.name} that meets this edge is bowed or rounded. Draw that side straight.`
    );
  }

  private doesNotFit({ text, node }: MeasuredEdge, key: Key, message: string): undefined {
    return this.context.fault(text, key, node, 'offsets-do-not-fit', message, { property: 'line' });
  }

  // ---- reading ----

  private edgesOf(text: SpecText, node: ast.Existing): MeasuredEdge[] | undefined {
    const key = `existing:${node.name}`;
    const edges: MeasuredEdge[] = [];
    let sound = true;
    for (const [index, item] of node.items.filter(ast.isMeasuredEdge).entries()) {
      const edge = this.edge(text, key, `${key}/edge-${index + 1}`, item);
      const first = edge && edges.find(({ line }) => isOf(line, edge.line.name));
      if (first !== undefined)
        this.context.fault(
          text,
          key,
          item,
          'said-twice',
          `The edge ${first.line.name} is said twice; the first counts. Take one out.`,
          {
            harmless: true,
            related: [{ node: first.node, text, message: 'Said first here.' }],
            fixes: [takingOut(this.context, text, item, { like: first.node })]
          }
        );
      else if (edge !== undefined) edges.push(edge);
      else sound = false;
    }
    return sound ? edges : undefined;
  }

  private edge(text: SpecText, key: Key, at: Key, node: ast.MeasuredEdge): MeasuredEdge | undefined {
    this.context.place(at, text, node);
    const line = this.points.line(text, key, node.line);
    const offsets = node.offsets.map((offset, index) => this.offset(text, `${at}/offset-${index + 1}`, offset, line));
    if (line === undefined || !offsets.every(offset => offset !== undefined)) return undefined;
    if (node.offsets.length > 0 && !this.runsFromEndToEnd(text, key, node, line, offsets)) return undefined;
    const length = distance(line.from, line.to);
    const way = node.into ? 1 : -1;
    return {
      line,
      node,
      text,
      offsets: offsets.map(({ at: station, off }, index) => ({
        at: index === 0 ? 0 : index === offsets.length - 1 ? length : station,
        off: off === 0 ? 0 : way * off
      }))
    };
  }

  private offset(text: SpecText, key: Key, node: ast.Offset, line: PointLine | undefined): OffsetAt | undefined {
    const off = this.context.given(text, key, node.offset as Expression | undefined, 'm', NOT_NEGATIVE);
    const at =
      node.point === undefined
        ? this.context.given(text, `${key}/at`, node.at as Expression | undefined, 'm', NOT_NEGATIVE)?.value
        : this.stationOf(text, key, node, line);
    return off === undefined || at === undefined ? undefined : { at, off: off.value };
  }

  private stationOf(text: SpecText, key: Key, node: ast.Offset, line: PointLine | undefined): number | undefined {
    const point = this.points.named(text, key, node, 'point', node.point!.$refText);
    return point && line && placeAlong(line, point).at;
  }

  private runsFromEndToEnd(
    text: SpecText,
    key: Key,
    node: ast.MeasuredEdge,
    line: PointLine,
    offsets: readonly OffsetAt[]
  ): boolean {
    const { system } = this.context;
    const length = distance(line.from, line.to);
    const [from, to] = line.name.split(' to ');
    const tell = (at: AstNode, message: string): false => {
      this.context.fault(text, key, at, 'offsets-do-not-fit', message);
      return false;
    };
    const beyond = offsets.findIndex(({ at }) => at < -AT_END || at > length + AT_END);
    if (beyond >= 0)
      return tell(
        node.offsets[beyond]!,
        `This lies beyond the edge, which is ${printLength(length, system)} long from ${line.name}.`
      );
    const late = offsets.findIndex(({ at }, index) => index > 0 && at <= offsets[index - 1]!.at);
    if (late > 0)
      return tell(
        node.offsets[late]!,
        `Give the offsets in their order from ${from!}, each further on than the one before.`
      );
    const ends = offsets.length > 1 && offsets[0]!.at <= AT_END && offsets.at(-1)!.at >= length - AT_END;
    if (ends) return true;
    return tell(
      node,
      `Give the offsets at both ends too: \`0 at ${from!}\` first and \`0 at ${to!}\` last, where the edge runs through these points.`
    );
  }
}

/** Straight from end to end, in either direction: a corner that is rounded takes a piece of it. */
function runsBetween({ from, to, arc }: Side, line: PointLine): boolean {
  const apart = (one: Point, other: Point): number => distance(from, one) + distance(to, other);
  return arc === undefined && Math.min(apart(line.from, line.to), apart(line.to, line.from)) <= SAME_POINT;
}

/** `D to A` is also `A to D`. */
function isOf(line: PointLine, name: string): boolean {
  return line.name === name || line.name.split(' to ').reverse().join(' to ') === name;
}

function backward({ line, offsets }: MeasuredEdge): OffsetAt[] {
  const length = distance(line.from, line.to);
  return offsets.map(({ at, off }) => ({ at: length - at, off })).reverse();
}

/** Distance of a point along a line from its beginning, and off it; m. */
function placeAlong({ from, to }: PointLine, point: Point): OffsetAt {
  const length = distance(from, to);
  const along = { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
  const [x, y] = [point.x - from.x, point.y - from.y];
  return { at: x * along.x + y * along.y, off: x * along.y - y * along.x };
}
