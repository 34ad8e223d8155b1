import { KIND_WORDS, type Declared } from '../../lowering/names.ts';
import { article } from '../../lowering/context.ts';
import { thingHelp, wordHelp, type WordHelp } from '../word-help.ts';
import type { Part } from './insertion.ts';
import type { Scene } from './scene.ts';

/** What a completion is, for its sign in the list. */
export type CompletionKind =
  'job' | 'statement' | 'clause' | 'block' | 'side' | 'choice' | 'name' | 'quantity' | 'measure' | 'file';

/** Something that can be written at the cursor. */
export interface Offer {
  readonly label: string;
  readonly kind: CompletionKind;
  readonly parts: readonly Part[];
  readonly help: WordHelp;
  /** What is typed to find it; the label when absent. */
  readonly filter?: string;
  /** It stands close behind the word before, such as a comma. */
  readonly closesUp?: true;
}

/** Help on a word of the language where the cursor stands; `statement` is the word of its statement. */
export function helpOn(scene: Scene, word: string, statement?: string): WordHelp {
  const { block } = scene.cursor;
  return wordHelp(word, { block, ...(statement === undefined ? {} : { statement }) }) ?? NO_HELP;
}

export function nameOffer({ project, text }: Scene, declared: Declared): Offer {
  const { name, kind } = declared;
  const where =
    declared.text === project.shipped ? ', as shipped' : declared.text === text ? '' : `, in ${declared.text.file}`;
  const help = thingHelp(declared, project) ?? { line: `${article(KIND_WORDS[kind])}${where}`, text: '' };
  return { label: name, kind: 'name', parts: [name], help };
}

export const NO_HELP: WordHelp = { line: '', text: '' };
