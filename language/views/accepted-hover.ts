import type { Key } from '../job/job.ts';
import type { Evaluation } from '../paving.ts';
import { howLong } from './how-long.ts';
import { markdownText } from './markdown.ts';

/** What an `accept` sets aside now, how long and why; undefined where there is no such one. */
export function acceptedMarkdown({ job, accepted, places }: Evaluation, key: Key): string | undefined {
  const accept = job?.accepts.find(each => each.key === key);
  const place = places.get(key);
  if (accept === undefined || place === undefined) return undefined;
  const found = accepted.filter(
    ({ accepted: { file, line, column } }) => file === place.file && line === place.line && column === place.column
  );
  const head = `${markdownText(howLong(accept))}: ${markdownText(accept.reason)}`;
  if (found.length === 0) return `**Sets nothing aside now**, ${head}`;
  const shown = found.slice(0, MOST_SHOWN).map(({ message }) => `- ${markdownText(message)}`);
  const more = found.length > MOST_SHOWN ? [`- and ${found.length - MOST_SHOWN} more`] : [];
  return [`**Sets aside** ${head}`, '', ...shown, ...more].join('\n');
}

/** More is read where they are listed. */
const MOST_SHOWN = 5;
