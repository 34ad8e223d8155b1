import type { Key } from '../job/job.ts';
import type { Concern, Rule } from '../job/rule.ts';
import { ChunkIndex } from '../syntax/chunk-index.ts';
import * as ast from '../syntax/generated/ast.ts';
import { Context, writtenOf } from './context.ts';
import { Names, namesOf, type Declared, type SpecText } from './names.ts';
import { isShipped, type Project } from './project.ts';
import { examplesOf } from './rule-examples.ts';
import { Rules } from './rules.ts';

/** A rule as a text declares it, for its page. */
export interface DeclaredRule {
  readonly key: Key;
  readonly file: string;
  readonly isShipped: boolean;
  /** Something in its text can't be read, such as an example: nothing is judged by it. */
  readonly hasFault: boolean;
  /** The title of its rulebook; absent for a rule of a job. */
  readonly rulebook?: string;
  readonly title?: string;
  readonly about: readonly string[];
  readonly engineer: readonly string[];
  readonly severity: Rule['severity'];
  readonly isAboutSafety: boolean;
  readonly parts: readonly DeclaredPart[];
  readonly examples: readonly { readonly what: 'wrong' | 'right'; readonly text: string }[];
}

/** What a rule asks of one kind of thing; conditions and needs as written, without their first word. */
export interface DeclaredPart {
  /** That of the rule, but that practice and memory alone are never an error. */
  readonly severity: Rule['severity'];
  readonly concerns: Concern;
  readonly when: readonly string[];
  readonly needs: readonly string[];
  /** What is told where nothing is needed; quantities in square brackets. */
  readonly tells: readonly string[];
  /** In a sentence, with how the source is known. */
  readonly source: string;
}

/** The sound rules of that name that the files of a project and what ships declare: one's own first. */
export function declaredRules(project: Project, name: string): DeclaredRule[] {
  const context = new Context(new Names(project.visible), () => false);
  const rules = new Rules(context, project);
  return [...new Set([...project.texts, ...project.rulebooks])]
    .flatMap(text => namesOf(text).all.filter(each => each.kind === 'rule' && each.name === name))
    .flatMap(declared => {
      const rule = rules.rule(declared);
      return rule === undefined ? [] : [described(declared, rule, project)];
    });
}

/** The names of all rules at hand: of one's own, and of those that ship. */
export function ruleNames({ texts, rulebooks }: Project): {
  readonly own: readonly string[];
  readonly shipped: readonly string[];
} {
  const namesIn = (text: SpecText): string[] =>
    namesOf(text).all.flatMap(({ kind, name }) => (kind === 'rule' ? [name] : []));
  return { own: [...new Set(texts.flatMap(namesIn))], shipped: [...new Set(rulebooks.flatMap(namesIn))] };
}

function described(declared: Declared, rule: Rule, project: Project): DeclaredRule {
  const { text } = declared;
  const { items } = declared.node as ast.Rule;
  const texts = (what: ast.RuleText['what']): string[] =>
    items.flatMap(item => (ast.isRuleText(item) && item.what === what ? item.text : []));
  const book = namesOf(text).bookOf.get(declared.node) as ast.Rulebook | undefined;
  const [title] = texts('title');
  return {
    key: rule.key,
    file: text.file,
    isShipped: isShipped(project, text),
    hasFault: new ChunkIndex(text.parsed).isBroken(declared.node.$cstNode?.offset ?? 0),
    ...(book === undefined ? {} : { rulebook: titleOf(book) }),
    ...(title === undefined ? {} : { title }),
    about: texts('about'),
    engineer: texts('engineer'),
    severity: rule.severity,
    isAboutSafety: items.some(ast.isRuleSafety),
    parts: partsOf(items, rule),
    examples: examplesOf(declared, rule).map(({ what, written }) => ({ what, text: dedented(written) }))
  };
}

function titleOf({ name, items }: ast.Rulebook): string {
  return items.filter(ast.isBookText).find(({ what }) => what === 'title')?.text ?? name;
}

function partsOf(items: readonly ast.RuleItem[], rule: Rule): DeclaredPart[] {
  const starts = items.flatMap((item, at) => (ast.isRuleConcerns(item) ? [at] : []));
  return rule.cases.map(({ concerns, severity, source }, index) => {
    const own = items.slice(starts[index], starts[index + 1]);
    return {
      severity,
      concerns,
      when: own.filter(ast.isRuleWhen).map(item => withoutWord(writtenOf(item))),
      needs: own.filter(ast.isRuleNeeds).map(item => withoutWord(writtenOf(item))),
      tells: own.filter((item, at) => ast.isRuleSays(item) && !ast.isRuleNeeds(own[at - 1]!)).map(saying),
      source
    };
  });
}

function withoutWord(written: string): string {
  return written.replace(/^\S+ /, '');
}

function saying(item: ast.RuleItem): string {
  const parts = (item as ast.RuleSays).parts;
  return parts.map(({ text, value }) => text ?? (value === undefined ? '' : `[${writtenOf(value)}]`)).join('');
}

/** The lines of an example, as far to the left as they go. */
function dedented(written: string): string {
  const lines = written.split(/\r?\n/).map(line => line.trimEnd());
  while (lines[0] === '') lines.shift();
  while (lines.at(-1) === '') lines.pop();
  const indents = lines.filter(line => line !== '').map(line => /^ */.exec(line)![0].length);
  const least = Math.min(...indents);
  return lines.map(line => line.slice(least)).join('\n');
}
