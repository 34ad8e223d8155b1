import { isBookIncludes, isJob, isJobRules, isRulebook } from '../syntax/generated/ast.ts';
import type { SpecText } from './names.ts';

/** The rulebooks that a text names after `rules` and `includes`. */
export function rulebooksNamed({ parsed }: SpecText): string[] {
  return parsed.root.elements.flatMap(node => {
    if (!isJob(node) && !isRulebook(node)) return [];
    const items = [...node.items].filter(item => isJobRules(item) || isBookIncludes(item));
    return items.flatMap(({ books }) => books.map(({ $refText }) => $refText));
  });
}
