import type { Declared } from '../../lowering/names.ts';
import { thingLine } from '../thing-help.ts';
import { wordHelp } from '../word-help.ts';
import type { Part } from './insertion.ts';
import type { Scene } from './scene.ts';
import type { Topic } from './topic.ts';

/** What a completion is, for its sign in the list. */
export type CompletionKind =
  'job' | 'statement' | 'clause' | 'block' | 'side' | 'choice' | 'name' | 'quantity' | 'measure' | 'file';

/** One line of help, and where there is more of it. */
export interface OfferHelp {
  readonly line: string;
  readonly about?: Topic;
}

/** Something that can be written at the cursor. */
export interface Offer {
  readonly label: string;
  readonly kind: CompletionKind;
  readonly parts: readonly Part[];
  readonly help: OfferHelp;
  /** What is typed to find it; the label when absent. */
  readonly filter?: string;
  /** It stands close behind the word before, such as a comma. */
  readonly closesUp?: true;
}

/** Help on a word of the language where the cursor stands; `statement` is the word of its statement. */
export function helpOn(scene: Scene, word: string, statement?: string): OfferHelp {
  const { block } = scene.cursor;
  const at = { block, ...(statement === undefined ? {} : { statement }) };
  const help = wordHelp(word, at);
  return help === undefined ? NO_HELP : { line: help.line, about: { word, at } };
}

export function nameOffers({ project }: Scene, all: readonly Declared[]): Offer[] {
  return all.map((declared): Offer => {
    const { kind, name } = declared;
    return {
      label: name,
      kind: 'name',
      parts: [name],
      help: { line: thingLine(declared, project), about: { kind, name } }
    };
  });
}

export const NO_HELP: OfferHelp = { line: '' };
