import { distance, inside, rectangleLoop, type Point } from '../geometry/index.ts';
import type { Given, Key, Material, Role } from '../job/job.ts';
import type { SoftSpot } from '../job/log.ts';
import * as ast from '../syntax/generated/ast.ts';
import type { Expression } from './amounts.ts';
import type { Context } from './context.ts';
import type { Declared, SpecText } from './names.ts';
import type { Outlines } from './outlines.ts';
import { besideArea, outlineOf, sideOfLoop } from './own-side.ts';
import type { Points } from './points.ts';
import { saidOnce } from './said-once.ts';
import { spanOf } from './text-changes.ts';
import type { Things } from './things.ts';

type Clauses = ReadonlyMap<string, ast.SoftSpotClause>;

/** A place as told, and the same on the other side where it lies `out` from a line. */
interface Told {
  readonly left: Point;
  readonly line?: { readonly from: Point; readonly to: Point };
}

/** More areas to choose from help nobody. */
const MOST_OFFERED = 4;

const STONE: readonly Role[] = ['base', 'sub-base'];

/** Reads where the ground was dug out deeper than the design. */
export class SoftSpots {
  private readonly context: Context;
  private readonly points: Points;
  private readonly outlines: Outlines;
  private readonly things: Things;

  constructor(context: Context, points: Points, outlines: Outlines, things: Things) {
    this.context = context;
    this.points = points;
    this.outlines = outlines;
    this.things = things;
  }

  read(text: SpecText, key: Key, node: ast.SoftSpot, clauses: readonly ast.SoftSpotClause[]): SoftSpot | undefined {
    const { context } = this;
    const said = saidOnce(context, text, key, clauses, what);
    const size = this.things.size(text, `${key}/size`, node.size, 2, ['length', 'depth']);
    const deeper = this.deeper(text, key, node, said.get('deeper'));
    const filled = said.get('filled');
    const material = filled && this.material(text, key, filled);
    const centre = said.get('centre');
    const turn = centre && this.turn(text, key, centre);
    const place = this.place(text, key, node, said);
    if (size === undefined || deeper === undefined || place === undefined || turn === undefined) return undefined;
    if (filled !== undefined && material === undefined) return undefined;
    const [width, depth] = [size[0]!.value, size[1]!.value];
    const corner = { x: place.centre.x - width / 2, y: place.centre.y - depth / 2 };
    return {
      kind: 'soft-spot',
      area: `area:${place.area.name}`,
      outline: rectangleLoop(width, depth, corner, turn),
      deeper,
      ...(material === undefined ? {} : { material })
    };
  }

  /** The areas that one could lie in, as far as is told without its numbers. */
  areasOf(text: SpecText, node: ast.SoftSpot): readonly Declared[] {
    const { names } = this.context;
    const said = node.area && names.peek(text, 'area', node.area.$refText);
    return said === undefined ? names.areas() : [said];
  }

  private deeper(
    text: SpecText,
    key: Key,
    node: ast.SoftSpot,
    clause: ast.SoftSpotClause | undefined
  ): Given | undefined {
    if (clause !== undefined)
      return this.context.given(text, `${key}/deeper`, clause.deeper as Expression | undefined, 'm');
    const deep = this.context.system === 'imperial' ? '4 in' : '100 mm';
    return this.incomplete(text, key, node, `How much deeper was it dug? Write it behind a comma: \`${deep} deeper\`.`);
  }

  private material(text: SpecText, key: Key, clause: ast.SoftSpotClause): Material | undefined {
    const found = this.context.find(text, key, clause, 'material', clause.material?.$refText, ['material'], {
      among: () => this.things.fittingNames(text, 'base')
    });
    const material = found && this.things.material(found);
    if (material === undefined || material.roles.some(role => STONE.includes(role))) return material;
    return this.context.fault(
      text,
      key,
      clause,
      'wrong-role',
      `A soft spot is filled with stone; the role of \`${material.name}\` is ${material.roles.join(', ')}.${this.things.fitting(text, 'base')}`,
      { property: 'material', fixes: this.things.roleFixes(text, found!, 'base') }
    );
  }

  // ---- its place ----

  /** The first size runs along the line that the centre is told by, radians from the x axis. */
  private turn(text: SpecText, key: Key, { at }: ast.SoftSpotClause): number | undefined {
    if (!ast.isFromLine(at)) return 0;
    const line = this.points.line(text, key, at.line);
    return line && Math.atan2(line.to.y - line.from.y, line.to.x - line.from.x);
  }

  private place(
    text: SpecText,
    key: Key,
    node: ast.SoftSpot,
    said: Clauses
  ): { readonly area: Declared; readonly centre: Point } | undefined {
    const clause = said.get('centre');
    if (clause === undefined) {
      const example = this.context.system === 'imperial' ? 'centre (6 ft, 3 ft)' : 'centre (2, 1) m';
      return this.incomplete(
        text,
        key,
        node,
        `Where does it lie? Write its middle behind a comma: \`${example}\`, or \`centre … along A to B\` and how far \`out\`.`
      );
    }
    const aside = said.get('aside')?.aside;
    const areas = this.context.names.areas();
    if (node.area !== undefined || areas.length === 1) {
      const area =
        node.area === undefined ? areas[0] : this.context.find(text, key, node, 'area', node.area.$refText, ['area']);
      const beside = besideArea(this.context, this.outlines, area);
      const centre = beside && this.points.spot(text, `${key}/centre`, clause.at, aside, beside);
      return area && centre && { area, centre };
    }
    const told = this.told(text, key, clause, aside);
    if (told === undefined) return undefined;
    const broken: string[] = [];
    for (const area of areas) {
      const read = this.context.watch(() => {
        const place = this.inArea(area, told);
        const outline = outlineOf(this.context, this.outlines, area);
        return place && outline && { place, holds: inside(outline.loop, place.centre) };
      });
      if (read.value?.holds) return read.value.place;
      broken.push(...read.broken);
    }
    if (broken.length === 0) return this.inNoArea(text, key, node, areas);
    // One of those whose outline is not known may hold it.
    this.context.breaks(broken[0]!);
    return undefined;
  }

  /** Read once, as if `out` went to the left. */
  private told(text: SpecText, key: Key, clause: ast.SoftSpotClause, aside: ast.Aside | undefined): Told | undefined {
    let line: Told['line'];
    const left = this.points.spot(text, `${key}/centre`, clause.at, aside, {
      out: (from, to) => {
        line = { from, to };
        return 'left';
      },
      side: () => undefined,
      sideNames: [],
      sidesMeeting: () => []
    });
    return left && { left, ...(line === undefined || aside === undefined ? {} : { line }) };
  }

  private inArea(area: Declared, { left, line }: Told): { area: Declared; centre: Point } | undefined {
    const outline = outlineOf(this.context, this.outlines, area);
    if (outline === undefined) return undefined;
    if (line === undefined || sideOfLoop(outline.loop, line.from, line.to) === 'left') return { area, centre: left };
    return { area, centre: mirrored(left, line) };
  }

  private inNoArea(text: SpecText, key: Key, node: ast.SoftSpot, areas: readonly Declared[]): undefined {
    const names = areas.map(({ name }) => name);
    const behindWord = spanOf(node).start + 'soft-spot'.length;
    const fixes =
      names.length > MOST_OFFERED
        ? []
        : names.map(name => ({
            title: `Write \`in ${name}\``,
            does: [this.context.changes.change(text, { start: behindWord, end: behindWord, text: ` in ${name}` })]
          }));
    return this.context.fault(
      text,
      key,
      node,
      'thing-incomplete',
      `The middle of this soft spot lies in no area. Say in which it is: \`soft-spot in ${names[0] ?? 'terrace'} …\`.`,
      { fixes }
    );
  }

  private incomplete(text: SpecText, key: Key, node: ast.SoftSpot, message: string): undefined {
    return this.context.fault(text, key, node, 'thing-incomplete', message);
  }
}

function what({ aside, at, deeper }: ast.SoftSpotClause): 'aside' | 'centre' | 'deeper' | 'filled' {
  if (aside !== undefined) return 'aside';
  return at !== undefined ? 'centre' : deeper !== undefined ? 'deeper' : 'filled';
}

function mirrored(at: Point, { from, to }: NonNullable<Told['line']>): Point {
  const length = distance(from, to);
  const [x, y] = [(to.x - from.x) / length, (to.y - from.y) / length];
  const off = (at.y - from.y) * x - (at.x - from.x) * y;
  return { x: at.x + 2 * off * y, y: at.y - 2 * off * x };
}
