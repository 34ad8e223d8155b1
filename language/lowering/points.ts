import type { AstNode } from 'langium';
import type { Point } from '../geometry/index.ts';
import type { Key, NamedPoint } from '../job/job.ts';
import { along, halfway, polar } from '../setting-out/spots.ts';
import * as ast from '../syntax/generated/ast.ts';
import type { Expression } from './amounts.ts';
import { ANY, type Context, POSITIVE, type Property } from './context.ts';
import { keyOf } from './keys.ts';
import type { Declared, SpecText } from './names.ts';
import { writing } from './said-fix.ts';
import type { Taped } from './taped.ts';

/** The area that a place or a fall is told beside. */
export interface Beside {
  /** The side of a line on which the area lies: `out` goes there. */
  out(from: Point, to: Point): 'left' | 'right';
  /** The ends of a side by its name; undefined where the area has no such side, or its outline is faulty. */
  side(name: string): { readonly from: Point; readonly to: Point } | undefined;
  readonly sideNames: readonly string[];
  /** The sides that are said to meet a thing. */
  sidesMeeting(thing: string): readonly string[];
}

interface Found {
  readonly at: Point | undefined;
  readonly broken: readonly string[];
}

/** Leads names and places to points of the plan. */
export class Points {
  private readonly context: Context;
  private readonly known = new Map<ast.Mark, Found | 'being found'>();
  /** Set once: points from tapes are found by what this finds. */
  taped: Taped | undefined;

  constructor(context: Context) {
    this.context = context;
  }

  /** A point by name; one that can't be found breaks what leans on it, and its own fault stands at its own place. */
  named(text: SpecText, key: Key, node: AstNode, property: Property, name: string | undefined): Point | undefined {
    const found = this.context.find(text, key, node, property, name, ['point']);
    return found && this.of(found);
  }

  of(found: Declared): Point | undefined {
    const node = found.node as ast.Mark;
    const known = this.known.get(node);
    if (known === 'being found')
      return this.context.fault(
        found.text,
        keyOf(found),
        node,
        'let-in-circle',
        `The point ${found.name} is found from itself. Give it coordinates, or take it from other points.`,
        { property: 'name' }
      );
    if (known !== undefined) {
      for (const name of known.broken) this.context.breaks(name);
      if (known.at === undefined) this.context.breaks(found.name);
      return known.at;
    }
    this.known.set(node, 'being found');
    const { value, broken } = this.context.watch(() => this.find(found, node));
    this.known.set(node, { at: value, broken });
    for (const name of broken) this.context.breaks(name);
    if (value === undefined) this.context.breaks(found.name);
    return value;
  }

  private find(found: Declared, node: ast.Mark): Point | undefined {
    const key = keyOf(found);
    if (node.halfway !== undefined) {
      const line = this.line(found.text, key, node.halfway);
      return line && halfway(line.from, line.to);
    }
    if (node.clauses.length > 0) return this.taped?.point(found);
    return this.spot(found.text, key, node.at, node.aside);
  }

  /** Both ends of a line between two points. */
  line(
    text: SpecText,
    key: Key,
    node: ast.PointLine | ast.AreaLine | undefined,
    beside: Beside = NO_AREA
  ): PointLine | undefined {
    if (node === undefined) {
      this.context.breaks(key);
      return undefined;
    }
    const side = ast.isAreaLine(node) ? sideNamed(node) : undefined;
    if (side !== undefined) return this.sideLine(text, key, node, side, beside);
    const from = this.named(text, key, node, 'from', node.from?.$refText);
    const to = this.named(text, key, node, 'to', node.to?.$refText);
    if (from === undefined || to === undefined) return undefined;
    if (Math.hypot(to.x - from.x, to.y - from.y) <= ONE_SPOT)
      return this.context.fault(
        text,
        key,
        node,
        'points-on-one-spot',
        `${node.from!.$refText} and ${node.to!.$refText} lie on one spot: no line runs between them.`
      );
    return { from, to, name: `${node.from!.$refText} to ${node.to!.$refText}` };
  }

  private sideLine(text: SpecText, key: Key, node: AstNode, name: string, beside: Beside): PointLine | undefined {
    const side = beside.side(name);
    if (side !== undefined) return { ...side, name };
    const known = beside.sideNames;
    const meeting = beside.sidesMeeting(name);
    if (meeting.length > 0)
      return this.context.fault(
        text,
        key,
        node,
        'no-such-side',
        `Name the side itself: \`${meeting[0]!}\` meets ${name}.`,
        { fixes: meeting.map(writing) }
      );
    return this.context.fault(
      text,
      key,
      node,
      'no-such-side',
      known.length === 0
        ? `Name the two points that the line runs between: \`along A to B\`. A side such as \`${name}\` can be named where an area is meant.`
        : `The outline has no side called ${name}. Its sides: ${[...new Set(known)].join(', ')}.`
    );
  }

  /** A place: a pair of coordinates, along a line and out from it, or away from a point. */
  spot(
    text: SpecText,
    key: Key,
    node: ast.Spot | undefined,
    aside?: ast.Aside,
    beside: Beside = NO_AREA
  ): Point | undefined {
    if (node === undefined) {
      this.context.breaks(key);
      return undefined;
    }
    if (ast.isFromLine(node)) return this.fromLine(text, key, node, aside, beside);
    if (aside !== undefined)
      return this.context.fault(
        text,
        key,
        aside,
        'aside-of-no-line',
        'Only what is told along a line can lie off it: `6 ft 2 in along A to B, 3 ft 1 in out`.'
      );
    return ast.isPair(node) ? this.pair(text, key, node) : this.fromPoint(text, key, node);
  }

  pair(text: SpecText, key: Key, node: ast.Pair | undefined): Point | undefined {
    if (node === undefined) {
      this.context.breaks(key);
      return undefined;
    }
    const measure = node.measure ?? endMeasure(node.y as Expression);
    const list = { measure, node };
    const x = this.context.given(text, `${key}/x`, node.x as Expression | undefined, 'm', ANY, list);
    const y = this.context.given(text, `${key}/y`, node.y as Expression | undefined, 'm', ANY, list);
    return x && y && { x: x.value, y: y.value };
  }

  private fromLine(
    text: SpecText,
    key: Key,
    node: ast.FromLine,
    off: ast.Aside | undefined,
    beside: Beside
  ): Point | undefined {
    const line = this.line(text, key, node.line, beside);
    const station = this.context.given(text, `${key}/along`, node.along as Expression | undefined, 'm', ANY);
    const aside =
      off === undefined
        ? { value: 0 }
        : this.context.given(text, `${key}/aside`, off.off as Expression | undefined, 'm', ANY);
    if (line === undefined || station === undefined || aside === undefined) return undefined;
    const side = off === undefined || off.where === 'out' ? beside.out(line.from, line.to) : off.where;
    this.context.toldFrom.set(key, { from: line.from, to: line.to, side });
    return along(line.from, line.to, station.value, side === 'left' ? aside.value : -aside.value);
  }

  private fromPoint(text: SpecText, key: Key, node: ast.FromPoint): Point | undefined {
    const from = this.named(text, key, node, 'from', node.from?.$refText);
    const away = this.context.given(text, `${key}/away`, node.away as Expression | undefined, 'm', POSITIVE);
    if (node.towards !== undefined) {
      const towards = this.named(text, key, node, 'towards', node.towards.$refText);
      if (from === undefined || away === undefined || towards === undefined) return undefined;
      if (Math.hypot(towards.x - from.x, towards.y - from.y) <= ONE_SPOT)
        return this.context.fault(
          text,
          key,
          node,
          'points-on-one-spot',
          `${node.from.$refText} and ${node.towards.$refText} lie on one spot: no direction leads from one to the other.`
        );
      return along(from, towards, away.value, 0);
    }
    const turn = this.context.given(text, `${key}/turn`, node.turn as Expression | undefined, 'degrees', ANY);
    const line = node.line && this.line(text, key, node.line);
    if (from === undefined || away === undefined || turn === undefined) return undefined;
    if (node.line !== undefined && line === undefined) return undefined;
    const zero = line === undefined ? 0 : Math.atan2(line.to.y - line.from.y, line.to.x - line.from.x);
    this.context.toldFrom.set(key, { centre: from, zero });
    return polar(from, away.value, zero + (turn.value * Math.PI) / 180);
  }

  /** All points of the job, as declared first. */
  all(declared: readonly Declared[]): NamedPoint[] {
    const first = new Map(declared.map(one => [one.name, one]).reverse() as [string, Declared][]);
    return declared.flatMap(one => {
      if (first.get(one.name) !== one || this.context.isBroken(one.text, one.node)) return [];
      const { value } = this.context.watch(() => this.of(one));
      const fixed = ast.isPair((one.node as ast.Mark).at);
      return value === undefined ? [] : [{ key: keyOf(one), name: one.name, ...value, fixed }];
    });
  }
}

export interface PointLine {
  readonly from: Point;
  readonly to: Point;
  readonly name: string;
}

/** The side that is named in the place of two points. */
function sideNamed({ from, to, side, leg }: ast.AreaLine): string | undefined {
  if (leg !== undefined) return `leg ${leg}`;
  return side ?? (to === undefined ? from?.$refText : undefined);
}

/** Points nearer to each other than this lie on one spot: nobody sets out closer with a tape, m. */
const ONE_SPOT = 0.0005;

/** Without an area `out` is to the left as one walks along the line. */
const NO_AREA: Beside = { out: () => 'left', side: () => undefined, sideNames: [], sidesMeeting: () => [] };

/** The measure at the end of a pair counts for the number before it. */
export function endMeasure(last: Expression | undefined): string | undefined {
  return last !== undefined && ast.isQuantity(last) ? last.parts.at(-1)?.measure : undefined;
}
