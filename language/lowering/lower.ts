import type { AstNode } from 'langium';
import type { Finding, Place } from '../findings/finding.ts';
import type { Gaps } from '../findings/gap.ts';
import { placed } from '../findings/placed.ts';
import type { Area, Country, Job, Key, Material, Missing, Site, System } from '../job/job.ts';
import { nameIn } from '../job/key-names.ts';
import { ChunkIndex } from '../syntax/chunk-index.ts';
import { SHIPPED_RULEBOOKS } from '../library/shipped.ts';
import { usualFall } from '../library/usual-fall.ts';
import * as ast from '../syntax/generated/ast.ts';
import { lineBreakOf } from '../syntax/text-edit.ts';
import { capital, type Expression } from './amounts.ts';
import type { WrittenAmounts } from './written-amounts.ts';
import { Areas, type JobWords } from './areas.ts';
import { BrokenOuts } from './broken-out.ts';
import { readBuying } from './buying.ts';
import { Charges } from './charges.ts';
import { article, Context, type ToldFrom } from './context.ts';
import { Finishes } from './finishes.ts';
import { type Fittings, readFittings } from './fittings.ts';
import { Heights } from './heights.ts';
import { readCarting, readNotes } from './job-carting.ts';
import { keyOf } from './keys.ts';
import { LevelSheets } from './level-sheets.ts';
import { MoneyLines } from './money-lines.ts';
import { KIND_WORDS, Names, namesOf, type Declared, type Kind, type SpecText } from './names.ts';
import { occurrencesIn } from './occurrences.ts';
import { Outlines } from './outlines.ts';
import { Packs } from './packs.ts';
import { PathLines } from './path-lines.ts';
import { Points } from './points.ts';
import { Prices } from './prices.ts';
import type { Project } from './project.ts';
import { writing, type SaidFix } from './said-fix.ts';
import { Rates } from './rates.ts';
import { saidOnce, takingOut } from './said-once.ts';
import { Sites } from './sites.ts';
import { readStock } from './stock.ts';
import { Strips } from './strips.ts';
import { textFaults } from './text-faults.ts';
import { readSource } from './sources.ts';
import { examplesOf, type RuleExample } from './rule-examples.ts';
import { systemShown } from './rulebook-leads.ts';
import { Rulebooks } from './rulebooks.ts';
import { Rules } from './rules.ts';
import { readAccepts } from './accepts.ts';
import { currencyOf, rulesAndSystem } from './job-words.ts';
import { STANDARD_NAMES, Things } from './things.ts';
import { Taped } from './taped.ts';
import { Uses } from './only-used-by.ts';
import { checkVariants } from './variants.ts';
import { WorkLines } from './work.ts';

export interface Lowered {
  /** Absent when the file is a library: it has no `job`. */
  readonly job?: Job;
  readonly findings: readonly Finding[];
  readonly places: ReadonlyMap<Key, Place>;
  readonly amounts: WrittenAmounts;
  readonly toldFrom: ReadonlyMap<Key, ToldFrom>;
  /** Where something that is not said could be written. */
  readonly gaps: Gaps;
  /** Of the sound rules of one's own. */
  readonly examples: readonly RuleExample[];
  /** Look-ups of names, a count of work. */
  readonly lookUps: number;
}

/** The rulebooks that a job is offered. */
const COUNTRIES = ['north-america', 'britain', 'ireland', 'continental-europe'] as const satisfies readonly Country[];

function declaredIn({ texts }: Project, kind: Kind): Declared[] {
  return texts.flatMap(text => namesOf(text).all.filter(declared => declared.kind === kind));
}

/** Leads from the syntax trees of a project to the job as plain data, with every fault of text, names and quantities. */
export function lower(project: Project): Lowered {
  return new Lowering(project).run();
}

class Lowering {
  private readonly project: Project;
  private readonly context: Context;
  private readonly things: Things;
  private readonly areas: Areas;
  private readonly heights: Heights;
  private readonly lines: PathLines;
  private readonly sites: Sites;
  private readonly points: Points;
  private readonly taped: Taped;
  private readonly outlines: Outlines;
  private readonly rules: Rules;
  private readonly rulebooks: Rulebooks;
  private readonly rates: Rates;
  private readonly missing: Missing[] = [];
  private readonly examples: RuleExample[] = [];
  private readonly chunks = new Map<SpecText, ChunkIndex>();
  private uses: Uses | undefined;

  constructor(project: Project) {
    this.project = project;
    for (const text of project.texts) this.chunks.set(text, new ChunkIndex(text.parsed));
    this.context = new Context(new Names(project.visible), (text, node) => this.isBroken(text, node));
    this.things = new Things(this.context, project.shipped);
    this.rates = new Rates(this.context, project.shipped);
    this.points = new Points(this.context);
    this.taped = new Taped(this.context, this.points, declaredIn(project, 'point'));
    this.points.taped = this.taped;
    this.outlines = new Outlines(this.context, this.things, this.points);
    this.heights = new Heights(this.context, declaredIn(project, 'benchmark'));
    this.lines = new PathLines(this.context, this.outlines);
    this.outlines.strips = new Strips(this.context, this.lines);
    const finishes = new Finishes(this.context, this.points, this.heights, this.outlines, this.lines);
    this.areas = new Areas(
      this.context,
      this.things,
      project.shipped,
      this.points,
      this.outlines,
      this.heights,
      finishes
    );
    this.areas.brokenOuts = new BrokenOuts(
      this.context,
      this.outlines,
      this.areas.usuals,
      declaredIn(project, 'existing')
    );
    this.sites = new Sites(project, this.context, this.things, this.heights, this.points);
    this.rules = new Rules(this.context, project);
    this.rulebooks = new Rulebooks(project, this.context, this.rules);
  }

  run(): Lowered {
    const { main, texts } = this.project;
    const { context } = this;
    context.system = rulesAndSystem(this.project).system;
    for (const text of texts)
      context.findings.push(...textFaults(text, this.chunks.get(text)!, context.changes.placerOf(text)));
    this.declaredTwice();
    this.checkThings();
    this.areas.brokenOuts?.all();
    checkVariants(this.context, this.project);
    const isJob = main.parsed.chunks.some(chunk => chunk.word === 'job');
    const job = isJob ? this.job() : undefined;
    if (isJob) {
      this.neverUsed();
      this.missingWithoutReason();
    } else {
      readAccepts(this.context, this.project, this.rules, undefined);
      this.pricesWithoutJob();
      this.areasWithoutJob();
    }
    return {
      ...(job === undefined ? {} : { job: frozen(job) }),
      findings: this.context.findings,
      places: this.context.places,
      amounts: this.context.amounts,
      toldFrom: this.context.toldFrom,
      gaps: this.context.changes.gaps,
      examples: this.examples,
      lookUps: this.context.names.lookUps
    };
  }

  private isBroken(text: SpecText, node: AstNode): boolean {
    const offset = node.$cstNode?.offset;
    return offset !== undefined && (this.chunks.get(text)?.isBroken(offset) ?? false);
  }

  private declaredTwice(): void {
    const first = new Map<string, Declared>();
    for (const text of this.project.texts) {
      for (const declared of namesOf(text).all) {
        const id = keyOf(declared);
        const other = first.get(id);
        if (other === undefined) {
          first.set(id, declared);
          continue;
        }
        this.context.fault(
          text,
          keyOf(declared),
          declared.node,
          'said-twice',
          `${article(KIND_WORDS[declared.kind])} called \`${declared.name}\` is declared twice; the first counts.`,
          {
            property: 'name',
            harmless: true,
            related: [{ node: other.node, text: other.text, message: 'Declared first here.' }],
            fixes: [takingOut(this.context, text, declared.node, other.text === text ? { like: other.node } : {})]
          }
        );
      }
    }
  }

  /** Every declaration is checked, used or not. */
  private checkThings(): void {
    for (const text of this.project.texts) {
      for (const declared of namesOf(text).all) {
        if (this.isBroken(text, declared.node)) continue;
        this.context.place(keyOf(declared), text, declared.node, 'name');
        this.context.watch(() => {
          if (declared.kind === 'unit') this.things.unit(declared);
          else if (declared.kind === 'material') this.things.material(declared);
          else if (declared.kind === 'soil-kind') this.things.soil(declared);
          else if (declared.kind === 'bond') this.things.bond(declared);
          else if (declared.kind === 'source') readSource(this.context, declared);
          else if (declared.kind === 'rule') this.rule(declared);
          else if (declared.kind === 'rate') this.rates.of(declared);
          else if (declared.kind === 'rulebook') this.rulebooks.check(declared);
          else if (declared.kind === 'side-kind' || declared.kind === 'existing') this.areas.checkSide(declared);
          else if (declared.kind === 'point') this.points.of(declared);
          else if (declared.kind === 'let')
            this.context.amount(text, keyOf(declared), (declared.node as ast.Let).value as Expression);
        });
      }
    }
  }

  private rule(declared: Declared): void {
    const rule = this.rules.rule(declared);
    if (rule !== undefined) this.examples.push(...examplesOf(declared, rule));
  }

  // ---- job ----

  private job(): Job {
    const { main, texts } = this.project;
    const jobs = texts.flatMap(text => text.parsed.root.elements.filter(ast.isJob).map(node => ({ text, node })));
    const node = jobs.find(job => job.text === main)?.node;
    for (const other of jobs) {
      if (other.node === node) continue;
      this.context.fault(
        other.text,
        'job',
        other.node,
        'said-twice',
        'A spec has one `job`. Take this one out, or give it a file of its own.',
        { harmless: true, fixes: other.text === main ? [takingOut(this.context, main, other.node)] : [] }
      );
    }
    const said =
      node === undefined
        ? new Map<string, ast.JobItem>()
        : saidOnce(
            this.context,
            main,
            'job',
            node.items.filter(item => !SAID_OFTEN.includes(item.$type)),
            item => (ast.isJobMeasure(item) || ast.isJobShare(item) ? item.what! : item.$type)
          );
    const rulesItem = said.get('JobRules') as ast.JobRules | undefined;
    const checked = this.rulebooks.checkedBy(main, node, rulesItem);
    if (rulesItem === undefined && node !== undefined && !checked.hasOwn) this.rulesNotNamed(main, node);
    const show = said.get('JobShow') as ast.JobShow | undefined;
    const shown =
      show && this.context.word(main, 'job', show, 'system', show.system, ['feet-and-inches', 'metric'] as const);
    const currency = (said.get('JobCurrency') as ast.JobCurrency | undefined)?.code;
    const system = shown === undefined ? (checked.system ?? 'imperial') : systemShown(shown);
    this.context.system = system;
    if (node !== undefined) this.context.place('job', main, node, 'title');
    const buying = readBuying(this.context, main, node, said, this.areas.usuals);
    const charges = new Charges(this.context, currency, currencyOf(this.project));
    const lists = new Prices(this.context, this.things, charges, main);
    const priced = lists.read(texts, this.missing);
    const packs = new Packs(this.context, this.things, priced.prices, this.missing);
    const areas = this.readAreas(checked.country, system, packs);
    const datum = this.heights.datum();
    return {
      key: 'job',
      title: node?.title ?? '',
      ...(currency === undefined ? {} : { currency }),
      system,
      rulebooks: checked.rulebooks,
      rules: checked.rules,
      accepts: readAccepts(this.context, this.project, this.rules, checked.rules),
      usualFall: usualFall(checked.country ?? 'north-america', system),
      usualStone: STANDARD_NAMES[checked.country ?? 'north-america'].base!,
      buying,
      ...priced,
      stock: readStock(this.context, packs, texts, this.missing),
      concrete: this.concrete(),
      points: this.points.all(declaredIn(this.project, 'point')),
      ...areas,
      tapes: this.taped.tapes(),
      ...(datum === undefined ? {} : { datum }),
      setUps: this.sites.setUps,
      lines: this.lines.all(declaredIn(this.project, 'line')),
      sections: this.lines.all(declaredIn(this.project, 'section')),
      levelSheet: new LevelSheets(this.context, this.heights).read(texts),
      carting: readCarting(this.context, main, said, this.areas.usuals, checked.country),
      money: new MoneyLines(this.context, main, charges).read(node?.items ?? [], said),
      work: {
        ...new WorkLines(this.context, main).read(node?.items ?? [], said),
        rates: this.rates.all(this.project)
      },
      notes: readNotes(this.context, main, node?.items.filter(ast.isJobNote) ?? []),
      missing: this.missing
    };
  }

  /** One's own material of that role, else the shipped one. */
  private concrete(): Material {
    const { context, things } = this;
    for (const declared of declaredIn(this.project, 'material')) {
      const material = context.watch(() => things.material(declared)).value;
      if (material?.roles.includes('concrete') !== true) continue;
      context.names.find(declared.text, 'material', declared.name);
      return material;
    }
    return things.material(namesOf(this.project.shipped).byName.get('material concrete')!)!;
  }

  /** Faults in a price list that no job is read with. */
  private pricesWithoutJob(): void {
    const { texts } = this.project;
    const charges = new Charges(this.context, undefined, currencyOf(this.project));
    const { prices } = new Prices(this.context, this.things, charges, undefined).read(texts, []);
    readStock(this.context, new Packs(this.context, this.things, prices, []), texts, []);
  }

  private rulesNotNamed(text: SpecText, node: ast.Job): void {
    if (this.isBroken(text, node)) return;
    this.context.fault(
      text,
      'job',
      node,
      'rules-not-named',
      `The job names no rules, so none are checked. Write \`rules\` and one of: ${[...this.context.names.known(text, ['rulebook']).filter(name => !SHIPPED_RULEBOOKS.includes(name)), ...COUNTRIES].join(', ')}.`,
      { property: 'title', fixes: this.rulesFixes(text, node) }
    );
  }

  private rulesFixes(text: SpecText, node: ast.Job): SaidFix[] {
    const { changes, system } = this.context;
    changes.gap('job/rules', text, node, undefined, { commas: true });
    // A job without rules shows feet and inches unless it says otherwise.
    return (system === 'metric' ? [...COUNTRIES].reverse() : COUNTRIES).map(country => {
      const rules = `rules ${country}`;
      return { ...writing(rules), does: changes.said('job/rules', [rules]) };
    });
  }

  // ---- areas, boxes, pits ----

  /** Areas, and all that stands in them and beside them. */
  private readAreas(
    country: Country | undefined,
    system: System,
    packs: Packs
  ): Pick<Job, 'areas' | 'boxes' | 'drains' | 'pipes' | 'gates' | 'routes' | 'log'> {
    const { texts } = this.project;
    const siteIsBroken = texts.some(text =>
      text.parsed.chunks.some(chunk => chunk.word === 'site' && this.chunks.get(text)!.isBroken(chunk.start))
    );
    const site = this.sites.read(siteIsBroken);
    const fittings = this.readFittings(country, packs);
    const areas: Area[] = [];
    for (const { text, node, declared } of this.areaNodes()) {
      const key = declared === undefined ? 'area:unnamed' : keyOf(declared);
      const name = declared?.name ?? 'an area without a name';
      if (declared === undefined || this.isBroken(text, node)) {
        // Its lens stays where it is while its text is broken.
        if (declared !== undefined) this.context.place(key, text, node, 'name');
        this.missing.push({ key, name, because: name });
        continue;
      }
      const { within, broken: brokenWithin } = fittings.within(key);
      const { value, broken } = this.context.watch(() => {
        const words: JobWords = { country, system, site: site.value ?? NO_SITE };
        return this.areas.read(declared, words, within);
      });
      const because = [...broken, ...site.broken, ...brokenWithin];
      if (site.value === undefined && because.length === 0) because.push('site');
      if (value === undefined || because.length > 0)
        this.missing.push({ key, name, because: nameIn(because[0] ?? name) });
      else areas.push(value);
    }
    this.missingBetween(areas);
    return { areas, ...fittings.ofJob(areas) };
  }

  private readFittings(country: Country | undefined, packs: Packs): Fittings {
    const { context, points, heights, outlines, lines, things, areas } = this;
    const { laying, usuals } = areas;
    const readers = { context, points, heights, outlines, lines, things, laying, usuals, packs };
    return readFittings(readers, this.project.texts, this.missing, country);
  }

  private *areaNodes(): Generator<{ text: SpecText; node: ast.Area; declared: Declared | undefined }> {
    const taken = new Set<string>();
    for (const text of this.project.texts) {
      for (const node of text.parsed.root.elements.filter(ast.isArea)) {
        if (taken.has(node.name)) continue;
        taken.add(node.name);
        yield { text, node, declared: namesOf(text).byName.get(`area ${node.name}`) };
      }
    }
  }

  /** What an area shares with a neighbour that has no numbers is not known either. */
  private missingBetween(areas: readonly Area[]): void {
    const without = new Set(this.missing.map(missing => missing.key));
    for (const area of areas) {
      const neighbours = new Set(area.edges.flatMap(edge => edge.meets?.area ?? []));
      for (const neighbour of neighbours)
        if (without.has(neighbour))
          this.missing.push({
            key: `${area.key}+${neighbour}`,
            name: `what ${area.name} and its neighbour share`,
            because: nameIn(neighbour)
          });
    }
  }

  // ---- what else is told ----

  private neverUsed(): void {
    const { main } = this.project;
    if (this.chunks.get(main)!.isAnyBroken) return;
    for (const declared of namesOf(main).byName.values()) {
      if (STANDS_FOR_ITSELF.includes(declared.kind) || this.context.names.isUsed(declared.node)) continue;
      if (this.context.offeredNames.has(declared.name)) continue;
      // The ground of the site need not be told, nor a benchmark used before heights are.
      if (declared.kind === 'benchmark') continue;
      this.context.fault(
        main,
        keyOf(declared),
        declared.node,
        'never-used',
        `The ${KIND_WORDS[declared.kind]} \`${declared.name}\` is never used.`,
        { property: 'name', harmless: true, fixes: this.holdsRules(declared) ? [] : [this.takingOutUnused(declared)] }
      );
    }
  }

  /** Without their rulebook its rules would be those of the job. */
  private holdsRules({ text, node }: Declared): boolean {
    return [...namesOf(text).bookOf.values()].includes(node);
  }

  /** With what nothing else uses: it would be the next to be told. */
  private takingOutUnused(declared: Declared): SaidFix {
    const { main } = this.project;
    this.uses ??= new Uses(main, this.project);
    const all = [declared, ...this.uses.onlyBy(declared)];
    const others = all.slice(1);
    const named = others.slice(0, MOST_NAMED).map(({ name }) => `\`${name}\``);
    const more = others.length > named.length ? ` and ${others.length - named.length} more` : '';
    const title = named.length === 0 ? 'Take it out' : `Take it out, with ${named.join(', ')}${more} that only it uses`;
    return { title, does: all.map(({ node }) => this.context.changes.takenOut(main, node)) };
  }

  /** Whatever has no numbers has an error that says why: else this program is at fault, and must not be silent. */
  private missingWithoutReason(): void {
    if (this.missing.length === 0 || this.context.findings.some(({ severity }) => severity === 'error')) return;
    const [{ key, name }] = this.missing as [Missing];
    const message = `There are no numbers of ${name}, and this program can't say why: please report it with the file.`;
    const { places, changes, findings } = this.context;
    const where = { places, gaps: changes.gaps };
    findings.push(placed({ id: 'internal', message, target: key }, where, this.project.main.file));
  }

  private areasWithoutJob(): void {
    const { main } = this.project;
    const area = main.parsed.root.elements.find(ast.isArea);
    if (area === undefined || this.isBroken(main, area)) return;
    this.context.fault(
      main,
      `area:${area.name}`,
      area,
      'job-missing',
      'This file has no `job`, so nothing is computed here. Write `job "…" { rules north-america }`, or use the file from one that has a job.',
      { property: 'name', harmless: true, fixes: this.standsAlone() ? this.jobFixes(area.name) : [] }
    );
  }

  /** Sound, and every name in it leads somewhere: else it is a part of a job that another file holds. */
  private standsAlone(): boolean {
    const { main } = this.project;
    if (this.chunks.get(main)!.isAnyBroken) return false;
    return occurrencesIn(main, this.project).every(({ declared }) => declared !== undefined);
  }

  /** A job on a line of its own above the first statement, called like the area. */
  private jobFixes(area: string): SaidFix[] {
    const { main } = this.project;
    const first = main.parsed.chunks[0]!.start;
    const lineBreak = lineBreakOf(main.parsed.text);
    return COUNTRIES.map(country => {
      const job = `job "${capital(area)}" { rules ${country} }`;
      const edit = { start: first, end: first, text: job + lineBreak + lineBreak };
      return { ...writing(job), does: [this.context.changes.change(main, edit)] };
    });
  }
}

/** Nothing need name them. */
const STANDS_FOR_ITSELF: readonly Kind[] = [
  'area',
  'kept-out',
  'section',
  'drain',
  'pipe',
  'gate',
  'route',
  'rate',
  'variant'
];

/** Statements of a job that may stand there several times. */
const SAID_OFTEN: readonly ast.JobItem['$type'][] = [
  ...(['Treated', 'Preferred', 'JobKeep', 'JobNote'] as const),
  ...(['JobHire', 'JobExtra', 'JobTask', 'JobExcludes'] as const)
];

/** A longer list in the name of a fix is read by nobody. */
const MOST_NAMED = 3;

function frozen<T>(value: T): T {
  if (typeof value !== 'object' || value === null || Object.isFrozen(value)) return value;
  for (const part of Object.values(value)) frozen(part);
  return Object.freeze(value);
}

const NO_SITE: Site = {
  soil: { name: '', swell: { value: 0, written: '' }, density: { value: 0, written: '' }, heavesInFrost: true },
  drains: 'poorly'
};
