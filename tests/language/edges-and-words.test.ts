import fc from 'fast-check';
import { expect, test } from 'vitest';
import { areaOf } from '../../language/geometry/index.ts';
import type { Area, Job } from '../../language/job/job.ts';
import { lower, type Lowered } from '../../language/lowering/lower.ts';
import { Paving } from '../../language/paving.ts';
import { inMemory } from './in-memory.ts';

const FOOT = 0.3048;
const INCH = 0.0254;
const YARD = `
site { soil clay, benchmark step, ground level with step }
point A at (0, 0)
point B at (20 ft, 0)
point C at (20 ft, 12 ft)
point D at (0, 12 ft)
`;

/** What the text says, and its faults as `id: message`. */
function read(text: string): { job: Job; faults: string[] } {
  const { job, findings } = lowered(text);
  return { job: job!, faults: findings.map(({ id, message }) => `${id}: ${message}`) };
}

// What ships is read once.
const paving = new Paving(inMemory({}));

function lowered(text: string): Lowered {
  paving.setText('job.paving', text);
  return lower(paving.look('job.paving')!.project);
}

/** A terrace of 20 by 12 ft whose left side, D to A, meets an old walk. */
function terrace(walk: string, outline = 'A to B to C to D', more = ''): { area: Area; faults: string[] } {
  const { job, faults } = read(`job "T" { rules north-america }${YARD}
existing old-walk { ${walk} }
area terrace {
  outline ${outline}
  traffic foot
  finish level with step
  edges {
    D to A   meets old-walk, flush
    the rest meets lawn, edging spiked-strip
  }
${more}}`);
  return { area: job.areas[0]!, faults };
}

const inches = (lengths: readonly number[]): number[] => lengths.map(length => Math.round((length / INCH) * 100) / 100);

/** The corners of an area, inches. */
const corners = ({ outline }: Area): string[] => outline.map(({ from }) => inches([from.x, from.y]).join(', '));

// ---- edges measured by offsets ----

test('offsets into what is there take the place of the side, and make the area larger', () => {
  const { area, faults } = terrace('edge D to A, offsets into it 0 at D, 3/8 in at 8 ft, 0 at A');
  expect(faults).toEqual([]);
  expect(corners(area)).toEqual(['0, 0', '240, 0', '240, 144', '0, 144', '-0.38, 48']);
  // A triangle on the side: half of 12 ft by 3/8 in.
  expect(areaOf(area.outline)).toBeCloseTo(240 * FOOT * FOOT + (12 * FOOT * 0.375 * INCH) / 2, 9);
  expect(area.edges.map(({ name }) => name)).toEqual(['A to B', 'B to C', 'C to D', 'D to A', 'D to A']);
  expect(area.edges[4]).toBe(area.edges[3]);
});

test('offsets out of it make the area smaller; the edge may be named from its other end, the area drawn the other way', () => {
  const edge = 'edge A to D, offsets out of it 0 at A, 1 in at 3 ft, 2 in at 6 ft, 0 at D';
  expect(corners(terrace(edge).area)).toEqual(['0, 0', '240, 0', '240, 144', '0, 144', '2, 72', '1, 36']);
  expect(corners(terrace(edge, 'D to C to B to A').area)).toEqual([
    '0, 144',
    '240, 144',
    '240, 0',
    '0, 0',
    '1, 36',
    '2, 72'
  ]);
});

test('an edge that begins off its corner draws out the side beside it', () => {
  const { area } = terrace('edge D to A, offsets into it 1 in at D, 0 at A');
  expect(corners(area)).toEqual(['0, 0', '240, 0', '240, 144', '-1, 144']);
});

test('an edge without offsets only tells where it is', () => {
  const { area, faults } = terrace('edge D to A');
  expect(faults).toEqual([]);
  expect(area.outline).toHaveLength(4);
});

test.each([
  ['0 at D, 1 in at 8 ft', 'A to B to C to D', 'Give the offsets at both ends too'],
  ['0 at D', 'A to B to C to D', 'Give the offsets at both ends too'],
  ['0 at D, 1 in at 8 ft, 1 in at 7 ft, 0 at A', 'A to B to C to D', 'Give the offsets in their order from D'],
  ['0 at D, 1 in at 13 ft, 0 at A', 'A to B to C to D', 'This lies beyond the edge, which is 12 ft long'],
  ['0 at D, 1 in at 8 ft, 0 at A', 'A to B to C to D, rounded 2 ft at D', 'Offsets are taken from a straight line'],
  ['0 at D, 1 in at 8 ft, 0 at A', 'A to B to C to D, rounded 2 ft at A', 'Offsets are taken from a straight line'],
  ['0 at D, 1 in at 8 ft, 0 at A', 'A to B to C to D to A bowed 1 ft', 'Offsets are taken from a straight line']
])('offsets %s of %s: %s', (offsets, outline, message) => {
  const { area, faults } = terrace(`edge D to A, offsets into it ${offsets}`, outline);
  expect(area).toBeUndefined();
  expect(faults).toEqual([expect.stringContaining(`offsets-do-not-fit: ${message}`)]);
});

test('courses run along the longest part of a measured side, and begin at its corner', () => {
  const walk = 'edge D to A, offsets into it 0 at D, 1 in at 5 ft, 0 at A }\nunit own { size 8 x 4 x 2 in';
  const start = '  paving own in running-bond\n  start along D to A\n';
  const { area: laid } = terrace(walk, 'A to B to C to D', start);
  expect(laid.start.along).toBe(4);
  expect(inches([laid.start.from!.x, laid.start.from!.y])).toEqual([0, 144]);
});

// ---- strips ----

function strip(widths: string, line = 'A to B to C, rounded 3 ft at B'): { area: Area; faults: string[] } {
  const { job, faults } = read(`job "S" { rules north-america }${YARD.replace(/point D.*\n/, '')}
line spine ${line}
area walk {
  outline along spine, ${widths}
  traffic foot
  finish level with step
  edges {
    right, left meets lawn, edging spiked-strip, standing 1 in up
    start       meets house-wall, siding 8 in above step, weep-holes 6 in above step, footing 2 ft below step
    end         meets garden-wall, solid masonry
  }
}`);
  return { area: job.areas[0]!, faults };
}

test('an outline along a line has a right and a left side, an end and a start', () => {
  const { area, faults } = strip('4 ft wide');
  expect(faults).toEqual([]);
  expect(area.edges.map(({ name }) => name).join(' ')).toBe('right right right end left left left start');
  // As long as its line, 17 ft, a quarter of a circle, 9 ft; as wide all along.
  expect(areaOf(area.outline)).toBeCloseTo((26 + (3 * Math.PI) / 2) * 4 * FOOT * FOOT, 9);
  const [right, , , end, , , , start] = area.edges;
  expect(right!.standing!.value).toBeCloseTo(INCH, 9);
  expect(end!.wall).toEqual({ solid: true });
  expect(start!.wall!.solid).toBe(false);
  expect(inches([start!.wall!.siding!.above.value, start!.wall!.footing!.above.value])).toEqual([8, -24]);
  expect(start!.wall!.dampCourse).toBeUndefined();
});

test('a strip widens from station to station', () => {
  const { area } = strip('4 ft wide at 0, 6 ft wide at 10 ft', 'A to B');
  expect(areaOf(area.outline)).toBeCloseTo((5 * 10 + 6 * 10) * FOOT * FOOT, 9);
});

test.each([
  ['8 ft wide', 'The curve of spine that begins 17 ft along it is too tight'],
  ['0 wide', 'A strip without any width'],
  ['4 ft wide, 5 ft wide at 10 ft', 'Say how far along the line each of several widths is'],
  ['4 ft wide at 10 ft, 5 ft wide at 10 ft', 'Give the widths in their order']
])('a strip %s: %s', (widths, message) => {
  expect(strip(widths).faults).toEqual([expect.stringContaining(`strip-does-not-fit: ${message}`)]);
});

// ---- what a side meets ----

test('a side may meet a drain; on what is there stand the heights that were taken', () => {
  const { job, faults } = read(`job "D" { rules britain }${YARD}
heights { old-walk A level with step D 2 in below step }
existing old-walk
drain channel {
  channel along A to B, 130 mm wide
  grate 5 mm below step
}
area drive {
  outline A to B to C to D
  traffic foot
  finish level with step
  edges {
    A to B   meets channel
    D to A   meets old-walk, flush, concrete behind the last course
    the rest meets house-wall
  }
}`);
  expect(faults).toEqual([]);
  const [drain, wall, , walk] = job.areas[0]!.edges;
  expect(drain!.meets).toEqual({ name: 'channel', drain: 'drain:channel', openGround: false, holds: true });
  expect(wall!.meets!.existing).toBeUndefined();
  expect(walk).toMatchObject({ flush: true, backed: true, meets: { existing: 'existing:old-walk' } });
  expect(walk!.meets!.heights!.map(({ name, z }) => [name, ...inches([z])])).toEqual([
    ['A', 0],
    ['D', -2]
  ]);
});

// ---- what is broken out ----

test('old paving that is broken out belongs to the areas that it touches, its density as usual unless said', () => {
  const slab = (corner: string, more: string): string =>
    `existing slab-${corner} { outline rectangle 1 x 1 m, corner (${corner}, 1) m, thickness 100 mm${more}, broken out }\n`;
  const { job, faults } = read(
    `job "B" { rules britain }\n${slab('1', '')}${slab('50', '')}${slab('4', ', density 2.4 t/m3')}${slab('2', '').replace(', broken out', '')}
area path { outline rectangle 5 x 3 m
 traffic foot
 edges { all round meets house-wall } }`
  );
  expect(faults.filter(fault => !fault.startsWith('ground') && !fault.startsWith('finish'))).toEqual([
    'never-used: The existing thing `slab-2` is never used.'
  ]);
  expect(job.areas[0]!.brokenOut.map(({ name, thickness, density }) => [name, thickness.value, density.value])).toEqual(
    [
      ['slab-1', 0.1, 2300],
      ['slab-4', 0.1, 2400]
    ]
  );
  expect(job.areas[0]!.brokenOut[0]!.density.assumed).toBeDefined();
});

test('an area has no numbers while what is broken out in it has no thickness', () => {
  const slab = (x: number): string => `existing old { outline rectangle 1 x 1 m, corner (${x}, 0) m, broken out }`;
  const area = 'area path { outline rectangle 5 x 3 m\n traffic foot\n edges { all round meets house-wall } }';
  expect(read(`job "B" { rules britain }\n${slab(1)}\n${area}`).job.areas).toHaveLength(0);
  expect(read(`job "B" { rules britain }\n${slab(50)}\n${area}`).job.areas).toHaveLength(1);
});

// ---- words of the job, of units and materials, of the sheet ----

test('the job says how it is dug and carted, and its notes', () => {
  const { job, faults } = read(
    'job "C" { rules britain, dig by machine, 1.5 t, access 0.9 m wide, barrow run 12 m, barrow-load 0.1 m3, truck-load 8 t, note "One", note "Two" }'
  );
  expect(faults).toEqual([]);
  const { digBy, machine, width, run, barrow, truck } = job.carting;
  expect([digBy, machine!.value, width!.value, run!.value, barrow.value, truck!.value]).toEqual([
    'machine',
    1500,
    0.9,
    12,
    0.1,
    8000
  ]);
  expect(job.notes).toEqual(['One', 'Two']);
  const usual = read('job "C" { rules britain, dig by hand }').job.carting;
  expect(usual).toMatchObject({ digBy: 'hand', barrow: { value: 0.085 } });
  expect(usual.barrow.assumed).toBeDefined();
});

test.each([
  ['string 6 in above the finish', { above: { written: '6 in' } }],
  ['string 6 in above step', { level: { benchmark: 'step', above: { written: '6 in' } } }],
  ['string level with step', { level: { benchmark: 'step' } }]
])('level sheet: %s', (said, string) => {
  const { job, faults } = read(`job "L" { rules north-america }
site { benchmark step }
level-sheet { every 6 ft, printed in decimal-feet, ${said}, offset-points 2 ft outside the dig }`);
  expect(faults.filter(fault => !fault.startsWith('ground'))).toEqual([]);
  expect(job.levelSheet).toMatchObject({ printed: 'decimal-feet', string });
  expect(job.levelSheet.every!.value).toBeCloseTo(6 * FOOT, 9);
  expect(job.levelSheet.offsetPoints!.value).toBeCloseTo(2 * FOOT, 9);
});

test('units set by hand; kerbs with pieces for curves, a wait and a height; topsoil kept, leave to build, break lines', () => {
  const { job, faults } = read(`job "K" { rules britain }
site { topsoil 150 mm, kept for backfill, planning "own soakaway", break-line A to B to C, benchmark step 10 m }
heights { ground A 10 B 10 C 9 m }
point A at (0, 0)
point B at (5, 0) m
point C at (5, 5) m
unit flag { size 600 x 600 x 40 mm, set by hand }
material kerb { role edging, size 915 x 100 x 200 mm, curve-pieces 305 mm, wait 3 days before compacting against it }
area path { outline A to B to C
 traffic foot
 finish 10 m
 paving flag in stack-bond
 edges { all round meets lawn, edging kerb } }`);
  expect(faults).toEqual([]);
  const [area] = job.areas;
  expect(area!.paving!.units[0].setByHand).toBe(true);
  const { curvePieces, wait, height } = area!.edges[0]!.edging!;
  expect([curvePieces!.value, wait!.value, height!.value]).toEqual([0.305, 3 * 24 * 3600, 0.2]);
  expect(area!.site).toMatchObject({ topsoilKept: true, planning: 'own soakaway' });
  expect(area!.site.heights!.breakLines).toEqual([
    [
      { x: 0, y: 0 },
      { x: 5, y: 0 },
      { x: 5, y: 5 }
    ]
  ]);
});

// ---- anything ----

test('any offsets and widths give an outline or a fault', () => {
  const number = fc.oneof(fc.integer({ min: -2, max: 20 }), fc.double({ min: 0, max: 13, noNaN: true }));
  const measure = fc.constantFrom('', ' ft', ' in', ' m', ' lb');
  const length = fc.tuple(number, measure).map(([value, unit]) => `${Number(value.toFixed(3))}${unit}`);
  const at = fc.oneof(length, fc.constantFrom('A', 'B', 'C', 'D', 'X'));
  const offsets = fc.array(
    fc.tuple(length, at).map(both => both.join(' at ')),
    { minLength: 1, maxLength: 5 }
  );
  const widths = fc.array(
    fc.tuple(length, length).map(both => both.join(' wide at ')),
    { minLength: 1, maxLength: 4 }
  );
  const outline = fc.constantFrom('A to B to C to D', 'D to C to B to A', 'A to C to B to D', 'A to B to D bowed 1 ft');
  fc.assert(
    fc.property(offsets, widths, outline, fc.constantFrom('into', 'out of'), (off, wide, shape, way) => {
      const { job, findings } = lowered(`job "T" { rules north-america }${YARD}
line spine A to B to C, rounded 3 ft at B
existing walk { edge D to A, offsets ${way} it ${off.join(', ')} }
area a { outline ${shape}
 traffic foot
 edges { D to A meets walk } }
area b { outline along spine, ${wide.join(', ')}
 traffic foot
 edges { left, right, start, end meets lawn } }`);
      const isFaulty = findings.some(({ severity }) => severity === 'error');
      expect(isFaulty || job!.areas.length === 2).toBe(true);
      for (const { outline: loop, edges } of job!.areas) {
        expect(edges).toHaveLength(loop.length);
        loop.forEach(({ to }, side) => {
          const { from } = loop[(side + 1) % loop.length]!;
          expect(Math.hypot(to.x - from.x, to.y - from.y)).toBeLessThan(1e-6);
        });
      }
    }),
    { seed: 6, numRuns: 200 }
  );
});

test('a height on a wall hangs from a benchmark that is called as the mark is', () => {
  const { job, faults } = read(`job "T" { rules britain }
site { soil clay, benchmark damp-course, ground 150 mm below damp-course }
area terrace {
  outline rectangle 6 x 4 m
  traffic foot
  finish  150 mm below damp-course
  edges {
    near     meets house-wall, damp-course level with damp-course, footing 600 mm below damp-course
    the rest meets lawn
  }
}`);
  expect(faults).toEqual([]);
  const { dampCourse, footing } = job.areas[0]!.edges[0]!.wall!;
  expect([dampCourse!.above.value, footing!.above.value]).toEqual([0, -0.6]);
});
