import { chmodSync, mkdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import type { ComparisonJson } from '../../language/views/json/comparison-json.ts';
import { folder, GOOD, LIBRARY } from '../cli/run.ts';
import { BROKEN, LONGER, OTHER, PATIO, REFORMATTED } from './jobs.ts';
import { Repository } from './repository.ts';

describe('a file in a fresh clone', () => {
  test('since HEAD, as it stands now', () => {
    const origin = new Repository({ 'terrace.paving': PATIO }).commit();
    const clone = new Repository();
    clone.git('pull', '--quiet', origin.at, 'main');
    clone.write({ 'terrace.paving': LONGER });
    const { code, out, err } = clone.paving(['compare', 'terrace.paving']);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toMatch(/^Back terrace · terrace\.paving · HEAD to the working copy\n\nEdited\n/);
    expect(out).toMatch(/^ {2}Gross area +192\.00 sq ft +204\.00 sq ft/m);
  });

  test('nothing edited: nothing differs, nothing of it is worked out anew', () => {
    const at = new Repository({ 'terrace.paving': PATIO }).commit();
    expect(at.paving(['compare', '--exit-code', 'terrace.paving'])).toEqual({
      code: 0,
      out: 'Back terrace · terrace.paving · HEAD to the working copy\nNothing differs in meaning.\n',
      err: ''
    });
    at.write({ 'terrace.paving': REFORMATTED });
    expect(at.paving(['compare', '--exit-code', '.'])).toMatchObject({ code: 0, err: '' });
  });

  test('one revision to another, by tag, branch and way back', () => {
    const at = new Repository({ 'terrace.paving': PATIO }).commit();
    at.git('tag', 'quote-1');
    at.write({ 'terrace.paving': LONGER }).commit();
    at.git('checkout', '--quiet', '-b', 'late/wider');
    at.write({ 'terrace.paving': LONGER.replace('17 ft', '18 ft') }).commit();
    const between = (...more: string[]): string => at.paving(['compare', ...more, 'terrace.paving']).out;
    expect(between('--from', 'quote-1', '--to', 'main')).toMatch(/· quote-1 to main\n[^]*192\.00 sq ft +204\.00 sq ft/);
    expect(between('--from', 'HEAD~1', '--to', 'late/wider')).toMatch(/204\.00 sq ft +216\.00 sq ft/);
    expect(between('--from', 'main', '--to', 'quote-1')).toMatch(/204\.00 sq ft +192\.00 sq ft +−12\.00 sq ft/);
    expect(between()).toContain('Nothing differs in meaning.');
  });

  test.each([
    ['-x', /"-x" is no name of a revision/],
    ['a..b', /"a\.\.b" is no name of a revision/],
    ['HEAD:terrace.paving', /is no name of a revision/],
    ['', /"" is no name of a revision/],
    ['$(touch here)', /is no name of a revision/],
    ['terrace.paving', /there is no revision terrace\.paving here\. Write a branch, a tag, HEAD or HEAD~1\./],
    ['HEAD~7', /there is no revision HEAD~7 here/],
    ['--upload-pack=x', /is no name of a revision/],
    ['`id`', /there is no revision `id` here/]
  ])('%j is no revision', (name, complaint) => {
    const at = new Repository({ 'terrace.paving': PATIO }).commit();
    for (const option of ['--from', '--to']) {
      const { code, out, err } = at.paving(['compare', `${option}=${name}`, 'terrace.paving']);
      expect({ code, out }).toEqual({ code: 2, out: '' });
      expect(err).toMatch(complaint);
    }
  });
});

describe('a folder', () => {
  const HOME = { 'jobs/a.paving': PATIO, 'jobs/b.paving': OTHER, 'jobs/old/c.paving': GOOD, 'units.paving': LIBRARY };

  test('what is new, gone, renamed, edited and the same', () => {
    const at = new Repository(HOME).commit();
    at.git('mv', 'jobs/a.paving', 'jobs/patio.paving');
    at.write({ 'jobs/patio.paving': LONGER, 'jobs/new.paving': GOOD.replace('Back terrace', 'Third') });
    at.remove('jobs/b.paving');
    const { code, out, err } = at.paving(['compare', 'jobs']);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toContain('Back terrace · jobs/patio.paving (was jobs/a.paving) · HEAD to the working copy\n');
    expect(out).toMatch(/^ {2}Gross area +192\.00 sq ft +204\.00 sq ft/m);
    expect(out).toMatch(/^Job gone: Side court · jobs\/b\.paving · 94\.00 sq ft · to pay [\d,.]+ USD$/m);
    expect(out).toMatch(/^New job: Third · jobs\/new\.paving · 192\.00 sq ft$/m);
    expect(out.endsWith('\nNothing differs in meaning in 1 other job.\n')).toBe(true);
    expect(at.paving(['compare', '--exit-code', 'jobs']).code).toBe(1);
  });

  test('a renamed file with the same text is the same job', () => {
    const at = new Repository(HOME).commit();
    at.git('mv', 'jobs/a.paving', 'moved.paving');
    expect(at.paving(['compare', '--exit-code', '.'])).toEqual({
      code: 0,
      out: 'Nothing differs in meaning in 3 jobs.\n',
      err: ''
    });
  });

  test('jobs that share a title are told apart by text and by name, or left alone', () => {
    const at = new Repository({ 'x/a.paving': PATIO, 'x/b.paving': LONGER }).commit();
    at.git('mv', 'x', 'y');
    at.write({ 'y/b.paving': LONGER.replace('17 ft', '18 ft') });
    const data = JSON.parse(at.paving(['compare', '--format', 'json', '.']).out) as ComparisonJson;
    expect(data.jobs.map(({ before, after }) => [before, after])).toEqual([
      ['x/a.paving', 'y/a.paving'],
      ['x/b.paving', 'y/b.paving']
    ]);
    expect(data.changes.filter(({ edited }) => edited).map(({ job, kind }) => [job, kind])).toEqual([
      ['y/b.paving', 'edit']
    ]);
  });

  test('as data: new and gone jobs with area and price', () => {
    const at = new Repository(HOME).commit();
    at.remove('jobs/b.paving').write({ 'z.paving': LONGER });
    const { jobs, changes } = JSON.parse(at.paving(['compare', '--format', 'json', '.']).out) as ComparisonJson;
    expect(jobs.map(({ before, after }) => [before, after])).toEqual([
      ['jobs/a.paving', 'jobs/a.paving'],
      ['jobs/b.paving', undefined],
      ['jobs/old/c.paving', 'jobs/old/c.paving'],
      [undefined, 'z.paving']
    ]);
    expect(changes.map(({ job, kind, label }) => `${job} ${kind} ${label}`)).toEqual([
      'jobs/b.paving job gone',
      'jobs/b.paving number Net area',
      'jobs/b.paving money To pay',
      'z.paving job new',
      'z.paving number Net area',
      'z.paving money To pay'
    ]);
  });

  test('one that cannot be read, now or then, is told and the others are compared', () => {
    const at = new Repository({ ...HOME, 'jobs/bin.paving': new Uint8Array([1, 0, 2]) }).commit();
    at.write({ 'jobs/a.paving': LONGER, 'jobs/bin.paving': GOOD, 'jobs/b.paving': new Uint8Array([1, 0, 2]) });
    const { code, out, err } = at.paving(['compare', 'jobs']);
    expect(code).toBe(2);
    expect(err.split('\n')).toEqual([
      'paving: jobs/b.paving in the working copy holds no text. Name a job spec, or save it as plain text.',
      'paving: jobs/bin.paving in HEAD holds no text. Name a job spec, or save it as plain text.',
      ''
    ]);
    expect(out).toMatch(/^Back terrace · jobs\/a\.paving/);
  });

  test('specs that are too large together are told before they are read', () => {
    const large = (size: number): string => ' '.repeat(size);
    const at = new Repository({ 'a.paving': PATIO, 'far/b.paving': large(16e6), 'far/c.paving': large(17e6) }).commit();
    expect(at.paving(['compare', 'a.paving'])).toEqual({
      code: 2,
      out: '',
      err: 'paving: the job specs of this repository are too large together: more than 32 MB. Compare two files instead.\n'
    });
    // One that is too large by itself is never read.
    at.write({ 'a.paving': LONGER, 'far/c.paving': large(21e6) }).commit();
    expect(at.paving(['compare', 'a.paving'])).toMatchObject({ code: 0, err: '' });
  });

  test('errors then and now: said with the file and, of a revision, the first of them', () => {
    const at = new Repository({ 'a.paving': BROKEN }).commit();
    at.write({ 'a.paving': BROKEN.replace('12 x 16', '12 x 17') });
    const { code, err } = at.paving(['compare', '.']);
    expect(code).toBe(1);
    expect(err).toMatch(
      /^paving: a\.paving in HEAD has errors; what is sound is compared\. The first of 1: a\.paving, line 40: .*gravle/
    );
    expect(err).toContain('paving: a.paving has errors; what is sound is compared. See: paving check a.paving\n');
  });

  test('without job specs', () => {
    const at = new Repository({ 'readme.txt': 'none', 'units.paving': LIBRARY }).commit();
    mkdirSync(path.join(at.at, 'empty'));
    expect(at.paving(['compare', 'empty']).err).toBe(
      'paving: no job spec lies in empty, neither in HEAD nor in the working copy. Job specs are files that end in .paving.\n'
    );
    expect(at.paving(['compare', 'none.paving'])).toMatchObject({
      code: 2,
      err: 'paving: there is no file none.paving, neither in HEAD nor in the working copy. Check the name; it counts from where you are.\n'
    });
    expect(at.paving(['compare', '.'])).toMatchObject({
      code: 2,
      err: 'paving: no file here has a job, so there is nothing to compare. Name the file that uses these.\n'
    });
  });
});

describe('one file that was renamed', () => {
  const HOME = { 'jobs/drive.paving': PATIO, 'jobs/b.paving': OTHER, 'units.paving': LIBRARY };
  const renamed = (to: string, text?: string): Repository => {
    const at = new Repository(HOME).commit();
    at.git('tag', 'quote-1');
    mkdirSync(path.dirname(path.join(at.at, to)), { recursive: true });
    at.git('mv', 'jobs/drive.paving', to);
    return text === undefined ? at : at.write({ [to]: text });
  };
  const told = (at: Repository, ...more: string[]): string => {
    const { code, out, err } = at.paving(['compare', '--from', 'quote-1', ...more]);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    return out;
  };
  const head = (names: string, to: string): string => `Back terrace · ${names} · quote-1 to ${to}\n`;

  test.each([
    ['in its folder', 'jobs/hill.paving'],
    ['into another folder, under its own name', 'done/2026/drive.paving'],
    ['into another folder, under another name', 'done/hill.paving']
  ])('%s: with the same text nothing differs, edited it is compared, committed or not', (_, to) => {
    const names = `${to} (was jobs/drive.paving)`;
    const same = renamed(to);
    expect(told(same, to)).toBe(`${head(names, 'the working copy')}Nothing differs in meaning.\n`);
    const edited = renamed(to, LONGER);
    const out = told(edited, to);
    expect(out.startsWith(head(names, 'the working copy'))).toBe(true);
    expect(out).toMatch(/^ {2}Gross area +192\.00 sq ft +204\.00 sq ft/m);
    expect(out).not.toMatch(/^(New job|Job gone)|Side court/m);
    edited.commit();
    expect(told(edited, to)).toBe(out);
    expect(told(edited, '--to', 'HEAD', to)).toBe(out.replaceAll('the working copy', 'HEAD'));
  });

  test('asked by its old name', () => {
    const at = renamed('done/hill.paving', LONGER);
    // Neither another new job nor one that cannot be read is told.
    at.write({ 'new.paving': GOOD.replace('Back terrace', 'Third'), 'bin.paving': new Uint8Array([1, 0, 2]) }).commit();
    const names = 'done/hill.paving (was jobs/drive.paving)';
    const out = told(at, '--to', 'HEAD', 'jobs/drive.paving');
    expect(out.startsWith(head(names, 'HEAD'))).toBe(true);
    expect(out).not.toMatch(/^(New job|Job gone)|Third/m);
    expect(told(at, 'jobs/drive.paving')).toBe(out.replaceAll('HEAD', 'the working copy'));
  });

  test('a copy is new, and so is what several could be', () => {
    const at = new Repository(HOME).commit();
    at.git('tag', 'quote-1');
    at.write({ 'jobs/hill.paving': PATIO });
    expect(told(at, 'jobs/hill.paving')).toMatch(/^New job: Back terrace · jobs\/hill\.paving · /);
    at.commit();
    expect(told(at, '--to', 'HEAD', 'jobs/hill.paving')).toMatch(/^New job: Back terrace · jobs\/hill\.paving · /);
    const two = new Repository({ 'a.paving': PATIO, 'b.paving': PATIO }).commit();
    two.git('tag', 'quote-1');
    two.git('mv', 'a.paving', 'c.paving');
    two.remove('b.paving');
    expect(told(two, 'c.paving')).toMatch(/^New job: Back terrace · c\.paving · /);
    expect(told(two, 'b.paving')).toMatch(/^Back terrace · c\.paving \(was b\.paving\)/);
  });
});

test('a file that holds no statement is empty; one without a job is used by others', () => {
  const at = new Repository({
    'a.paving': PATIO,
    'empty.paving': '',
    'note.paving': '// later\n',
    'u.paving': LIBRARY
  });
  const said = (older: string, newer: string): string => {
    const { code, out, err } = at.paving(['compare', older, newer]);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    return err;
  };
  expect(said('a.paving', 'empty.paving')).toBe('paving: empty.paving is empty, so there is nothing to compare.\n');
  expect(said('note.paving', 'a.paving')).toBe('paving: note.paving is empty, so there is nothing to compare.\n');
  expect(said('u.paving', 'empty.paving')).toBe('paving: empty.paving is empty, so there is nothing to compare.\n');
  expect(said('empty.paving', 'note.paving')).toBe(
    'paving: empty.paving and note.paving are empty, so there is nothing to compare.\n'
  );
  expect(said('a.paving', 'u.paving')).toBe(
    'paving: u.paving has no job, so there is nothing to compare. Name the files that use it.\n'
  );
});

describe('where it is run', () => {
  const HOME = { 'jobs/deep/a.paving': PATIO, 'jobs/b.paving': OTHER };

  test('in a folder below, paths count from there on both sides', () => {
    const at = new Repository(HOME).commit();
    at.write({ 'jobs/deep/a.paving': LONGER, 'jobs/b.paving': OTHER.replace('8 x 8 ft', '8 x 9 ft') });
    const files = (below: string, asked: string): unknown[] => {
      const { jobs, changes } = JSON.parse(
        at.paving(['compare', '--format', 'json', asked], below).out
      ) as ComparisonJson;
      const placed = changes.flatMap(({ places }) => [places?.before?.file, places?.after?.file]);
      expect([...new Set(placed.filter(file => file !== undefined))].sort()).toEqual(
        jobs.map(({ before }) => before).sort()
      );
      return jobs.map(({ before, after }) => [before, after]);
    };
    expect(files('jobs/deep', '.')).toEqual([['a.paving', 'a.paving']]);
    expect(files('jobs/deep', '..')).toEqual([
      ['../b.paving', '../b.paving'],
      ['a.paving', 'a.paving']
    ]);
    expect(files('.', 'jobs/deep/a.paving')).toEqual([['jobs/deep/a.paving', 'jobs/deep/a.paving']]);
  });

  test('in a folder that is a link to the repository, and through a link', () => {
    const at = new Repository(HOME).commit();
    at.write({ 'jobs/deep/a.paving': LONGER });
    const outside = folder({});
    symlinkSync(at.at, path.join(outside, 'link'));
    const inside = path.relative(at.at, path.join(outside, 'link/jobs/deep'));
    expect(at.paving(['compare', 'a.paving'], inside).out).toMatch(/^Back terrace · a\.paving · HEAD/);
    const through = at.paving(['compare', 'link/jobs/deep/a.paving'], path.relative(at.at, outside));
    expect(through.out).toMatch(/^Back terrace · [^ ]*jobs\/deep\/a\.paving · HEAD to the working copy\n\nEdited/);
    expect(through.out).not.toContain('(was');
  });

  test('of a folder or file that is not there any more', () => {
    const at = new Repository(HOME).commit();
    at.remove('jobs');
    expect(at.paving(['compare', 'jobs/deep']).out).toMatch(/^Job gone: Back terrace · jobs\/deep\/a\.paving · /);
    expect(at.paving(['compare', 'jobs/b.paving']).out).toMatch(/^Job gone: Side court · jobs\/b\.paving · /);
  });

  test('before the first commit, outside any repository, and of a file elsewhere', () => {
    const at = new Repository(HOME);
    expect(at.paving(['compare', 'jobs'])).toEqual({
      code: 2,
      out: '',
      err: 'paving: there is nothing to compare with yet: commit first, or compare two files.\n'
    });
    const outside = path.relative(at.at, folder({ 'a.paving': PATIO }));
    const none = 'paving: this folder is under no version control by git. Compare two files instead.\n';
    expect(at.paving(['compare', 'a.paving'], outside)).toEqual({ code: 2, out: '', err: none });
    expect(at.paving(['compare', `${outside}/a.paving`])).toEqual({ code: 2, out: '', err: none });
  });

  test('from a hook of another repository it is still the one that the file lies in', () => {
    const [at, other] = [new Repository(HOME).commit(), new Repository({ 'a.paving': PATIO }).commit()];
    at.write({ 'jobs/deep/a.paving': LONGER });
    const ran = at.paving(['compare', 'jobs'], '.', { GIT_DIR: path.join(other.at, '.git'), GIT_INDEX_FILE: 'none' });
    expect(ran).toMatchObject({ code: 0, err: '' });
    expect(ran.out).toMatch(/^Back terrace · jobs\/deep\/a\.paving/);
  });
});

describe('files that a job uses', () => {
  const units = (size: string): string => `unit slab-16 { size ${size} x ${size} x 2 in }\n`;
  const JOB = `use "shared/units.paving"\n\n${PATIO.replace(/^unit .*\n/m, '')}`;

  test('are taken at the same revision', () => {
    const at = new Repository({
      'jobs/a.paving': JOB.replace('shared/', '../shared/'),
      'shared/units.paving': units('16')
    });
    at.commit().git('tag', 'before');
    at.write({ 'shared/units.paving': units('12') }).commit();
    at.write({ 'shared/units.paving': units('24') });
    const whole = (...more: string[]): number[] => {
      const { changes } = JSON.parse(
        at.paving(['compare', '--format', 'json', ...more, 'a.paving'], 'jobs').out
      ) as ComparisonJson;
      expect(changes[0]).toMatchObject({
        kind: 'edit',
        label: 'unit slab-16, size',
        places: { before: { file: '../shared/units.paving' }, after: { file: '../shared/units.paving' } }
      });
      const { before, after } = changes.find(({ id }) => id === 'areas/area:terrace/laying/slab-16/whole')!;
      return [before as number, after as number];
    };
    const [older, newer] = whole('--from', 'before', '--to', 'HEAD');
    const [now] = whole().slice(1);
    expect(older! < newer! && now! < older!).toBe(true);
    expect(whole('--from', 'before')).toEqual([older, now]);
  });

  test('one that is there now and was not then: the older text has errors, and no numbers are made up', () => {
    const at = new Repository({ 'a.paving': JOB }).commit();
    at.write({ 'shared/units.paving': units('16') });
    const { code, out, err } = at.paving(['compare', 'a.paving']);
    expect(code).toBe(0);
    expect(err).toMatch(/^paving: a\.paving in HEAD has errors;.*There is no file shared\/units\.paving/);
    expect(out).toContain('The older text has 4 errors: what is sound is compared, without totals, price and days.');
    // An area that had no numbers is not new.
    expect(out).not.toMatch(/Gross area|To pay/);
  });
});

test('git is started as often for one file as for forty', () => {
  const starts = (count: number, ...more: string[]): number => {
    const files = Object.fromEntries(Array.from({ length: count }, (_, at) => [`jobs/${at}.paving`, small(at, 4)]));
    const at = new Repository(files).commit();
    at.write(Object.fromEntries(Object.keys(files).map((name, index) => [name, small(index, 5)])));
    at.commit();
    const bin = path.join(folder({}), 'bin');
    mkdirSync(bin);
    writeFileSync(path.join(bin, 'git'), `#!/bin/sh\necho started >> '${bin}/log'\nPATH=\${PATH#*:} exec git "$@"\n`);
    chmodSync(path.join(bin, 'git'), 0o755);
    const ran = at.paving(['compare', '--exit-code', ...more, '.'], '.', { PATH: `${bin}:${process.env['PATH']!}` });
    expect(ran).toMatchObject({ code: 1, err: '' });
    expect(ran.out.match(/^Job \d+ /gm)).toHaveLength(count);
    return readFileSync(path.join(bin, 'log'), 'utf8').trim().split('\n').length;
  };
  const since = ['--from', 'HEAD~1'];
  expect(starts(40, ...since)).toBe(starts(1, ...since));
  const both = [...since, '--to', 'HEAD'];
  expect(starts(40, ...both)).toBe(starts(1, ...both));
});

function small(index: number, metres: number): string {
  return `job "Job ${index}" { rules britain }\narea court {\n  outline rectangle ${metres} x 3 m\n  traffic foot\n}\n`;
}
