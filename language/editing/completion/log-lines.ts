import type { Part } from './insertion.ts';
import type { Scene } from './scene.ts';
import { usualParts } from './usual.ts';

/** What a line of `log` can tell, as it is usually written behind the day. */
const ENTRIES: Readonly<Record<string, string>> = {
  delivered: '[] []',
  done: '[] of []',
  measured: '[] at [] [] below []',
  'soft-spot': '[], centre [], [] deeper'
};

export const LOG_ENTRIES: readonly string[] = Object.keys(ENTRIES);

/** A line that tells of something, with its day: the last one above, for a day has several lines. */
export function logLine(scene: Scene, entry: string): readonly Part[] {
  const parts = usualParts(scene, 'log', 'DATE', `${entry} ${ENTRIES[entry]!}`);
  return [{ usual: lastDay(scene) ?? FIRST_DAY, choices: [] }, ' ', ...parts];
}

function lastDay({ cursor: { around, parsed, start } }: Scene): string | undefined {
  const days = (around.at(-1)?.inside ?? []).map(({ first }) => parsed.tokens[first]!);
  return days.filter(({ tokenType, startOffset }) => tokenType.name === 'DATE' && startOffset < start).at(-1)?.image;
}

/** There to be changed: which day it is the language does not know. */
const FIRST_DAY = '2026-04-18';
