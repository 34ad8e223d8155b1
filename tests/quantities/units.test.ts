// Units to buy, running sizes, rows of borders and the bed under thicker units, from the text of a job.
import { describe, expect, it } from 'vitest';
import type { AreaQuantities, JobNumbers } from '../../language/quantities/contract.ts';
import { evaluated } from '../language/in-memory.ts';

async function numbersOf(text: string): Promise<JobNumbers> {
  const { numbers, findings } = await evaluated(text);
  const wrong = findings.filter(({ severity, family }) => severity === 'error' && family === 'fault');
  if (wrong.length > 0) throw new Error(wrong.map(({ line, message }) => `${line}: ${message}`).join('\n'));
  return numbers!;
}

const BLOCK = 'unit block { size 200 x 100 x 60 mm }';

function job(says: string, ...areas: readonly string[]): string {
  return `job "Units" { rules britain, show metric, ${says} }\n${BLOCK}\n${areas.join('\n')}`;
}

function area(name: string, outline: string, ...statements: readonly string[]): string {
  return `area ${name} { outline ${outline}\n traffic foot\n ${statements.join('\n ')}\n }`;
}

async function only(text: string): Promise<AreaQuantities> {
  return (await numbersOf(text)).quantities.areas[0]!;
}

describe('units used (exact arithmetic)', () => {
  it('P-06: 4.0 by 3.0 m in half bond without joint or saw: 585 whole, 30 halves in pairs, 600 used', async () => {
    const { laying } = await only(
      job('saw-cut 0 mm', area('a', 'rectangle 4.0 x 3.0 m', 'paving block in running-bond, joints 0'))
    );
    expect(laying![0]).toMatchObject({ whole: 585, cut: 30, unitsUsed: 600, lowerBound: 600, proven: true });
  });

  it('P-07: 4.05 by 3.0 m in stack bond: 600 whole, 30 pieces of 50 by 100 mm, four to a unit, 608 used', async () => {
    const { laying, cuts } = await only(
      job('saw-cut 0 mm', area('a', 'rectangle 4.05 x 3.0 m', 'paving block in stack-bond, joints 0'))
    );
    expect(laying![0]).toMatchObject({ whole: 600, cut: 30, unitsUsed: 608, lowerBound: 608, proven: true });
    expect(cuts).toEqual([expect.objectContaining({ number: 1, count: 30, unit: 'block' })]);
    expect(cuts![0]!.area).toBeCloseTo(0.005, 9);
    expect(laying![0]!.sawLength).toBeCloseTo(30 * 0.1, 9);
  });

  it('breakage is rounded up, what is put by is added once for the whole job', async () => {
    const one = area('a', 'rectangle 4.05 x 3.0 m', 'paving block in stack-bond, joints 0');
    const { areas, units } = (await numbersOf(job('saw-cut 0 mm, breakage 2 %, keep 5 block', one))).quantities;
    // 2 % of 608 is 12.16.
    expect(areas[0]!.laying![0]).toMatchObject({ unitsUsed: 608, breakage: 13, toBuy: 621 });
    expect(units).toEqual([expect.objectContaining({ unitsUsed: 608, breakage: 13, keep: 5, toBuy: 626 })]);
  });

  it('offcuts go from one area to another, unless they are to stay', async () => {
    // Each leaves 15 pieces of a quarter: four units alone, seven and a half together.
    const areas = [0, 10].map((x, index) =>
      area(`part-${index + 1}`, `rectangle 2.05 x 1.5 m, corner (${x}, 0) m`, 'paving block in stack-bond, joints 0')
    );
    const together = (await numbersOf(job('saw-cut 0 mm', ...areas))).quantities;
    expect(together.areas.map(({ laying }) => laying![0]!.unitsUsed)).toEqual([154, 154]);
    expect(together.units[0]).toMatchObject({ unitsUsed: 308, lowerBound: 308, proven: true });
    const three = [0, 10, 20].map((x, index) =>
      area(`part-${index + 1}`, `rectangle 2.05 x 0.9 m, corner (${x}, 0) m`, 'paving block in stack-bond, joints 0')
    );
    // Nine quarters each: three units alone, seven for all 27.
    const shared = (await numbersOf(job('saw-cut 0 mm', ...three))).quantities;
    expect(shared.areas.map(({ laying }) => laying![0]!.unitsUsed)).toEqual([93, 93, 93]);
    expect(shared.units[0]).toMatchObject({ unitsUsed: 277, lowerBound: 277, proven: true });
    const apart = (await numbersOf(job('saw-cut 0 mm, offcuts within each area', ...three))).quantities;
    expect(apart.units[0]).toMatchObject({ unitsUsed: 279, proven: true });
  });

  it("the saw's cut may eat the joint: 98.5 + 3 + 98.5 mm come out of 200 mm", async () => {
    // Half bond from the corner with 3 mm joints: every other course ends in two pieces of 98.5 mm.
    const { laying } = await only(
      job('saw-cut 3 mm', area('a', 'rectangle 1.012 x 0.203 m', 'paving block in running-bond, joints 3 mm'))
    );
    expect(laying![0]).toMatchObject({ whole: 9, cut: 2, unitsUsed: 10, proven: true });
  });
});

describe('running sizes', () => {
  it('P-20: fifty units of 200 mm with 3 mm joints are 10.147 m from face to face (exact arithmetic)', async () => {
    const { runningSizes } = await only(
      job('saw-cut 3 mm', area('a', 'rectangle 10.2 x 1 m', 'paving block in stack-bond, joints 3 mm'))
    );
    const fifty = runningSizes!.find(({ courses }) => courses === 50)!;
    expect(fifty.along).toBeCloseTo(10.147, 9);
    // Nine courses of 100 mm fit into a metre: the fifth ends at 5 x 100 + 4 x 3 mm, a tenth does not fit.
    expect(runningSizes![0]!.across).toBeCloseTo(0.512, 9);
    expect(runningSizes![1]!.across).toBeUndefined();
  });

  it('courses at 45 degrees lie the root of two further apart along the side (exact arithmetic)', async () => {
    const { runningSizes } = await only(
      job('saw-cut 3 mm', area('a', 'rectangle 4 x 3 m', 'paving block in herringbone-45, joints 3 mm'))
    );
    const [five] = runningSizes!;
    // On squares of 103 mm: the fifth ends at 5 x 103 - 3 mm.
    expect(five!.across).toBeCloseTo(0.512, 9);
    expect(five!.alongSide! / five!.across!).toBeCloseTo(Math.SQRT2, 9);
  });
});

describe('borders', () => {
  it('a row tells the joint with which whole units fit, by its length and its units', async () => {
    const { quantities, workings } = await numbersOf(
      job(
        'saw-cut 3 mm',
        area(
          'a',
          'rectangle 4.07 x 3.0 m',
          'paving block in running-bond, joints 3 mm',
          'border block in sailor-course along near'
        )
      )
    );
    const [row] = quantities.areas[0]!.borderRows!;
    // 20 units of 200 mm and 19 joints: 70 / 19 mm.
    expect(row).toMatchObject({ sides: ['near'], units: 20, wholeUnits: true });
    expect(row!.joint).toBeCloseTo(0.07 / 19, 9);
    expect(workings['/areas/0/borderRows/0/joint']!.formula).toBe(
      '(length of the row - units in the row × unit length) / (units in the row - 1)'
    );
  });

  it('thicker units step the bed: all faces lie level (exact arithmetic)', async () => {
    const text = `${job(
      'saw-cut 3 mm',
      area(
        'a',
        'rectangle 4 x 3 m',
        'paving block in stack-bond, joints 0',
        'border thick in sailor-course along near, joints 0',
        'bed sharp-sand 40 mm'
      )
    )}\nunit thick { size 200 x 100 x 80 mm }`;
    const { layers } = await only(text);
    // 12 m2 of 40 mm, less 20 mm under 0.1 x 4 m.
    expect(layers[0]!.compactedVolume).toBeCloseTo(12 * 0.04 - 0.4 * 0.02, 9);
  });
});

it("a material of one's own is told from the job's file, though one that ships has its name", async () => {
  const { workings } = await numbersOf(
    `${job('saw-cut 3 mm', area('a', 'rectangle 4 x 3 m', 'paving block in stack-bond', 'base type-1 150 mm', 'geotextile'))}
material type-1 { role base, compacted 2.1 t/m3, loose 1.7 t/m3 }`
  );
  const { values } = workings['/areas/0/layers/1/mass']!;
  expect(values.find(({ name }) => name === 'compacted density')).toMatchObject({ value: 2100 });
  const { places } = await evaluated(
    `${job('saw-cut 3 mm', area('a', 'rectangle 4 x 3 m', 'paving block in stack-bond', 'base type-1 150 mm', 'geotextile'))}
material type-1 { role base, compacted 2.1 t/m3, loose 1.7 t/m3 }`
  );
  expect(places.get('material:type-1/compacted')!.file).toBe('job.paving');
});
