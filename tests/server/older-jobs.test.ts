// Jobs as they stood at commits: what is worked out anew, and what is let go of.
import { setImmediate } from 'node:timers/promises';
import { describe, expect, test } from 'vitest';
import { CancellationTokenSource } from 'vscode-languageserver';
import type { Compared } from '../../language/comparing/compare.ts';
import type { History, Problem } from '../../server/history.ts';
import { OlderJobs, type OlderSpec } from '../../server/older-jobs.ts';
import { inMemory } from '../language/in-memory.ts';
import { PATIO } from './patio.ts';

const PRICED = `${PATIO}price type-1 { prices on 2026-03-01, valid 60 days, loose for 38 GBP per tonne }\n`;

/** The same text at every commit, as often as it is read. */
class SameAtAll implements History {
  starts = 0;
  readonly read: string[] = [];
  /** No text is there before. */
  ready = Promise.resolve();

  find(): Promise<Problem> {
    return Promise.resolve({ problem: 'none' });
  }

  list(): Promise<Problem> {
    return this.find();
  }

  specsAt(_: string, commit: string): ReturnType<History['specsAt']> {
    this.read.push(commit);
    const files = inMemory({ 'job.paving': PRICED });
    return Promise.resolve({ ...files, read: file => this.ready.then(() => files.read(file)) });
  }
}

const at = (commit: string): OlderSpec => ({ folder: 'file:///jobs', commit, path: 'job.paving' });

function titleOf(job: Compared | Problem | undefined): string | undefined {
  return job !== undefined && 'evaluation' in job ? job.evaluation.job?.title : JSON.stringify(job);
}

describe('A commit', () => {
  test('is read once, and worked out anew on another day', async () => {
    let day = '2026-04-30';
    const history = new SameAtAll();
    const older = new OlderJobs(history, () => day);
    const past = async (): Promise<number> => {
      const job = await older.jobAt(at('a'));
      if (job === undefined || !('evaluation' in job)) throw new Error('no job');
      expect(older.readyAt(at('a'))?.job).toBe(job);
      expect(await older.jobAt(at('a'))).toBe(job);
      return job.evaluation.findings.filter(({ id }) => id === 'price-past').length;
    };
    expect(await past()).toBe(0);
    day = '2026-05-01';
    expect(older.readyAt(at('a'))).toBeUndefined();
    expect(await past()).toBe(1);
    expect(history.read).toEqual(['a']);
  });

  test('that somebody waits for is never let go of', async () => {
    const history = new SameAtAll();
    let letRead = (): void => undefined;
    history.ready = new Promise(resolve => (letRead = resolve));
    const older = new OlderJobs(history);
    const jobs: Promise<Compared | Problem | undefined>[] = [];
    for (const commit of ['head', 'a', 'b', 'c', 'd']) {
      jobs.push(older.jobAt(at(commit)));
      // Until its files are known.
      await setImmediate();
    }
    letRead();
    expect((await Promise.all(jobs)).map(titleOf)).toEqual(Array.from({ length: 5 }, () => 'Small patio'));
    expect(older.size).toBe(3);
  });

  test('that HEAD has left goes when nobody waits for it, unless it is asked for again', async () => {
    const history = new SameAtAll();
    const older = new OlderJobs(history);
    const asked = older.jobAt(at('a'));
    older.drop('a');
    expect(titleOf(await asked)).toBe('Small patio');
    expect(older.size).toBe(0);
    const again = older.jobAt(at('a'));
    older.drop('a');
    expect(await older.jobAt(at('a'))).toBe(await again);
    expect([older.size, history.read]).toEqual([1, ['a', 'a']]);
  });

  test('that nobody waits for any more goes when others are asked for', async () => {
    const older = new OlderJobs(new SameAtAll());
    const source = new CancellationTokenSource();
    const given = older.jobAt(at('a'), source.token).catch((error: unknown) => error);
    source.cancel();
    expect(await given).toMatchObject({ code: -32800 });
    await Promise.all(['b', 'c', 'd'].map(commit => older.jobAt(at(commit))));
    expect([older.size, older.readyAt(at('a'))]).toEqual([3, undefined]);
  });
});
