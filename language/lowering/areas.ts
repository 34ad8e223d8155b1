import type { Finish } from '../job/heights.ts';
import type { Country, Area, Given, Key, Layer, Material, Paving, Role, Site, System, Traffic } from '../job/job.ts';
import * as ast from '../syntax/generated/ast.ts';
import type { Expression } from './amounts.ts';
import { NOT_NEGATIVE, type Context } from './context.ts';
import type { BrokenOuts } from './broken-out.ts';
import { Edges } from './edges.ts';
import type { Finishes } from './finishes.ts';
import type { WithinArea } from './fittings.ts';
import type { Heights } from './heights.ts';
import { Laying } from './laying.ts';
import { MeasuredEdges } from './measured-edges.ts';
import type { Declared, SpecText } from './names.ts';
import type { Outlines } from './outlines.ts';
import type { Points } from './points.ts';
import { writing, type SaidFix } from './said-fix.ts';
import { saidAgain, saidOnce, takingOut } from './said-once.ts';
import { spanOf } from './text-changes.ts';
import { ROLE_WORDS, type Things } from './things.ts';
import { Usuals } from './usuals.ts';

/** What the job says for all its areas. */
export interface JobWords {
  readonly country: Country | undefined;
  readonly system: System;
  readonly site: Site;
}

type Statements = ReadonlyMap<string, ast.AreaItem>;

/** `as` may lead on from area to area; more than this is a circle. */
const MOST_LIKE = 20;

/** Reads areas: one self-contained piece of data each. */
export class Areas {
  private readonly context: Context;
  private readonly things: Things;
  private readonly outlines: Outlines;
  private readonly edges: Edges;
  private readonly measured: MeasuredEdges;
  private readonly finishes: Finishes;
  /** Set once: old paving that is broken out. */
  brokenOuts: BrokenOuts | undefined;
  readonly usuals: Usuals;
  readonly laying: Laying;
  /** What is said of whole areas to be as in another: `base area:drive`. */
  private likes: ReadonlySet<string> | undefined;

  constructor(
    context: Context,
    things: Things,
    shipped: SpecText,
    points: Points,
    outlines: Outlines,
    heights: Heights,
    finishes: Finishes
  ) {
    this.context = context;
    this.things = things;
    this.outlines = outlines;
    this.finishes = finishes;
    this.edges = new Edges(context, things, heights);
    this.measured = new MeasuredEdges(context, points);
    this.usuals = new Usuals(context, shipped);
    this.laying = new Laying(context, things, points, this.edges, this.usuals);
  }

  read(declared: Declared, words: JobWords, within: WithinArea): Area | undefined {
    const { context } = this;
    const { text } = declared;
    const node = declared.node as ast.Area;
    const key = context.place(`area:${node.name}`, text, node, 'name');
    const said = this.statements(text, key, node);
    const outlineNode = said.get('outline') as ast.Outline | undefined;
    if (outlineNode === undefined)
      context.fault(
        text,
        key,
        node,
        'outline-missing',
        `The area ${node.name} has no outline. Write \`outline rectangle 12 x 16 ft\`, or its points: \`outline A to B to C\`.`,
        { property: 'name' }
      );
    else context.place(`${key}/outline`, text, outlineNode);
    this.gaps(text, key, node, said);
    const drawn = outlineNode && this.outlines.read(text, `${key}/outline`, outlineNode.shape);
    const paving = this.paving(text, key, said, words);
    const jointFiller = this.jointFiller(text, key, said, words, paving);
    const layers = this.layers(text, key, said, words, paving !== undefined);
    const geotextile = this.geotextile(text, key, said, words);
    const finish = this.finish(declared, key, said);
    const traffic = this.traffic(text, key, node, said);
    if (drawn === undefined || outlineNode === undefined) return undefined;
    const { country, site } = words;
    const edgesNode = said.get('edges') as ast.Edges | undefined;
    const levelled = site.heights?.things ?? [];
    const saidEdges = this.edges.read({ text, key, node: edgesNode, outlineNode }, drawn, levelled);
    const measured = this.measured.applied(text, key, drawn, saidEdges);
    if (measured === undefined) return undefined;
    const { outline, edges } = measured;
    const borders = node.items.filter(ast.isBorder).flatMap((item, index) => {
      return this.laying.border(text, `${key}/border-${index + 1}`, item, outline, country) ?? [];
    });
    const bands = node.items.filter(ast.isBand).flatMap((item, index) => {
      return this.laying.band(text, `${key}/band-${index + 1}`, item, outline, country) ?? [];
    });
    if (!said.has('paving')) this.nothingToLay(text, key, node);
    const inboardCuts = this.inboardCuts(text, key, said, paving);
    return {
      key,
      name: node.name,
      outline: outline.loop,
      edges,
      traffic,
      site: words.site,
      ...(finish === undefined ? {} : { finish }),
      ...(paving === undefined ? {} : { paving, ...pavingAs(said) }),
      ...(jointFiller === undefined ? {} : { jointFiller }),
      layers,
      ...(geotextile === undefined ? {} : { geotextile }),
      start: this.laying.start(text, key, said.get('start') as ast.Start | undefined, outline, edges),
      ...(inboardCuts === undefined ? {} : { inboardCuts }),
      borders,
      bands,
      ...within,
      brokenOut: this.brokenOuts?.touching(outline.loop) ?? []
    };
  }

  /** A start, border or band says how units lie, and there are none. */
  private nothingToLay(text: SpecText, key: Key, node: ast.Area): void {
    const item = node.items.find(
      one => ast.isStart(one) || ast.isInboardCuts(one) || ast.isBorder(one) || ast.isBand(one)
    );
    if (item === undefined) return;
    const [known] = this.context.names.known(text, ['unit']);
    const statement = `paving ${known ?? (this.context.system === 'imperial' ? 'slab-16' : 'block')} in running-bond`;
    this.context.fault(
      text,
      key,
      item,
      'paving-missing',
      `Nothing is said of the units that lie here. Write \`${statement}\` first, with a unit and a bond.`,
      { fixes: known === undefined ? [] : [this.saying(`${key}/paving`, statement)] }
    );
  }

  /** Tells the faults of something that a side can meet, used or not. */
  checkSide(declared: Declared): void {
    this.edges.check(declared);
    if (declared.kind === 'existing') this.measured.of(declared);
  }

  /** Where what the area does not say could be written. */
  private gaps(text: SpecText, key: Key, node: ast.Area, said: Statements): void {
    const { changes } = this.context;
    ORDER.forEach((word, at) => {
      if (said.has(word)) return;
      const earlier = ORDER.slice(0, at).flatMap(other => said.get(other) ?? []);
      changes.gap(`${key}/${word}`, text, node, earlier.at(-1), { commas: false });
    });
  }

  private statements(text: SpecText, key: Key, node: ast.Area): Statements {
    const once = node.items.filter(item => !ast.isBorder(item) && !ast.isBand(item));
    return saidOnce(this.context, text, key, once, item =>
      ast.isLayer(item) ? (item.role ?? 'layer') : WORDS[item.$type]
    );
  }

  /** The statement that counts: this area's own, or the one of the area that it says `as`. */
  private like<T extends ast.AreaItem & { like?: { readonly $refText: string } }>(
    text: SpecText,
    key: Key,
    said: Statements,
    what: string
  ): { item: T; text: SpecText } | undefined {
    let at: { item: T | undefined; text: SpecText } = { item: said.get(what) as T | undefined, text };
    for (let steps = 0; at.item?.like !== undefined; steps++) {
      const found = this.context.find(at.text, key, at.item, 'like', at.item.like.$refText, ['area']);
      if (found === undefined) return undefined;
      const other = found.node as ast.Area;
      // What a broken area no longer says is no fault of this one.
      if (this.context.isBroken(found.text, other)) return undefined;
      const item = this.statementOf(other, what) as T | undefined;
      if (steps > MOST_LIKE)
        return this.context.fault(text, key, at.item, 'let-in-circle', `\`as ${other.name}\` leads round in a circle.`);
      if (item === undefined)
        return this.context.fault(
          at.text,
          key,
          at.item,
          'thing-incomplete',
          `The area ${other.name} has no \`${what}\` to be like.`,
          { fixes: DISPENSABLE.includes(what) ? [takingOut(this.context, at.text, at.item)] : [] }
        );
      at = { item, text: found.text };
    }
    return at.item === undefined ? undefined : { item: at.item, text: at.text };
  }

  private statementOf(node: ast.Area, what: string): ast.AreaItem | undefined {
    return node.items.find(item => (ast.isLayer(item) ? item.role : WORDS[item.$type]) === what);
  }

  // ---- use and height ----

  private traffic(text: SpecText, key: Key, node: ast.Area, said: Statements): Traffic[] {
    const item = said.get('traffic') as ast.Traffic | undefined;
    if (item === undefined) {
      this.context.fault(
        text,
        key,
        node,
        'traffic-not-said',
        `Nothing is said of what uses ${node.name}. Write \`traffic foot\`, \`traffic cars\` or \`traffic trucks\`; without it rules about traffic can't be checked.`,
        {
          property: 'name',
          harmless: true,
          fixes: ['foot', 'cars', 'trucks'].map(who => this.saying(`${key}/traffic`, `traffic ${who}`))
        }
      );
      return [];
    }
    this.context.place(`${key}/traffic`, text, item);
    saidAgain(this.context, text, key, item, 'kinds', item.kinds);
    return item.kinds.flatMap(
      (word, index) =>
        this.context.word(text, key, item, ['kinds', index], word, ['foot', 'cars', 'trucks', 'turning'] as const) ?? []
    );
  }

  private finish(declared: Declared, key: Key, said: Statements): Finish | undefined {
    if (said.has('finish')) this.context.place(`${key}/finish/said`, declared.text, said.get('finish')!);
    return this.finishes.of(declared);
  }

  // ---- paving and what lies under it ----

  private paving(text: SpecText, key: Key, said: Statements, words: JobWords): Paving | undefined {
    const found = this.like<ast.Paving>(text, key, said, 'paving');
    if (found === undefined) return undefined;
    this.context.place(`${key}/paving`, text, said.get('paving')!);
    return this.laying.paving(found.text, key, found.item, words.country);
  }

  /** The shortest piece that a course may end in. */
  private inboardCuts(text: SpecText, key: Key, said: Statements, paving: Paving | undefined): Given | undefined {
    const item = said.get('inboard-cuts') as ast.InboardCuts | undefined;
    const least =
      item && this.context.given(text, `${key}/inboard-cuts`, item.least as Expression | undefined, 'm', NOT_NEGATIVE);
    if (item === undefined || paving === undefined || paving.bond.way === 'courses') return least;
    return this.context.fault(
      text,
      key,
      item,
      'start-does-not-fit',
      `Units are cut inboard where they lie in courses, in stack or running bond: in ${paving.bond.name} no course ends in a short piece. Take this out.`,
      { harmless: true, fixes: [takingOut(this.context, text, item)] }
    );
  }

  private jointFiller(
    text: SpecText,
    key: Key,
    said: Statements,
    words: JobWords,
    paving: Paving | undefined
  ): Material | undefined {
    const found = this.like<ast.JointFill>(text, key, said, 'joints');
    if (found !== undefined) {
      this.context.place(`${key}/joints`, text, said.get('joints')!);
      return this.material(found.text, key, found.item, 'joint-filler');
    }
    return paving === undefined || paving.joint.width.value === 0
      ? undefined
      : this.things.standard('joint-filler', words.country);
  }

  private geotextile(text: SpecText, key: Key, said: Statements, words: JobWords): Material | undefined {
    const found = this.like<ast.Geotextile>(text, key, said, 'geotextile');
    if (found === undefined) return undefined;
    this.context.place(`${key}/geotextile`, text, said.get('geotextile')!);
    return found.item.material === undefined
      ? this.things.standard('geotextile', words.country)
      : this.material(found.text, key, found.item, 'geotextile');
  }

  private material(
    text: SpecText,
    key: Key,
    item: ast.Layer | ast.Geotextile | ast.JointFill,
    role: Role
  ): Material | undefined {
    const found = this.context.find(text, key, item, 'material', item.material?.$refText, ['material'], {
      among: () => this.things.fittingNames(text, role)
    });
    const material = found && this.things.material(found);
    if (material === undefined) return undefined;
    // Stone of the base may be the sub-base too, and the other way round.
    const fits = material.roles.includes(role) || (isStone(role) && material.roles.some(isStone));
    if (fits) return material;
    return this.context.fault(
      text,
      key,
      item,
      'wrong-role',
      `\`${material.name}\` can't ${role === 'joint-filler' ? 'fill the joints' : `be the ${ROLE_WORDS[role]}`}: its role is ${material.roles.join(', ')}.${this.things.fitting(text, role)}`,
      { property: 'material', fixes: this.things.roleFixes(text, found!, role) }
    );
  }

  private layers(text: SpecText, key: Key, said: Statements, words: JobWords, paved: boolean): Layer[] {
    const layers: Layer[] = [];
    for (const role of ['bed', 'base', 'sub-base'] as const) {
      const found = this.like<ast.Layer>(text, key, said, role);
      const layer =
        found === undefined
          ? role === 'bed' && paved && !said.has('bed')
            ? this.usualBed(key, words)
            : undefined
          : this.layer(text, key, role, found, said, words);
      if (layer !== undefined) layers.push(layer);
    }
    const alone = layers.find(layer => layer.role === 'sub-base');
    if (alone === undefined || said.has('base')) return layers;
    this.context.fault(
      text,
      key,
      said.get('sub-base')!,
      'sub-base-alone',
      'This is the only stone under the bed, so it counts as the base.',
      {
        property: 'role',
        harmless: true,
        fixes: this.isLikeOfOthers(key, 'sub-base') ? [] : [{ ...writing('base'), safe: true }]
      }
    );
    return layers.map(layer => (layer === alone ? { ...layer, role: 'base' } : layer));
  }

  private layer(
    text: SpecText,
    key: Key,
    role: Layer['role'],
    found: { item: ast.Layer; text: SpecText },
    said: Statements,
    words: JobWords
  ): Layer | undefined {
    const layerKey = `${key}/${role}`;
    const { item, text: at } = found;
    this.context.place(layerKey, text, said.get(role)!);
    const material =
      item.material === undefined ? this.things.standard(role, words.country) : this.material(at, key, item, role);
    const clauses = saidOnce(this.context, at, layerKey, item.clauses, clause => (clause.past ? 'past' : 'settles'));
    const pastNode = clauses.get('past')?.past as Expression | undefined;
    const past = pastNode && this.context.given(at, `${layerKey}/past`, pastNode, 'm', NOT_NEGATIVE);
    const settles = this.settles(at, layerKey, role, clauses.get('settles'));
    const parts = role === 'bed' ? undefined : this.usuals.of('compaction-layer', words.country);
    let thickness: Given | undefined;
    if (item.thickness !== undefined)
      thickness = this.context.given(at, `${layerKey}/thickness`, item.thickness as Expression, 'm');
    else if (role === 'bed') thickness = this.usuals.of('bed', words.country);
    else
      this.context.fault(
        at,
        key,
        item,
        'thickness-missing',
        `How thick is the ${ROLE_WORDS[role]}? Write it behind the material: \`${role} ${material?.name ?? 'crushed-stone'} ${words.system === 'imperial' ? '6 in' : '150 mm'}\`.`,
        { fixes: [this.thicknessFix(at, item, said, words)] }
      );
    if (pastNode === undefined && role !== 'bed') {
      const { end } = spanOf(item);
      this.context.changes.gapAt(`${layerKey}/past`, at, { start: end, end, before: ', ', ...ONE_LINE });
    }
    if (material === undefined || thickness === undefined || (pastNode !== undefined && past === undefined))
      return undefined;
    return {
      key: layerKey,
      role,
      material,
      thickness,
      ...(past === undefined ? {} : { past }),
      ...(settles === undefined ? {} : { settles }),
      ...(parts === undefined ? {} : { inPartsOf: parts })
    };
  }

  /** How far the bed settles under the plate. */
  private settles(
    text: SpecText,
    key: Key,
    role: Layer['role'],
    clause: ast.LayerClause | undefined
  ): Given | undefined {
    if (clause === undefined) return undefined;
    if (role === 'bed')
      return this.context.given(text, `${key}/settles`, clause.settles as Expression | undefined, 'm', NOT_NEGATIVE);
    return this.context.fault(
      text,
      key,
      clause,
      'start-does-not-fit',
      'Only the bed settles when the units are vibrated; stone is rolled to its thickness. Take this out.',
      { harmless: true, fixes: [takingOut(this.context, text, clause)] }
    );
  }

  /** What is usual at least under what goes there: 6 in, and 10 in under wheels (common practice). */
  private thicknessFix(text: SpecText, item: ast.Layer, said: Statements, { system }: JobWords): SaidFix {
    const traffic = said.get('traffic') as ast.Traffic | undefined;
    const wheels = traffic?.kinds.some(kind => kind !== 'foot') ?? false;
    const thickness = system === 'imperial' ? (wheels ? '10 in' : '6 in') : wheels ? '250 mm' : '150 mm';
    const property = item.material === undefined ? 'role' : 'material';
    return { ...writing(thickness), does: [this.context.changes.behind(text, item, ` ${thickness}`, property)] };
  }

  private saying(key: Key, statement: string): SaidFix {
    return { ...writing(statement), does: this.context.changes.said(key, [statement]) };
  }

  /** Another area says `as` this one there. */
  private isLikeOfOthers(key: Key, what: string): boolean {
    this.likes ??= new Set(
      this.context.names.areas().flatMap(({ node }) => (node as ast.Area).items.flatMap(likeness))
    );
    return this.likes.has(`${what} ${key}`);
  }

  private usualBed(key: Key, words: JobWords): Layer | undefined {
    const material = this.things.standard('bed', words.country);
    const thickness = this.usuals.of('bed', words.country);
    return material && thickness && { key: `${key}/bed`, role: 'bed', material, thickness };
  }
}

function pavingAs(said: Statements): Pick<Area, 'pavingAs'> {
  const other = (said.get('paving') as ast.Paving | undefined)?.like?.$refText;
  return other === undefined ? {} : { pavingAs: `area:${other}` };
}

function likeness(item: ast.AreaItem): string[] {
  const like = 'like' in item ? item.like : undefined;
  return like === undefined ? [] : [`${ast.isLayer(item) ? item.role : WORDS[item.$type]} area:${like.$refText}`];
}

function isStone(role: Role): boolean {
  return role === 'base' || role === 'sub-base';
}

/** The statements of an area in their usual order. */
const ORDER: readonly string[] = [
  ...['outline', 'traffic', 'finish', 'paving', 'start', 'inboard-cuts', 'bed'],
  ...['base', 'sub-base', 'geotextile', 'joints', 'edges']
];

/** What an area can do without, and is as usual then. */
const DISPENSABLE: readonly string[] = ['bed', 'geotextile', 'joints'];

const ONE_LINE = { between: ', ', after: '', column: 0 };

const WORDS: Readonly<Record<ast.AreaItem['$type'], string>> = {
  Outline: 'outline',
  Traffic: 'traffic',
  Finish: 'finish',
  Paving: 'paving',
  Start: 'start',
  InboardCuts: 'inboard-cuts',
  Border: 'border',
  Band: 'band',
  Layer: 'layer',
  Geotextile: 'geotextile',
  JointFill: 'joints',
  Edges: 'edges'
};
