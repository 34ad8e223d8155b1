import type { AstNode } from 'langium';
import { CONCERNS, MEMBER_NAMES, memberOf } from '../findings/members/members.ts';
import type { Concern } from '../job/rule.ts';
import * as ast from '../syntax/generated/ast.ts';
import { Names, namesOf, type Declared, type SpecText } from './names.ts';
import type { Project } from './project.ts';
import { leadsTo } from './rulebook-leads.ts';

/**
 * The rules that stand where a job or a rulebook speaks of rules, each name once, one's own first: those of the rulebook
 * itself and of what it includes; in a job those outside of rulebooks, then those that it is checked by.
 */
export function rulesStanding(text: SpecText, project: Project, book?: string): Declared[] {
  const names = new Names(project.visible);
  const declared = book === undefined ? undefined : names.peek(text, 'rulebook', book);
  const own = project.texts.flatMap(each => namesOf(each).all.filter(({ node }) => isOutsideBooks(each, node)));
  const books = declared === undefined ? booksOfJob(project, names) : leadsTo(names, declared);
  const all = [...(declared === undefined ? own : []), ...books.flatMap(rulesOf)];
  return [...new Map([...all].reverse().map(rule => [rule.name, rule])).values()].reverse();
}

function isOutsideBooks(text: SpecText, node: AstNode): boolean {
  return ast.isRule(node) && !namesOf(text).bookOf.has(node);
}

function booksOfJob({ texts }: Project, names: Names): Declared[] {
  return texts.flatMap(text =>
    text.parsed.root.elements
      .filter(ast.isJob)
      .flatMap(({ items }) => items.filter(ast.isJobRules).flatMap(({ books }) => books))
      .flatMap(({ $refText }) => names.peek(text, 'rulebook', $refText) ?? [])
      .flatMap(book => leadsTo(names, book))
  );
}

/** The rulebooks that others of what ships include. */
export function booksIncluded({ visible, rulebooks }: Project): ReadonlySet<AstNode> {
  const names = new Names(visible);
  const books = rulebooks.flatMap(text => namesOf(text).all.filter(({ kind }) => kind === 'rulebook'));
  return new Set(books.flatMap(book => leadsTo(names, book).slice(1)).map(({ node }) => node));
}

function rulesOf({ text, node }: Declared): Declared[] {
  const { all, bookOf } = namesOf(text);
  return all.filter(rule => rule.kind === 'rule' && bookOf.get(rule.node) === node);
}

/** The rulebook that a rule belongs to; undefined for a rule that stands outside of rulebooks. */
export function bookOfRule({ text, node }: Declared): Declared | undefined {
  const { all, bookOf } = namesOf(text);
  const book = bookOf.get(node);
  return book && all.find(each => each.node === book);
}

/** Finds the rules that names in a text lead to: those that stand where the name is, or else the nearest one called so. */
export class RuleNames {
  private readonly names: Names;
  private readonly text: SpecText;
  private readonly project: Project;
  /** By rulebook; of the job under no name. */
  private readonly standing = new Map<string | undefined, ReadonlyMap<string, Declared>>();

  constructor(names: Names, text: SpecText, project: Project) {
    this.names = names;
    this.text = text;
    this.project = project;
  }

  find(from: AstNode, name: string): Declared | undefined {
    const book = ast.isRulebook(from.$container) ? from.$container.name : undefined;
    return this.standingIn(book).get(name) ?? this.names.peek(this.text, 'rule', name);
  }

  private standingIn(book: string | undefined): ReadonlyMap<string, Declared> {
    const known = this.standing.get(book);
    if (known !== undefined) return known;
    const rules = rulesStanding(this.text, this.project, book).map((rule): [string, Declared] => [rule.name, rule]);
    const standing = new Map(rules);
    this.standing.set(book, standing);
    return standing;
  }
}

/** Whether a name in a rule stands for something that the rule looks at, or for a word, rather than for a value of one's own. */
export function isOfRule(node: ast.Named): boolean {
  const item = itemOfRule(node);
  if (item === undefined) return false;
  const name = node.to?.$refText ?? '';
  if (name === 'needed' || name === 'missing') return true;
  const concern = concernAt(item);
  if (concern === undefined ? MEMBER_NAMES.has(name) : memberOf(concern, name) !== undefined) return true;
  const writes = ast.isRuleFix(item) && concern !== undefined ? memberOf(concern, item.quantity ?? '') : undefined;
  return writes?.measure === 'words';
}

function itemOfRule(node: AstNode): ast.RuleItem | undefined {
  let item: AstNode | undefined = node;
  while (item !== undefined && !ast.isRule(item.$container)) item = item.$container;
  return item as ast.RuleItem | undefined;
}

/** What the nearest `concerns` above a statement of a rule says; undefined where none does, or what can't be read. */
function concernAt(item: ast.RuleItem): Concern | undefined {
  const { items } = item.$container as ast.Rule;
  const above = items.slice(0, items.indexOf(item)).filter(ast.isRuleConcerns).at(-1);
  return CONCERNS.find(each => each === above?.kind);
}
