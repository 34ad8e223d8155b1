import type { AstNode } from 'langium';
import type { Key } from '../job/job.ts';
import { TASK_WORDS, type TaskWord } from '../job/work.ts';
import type { Context } from './context.ts';
import type { SpecText } from './names.ts';
import { saidAgain } from './said-once.ts';

/** The tasks that words stand for, each once; undefined when one of them is none, which is told with the list of all. */
export function findTasks(
  context: Context,
  text: SpecText,
  key: Key,
  node: AstNode,
  property: string,
  words: readonly string[]
): TaskWord[] | undefined {
  saidAgain(context, text, key, node, property, words);
  const found = words.map((word, index) => context.word(text, key, node, [property, index], word, TASK_WORDS));
  return found.includes(undefined) ? undefined : [...new Set(found as TaskWord[])];
}
