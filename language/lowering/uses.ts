import type { Place, TextChange } from '../findings/finding.ts';
import { isUse, type Use as UseNode } from '../syntax/generated/ast.ts';
import { placeOf } from './context.ts';
import type { SpecText } from './names.ts';
import { TextChanges } from './text-changes.ts';

/** A `use` statement: the path as written. */
export interface Use {
  readonly path: string;
  readonly node: UseNode;
}

/** The files a text uses, in its order; a path that is still being typed is none. */
export function usesOf(text: SpecText): Use[] {
  return text.parsed.root.elements.filter(isUse).flatMap(node => {
    return node.path ? [{ path: node.path, node }] : [];
  });
}

export function withoutUse(text: SpecText, use: Use): TextChange {
  return new TextChanges().takenOut(text, use.node);
}

export function placeOfUse(text: SpecText, use: Use): Place {
  return placeOf(text, use.node, 'path');
}
