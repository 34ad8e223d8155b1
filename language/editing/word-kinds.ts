import { isShipped as isShippedText } from '../lowering/project.ts';
import type { Place } from '../findings/finding.ts';
import type { Declared } from '../lowering/names.ts';
import { occurrencesInExamples } from '../lowering/examples.ts';
import { occurrencesWithin } from '../lowering/occurrences.ts';
import type { Look } from '../paving.ts';
import { ChunkIndex } from '../syntax/chunk-index.ts';
import { firstIndex } from '../syntax/statement-tree.ts';
import type { Span } from '../syntax/text-edit.ts';
import { isKeyword, placeBetween, startOf, type Word } from './words.ts';

/** What a word is where it stands. */
export interface WordKind {
  readonly place: Place;
  readonly kind: 'statement' | 'clause' | 'name' | 'choice' | 'number' | 'measure' | 'sign' | 'text' | 'comment';
  /** The thing that a name leads to. */
  readonly declared?: Declared;
  readonly isDeclaration?: true;
  readonly isShipped?: true;
}

/**
 * Every word of a text in its order, or only those between two offsets, as far as it is known what it is: what could not
 * be read is left out.
 */
export function wordKindsIn({ text, project }: Look, within: Span = { start: 0, end: Infinity }): WordKind[] {
  const { parsed, file } = text;
  const names = new Map(
    [...occurrencesWithin(text, project, within), ...occurrencesInExamples(text, project, within)].map(occurrence => [
      occurrence.start,
      occurrence
    ])
  );
  // The lines of edges begin with no word of their own.
  const statements = new Set(
    parsed.statements.filter(({ block }) => block !== 'edges').map(({ token }) => parsed.tokens[token])
  );
  // What a variant says anew stands at its head there, as where it was declared.
  const heads = new Set(
    parsed.statements.filter(({ block }) => block === 'variant').map(({ token }) => parsed.tokens[token + 1])
  );
  const chunks = new ChunkIndex(parsed);
  const kindOf = (word: Word): Omit<WordKind, 'place'> | undefined => {
    const name = names.get(startOf(word));
    if (name !== undefined) {
      const { declared, isDeclaration } = name;
      if (declared === undefined) return undefined;
      const isShipped = isShippedText(project, declared.text);
      return {
        kind: 'name',
        declared,
        ...(isDeclaration || heads.has(word) ? { isDeclaration: true as const } : {}),
        ...(isShipped ? { isShipped } : {})
      };
    }
    if (isKeyword(word)) return { kind: statements.has(word) ? 'statement' : 'clause' };
    const { name: type } = word.tokenType;
    if (type === 'ID') return chunks.isBroken(startOf(word)) ? undefined : { kind: 'choice' };
    const kind = KINDS[type];
    return kind && { kind };
  };
  const words = between(parsed.tokens, within).filter(({ image }) => image !== '');
  return [...words, ...between(parsed.comments, within)]
    .sort((left, right) => startOf(left) - startOf(right))
    .flatMap(word => {
      const kind = kindOf(word);
      return kind === undefined ? [] : [{ place: placeBetween(file, word, word), ...kind }];
    });
}

/** The words of a list in the order of the text that begin between two offsets, the end left out. */
function between(words: readonly Word[], { start, end }: Span): readonly Word[] {
  return words.slice(
    firstIndex(words, word => startOf(word) >= start),
    firstIndex(words, word => startOf(word) >= end)
  );
}

const KINDS: Readonly<Record<string, WordKind['kind']>> = {
  NUMBER: 'number',
  DATE: 'number',
  MEASURE: 'measure',
  STRING: 'text',
  COMMENT: 'comment',
  BY: 'sign',
  '+': 'sign',
  '-': 'sign',
  '*': 'sign',
  '/': 'sign',
  '=': 'sign'
};
