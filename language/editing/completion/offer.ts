import { capital } from '../../lowering/amounts.ts';
import { KIND_WORDS, type Declared, type SpecText } from '../../lowering/names.ts';
import type { Project } from '../../lowering/project.ts';
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

/** Of a longer list a person types on instead of reading it: further names have a short line alone. */
const MOST_EXPLAINED = 200;

export function nameOffers({ project, text }: Scene, all: readonly Declared[]): Offer[] {
  return all.map((declared, at): Offer => {
    const { name } = declared;
    const help = at < MOST_EXPLAINED ? thingHelp(declared, project) : undefined;
    return { label: name, kind: 'name', parts: [name], help: help ?? shortHelp(declared, text, project) };
  });
}

function shortHelp({ kind, text }: Declared, here: SpecText, { shipped }: Project): WordHelp {
  const where = text === shipped ? ', as shipped' : text === here ? '' : `, in ${text.file}`;
  return { line: `${capital(KIND_WORDS[kind])}${where}`, text: '' };
}

export const NO_HELP: WordHelp = { line: '', text: '' };
