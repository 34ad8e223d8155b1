// Joint lines carried on from area to area.
import { expect, it } from 'vitest';
import { evaluated } from '../language/in-memory.ts';

function chain(length: number): string {
  const areas = Array.from({ length: length + 1 }, (_, index) => {
    const start = index === 0 ? 'along near' : `carried on from part-${index - 1}`;
    return `area part-${index} { outline rectangle 1 x 1 m, corner (${2 * index}, 0) m\n traffic foot\n paving block in stack-bond\n start ${start}\n }`;
  });
  return `job "Chain" { rules britain }\nunit block { size 200 x 100 x 60 mm }\n${areas.join('\n')}`;
}

async function refused(text: string): Promise<readonly string[]> {
  const { findings } = await evaluated(text);
  return findings.filter(({ id }) => id === 'start-does-not-fit').map(({ target }) => target);
}

it('through twenty areas, and not through one more', async () => {
  expect(await refused(chain(20))).toEqual([]);
  expect(await refused(chain(21))).toEqual(['area:part-21']);
});

it('goes on with the grid of the area that it begins in', async () => {
  const { numbers } = await evaluated(chain(2));
  // Two metres on is no whole number of units of 203 mm: the third area begins inside one.
  numbers!.laid.forEach(({ laid }, index) => {
    const { origin } = laid!.laid.parts[0]!.how!.frame;
    const units = origin.x / 0.203;
    expect(Math.abs(units - Math.round(units))).toBeLessThan(1e-9);
    expect(origin.y).toBeCloseTo(0, 12);
    // Told from the first unit that lies in the area.
    expect(origin.x - 2 * index).toBeGreaterThan(-1e-9);
    expect(origin.x - 2 * index).toBeLessThan(0.203);
  });
});

it('keeps the turn of a bond once, and its lattice', async () => {
  const area = (name: string, x: number, start: string): string =>
    `area ${name} { outline rectangle 2 x 2 m, corner (${x}, 0) m\n traffic foot\n paving block in herringbone-45\n ${start}\n }`;
  const { numbers } = await evaluated(
    `job "Two" { rules britain }\nunit block { size 200 x 100 x 60 mm }\n${area('a', 0, 'start along near')}\n${area('b', 2, 'start carried on from a')}`
  );
  const [one, other] = numbers!.laid.map(({ laid }) => laid!.laid.parts[0]!.how!.frame);
  expect(other!.direction).toBeCloseTo(one!.direction, 12);
  // From one start to the other whole cells of four squares of 103 mm, both ways.
  const [x, y] = [other!.origin.x - one!.origin.x, other!.origin.y - one!.origin.y];
  for (const steps of [(x + y) / Math.SQRT2 / 0.412, (y - x) / Math.SQRT2 / 0.412])
    expect(Math.abs(steps - Math.round(steps))).toBeLessThan(1e-9);
});

it('begins where a unit lies, whatever the start asks for', async () => {
  const { numbers, findings } = await evaluated(
    `job "Right" { rules britain }\nunit block { size 200 x 100 x 60 mm }\narea a { outline rectangle 4.06 x 3.09 m\n traffic foot\n paving block in stack-bond, joints 3 mm\n start along near, whole units along right\n }`
  );
  // Twenty units and their joints take 4.057 m: the first begins 3 mm from the left.
  expect(numbers!.laid[0]!.laid!.laid.parts[0]!.how!.frame.origin.x).toBeCloseTo(0.003, 9);
  expect(findings.filter(({ id }) => id === 'start-does-not-fit')).toEqual([]);
});

it('tells of whole units that a bond or another clause does not leave whole', async () => {
  const told = async (paving: string, start: string): Promise<readonly string[]> => {
    const { findings } = await evaluated(
      `job "Told" { rules britain }\nunit block { size 200 x 100 x 60 mm }\narea a { outline rectangle 4.1 x 3 m\n traffic foot\n paving block in ${paving}\n start ${start}\n }`
    );
    return findings.filter(({ id }) => id === 'start-does-not-fit').map(({ message }) => message.slice(0, 24));
  };
  expect(await told('herringbone-45', 'whole units along near')).toEqual([
    expect.stringMatching(/^Along near \d+ units/)
  ]);
  expect(await told('stack-bond', 'along near, whole units along left, equal cuts')).toEqual([
    expect.stringMatching(/^Along left \d+ units/)
  ]);
  expect(await told('stack-bond', 'whole units along near and left')).toEqual([]);
});
