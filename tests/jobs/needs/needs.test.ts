// Needs about heights, doors, base and sand depth and buried things, entered as small jobs: each part of a good answer is
// there, or is said to be missing.
import { afterAll, describe, expect, it } from 'vitest';
import { evaluated } from '../../language/in-memory.ts';
import { Entered } from '../read.ts';
import { MEASURES } from './figures.ts';
import type { Missing, Part } from './need.ts';
import { NEEDS } from './needs.ts';
import { NOT_ENTERED } from './not-entered.ts';

/** Topics that count: level or drainage, base depth, door or gate, sand depth, buried. */
const ITEMS_OF_THESE_TOPICS = 37;
const LEAST_ENTERED = 25;

const lines: string[] = [];
const jobs = new Map<string, Promise<Entered>>();

/** Each spec is worked out once. */
function entered(spec: string): Promise<Entered> {
  const job = jobs.get(spec) ?? Entered.read(`../needs/specs/${spec}`);
  jobs.set(spec, job);
  return job;
}

afterAll(() => {
  console.log(lines.join('\n'));
});

describe.each(NEEDS)('$item, $source', ({ item, specs, parts, findings }) => {
  it.each(parts)('$part', async (part: Part) => {
    const job = await entered(part.spec ?? specs[0]!);
    if ('finding' in part) {
      lines.push(`${item}  ${part.part}: ${part.finding}`);
      const found = job.evaluation.findings.filter(({ id }) => id === part.finding);
      expect(found.map(({ message }) => message).join('\n')).toContain(part.saying);
    } else if ('noFinding' in part) {
      lines.push(`${item}  ${part.part}: no ${part.noFinding}`);
      expect(job.evaluation.findings.map(({ id }) => id)).not.toContain(part.noFinding);
    } else if ('figure' in part) {
      lines.push(`${item}  ${part.part}: ${Number(part.figure.toFixed(3))} ${part.in}`);
      const ours = part.ours(part.variant === undefined ? job : await job.variant(part.variant)) / MEASURES[part.in];
      expect(Math.abs(ours - part.figure), `${part.by}: ${ours}`).toBeLessThanOrEqual(part.apart ?? 1e-6);
    } else {
      lines.push(`${item}  ${part.part}: missing, ${part.missing}`);
      await expectNoWord(job.text, part);
    }
  });

  it('tells nothing else', async () => {
    expect(findings).toHaveLength(specs.length);
    for (const [index, spec] of specs.entries()) {
      const { evaluation } = await entered(spec);
      const told = evaluation.findings.filter(({ severity }) => severity !== 'note');
      expect(told.map(({ id }) => id).sort(), spec).toEqual([...findings[index]!].sort());
    }
  });
});

describe('all of them', () => {
  it('are entered, or left out with the reason', () => {
    const items = [...NEEDS, ...NOT_ENTERED].map(({ item }) => item);
    expect(new Set(items).size).toBe(ITEMS_OF_THESE_TOPICS);
    expect(items).toHaveLength(ITEMS_OF_THESE_TOPICS);
    expect(NEEDS.length).toBeGreaterThanOrEqual(LEAST_ENTERED);
  });
});

/** Once there is a word for it, this part has to be told anew. */
async function expectNoWord(text: string, { missing, unsaid }: Missing): Promise<void> {
  expect(missing).not.toBe('');
  if (unsaid === undefined) return;
  const within = new RegExp(`^${unsaid.in} .*\\{$`, 'm');
  const changed =
    unsaid.in === 'spec'
      ? `${text}\n${unsaid.statement}\n`
      : within.test(text)
        ? text.replace(within, opened => `${opened}\n  ${unsaid.statement}\n`)
        : text.replace(new RegExp(`^(${unsaid.in} .*\\{)(.*\\})$`, 'm'), `$1\n  ${unsaid.statement}\n$2`);
  expect(changed).not.toBe(text);
  const findings = (await evaluated(changed)).findings;
  expect(findings.map(({ id }) => id)).toContain('unknown-statement');
}
