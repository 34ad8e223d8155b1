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
  for (const { laid } of numbers!.laid) {
    const { origin } = laid!.laid.parts[0]!.how!.frame;
    expect(Math.hypot(origin.x, origin.y)).toBeLessThan(1e-12);
  }
});
