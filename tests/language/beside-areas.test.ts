import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Loop } from '../../language/geometry/index.ts';
import type { Job } from '../../language/job/job.ts';
import type { Evaluation } from '../../language/paving.ts';
import { evaluated } from './in-memory.ts';

const FOOT = 0.3048;
const INCH = 0.0254;

/** Two areas side by side, 5 m wide each and 4 m deep, along the line of a house below them. */
const SITE = `job "Yard" { rules britain }
site { soil clay, winters freeze, benchmark sill, ground 100 mm below sill }
unit flag { size 450 x 450 x 40 mm }
point A at (0, 0)
point B at (5, 0) m
point C at (5, 4) m
point D at (0, 4) m
point E at (10, 0) m
point F at (10, 4) m
`;

function area(name: string, corners: string, edges = 'the rest meets lawn'): string {
  return `area ${name} {
  outline ${corners}
  traffic foot
  finish  75 mm below sill
  paving  flag in running-bond
  base    type-1 100 mm
  edges { ${edges} }
}
`;
}

const YARD = area('yard', 'A to B to C to D');
const GREEN = area('green', 'B to E to F to C');

async function read(text: string): Promise<{ job: Job; told: string[]; evaluation: Evaluation }> {
  const evaluation = await evaluated(text);
  const told = evaluation.findings
    .filter(({ severity }) => severity === 'error')
    .map(
      ({ id, line, column }) =>
        `${id} ${text
          .split('\n')
          [line - 1]!.slice(column - 1)
          .split(/[,\n}]/)[0]!
          .trim()}`
    );
  return { job: evaluation.job!, told, evaluation };
}

/** The corners of a shape: `x,y` in mm. */
function corners(loop: Loop): string[] {
  const mm = (metres: number): number => Math.round(metres * 1000) + 0;
  return loop.map(({ from }) => `${mm(from.x)},${mm(from.y)}`);
}

describe('boxes and pits', () => {
  test('a box has a lid and a use; one that is cut down and buried is paved over', async () => {
    const { job, told } = await read(`${SITE}${YARD}
box valve in yard {
  rectangle 600 x 400 mm, centre 2 m along C to D, 1 m out
  lid 80 mm below sill
  in use, set flush, tray 60 mm deep paved with flag
}
box sprinkler in yard {
  circle 300 mm across, centre (1, 1) m
  out of use, cut down and bury
}
box hydrant in yard {
  circle 300 mm across, centre (3, 1) m
  out of use
}
pit maple in yard {
  circle 1 m across, centre (4, 2) m
  no-dig 3 m across
}
`);
    expect(told).toEqual([]);
    expect(job.boxes.map(({ name, use }) => [name, use?.inUse, use?.buried])).toEqual([
      ['valve', true, false],
      ['sprinkler', false, true],
      ['hydrant', false, false],
      ['maple', undefined, undefined]
    ]);
    expect(job.areas[0]!.keptOut.map(({ name }) => name)).toEqual(['valve', 'hydrant', 'maple']);
    const [valve, , , maple] = job.boxes;
    // Its length runs along C to D, so that it is turned half round.
    expect(corners(valve!.outline)).toEqual(['3300,3200', '2700,3200', '2700,2800', '3300,2800']);
    expect(valve!.lid!.above.value).toBeCloseTo(-0.08, 12);
    expect(valve!.use!.tray).toMatchObject({ depth: { value: 0.06 }, unit: 'unit:flag' });
    expect(maple!.noDig!.value).toBe(1.5);
  });

  test('a lid that cannot be read takes no numbers from its area', async () => {
    const { job, told } = await read(`${SITE}${YARD}
box valve in yard {
  circle 300 mm across, centre (1, 1) m
  lid 80 mm below step
}
`);
    expect(told).toEqual(['unknown-name step']);
    expect(job.areas[0]!.keptOut[0]!.lid).toBeUndefined();
  });
});

describe('drains', () => {
  const channel = (where = ''): string => `drain slot${where} {
  channel along A to B, 100 mm wide, 80 mm deep, on concrete 150 mm below and both sides
  grate 80 mm below sill at A
  grate 85 mm below sill at B
  outlet at B to soakaway, class B125
}
`;

  test.each([
    [
      'along a side of the area that meets it, outside',
      '',
      YARD.replace('{ the', '{ A to B meets slot\n the'),
      -100,
      0
    ],
    ['in the area, its line a side of it, inside', ' in yard', YARD, 0, 100],
    ['on its own, half to each side of its line', '', YARD, -50, 50]
  ])('a channel %s', async (_, where, text, low, high) => {
    const { job, told } = await read(`${SITE}${text}${channel(where)}`);
    expect(told).toEqual([]);
    const [drain] = job.drains;
    expect(corners(drain!.outline)).toEqual([`0,${low}`, `5000,${low}`, `5000,${high}`, `0,${high}`]);
    expect(drain).toMatchObject({ width: { value: 0.1 }, depth: { value: 0.08 }, concrete: { sides: true } });
    expect(drain!.grates.map(({ name, z }) => [name, z])).toEqual([
      ['A', -0.08],
      ['B', -0.085]
    ]);
    expect(drain!.outlet).toEqual({ at: { x: 5, y: 0 }, name: 'B', to: 'soakaway', loadClass: 'B125' });
    const [yard] = job.areas;
    expect(yard!.keptOut.map(({ key, kind }) => [key, kind])).toEqual(where === '' ? [] : [['drain:slot', 'drain']]);
    expect(yard!.drains.map(({ key }) => key)).toEqual(low === -50 ? [] : ['drain:slot']);
  });

  test('a channel through the middle of its area, a gully, and a grate said twice', async () => {
    const { job, told } = await read(`${SITE}point G at (0, 2) m\npoint H at (5, 2) m\n${YARD}
drain slot in yard {
  channel along G to H, 100 mm wide
  grate 80 mm below sill
  grate 90 mm below sill at G
}
drain sump in yard {
  gully rectangle 300 x 200 mm, centre 1 m along C to D, 1 m out
  grate 90 mm below sill
}
`);
    expect(told).toEqual(['said-twice grate 90 mm below sill at G']);
    expect(job.drains.map(({ outline }) => corners(outline)[0])).toEqual(['0,1950', '4150,3100']);
    expect(job.areas[0]!.keptOut.map(({ name }) => name)).toEqual(['slot', 'sump']);
  });
});

describe('pipes, gates and routes', () => {
  test('a pipe from the middle of a box to the outlet of a drain', async () => {
    const { job, told } = await read(`${SITE}${YARD}
box valve in yard { circle 300 mm across, centre (1, 1) m }
drain slot {
  channel along A to B, 100 mm wide
  grate 80 mm below sill
  outlet at B
}
pipe feed in yard {
  from valve to D to slot
  depth about 250 mm, not proven
  carries water
}
pipe main {
  from A to C
  depth 600 mm, proven
  carries steam
}
`);
    expect(told).toEqual(['unknown-word steam']);
    expect(job.pipes.map(({ name }) => name)).toEqual(['feed']);
    const [feed] = job.pipes;
    expect(feed).toMatchObject({ about: true, proven: false, carries: 'water', depth: { value: 0.25 } });
    expect(feed!.line.map(({ name, at }) => [name, at.x.toFixed(6), at.y.toFixed(6)])).toEqual([
      ['valve', '1.000000', '1.000000'],
      ['D', '0.000000', '4.000000'],
      ['slot', '5.000000', '0.000000']
    ]);
    expect(job.missing).toEqual([{ key: 'pipe:main', name: 'main', because: 'main' }]);
  });

  test.each([
    ['hinge 1 m along B to C, leaf 0.9 m towards C', 'yard', 90, '5000,1000 5000,1900'],
    ['hinge 1 m along B to C, leaf 0.9 m towards C', 'green', -90, '5000,1000 5000,1900'],
    ['hinge 1 m along B to C, leaf 0.9 m towards B', 'yard', -90, '5000,1000 5000,100'],
    ['hinge 1 m along B to C, 50 mm out, leaf 0.9 m towards C', 'green', -90, '5050,1000 5035,1900']
  ])('%s opens into %s', async (hinge, into, turn, leaf) => {
    const { job, told } = await read(`${SITE}${YARD}${GREEN}
gate side { ${hinge}, opens 90 degrees into ${into}
  underside 60 mm below sill
}
`);
    expect(told).toEqual([]);
    const [gate] = job.gates;
    expect(gate!.leaf!.turn).toBe(turn);
    expect(corners([gate!.leaf!.hinge, gate!.leaf!.end].map(from => ({ from, to: from }))).join(' ')).toBe(leaf);
    expect(gate!.leaf!.into).toBe(`area:${into}`);
    expect(gate!.clearance).toMatchObject({ value: 0.012, assumed: {} });
  });

  test('a door by its opening alone, and a way along a line', async () => {
    const { job, told } = await read(`${SITE}${YARD}
door kitchen {
  opening 1 to 1.9 m along A to B
  sill level with sill
}
line path A to C
route bins along path
`);
    expect(told).toEqual([]);
    expect(job.gates[0]).toMatchObject({ kind: 'door', opening: { from: { x: 1, y: 0 }, to: { x: 1.9, y: 0 } } });
    expect(job.routes.map(({ name, line }) => [name, line.length])).toEqual([['bins', 1]]);
  });

  test('what opens into an area without numbers, or stands in it, has none either', async () => {
    const { job } = await read(`${SITE}${YARD.replace('100 mm', '100')}
gate side {
  hinge 1 m along B to C, leaf 0.9 m towards C, opens 90 degrees into yard
  underside 60 mm below sill
}
drain sump in yard {
  gully circle 300 mm across, centre (2, 2) m
  grate 90 mm below sill
}
`);
    expect(job.missing.map(({ key, because }) => `${key} for ${because}`)).toEqual([
      'area:yard for yard',
      'drain:sump for yard',
      'gate:side for yard'
    ]);
    expect([job.gates, job.drains]).toEqual([[], []]);
  });

  test('findings of gates, drains, pipes and routes can be set aside', async () => {
    const { told } = await read(`${SITE}${YARD}line path A to C\nroute bins along path
accept base-too-thin on bins because "seen" until 2027-06-30
accept base-too-thin on bin because "seen" until 2027-06-30
`);
    expect(told).toEqual(['unknown-name bin because "seen" until 2027-06-30']);
  });
});

describe('the log', () => {
  test('in the order of the text', async () => {
    const { job, told } = await read(`${SITE}${YARD}${GREEN}
log {
  2026-05-09 delivered type-1 4 tonne, done base of yard and green along A to B
  2026-05-02 delivered flag 60, batch "K-1", delivered type-1 2 m3
  2026-05-09 measured base of yard at C 120 mm below sill, at D 121 mm below sill, done bed of yard
  2026-05-10 measured gap 5 mm under 3 m straightedge in yard, measured slope 1:60 along A to B
}
`);
    expect(told).toEqual([]);
    expect(job.log.map(({ key, kind }) => `${key} ${kind}`)).toEqual([
      'log:2026-05-09-1 delivered',
      'log:2026-05-09-2 done',
      'log:2026-05-02-1 delivered',
      'log:2026-05-02-2 delivered',
      'log:2026-05-09-3 height',
      'log:2026-05-09-4 done',
      'log:2026-05-10-1 gap',
      'log:2026-05-10-2 slope'
    ]);
    expect(job.log[0]).toMatchObject({ thing: 'material:type-1', measure: 'kg', amount: { value: 4000 } });
    expect(job.log[1]).toMatchObject({ stage: 'base', areas: ['area:yard', 'area:green'], along: 'A to B' });
    expect(job.log[2]).toMatchObject({ thing: 'unit:flag', measure: '', batch: 'K-1' });
    expect(job.log[3]).toMatchObject({ measure: 'm3', amount: { value: 2 } });
    const heights = job.log[4]!;
    expect(heights.kind === 'height' && heights.at.map(({ name, z }) => [name, z])).toEqual([
      ['C', -0.12],
      ['D', -0.121]
    ]);
    expect(job.log[7]).toMatchObject({ slope: { value: 1 / 60 }, along: 'A to B' });
  });

  test('a soft spot belongs to the area that holds its middle, or that is said', async () => {
    const { job, told } = await read(`${SITE}${YARD}${GREEN}
log {
  2026-05-02 soft-spot 1 x 0.5 m, centre 2 m along B to C, 1 m left, 100 mm deeper, filled with type-1
  2026-05-02 soft-spot 1 x 0.5 m, centre 2 m along B to C, 1 m right, 150 mm deeper
  2026-05-02 soft-spot in green 1 x 0.5 m, centre 2 m along B to C, 1 m out, 0.2 m deeper
  2026-05-03 soft-spot 1 x 0.5 m, centre (1, 1) m, 100 mm deeper, filled flag-sand
}
`);
    expect(told).toEqual(['unknown-name flag-sand']);
    // What it would add to the yard or the green is not known.
    expect(job.areas).toEqual([]);
    expect(job.log.map(entry => entry.kind === 'soft-spot' && [entry.area, corners(entry.outline)[0]])).toEqual([
      ['area:yard', '4250,1500'],
      ['area:green', '6250,1500'],
      ['area:green', '6250,1500']
    ]);
  });

  test('it changes what an area digs, and nothing of its design', async () => {
    const spot = 'log { 2026-05-02 soft-spot 3 x 4 ft, centre (2, 2) m, 4 in deeper, filled type-1 }\n';
    const [without, with_] = [await read(SITE + YARD), await read(SITE + YARD + spot)];
    const [bare, dug] = [without.job.areas[0]!, with_.job.areas[0]!];
    expect({ ...dug, softSpots: [] }).toEqual(bare);
    expect(dug.softSpots).toMatchObject([{ deeper: { value: 4 * INCH }, material: { name: 'type-1' } }]);
    expect(corners(dug.softSpots[0]!.outline)[0]).toBe(
      `${Math.round((2 - 1.5 * FOOT) * 1000)},${Math.round((2 - 2 * FOOT) * 1000)}`
    );
  });
});

test('a walk goes left and right, and a shape lies left or right of a line', async () => {
  const { told } = await read(
    `${SITE}${area('yard', 'walk from (0, 0), right 5 m, up 4 m, left 5 m, back', 'all round meets lawn')}
box valve in yard { circle 300 mm across, centre 2 m along A to B, 1 m left }
`
  );
  expect(told).toEqual([]);
});

test('any numbers are read or told of, and never break the program', async () => {
  const number = fc.oneof(
    fc.integer({ min: -400, max: 400 }).map(count => `${count}`),
    fc.constantFrom('0', '1/3', '1e9', '99999999999999999999', '0.0000001', '5000', '-0')
  );
  const measure = fc.constantFrom('m', 'mm', 'ft', 'degrees', 'kg', 'm3', '%', '');
  const quantity = fc.oneof(
    { weight: 3, arbitrary: number.map(written => `${written} m`) },
    fc.tuple(number, measure).map(([written, what]) => `${written} ${what}`)
  );
  await fc.assert(
    fc.asyncProperty(fc.array(quantity, { minLength: 24, maxLength: 24 }), async all => {
      const next = all.values();
      const some = (): string => next.next().value!;
      const text = `${SITE}${YARD.replace(/  paving.*\n/, '')}
box valve in yard {
  rectangle ${some()} x ${some()}, centre ${some()} along A to B, ${some()} out
  lid ${some()} below sill
  in use, tray ${some()} deep
}
drain slot in yard {
  channel along A to B, ${some()} wide, ${some()} deep, on concrete ${some()} below
  grate ${some()} above sill at A and B
}
pipe feed {
  from valve to slot
  depth ${some()}
}
gate side {
  hinge ${some()} along B to C, ${some()} out, leaf ${some()} towards C, opens ${some()} into yard
  underside ${some()} below sill
  clearance ${some()}
}
door kitchen { opening ${some()} to ${some()} along A to B }
log {
  2026-05-02 soft-spot ${some()} x ${some()}, centre ${some()} along A to B, ${some()} out, ${some()} deeper
  2026-05-09 delivered flag ${some()}, measured base at C ${some()} below sill
}
`;
      const { told } = await read(text);
      expect(told.filter(line => /^(?:internal|text-unreadable)/.test(line))).toEqual([]);
    }),
    { seed: 20260418, numRuns: 40 }
  );
});
