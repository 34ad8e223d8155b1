// Ten jobs that were told with their numbers, entered as specs: what they come to, and where they went wrong.
import { afterAll, describe, expect, it } from 'vitest';
import { evaluated } from '../language/in-memory.ts';
import { Entered } from './read.ts';
import { type Compared, type Flaw, TOLD } from './told.ts';

const lines: string[][] = [['item', 'what', 'told', 'here', 'why, or by how much they may differ']];
const jobs = new Map<string, Promise<Entered>>();

/** Each spec is worked out once. */
function entered(spec: string): Promise<Entered> {
  const job = jobs.get(spec) ?? Entered.read(spec);
  jobs.set(spec, job);
  return job;
}

afterAll(() => {
  const widths = (lines[0] ?? []).map((_, column) => Math.max(...lines.map(line => line[column]!.length)));
  console.log(
    lines
      .map(line =>
        line
          .map((cell, column) => cell.padEnd(widths[column]!))
          .join('  ')
          .trimEnd()
      )
      .join('\n')
  );
});

describe.each(TOLD)('$item, $kind', ({ item, specs, compared, flaws, findings }) => {
  const read = (spec: string | undefined): Promise<Entered> => entered(spec ?? specs[0]!);

  it.each(compared)('$what: $told', async (one: Compared) => {
    const ours = one.ours(await read(one.spec));
    const apart = Math.abs(ours - one.told);
    const allowed = one.apart === 0 ? 'none' : Number(one.apart.toPrecision(2)).toString();
    lines.push([item, one.what, String(one.told), Number(ours.toFixed(3)).toString(), `${allowed}: ${one.because}`]);
    expect(apart, `${one.what}: ${ours}`).toBeLessThanOrEqual(one.apart);
  });

  it.each(flaws)('tells: $flaw', async ({ flaw, told, spec }: Flaw) => {
    const job = await read(spec);
    if ('finding' in told) {
      lines.push([item, flaw, 'a flaw', told.finding, told.saying]);
      const found = job.evaluation.findings.filter(({ id }) => id === told.finding);
      expect(found.map(({ message }) => message).join('\n')).toContain(told.saying);
    } else if ('figure' in told) {
      lines.push([item, flaw, 'a flaw', 'its figures', told.figure]);
      expect(told.shows(job)).toBe(true);
    } else if ('untold' in told) {
      lines.push([item, flaw, 'a flaw', 'not told', told.untold]);
      expect(job.evaluation.numbers!.quantities.heights).toBeUndefined();
    } else {
      lines.push([item, flaw, 'a flaw', 'not yet', told.notYet]);
      // There is no word for it: once there is, this line has to be told anew.
      const opens = told.in === 'area' ? /^area .*\{$/m : /^job .*\{/m;
      const findingsOf = (await evaluated(job.text.replace(opens, opened => `${opened}\n  ${told.unsaid}\n`))).findings;
      expect(findingsOf.map(({ id }) => id)).toContain('unknown-statement');
    }
  });

  it('tells nothing else', async () => {
    for (const [index, spec] of specs.entries()) {
      const { evaluation } = await read(spec);
      const told = evaluation.findings.filter(({ severity }) => severity !== 'note');
      expect(told.map(({ id }) => id)).toEqual(findings[index]);
    }
  });
});
