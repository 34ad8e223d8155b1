import { distance } from '../geometry/index.ts';
import type { Gate } from '../job/heights.ts';
import type { Country, Key, Missing } from '../job/job.ts';
import { along } from '../setting-out/spots.ts';
import * as ast from '../syntax/generated/ast.ts';
import type { Expression } from './amounts.ts';
import { ANY, type Context, NOT_NEGATIVE } from './context.ts';
import { readEach, type Each } from './each-thing.ts';
import type { Heights } from './heights.ts';
import type { Declared, SpecText } from './names.ts';
import type { Outlines } from './outlines.ts';
import { besideArea, outlineOf, sideOfLoop } from './own-side.ts';
import { endMeasure, type Points } from './points.ts';
import { saidOnce } from './said-once.ts';
import type { Usuals } from './usuals.ts';

/** A hinge and what the leaf is turned towards that are nearer than this show no direction, m. */
const ONE_SPOT = 0.0005;

/** A leaf that lies back against the fence has turned half round. */
const MOST_OPEN = 180;

/** Reads gates and doors. */
export class Gates {
  private readonly context: Context;
  private readonly points: Points;
  private readonly heights: Heights;
  private readonly outlines: Outlines;
  private readonly usuals: Usuals;

  constructor(context: Context, points: Points, heights: Heights, outlines: Outlines, usuals: Usuals) {
    this.context = context;
    this.points = points;
    this.heights = heights;
    this.outlines = outlines;
    this.usuals = usuals;
  }

  read(texts: readonly SpecText[], missing: Missing[], country: Country | undefined): Each<Gate>[] {
    return readEach(this.context, texts, 'gate', missing, (declared, key) => this.gate(declared, key, country));
  }

  private gate({ text, node: declaration, name }: Declared, key: Key, country: Country | undefined): Gate | undefined {
    const { context } = this;
    const node = declaration as ast.Gate;
    const said = saidOnce(context, text, key, node.items, item => item.$type);
    const leafItem = said.get('GateLeaf') as ast.GateLeaf | undefined;
    const undersideItem = said.get('Underside') as ast.Underside | undefined;
    const openingItem = said.get('Opening') as ast.Opening | undefined;
    const sillItem = said.get('Sill') as ast.Sill | undefined;
    const clearanceItem = said.get('GateClearance') as ast.GateClearance | undefined;
    const leaf = leafItem && this.leaf(text, key, node, leafItem);
    const underside = undersideItem && this.heights.read(text, `${key}/underside`, undersideItem.height);
    const opening = openingItem && this.opening(text, key, openingItem);
    const sill = sillItem && this.heights.read(text, `${key}/sill`, sillItem.height);
    const clearance = clearanceItem
      ? context.given(text, `${key}/clearance`, clearanceItem.least as Expression | undefined, 'm', NOT_NEGATIVE)
      : leafItem && this.usuals.of('gate-clearance', country);
    const isOpeningAlone = node.kind === 'door' && openingItem !== undefined;
    if (!isOpeningAlone && (leafItem === undefined || undersideItem === undefined))
      return this.halfSaid(text, key, node, leafItem !== undefined, undersideItem !== undefined);
    // A fault in any of them has been told, and breaks the whole.
    return {
      key,
      name,
      kind: node.kind,
      ...(leaf === undefined ? {} : { leaf }),
      ...(underside === undefined ? {} : { underside }),
      ...(clearance === undefined ? {} : { clearance }),
      ...(opening === undefined ? {} : { opening }),
      ...(sill === undefined ? {} : { sill })
    };
  }

  private halfSaid(text: SpecText, key: Key, node: ast.Gate, hasLeaf: boolean, hasUnderside: boolean): undefined {
    const imperial = this.context.system === 'imperial';
    const leaf = imperial
      ? '`hinge 2 ft along A to B, leaf 3 ft towards B, opens 90 degrees into terrace`'
      : '`hinge 0.6 m along A to B, leaf 0.9 m towards B, opens 90 degrees into terrace`';
    const underside = imperial ? '`underside 3 in below door-sill`' : '`underside 75 mm below door-sill`';
    const what = `The ${node.kind} ${node.name}`;
    const opening =
      node.kind === 'door' && !hasLeaf
        ? ` Of a door the opening will do: ${imperial ? '`opening 6 ft to 9 ft along A to B`' : '`opening 1.8 m to 2.7 m along A to B`'}.`
        : '';
    return this.context.incomplete(
      text,
      key,
      node,
      hasLeaf
        ? `${what} does not say how high its underside is. Write ${underside}.`
        : `${what} does not say how its leaf turns. Write ${leaf}${hasUnderside ? '' : `, and ${underside}`}.${opening}`
    );
  }

  // ---- the leaf ----

  private leaf(text: SpecText, gate: Key, node: ast.Gate, item: ast.GateLeaf): Gate['leaf'] {
    const { context } = this;
    const key = context.place(`${gate}/leaf`, text, item);
    const said = saidOnce(context, text, key, item.clauses, clause =>
      clause.aside !== undefined ? 'aside' : clause.opens !== undefined || clause.into !== undefined ? 'opens' : 'leaf'
    );
    const [leafClause, opensClause] = [said.get('leaf'), said.get('opens')];
    if (leafClause === undefined || opensClause === undefined)
      return this.leafHalfSaid(text, key, node, item, leafClause !== undefined);
    const area = context.find(text, key, opensClause, 'into', opensClause.into?.$refText, ['area']);
    const out = besideArea(context, this.outlines, area);
    const hinge = this.points.spot(text, `${gate}/hinge`, item.hinge, said.get('aside')?.aside, out);
    const length = context.given(text, `${key}/length`, leafClause.leaf as Expression | undefined, 'm');
    const towards = this.points.named(text, key, leafClause, 'towards', leafClause.towards?.$refText);
    const opens = this.opens(text, key, opensClause);
    const outline = area && outlineOf(context, this.outlines, area);
    if (hinge === undefined || length === undefined || towards === undefined) return undefined;
    if (opens === undefined || area === undefined || outline === undefined) return undefined;
    const end = distance(hinge, towards) <= ONE_SPOT ? undefined : along(hinge, towards, length.value, 0);
    if (end === undefined)
      return context.fault(
        text,
        key,
        leafClause,
        'points-on-one-spot',
        `The hinge lies on ${leafClause.towards!.$refText}: no leaf points towards it. Name another point.`,
        { property: 'towards' }
      );
    const isInside = sideOfLoop(outline.loop, hinge, end) === 'left';
    const turn = isInside === (opensClause.outward !== true) ? opens.value : -opens.value;
    return { hinge, length, end, opens, turn, into: `area:${area.name}` };
  }

  private leafHalfSaid(text: SpecText, key: Key, node: ast.Gate, item: ast.GateLeaf, hasLeaf: boolean): undefined {
    const leaf = this.context.system === 'imperial' ? 'leaf 3 ft towards B' : 'leaf 0.9 m towards B';
    return this.context.fault(
      text,
      key,
      item,
      'thing-incomplete',
      hasLeaf
        ? `How far does ${node.name} open, and into which area? Write behind a comma \`opens 90 degrees into terrace\`.`
        : `How long is the leaf of ${node.name}, and where does it point when it is shut? Write behind a comma \`${leaf}\`.`
    );
  }

  private opens(text: SpecText, key: Key, clause: ast.LeafClause): NonNullable<Gate['leaf']>['opens'] | undefined {
    const node = clause.opens as Expression | undefined;
    const opens = this.context.given(text, `${key}/opens`, node, 'degrees');
    if (opens === undefined || opens.value <= MOST_OPEN) return opens;
    return this.context.fault(
      text,
      key,
      clause,
      'out-of-range',
      `\`${opens.written}\` can't be meant: a leaf turns half round at most, 180 degrees.`,
      { property: 'opens' }
    );
  }

  // ---- the opening ----

  private opening(text: SpecText, gate: Key, item: ast.Opening): Gate['opening'] {
    const key = this.context.place(`${gate}/opening`, text, item);
    const list = { measure: endMeasure(item.last as Expression | undefined) };
    const first = this.context.given(text, `${key}/from`, item.first as Expression | undefined, 'm', ANY, list);
    const last = this.context.given(text, `${key}/to`, item.last as Expression | undefined, 'm', ANY);
    const line = this.points.line(text, key, item.line);
    if (first === undefined || last === undefined || line === undefined) return undefined;
    if (last.value - first.value <= ONE_SPOT)
      return this.context.fault(
        text,
        key,
        item,
        'out-of-range',
        `The opening ends where it begins or before: ${last.written} is not further along than ${first.written}.`,
        { property: 'last' }
      );
    return { from: along(line.from, line.to, first.value, 0)!, to: along(line.from, line.to, last.value, 0)! };
  }
}
