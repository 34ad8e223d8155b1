import type { Declared } from '../lowering/names.ts';
import type { Project } from '../lowering/project.ts';
import type { BlockName } from '../syntax/words.ts';

export interface WordHelp {
  /** One line, for the list of completions. */
  readonly line: string;
  /** Markdown for hover and documentation. */
  readonly text: string;
}

/** Where a word stands: the block, and the word of the statement that it stands in (absent when it is itself the statement's word). */
export interface WordPlace {
  readonly block: BlockName;
  readonly statement?: string;
}

export function wordHelp(_word: string, _place: WordPlace): WordHelp | undefined {
  return undefined;
}

export function thingHelp(_declared: Declared, _project: Project): WordHelp | undefined {
  return undefined;
}
