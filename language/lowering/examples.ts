import * as ast from '../syntax/generated/ast.ts';
import { firstIndex } from '../syntax/statement-tree.ts';
import type { Span } from '../syntax/text-edit.ts';
import type { SpecText } from './names.ts';
import { occurrencesIn, type Occurrence } from './occurrences.ts';
import type { Project } from './project.ts';

/** A text and the texts that it sees. */
interface World {
  readonly text: SpecText;
  readonly project: Project;
}

/**
 * What an offset of a text sees: in an example of a rule, which is a small job spec of its own, nothing but the example
 * and what ships.
 */
export function worldAt({ text, project }: World, offset: number): World {
  const { root } = text.parsed;
  const after = firstIndex(root.elements, ({ $cstNode }) => ($cstNode?.offset ?? 0) > offset);
  const rule = root.elements[after - 1];
  const example =
    rule !== undefined && ast.isRule(rule) ? rule.items.find(item => isExampleAt(item, offset)) : undefined;
  return example === undefined ? { text, project } : worldOf(text, project, example as ast.RuleExample);
}

function isExampleAt(item: ast.RuleItem, offset: number): boolean {
  const { $cstNode: node } = item;
  return ast.isRuleExample(item) && node !== undefined && node.offset < offset && offset < node.end;
}

function worldOf(text: SpecText, { shipped }: Project, { elements }: ast.RuleExample): World {
  const root = { ...text.parsed.root, elements } as ast.Spec;
  const own: SpecText = { file: text.file, parsed: { ...text.parsed, root } };
  const visible = new Map([
    [own, [own, shipped]],
    [shipped, [shipped]]
  ]);
  return { text: own, project: { main: own, texts: [own], visible, shipped, rulebooks: [] } };
}

/** The names in the examples of the rules that lie between two offsets at least in part, each as its example means it. */
export function occurrencesInExamples(text: SpecText, project: Project, within: Span): Occurrence[] {
  const rules = text.parsed.root.elements.filter(({ $type, $cstNode: node }) => {
    return $type === 'Rule' && node !== undefined && node.offset <= within.end && node.end >= within.start;
  }) as ast.Rule[];
  return rules
    .flatMap(({ items }) => items.filter(ast.isRuleExample))
    .map(example => worldOf(text, project, example))
    .flatMap(world => occurrencesIn(world.text, world.project));
}
