import type { SetUp, SiteHeights, SpotLevel } from '../job/heights.ts';
import type { Given, Key } from '../job/job.ts';
import { printLength } from '../measures/print.ts';
import * as ast from '../syntax/generated/ast.ts';
import type { Expression } from './amounts.ts';
import { ANY, type Context } from './context.ts';
import type { Heights } from './heights.ts';
import { zOf } from '../job/heights.ts';
import type { SpecText } from './names.ts';
import { endMeasure, type Points } from './points.ts';

/** Readings of one place that differ by more than this were not taken with care: 3 mm, about 1/8 in (common practice). */
const SAME_HEIGHT = 0.003;

/** Levelling rods are made up to 25 ft, staffs up to 5 m (common practice), m. */
const LONGEST_ROD = 7.62;

/** Reads heights taken at points: as written, or by rod from one or more set-ups of the instrument. */
export class SiteHeightsReader {
  private readonly context: Context;
  private readonly points: Points;
  private readonly heights: Heights;
  private readonly ground: SpotLevel[] = [];
  private readonly things = new Map<string, { key: Key; name: string; spots: SpotLevel[] }>();
  readonly setUps: SetUp[] = [];
  readonly broken: string[] = [];

  constructor(context: Context, points: Points, heights: Heights) {
    this.context = context;
    this.points = points;
    this.heights = heights;
  }

  /** All of a job. Blocks follow each other as in the text: a later set-up may look back at what an earlier one found. */
  read(texts: readonly SpecText[], breakLines: SiteHeights['breakLines']): SiteHeights | undefined {
    let index = 0;
    for (const text of texts)
      for (const node of text.parsed.root.elements.filter(ast.isHeights)) {
        index++;
        if (this.context.isBroken(text, node)) {
          this.broken.push('heights');
          continue;
        }
        const key = `heights:${index}`;
        const { broken } = this.context.watch(() => this.block(text, key, node));
        this.broken.push(...broken);
      }
    const things = [...this.things.values()];
    return this.ground.length === 0 && things.length === 0 ? undefined : { ground: this.ground, breakLines, things };
  }

  private block(text: SpecText, key: Key, node: ast.Heights): void {
    this.context.place(key, text, node);
    const setUp = node.tool === undefined ? undefined : this.setUp(text, key, node);
    if (node.tool !== undefined && setUp === undefined) return;
    const at = setUp === undefined ? undefined : this.setUps.push(setUp) - 1;
    for (const [row, line] of node.items.entries()) {
      const last = line.spots.at(-1)?.height;
      const list = { measure: endMeasure(last?.by as Expression | undefined), node: last };
      for (const [column, spot] of line.spots.entries())
        this.spot(text, `${key}/${row + 1}-${column + 1}`, line, spot, list, at);
    }
  }

  private spot(
    text: SpecText,
    key: Key,
    line: ast.HeightsOf,
    node: ast.SpotHeight,
    list: { measure: string | undefined; node: ast.Height | undefined },
    setUp: number | undefined
  ): void {
    const point = this.points.named(text, key, node, 'at', node.at?.$refText);
    const written =
      setUp === undefined ? this.heightOf(text, key, node, list) : this.reading(text, key, node, list, setUp);
    if (point === undefined || written === undefined) return;
    const spots = this.spotsOf(text, key, line);
    if (spots === undefined) return;
    const level: SpotLevel = {
      key,
      name: node.at.$refText,
      at: point,
      z: written.z,
      written: written.given,
      ...(setUp === undefined ? {} : { setUp })
    };
    const before = spots.find(({ name }) => name === level.name);
    if (before === undefined) {
      spots.push(level);
      return;
    }
    const apart = Math.abs(before.z - level.z);
    if (apart > SAME_HEIGHT)
      this.context.fault(
        text,
        key,
        node,
        'heights-differ',
        `${line.ground ? 'The ground' : line.of!.$refText} at ${level.name} was given before, ${printLength(apart, this.context.system)} ${before.z > level.z ? 'higher' : 'lower'}. The first counts; measure it again.`,
        { harmless: true }
      );
  }

  private heightOf(
    text: SpecText,
    key: Key,
    node: ast.SpotHeight,
    list: { measure: string | undefined; node: ast.Height | undefined }
  ): { z: number; given: Given } | undefined {
    const height = this.heights.read(text, key, node.height, list.node);
    return height && { z: zOf(height), given: height.above };
  }

  private reading(
    text: SpecText,
    key: Key,
    node: ast.SpotHeight,
    list: { measure: string | undefined; node: ast.Height | undefined },
    setUp: number
  ): { z: number; given: Given } | undefined {
    const { height } = node;
    if (height.mark !== undefined || height.level)
      return this.context.fault(
        text,
        key,
        height,
        'reading-expected',
        'Here stands what the rod reads. Write heights above or below a benchmark into a block of their own: `heights { … }`.'
      );
    const given = this.context.given(text, key, height.by as Expression | undefined, 'm', ANY, list);
    if (given !== undefined && given.value > LONGEST_ROD)
      return this.context.fault(
        text,
        key,
        height,
        'out-of-range',
        `No rod reads ${given.written}: the longest are 25 ft (7.6 m). Is it a height? Heights go into a block of their own: \`heights { … }\`.`
      );
    return given && { z: this.setUps[setUp]!.sight - given.value, given };
  }

  private spotsOf(text: SpecText, key: Key, line: ast.HeightsOf): SpotLevel[] | undefined {
    if (line.ground) return this.ground;
    const name = line.of?.$refText ?? '';
    const known = this.things.get(name);
    if (known !== undefined) return known.spots;
    const found = this.context.find(text, key, line, 'of', name, ['existing']);
    if (found === undefined) return undefined;
    const thing = { key: `existing:${found.name}`, name: found.name, spots: [] };
    this.things.set(found.name, thing);
    return thing.spots;
  }

  /** The line of sight is the mean of what its back sights give. */
  private setUp(text: SpecText, key: Key, node: ast.Heights): SetUp | undefined {
    const { context } = this;
    if (node.backsights.length === 0)
      return context.fault(
        text,
        key,
        node,
        'back-sight-missing',
        'Say what the rod reads on something whose height is known: `heights by laser, door-sill reads 31 1/4 in {`.',
        { property: 'tool' }
      );
    const backsights = node.backsights.flatMap((back, index) => {
      const backKey = `${key}/back-sight-${index + 1}`;
      const z = this.knownHeight(text, backKey, back);
      const reading = context.given(text, backKey, back.reading as Expression | undefined, 'm', ANY);
      if (z === undefined || reading === undefined) return [];
      const name = nameOf(back);
      return [{ key: backKey, name, z, reading }];
    });
    if (backsights.length < node.backsights.length) return undefined;
    const sights = backsights.map(({ z, reading }) => z + reading.value);
    const sight = sights.reduce((total, one) => total + one, 0) / sights.length;
    const spread = Math.max(...sights) - Math.min(...sights);
    if (spread > SAME_HEIGHT)
      context.fault(
        text,
        key,
        node,
        'set-up-does-not-close',
        `The back sights put the instrument ${printLength(spread, context.system)} apart in height: ${backsights.map(({ name }) => name).join(' and ')} do not fit each other. Read them again; the mean is taken.`,
        { property: 'tool', harmless: true }
      );
    return {
      key,
      tool: node.tool!,
      ...(node.date === undefined ? {} : { date: node.date }),
      sight,
      backsights: backsights.map((back, index) => ({ ...back, misfit: sights[index]! - sight }))
    };
  }

  private knownHeight(text: SpecText, key: Key, node: ast.Backsight): number | undefined {
    if (node.at === undefined) {
      const found = this.context.find(text, key, node, 'of', node.of?.$refText, ['benchmark']);
      const z = found && this.heights.zOf(found);
      if (found !== undefined && z === undefined) this.context.breaks(found.name);
      return z;
    }
    const thing = node.of && this.context.find(text, key, node, 'of', node.of.$refText, ['existing']);
    const spots = node.ground ? this.ground : this.things.get(thing?.name ?? '')?.spots;
    const spot = spots?.find(({ name }) => name === node.at!.$refText);
    this.points.named(text, key, node, 'at', node.at.$refText);
    return (
      spot?.z ??
      this.context.fault(
        text,
        key,
        node,
        'back-sight-unknown',
        `The height of ${nameOf(node)} is not known yet. Look back at a benchmark, or at what an earlier set-up read.`
      )
    );
  }
}

/** `door-sill`, `ground A`, `old-walk M`. */
function nameOf({ ground, of, at }: ast.Backsight): string {
  return [ground ? 'ground' : of?.$refText, at?.$refText].filter(word => word !== undefined).join(' ');
}
