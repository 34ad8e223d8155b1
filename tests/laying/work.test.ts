// Work grows with the edge of a field, not with its area; what is too much is told at once; laying can be left.
import { describe, expect, it } from 'vitest';
import { circleLoop, MOST_UNITS, rectangleLoop, regionArea } from '../../language/geometry/index.ts';
import type { AreaToLay, FieldToLay } from '../../language/laying/area-to-lay.ts';
import { drain, Paving } from '../../language/paving.ts';
import { loopOf } from '../geometry/feet.ts';
import { inMemory } from '../language/in-memory.ts';
import { bondFields, regionOf } from './random-fields.ts';
import { fieldOf } from './spec.ts';

/** An L of some 2,000 m2 with three keep-outs, courses askew. */
function terrace(field: FieldToLay, scale: number): AreaToLay {
  const keptOut = [
    circleLoop({ x: 10, y: 10 }, 3),
    rectangleLoop(3, 4, { x: 25, y: 20 }, 0.4),
    circleLoop({ x: 10, y: 60 }, 2)
  ];
  const width = field.joint.width * scale;
  return {
    outline: loopOf([0, 0], [40, 0], [40, 50], [20, 50], [20, 80], [0, 80]),
    keptOut: keptOut.map((outline, index) => ({ key: `box:${index}`, outline })),
    field: {
      ...field,
      units: field.units.map(unit => ({ ...unit, length: unit.length * scale, width: unit.width * scale })),
      joint: { width, least: width, most: width },
      start: { whole: [], equalCuts: false, turned: 0.3 }
    },
    insets: [],
    borders: [],
    bands: []
  };
}

describe('Units that are really clipped', () => {
  it('are at most two and a half times as many when units are five times as many, in each bond', async () => {
    for (const [bond, field] of await bondFields()) {
      const smaller = field.units.length === 3 ? 1 / 3 : 1;
      const coarse = fieldOf(terrace(field, 2.5 * smaller));
      const fine = fieldOf(terrace(field, (2.5 * smaller) / Math.sqrt(5)));
      const count = ({ laid: { wholes, cuts } }: typeof fine): number =>
        wholes.reduce((sum, run) => sum + run.count, cuts.length);
      expect(count(fine) / count(coarse), bond).toBeGreaterThan(4.7);
      expect(fine.laid.clipped / coarse.laid.clipped, bond).toBeLessThan(2.5);
      expect(fine.laid.clipped, bond).toBeGreaterThanOrEqual(fine.laid.cuts.length);
      const area = terrace(field, 1);
      expect(Math.abs((fine.laid.unitArea + fine.laid.jointArea) / regionArea(regionOf(area)) - 1)).toBeLessThan(1e-9);
    }
  });
});

/** A square of so many metres in a bond. */
function square(metres: number, paving: string): string {
  return `job "Parade ground" { rules britain }
unit sett   { size 50 x 25 x 60 mm }
unit small  { size 50 x 50 x 60 mm }
unit large  { size 100 x 100 x 60 mm }
unit oblong { size 100 x 50 x 60 mm }
area ground {
  outline rectangle ${metres} x ${metres} m
  paving  ${paving}, joints 2 mm
}`;
}

async function loaded(text: string): Promise<Paving> {
  const paving = new Paving(inMemory({ 'job.paving': text }));
  await paving.load('job.paving');
  return paving;
}

describe('More units than are laid out', () => {
  it('are told with their count, at once and in every bond', async () => {
    const pavings = [
      'sett in stack-bond',
      'sett in running-bond',
      'sett in herringbone-90',
      'sett in herringbone-45',
      'sett in basket-weave',
      'large, small in pinwheel',
      'large, oblong, small in three-sizes'
    ];
    for (const paving of pavings) {
      const steps = (await loaded(square(100, paving))).evaluate('job.paving');
      let count = 0;
      let step = steps.next();
      for (; !step.done; step = steps.next()) count++;
      const finding = step.value!.findings.find(({ id }) => id === 'too-many-units');
      const about = Number(/about ([\d,]+) units/.exec(finding?.message ?? '')?.[1]?.replaceAll(',', ''));
      expect(about, paving).toBeGreaterThan(MOST_UNITS);
      // Fewer than without joints on the 10,000 m2: a sett, a tenth of a pinwheel, a seventh of a cell of three sizes each.
      const each = paving.startsWith('sett') ? 0.00125 : paving.includes('oblong') ? 0.04 / 7 : 0.0625 / 10;
      const without = 10_000 / each;
      expect(about / without, paving).toBeGreaterThan(0.85);
      expect(about / without, paving).toBeLessThan(1);
      // Laying it would take a step for each of thousands of courses.
      expect(count, paving).toBeLessThan(50);
      expect(step.value!.numbers!.quantities.areas[0]!.laying, paving).toBeUndefined();
    }
  });
});

describe('Laying', () => {
  it('goes on in steps of one course at most, and leaves nothing behind when it is left', async () => {
    const text = square(10, 'sett in herringbone-90');
    const whole = drain((await loaded(text)).evaluate('job.paving'))!.numbers!.quantities.areas[0]!.laying;
    const paving = await loaded(text);
    const steps = paving.evaluate('job.paving');
    for (let step = 0; step < 150; step++) expect(steps.next().done).toBe(false);
    steps.return(undefined);
    expect(paving.session.computations).toMatchObject({ laying: 1, layers: 0, rules: 0 });
    expect(drain(paving.evaluate('job.paving'))!.numbers!.quantities.areas[0]!.laying).toEqual(whole);
    expect(paving.session.computations).toMatchObject({ laying: 2, layers: 1, rules: 1 });
  });
});
