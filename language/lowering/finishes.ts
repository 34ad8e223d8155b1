import type { Point } from '../geometry/index.ts';
import type { Finish } from '../job/heights.ts';
import type { Given, Key } from '../job/job.ts';
import { bestPlane } from '../levels/best-plane.ts';
import { foldAlong } from '../levels/fold.ts';
import { combinedFalls, type Fall, type Levelled, planeRising, planeThrough, twistOf } from '../levels/planes.ts';
import { type Across, heightAt, type Surface } from '../levels/surface.ts';
import { printLength } from '../measures/print.ts';
import * as ast from '../syntax/generated/ast.ts';
import type { Expression } from './amounts.ts';
import { ANY, type Context, NOT_NEGATIVE } from './context.ts';
import { isTowardsSide } from './fall-towards.ts';
import type { Heights } from './heights.ts';
import { zOf } from '../job/heights.ts';
import type { Declared, SpecText } from './names.ts';
import type { Outlines } from './outlines.ts';
import { besideArea } from './own-side.ts';
import type { PathLines } from './path-lines.ts';
import type { Beside, PointLine, Points } from './points.ts';

/** Corner heights that lie off a plane by no more than this are taken as a plane, m: nobody lays finer. */
const FLAT = 0.0005;

/** Lines are set out no closer, m. */
const PAST_END = 0.01;

type Read = Finish | undefined;

/** Reads the finished face of areas. */
export class Finishes {
  private readonly context: Context;
  private readonly points: Points;
  private readonly heights: Heights;
  private readonly outlines: Outlines;
  private readonly lines: PathLines;
  private readonly known = new Map<ast.Area, { value: Read; broken: readonly string[] } | 'being read'>();

  constructor(context: Context, points: Points, heights: Heights, outlines: Outlines, lines: PathLines) {
    this.context = context;
    this.points = points;
    this.heights = heights;
    this.outlines = outlines;
    this.lines = lines;
  }

  /** The finish of an area; undefined where none is said, or it is faulty. */
  of(found: Declared): Read {
    const node = found.node as ast.Area;
    const item = node.items.find(ast.isFinish);
    if (item === undefined) return undefined;
    const known = this.known.get(node);
    if (known === 'being read')
      return this.context.fault(
        found.text,
        `area:${found.name}`,
        item,
        'let-in-circle',
        `\`as ${node.name}\` leads round in a circle.`
      );
    if (known !== undefined) {
      for (const name of known.broken) this.context.breaks(name);
      return known.value;
    }
    this.known.set(node, 'being read');
    const read = this.context.watch(() => this.read(found, item));
    this.known.set(node, read);
    for (const name of read.broken) this.context.breaks(name);
    return read.value;
  }

  private read(declared: Declared, item: ast.Finish): Read {
    const { text, name } = declared;
    const key = `area:${name}/finish`;
    const beside = besideArea(this.context, this.outlines, declared)!;
    if (item.like !== undefined) return this.like(text, key, item, beside);
    if (item.path !== undefined) return this.alongLine(text, key, item);
    if (item.corners.length > 0) return this.corners(text, key, item);
    const height = this.heights.read(text, key, item.height);
    if (height === undefined) return undefined;
    const z = zOf(height);
    if (item.falls.length === 0 && item.line === undefined && item.at === undefined) {
      const surface: Surface = { kind: 'plane', plane: { at: z, alongX: 0, alongY: 0 } };
      return { key, level: height, surface, heights: [{ name: 'all over', z, key }], falls: [] };
    }
    const line = item.line && this.points.line(text, key, item.line, beside);
    const at = item.at && this.points.named(text, key, item, 'at', item.at.$refText);
    if (item.line !== undefined && line === undefined) return undefined;
    if (item.at !== undefined && at === undefined) return undefined;
    const falls = this.falls(text, key, item, beside, line, at);
    if (falls === undefined) return undefined;
    const point = line?.from ?? at ?? falls.from;
    if (point === undefined)
      return this.context.fault(
        text,
        key,
        item,
        'finish-without-place',
        'Say where the finish has this height: `along A to B`, or `at A`.'
      );
    // Along the line it is level, unless a fall along it is said.
    const level: Fall[] =
      line === undefined || falls.alongLine ? [] : [{ direction: less(line.to, line.from), fall: 0 }];
    const uphill = combinedFalls([...level, ...falls.all]);
    if ('fault' in uphill) return this.fallsDisagree(text, key, item, uphill.fault);
    const plane = planeRising({ point, height: z }, uphill);
    return {
      key,
      surface: { kind: 'plane', plane },
      heights: [{ name: line?.name ?? item.at?.$refText ?? falls.name ?? '', at: point, z, key }],
      falls: falls.given
    };
  }

  private like(text: SpecText, key: Key, item: ast.Finish, beside: Beside): Read {
    const found = this.context.find(text, key, item, 'like', item.like!.$refText, ['area']);
    if (found === undefined || this.context.isBroken(found.text, found.node)) return undefined;
    const other = this.of(found);
    const saysNone = !(found.node as ast.Area).items.some(ast.isFinish);
    if (saysNone)
      return this.context.fault(
        text,
        key,
        item,
        'thing-incomplete',
        `The area ${found.name} has no \`finish\` to be like.`
      );
    if (other === undefined) return undefined;
    const as = `area:${found.name}`;
    if (item.line === undefined) {
      if (item.falls.length === 0) return { ...other, as };
      return this.context.fault(
        text,
        key,
        item,
        'finish-without-place',
        `Say along which line the heights are those of ${found.name}: \`finish as ${found.name} along A to B, …\`.`
      );
    }
    const line = this.points.line(text, key, item.line, beside);
    if (line === undefined) return undefined;
    const ends: [Levelled, Levelled] = [
      { point: line.from, height: heightAt(other.surface, line.from) },
      { point: line.to, height: heightAt(other.surface, line.to) }
    ];
    const falls = this.falls(text, key, item, beside, line);
    if (falls === undefined) return undefined;
    const run = Math.hypot(line.to.x - line.from.x, line.to.y - line.from.y);
    const along: Fall = { direction: less(line.to, line.from), fall: (ends[0].height - ends[1].height) / run };
    const uphill = combinedFalls([along, ...falls.all]);
    if ('fault' in uphill) return this.fallsDisagree(text, key, item, uphill.fault);
    const names = line.name.split(' to ');
    return {
      key,
      as,
      surface: { kind: 'plane', plane: planeRising(ends[0], uphill) },
      heights: ends.map(({ point, height }, index) => ({ name: names[index]!, at: point, z: height, key })),
      falls: falls.given
    };
  }

  private falls(
    text: SpecText,
    key: Key,
    item: ast.Finish,
    beside: Beside,
    along: PointLine | undefined,
    place: Point | undefined = along?.from
  ): { all: Fall[]; given: Given[]; alongLine: boolean; from?: Point; name?: string } | undefined {
    const all: Fall[] = [];
    const given: Given[] = [];
    let alongLine = false;
    let start: PointLine | undefined;
    for (const [index, fall] of item.falls.entries()) {
      const fallKey = `${key}/fall-${index + 1}`;
      const rate = this.context.given(text, fallKey, fall.rate as Expression | undefined, '', NOT_NEGATIVE);
      const line = fall.line && this.points.line(text, fallKey, fall.line, beside);
      if (isTowardsSide(this.context, text, fallKey, fall, beside)) return undefined;
      const towards = fall.towards && this.points.named(text, fallKey, fall, 'towards', fall.towards.$refText);
      if (rate === undefined || (fall.line !== undefined && line === undefined)) return undefined;
      if (fall.towards !== undefined && towards === undefined) return undefined;
      const direction = line
        ? fall.away
          ? squareTo(line, beside.out(line.from, line.to))
          : less(line.to, line.from)
        : towards && place && less(towards, place);
      if (direction === undefined) {
        return this.context.fault(
          text,
          key,
          fall,
          'finish-without-place',
          'Say from where it falls: `finish 3 in below door-sill along A to B, falling 1/4 in per ft towards C`.'
        );
      }
      start ??= line;
      // A fall said along the very line of the height.
      alongLine ||= line !== undefined && !fall.away && along !== undefined && isAlong(line, along);
      all.push({ direction, fall: fall.way === 'rising' ? -rate.value : rate.value });
      given.push(rate);
    }
    return { all, given, alongLine, ...(start === undefined ? {} : { from: start.from, name: start.name }) };
  }

  private fallsDisagree(text: SpecText, key: Key, item: ast.Finish, fault: string): undefined {
    return this.context.fault(
      text,
      key,
      item,
      'falls-do-not-agree',
      fault === 'no-length'
        ? 'This fall has no direction: name another point.'
        : 'These falls contradict each other: one plane can have two falls, in different directions. Take one out.'
    );
  }

  // ---- heights at corners ----

  private corners(text: SpecText, key: Key, item: ast.Finish): Read {
    const last = item.corners.at(-1)!.height;
    const corners = item.corners.flatMap((corner, index) => {
      const cornerKey = `${key}/corner-${index + 1}`;
      const point = this.points.named(text, cornerKey, corner, 'at', corner.at?.$refText);
      const height = this.heights.read(text, cornerKey, corner.height, last);
      return point && height ? [{ name: corner.at.$refText, point, height: zOf(height), key: cornerKey }] : [];
    });
    if (corners.length < item.corners.length) return undefined;
    const surface = this.surfaceOver(text, key, item, corners);
    if (surface === undefined) return undefined;
    const [a, b, c, d] = corners;
    const twist = surface.kind === 'twisted' ? twistOf([a!, b!, c!, d!]) : undefined;
    return {
      key,
      surface,
      heights: corners.map(corner => ({ name: corner.name, at: corner.point, z: corner.height, key: corner.key })),
      falls: [],
      ...(typeof twist === 'number' ? { twist } : {})
    };
  }

  private surfaceOver(
    text: SpecText,
    key: Key,
    item: ast.Finish,
    corners: readonly (Levelled & { readonly name: string })[]
  ): Surface | undefined {
    const tell = (message: string): undefined => this.context.fault(text, key, item, 'finish-does-not-fit', message);
    if (corners.length < 3)
      return tell(
        'Two heights leave the fall across open. Give three, or one height with a fall: `finish 3 in below door-sill along A to B, falling 1/4 in per ft away from A to B`.'
      );
    const names = corners.map(({ name }) => name).join(', ');
    const best = bestPlane(
      corners.map(({ point }) => point),
      corners.map(({ height }) => height)
    );
    if ('fault' in best) return tell(`${names} lie in one line: no plane follows from their heights.`);
    if (item.fold !== undefined) return this.folded(text, key, item, corners);
    const four =
      corners.length === 4 ? (corners as unknown as readonly [Levelled, Levelled, Levelled, Levelled]) : undefined;
    if (item.twisted) {
      if (four === undefined)
        return tell('Only four corners can be twisted evenly. Fold the area along a line instead.');
      if (!isRound(four.map(({ point }) => point)))
        return tell(`Name the corners in their order round the area: ${names} cross over.`);
      return {
        kind: 'twisted',
        corners: four.map(({ point }) => point) as never,
        heights: four.map(({ height }) => height) as never
      };
    }
    if (corners.length === 3) {
      const plane = planeThrough(corners[0]!, corners[1]!, corners[2]!);
      return 'fault' in plane ? tell(`${names} lie in one line: no plane follows.`) : { kind: 'plane', plane };
    }
    if (Math.abs(best.deviation) <= FLAT) return { kind: 'plane', plane: best.plane };
    const off = printLength(Math.abs(best.deviation), this.context.system);
    const others = `\`folded along ${corners[0]!.name} to ${corners[2]!.name}\``;
    return tell(
      `These heights do not lie in a plane: ${corners[best.furthest]!.name} is ${off} off the plane nearest to all. Change a height, or say ${four === undefined ? others : `\`twisted evenly\` or ${others}`}.`
    );
  }

  private folded(
    text: SpecText,
    key: Key,
    item: ast.Finish,
    corners: readonly (Levelled & { readonly name: string })[]
  ): Surface | undefined {
    const indexOf = (name: string | undefined): number => corners.findIndex(corner => corner.name === name);
    const [from, to] = [indexOf(item.fold!.from?.$refText), indexOf(item.fold!.to?.$refText)];
    this.points.line(text, key, item.fold);
    const tell = (message: string): undefined =>
      this.context.fault(text, key, item.fold!, 'finish-does-not-fit', message);
    if (from < 0 || to < 0) return tell('The fold runs between two of the corners whose heights are given.');
    const folded = foldAlong(corners, from, to);
    if (!('fault' in folded)) return folded;
    if (folded.fault === 'no-fold') return tell('Fold the area between two corners that are no neighbours.');
    const corner = corners[folded.corner]!.name;
    return folded.fault === 'over-fold'
      ? tell(`${corner} does not lie on its side of the fold: name the corners in their order round the area.`)
      : tell(
          `On its side of the fold ${corner} lies ${printLength(Math.abs(folded.deviation), this.context.system)} off a plane. Change its height, or fold along another line.`
        );
  }

  // ---- along a line ----

  private alongLine(text: SpecText, key: Key, item: ast.Finish): Read {
    const line = this.lines.named(text, key, item, 'path', item.path!.$refText);
    const stations = item.stations.flatMap((station, index) => {
      const stationKey = `${key}/station-${index + 1}`;
      const height = this.heights.read(text, stationKey, station.height);
      if (station.station === undefined)
        this.context.fault(
          text,
          stationKey,
          station,
          'finish-without-place',
          'Say how far along the line it is so high: `finish along spine, 9.80 m at 0, 9.95 m at 4 m`.'
        );
      const at = this.context.given(text, `${stationKey}/at`, station.station as Expression | undefined, 'm', ANY);
      return height && at ? [{ at: at.value, height: zOf(height), written: at.written, key: stationKey }] : [];
    });
    const across = this.across(text, key, item.across);
    if (line === undefined || across === undefined || stations.length < item.stations.length) return undefined;
    const isInOrder = stations.every((station, index) => index === 0 || station.at > stations[index - 1]!.at);
    if (!isInOrder)
      return this.context.fault(
        text,
        key,
        item,
        'finish-does-not-fit',
        'Give the heights in their order along the line, each further on than the one before.'
      );
    const last = stations.at(-1)!;
    if (last.at > line.length + PAST_END)
      this.context.fault(
        text,
        key,
        item.stations.at(-1)!,
        'height-past-line',
        `The line ${item.path!.$refText} is ${printLength(line.length, this.context.system)} long: a height at ${last.written} lies past its end, and is not reached on it.`,
        { property: 'station', harmless: true }
      );
    const surface: Surface = {
      kind: 'along',
      line,
      stations: stations.map(({ at, height }) => ({ at, height })),
      across: across.across
    };
    return {
      key,
      surface,
      heights: stations.map(({ written, height, key: at }) => ({ name: `at ${written}`, z: height, key: at })),
      falls: across.given
    };
  }

  private across(
    text: SpecText,
    key: Key,
    node: ast.Across | undefined
  ): { across: Across; given: Given[] } | undefined {
    if (node === undefined) return { across: { kind: 'fall', toLeft: 0 }, given: [] };
    const rate = this.context.given(text, `${key}/across`, node.rate as Expression | undefined, '', NOT_NEGATIVE);
    if (rate === undefined) return undefined;
    const across: Across = node.camber
      ? { kind: 'camber', fall: rate.value }
      : { kind: 'fall', toLeft: node.side === 'left' ? rate.value : -rate.value };
    return { across, given: [rate] };
  }
}

function less(to: Point, from: Point): Point {
  return { x: to.x - from.x, y: to.y - from.y };
}

function squareTo({ from, to }: PointLine, side: 'left' | 'right'): Point {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  return side === 'left' ? { x: -dy, y: dx } : { x: dy, y: -dx };
}

function isAlong(a: PointLine, b: PointLine): boolean {
  const cross = (a.to.x - a.from.x) * (b.to.y - b.from.y) - (a.to.y - a.from.y) * (b.to.x - b.from.x);
  const lengths = Math.hypot(a.to.x - a.from.x, a.to.y - a.from.y) * Math.hypot(b.to.x - b.from.x, b.to.y - b.from.y);
  return Math.abs(cross) < 1e-6 * lengths;
}

/** Four corners run round a shape that does not cross itself. */
function isRound(corners: readonly Point[]): boolean {
  const turns = corners.map((corner, index) => {
    const next = corners[(index + 1) % corners.length]!;
    const after = corners[(index + 2) % corners.length]!;
    return Math.sign((next.x - corner.x) * (after.y - next.y) - (next.y - corner.y) * (after.x - next.x));
  });
  const left = turns.filter(turn => turn > 0).length;
  return left !== 2 && turns.every(turn => turn !== 0);
}
