import { expect, test } from 'vitest';
import { heightAt } from '../../language/levels/surface.ts';
import { evaluated } from './in-memory.ts';

const YARD = `job "Yard" { rules britain, show metric }
site { benchmark floor }
unit block { size 200 x 100 x 60 mm }
point A at (0, 0)
point B at (4, 0) m
point C at (4, 5) m
point D at (0, 5) m
existing footway
heights { footway C 20 mm above floor  D 20 mm above floor }
door back-door {
  opening 1 m to 2 m along A to B
  sill    level with floor
}
`;

/** A yard that falls 100 mm from the footway at its far end to the wall of the house. */
function yard(meets: string): string {
  return `${YARD}area yard {
  outline A to B to C to D
  traffic foot
  finish  80 mm below floor along A to B, rising 1:50 away from A to B
  paving  block in running-bond
  bed     sharp-sand 30 mm
  base    type-1 100 mm
  edges {
    A to B    meets ${meets}
    C to D    meets footway, flush
    the rest  meets garden-wall
  }
}
`;
}

async function idsOf(text: string): Promise<Set<string>> {
  return new Set((await evaluated(text)).findings.map(({ id }) => id));
}

test('where a channel runs along the wall the finish may fall towards the house', async () => {
  const wall = await idsOf(yard('house-wall'));
  // The water is told; that heights collide is told where the fall runs away from the wall.
  expect(wall).toContain('water-runs-to-house');
  expect(wall).not.toContain('heights-cannot-all-be-met');
  const own = `drain channel { channel along A to B, 130 mm wide
  grate 85 mm below floor }
`;
  for (const text of [yard('drain-channel'), `${own}${yard('channel')}`]) {
    const channel = await idsOf(text);
    expect(channel).not.toContain('heights-cannot-all-be-met');
    expect(channel).not.toContain('water-runs-to-house');
  }
});

test('a tree is dug near only where its no-dig circle reaches past its pit', async () => {
  const pit = (shape: string, noDig: string): string =>
    `${yard('house-wall')}pit tree in yard { ${shape}, centre (2, 2.5) m
  no-dig ${noDig} }
`;
  for (const [shape, most, more] of [
    ['circle 1.60 m across', '1.60 m across', '1.62 m across'],
    ['rectangle 1.20 x 2.00 m', 'radius 0.60 m', 'radius 0.61 m'],
    ['rectangle 1.20 x 2.00 m, turned 30 degrees', '1.20 m across', '1.22 m across']
  ] as const) {
    expect(await idsOf(pit(shape, most)), shape).not.toContain('no-dig-circle-reached');
    expect(await idsOf(pit(shape, more)), shape).toContain('no-dig-circle-reached');
  }
});

test('a finish with its height at a point falls from there towards another', async () => {
  const text = yard('house-wall').replace(/finish .*/, 'finish 80 mm below floor at A, falling 1:50 towards C');
  const { job, findings } = await evaluated(text);
  expect(findings.map(({ id }) => id)).not.toContain('finish-without-place');
  const { surface } = job!.areas[0]!.finish!;
  // From A to C it is the root of 4² + 5² m, and falls 1 in 50 of it; square to that way it is level.
  expect(heightAt(surface, { x: 4, y: 5 }) - heightAt(surface, { x: 0, y: 0 })).toBeCloseTo(-Math.hypot(4, 5) / 50, 9);
  expect(heightAt(surface, { x: 5, y: -4 })).toBeCloseTo(heightAt(surface, { x: 0, y: 0 }), 9);
});
