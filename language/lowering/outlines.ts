import {
  arcByBow,
  arcByRadius,
  arcThrough,
  circleLoop,
  rectangleLoop,
  roundCorner,
  signedAreaOf,
  type Bulge
} from '../geometry/index.ts';
import type { Loop, Point, Side } from '../geometry/shapes.ts';
import type { Key } from '../job/job.ts';
import { printLength, roundedUp } from '../measures/print.ts';
import { MOST_SIDES } from '../syntax/limits.ts';
import * as ast from '../syntax/generated/ast.ts';
import type { Expression } from './amounts.ts';
import { nearest } from '../syntax/nearest.ts';
import { ANY, POSITIVE, writtenOf, type Context } from './context.ts';
import type { SpecText } from './names.ts';
import { writing, type SaidFix } from './said-fix.ts';
import { takingOut } from './said-once.ts';
import type { Beside, Points } from './points.ts';
import type { Things } from './things.ts';

/** The sides of a rectangle in the order of its corners. */
export const RECTANGLE_SIDES: readonly string[] = ['near', 'right', 'far', 'left'];

/** An outline and how a person names its sides. */
export interface NamedOutline {
  readonly loop: Loop;
  /** One name for each side of the loop; the parts of a rounded or round side share theirs. */
  readonly sideNames: readonly string[];
  /** Names of the corners that sides run between, for outlines from point to point. */
  readonly form: 'rectangle' | 'circle' | 'walk' | 'strip' | 'points';
}

/** Distance within which a walk counts as back at its start, m: nobody sets out closer with a tape. */
const CLOSED = 0.0005;

/** Reads the shape of an area, box or pit. */
export class Outlines {
  private readonly context: Context;
  private readonly things: Things;
  private readonly points: Points;
  private readonly known = new Map<ast.Shape, { value: NamedOutline | undefined; broken: readonly string[] }>();
  /** Set once: an outline along a line is read by what reads lines with this. */
  strips: { outline(text: SpecText, key: Key, node: ast.Strip): NamedOutline | undefined } | undefined;

  constructor(context: Context, things: Things, points: Points) {
    this.context = context;
    this.things = things;
    this.points = points;
  }

  /** `beside` is what the shape stands in. */
  read(text: SpecText, key: Key, shape: ast.Shape | undefined, beside?: Beside): NamedOutline | undefined {
    if (shape === undefined) {
      this.context.breaks(key);
      return undefined;
    }
    const known = this.known.get(shape);
    if (known === undefined) {
      const read = this.context.watch(() => this.readShape(text, key, shape, beside));
      this.known.set(shape, read);
      for (const name of read.broken) this.context.breaks(name);
      return read.value;
    }
    for (const name of known.broken) this.context.breaks(name);
    return known.value;
  }

  private readShape(text: SpecText, key: Key, shape: ast.Shape, beside?: Beside): NamedOutline | undefined {
    if (ast.isRectangle(shape)) return this.rectangle(text, key, shape, beside);
    if (ast.isCircle(shape)) return this.circle(text, key, shape, beside);
    if (ast.isStrip(shape)) return this.strips?.outline(text, key, shape);
    return ast.isWalk(shape) ? this.walk(text, key, shape) : this.chain(text, key, shape);
  }

  private rectangle(text: SpecText, key: Key, node: ast.Rectangle, beside?: Beside): NamedOutline | undefined {
    const size = this.things.size(text, `${key}/rectangle`, node.size, 2, ['length', 'depth']);
    const place = this.placeClauses(text, key, node.clauses, beside);
    if (size === undefined || place === undefined) return undefined;
    const [width, depth] = [size[0]!.value, size[1]!.value];
    const corner = place.centre
      ? { x: place.centre.x - width / 2, y: place.centre.y - depth / 2 }
      : (place.corner ?? ORIGIN);
    return {
      loop: rectangleLoop(width, depth, corner, place.turn),
      sideNames: RECTANGLE_SIDES,
      form: 'rectangle'
    };
  }

  private circle(text: SpecText, key: Key, node: ast.Circle, beside?: Beside): NamedOutline | undefined {
    const size = (node.across ?? node.radius) as Expression | undefined;
    const given = this.context.given(text, `${key}/circle`, size, 'm');
    const place = this.placeClauses(text, key, node.clauses, beside);
    if (given === undefined || place === undefined) return undefined;
    const radius = node.across === undefined ? given.value : given.value / 2;
    const loop = circleLoop(place.centre ?? { x: radius, y: radius }, radius);
    return { loop, sideNames: loop.map(() => 'all round'), form: 'circle' };
  }

  private placeClauses(
    text: SpecText,
    key: Key,
    clauses: readonly ast.PlaceClause[],
    beside?: Beside
  ): { corner?: Point; centre?: Point; turn: number } | undefined {
    const place: { corner?: Point; centre?: Point; turn: number } = { turn: 0 };
    const said = new Set<string>();
    const aside = clauses.find(clause => clause.aside !== undefined)?.aside;
    for (const clause of clauses) {
      if (clause.what === undefined) continue;
      if (said.has(clause.what) || (clause.what !== 'turned' && (said.has('corner') || said.has('centre'))))
        return this.context.fault(
          text,
          key,
          clause,
          'said-twice',
          'The place of this shape is said twice. Take one out.',
          { fixes: [takingOut(this.context, text, clause)] }
        );
      said.add(clause.what);
      if (clause.what === 'turned') {
        const turn = this.context.given(text, `${key}/turned`, clause.turn as Expression | undefined, 'degrees', ANY);
        if (turn === undefined) return undefined;
        place.turn += (turn.value * Math.PI) / 180;
      } else {
        const at = this.points.spot(text, `${key}/${clause.what}`, clause.at, aside, beside);
        if (at === undefined) return undefined;
        // Placed along a line, its length runs along that line.
        const line = ast.isFromLine(clause.at) ? this.points.line(text, key, clause.at.line, beside) : undefined;
        if (line !== undefined) place.turn += Math.atan2(line.to.y - line.from.y, line.to.x - line.from.x);
        place[clause.what as 'corner' | 'centre'] = at;
      }
    }
    return place;
  }

  private tooManySides(text: SpecText, key: Key, node: ast.Chain | ast.Walk, count: number): undefined {
    return this.context.fault(
      text,
      key,
      node,
      'too-many-sides',
      `This outline has ${count} sides; at most ${MOST_SIDES} are worked out. Bow a side instead of following a curve in short steps.`
    );
  }

  // ---- from point to point ----

  /** A line that need not close; a bow goes to its right unless it says `in`. */
  path(text: SpecText, key: Key, node: ast.Chain): Side[] | undefined {
    if (node.legs.length > MOST_SIDES) return this.tooManySides(text, key, node, node.legs.length);
    const found = this.cornersOf(text, key, node);
    if (found === undefined) return undefined;
    const { corners, bends } = found;
    const sides: { side: Side; name: string; to: string }[] = [];
    for (let index = 1; index < corners.length; index++) {
      const [from, to] = [corners[index - 1]!, corners[index]!];
      const side = this.side(text, key, node, from.at, to.at, bends[index], true);
      if (side === undefined) return undefined;
      sides.push({ side, name: `${from.name} to ${to.name}`, to: to.name });
    }
    // Its end is no corner.
    const last = sides.at(-1)!;
    sides[sides.length - 1] = { ...last, to: '' };
    return this.rounded(text, key, node, sides)?.map(({ side }) => side);
  }

  private cornersOf(
    text: SpecText,
    key: Key,
    node: ast.Chain
  ): { corners: { name: string; at: Point }[]; bends: (ast.Bend | undefined)[] } | undefined {
    const corners: { name: string; at: Point }[] = [];
    const bends: (ast.Bend | undefined)[] = [];
    for (const [reference, bend] of [
      [node.start, undefined] as const,
      ...node.legs.map(leg => [leg.to, leg.bend] as const)
    ]) {
      const owner = reference === node.start ? node : node.legs.find(leg => leg.to === reference)!;
      const at = this.points.named(text, key, owner, reference === node.start ? 'start' : 'to', reference?.$refText);
      // The names behind one that leads nowhere are looked up all the same: they are used.
      if (at !== undefined) corners.push({ name: reference!.$refText, at });
      bends.push(bend);
    }
    return corners.length < bends.length ? undefined : { corners, bends };
  }

  private chain(text: SpecText, key: Key, node: ast.Chain): NamedOutline | undefined {
    const comesBack = node.legs.at(-1)?.to?.$refText === node.start?.$refText;
    const sideCount = node.legs.length + (comesBack ? 0 : 1);
    if (sideCount > MOST_SIDES) return this.tooManySides(text, key, node, sideCount);
    const found = this.cornersOf(text, key, node);
    if (found === undefined) return undefined;
    const { corners, bends } = found;
    const closes = corners.length > 2 && corners.at(-1)!.name === corners[0]!.name;
    if (closes) corners.pop();
    if (new Set(corners.map(corner => corner.name)).size < corners.length)
      return this.context.fault(
        text,
        key,
        node,
        'outline-crosses-itself',
        'The outline comes through one point twice.'
      );
    const count = corners.length;
    if (count < 2 || (count === 2 && bends.every(bend => bend === undefined)))
      return this.context.fault(
        text,
        key,
        node,
        'outline-without-area',
        'Two points alone enclose nothing. Name at least three, or bow a side.'
      );
    // bends[i] belongs to the leg that arrives at corner i; the closing leg arrives at the first corner.
    const bendOf = (side: number): ast.Bend | undefined =>
      side < count - 1 ? bends[side + 1] : closes ? bends[count] : undefined;
    const anticlockwise =
      signedAreaOf(corners.map((corner, index) => ({ from: corner.at, to: corners[(index + 1) % count]!.at }))) >= 0;
    const sides: { side: Side; name: string; to: string }[] = [];
    for (let index = 0; index < count; index++) {
      const [from, to] = [corners[index]!, corners[(index + 1) % count]!];
      const side = this.side(text, key, node, from.at, to.at, bendOf(index), anticlockwise);
      if (side === undefined) return undefined;
      sides.push({ side, name: `${from.name} to ${to.name}`, to: to.name });
    }
    const rounded = this.rounded(text, key, node, sides);
    return (
      rounded && { loop: rounded.map(({ side }) => side), sideNames: rounded.map(({ name }) => name), form: 'points' }
    );
  }

  /** A bow goes out of the area unless it says `in`. */
  private side(
    text: SpecText,
    key: Key,
    node: ast.Chain | ast.Walk,
    from: Point,
    to: Point,
    bend: ast.Bend | undefined,
    anticlockwise: boolean
  ): Side | undefined {
    if (Math.hypot(to.x - from.x, to.y - from.y) <= CLOSED)
      return this.context.fault(
        text,
        key,
        node,
        'outline-crosses-itself',
        'Two corners of the outline lie on one spot.'
      );
    if (bend === undefined) return { from, to };
    if (bend.what === 'through') {
      const via = this.points.named(text, key, bend, 'via', bend.via?.$refText);
      if (via === undefined) return undefined;
      return arcThrough(from, to, via) ?? { from, to };
    }
    const by = this.context.given(text, `${key}/${bend.what}`, bend.by as Expression | undefined, 'm');
    if (by === undefined) return undefined;
    const bulge: Bulge = (bend.side === 'in') === anticlockwise ? 'left' : 'right';
    const side = bend.what === 'bowed' ? arcByBow(from, to, by.value, bulge) : arcByRadius(from, to, by.value, bulge);
    const chord = Math.hypot(to.x - from.x, to.y - from.y);
    return (
      side ??
      this.context.fault(
        text,
        key,
        bend,
        'arc-does-not-fit',
        `A radius of ${by.written} can't reach over a side ${printLength(chord, this.context.system)} long; it must be at least half of that.`,
        { fixes: this.radiusFixes(text, bend, chord / 2) }
      )
    );
  }

  private radiusFixes(text: SpecText, bend: ast.Bend, least: number): SaidFix[] {
    const { system, changes } = this.context;
    const radius = printLength(roundedUp(least, system), system);
    return [{ ...writing(radius), does: [changes.over(text, bend, radius, 'by')] }];
  }

  /** The last leg as long as closes the outline, if it leads to the start, and a last one back to it. */
  private closingFixes(text: SpecText, node: ast.Walk, start: Point, end: Point): SaidFix[] {
    const { system, changes } = this.context;
    const back: SaidFix = { title: 'Write `back`', does: [changes.behind(text, node, ', back')] };
    const last = node.steps.at(-1)!;
    const [x, y] = DIRECTIONS[last.direction as keyof typeof DIRECTIONS];
    const [along, aside] = [
      (start.x - end.x) * x + (start.y - end.y) * y,
      (start.x - end.x) * y + (start.y - end.y) * x
    ];
    const length = this.context.amount(text, '', last.length as Expression)!.value.valueOf() + along;
    const round = roundedUp(length - CLOSED / 2, system);
    if (Math.abs(aside) > CLOSED || length <= CLOSED || Math.abs(round - length) > CLOSED / 2) return [back];
    const printed = printLength(round, system);
    return [{ ...writing(`${last.direction} ${printed}`), does: [changes.over(text, last, printed, 'length')] }, back];
  }

  private rounded(
    text: SpecText,
    key: Key,
    node: ast.Chain,
    sides: readonly { side: Side; name: string; to: string }[]
  ): readonly { side: Side; name: string }[] | undefined {
    let result = [...sides];
    for (const rounding of node.rounded) {
      const radius = this.context.given(
        text,
        `${key}/rounded`,
        rounding.radius as Expression | undefined,
        'm',
        POSITIVE
      );
      if (radius === undefined) return undefined;
      for (const [index, corner] of rounding.corners.entries()) {
        const at = result.findIndex(side => side.to === corner?.$refText);
        if (at < 0)
          return this.context.fault(
            text,
            key,
            rounding,
            'no-such-side',
            `The outline has no corner ${corner?.$refText ?? ''} to round.`,
            { property: ['corners', index], fixes: cornerFixes(rounding, result) }
          );
        const next = (at + 1) % result.length;
        const round = roundCorner(result[at]!.side, result[next]!.side, radius.value);
        if (round === undefined)
          return this.context.fault(
            text,
            key,
            rounding,
            'corner-does-not-fit',
            `A radius of ${radius.written} doesn't fit at ${corner.$refText}: the straight sides beside it are too short, or one is an arc.`
          );
        // The arc belongs to the side that arrives at the corner.
        const before = result[at]!;
        const after = result[next]!;
        result = result.flatMap((side, index) => {
          if (index === at)
            return [
              { ...before, side: round.before, to: '' },
              { ...before, side: round.arc, to: before.to }
            ];
          return index === next ? [{ ...after, side: round.after }] : [side];
        });
      }
    }
    return result.filter(({ side }) => Math.hypot(side.to.x - side.from.x, side.to.y - side.from.y) > 0);
  }

  // ---- walked ----

  private walk(text: SpecText, key: Key, node: ast.Walk): NamedOutline | undefined {
    if (node.steps.length > MOST_SIDES) return this.tooManySides(text, key, node, node.steps.length);
    const start = this.points.pair(text, `${key}/walk`, node.start);
    if (start === undefined) return undefined;
    const legs: { from: Point; to: Point; bend: ast.Bend | undefined }[] = [];
    let at = start;
    for (const [index, step] of node.steps.entries()) {
      let to = start;
      if (!step.back) {
        const direction = this.context.word(text, key, step, 'direction', step.direction, [
          'right',
          'up',
          'left',
          'down'
        ] as const);
        const length = this.context.given(text, `${key}/walk/${index + 1}`, step.length as Expression | undefined, 'm');
        if (direction === undefined || length === undefined) return undefined;
        const [x, y] = DIRECTIONS[direction];
        to = { x: at.x + x * length.value, y: at.y + y * length.value };
      }
      legs.push({ from: at, to, bend: step.bend });
      at = to;
    }
    const gap = Math.hypot(at.x - start.x, at.y - start.y);
    if (gap > CLOSED)
      return this.context.fault(
        text,
        key,
        node,
        'outline-open',
        `The walk ends ${printLength(gap, this.context.system)} from its start. Correct a length, or end with \`back\`.`,
        {
          values: [{ name: 'gap', value: gap, measure: 'm' }],
          fixes: this.closingFixes(text, node, start, at)
        }
      );
    // Sums of decimals may miss the start by less than a hair: the last leg ends on it.
    legs[legs.length - 1] = { ...legs.at(-1)!, to: start };
    const anticlockwise = signedAreaOf(legs.map(({ from, to }) => ({ from, to }))) >= 0;
    const sides: Side[] = [];
    for (const leg of legs) {
      const side = this.side(text, key, node, leg.from, leg.to, leg.bend, anticlockwise);
      if (side === undefined) return undefined;
      sides.push(side);
    }
    if (sides.length < 2)
      return this.context.fault(text, key, node, 'outline-without-area', `\`${writtenOf(node)}\` encloses nothing.`);
    return { loop: sides, sideNames: sides.map((_, index) => `leg ${index + 1}`), form: 'walk' };
  }
}

const ORIGIN: Point = { x: 0, y: 0 };

const DIRECTIONS: Readonly<Record<'right' | 'up' | 'left' | 'down', readonly [number, number]>> = {
  right: [1, 0],
  up: [0, 1],
  left: [-1, 0],
  down: [0, -1]
};

/** The corners that can still be rounded, if they are few. */
function cornerFixes({ corners }: ast.Rounding, sides: readonly { readonly to: string }[]): SaidFix[] {
  const named = corners.map(corner => corner.$refText);
  const free = sides.map(({ to }) => to).filter(to => to !== '' && !named.includes(to));
  const near = nearest(named.find(name => !sides.some(({ to }) => to === name)) ?? '', free);
  if (near !== undefined) return [writing(near)];
  return free.length > MOST_CORNERS ? [] : free.map(writing);
}

/** More corners to choose from help nobody. */
const MOST_CORNERS = 4;
