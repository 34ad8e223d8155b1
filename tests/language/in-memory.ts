import path from 'node:path';
import { drain, Paving, type Evaluation } from '../../language/paving.ts';
import type { SpecFiles } from '../../language/project.ts';

/** Files that exist only in the test, by path. */
export function inMemory(texts: Readonly<Record<string, string>>): SpecFiles {
  return {
    resolve: (from, written) => {
      const file = path.posix.join(path.posix.dirname(from), written);
      return file.startsWith('..') || written.startsWith('/') ? undefined : file;
    },
    read: file => Promise.resolve(texts[file] === undefined ? { problem: 'missing' } : { text: texts[file] }),
    show: file => file
  };
}

/** What one text comes to. */
export async function evaluated(text: string, others: Readonly<Record<string, string>> = {}): Promise<Evaluation> {
  const paving = new Paving(inMemory({ ...others, 'job.paving': text }));
  await paving.load('job.paving');
  return drain(paving.evaluate('job.paving'))!;
}
