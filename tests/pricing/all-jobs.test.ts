// Every sample and every job that tells what was bought: sums equal their parts, and no amount falls below nought.
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { drain, type Evaluation } from '../../language/paving.ts';
import { sumOf } from '../../language/money/money.ts';
import { type PricedJob, pricedJob } from '../../language/priced-job.ts';
import { Session } from '../../language/session/session.ts';
import { orderText } from '../../language/views/text/order/order-text.ts';
import { clientSheet } from '../../language/views/text/quote/client-sheet.ts';
import { costsSheet } from '../../language/views/text/quote/costs-sheet.ts';
import { evaluated } from '../language/in-memory.ts';
import { evaluated as sample, JOBS } from '../samples/samples.ts';

const FOLDERS = ['../jobs/bought', '../jobs/terrace-and-drive'];

const same = (words: string): string => words;
const COLOURS = { strong: same, faint: same, error: same, warning: same, note: same };

function specsIn(folder: string): Readonly<Record<string, string>> {
  const at = path.join(import.meta.dirname, folder);
  const files = readdirSync(at).filter(file => file.endsWith('.paving'));
  return Object.fromEntries(files.map(file => [file, readFileSync(path.join(at, file), 'utf8')]));
}

const ENTERED: readonly (readonly [string, () => Promise<Evaluation>])[] = [
  ...JOBS.map(file => [file, () => sample(file)] as const),
  ...FOLDERS.flatMap(folder => {
    const specs = specsIn(folder);
    return Object.entries(specs)
      .filter(([, text]) => /^job /m.test(text))
      .map(([file, text]) => [`${path.basename(folder)}/${file}`, () => evaluated(text, specs)] as const);
  })
];

const priced = ({ job, numbers, file }: Evaluation): PricedJob => drain(pricedJob(job!, numbers!, new Session(), file));

/** A minus before a figure, where no word, figure or day stands before it. */
const BELOW_NOUGHT = /(?<![\w.)-])-(?=\d)/;

describe.each(ENTERED)('%s', (_, evaluation) => {
  test('no amount is below nought, nothing is left over in the job as a whole, and all sums are those of their parts', async () => {
    const entered = await evaluation();
    const { costs, numbers, job } = priced(entered);
    const { system } = job;
    const told = [orderText({ file: 'job', quantities: numbers.quantities, system, colours: COLOURS })];
    if (costs !== undefined) {
      const input = { job, money: job.money, numbers, costs, colours: COLOURS };
      told.push(clientSheet(input), costsSheet(input, false));
    }
    for (const text of told) for (const line of text.split('\n')) expect(BELOW_NOUGHT.test(line), line).toBe(false);
    for (const text of told.slice(1)) expect(text).not.toMatch(/taken as 1\b|no charge is told|free from/);
    if (costs === undefined) return;
    const { lines, parts, kinds, areas, wholeJob, tasks } = costs;
    for (const line of lines) expect(sumOf(line.parts.map(({ cost }) => cost)), line.id).toBe(line.cost);
    expect(sumOf(lines.map(({ cost }) => cost))).toBe(costs.costs);
    expect(sumOf(kinds.map(({ cost }) => cost))).toBe(costs.costs);
    for (const key of ['cost', 'price'] as const) {
      const whole = key === 'cost' ? costs.costs : costs.price;
      expect(sumOf(parts.map(part => part[key]))).toBe(whole);
      expect(sumOf([...areas, ...wholeJob].map(each => each[key]))).toBe(whole);
      for (const area of areas) {
        expect(sumOf(area.works.map(work => work[key])), area.name).toBe(area[key]);
        const edging = area.works.filter(({ work }) => work === 'edging').map(work => work[key]);
        expect(sumOf(area.edges.map(edge => edge[key])), `sides of ${area.name}`).toBeLessThanOrEqual(sumOf(edging));
      }
      for (const each of [...lines.flatMap(line => line.parts), ...wholeJob, ...areas.flatMap(({ works }) => works)])
        expect((each as { cost: bigint; price?: bigint })[key] ?? 0n).toBeGreaterThanOrEqual(0n);
    }
    for (const { task, cost } of tasks) {
      const own = parts.filter(part => part.task === task);
      expect(sumOf(own.map(part => part.cost)), task).toBe(cost);
    }
    // What areas share of the ground is taken off theirs: digging is all shared out, where any area digs.
    expect(wholeJob.filter(({ work }) => work === 'dig')).toEqual([]);
  });
});
