import { CONCERNS, memberOf, membersOf } from '../findings/members/members.ts';
import { SEVERITIES, type Severity } from '../job/severity.ts';
import type { Concern, Condition, FixTo, Need, Rule, RuleCase, SaysPart } from '../job/rule.ts';
import * as ast from '../syntax/generated/ast.ts';
import { nearest } from '../syntax/nearest.ts';
import type { Expression } from './amounts.ts';
import type { Context } from './context.ts';
import { keyOf } from './keys.ts';
import type { Declared, SpecText } from './names.ts';
import { isShipped, type Project } from './project.ts';
import { KINDS_OF_MEMBER } from './rule-names.ts';
import { oneOf, quantitiesIn, ruleSum, type RuleScope, type TypedSum } from './rule-sums.ts';
import { quantitiesOfCondition, quantitiesOfTest, ruleCondition, ruleTest, type TypedTest } from './rule-tests.ts';
import { saidOnce } from './said-once.ts';
import { writing } from './said-fix.ts';
import { cited, findSource, HOW_KNOWN, type Cited } from './sources.ts';

/** Rules of what ships lean on nothing outside it, so they stay with the text that they were read from. */
const readBefore = new WeakMap<ast.Rule, Rule>();

/** Reads rules: each once, whether or not a job is checked by it. */
export class Rules {
  private readonly context: Context;
  private readonly project: Project;
  private readonly read = new Map<ast.Rule, Rule | undefined>();

  constructor(context: Context, project: Project) {
    this.context = context;
    this.project = project;
  }

  /** Undefined where the rule has a fault: then nothing is judged by it. */
  rule(declared: Declared): Rule | undefined {
    const node = declared.node as ast.Rule;
    if (this.read.has(node)) return this.read.get(node);
    this.context.place(keyOf(declared), declared.text, node, 'name');
    const known = readBefore.get(node);
    if (known !== undefined) this.read.set(node, known);
    if (known !== undefined) return known;
    const rule = new RuleReader(this.context, declared).rule();
    this.read.set(node, rule);
    if (rule !== undefined && isShipped(this.project, declared.text)) readBefore.set(node, rule);
    return rule;
  }
}

/** One kind of thing that a rule concerns, while its statements are being read. */
interface Part {
  readonly concerns: Concern;
  readonly when: Condition[];
  readonly needs: Need[];
  readonly fixes: FixTo[];
  readonly cites: Cited[];
  /** Needs that are still to be told. */
  untold: (TypedTest & { readonly when?: Condition; readonly node: ast.RuleNeeds })[];
  last?: TypedSum | undefined;
  /** The last need has a fault: what is said of it can't be checked. */
  faulty?: boolean;
}

class RuleReader {
  private readonly context: Context;
  private readonly text: SpecText;
  private readonly node: ast.Rule;
  private readonly name: string;
  private readonly key: string;
  private readonly parts: Part[] = [];
  private readonly sharedCites: Cited[] = [];
  private sound = true;

  constructor(context: Context, declared: Declared) {
    this.context = context;
    this.text = declared.text;
    this.node = declared.node as ast.Rule;
    this.name = declared.name;
    this.key = keyOf(declared);
  }

  rule(): Rule | undefined {
    const { context, node, key } = this;
    const faults = context.findings.length;
    const once = node.items.filter(item => ast.isRuleSeverity(item) || ast.isRuleSafety(item));
    const said = saidOnce(context, this.text, key, once, item => item.$type);
    for (const item of node.items) this.item(item);
    for (const part of this.parts) this.endNeeds(part);
    this.complete();
    const severity = this.severity(said);
    const isSound = this.sound && !context.findings.slice(faults).some(finding => finding.severity === 'error');
    if (!isSound || severity === undefined) return undefined;
    const safety = said.has('RuleSafety');
    const cases = this.parts.map(part => this.case(part, safety, severity));
    return { key, name: this.name, severity, isAboutSafety: safety, cases, yieldsTo: [] };
  }

  private get part(): Part | undefined {
    return this.parts.at(-1);
  }

  private scope(part: Part, worked?: TypedSum): RuleScope {
    const { text, key } = this;
    const { concerns } = part;
    return { text, key, concerns, ...(worked === undefined ? {} : { worked }) };
  }

  private item(item: ast.RuleItem): void {
    if (ast.isRuleConcerns(item)) return this.concerns(item);
    if (ast.isRuleCites(item)) return this.cites(item);
    if (!ast.isRuleWhen(item) && !ast.isRuleNeeds(item) && !ast.isRuleSays(item) && !ast.isRuleFix(item)) return;
    const { part } = this;
    if (part === undefined) {
      // Told once, by what is missing.
      this.sound = false;
      return;
    }
    if (ast.isRuleWhen(item)) {
      const condition = ruleCondition(this.context, this.scope(part), item.condition);
      if (condition === undefined) this.sound = false;
      else part.when.push(condition);
    } else if (ast.isRuleNeeds(item)) this.needs(part, item);
    else if (ast.isRuleSays(item)) this.says(part, item);
    else this.fix(part, item);
  }

  private concerns(item: ast.RuleConcerns): void {
    const concerns = this.context.word(this.text, this.key, item, 'kind', item.kind, CONCERNS);
    if (this.part !== undefined) this.endNeeds(this.part);
    if (concerns === undefined) this.sound = false;
    this.parts.push({ concerns: concerns ?? 'area', when: [], needs: [], fixes: [], cites: [], untold: [] });
  }

  private cites(item: ast.RuleCites): void {
    const source = findSource(this.context, this.text, this.key, item);
    if (item.place === undefined && isNoWayOfKnowing(item.how)) return this.placeWithoutQuotes(item, item.how);
    const how =
      item.how === undefined ? undefined : this.context.word(this.text, this.key, item, 'how', item.how, HOW_KNOWN);
    if (source === undefined || (item.how !== undefined && how === undefined)) {
      this.sound = false;
      return;
    }
    (this.part?.cites ?? this.sharedCites).push(cited(source, item.place, how));
  }

  /** `cites leaflet, page-3` */
  private placeWithoutQuotes(item: ast.RuleCites, written: string): void {
    this.sound = false;
    const message = `The place stands in quotes: \`cites ${item.source?.$refText ?? '…'}, "${written}"\`.`;
    this.context.fault(this.text, this.key, item, 'unknown-word', message, {
      property: 'how',
      fixes: [writing(`"${written}"`)]
    });
  }

  private needs(part: Part, node: ast.RuleNeeds): void {
    const test = ruleTest(this.context, this.scope(part), node.test);
    const when = ruleCondition(this.context, this.scope(part), node.condition);
    part.faulty = test === undefined || (node.condition !== undefined && when === undefined);
    if (test === undefined || part.faulty) {
      this.sound = false;
      return;
    }
    part.untold.push({ ...test, ...(when === undefined ? {} : { when }), node });
    part.last = test.compared;
  }

  /** What is said tells of all needs above it that are not told yet; without any, of the rule as it applies. */
  private says(part: Part, node: ast.RuleSays): void {
    if (part.faulty === true) return;
    const scope = this.scope(part, part.untold.length > 0 ? part.last : undefined);
    const says = node.parts.map((each): SaysPart | undefined => {
      if (each.text !== undefined) return { text: each.text };
      const value = ruleSum(this.context, scope, each.value as Expression | undefined);
      if (value === undefined) return undefined;
      if (value.measure === 'words') return value.sum.is === 'quantity' ? { words: value.sum.name } : undefined;
      return { value: value.sum, print: value.print, measure: value.measure };
    });
    if (says.includes(undefined)) this.sound = false;
    const told = part.untold.length > 0 ? part.untold : [{}];
    for (const need of told) {
      const { test, when } = need as Partial<TypedTest & { when: Condition }>;
      part.needs.push({
        ...(test === undefined ? {} : { test }),
        ...(when === undefined ? {} : { when }),
        says: says as SaysPart[]
      });
    }
    part.untold = [];
  }

  private endNeeds(part: Part): void {
    const [silent] = part.untold;
    if (silent === undefined) return;
    this.sound = false;
    part.untold = [];
    this.context.fault(
      this.text,
      this.key,
      silent.node,
      'thing-incomplete',
      'Nothing says what is told where this is not met. Write below it `says "…"`.',
      {}
    );
  }

  private fix(part: Part, node: ast.RuleFix): void {
    const { context, text, key } = this;
    const name = node.quantity;
    const member = name === undefined ? undefined : memberOf(part.concerns, name);
    if (name === undefined || part.faulty === true) return;
    if (member?.write === undefined) {
      const known = membersOf(part.concerns).flatMap(each => (each.write === undefined ? [] : [each.name]));
      const near = nearest(name, known);
      this.sound = false;
      context.fault(
        text,
        key,
        node,
        'unknown-word',
        known.length === 0
          ? 'Nothing can be mended here: leave `fix` out.'
          : `\`${name}\` can't be written by a fix. ${oneOf('Write one of', known)}`,
        { property: 'quantity', fixes: near === undefined ? [] : [writing(near)] }
      );
      return;
    }
    const to = this.fixTo(part, node, member.measure, member.choices);
    if (to === undefined) this.sound = false;
    else part.fixes.push({ of: name, to, safe: node.safely ?? false });
  }

  private fixTo(
    part: Part,
    node: ast.RuleFix,
    measure: string,
    choices: readonly string[] | undefined
  ): FixTo['to'] | undefined {
    const { context, text, key } = this;
    const value = node.value as Expression | undefined;
    if (measure === 'words') {
      const name = value !== undefined && ast.isNamed(value) ? (value.to?.$refText ?? '') : '';
      if (name === '' || value === undefined) return undefined;
      const kinds = KINDS_OF_MEMBER[node.quantity ?? ''];
      const other = memberOf(part.concerns, name);
      if (other?.measure === 'words' && kinds !== undefined && KINDS_OF_MEMBER[name]?.[0] === kinds[0])
        return { is: 'quantity', name };
      if (choices !== undefined) return this.choice(context.word(text, key, node, 'value', name, choices));
      return this.choice(context.find(text, key, node, 'value', name, kinds ?? [])?.name);
    }
    const sum = ruleSum(context, this.scope(part, part.last), value);
    if (sum === undefined) return undefined;
    if (sum.measure !== measure)
      return context.fault(
        text,
        key,
        node,
        'wrong-kind',
        `\`${node.quantity}\` is another kind of quantity than this.`,
        {
          property: 'value'
        }
      );
    return sum.sum;
  }

  private choice(word: string | undefined): FixTo['to'] | undefined {
    return word === undefined ? undefined : { is: 'choice', words: [word] };
  }

  // ---- the rule as a whole ----

  private complete(): void {
    const { context, text, key, node, name } = this;
    if (this.parts.length === 0)
      context.incomplete(
        text,
        key,
        node,
        `The rule ${name} does not say what it is about. Write before its \`needs\` one of: ${CONCERNS.map(each => `\`concerns ${each}\``).join(', ')}.`
      );
    else if (this.parts.some(({ needs }) => needs.length === 0) && this.sound)
      context.incomplete(text, key, node, `The rule ${name} asks nothing. Write \`needs\`, and \`says\` below it.`);
    else if (this.parts.some(({ cites }) => cites.length + this.sharedCites.length === 0) && this.sound)
      context.incomplete(
        text,
        key,
        node,
        `The rule ${name} names no source. Write \`cites common-practice\`, or declare a \`source\` and cite that.`
      );
  }

  /** What rests on practice or memory alone is no error, unless people can come to harm. */
  private severity(said: ReadonlyMap<string, ast.RuleItem>): Severity | undefined {
    const item = said.get('RuleSeverity') as ast.RuleSeverity | undefined;
    if (item === undefined) return 'warning';
    const severity = this.context.word(this.text, this.key, item, 'severity', item.severity, SEVERITIES);
    const cites = [...this.sharedCites, ...this.parts.flatMap(part => part.cites)];
    if (severity !== 'error' || said.has('RuleSafety') || cites.length === 0 || cites.some(each => each.isGround))
      return severity;
    this.context.fault(
      this.text,
      this.key,
      item,
      'error-without-source',
      `The rule ${this.name} rests on practice or memory alone, so it counts as a warning. Cite a source that was read, or write \`safety\` if people can come to harm.`,
      { property: 'severity', harmless: true, fixes: [writing('warning')] }
    );
    return 'warning';
  }

  private case({ concerns, when, needs, fixes, cites }: Part, safety: boolean, severity: Severity): RuleCase {
    const conditions = [...when, ...needs.flatMap(need => (need.when === undefined ? [] : [need.when]))];
    const reads = new Set([
      ...conditions.flatMap(quantitiesOfCondition),
      ...needs.flatMap(({ test }) => (test === undefined ? [] : quantitiesOfTest(test)))
    ]);
    const told = needs.flatMap(({ says }) =>
      says.flatMap(part => ('words' in part ? [part.words] : 'value' in part ? quantitiesIn(part.value) : []))
    );
    const all = [...this.sharedCites, ...cites];
    const isGrounded = safety || all.some(each => each.isGround);
    const sentences = all.map(({ words }) => `${words}.`);
    return {
      concerns,
      when,
      needs,
      fixes,
      severity: capped(severity, isGrounded),
      isGrounded,
      source: [...(safety ? ['Safety.'] : []), ...sentences].join(' '),
      reads: [...reads],
      readsArea: [...reads, ...told].some(name => memberOf(concerns, name)!.of !== concerns)
    };
  }
}

/** What rests on practice or memory alone is never an error. */
export function capped(severity: Severity, isGrounded: boolean): Severity {
  return severity === 'error' && !isGrounded ? 'warning' : severity;
}

function isNoWayOfKnowing(word: string | undefined): word is string {
  return word !== undefined && nearest(word, HOW_KNOWN) === undefined;
}
