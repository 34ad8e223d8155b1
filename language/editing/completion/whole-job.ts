import type { Country, System } from '../../job/job.ts';
import type { Offer } from './offer.ts';
import type { Part } from './insertion.ts';
import type { Scene } from './scene.ts';
import { statementParts } from './statements.ts';

/** In an empty text a whole small job, in the one system and the other: with its usual values it checks clean. */
export function wholeJobs(scene: Scene): Offer[] {
  const { cursor } = scene;
  const others = cursor.parsed.tokens.some(({ startOffset }) => startOffset !== cursor.start);
  if (cursor.block !== 'spec' || others || cursor.isFollowed) return [];
  return JOBS.map(({ country, system, words }): Offer => {
    const parts = ['job', 'site', 'unit', 'area'].flatMap((word, at): readonly Part[] => [
      ...(at === 0 ? [] : ['\n\n']),
      ...statementParts({ ...scene, country, system }, 'spec', word)
    ]);
    const label = `a whole job, ${words}`;
    const help = { line: 'a patio against the house, to be changed', about: { text: HELP } };
    return { label, kind: 'job', parts: [...parts, '\n'], help, filter: `job ${label}` };
  });
}

const JOBS: readonly { readonly country: Country; readonly system: System; readonly words: string }[] = [
  { country: 'north-america', system: 'imperial', words: 'feet and inches' },
  { country: 'britain', system: 'metric', words: 'metric' }
];

const HELP =
  'A job, its site, one unit and one area, with values that are usual. Go from value to value with the Tab key and write your own: what you measured, and what your supplier says.';
