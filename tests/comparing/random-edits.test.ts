// Random edits of every sample, by a fixed seed: a comparison tells what differs and nothing else, whichever way it is asked.
import { describe, expect, test } from 'vitest';
import { compareJobs, type Compared } from '../../language/comparing/compare.ts';
import type { Comparison } from '../../language/comparing/contract.ts';
import { jobNumbers } from '../../language/comparing/job-numbers.ts';
import { keyNow, sideNow } from '../../language/comparing/new-names.ts';
import { createParse } from '../../language/syntax/parse.ts';
import { statementTree, type Statement } from '../../language/syntax/statement-tree.ts';
import { FILES, JOBS, textOf } from '../samples/samples.ts';
import { seeded } from '../language/seeded.ts';
import { read } from './compared.ts';

const TEXTS = Object.fromEntries(FILES.map(file => [file, textOf(file)]));
const parse = createParse(() => false);

/** How much is tried on each sample. */
const EDITS_OF_EACH = 4;

/** What a person might do to a text: another number, a statement gone, one written twice, two in another order. */
type Way = 'number' | 'gone' | 'twice' | 'moved';

interface Pick {
  readonly way: Way;
  readonly at: number;
  readonly factor: number;
}

const WAYS: readonly Way[] = ['number', 'number', 'number', 'gone', 'twice', 'moved'];
const FACTORS = [0.5, 0.9, 1.1, 1.5];

const random = seeded(20260413);

const PICKS = Array.from({ length: EDITS_OF_EACH * JOBS.length }, (): Pick => ({
  way: WAYS[random(WAYS.length)]!,
  at: random(1000) / 1000,
  factor: FACTORS[random(FACTORS.length)]!
}));

function edited(text: string, { way, at, factor }: Pick): string {
  const parsed = parse(text);
  if (way === 'number') {
    const numbers = parsed.tokens.filter(({ tokenType: { name } }) => name === 'NUMBER');
    const token = numbers[Math.floor(at * numbers.length)]!;
    const value = String(Number((Number(token.image) * factor).toFixed(4)));
    return text.slice(0, token.startOffset) + value + text.slice(token.endOffset! + 1);
  }
  const all = statementTree(parsed).flatMap(one => [one, ...one.inside]);
  const statement = all[Math.floor(at * all.length)]!;
  const [from, to] = spanOf(parsed.tokens, statement);
  const words = text.slice(from, to);
  if (way === 'gone') return text.slice(0, from) + text.slice(to);
  if (way === 'twice') return `${text.slice(0, to)}\n${words}\n${text.slice(to)}`;
  return `${text.slice(0, from)}${text.slice(to)}\n${words}\n`;
}

function spanOf(
  tokens: readonly { startOffset: number; endOffset?: number }[],
  { first, end }: Statement
): [number, number] {
  return [tokens[first]!.startOffset, tokens[Math.max(first, end - 1)]!.endOffset! + 1];
}

const side = (file: string, text: string): Promise<Compared> => read({ ...TEXTS, [file]: text }, file);

describe.each(JOBS)('%s', file => {
  const picks = PICKS.slice(JOBS.indexOf(file) * EDITS_OF_EACH, (JOBS.indexOf(file) + 1) * EDITS_OF_EACH);

  test('against itself nothing differs', async () => {
    const [one, other] = [await side(file, TEXTS[file]!), await side(file, TEXTS[file]!)];
    expectNothing(compareJobs(one, other));
  });

  test.each(picks)(
    '$way at $at: the way back mirrors the way there, and what is told leads from one to the other',
    async pick => {
      const older = await side(file, TEXTS[file]!);
      const newer = await side(file, edited(TEXTS[file]!, pick));
      const there = compareJobs(older, newer);
      const back = compareJobs(newer, older);
      expect(mirrored(back)).toEqual(told(there));
      leadsFromOneToTheOther(older, newer, there);
      expect(there.numbers.filter(({ causes }) => causes.length === 0).map(({ id }) => id)).toEqual([]);
      // Only what follows from the change.
      const isSame = there.edits.length === 0 && there.renamed.length === 0;
      if (isSame) expect(there.numbers.map(({ id }) => id)).toEqual([]);
    }
  );
});

function expectNothing({ edits, renamed, numbers, findings, money, tasks, days, underWay, broken }: Comparison): void {
  expect({ edits, renamed, numbers, findings, money, tasks }).toEqual({
    edits: [],
    renamed: [],
    numbers: [],
    findings: [],
    money: [],
    tasks: []
  });
  expect([days, underWay, broken]).toEqual([undefined, undefined, []]);
}

/** All that a comparison tells, in one order whichever way it was asked, called as the newer text does. */
function told(comparison: Comparison): unknown {
  return flat(comparison, false);
}

function mirrored(comparison: Comparison): unknown {
  return flat(comparison, true);
}

function flat({ edits, renamed, numbers, findings, money, tasks, days }: Comparison, isBack: boolean): unknown {
  const turn = <T>(before: T, after: T): [T, T] => (isBack ? [after, before] : [before, after]);
  // On the way back the numbers are called as the older text does.
  const names = new Map(
    renamed.map(({ kind, before, after }) => [`${kind}:${isBack ? before : after}`, isBack ? after : before])
  );
  const called = (id: string): string =>
    isBack
      ? id
      : id
          .split('/')
          .map(word => sideNow(names, keyNow(names, word)))
          .join('/');
  const kinds: Readonly<Record<string, string>> = isBack
    ? {
        added: 'removed',
        removed: 'added',
        appeared: 'cleared',
        cleared: 'appeared',
        'set aside': 'no longer set aside',
        'no longer set aside': 'set aside'
      }
    : {};
  return {
    edits: edits.map(({ kind, before, after }) => JSON.stringify([kinds[kind] ?? kind, ...turn(before, after)])).sort(),
    renamed: renamed.map(({ kind, before, after }) => JSON.stringify([kind, ...turn(before, after)])).sort(),
    numbers: Object.fromEntries(
      numbers.map(({ id, before, after }) => [called(id), turn(before?.value, after?.value)])
    ),
    findings: findings
      .map(({ kind, finding, acceptance }) => {
        const isAside = acceptance !== undefined && !kind.includes('set aside');
        return `${kinds[kind] ?? kind}${isAside ? ' and set aside' : ''} ${finding.id} ${finding.message}`;
      })
      .sort(),
    money: money.map(({ id, before, after }) => [id, ...turn(before, after)]),
    tasks: Object.fromEntries(tasks.map(({ id, before, after }) => [id, turn(before, after)])),
    days: days && turn(days.before, days.after)
  };
}

/** A's numbers with the new values put in are B's. */
function leadsFromOneToTheOther(older: Compared, newer: Compared, { numbers, renamed, broken }: Comparison): void {
  // Of what has no numbers nothing is told.
  if (broken.length > 0) return;
  const names = new Map(renamed.map(({ kind, before, after }) => [`${kind}:${before}`, after]));
  const of = ({ evaluation }: Compared, as: ReadonlyMap<string, string>): Map<string, number> =>
    new Map(
      evaluation.numbers === undefined
        ? []
        : jobNumbers(evaluation.numbers.quantities, as).map(({ id, value }) => [id, value])
    );
  const applied = of(older, names);
  for (const { id, after } of numbers) {
    if (after === undefined) applied.delete(id);
    else applied.set(id, after.value);
  }
  const wanted = of(newer, new Map());
  expect([...applied.keys()].sort()).toEqual([...wanted.keys()].sort());
  for (const [id, value] of wanted)
    expect(Math.abs(applied.get(id)! - value), id).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(value)));
}
