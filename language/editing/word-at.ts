import type { Place } from '../findings/finding.ts';
import type { SpecText } from '../lowering/names.ts';
import type { ParsedText } from '../syntax/parse.ts';
import { statementTree, type Statement } from '../syntax/statement-tree.ts';
import type { WordPlace } from './word-help.ts';

type Token = ParsedText['tokens'][number];

/** A word, number or sign of a text. */
export interface WordAt {
  readonly index: number;
  readonly word: string;
  /** `ID`, `NUMBER`, `MEASURE`, …, or the word itself where it is one of the language. */
  readonly type: string;
  readonly offset: number;
  readonly place: Place;
  /** Absent where the text is too broken to tell. */
  readonly at?: WordPlace;
}

/** The word that an offset lies in, or else that ends there; undefined between words. */
export function wordAt(text: SpecText, offset: number): WordAt | undefined {
  const { tokens } = text.parsed;
  const holds = ({ startOffset, endOffset, image }: Token, past: number): boolean =>
    image !== '' && startOffset <= offset && offset <= endOffset! + past;
  const inside = tokens.findIndex(token => holds(token, 0));
  const index = inside >= 0 ? inside : tokens.findIndex(token => holds(token, 1));
  const token = tokens[index];
  if (token === undefined) return undefined;
  const at = placeIn(statementTree(text.parsed), index);
  return {
    index,
    word: token.image,
    type: token.tokenType.name,
    offset: token.startOffset,
    place: {
      file: text.file,
      line: token.startLine!,
      column: token.startColumn!,
      endLine: token.endLine!,
      endColumn: token.endColumn! + 1
    },
    ...(at === undefined ? {} : { at })
  };
}

function placeIn(statements: readonly Statement[], index: number): WordPlace | undefined {
  const around = statements.find(({ first, end }) => first <= index && index < end);
  if (around === undefined) return undefined;
  if (around.open !== undefined && around.open < index && index < around.close!) return placeIn(around.inside, index);
  return around.first === index ? { block: around.block } : { block: around.block, statement: around.word };
}
