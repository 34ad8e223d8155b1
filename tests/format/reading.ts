import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { createParse, type ParsedText } from '../../language/syntax/parse.ts';

export const parse = createParse();

const root = path.resolve(import.meta.dirname, '../..');

/** All specs under a folder of the project; a folder that is not there has none. */
export function specsUnder(folder: string): { name: string; text: string }[] {
  let names: string[];
  try {
    names = readdirSync(path.join(root, folder), { recursive: true, encoding: 'utf8' });
  } catch {
    return [];
  }
  return names
    .filter(name => name.endsWith('.paving'))
    .sort()
    .map(name => ({ name: `${folder}/${name}`, text: readFileSync(path.join(root, folder, name), 'utf8') }));
}

/** What must stay the same: every word with its role and its spelling, and every comment. */
export function wordsOf(text: string): string[] {
  const { tokens, comments, faults }: ParsedText = parse(text);
  if (faults.length > 0) return faults.map(fault => `fault ${fault.id}`);
  return [
    ...tokens.map(token => `${token.tokenType.name} ${token.image.replace('−', '-')}`),
    ...comments.map(comment => comment.image.trimEnd())
  ];
}

/** The text without what a formatter may change. It knows nothing of words: nothing is lost, nothing changes places. */
export function inkOf(text: string): string {
  return text.replace(/[\s,]/g, '').replaceAll('−', '-');
}
