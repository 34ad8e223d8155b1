import type { Site, Soil } from '../job/job.ts';
import * as ast from '../syntax/generated/ast.ts';
import type { Expression } from './amounts.ts';
import type { Areas } from './areas.ts';
import { KEYWORD, NOT_NEGATIVE, POSITIVE, type Context } from './context.ts';
import { namesOf, type SpecText } from './names.ts';
import type { Project } from './project.ts';
import { saidOnce } from './said-once.ts';
import type { Things } from './things.ts';

/** Reads the site. */
export class Sites {
  private readonly project: Project;
  private readonly context: Context;
  private readonly things: Things;
  private readonly areas: Areas;

  constructor(project: Project, context: Context, things: Things, areas: Areas) {
    this.project = project;
    this.context = context;
    this.things = things;
    this.areas = areas;
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
        { harmless: true }
      );
    const first = sites[0];
    const { value, broken } = this.context.watch(() => this.readSite(first?.text ?? this.project.shipped, first?.node));
    return { value, broken: isBroken ? [...broken, 'site'] : broken };
  }

  private readSite(text: SpecText, node: ast.Site | undefined): Site | undefined {
    const { context } = this;
    if (node !== undefined) context.place('site', text, node, KEYWORD);
    const items = (node?.items ?? []).filter(item => !ast.isBenchmark(item));
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
    const ground = groundItem && this.areas.height(text, 'site/ground', groundItem.height);
    if (soil === undefined) return undefined;
    return {
      soil: soil.soil,
      drains: facts.drains ?? (soil.drainsWell ? 'well' : 'poorly'),
      ...(facts.bearing === undefined ? {} : { bearing: facts.bearing }),
      ...(winters === undefined ? {} : { winters }),
      ...(topsoil === undefined ? {} : { topsoil }),
      ...(ground === undefined ? {} : { ground })
    };
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
