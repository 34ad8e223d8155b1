import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import type { ComparisonJson } from '../../language/views/json/comparison-json.ts';
import { folder, paving } from '../cli/run.ts';
import { PATIO } from './jobs.ts';
import { Repository } from './repository.ts';

/** As `paving format` writes it, and an editor when a text is saved; prices stand in a file that other jobs use too. */
const FILES: Readonly<Record<string, string>> = {
  'terrace.paving': PATIO.replace(/^price .*\n\n/gm, '').replace('site {', 'use "prices.paving"\n\nsite {'),
  'prices.paving': `price slab-16 { piece for 3.95 USD }

price crushed-stone { loose for 38 USD per short ton, in steps of 1/2 short ton }

price washed-sand { bag of 0.5 cu ft for 4.98 USD }
`
};

interface Edit {
  readonly file?: string;
  readonly from: string;
  readonly to: string;
}

/** Two people each edit the job on a branch of their own; then both are put together. */
function merged(...edits: readonly [Edit, Edit]): { readonly at: Repository; readonly code: number | null } {
  const at = new Repository(FILES).commit();
  at.git('tag', 'base');
  for (const [index, { file = 'terrace.paving', from, to }] of edits.entries()) {
    expect(FILES[file]!.split(from)).toHaveLength(2);
    at.git('checkout', '--quiet', '-b', `edit-${index + 1}`, 'base');
    at.write({ [file]: FILES[file]!.replace(from, to) }).commit();
  }
  at.git('checkout', '--quiet', '-b', 'both', 'edit-2');
  return { at, code: at.tryGit('merge', '--quiet', '--no-edit', 'edit-1').code };
}

/** What was edited, free of where and of how it is counted. */
function edits(at: Repository, ...between: string[]): string[] {
  const ran = at.paving(['compare', '--format', 'json', '--as-of', '2026-04-18', ...between, 'terrace.paving']);
  expect(ran.err).toBe('');
  return (JSON.parse(ran.out) as ComparisonJson).changes
    .filter(({ edited }) => edited)
    .map(({ kind, label, before, after }) => `${kind} ${label}: ${before ?? 'new'} to ${after ?? 'gone'}`)
    .sort();
}

const LONGER: Edit = { from: '12 x 16 ft', to: '12 x 17 ft' };
const PATH_BASE: Edit = { from: 'crushed-stone 4 in', to: 'crushed-stone 5 in' };
const BASE: Edit = { from: 'crushed-stone 6 in', to: 'crushed-stone 8 in' };
const BED: Edit = { from: '1 in\n  base    crushed-stone 6', to: '2 in\n  base    crushed-stone 6' };
const STONE: Edit = { file: 'prices.paving', from: '38 USD per short ton', to: '41 USD per short ton' };
const SAND: Edit = { file: 'prices.paving', from: '4.98 USD', to: '5.20 USD' };
const WAGES: Edit = { from: 'labour   30 USD per hour', to: 'labour   32 USD per hour' };
const NEW_AREA: Edit = {
  from: 'area path {',
  to: `area landing {
  outline rectangle 4 x 4 ft, corner (30 ft, 0)
  traffic foot
  finish  level with sill
  paving  slab-16 in running-bond
  base    crushed-stone 4 in
  edges   { all round  meets lawn, edging spiked-strip }
}

area path {`
};

describe('two people edit one job in its canonical form', () => {
  test('the texts are in that form', () => {
    const cwd = folder(FILES);
    for (const [name, text] of Object.entries(FILES))
      expect(paving(['format', name], { cwd })).toEqual({ code: 0, out: text, err: '' });
  });

  test.each<readonly [string, Edit, Edit]>([
    ['two areas', LONGER, PATH_BASE],
    ['two clauses of one area', LONGER, BASE],
    ['a price and an area', STONE, LONGER],
    ['two prices', STONE, SAND],
    ['what an hour costs, and a price', WAGES, STONE],
    ['an area that is new, and another that changes', NEW_AREA, BASE]
  ])('%s: git puts both together, and the job compares as both edits', (_, first, second) => {
    const { at, code } = merged(first, second);
    expect(code).toBe(0);
    expect(at.paving(['check', 'terrace.paving'])).toMatchObject({ code: 0, err: '' });
    const text = readFileSync(path.join(at.at, 'terrace.paving'), 'utf8');
    expect(at.paving(['format', 'terrace.paving'])).toEqual({ code: 0, out: text, err: '' });
    const [one, other] = [edits(at, '--from', 'base', '--to', 'edit-1'), edits(at, '--from', 'edit-1')];
    expect(one.length > 0 && other.length > 0).toBe(true);
    expect(edits(at, '--from', 'base')).toEqual([...one, ...other].sort());
  });

  test.each<readonly [string, Edit, Edit]>([
    ['one amount', BASE, { ...BASE, to: 'crushed-stone 7 in' }],
    ['two lines that touch', BASE, BED]
  ])('%s: git tells the conflict, and the text that lies there until it is solved is an error', (_, first, second) => {
    const { at, code } = merged(first, second);
    expect(code).toBe(1);
    expect(at.git('diff', '--name-only', '--diff-filter=U')).toBe('terrace.paving\n');
    const ran = at.paving(['compare', '--from', 'base', 'terrace.paving']);
    expect(ran.code).toBe(1);
    expect(ran.err).toBe(
      'paving: terrace.paving has errors; what is sound is compared. See: paving check terrace.paving\n'
    );
    // What has no numbers now is not gone, and what is sound has not changed.
    expect(ran.out).toMatch(/^The newer text has \d+ errors: what is sound is compared/m);
    expect(ran.out).not.toMatch(/^path|Gross area|To pay/m);
  });
});
