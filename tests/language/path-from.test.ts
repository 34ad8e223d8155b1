// The path by which one file uses another.
import { expect, test } from 'vitest';
import { pathFrom } from '../../language/path-from.ts';

test.each([
  ['drive.paving', 'prices.paving', 'prices.paving'],
  ['jobs/drive.paving', 'prices.paving', '../prices.paving'],
  ['jobs/drive.paving', 'jobs/old/walk.paving', 'old/walk.paving'],
  ['jobs/old/walk.paving', 'yard/stone.paving', '../../yard/stone.paving'],
  // A folder that is called as a file is no step that both share.
  ['stone.paving/job.paving', 'stone.paving', '../stone.paving'],
  ['job.paving', 'a:b.paving', './a:b.paving'],
  ['jobs/job.paving', 'a:b.paving', '../a:b.paving']
])('from %s to %s', (from, to, path) => {
  expect(pathFrom(from, to)).toBe(path);
});
