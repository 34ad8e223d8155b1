import type { SpecText } from '../lowering/names.ts';
import { contentsOf, type Entry } from './contents.ts';

/** A thing found by its name, and the thing that it belongs to, if any. */
export interface Found {
  readonly entry: Entry;
  readonly within?: string;
}

/** The things of a text whose name holds the letters that were typed, in their order, large or small. */
export function thingsNamed(text: SpecText, letters: string): Found[] {
  return contentsOf(text).flatMap(entry => [
    ...(entry.isThing && entry.word !== 'use' && holds(entry.name, letters) ? [found(entry)] : []),
    ...entry.inside
      .filter(part => part.isThing && holds(part.name, letters))
      .map(part => ({ entry: part, within: entry.name }))
  ]);
}

/** What stands in an area belongs to it: `in terrace`. */
function found(entry: Entry): Found {
  const area = /^in (\S+)$/.exec(entry.detail)?.[1];
  return IN_AREAS.includes(entry.word) && area !== undefined ? { entry, within: area } : { entry };
}

const IN_AREAS: readonly string[] = ['box', 'pit', 'inset', 'drain', 'pipe'];

function holds(name: string, letters: string): boolean {
  const lower = name.toLowerCase();
  let at = 0;
  for (const letter of letters.toLowerCase().replaceAll(/\s/g, '')) {
    at = lower.indexOf(letter, at) + 1;
    if (at === 0) return false;
  }
  return true;
}
