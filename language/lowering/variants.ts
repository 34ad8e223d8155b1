import { AstUtils } from 'langium';
import * as ast from '../syntax/generated/ast.ts';
import type { Context } from './context.ts';
import { keyOf } from './keys.ts';
import { namesOf, type Declared, type SpecText } from './names.ts';
import { kindsAt } from './occurrences.ts';
import type { Project } from './project.ts';
import { takingOut } from './said-once.ts';

/** Each is worked out as a job of its own, and a table of more of them fits no page. */
export const MOST_VARIANTS = 8;

/** Tells what is wrong with variants themselves; what is wrong in their statements is told when they are worked out. */
export function checkVariants(context: Context, project: Project): void {
  variantsIn(project).forEach((declared, index) => {
    const { text, node } = declared;
    const key = context.place(keyOf(declared), text, node, 'name');
    useNames(context, declared);
    if (context.isBroken(text, node)) return;
    context.watch(() => tellItems(context, declared, key));
    if (index >= MOST_VARIANTS)
      context.fault(
        text,
        key,
        node,
        'too-many-variants',
        `A job has at most ${MOST_VARIANTS} variants: this one is left out.`,
        { property: 'name', harmless: true }
      );
  });
}

/** In the order of the texts. */
export function variantsIn({ texts }: Project): Declared[] {
  return texts.flatMap(text => namesOf(text).all.filter(({ kind }) => kind === 'variant'));
}

/** What a variant alone takes is used. */
function useNames({ names }: Context, { text, node }: Declared): void {
  for (const part of AstUtils.streamAst(node))
    for (const { reference, property } of AstUtils.streamReferences(part)) {
      const kind = kindsAt(part, property).find(each => names.peek(text, each, reference.$refText) !== undefined);
      if (kind !== undefined) names.find(text, kind, reference.$refText);
    }
}

/** Things that are not there, things that stand in it twice, variants in it, and that it changes nothing. */
function tellItems(context: Context, { text, node, name }: Declared, key: string): void {
  const { items } = node as ast.Variant;
  const first = new Map<string, ast.VariantItem>();
  if (items.length === 0)
    context.incomplete(
      text,
      key,
      node,
      `The variant ${name} changes nothing. Write what differs: \`area drive { base open-graded-stone 300 mm }\`.`
    );
  for (const item of items) {
    if (ast.isVariant(item)) {
      context.fault(
        text,
        key,
        item,
        'variant-in-variant',
        'A variant holds no other variant. Give it a block of its own, with all that differs.',
        { harmless: true, fixes: [takingOut(context, text, item)] }
      );
      continue;
    }
    const thing = named(context, text, key, item);
    if (thing === undefined) continue;
    const before = first.get(thing);
    if (before === undefined) first.set(thing, item);
    else
      context.fault(text, key, item, 'said-twice', `\`${thing}\` stands twice in this variant; the first counts.`, {
        harmless: true,
        related: [{ node: before, text, message: 'Said first here.' }],
        fixes: [takingOut(context, text, item, { like: before })]
      });
  }
}

/** `area drive`, as it is named here; undefined of what is not there, which is told. */
function named(
  context: Context,
  text: SpecText,
  key: string,
  item: Exclude<ast.VariantItem, ast.Variant>
): string | undefined {
  const [kind, property] = ast.isVariantArea(item)
    ? (['area', 'area'] as const)
    : ast.isVariantDrain(item)
      ? (['drain', 'drain'] as const)
      : [undefined, undefined];
  // What is priced and by whom is looked up when the variant is worked out.
  if (kind === undefined) return `price ${(item as ast.Price).thing?.$refText}`;
  const name = (item as { area?: { $refText: string }; drain?: { $refText: string } })[property]?.$refText;
  return context.find(text, key, item, property, name, [kind]) && `${kind} ${name}`;
}
