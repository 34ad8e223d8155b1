import type { Country, System } from '../job/job.ts';
import type { Rule, Rulebook } from '../job/rule.ts';
import { SHIPPED_RULEBOOKS, SHIPPED_RULES } from '../library/shipped.ts';
import type { Severity } from '../findings/finding.ts';
import * as ast from '../syntax/generated/ast.ts';
import type { Context } from './context.ts';
import { keyOf } from './keys.ts';
import { namesOf, type Declared, type SpecText } from './names.ts';
import type { Project } from './project.ts';
import { leadsTo, systemOfBook } from './rulebook-leads.ts';
import { SEVERITIES, type Rules } from './rules.ts';
import { isCountry } from './things.ts';

/** By what rules a job is checked. */
export interface Checked {
  readonly rulebooks: readonly Rulebook[];
  readonly rules: readonly Rule[];
  /** The first shipped rulebook that the job's lead to: what is usual there stands in for what is left out. */
  readonly country?: Country;
  /** The measures that the first rulebook shows. */
  readonly system?: System;
}

/** A rulebook with what it changes in others. */
type Holder = ast.Rulebook | ast.Job;

/** Finds the rules of a job: its own, those of its rulebooks, and of what these include. */
export class Rulebooks {
  private readonly project: Project;
  private readonly context: Context;
  private readonly rules: Rules;
  private readonly open: ast.Rulebook[] = [];
  /** Names of rules that have a fault of their own: no more is told where they are named. */
  private readonly faulty = new Set<string>();

  constructor(project: Project, context: Context, rules: Rules) {
    this.project = project;
    this.context = context;
    this.rules = rules;
  }

  /** Everything that the job's rulebooks lead to. */
  checkedBy(text: SpecText, node: ast.Job | undefined, item: ast.JobRules | undefined): Checked {
    const books = item === undefined ? [] : this.found(text, 'job', item, 'books', item.books);
    const all = books.map(book => this.rulesOf(book));
    const own = this.project.texts.flatMap(each =>
      namesOf(each).all.filter(({ kind, node: rule }) => kind === 'rule' && bookOf(each, rule) === undefined)
    );
    const standing = over(this.readAll(own), [...new Map(all.flat().map(rule => [rule.key, rule])).values()]);
    const rules = node === undefined ? standing : this.changed(text, 'job', node, standing);
    const leads = books.flatMap(book => leadsTo(this.context.names, book));
    const country = leads.map(({ name }) => name).find(isCountry);
    const system = leads.flatMap(book => systemOfBook(book) ?? [])[0];
    return {
      rulebooks: books.map(book => described(book)),
      rules,
      ...(country === undefined ? {} : { country }),
      ...(system === undefined ? {} : { system })
    };
  }

  /** Checks a rulebook of one's own, used or not. */
  check(declared: Declared): void {
    this.rulesOf(declared);
  }

  private found(
    text: SpecText,
    key: string,
    node: ast.JobRules | ast.BookIncludes,
    property: string,
    names: readonly { readonly $refText: string }[]
  ): Declared[] {
    return names.flatMap(
      ({ $refText }, index) =>
        this.context.find(text, key, node, [property, index], $refText, ['rulebook'], {
          among: () => [...new Set([...this.context.names.known(text, ['rulebook']), ...SHIPPED_RULEBOOKS])]
        }) ?? []
    );
  }

  private rulesOf(book: Declared): readonly Rule[] {
    const node = book.node as ast.Rulebook;
    const { text } = book;
    if (this.open.includes(node)) return [];
    this.open.push(node);
    const key = keyOf(book);
    const own = namesOf(text).all.filter(({ kind, node: rule }) => kind === 'rule' && bookOf(text, rule) === node);
    const included = node.items
      .filter(ast.isBookIncludes)
      .flatMap(item => this.found(text, key, item, 'books', item.books))
      .flatMap(each => {
        if (this.open.includes(each.node as ast.Rulebook))
          this.context.fault(text, key, node, 'let-in-circle', `The rulebook \`${each.name}\` includes itself.`, {
            property: 'name',
            harmless: true
          });
        return this.rulesOf(each);
      });
    this.open.pop();
    const once = [...new Map(included.map(rule => [rule.key, rule])).values()];
    return this.changed(text, key, node, over(this.readAll(own), once));
  }

  private readAll(declared: readonly Declared[]): Rule[] {
    return declared.flatMap(each => {
      const isBroken = this.context.isBroken(each.text, each.node);
      if (!isBroken) this.context.names.find(each.text, 'rule', each.name);
      const rule = isBroken ? undefined : this.context.watch(() => this.rules.rule(each)).value;
      if (rule === undefined) this.faulty.add(each.name);
      return rule ?? [];
    });
  }

  /** With what a rulebook or job says of rules that it has from elsewhere. */
  private changed(text: SpecText, key: string, holder: Holder, rules: readonly Rule[]): readonly Rule[] {
    let changed = rules;
    for (const item of holder.items as readonly (ast.RulebookItem | ast.JobItem)[]) {
      if (ast.isTreated(item)) {
        const severity = this.context.word(text, key, item, 'severity', item.severity, SEVERITIES);
        const names = this.named(text, key, item, 'rules', item.rules, rules);
        if (severity !== undefined)
          changed = changed.map(rule => (names.has(rule.name) ? this.treated(text, key, item, rule, severity) : rule));
      } else if (ast.isPreferred(item)) {
        const [heard] = item.rule === undefined ? [] : this.named(text, key, item, 'rule', [item.rule], rules);
        const others = this.named(text, key, item, 'others', item.others, rules);
        if (heard !== undefined)
          changed = changed.map(rule =>
            others.has(rule.name) ? { ...rule, yieldsTo: [...rule.yieldsTo, heard] } : rule
          );
      }
    }
    return changed;
  }

  /** Names of rules that stand; one that nothing here is checked by is a fault. */
  private named(
    text: SpecText,
    key: string,
    item: ast.Treated | ast.Preferred,
    property: string,
    names: readonly { readonly $refText: string }[],
    rules: readonly Rule[]
  ): ReadonlySet<string> {
    const standing = new Set(rules.map(rule => rule.name));
    return new Set(
      names.flatMap(({ $refText: name }, index) => {
        if (standing.has(name)) {
          this.context.names.find(text, 'rule', name);
          return [name];
        }
        if (this.faulty.has(name)) return [];
        const isKnown = SHIPPED_RULES.includes(name) || this.context.names.find(text, 'rule', name) !== undefined;
        if (isKnown)
          this.context.fault(
            text,
            key,
            item,
            'rule-not-here',
            `The rule \`${name}\` is in none of the rulebooks here, so there is nothing to change.`,
            { property: [property, index], harmless: true }
          );
        else
          this.context.find(text, key, item, [property, index], name, ['rule'], { among: () => [...standing].sort() });
        return [];
      })
    );
  }

  private treated(text: SpecText, key: string, item: ast.Treated, rule: Rule, severity: Severity): Rule {
    const isGrounded = rule.cases.some(({ source }) => isGround(source));
    if (severity !== 'error' || isGrounded || rule.severity === 'error') return { ...rule, severity };
    this.context.fault(
      text,
      key,
      item,
      'error-without-source',
      `The rule ${rule.name} rests on practice or memory alone, so it can be no error: it counts as a warning.`,
      { property: 'severity', harmless: true, fixes: [] }
    );
    return { ...rule, severity: 'warning' };
  }
}

/** A source that was read, or a danger to people. */
function isGround(source: string): boolean {
  return /^Safety\.|(?:^|\. )(?:Standard|Code|Association guidance|Handbook): /.test(source);
}

/** A rule of one's own stands over one of the same name. */
function over(own: readonly Rule[], others: readonly Rule[]): Rule[] {
  const names = new Set(own.map(({ name }) => name));
  return [...others.filter(({ name }) => !names.has(name)), ...own];
}

function described({ name, node }: Declared): Rulebook {
  const texts = (node as ast.Rulebook).items.filter(ast.isBookText);
  const [title, edition] = ['title', 'edition'].map(what => texts.find(item => item.what === what)?.text);
  return { id: name, title: title ?? name, ...(edition === undefined ? {} : { edition }) };
}

/** The rulebook that a rule belongs to: the one above it in its file; undefined where none is. */
function bookOf(text: SpecText, rule: Declared['node']): ast.Rulebook | undefined {
  return namesOf(text).bookOf.get(rule) as ast.Rulebook | undefined;
}
