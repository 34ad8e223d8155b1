import { expect, test } from 'vitest';
import { formatText } from '../../language/format/format.ts';
import { DRIVE, DRIVE_AS_TYPED, TERRACE, TERRACE_AS_TYPED } from './drawn-jobs.ts';
import { parse, wordsOf } from './reading.ts';

test.each([
  ['a terrace with a laser, a gate and a log', TERRACE_AS_TYPED, TERRACE],
  ['a drive with a channel, a manhole and a twist', DRIVE_AS_TYPED, DRIVE]
])('the canonical form of %s', (_, typed, canonical) => {
  expect(parse(typed).faults).toEqual([]);
  expect(formatText(typed, parse)).toBe(canonical);
  expect(formatText(canonical, parse)).toBe(canonical);
  expect(wordsOf(canonical)).toEqual(wordsOf(typed));
});
