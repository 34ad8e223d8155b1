import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { diffTextOf } from '../../server/cli/diff-text-of.ts';
import { folder, paving, root } from '../cli/run.ts';
import { BROKEN, LONGER, PATIO, REFORMATTED } from './jobs.ts';
import { ENVIRONMENT, Repository } from './repository.ts';

/** What git shows of a text. */
async function shown(text: string | Uint8Array): Promise<string> {
  return diffTextOf(path.join(folder({ 'a b.paving': text }), 'a b.paving'));
}

const USING = `use "shared/prices.paving"\n\n${PATIO.replace(/^price .*\n/gm, '')}`;

describe('a job as git shows it', async () => {
  test('its text as it stands, then its numbers, one a line', async () => {
    const out = await shown(PATIO);
    expect(out.startsWith(`${PATIO}\nNumbers of this text\n`)).toBe(true);
    const lines = out
      .slice(PATIO.length + 1)
      .trimEnd()
      .split('\n');
    expect(lines).toEqual(
      expect.arrayContaining([
        'terrace: gross area 192.00 sq ft',
        'terrace, near: length 12 ft',
        'path, base: layer area 39.11 sq ft',
        'terrace, slab-16: whole units 88',
        'Whole job: net area 222.00 sq ft',
        'Whole job: to pay 2,800.59 USD'
      ])
    );
    expect(
      lines.filter(line => !/^(?:Numbers of this text|Order: .+: \d[\d.]*|[^:]+: \D*[\d,]+.*)$/.test(line))
    ).toEqual([]);
  });

  test('the same on every day, and without a day in it', async () => {
    const old = PATIO.replace('{ piece for', '{ prices on 2020-01-01, valid 30 days, piece for');
    expect(await shown(old)).toBe(await shown(old));
    expect((await shown(PATIO)).slice(PATIO.length)).not.toMatch(/\d{4}-\d\d-\d\d/);
  });

  test('numbers follow the order of the text, and nothing else of how it is written', async () => {
    const numbers = async (text: string): Promise<string[]> => (await shown(text)).slice(text.length).split('\n');
    expect((await numbers(REFORMATTED)).sort()).toEqual((await numbers(PATIO)).sort());
  });

  test('the price is that of paving order', async () => {
    const cwd = folder({ 'a.paving': PATIO });
    const { out } = paving(['order', '--format', 'json', 'a.paving'], { cwd });
    const [job] = (JSON.parse(out) as { jobs: { costs: { total: string } }[] }).jobs;
    expect(await shown(PATIO)).toContain(
      `Whole job: to pay ${job!.costs.total.replace(/^(\d)(\d{3})/, '$1,$2')} USD\n`
    );
  });

  test('of a broken text what is sound, and a line for each error', async () => {
    const out = await shown(BROKEN);
    expect(out).toContain('\nterrace: gross area 192.00 sq ft\n');
    expect(out).not.toContain('\npath: ');
    expect(out).toMatch(/\nError: .*`gravle`.* \[unknown-name\]\n$/);
  });

  test('of a text whose files are not read outlines alone, and that is said', async () => {
    const outlines = (await shown(USING)).slice(USING.length).trim().split('\n');
    expect(outlines[0]).toBe(
      'Numbers of this text: outlines alone, since the rest may hang on what is not read here: shared/prices.paving'
    );
    expect(outlines.slice(1)).toEqual(
      (await shown(PATIO))
        .slice(PATIO.length)
        .split('\n')
        .filter(line => /: (?:gross area|net area|perimeter|length) /.test(line) && !line.startsWith('Whole job'))
    );
    const nothing = USING.replace(/^unit .*\n/m, '');
    expect((await shown(nothing)).slice(nothing.length)).toBe(
      '\nNumbers of this text: none, since the rest may hang on what is not read here: shared/prices.paving\n'
    );
    expect(await shown(`${USING}area }`)).toMatch(/\nError: .*\[brace-closes-nothing\]\n/);
  });

  test.each([
    ['no text', new Uint8Array([1, 0, 2]), 'This file holds no text. Name a job spec, or save it as plain text.\n'],
    ['another encoding', new Uint8Array([0xff, 0xfe, 65, 0]), 'This file is no UTF-8 text. Save it as UTF-8.\n'],
    [
      'bytes that are no letters',
      new Uint8Array([0x6a, 0xc3, 0x28]),
      'This file is no UTF-8 text. Save it as UTF-8.\n'
    ],
    ['nothing', '', ''],
    ['a merge that was not ended', `<<<<<<< HEAD\n${PATIO}=======\n>>>>>>> other\n`, /^<<<<<<< HEAD\n[^]*\nError: /],
    ['anything', '}{"\u0001'.repeat(200), /\nError: /]
  ])('of %s a line at most, never a failure', async (_, bytes, wanted) => {
    const out = await shown(bytes);
    if (typeof wanted === 'string') expect(out).toBe(wanted);
    else expect(out).toMatch(wanted);
  });

  test('of a file that is not there or is a folder', async () => {
    const cwd = folder({ 'x/y': '' });
    const told = (file: string): unknown => paving(['git-diff', 'text', file], { cwd });
    expect(told('none')).toEqual({ code: 0, out: 'This file is not there.\n', err: '' });
    expect(told('x')).toEqual({ code: 0, out: 'This file is a folder.\n', err: '' });
  });
});

describe('git diff', () => {
  test('shows text and numbers side by side once it is on, through a real git', () => {
    const at = new Repository({ 'jobs/a b.paving': PATIO, 'notes.txt': 'one\n' }).commit();
    at.write({ 'jobs/a b.paving': LONGER, 'notes.txt': 'two\n' });
    const plain = at.git('diff');
    expect(at.paving(['git-diff', 'on'], 'jobs')).toMatchObject({ code: 0, err: '' });
    const lines = at.git('diff').split('\n');
    expect(lines).toEqual(
      expect.arrayContaining([
        '-  outline rectangle 12 x 16 ft',
        '+  outline rectangle 12 x 17 ft',
        '-terrace: gross area 192.00 sq ft',
        '+terrace: gross area 204.00 sq ft',
        '-Whole job: to pay 2,800.59 USD',
        '+Whole job: to pay 2,944.83 USD',
        '+two'
      ])
    );
    expect(lines.filter(line => /^[-+]path/.test(line))).toEqual([]);
    expect(at.git('diff', '--no-textconv')).toBe(plain);
    at.commit();
    expect(at.git('show', 'HEAD')).toContain('\n+terrace: gross area 204.00 sq ft\n');
    at.write({ 'jobs/a b.paving': new Uint8Array([1, 0, 2]) }).commit();
    expect(at.git('log', '-p', '-1')).toContain('\n+This file holds no text.');
  });

  test('shows the plain text where the program is not there any more', () => {
    const at = new Repository({ 'a.paving': PATIO }).commit();
    const home = folder({});
    cpSync(path.join(root, 'dist/paving.cjs'), path.join(home, "it's here.cjs"));
    const { status } = spawnSync(process.execPath, [path.join(home, "it's here.cjs"), 'git-diff', 'on'], {
      cwd: at.at,
      env: ENVIRONMENT
    });
    expect(status).toBe(0);
    at.write({ 'a.paving': LONGER });
    expect(at.git('diff')).toContain('\n+terrace: gross area 204.00 sq ft\n');
    renameSync(path.join(home, "it's here.cjs"), path.join(home, 'gone.cjs'));
    expect(at.git('diff')).toBe(at.git('diff', '--no-textconv'));
  });
});

describe('on and off', () => {
  const CONFIG = '.git/config';
  const ATTRIBUTES = '.git/info/attributes';
  const bytes = (at: Repository, file: string): string | undefined =>
    existsSync(path.join(at.at, file)) ? readFileSync(path.join(at.at, file), 'utf8') : undefined;

  test.each([
    ['nothing there', undefined],
    ['lines of one’s own', '*.txt text\n*.png -diff\n'],
    ['a last line that is not ended', '*.txt text'],
    ['the same line of one’s own', '*.paving diff=paving\n']
  ])('off leaves every file as it was before on: %s', (_, own) => {
    const at = new Repository({ 'a.paving': PATIO }).commit();
    if (own !== undefined) at.write({ [ATTRIBUTES]: own });
    at.git('config', 'diff.other.textconv', 'cat');
    const before = [bytes(at, CONFIG), bytes(at, ATTRIBUTES)];
    const first = at.paving(['git-diff', 'on']);
    expect(first.out).toMatch(/^git diff shows the numbers of job specs in .* from now on\.\n {2}wrote to .*config: /);
    const set = [bytes(at, CONFIG), bytes(at, ATTRIBUTES)];
    expect(set[1]).toContain('*.paving diff=paving\n');
    const again = at.paving(['git-diff', 'on']);
    expect(again.out).toMatch(/already: nothing was changed\.\n {2}stood in .*config: /);
    expect([bytes(at, CONFIG), bytes(at, ATTRIBUTES)]).toEqual(set);
    expect(at.paving(['git-diff', 'off']).out).toMatch(/^git diff shows plain text in .* again\.\n {2}taken out of /);
    expect([bytes(at, CONFIG), bytes(at, ATTRIBUTES)]).toEqual(before);
    expect(at.paving(['git-diff', 'off']).out).toMatch(/already: nothing was changed\.\n$/);
    expect(at.git('status', '--porcelain')).toBe('');
  });

  test('what is written names the files', () => {
    const at = new Repository({ 'x/a.paving': PATIO });
    const { out } = at.paving(['git-diff', 'on', 'x']);
    for (const file of [CONFIG, ATTRIBUTES]) expect(out).toContain(`wrote to ${path.join(at.at, file)}: `);
  });

  test('in a second working tree of the same repository', () => {
    const at = new Repository({ 'a.paving': PATIO }).commit();
    const second = path.join(folder({}), 'second');
    at.git('worktree', 'add', '--quiet', second);
    expect(at.paving(['git-diff', 'on', second])).toMatchObject({ code: 0, err: '' });
    at.write({ 'a.paving': LONGER });
    expect(at.git('diff')).toContain('\n+terrace: gross area 204.00 sq ft\n');
    writeFileSync(path.join(second, 'a.paving'), LONGER);
    expect(at.git('-C', second, 'diff')).toContain('\n+terrace: gross area 204.00 sq ft\n');
  });

  test('a line that stands over it is told', () => {
    const at = new Repository({ 'a.paving': PATIO });
    at.write({ [ATTRIBUTES]: '*.paving diff=other\n' });
    expect(at.paving(['git-diff', 'on']).out).toContain('Another line says diff=other of job specs');
  });

  test('another command under the same name is left alone', () => {
    const at = new Repository({ 'a.paving': PATIO });
    at.git('config', 'diff.paving.textconv', 'cat');
    const before = bytes(at, CONFIG);
    expect(at.paving(['git-diff', 'on'])).toEqual({
      code: 2,
      out: '',
      err: 'paving: diff.paving.textconv is set to something else here: cat. Take it out first: git config --unset diff.paving.textconv\n'
    });
    expect(at.paving(['git-diff', 'off']).out).toContain('nothing was changed');
    expect([bytes(at, CONFIG), bytes(at, ATTRIBUTES)]).toEqual([before, undefined]);
  });

  test.each([
    [['on', 'none'], 'there is no folder none. Check the name.'],
    [['on', 'a.paving'], 'there is no folder a.paving. Check the name.'],
    [['on'], 'the folder . is under no version control by git.'],
    [['off'], 'the folder . is under no version control by git.'],
    [['maybe'], 'write paving git-diff on, or paving git-diff off.'],
    [[], 'write paving git-diff on, or paving git-diff off.'],
    [['text'], 'name a job spec, such as: paving git-diff text terrace.paving']
  ])('%j: said what is wrong', (given, complaint) => {
    const cwd = folder({ 'a.paving': PATIO });
    const ran = paving(['git-diff', ...given], { cwd, env: ENVIRONMENT });
    expect(ran).toEqual({ code: 2, out: '', err: `paving: ${complaint}\n` });
  });

  test('without git', () => {
    const cwd = folder({ 'a.paving': PATIO });
    expect(paving(['git-diff', 'on'], { cwd, env: { ...ENVIRONMENT, PATH: cwd } }).err).toBe(
      'paving: git is not installed here, or not on the path.\n'
    );
  });
});
