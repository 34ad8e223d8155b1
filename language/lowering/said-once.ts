import type { AstNode } from 'langium';
import type { Key } from '../job/job.ts';
import { writtenOf, type Context, type Property } from './context.ts';
import type { SpecText } from './names.ts';
import type { SaidFix } from './said-fix.ts';

/** The statements of a block by what they say; what is said again is a fault, and the first counts. */
export function saidOnce<T extends AstNode>(
  context: Context,
  text: SpecText,
  key: Key,
  items: readonly T[],
  what: (item: T) => string
): ReadonlyMap<string, T> {
  const said = new Map<string, T>();
  for (const item of items) {
    const first = said.get(what(item));
    if (first === undefined) {
      said.set(what(item), item);
      continue;
    }
    const word = /^\S+/.exec(item.$cstNode?.text ?? '')?.[0] ?? what(item);
    context.fault(text, key, item, 'said-twice', `\`${word}\` is said twice; the first counts. Take one out.`, {
      harmless: true,
      related: [{ node: first, text, message: 'Said first here.' }],
      fixes: [takingOut(context, text, item, { like: first })]
    });
  }
  return said;
}

/** Words of a list that stand in it twice. */
export function saidAgain(
  context: Context,
  text: SpecText,
  key: Key,
  node: AstNode,
  property: string,
  words: readonly string[]
): void {
  words.forEach((word, index) => {
    if (words.indexOf(word) < index)
      context.fault(text, key, node, 'said-twice', `\`${word}\` is said twice. Take one out.`, {
        property: [property, index],
        harmless: true,
        fixes: [takingOut(context, text, node, { property: [property, index], like: node })]
      });
  });
}

/**
 * Offers to take out what a node, or a property of it, says. Safe where it only repeats what counts, in a sound text: then
 * nobody can have meant the one and not the other.
 */
export function takingOut(
  context: Context,
  text: SpecText,
  node: AstNode,
  { property, like }: { readonly property?: Property; readonly like?: AstNode } = {}
): SaidFix {
  const isSound = text.parsed.faults.length === 0;
  const safe = isSound && like !== undefined && writtenOf(like) === writtenOf(node);
  return { title: 'Take it out', safe, does: [context.changes.takenOut(text, node, property)] };
}
