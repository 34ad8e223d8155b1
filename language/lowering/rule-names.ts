import { nearest } from '../syntax/nearest.ts';
import { meantBy, type Context, type Property } from './context.ts';
import type * as ast from '../syntax/generated/ast.ts';
import { KIND_WORDS, type Kind, type SpecText } from './names.ts';
import { writing } from './said-fix.ts';

/** The kinds of things whose names a quantity of a rule can be. */
export const KINDS_OF_MEMBER: Readonly<Record<string, readonly Kind[]>> = {
  soil: ['soil-kind'],
  material: ['material'],
  geotextile: ['material'],
  edging: ['material'],
  'usual-edging': ['material'],
  bond: ['bond'],
  unit: ['unit'],
  area: ['area'],
  benchmark: ['benchmark'],
  meets: ['existing', 'area', 'side-kind']
};

/**
 * Names after `is` that nothing has are told where one is nearly that of something else. In a rule of a job, which sees
 * all that it could mean, every one is; a rulebook may speak of what a job will declare, such as a soil of its own.
 */
export function checkNames(
  context: Context,
  { text, key }: { readonly text: SpecText; readonly key: string },
  node: ast.Test,
  member: string
): void {
  const kinds = KINDS_OF_MEMBER[member];
  if (kinds === undefined) return;
  const known = context.names.known(text, kinds);
  const isOfRulebook = /\//.test(key);
  node.words.forEach((word, index) => {
    if (known.some(name => name === word || name.endsWith(`-${word}`))) return;
    if (kinds.includes('area') && context.names.anywhere(kinds, word) !== undefined) return;
    const near = nearest(word, known);
    const meant = near === undefined ? meantBy(word, known) : [near];
    if (meant.length === 0 && isOfRulebook) return;
    const property: Property = ['words', index];
    const what = kinds.map(kind => KIND_WORDS[kind]).join(' or ');
    const help =
      meant.length > 0
        ? `Did you mean ${meant.map(each => `\`${each}\``).join(' or ')}?`
        : `To ask whether there is one at all, write \`${member} is said\`.`;
    context.fault(
      text,
      key,
      node,
      'rule-about-nothing',
      `No ${what} is called \`${word}\`, so this is about nothing. ${help}`,
      { property, harmless: true, fixes: meant.map(writing) }
    );
  });
}
