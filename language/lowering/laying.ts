import { sideLength, type Point } from '../geometry/index.ts';
import { distance } from '../geometry/outline.ts';
import type {
  Band,
  Bond,
  Border,
  BorderCourse,
  Country,
  Edge,
  Given,
  Joint,
  Key,
  Paving,
  Start,
  Unit
} from '../job/job.ts';
import { MOST_CARRIED_ON } from '../laying/area-to-lay.ts';
import { kindsOf } from '../laying/bonds/cell-bond.ts';
import { printLength } from '../measures/print.ts';
import * as ast from '../syntax/generated/ast.ts';
import type { Expression } from './amounts.ts';
import { isSaidPavedOver } from './boxes.ts';
import { ANY, NOT_NEGATIVE, type Context } from './context.ts';
import type { Edges } from './edges.ts';
import type { Declared, SpecText } from './names.ts';
import type { NamedOutline } from './outlines.ts';
import type { Points } from './points.ts';
import { writing } from './said-fix.ts';
import { saidAgain, saidOnce, takingOut } from './said-once.ts';
import { spanOf } from './text-changes.ts';
import { lastMeasure, type Things } from './things.ts';
import type { Usuals } from './usuals.ts';

/** The corner of an outline is met within this distance, m. */
const SAME_POINT = 1e-6;

/** The same width of random courses, within what units differ by, m. */
const SAME_WIDTH = 0.0005;

/** Reads how units lie: paving, start, borders and bands. */
export class Laying {
  private readonly context: Context;
  private readonly things: Things;
  private readonly points: Points;
  private readonly edges: Edges;
  private readonly usuals: Usuals;

  constructor(context: Context, things: Things, points: Points, edges: Edges, usuals: Usuals) {
    this.context = context;
    this.things = things;
    this.points = points;
    this.edges = edges;
    this.usuals = usuals;
  }

  // ---- paving ----

  paving(text: SpecText, key: Key, item: ast.Paving, country: Country | undefined): Paving | undefined {
    saidAgain(
      this.context,
      text,
      key,
      item,
      'units',
      item.units.map(unit => unit.$refText)
    );
    const units = item.units.map((unit, index) => this.unit(text, key, item, ['units', index], unit.$refText));
    if (item.units.length === 0) this.context.breaks(key);
    const found = this.context.find(text, key, item, 'bond', item.bond?.$refText, ['bond']);
    const bond = found && this.things.bond(found);
    if (bond !== undefined) this.context.place(`${key}/paving/bond`, text, item, 'bond');
    const joint = this.joint(text, `${key}/paving`, item.joints, country);
    const [first, ...others] = units.filter(unit => unit !== undefined);
    if (first === undefined || units.includes(undefined) || bond === undefined || joint === undefined) return undefined;
    const all = [first, ...others] as const;
    const odd = misfit(bond, all);
    if (odd !== undefined)
      return this.context.fault(text, key, item, 'units-do-not-fit-bond', odd.message, {
        property: 'bond',
        fixes: (odd.bonds ?? []).map(writing)
      });
    return { key: `${key}/paving`, units: [...all], bond, joint };
  }

  private unit(
    text: SpecText,
    key: Key,
    item: ast.Paving | ast.Border | ast.Band,
    property: string | [string, number],
    name: string | undefined
  ): Unit | undefined {
    const found = this.context.find(text, key, item, property, name, ['unit']);
    return found && this.things.unit(found);
  }

  /** A width outside the usual limits is meant just so, unless limits are said with it. */
  private joint(
    text: SpecText,
    key: Key,
    item: ast.Joints | undefined,
    country: Country | undefined
  ): Joint | undefined {
    const read = (what: string, node: ast.Sum | undefined, measure?: string): Given | undefined =>
      node && this.context.given(text, `${key}/${what}`, node as Expression, 'm', NOT_NEGATIVE, { measure });
    const usual = { least: this.usuals.of('joint-least', country), most: this.usuals.of('joint-most', country) };
    const width = item === undefined ? this.usuals.of('joint', country) : read('joints', item.joint);
    if (width === undefined || usual.least === undefined || usual.most === undefined) return undefined;
    if (item?.least !== undefined || item?.most !== undefined) {
      const [least, most] = [
        read('joints/least', item.least, lastMeasure(item.most as Expression)),
        read('joints/most', item.most)
      ];
      if (least === undefined || most === undefined) return undefined;
      if (least.value <= width.value && width.value <= most.value) return { width, least, most };
      return this.jointOutside(text, key.replace('/paving', ''), item, { width, least, most });
    }
    const isUsual = usual.least.value <= width.value && width.value <= usual.most.value;
    return isUsual ? { width, least: usual.least, most: usual.most } : { width, least: width, most: width };
  }

  private jointOutside(text: SpecText, area: Key, item: ast.Joints, { width, least, most }: Joint): undefined {
    if (least.value <= most.value)
      return this.context.fault(
        text,
        area,
        item,
        'out-of-range',
        `Joints of ${width.written} lie outside their own limits, ${least.written} to ${most.written}.`
      );
    const limits = `from ${most.written} to ${least.written}`;
    const span = { start: spanOf(item, 'least').start, end: spanOf(item, 'most').end };
    const change = this.context.changes.change(text, { ...span, text: limits.slice('from '.length) });
    return this.context.fault(
      text,
      area,
      item,
      'out-of-range',
      `The narrowest joint stands first, then the widest: write \`${limits}\`.`,
      { fixes: [{ ...writing(limits), does: [change] }] }
    );
  }

  // ---- start ----

  start(text: SpecText, key: Key, item: ast.Start | undefined, outline: NamedOutline, edges: readonly Edge[]): Start {
    if (item === undefined) return { whole: [], equalCuts: false };
    const startKey = this.context.place(`${key}/start`, text, item);
    const said = saidOnce(this.context, text, key, item.clauses, clauseWord);
    const sidesOf = (word: string): number[] =>
      mainParts(outline, this.sidesOf(text, key, said.get(word)?.where ?? [], outline));
    const [along] = sidesOf('along');
    const whole = sidesOf('whole');
    const from = said.get('from');
    const shift = said.get('shifted');
    const turn = said.get('turned');
    const by = shift?.by;
    const measure = by === undefined ? undefined : { measure: by.measure, node: by };
    const length = (what: string, node: unknown): Given | undefined =>
      this.context.given(text, `${startKey}/${what}`, node as Expression | undefined, 'm', ANY, measure);
    const shifted = by && { along: length('along', by.x), across: length('across', by.y) };
    const turned = turn && this.context.given(text, `${startKey}/turned`, turn.turn as Expression, 'degrees', ANY);
    const side = along ?? whole[0];
    const corner = from
      ? this.corner(text, key, from, outline, side ?? 0)
      : side === undefined
        ? undefined
        : beginningOf(outline, side);
    return {
      key: startKey,
      ...(along === undefined ? {} : { along }),
      whole,
      equalCuts: said.has('equal'),
      ...(corner === undefined ? {} : { from: corner }),
      ...(shifted?.along === undefined || shifted.across === undefined
        ? {}
        : { shifted: { along: shifted.along, across: shifted.across } }),
      ...(turned === undefined ? {} : { turned }),
      ...this.carriedOn(text, key, said.get('carried'), outline, edges)
    };
  }

  private sidesOf(text: SpecText, key: Key, where: readonly ast.EdgeWhere[], outline: NamedOutline): number[] {
    return [
      ...new Set(
        where.flatMap(one => (one.rest ? this.restAlone(text, key, one) : this.edges.sides(text, key, one, outline)))
      )
    ];
  }

  private restAlone(text: SpecText, key: Key, where: ast.EdgeWhere): [] {
    this.context.fault(
      text,
      key,
      where,
      'no-such-side',
      '`the rest` says something only in `edges`, behind other sides. Write `all round`, or the sides.',
      { fixes: [writing('all round')] }
    );
    return [];
  }

  /** A point by its name, or the corner with the side that is named. */
  private corner(
    text: SpecText,
    key: Key,
    item: ast.StartClause,
    outline: NamedOutline,
    side: number
  ): Point | undefined {
    const { sideNames } = outline;
    const [leg] = item.leg === undefined ? [] : this.edges.legs(text, key, item.leg, outline);
    if (item.leg !== undefined && leg === undefined) return undefined;
    const name = item.end?.$refText;
    const other = leg ?? (name === undefined ? -1 : sideNames.indexOf(name));
    if (other >= 0) {
      const shared = cornerOf(outline, side, other);
      if (shared !== undefined) return shared;
      const beside = sideNames.filter(
        (name, at) =>
          name !== sideNames[side] && sideNames.indexOf(name) === at && cornerOf(outline, side, at) !== undefined
      );
      return this.context.fault(
        text,
        key,
        item,
        'no-such-side',
        `${sideNames[side]!} and ${sideNames[other]!} have no corner in common. Say \`from\` and a side beside ${sideNames[side]!}.`,
        { property: leg === undefined ? 'end' : 'leg', fixes: beside.map(writing) }
      );
    }
    const found = this.context.find(text, key, item, 'end', name, ['point']);
    return found && this.points.of(found);
  }

  private carriedOn(
    text: SpecText,
    key: Key,
    item: ast.StartClause | undefined,
    outline: NamedOutline,
    edges: readonly Edge[]
  ): Pick<Start, 'carriedOnFrom' | 'jointLine'> {
    if (item === undefined) return {};
    const found = this.context.find(text, key, item, 'thing', item.thing?.$refText, ['area', 'existing']);
    if (found === undefined) return {};
    if (found.kind === 'area') return this.carriedOnFromArea(text, key, item, found);
    const line = (found.node as ast.Existing).items.find(ast.isJointLine);
    const met = edges.flatMap(({ meets }, at) => (meets?.name === found.name ? [at] : []));
    const side = mainParts(outline, met)[0];
    if (line === undefined || side === undefined) {
      const what =
        line === undefined
          ? `Nothing is said of where a joint line of ${found.name} runs. Write \`joint-line at A\` into it, A being a point on it.`
          : `No side of this area meets ${found.name}: say so in \`edges\`.`;
      this.context.fault(text, key, item, 'start-does-not-fit', what, { property: 'thing', harmless: true });
      return {};
    }
    const mark = this.context.find(found.text, `existing:${found.name}`, line, 'at', line.at?.$refText, ['point']);
    const at = mark && this.points.of(mark);
    return at === undefined ? {} : { jointLine: { at, side } };
  }

  /** Joint lines begin somewhere: what leads back to the area itself is left out. */
  private carriedOnFromArea(
    text: SpecText,
    key: Key,
    item: ast.StartClause,
    found: Declared
  ): Pick<Start, 'carriedOnFrom'> {
    const names = new Set<string>();
    for (let at: Declared | undefined = found; at !== undefined && !names.has(at.name);) {
      names.add(at.name);
      if (`area:${at.name}` === key) {
        this.context.fault(
          text,
          key,
          item,
          'start-does-not-fit',
          'Its joint lines would be carried on from themselves. Leave this out in one of the areas.',
          { property: 'thing', harmless: true, fixes: [takingOut(this.context, text, wholeOf(item))] }
        );
        return {};
      }
      if (names.size > MOST_CARRIED_ON) {
        this.context.fault(
          text,
          key,
          item,
          'start-does-not-fit',
          `Its joint lines are carried on through more than ${MOST_CARRIED_ON} areas. Carry them on from one nearer the beginning.`,
          { property: 'thing', harmless: true, fixes: [takingOut(this.context, text, item)] }
        );
        return {};
      }
      const start: ast.Start | undefined = (at.node as ast.Area).items.find(ast.isStart);
      const next: string | undefined = start?.clauses.find(({ carried }) => carried)?.thing?.$refText;
      at = next === undefined ? undefined : this.context.names.peek(at.text, 'area', next);
    }
    return { carriedOnFrom: `area:${found.name}` };
  }

  // ---- borders and bands ----

  border(
    text: SpecText,
    key: Key,
    item: ast.Border,
    outline: NamedOutline,
    country: Country | undefined
  ): Border | undefined {
    const area = areaKeyOf(key);
    const place = this.context.place(key, text, item);
    const clauses = saidOnce(this.context, text, area, item.clauses, clause =>
      clause.corners === undefined ? 'joints' : 'corners'
    );
    const unit = this.unit(text, area, item, 'unit', item.unit?.$refText);
    const course = this.course(text, area, item);
    const joint = this.joint(text, key, clauses.get('joints')?.joints, country);
    const along = this.along(text, area, item, outline);
    if (unit === undefined || course === undefined || joint === undefined || along === undefined) return undefined;
    return { key: place, unit, course, joint, along, corners: clauses.get('corners')?.corners ?? 'butted' };
  }

  private course(text: SpecText, area: Key, item: ast.Border | ast.Band): BorderCourse | undefined {
    return this.context.word(text, area, item, 'course', item.course, ['soldier-course', 'sailor-course'] as const);
  }

  private along(text: SpecText, area: Key, item: ast.Border, outline: NamedOutline): Border['along'] | undefined {
    if (item.round !== undefined) {
      const found = this.context.find(text, area, item, 'round', item.round.$refText, ['kept-out']);
      if (found === undefined) return undefined;
      const kept = found.node as ast.KeptOut;
      if (isSaidPavedOver(kept)) return this.roundNothing(text, area, item, found.name);
      return { round: `${kept.kind}:${found.name}` };
    }
    const without = new Set(this.sidesOf(text, area, item.except, outline));
    const named = this.sidesOf(text, area, item.where, outline);
    const sides = named.filter(side => !without.has(side));
    if (sides.length > 0) return { sides };
    if (named.length > 0)
      this.context.fault(text, area, item, 'no-such-side', '`except` leaves no side for this border. Take it out.', {
        fixes: [takingOut(this.context, text, item)]
      });
    return undefined;
  }

  private roundNothing(text: SpecText, area: Key, item: ast.Border, box: string): undefined {
    return this.context.fault(
      text,
      area,
      item,
      'clause-does-not-fit',
      `The box ${box} is cut down and buried: paving runs over it, and no border round it. Take this out.`,
      { fixes: [takingOut(this.context, text, item)] }
    );
  }

  band(
    text: SpecText,
    key: Key,
    item: ast.Band,
    outline: NamedOutline,
    country: Country | undefined
  ): Band | undefined {
    const area = areaKeyOf(key);
    const place = this.context.place(key, text, item);
    const unit = this.unit(text, area, item, 'unit', item.unit?.$refText);
    const course = this.course(text, area, item);
    const joint = this.joint(text, key, item.joints, country);
    const named = item.where === undefined ? [] : this.sidesOf(text, area, [item.where], outline);
    const [side, ...others] = isMeasured(outline, named) ? named.slice(0, 1) : named;
    const at = this.context.given(text, `${key}/at`, item.at as Expression | undefined, 'm', NOT_NEGATIVE);
    if (others.length > 0)
      return this.context.fault(
        text,
        area,
        item,
        'no-such-side',
        `A band stands square to one side; ${others.length + 1} are named here.`,
        { property: 'where' }
      );
    if (unit === undefined || course === undefined || joint === undefined || side === undefined || at === undefined)
      return undefined;
    const length = named.reduce((sum, part) => sum + sideLength(outline.loop[part]!), 0);
    if (at.value > length)
      return this.context.fault(
        text,
        area,
        item,
        'out-of-range',
        `The side ${outline.sideNames[side]!} is ${printLength(length, this.context.system)} long: the band would lie beyond it.`,
        { property: 'at' }
      );
    const [first, last] = item.where!.points.map(point => point.$refText);
    // Named the other way round it is measured from the other end.
    const backward = first !== undefined && outline.sideNames[side] === `${last!} to ${first}`;
    const part = partAt(outline.loop, named, backward ? length - at.value : at.value);
    return { key: place, unit, course, joint, side: part.side, at: { ...at, value: part.at } };
  }
}

function cornerBetween(loop: NamedOutline['loop'], side: number, other: number): Point | undefined {
  const [one, two] = [loop[side]!, loop[other]!];
  return [one.from, one.to].find(end => [two.from, two.to].some(at => distance(end, at) < SAME_POINT));
}

/** The straight parts of a side; one that is not rounded, measured or along a line is its own only part. */
function straightParts({ loop, sideNames }: NamedOutline, side: number): number[] {
  return loop.flatMap(({ arc }, at) => (sideNames[at] === sideNames[side] && arc === undefined ? [at] : []));
}

/** Courses run along the longest straight part of a side. */
function mainParts(outline: NamedOutline, sides: readonly number[]): number[] {
  const length = (side: number): number => sideLength(outline.loop[side]!);
  const main = sides.map(side => {
    const parts = straightParts(outline, side);
    return parts.length === 0 ? side : parts.reduce((a, b) => (length(b) > length(a) ? b : a));
  });
  return [...new Set(main)];
}

/** Where a side that was measured by offsets begins: units begin there, not where its longest part does. */
function beginningOf(outline: NamedOutline, side: number): Point | undefined {
  const parts = straightParts(outline, side);
  return isMeasured(outline, parts) ? outline.loop[parts[0]!]!.from : undefined;
}

/** Sides that are the parts of one from point to point, straight from offset to offset. */
function isMeasured({ form, loop, sideNames }: NamedOutline, sides: readonly number[]): boolean {
  const isOne = new Set(sides.map(side => sideNames[side])).size === 1;
  return form === 'points' && sides.length > 1 && isOne && sides.every(side => loop[side]!.arc === undefined);
}

/** The part in which a place along them lies, and how far along that part, m. */
function partAt(loop: NamedOutline['loop'], parts: readonly number[], along: number): { side: number; at: number } {
  let left = along;
  for (const side of parts.slice(0, -1)) {
    const length = sideLength(loop[side]!);
    if (left <= length) return { side, at: left };
    left -= length;
  }
  return { side: parts.at(-1)!, at: left };
}

/** The corner of two sides, whichever of their parts meet there. */
function cornerOf(outline: NamedOutline, side: number, other: number): Point | undefined {
  const direct = cornerBetween(outline.loop, side, other);
  if (direct !== undefined) return direct;
  for (const one of straightParts(outline, side))
    for (const two of straightParts(outline, other)) {
      const corner = cornerBetween(outline.loop, one, two);
      if (corner !== undefined) return corner;
    }
  return undefined;
}

function areaKeyOf(key: Key): Key {
  return key.slice(0, key.lastIndexOf('/'));
}

/** The whole statement where this is all that it says. */
function wholeOf(clause: ast.StartClause): ast.Start | ast.StartClause {
  const start = clause.$container;
  return ast.isStart(start) && start.clauses.length === 1 ? start : clause;
}

function clauseWord(clause: ast.StartClause): string {
  if (clause.whole) return 'whole';
  if (clause.along) return 'along';
  if (clause.equal) return 'equal';
  if (clause.at) return 'from';
  if (clause.shifted) return 'shifted';
  return clause.turned ? 'turned' : 'carried';
}

/** Why units can't lie in a bond, and in which they could. */
interface Misfit {
  readonly message: string;
  readonly bonds?: readonly string[];
}

/** Undefined where units can lie in a bond. */
function misfit(bond: Bond, units: readonly [Unit, ...Unit[]]): Misfit | undefined {
  const hexagon = units.find(({ shape }) => shape === 'hexagon');
  if (bond.way !== 'hexagons' && hexagon !== undefined)
    return {
      message: `\`${hexagon.name}\` is a hexagon and can't lie in ${bond.name}. Write \`in hexagons\`.`,
      bonds: ['hexagons']
    };
  const message = misfitOf(bond, units);
  return message === undefined ? undefined : { message };
}

function misfitOf(bond: Bond, units: readonly [Unit, ...Unit[]]): string | undefined {
  const [first] = units;
  const count = units.length;
  if (bond.way === 'hexagons') {
    if (count === 1 && first.shape === 'hexagon') return undefined;
    return `The bond ${bond.name} is laid with one unit of \`shape hexagon\`${count > 1 ? `, not with ${count}` : `; ${first.name} is none`}.`;
  }
  if (bond.way === 'cell') {
    const sizes = kindsOf(bond.cell).length;
    return sizes === count
      ? undefined
      : `The bond ${bond.name} takes units of ${sizes} ${sizes === 1 ? 'size' : 'sizes'}; ${count} ${count === 1 ? 'is' : 'are'} named here.`;
  }
  if (bond.way === 'random-courses') {
    const other = units.find(({ width }) => Math.abs(width.value - first.width.value) > SAME_WIDTH);
    if (other !== undefined)
      return `Units of one course are equally wide: ${first.name} is ${first.width.written} wide and ${other.name} ${other.width.written}.`;
    return count > 1
      ? undefined
      : `Random courses are laid with units of several lengths; only ${first.name} is named.`;
  }
  return count === 1 ? undefined : `The bond ${bond.name} is laid with one unit; ${count} are named here.`;
}
