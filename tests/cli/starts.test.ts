import { expect, test } from 'vitest';
import { paving } from './run.ts';

const YARD = `job "Yard" { rules britain }
site { soil sand, benchmark step, ground level with step }
unit block { size 200 x 100 x 60 mm }
area yard {
  outline rectangle 1.045 x 0.52 m
  traffic foot
  finish  level with step
  paving  block in stack-bond, joints 5 mm from 5 mm to 5 mm
  start   shifted (30, 0) mm
  base    type-1 150 mm
  edges { all round meets house-wall }
}
`;

test('what to write, with the cuts as they are and as they would be', () => {
  const { code, out, err } = paving(['quantities', '--starts', '-'], { input: YARD });
  expect({ code, err }).toEqual({ code: 0, err: '' });
  const section = out.slice(out.indexOf('Better starts'), out.indexOf('Slivers are'));
  // From 30 mm on: 25 mm and a joint before the first whole unit, four of them, and 195 mm of the last. Unshifted 20 mm
  // are left behind five. Two units cut: 25 and 200 mm are twice 112.5.
  expect(section.trimEnd()).toBe(`Better starts
  Area yard
    Change                   Cut units  Slivers  Narrowest piece  Sawing
    as it is                        10        5            25 mm   1.0 m
    no \`shifted\`                     5        5            20 mm   0.5 m
    inboard-cuts 50 mm              15        0           100 mm   1.5 m
    rectangle 845 x 520 mm           5        5            25 mm   0.5 m
    rectangle 1.05 x 0.52 m          5        5            25 mm   0.5 m`);
});

test('not unasked, and not in JSON', () => {
  expect(paving(['quantities', '-'], { input: YARD }).out).not.toContain('Better starts');
  const { code, err } = paving(['quantities', '--starts', '--format', 'json', '-'], { input: YARD });
  expect({ code, err }).toEqual({ code: 2, err: 'paving: --starts is for reading: leave out --format json.\n' });
});

test('a broken area is left out', () => {
  const broken = YARD.replace('outline rectangle 1.045 x 0.52 m', 'outline rectangle 1.045');
  expect(paving(['quantities', '--starts', '-'], { input: broken }).out).not.toContain('Better starts');
});
