// Twelve jobs that told what was bought, entered as specs: the net need, the order that covers it beside what was bought,
// and how each shows what went wrong.
import { afterAll, describe, expect, it } from 'vitest';
import { type Compared, expectCompared, shortly } from '../compared.ts';
import { expectFlaw, type Flaw, inColumns } from '../flaws.ts';
import { Ordered } from '../ordered.ts';
import { Entered } from '../read.ts';
import { BOUGHT, type Purchase } from './bought.ts';

interface Both {
  readonly entered: Entered;
  readonly ordered: Ordered;
}

const lines: string[][] = [['item', 'what', 'told', 'here', 'why, or by how much they may differ']];
const jobs = new Map<string, Promise<Both>>();

/** Each spec is worked out once, and once more without its log. */
function both(spec: string): Promise<Both> {
  const job = jobs.get(spec) ?? read(spec);
  jobs.set(spec, job);
  return job;
}

async function read(spec: string): Promise<Both> {
  const entered = await Entered.read(`../bought/${spec}`);
  return { entered, ordered: new Ordered(await entered.beforeLog()) };
}

afterAll(() => {
  console.log(inColumns(lines));
});

describe.each(BOUGHT)('$item, $kind', ({ item, specs, compared, purchases, flaws, verdict, findings }) => {
  const job = (spec: string | undefined): Promise<Both> => both(spec ?? specs[0]!);

  it.each(compared)('needs $what: $told', async (one: Compared) => {
    const { entered } = await job(one.spec);
    lines.push([item, ...expectCompared(entered, one)]);
  });

  it.each(purchases)('buys $what: $bought', async ({ what, bought, order, by, ours, differs, spec }: Purchase) => {
    const value = ours((await job(spec)).ordered);
    lines.push([item, `bought: ${what}`, String(bought), shortly(value), `${by}${differs ? `; ${differs}` : ''}`]);
    expect(value, by).toBeCloseTo(order, 6);
    // What differs has its reason, and nothing else has.
    expect(order !== bought).toBe(differs !== undefined);
  });

  it('is ordered for the least', async () => {
    for (const spec of specs) expect((await job(spec)).ordered.cost.proven).toBe(true);
  });

  it.each(flaws)('tells: $flaw', async (one: Flaw) => {
    lines.push([item, ...(await expectFlaw((await job(one.spec)).entered, one))]);
  });

  it('has a flaw, where one was told', () => {
    lines.push([item, 'verdict', '', '', verdict]);
    expect(flaws.length > 0).toBe(!verdict.includes('nothing told to have gone wrong'));
  });

  it('tells nothing else', async () => {
    expect(findings).toHaveLength(specs.length);
    for (const [index, spec] of specs.entries()) {
      const { evaluation } = (await job(spec)).entered;
      const told = evaluation.findings.filter(({ severity }) => severity !== 'note');
      expect(told.map(({ id }) => id)).toEqual(findings[index]);
    }
  });
});

describe('all of them', () => {
  it('are the jobs that tell what was bought', () => {
    const items = ['J05', 'J06', 'J07', 'J08', 'J09', 'J14', 'J20', 'J21', 'J24', 'J25', 'J32', 'J38'];
    expect(BOUGHT.map(({ item }) => item)).toEqual(items);
  });
});
