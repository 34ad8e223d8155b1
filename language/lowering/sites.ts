import type { Point } from '../geometry/index.ts';
import type { SetUp } from '../job/heights.ts';
import type { Site, Soil } from '../job/job.ts';
import * as ast from '../syntax/generated/ast.ts';
import { endOfLine, lineBreakOf } from '../syntax/text-edit.ts';
import type { Expression } from './amounts.ts';
import type { Heights } from './heights.ts';
import { KEYWORD, NOT_NEGATIVE, POSITIVE, type Context } from './context.ts';
import { namesOf, type SpecText } from './names.ts';
import type { Project } from './project.ts';
import { saidOnce, takingOut } from './said-once.ts';
import type { Points } from './points.ts';
import { SiteHeightsReader } from './site-heights.ts';
import type { Things } from './things.ts';

/** Reads the site. */
export class Sites {
  private readonly project: Project;
  private readonly context: Context;
  private readonly things: Things;
  private readonly heights: Heights;
  private readonly points: Points;
  private readonly siteHeights: SiteHeightsReader;

  constructor(project: Project, context: Context, things: Things, heights: Heights, points: Points) {
    this.project = project;
    this.context = context;
    this.things = things;
    this.heights = heights;
    this.points = points;
    this.siteHeights = new SiteHeightsReader(context, points, heights);
  }

  /** The site of a job, and what broken things it leans on; `isBroken` tells whether the text of any site is broken. */
  read(isBroken: boolean): { value: Site | undefined; broken: readonly string[] } {
    const sites = this.project.texts.flatMap(text =>
      text.parsed.root.elements.filter(ast.isSite).map(node => ({ text, node }))
    );
    for (const again of sites.slice(1))
      this.context.fault(
        again.text,
        'site',
        again.node,
        'said-twice',
        'The site is described twice; the first counts. Put both together.',
        { harmless: true, fixes: [takingOut(this.context, again.text, again.node, { like: sites[0]!.node })] }
      );
    const first = sites[0];
    const { value, broken } = this.context.watch(() => this.readSite(first?.text ?? this.project.shipped, first?.node));
    const all = [...broken, ...this.siteHeights.broken];
    return { value, broken: isBroken ? [...all, 'site'] : all };
  }

  private readSite(text: SpecText, node: ast.Site | undefined): Site | undefined {
    const { context } = this;
    if (node !== undefined) context.place('site', text, node, KEYWORD);
    const items = (node?.items ?? []).filter(item => !ast.isBenchmark(item) && !ast.isBreakLine(item));
    const said = saidOnce(context, text, 'site', items, item => item.$type);
    const soilItem = said.get('SiteSoil') as ast.SiteSoil | undefined;
    const soil = this.soil(text, soilItem);
    const facts = this.soilFacts(text, soilItem);
    const topsoilItem = said.get('SiteTopsoil') as ast.SiteTopsoil | undefined;
    const topsoil =
      topsoilItem &&
      context.given(text, 'site/topsoil', topsoilItem.thickness as Expression | undefined, 'm', NOT_NEGATIVE);
    const wintersItem = said.get('SiteWinters') as ast.SiteWinters | undefined;
    const winters =
      wintersItem && context.word(text, 'site', wintersItem, 'kind', wintersItem.kind, ['freeze', 'mild'] as const);
    const groundItem = said.get('SiteGround') as ast.SiteGround | undefined;
    const ground = groundItem && this.heights.read(text, 'site/ground', groundItem.height);
    this.gaps(text, node, said);
    if (soil === undefined) return undefined;
    const benchmark = node?.items.find(ast.isBenchmark)?.name;
    const datum = this.heights.datum();
    const heights = this.siteHeights.read(this.project.texts, this.breakLines(text, node));
    const planning = (said.get('Planning') as ast.Planning | undefined)?.text;
    return {
      soil: soil.soil,
      drains: facts.drains ?? (soil.drainsWell ? 'well' : 'poorly'),
      ...(facts.bearing === undefined ? {} : { bearing: facts.bearing }),
      ...(winters === undefined ? {} : { winters }),
      ...(topsoil === undefined ? {} : { topsoil }),
      ...(ground === undefined ? {} : { ground }),
      ...(benchmark === undefined ? {} : { benchmark }),
      ...(datum === undefined ? {} : { datum }),
      ...(heights === undefined ? {} : { heights }),
      ...(topsoilItem?.kept ? { topsoilKept: true } : {}),
      ...(planning === undefined ? {} : { planning })
    };
  }

  /** Lines along which the ground breaks, such as the top and the foot of a bank. */
  private breakLines(text: SpecText, node: ast.Site | undefined): Point[][] {
    return (node?.items.filter(ast.isBreakLine) ?? []).flatMap(item => {
      const points = item.points.map((point, index) =>
        this.points.named(text, 'site', item, ['points', index], point?.$refText)
      );
      return points.every(point => point !== undefined) ? [points] : [];
    });
  }

  get setUps(): readonly SetUp[] {
    return this.siteHeights.setUps;
  }

  /** Where what the site does not say could be written; a job without a site could have one. */
  private gaps(text: SpecText, node: ast.Site | undefined, said: ReadonlyMap<string, ast.SiteItem>): void {
    const { changes } = this.context;
    const unsaid = SITE_ORDER.filter(([type]) => !said.has(type));
    if (node === undefined) {
      const job = this.project.main.parsed.root.elements.find(ast.isJob)?.$cstNode?.end;
      if (job === undefined) return;
      const source = this.project.main.parsed.text;
      const at = endOfLine(source, job);
      const before = `${lineBreakOf(source).repeat(2)}site { `;
      const gap = { start: at, end: at, before, between: ', ', after: ' }', column: 0 };
      for (const [, word] of unsaid) changes.gapAt(`site/${word}`, this.project.main, gap);
      return;
    }
    for (const [type, word] of unsaid) {
      const earlier = SITE_ORDER.slice(
        0,
        SITE_ORDER.findIndex(([other]) => other === type)
      ).map(([other]) => other);
      const behind = node.items.filter(item => earlier.includes(item.$type)).at(-1);
      changes.gap(`site/${word}`, text, node, behind, { commas: true });
    }
  }

  private soil(text: SpecText, item: ast.SiteSoil | undefined): { soil: Soil; drainsWell: boolean } | undefined {
    const { shipped } = this.project;
    if (item === undefined) {
      const declared = namesOf(shipped).byName.get('soil-kind common-earth');
      return (
        declared && this.things.soil(declared, { because: 'the job names no soil; common earth as shipped is taken' })
      );
    }
    const found = this.context.find(text, 'site', item, 'kind', item.kind?.$refText, ['soil-kind']);
    return found && this.things.soil(found);
  }

  private soilFacts(
    text: SpecText,
    item: ast.SiteSoil | undefined
  ): { drains?: 'well' | 'poorly'; bearing?: NonNullable<Site['bearing']> } {
    const facts: { drains?: 'well' | 'poorly'; bearing?: NonNullable<Site['bearing']> } = {};
    for (const fact of item?.facts ?? []) {
      if (fact.bearing !== undefined) {
        const bearing = this.context.given(text, 'site/bearing', fact.bearing as Expression, '', POSITIVE);
        if (bearing !== undefined) facts.bearing = bearing;
        continue;
      }
      const word = this.context.word(text, 'site', fact, 'word', fact.word, [
        'poorly-drained',
        'well-drained'
      ] as const);
      if (word !== undefined) facts.drains = word === 'poorly-drained' ? 'poorly' : 'well';
    }
    return facts;
  }
}

/** The statements of a site in their usual order. */
const SITE_ORDER: readonly (readonly [ast.SiteItem['$type'], word: string])[] = [
  ['SiteSoil', 'soil'],
  ['SiteTopsoil', 'topsoil'],
  ['SiteWinters', 'winters'],
  ['Benchmark', 'benchmark'],
  ['SiteGround', 'ground']
];
