import type { Country, System } from '../job/job.ts';
import type { Rule, Rulebook } from '../job/rule.ts';
import { SHIPPED_RULEBOOKS, SHIPPED_RULES } from '../library/shipped.ts';
import { isHeavier, SEVERITIES, type Severity } from '../job/severity.ts';
import * as ast from '../syntax/generated/ast.ts';
import type { Context } from './context.ts';
import { keyOf } from './keys.ts';
import { namesOf, type Declared, type SpecText } from './names.ts';
import type { Project } from './project.ts';
import { insideOut, leadsTo, systemOfBook } from './rulebook-leads.ts';
import { capped, type Rules } from './rules.ts';
import { isCountry } from './things.ts';

/** By what rules a job is checked. */
export interface Checked {
  readonly rulebooks: readonly Rulebook[];
  readonly rules: readonly Rule[];
  /** It has rules of its own, be they faulty. */
  readonly hasOwn: boolean;
  /** The first shipped rulebook that the job's lead to: what is usual there stands in for what is left out. */
  readonly country?: Country;
  /** The measures that the first rulebook shows. */
  readonly system?: System;
}

const NO_BOOKS: ReturnType<typeof insideOut> = { books: [], inCircle: [] };

/** A rulebook with what it changes in others. */
type Holder = ast.Rulebook | ast.Job;

/** Finds the rules of a job: its own, those of its rulebooks, and of what these include. */
export class Rulebooks {
  private readonly project: Project;
  private readonly context: Context;
  private readonly rules: Rules;
  /** The rules of each rulebook that was read. */
  private readonly known = new Map<Declared['node'], readonly Rule[]>();
  private readonly circles = new Set<Declared['node']>();
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
      namesOf(each).all.filter(({ kind, node: rule }) => kind === 'rule' && !namesOf(each).bookOf.has(rule))
    );
    const standing = this.over(firstOfEachName(own), together(all));
    const rules = node === undefined ? standing : this.changed(text, 'job', node, standing);
    const leads = books.flatMap(book => leadsTo(this.context.names, book));
    if (node !== undefined) this.notNamed(text, node, item, new Set(leads.map(each => each.node)));
    const country = leads.map(({ name }) => name).find(isCountry);
    const system = leads.flatMap(book => systemOfBook(book) ?? [])[0];
    return {
      rulebooks: books.map(book => described(book)),
      rules,
      hasOwn: own.length > 0,
      ...(country === undefined ? {} : { country }),
      ...(system === undefined ? {} : { system })
    };
  }

  /** A file that is used for its rules, of whose rulebooks the job leads to none. */
  private notNamed(
    text: SpecText,
    node: ast.Job,
    item: ast.JobRules | undefined,
    named: ReadonlySet<Declared['node']>
  ): void {
    for (const used of this.project.texts) {
      const books = namesOf(used).all.filter(({ kind }) => kind === 'rulebook');
      const [first] = books;
      if (used === text || first === undefined || books.some(book => named.has(book.node))) continue;
      this.context.fault(
        text,
        'job',
        item ?? node,
        'rulebook-not-named',
        `The rulebook \`${first.name}\` of ${used.file} is not named here, so none of its rules count. Write it behind \`rules\`.`,
        {
          ...(item === undefined ? { property: 'title' } : {}),
          harmless: true,
          related: [{ node: first.node, text: used, message: 'It stands here.' }],
          fixes:
            item === undefined
              ? []
              : [
                  {
                    title: `Write \`, ${first.name}\``,
                    does: [this.context.changes.behind(text, item, `, ${first.name}`)]
                  }
                ]
        }
      );
    }
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
    const { names } = this.context;
    const { books, inCircle } = this.known.has(book.node) ? NO_BOOKS : insideOut(names, book);
    for (const each of inCircle) this.inCircle(each);
    for (const each of books) if (!this.known.has(each.node)) this.known.set(each.node, this.read(each));
    return this.known.get(book.node)!;
  }

  /** What it includes has been read before it. */
  private read(book: Declared): readonly Rule[] {
    const { node, text } = book as Declared & { readonly node: ast.Rulebook };
    const key = keyOf(book);
    const included = node.items
      .filter(ast.isBookIncludes)
      .flatMap(item => this.found(text, key, item, 'books', item.books))
      .map(each => this.known.get(each.node) ?? []);
    const own = firstOfEachName(
      namesOf(text).all.filter(({ kind, node: rule }) => kind === 'rule' && namesOf(text).bookOf.get(rule) === node)
    );
    return this.changed(text, key, node, this.over(own, together(included)));
  }

  private inCircle({ text, node, name, ...declared }: Declared): void {
    if (this.circles.has(node)) return;
    this.circles.add(node);
    const key = keyOf({ text, node, name, ...declared });
    const message = `The rulebook \`${name}\` includes itself, if only by way of others. Take one \`includes\` out.`;
    this.context.fault(text, key, node, 'includes-in-circle', message, { property: 'name', harmless: true });
  }

  /** A rule of one's own stands over one of the same name, also while it has a fault. */
  private over(own: readonly Declared[], others: readonly Rule[]): Rule[] {
    const names = new Set(own.map(({ name }) => name));
    return [...others.filter(({ name }) => !names.has(name)), ...this.readAll(own)];
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
          changed = changed.map(rule => {
            if (!others.has(rule.name)) return rule;
            const inVain = whyInVain(heard, rule, changed);
            if (inVain === undefined) return { ...rule, yieldsTo: [...rule.yieldsTo, heard] };
            this.context.fault(text, key, item, 'prefer-in-vain', inVain, { property: 'rule', harmless: true });
            return rule;
          });
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
    if (severity === 'error' && !rule.cases.some(({ isGrounded }) => isGrounded))
      this.context.fault(
        text,
        key,
        item,
        'error-without-source',
        `The rule ${rule.name} rests on practice or memory alone, so it can be no error: it counts as a warning.`,
        { property: 'severity', harmless: true, fixes: [] }
      );
    return treatedAs(rule, severity);
  }
}

/** Why a rule can't be heard instead of another; undefined where it can. */
function whyInVain(heard: string, other: Rule, rules: readonly Rule[]): string | undefined {
  if (other.isAboutSafety)
    return `The rule \`${other.name}\` is about the safety of people: no other is heard instead of it.`;
  if (heard === other.name) return 'A rule can’t be heard instead of itself.';
  if (yields(heard, other.name, rules))
    return `The rule \`${other.name}\` is already heard instead of \`${heard}\`: both ways neither would be heard.`;
  const concerns = new Set(other.cases.map(each => each.concerns));
  const isAbout = rules.some(({ name, cases }) => name === heard && cases.some(each => concerns.has(each.concerns)));
  if (isAbout) return undefined;
  return `The rules \`${heard}\` and \`${other.name}\` are about different kinds of things, so they never meet.`;
}

/** Whether a rule yields to another, if only by way of others. */
function yields(name: string, to: string, rules: readonly Rule[]): boolean {
  const seen = new Set<string>();
  for (const open = [name]; open.length > 0;) {
    const next = open.pop()!;
    if (next === to) return true;
    if (seen.has(next)) continue;
    seen.add(next);
    open.push(...rules.flatMap(rule => (rule.name === next ? rule.yieldsTo : [])));
  }
  return false;
}

function treatedAs(rule: Rule, severity: Severity): Rule {
  const cases = rule.cases.map(each => ({ ...each, severity: capped(severity, each.isGrounded) }));
  const isEver = severity !== 'error' || cases.some(each => each.severity === 'error');
  return { ...rule, severity: isEver ? severity : 'warning', cases };
}

/** Of a name that is declared twice the first counts. */
function firstOfEachName(declared: readonly Declared[]): Declared[] {
  return [...new Map([...declared].reverse().map(each => [each.name, each])).values()].reverse();
}

/** The rules of several rulebooks, each once: of one that they treat differently what weighs most. */
function together(all: readonly (readonly Rule[])[]): Rule[] {
  const rules = new Map<string, Rule>();
  for (const rule of all.flat()) {
    const known = rules.get(rule.key);
    if (known === undefined || isHeavier(rule.severity, known.severity)) rules.set(rule.key, rule);
  }
  return [...rules.values()];
}

function described({ name, node }: Declared): Rulebook {
  const texts = (node as ast.Rulebook).items.filter(ast.isBookText);
  const [title, edition] = ['title', 'edition'].map(what => texts.find(item => item.what === what)?.text);
  return { id: name, title: title ?? name, ...(edition === undefined ? {} : { edition }) };
}
