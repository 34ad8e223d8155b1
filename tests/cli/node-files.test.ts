import { symlinkSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { decode, NodeFiles, rootOf } from '../../server/node-files.ts';
import { largestFile } from '../../server/protocol.ts';
import { folder } from './run.ts';

describe('where a path leads', () => {
  const root = path.resolve('/jobs');
  const files = new NodeFiles({ root, shownFrom: root });
  const from = path.join(root, 'south/drive.paving');

  test.each([
    ['units.paving', 'south/units.paving'],
    ['../units.paving', 'units.paving'],
    ['..\\units.paving', 'units.paving'],
    ['parts/./deep/../units.paving', 'south/parts/units.paving'],
    ['..units.paving', 'south/..units.paving'],
    ['a b/ünits.paving', 'south/a b/ünits.paving']
  ])('%s', (written, to) => {
    expect(files.resolve(from, written)).toBe(path.join(root, to));
  });

  test.each([
    '../../units.paving',
    '..\\..\\units.paving',
    'parts/../../../units.paving',
    '/etc/hosts',
    '\\etc\\hosts',
    '\\\\machine\\folder\\units.paving',
    'C:\\units.paving',
    'c:units.paving',
    '',
    'units\0.paving'
  ])('%j leads out and is refused', written => {
    expect(files.resolve(from, written)).toBeUndefined();
  });

  test('a folder beside the root that begins like it is outside', () => {
    const beside = new NodeFiles({ root: path.join(root, 'south'), shownFrom: root });
    expect(beside.resolve(from, '../southern/units.paving')).toBeUndefined();
  });
});

describe('reading', () => {
  test('tells text from what is none', async () => {
    const root = folder({
      'a.paving': 'text',
      'binary.paving': Uint8Array.of(65, 0),
      'wide.paving': Uint8Array.of(0xfe, 0xff, 0, 65)
    });
    const files = new NodeFiles({ root, shownFrom: root });
    const read = (name: string): Promise<unknown> => files.read(path.join(root, name));
    expect(await read('a.paving')).toEqual({ text: 'text' });
    expect(await read('binary.paving')).toEqual({ problem: 'binary' });
    expect(await read('wide.paving')).toEqual({ problem: 'encoding' });
    expect(await read('nothing.paving')).toEqual({ problem: 'missing' });
    expect(await read('a.paving/under.paving')).toEqual({ problem: 'missing' });
    expect(await read('x'.repeat(5000))).toEqual({ problem: 'missing' });
    expect(await read('.')).toEqual({ problem: 'folder' });
  });

  test('size: the largest is read, one byte more is not', async () => {
    const root = folder({
      'most.paving': Buffer.alloc(largestFile, ' '),
      'more.paving': Buffer.alloc(largestFile + 1, ' ')
    });
    const files = new NodeFiles({ root, shownFrom: root });
    expect(await files.read(path.join(root, 'most.paving'))).toHaveProperty('text');
    expect(await files.read(path.join(root, 'more.paving'))).toEqual({ problem: 'too-large' });
  });

  test('links inside the folder are followed, links out of it are not', async () => {
    const at = folder({ 'outside.paving': 'out', 'jobs/inside.paving': 'in' });
    const root = path.join(at, 'jobs');
    symlinkSync('inside.paving', path.join(root, 'to-inside.paving'));
    symlinkSync('../outside.paving', path.join(root, 'to-outside.paving'));
    symlinkSync('..', path.join(root, 'up'));
    symlinkSync('in-circle.paving', path.join(root, 'in-circle.paving'));
    const files = new NodeFiles({ root, shownFrom: root });
    expect(await files.read(path.join(root, 'to-inside.paving'))).toEqual({ text: 'in' });
    expect(await files.read(path.join(root, 'to-outside.paving'))).toEqual({ problem: 'outside' });
    expect(await files.read(path.join(root, 'up/outside.paving'))).toEqual({ problem: 'outside' });
    expect(await files.read(path.join(root, 'in-circle.paving'))).toEqual({ problem: 'missing' });
  });

  test('a folder that is itself reached over a link is a folder like any other', async () => {
    const at = folder({ 'jobs/a.paving': 'text' });
    symlinkSync('jobs', path.join(at, 'link'));
    const root = path.join(at, 'link');
    expect(await new NodeFiles({ root, shownFrom: root }).read(path.join(root, 'a.paving'))).toEqual({ text: 'text' });
  });
});

test('the mark of UTF-8 is no part of the text', () => {
  expect(decode(Buffer.from('\ufefftext'))).toEqual({ text: 'text' });
  expect(decode(Uint8Array.of(0xc3, 0x28))).toEqual({ problem: 'encoding' });
});

test('the root is the nearest folder with .git, else the own one', () => {
  const at = folder({
    '.git/HEAD': '',
    'jobs/south/a.paving': '',
    'jobs/north/.git': 'gitdir: elsewhere',
    'jobs/north/b.paving': ''
  });
  expect(rootOf(path.join(at, 'jobs/south/a.paving'))).toBe(at);
  expect(rootOf(path.join(at, 'jobs/north/b.paving'))).toBe(path.join(at, 'jobs/north'));
  const bare = folder({ 'jobs/a.paving': '' });
  expect(rootOf(path.join(bare, 'jobs/a.paving'))).toBe(path.join(bare, 'jobs'));
});
