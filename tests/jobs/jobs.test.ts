// Seven jobs that were told with their numbers, entered as specs: what they come to, and where they went wrong.
import { afterAll, describe, expect, it } from 'vitest';
import { type Compared, expectCompared } from './compared.ts';
import { expectFlaw, type Flaw, inColumns } from './flaws.ts';
import { Entered } from './read.ts';
import { TOLD } from './told.ts';

const lines: string[][] = [['item', 'what', 'told', 'here', 'why, or by how much they may differ']];
const jobs = new Map<string, Promise<Entered>>();

/** Each spec is worked out once. */
function entered(spec: string): Promise<Entered> {
  const job = jobs.get(spec) ?? Entered.read(spec);
  jobs.set(spec, job);
  return job;
}

afterAll(() => {
  console.log(inColumns(lines));
});

describe.each(TOLD)('$item, $kind', ({ item, specs, compared, flaws, findings }) => {
  const read = (spec: string | undefined): Promise<Entered> => entered(spec ?? specs[0]!);

  it.each(compared)('$what: $told', async (one: Compared) => {
    lines.push([item, ...expectCompared(await read(one.spec), one)]);
  });

  it.each(flaws)('tells: $flaw', async (one: Flaw) => {
    lines.push([item, ...(await expectFlaw(await read(one.spec), one))]);
  });

  it('tells nothing else', async () => {
    for (const [index, spec] of specs.entries()) {
      const { evaluation } = await read(spec);
      const told = evaluation.findings.filter(({ severity }) => severity !== 'note');
      expect(told.map(({ id }) => id)).toEqual(findings[index]);
    }
  });
});
