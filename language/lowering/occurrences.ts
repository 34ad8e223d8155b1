import { AstUtils, GrammarUtils, type AstNode, type CstNode } from 'langium';
import type { Place } from '../findings/finding.ts';
import * as ast from '../syntax/generated/ast.ts';
import { firstIndex } from '../syntax/statement-tree.ts';
import type { Span } from '../syntax/text-edit.ts';
import { Names, namesOf, type Declared, type Kind, type SpecText } from './names.ts';
import type { Project } from './project.ts';
import { isOfRule, RuleNames } from './rule-leads.ts';

/** A place where a name stands, and the thing it leads to. */
export interface Occurrence {
  readonly name: string;
  /** Kinds of things that can stand there. */
  readonly kinds: readonly Kind[];
  /** Offsets in the text, the end one past the last character. */
  readonly start: number;
  readonly end: number;
  readonly place: Place;
  /** Absent where the name leads nowhere. */
  readonly declared?: Declared;
  readonly isDeclaration: boolean;
}

/**
 * Every name in a text, in its order: where it is declared, and where it is used; in a broken text as far as it could be
 * read. Names in the examples of rules are none of the text's. `isWanted` tells by its offsets whether the names of a
 * top-level statement are; else all are.
 */
export function occurrencesIn(
  text: SpecText,
  project: Project,
  isWanted: (statement: Span) => boolean = () => true
): Occurrence[] {
  const wants = ({ $cstNode }: AstNode): boolean =>
    $cstNode === undefined || isWanted({ start: $cstNode.offset, end: $cstNode.end });
  const names = new Names(project.visible);
  const rules = new RuleNames(names, text, project);
  const found: Occurrence[] = [];
  for (const declared of namesOf(text).all) {
    if (!wants(declared.node)) continue;
    const at = GrammarUtils.findNodeForProperty(declared.node.$cstNode, 'name');
    if (at !== undefined) found.push(occurrence(text, declared.name, [declared.kind], at, declared, true));
  }
  const elements = text.parsed.root.elements.filter(wants);
  for (const node of elements.flatMap(nodesIn)) {
    if (ast.isNamed(node) && isOfRule(node)) continue;
    for (const { reference, property } of AstUtils.streamReferences(node)) {
      const at = reference.$refNode;
      if (at === undefined) continue;
      const name = reference.$refText;
      if (isSide(node, name)) continue;
      const kinds = kindsAt(node, property);
      const declared = kinds[0] === 'rule' ? rules.find(node, name) : leadsTo(names, text, kinds, name);
      found.push(occurrence(text, name, kinds, at, declared, false));
    }
  }
  return found.sort((left, right) => left.start - right.start);
}

/** `along near`: of a rectangle, where two points could stand as well. */
function isSide(node: AstNode, name: string): boolean {
  return ast.isAreaLine(node) && node.to === undefined && (name === 'near' || name === 'far');
}

function nodesIn(element: ast.Element): AstNode[] {
  if (!ast.isRule(element)) return [...AstUtils.streamAst(element)];
  const items = element.items.filter(item => !ast.isRuleExample(item));
  return items.flatMap(item => [...AstUtils.streamAst(item)]);
}

/** The names of the top-level statements that lie between two offsets at least in part, or touch them. */
export function occurrencesWithin(text: SpecText, project: Project, within: Span): Occurrence[] {
  return occurrencesIn(text, project, ({ start, end }) => start <= within.end && end >= within.start);
}

/** The names of the top-level statements that a word stands in. */
export function occurrencesBeside(text: SpecText, project: Project, word: string): Occurrence[] {
  const source = text.parsed.text;
  const places: number[] = [];
  for (let at = source.indexOf(word); at >= 0; at = source.indexOf(word, at + 1)) places.push(at);
  return occurrencesIn(text, project, ({ start, end }) => (places[firstIndex(places, at => at >= start)] ?? end) < end);
}

function leadsTo(names: Names, text: SpecText, kinds: readonly Kind[], name: string): Declared | undefined {
  if (kinds === KINDS['Priced'] || kinds === KINDS['PricedUnit']) return names.priced(text, kinds, name);
  for (const kind of kinds) {
    const declared = names.peek(text, kind, name);
    if (declared !== undefined) return declared;
  }
  if (kinds === KINDS['Acceptable']) return names.anywhere(kinds, name);
  return kinds === KINDS['Meetable'] ? names.neighbour(name) : undefined;
}

function occurrence(
  text: SpecText,
  name: string,
  kinds: readonly Kind[],
  at: CstNode,
  declared: Declared | undefined,
  isDeclaration: boolean
): Occurrence {
  const { start, end } = at.range;
  return {
    name,
    kinds,
    start: at.offset,
    end: at.end,
    place: {
      file: text.file,
      line: start.line + 1,
      column: start.character + 1,
      endLine: end.line + 1,
      endColumn: end.character + 1
    },
    ...(declared === undefined ? {} : { declared }),
    isDeclaration
  };
}

export function kindsAt(container: AstNode, property: string): readonly Kind[] {
  return KINDS[ast.reflection.getReferenceType({ container, property, reference: NO_REFERENCE })]!;
}

const NO_REFERENCE = { $refText: '', ref: undefined };

/** In the order in which a name is looked for. */
const KINDS: Readonly<Record<string, readonly Kind[]>> = {
  Let: ['let'],
  Mark: ['point'],
  Unit: ['unit'],
  Material: ['material'],
  SoilKind: ['soil-kind'],
  SideKind: ['side-kind'],
  Bond: ['bond'],
  KeptOut: ['kept-out'],
  Joinable: ['area', 'existing'],
  Area: ['area'],
  Benchmark: ['benchmark'],
  Source: ['source'],
  Rulebook: ['rulebook'],
  Rule: ['rule'],
  Existing: ['existing'],
  PathLine: ['line'],
  Levelled: ['benchmark', 'existing'],
  PipeEnd: ['point', 'kept-out', 'drain'],
  Deliverable: ['material', 'unit'],
  Priced: ['material', 'unit'],
  PricedUnit: ['unit'],
  Supplier: ['supplier'],
  Drain: ['drain'],
  Acceptable: ['area', 'kept-out', 'unit', 'material', 'gate', 'drain', 'pipe', 'route'],
  Meetable: ['existing', 'area', 'drain', 'side-kind']
};
