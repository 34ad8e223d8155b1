import type { Place } from '../findings/finding.ts';
import type { Declared } from '../lowering/names.ts';
import { occurrencesIn } from '../lowering/occurrences.ts';
import type { Look } from '../paving.ts';
import { ChunkIndex } from '../syntax/chunk-index.ts';
import { BLOCKS } from '../syntax/words.ts';
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

/** Every word of a text in its order, as far as it is known what it is: what could not be read is left out. */
export function wordKindsIn({ text, project }: Look): WordKind[] {
  const { parsed, file } = text;
  const names = new Map(occurrencesIn(text, project).map(occurrence => [occurrence.start, occurrence]));
  // The lines of edges begin with no word of their own.
  const statements = new Set(
    parsed.statements.filter(({ block }) => BLOCKS[block].lines === undefined).map(({ token }) => parsed.tokens[token])
  );
  const chunks = new ChunkIndex(parsed);
  const kindOf = (word: Word): Omit<WordKind, 'place'> | undefined => {
    const name = names.get(startOf(word));
    if (name !== undefined) {
      const { declared, isDeclaration } = name;
      if (declared === undefined) return undefined;
      const isShipped = declared.text === project.shipped;
      return {
        kind: 'name',
        declared,
        ...(isDeclaration ? { isDeclaration } : {}),
        ...(isShipped ? { isShipped } : {})
      };
    }
    if (isKeyword(word)) return { kind: statements.has(word) ? 'statement' : 'clause' };
    const { name: type } = word.tokenType;
    if (type === 'ID') return chunks.isBroken(startOf(word)) ? undefined : { kind: 'choice' };
    const kind = KINDS[type];
    return kind && { kind };
  };
  const words = parsed.tokens.filter(({ image }) => image !== '');
  return [...words, ...parsed.comments]
    .sort((left, right) => startOf(left) - startOf(right))
    .flatMap(word => {
      const kind = kindOf(word);
      return kind === undefined ? [] : [{ place: placeBetween(file, word, word), ...kind }];
    });
}

const KINDS: Readonly<Record<string, WordKind['kind']>> = {
  NUMBER: 'number',
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
