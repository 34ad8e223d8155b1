// Whatever lies in a folder: each bad file is a finding or error of its own, and every other file is worked on.
import { execFileSync } from 'node:child_process';
import { symlinkSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { FAULTY, folder, GOOD, LIBRARY, paving } from './run.ts';

interface Found {
  readonly id: string;
  readonly file: string;
  readonly line: number;
  readonly column: number;
}

const PNG = Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13);
const wide = (text: string): Uint8Array => Buffer.concat([Buffer.of(0xff, 0xfe), Buffer.from(text, 'utf16le')]);
const latin1 = (text: string): Uint8Array => Buffer.from(text, 'latin1');
const withLet = (sum: string): string => `${GOOD}let border = ${sum}\n`;
const lastLine = withLet('').split('\n').length - 1;

/** By file: what it holds, the finding that tells of it, and where. */
const BAD: Readonly<
  Record<
    string,
    { holds: string | Uint8Array; id: string; line: number; column: number; shownIn?: string; notRead?: true }
  >
> = {
  'binary.paving': { holds: PNG, id: 'text-unreadable', line: 1, column: 1, notRead: true },
  'wide.paving': { holds: wide(GOOD), id: 'text-unreadable', line: 1, column: 1, notRead: true },
  'latin1.paving': { holds: latin1(`// café\n${GOOD}`), id: 'text-unreadable', line: 1, column: 1, notRead: true },
  'brackets.paving': {
    holds: withLet(`${'('.repeat(500)}6 in${')'.repeat(500)}`),
    id: 'brackets-too-deep',
    line: lastLine,
    column: 64
  },
  'long-sum.paving': {
    holds: withLet(Array.from({ length: 5000 }, () => '1 in').join(' + ')),
    id: 'sum-too-long',
    line: lastLine,
    column: 3512
  },
  'five-megabytes.paving': { holds: `${GOOD}// ${'x'.repeat(5_000_000)}\n`, id: 'text-too-long', line: 1, column: 1 },
  'circle-a.paving': {
    holds: `use "circle-b.paving"\n${GOOD}`,
    id: 'use-in-circle',
    line: 1,
    column: 5,
    // The circle closes there.
    shownIn: 'circle-b.paving'
  },
  'circle-b.paving': { holds: 'use "circle-a.paving"\n', id: 'use-in-circle', line: 1, column: 5 },
  'uses-above.paving': { holds: `use "../outside.paving"\n${GOOD}`, id: 'use-outside', line: 1, column: 5 },
  'uses-absolute.paving': { holds: `use "/etc/hosts"\n${GOOD}`, id: 'use-outside', line: 1, column: 5 },
  'uses-link.paving': { holds: `use "link-out.paving"\n${GOOD}`, id: 'use-outside', line: 1, column: 5 },
  'uses-binary.paving': { holds: `use "binary.paving"\n${GOOD}`, id: 'use-unreadable', line: 1, column: 5 },
  'uses-folder.paving': { holds: `use "folder"\n${GOOD}`, id: 'use-unreadable', line: 1, column: 5 },
  'uses-nothing.paving': { holds: `use "nothing.paving"\n${GOOD}`, id: 'use-missing', line: 1, column: 5 },
  'uses-itself.paving': { holds: `use "uses-itself.paving"\n${GOOD}`, id: 'use-in-circle', line: 1, column: 5 }
};

function badFolder(): string {
  const inside = Object.fromEntries(Object.entries(BAD).map(([name, { holds }]) => [`jobs/${name}`, holds]));
  // Good files stand between the bad ones, so that each is read right after one of them.
  const good = Object.fromEntries(
    Object.keys(BAD).map(name => [`jobs/${name.replace('.paving', '-then-good.paving')}`, GOOD])
  );
  const at = folder({ ...inside, ...good, 'outside.paving': LIBRARY, 'jobs/folder/units.paving': LIBRARY });
  symlinkSync(path.join(at, 'outside.paving'), path.join(at, 'jobs/link-out.paving'));
  symlinkSync(path.join(at, 'jobs'), path.join(at, 'jobs/round'));
  symlinkSync(path.join(at, 'nowhere'), path.join(at, 'jobs/leads-nowhere.paving'));
  if (process.platform !== 'win32') execFileSync('mkfifo', [path.join(at, 'jobs/pipe.paving')]);
  return at;
}

describe('a folder of bad files', () => {
  test('each is a finding at its place; every good file is as if alone', () => {
    const cwd = badFolder();
    const { code, out, err } = paving(['check', '--format', 'json', 'jobs'], { cwd });
    expect(code).toBe(2);
    const { findings } = JSON.parse(out) as { findings: Found[] };
    for (const [name, { id, line, column, shownIn = name }] of Object.entries(BAD)) {
      expect(findings.filter(({ file }) => file === `jobs/${shownIn}`)).toContainEqual(
        expect.objectContaining({ id, line, column })
      );
    }
    expect(findings.filter(({ file }) => file.includes('-then-good'))).toEqual([]);
    const notRead = ['binary', 'wide', 'latin1', 'link-out', 'leads-nowhere', 'pipe'];
    expect(
      err
        .trimEnd()
        .split('\n')
        .map(line => /^paving: jobs\/(.*)\.paving /.exec(line)?.[1])
        .sort()
    ).toEqual(notRead.sort());
  });

  test('every good job keeps its numbers', () => {
    const cwd = badFolder();
    const { code, out } = paving(['quantities', '--format', 'json', '--as-of', '2026-04-18', 'jobs'], { cwd });
    expect(code).toBe(2);
    const { jobs } = JSON.parse(out) as { jobs: { complete: boolean; findings: { file: string }[]; totals: object }[] };
    const sound = jobs.filter(({ findings }) => findings.length === 0);
    expect(sound).toHaveLength(Object.keys(BAD).length);
    const alone = paving(['quantities', '--format', 'json', '-'], { cwd, input: GOOD });
    const [expected] = (JSON.parse(alone.out) as { jobs: { totals: object }[] }).jobs;
    for (const job of sound) expect(job.totals).toEqual(expected!.totals);
  });
});

describe('one bad file asked for by name', () => {
  test.each(Object.entries(BAD))('%s', (name, { id, line, column, notRead }) => {
    const { code, out, err } = paving(['check', '--format', 'line', name], { cwd: path.join(badFolder(), 'jobs') });
    expect(code).toBe(notRead ? 2 : 1);
    expect(out).toContain(`:${line}:${column}: error: `);
    expect(out).toContain(`[${id}]`);
    expect(err === '').toBe(!notRead);
  });

  test.each([
    ['binary.paving', 'holds no text'],
    ['wide.paving', 'is no UTF-8 text. Save it as UTF-8.'],
    ['latin1.paving', 'is no UTF-8 text. Save it as UTF-8.'],
    ['link-out.paving', 'is a link that leads out of its folder'],
    ['pipe.paving', 'holds no text']
  ])('%s: %s, for each verb', (name, said) => {
    const cwd = path.join(badFolder(), 'jobs');
    for (const verb of ['check', 'quantities', 'format']) {
      const { code, err } = paving([verb, name], { cwd });
      expect({ verb, code }).toEqual({ verb, code: 2 });
      expect(err).toContain(`paving: ${name} ${said}`);
    }
  });
});

test('a byte order mark is no fault', () => {
  expect(paving(['check', 'a.paving'], { cwd: folder({ 'a.paving': `\ufeff${GOOD}` }) })).toMatchObject({
    code: 0,
    err: ''
  });
});

test('text that is no text over standard input', () => {
  expect(paving(['check', '-'], { input: PNG })).toMatchObject({
    code: 2,
    err: 'paving: standard input holds no text. Name a job spec, or save it as plain text.\n'
  });
});

test('nothing at all is a file like any other', () => {
  expect(paving(['check', '-'], { input: '' })).toMatchObject({ code: 0, out: 'No findings in 1 file.\n', err: '' });
});

test('an error in one area leaves every number of the other', () => {
  const numbers = (input: string): object | undefined => {
    const { out } = paving(['quantities', '--format', 'json', '-'], { input });
    const [job] = (JSON.parse(out) as { jobs: { areas: { name: string }[] }[] }).jobs;
    return job!.areas.find(({ name }) => name === 'terrace');
  };
  expect(numbers(FAULTY)).toEqual(numbers(GOOD));
});
