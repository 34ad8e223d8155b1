import { cornerLoop, distance, EDGE_TOLERANCE, type Loop, type Point } from '../geometry/index.ts';
import type { Drain } from '../job/heights.ts';
import type { Key, KeptOut, Missing } from '../job/job.ts';
import { along } from '../setting-out/spots.ts';
import * as ast from '../syntax/generated/ast.ts';
import type { Expression } from './amounts.ts';
import type { Context } from './context.ts';
import { readEach, type Each } from './each-thing.ts';
import type { Heights } from './heights.ts';
import { zOf } from '../job/heights.ts';
import type { Declared, SpecText } from './names.ts';
import type { Outlines } from './outlines.ts';
import { besideArea, outlineOf, sideOfLoop } from './own-side.ts';
import type { PointLine, Points } from './points.ts';
import { writing, type SaidFix } from './said-fix.ts';
import { saidOnce, takingOut } from './said-once.ts';

/** How far a channel reaches to the left and to the right of its line, m. */
interface Reach {
  readonly left: number;
  readonly right: number;
}

/** More areas to choose from help nobody. */
const MOST_OFFERED = 4;

/** Reads channels and gullies. */
export class Drains {
  private readonly context: Context;
  private readonly points: Points;
  private readonly heights: Heights;
  private readonly outlines: Outlines;
  private readonly met = new Map<string, readonly Declared[]>();

  constructor(context: Context, points: Points, heights: Heights, outlines: Outlines) {
    this.context = context;
    this.points = points;
    this.heights = heights;
    this.outlines = outlines;
  }

  read(texts: readonly SpecText[], missing: Missing[]): Each<Drain>[] {
    return readEach(this.context, texts, 'drain', missing, (declared, key) => this.drain(declared, key));
  }

  /** The areas whose sides are said to meet it. */
  meeting(drain: string): readonly Declared[] {
    const known = this.met.get(drain);
    if (known !== undefined) return known;
    const areas = this.context.names
      .areas()
      .filter(({ node }) =>
        (node as ast.Area).items.some(
          item => ast.isEdges(item) && item.items.some(({ thing }) => thing?.$refText === drain)
        )
      );
    this.met.set(drain, areas);
    return areas;
  }

  private drain({ text, node: declaration, name }: Declared, key: Key): Drain | undefined {
    const { context } = this;
    const node = declaration as ast.Drain;
    const area = node.area && context.find(text, key, node, 'area', node.area.$refText, ['area']);
    const once = node.items.filter(item => !ast.isGrate(item));
    const said = saidOnce(context, text, key, once, item => (ast.isOutlet(item) ? 'outlet' : 'shape'));
    const shape = said.get('shape') as ast.Channel | ast.Gully | undefined;
    const shaped =
      shape === undefined
        ? context.incomplete(
            text,
            key,
            node,
            `The drain ${name} has no shape. Write \`channel along A to B, ${this.width()} wide\`, or \`gully circle ${this.width()} across, centre …\`.`
          )
        : ast.isChannel(shape)
          ? this.channel(text, key, shape, name, area)
          : this.gully(text, key, node, shape, area);
    const grates = this.grates(text, key, node);
    const outletItem = said.get('outlet') as ast.Outlet | undefined;
    const outlet = outletItem && this.outlet(text, key, outletItem);
    if (shaped === undefined || grates === undefined || (outletItem !== undefined && outlet === undefined))
      return undefined;
    return {
      key,
      name,
      ...(area === undefined ? {} : { area: `area:${area.name}` }),
      ...shaped,
      grates,
      ...(outlet === undefined ? {} : { outlet })
    };
  }

  private width(): string {
    return this.context.system === 'imperial' ? '5 in' : '130 mm';
  }

  // ---- shapes ----

  private channel(
    text: SpecText,
    key: Key,
    item: ast.Channel,
    name: string,
    area: Declared | undefined
  ): Pick<Drain, 'kind' | 'outline' | 'line' | 'width' | 'depth' | 'concrete'> | undefined {
    const { context } = this;
    const line = this.points.line(text, key, item.line);
    const width = context.given(text, `${key}/width`, item.width as Expression | undefined, 'm');
    const depth = item.depth && context.given(text, `${key}/depth`, item.depth as Expression, 'm');
    const below = item.concrete && context.given(text, `${key}/concrete`, item.concrete as Expression, 'm');
    if (line === undefined || width === undefined) return undefined;
    if (item.depth !== undefined && depth === undefined) return undefined;
    if (item.concrete !== undefined && below === undefined) return undefined;
    if (area === undefined) this.notMet(item.line, name);
    return {
      kind: 'channel',
      outline: besideLine(line, this.reach(line, width.value, name, area)),
      line: {
        from: line.from,
        to: line.to,
        fromName: item.line.from.$refText,
        toName: item.line.to.$refText
      },
      width,
      ...(depth === undefined ? {} : { depth }),
      ...(below === undefined ? {} : { concrete: { below, sides: item.sides } })
    };
  }

  /** In an area it lies within, along one it lies outside, else its line runs through its middle. */
  private reach(line: PointLine, width: number, name: string, area: Declared | undefined): Reach {
    const sideIn = (found: Declared): 'left' | 'right' | undefined => {
      const outline = outlineOf(this.context, this.outlines, found);
      return outline && sideAlong(outline.loop, line);
    };
    const all = (side: 'left' | 'right'): Reach =>
      side === 'left' ? { left: width, right: 0 } : { left: 0, right: width };
    if (area !== undefined) {
      const side = sideIn(area);
      if (side !== undefined) return all(side);
    } else
      for (const found of this.meeting(name)) {
        const side = sideIn(found);
        if (side !== undefined) return all(side === 'left' ? 'right' : 'left');
      }
    return { left: width / 2, right: width / 2 };
  }

  /** A side along the channel that is said to meet a channel, and not which. */
  private notMet({ from, to }: ast.PointLine, drain: string): void {
    const ends = [from, to].map(({ $refText }) => $refText);
    const isAlong = ({ where: { points } }: ast.EdgeItem): boolean =>
      points.some((point, index) => ends.includes(point.$refText) && ends.includes(points[index + 1]?.$refText ?? ''));
    for (const { text, node, name } of this.context.names.areas())
      for (const edges of (node as ast.Area).items.filter(ast.isEdges))
        for (const item of edges.items.filter(one => one.thing?.$refText === 'drain-channel' && isAlong(one)))
          this.context.fault(
            text,
            `area:${name}`,
            item,
            'drain-not-met',
            `The drain ${drain} lies along this side of ${name}: name it, \`meets ${drain}\`. Else no water of ${name} runs into it, and its grate is held against nothing.`,
            { property: 'thing', harmless: true, fixes: [writing(drain)] }
          );
  }

  private gully(
    text: SpecText,
    key: Key,
    node: ast.Drain,
    item: ast.Gully,
    area: Declared | undefined
  ): Pick<Drain, 'kind' | 'outline'> | undefined {
    const outline = this.outlines.read(text, key, item.shape, besideArea(this.context, this.outlines, area));
    if (node.area === undefined)
      return this.context.incomplete(
        text,
        key,
        node,
        `A gully stands in the paving: say in which area, \`drain ${node.name} in ${this.areas()[0] ?? 'terrace'} {\`.`,
        this.areaFixes(text, node)
      );
    return outline && { kind: 'gully', outline: outline.loop };
  }

  private areas(): string[] {
    return this.context.names.areas().map(({ name }) => name);
  }

  private areaFixes(text: SpecText, node: ast.Drain): SaidFix[] {
    const areas = this.areas();
    if (areas.length > MOST_OFFERED) return [];
    return areas.map(area => ({
      title: `Write \`in ${area}\``,
      does: [this.context.changes.behind(text, node, ` in ${area}`, 'name')]
    }));
  }

  // ---- grates and outlet ----

  private grates(text: SpecText, key: Key, node: ast.Drain): Drain['grates'] | undefined {
    const items = node.items.filter(ast.isGrate);
    const [first] = items;
    if (first === undefined)
      return this.context.incomplete(
        text,
        key,
        node,
        `The drain ${node.name} does not say how high its grate lies. Write \`grate\` with a height, such as \`grate 3 in below door-sill\`; \`at A and B\` behind it where it is not level.`
      );
    const read = items.map((item, index) => this.grate(text, `${key}/grate-${index + 1}`, item));
    if (read.includes(undefined)) return undefined;
    const grates: Drain['grates'][number][] = [];
    for (const [index, item] of items.entries())
      for (const grate of read[index]!) {
        const isAgain = grates.some(({ name }) => name === undefined || name === grate.name);
        if (!isAgain && (grate.name !== undefined || grates.length === 0)) grates.push(grate);
        else this.grateTwice(text, key, first, item, grate.name);
      }
    return grates;
  }

  private grateTwice(text: SpecText, key: Key, first: ast.Grate, item: ast.Grate, name: string | undefined): void {
    this.context.fault(
      text,
      key,
      item,
      'said-twice',
      `The height of the grate${name === undefined ? '' : ` at ${name}`} is said twice; the first counts. Take one out.`,
      {
        harmless: true,
        related: first === item ? [] : [{ node: first, text, message: 'Said first here.' }],
        fixes: first === item ? [] : [takingOut(this.context, text, item, { like: first })]
      }
    );
  }

  /** One for each point named, or one all over. */
  private grate(text: SpecText, key: Key, item: ast.Grate): Drain['grates'] | undefined {
    const height = this.heights.read(text, key, item.height);
    const points = item.points.map((point, index) => {
      const name = point?.$refText;
      const at = this.points.named(text, key, item, ['points', index], name);
      return at && { name: name!, at };
    });
    if (height === undefined || points.includes(undefined)) return undefined;
    const z = zOf(height);
    return points.length === 0 ? [{ height, z }] : points.map(point => ({ ...point!, height, z }));
  }

  private outlet(text: SpecText, key: Key, item: ast.Outlet): Drain['outlet'] {
    const outletKey = this.context.place(`${key}/outlet`, text, item);
    const name = item.at?.$refText;
    const at = this.points.named(text, outletKey, item, 'at', name);
    return (
      at && {
        at,
        name: name!,
        ...(item.to === undefined ? {} : { to: item.to }),
        ...(item.load === undefined ? {} : { loadClass: item.load })
      }
    );
  }
}

/** A drain that takes its width from an area is kept out of it. */
export function keptOutBy({ key, name, area, outline }: Drain): KeptOut | undefined {
  return area === undefined ? undefined : { key, name, kind: 'drain', area, outline };
}

function besideLine({ from, to }: PointLine, { left, right }: Reach): Loop {
  const length = distance(from, to);
  const corner = (forward: number, out: number): Point => along(from, to, forward, out)!;
  return cornerLoop([corner(0, -right), corner(length, -right), corner(length, left), corner(0, left)]);
}

/** On which side of a line an outline lies that has a straight side along it; undefined where it has none. */
function sideAlong(loop: Loop, { from, to }: PointLine): 'left' | 'right' | undefined {
  const length = distance(from, to);
  const [x, y] = [(to.x - from.x) / length, (to.y - from.y) / length];
  const forward = (at: Point): number => (at.x - from.x) * x + (at.y - from.y) * y;
  const off = (at: Point): number => Math.abs((at.y - from.y) * x - (at.x - from.x) * y);
  for (const side of loop) {
    if (side.arc !== undefined || off(side.from) > ON_LINE || off(side.to) > ON_LINE) continue;
    const [start, end] = [forward(side.from), forward(side.to)];
    if (Math.min(Math.max(start, end), length) - Math.max(Math.min(start, end), 0) <= EDGE_TOLERANCE) continue;
    return end > start ? sideOfLoop(loop, side.from, side.to) : sideOfLoop(loop, side.to, side.from);
  }
  return undefined;
}

/** Nobody sets out a side closer to a line, m. */
const ON_LINE = 0.0005;
