import { expect, test } from 'vitest';
import { Crashes } from '../../extension/crashes.ts';

test('the third crash within three minutes is one too many', () => {
  const crashes = new Crashes();
  expect([0, 60_000, 179_999].map(now => crashes.add(now))).toEqual([false, false, true]);
});

test('crashes far apart are not held against it', () => {
  const crashes = new Crashes();
  expect([0, 100_000, 200_000, 300_001, 480_001].map(now => crashes.add(now))).toEqual([
    ...[false, false, false, false, false]
  ]);
});

test('after a restart by hand counting begins anew', () => {
  const crashes = new Crashes();
  expect([1, 2, 3, 4, 5, 6].map(now => crashes.add(now))).toEqual([false, false, true, false, false, true]);
});
