// What stands beside the areas, and heights where several things meet: each case from the text of a job to its numbers.
import { describe, expect, it } from 'vitest';
import { levelSheet } from '../../language/views/text/level-sheet/level-sheet.ts';
import { labelOf } from '../../language/views/text/labels.ts';
import { pipeTopAt } from '../../language/quantities/pipes.ts';
import type { Evaluation } from '../../language/paving.ts';
import type { JobQuantities } from '../../language/quantities/contract.ts';
import { evaluated } from '../language/in-memory.ts';

const plain = (text: string): string => text;
const COLOURS = { strong: plain, faint: plain, error: plain, warning: plain, note: plain };

interface Told {
  readonly evaluation: Evaluation;
  readonly quantities: JobQuantities;
  readonly ids: readonly string[];
  readonly sheet: string;
}

async function told(text: string, buying = ''): Promise<Told> {
  const evaluation = await evaluated(`job "Case" { rules britain${buying} }\n${text}`);
  const { numbers, job, findings } = evaluation;
  expect(findings.filter(({ severity }) => severity === 'error').map(({ message }) => message)).toEqual([]);
  return {
    evaluation,
    quantities: numbers!.quantities,
    ids: findings.map(({ id }) => id),
    sheet: levelSheet('job.paving', job!, numbers!, COLOURS)
  };
}

const CORNERS = `
  point A at (0, 0) m
  point B at (4, 0) m
  point C at (4, 4) m
  point D at (0, 4) m`;

function square(finish: string, edges = 'all round meets garden-wall'): string {
  return `${CORNERS}
  area yard {
    outline A to B to C to D
    traffic foot
    finish  ${finish}
    base    type-1 100 mm
    edges   { ${edges} }
  }`;
}

describe('a pipe', () => {
  const pipe = (middle: string): string => `
    site { soil sand, benchmark mark }
    ${square('0 m below mark')}
    point P at (0, 2) m
    point Q at (4, 2) m
    point M at (2, 2) m
    heights {
      ground A 0 m below mark  B 0 m below mark  C 0 m below mark  D 0 m below mark
      ground P 0 m below mark  Q 0 m below mark  M ${middle}
    }
    pipe feed { 
      from P to Q
      depth 500 mm
     }`;

  it.each([
    ['straight between its ends, over a hollow', '200 mm below mark', -0.5],
    ['so deep below a rise', '200 mm above mark', -0.3]
  ])('lies at the higher of both readings: %s', async (_, middle, top) => {
    const { evaluation, quantities } = await told(pipe(middle));
    const { pipes, areas } = evaluation.job!;
    expect(pipeTopAt(pipes[0]!, areas[0]!.site, { x: 2, y: 2 })).toBeCloseTo(top, 9);
    const nearest = quantities.pipes![0]!;
    expect(nearest.top).toBeCloseTo(top, 3);
    expect(nearest.nearestAt![0]).toBeCloseTo(2, 2);
  });
});

describe('soft spots', () => {
  const spots = (more: string): string => `
    site { soil sand, benchmark mark, ground 0 m below mark }
    ${square('0 m below mark')}
    box old in yard {
      rectangle 0.2 x 0.2 m, centre (2, 2) m
      lid 0 m below mark
      out of use, cut down and bury
    }
    log {
      ${more}
    }`;
  const SHALLOW = '2026-05-02 soft-spot in yard 2 x 1 m, centre 2 m along A to B, 2 m out, 100 mm deeper';
  const DEEP = '2026-05-03 soft-spot in yard 1 x 1 m, centre 2 m along A to B, 2 m out, 300 mm deeper';

  it('over each other count once, the deeper first, in volume and in height', async () => {
    const { quantities, ids } = await told(spots(`${SHALLOW}\n${DEEP}`));
    const { softSpots, levels } = quantities.areas[0]!;
    const volumes = softSpots!.map(({ bankVolume }) => bankVolume).sort((a, b) => a - b);
    expect(volumes[0]).toBeCloseTo(0.1, 6);
    expect(volumes[1]).toBeCloseTo(0.3, 6);
    expect(levels!.find(({ at }) => at === 'soft spot')!.digBottom).toBeCloseTo(-0.4, 9);
    expect(ids).not.toContain('soft-spot-outside-dig');
  });

  it('wholly within a deeper one are not told to lie outside the dig', async () => {
    const within = '2026-05-04 soft-spot in yard 0.5 x 0.5 m, centre 2 m along A to B, 2 m out, 200 mm deeper';
    const { quantities, ids } = await told(spots(`${within}\n${DEEP}`));
    expect(Math.min(...quantities.areas[0]!.softSpots!.map(({ bankVolume }) => bankVolume))).toBe(0);
    expect(ids).not.toContain('soft-spot-outside-dig');
  });

  it('a box under one is told cut down to its bottom', async () => {
    const { quantities, sheet } = await told(spots(DEEP));
    expect(quantities.boxes![0]!.cutDown).toBeCloseTo(0.1, 9);
    expect(sheet).toContain('cut down by at least 400 mm, to the bottom of the soft spot');
  });
});

describe('steps', () => {
  const beside = (existing: string, rest: string): string => `
    site { soil sand, benchmark mark, ground 0 m below mark }
    ${square('0 m below mark', 'A to B meets kerb\n the rest meets garden-wall')}
    point K at (1, 0) m
    point L at (3, 0) m
    existing kerb
    heights { ${existing} }
    ${rest}`;

  it('to what is measured are told between its outermost heights, not past them', async () => {
    const { quantities } = await told(beside('kerb K 20 mm above mark  L 40 mm above mark', ''));
    const edge = quantities.areas[0]!.edges[0]!;
    expect(edge.steps!.map(({ at }) => at)).toEqual([1, 3]);
    expect(edge.stepUp).toBeCloseTo(0.04, 9);
  });

  it('to a single height are told at its place alone', async () => {
    const { quantities } = await told(beside('kerb K 20 mm above mark', ''));
    const { steps } = quantities.areas[0]!.edges[0]!;
    expect(steps).toHaveLength(1);
    expect(steps![0]!.at).toBeCloseTo(1, 9);
    expect(steps![0]!.step).toBeCloseTo(0.02, 9);
  });

  it('to an area beside part of a side are told as far as that lies there', async () => {
    const { quantities } = await told(`
      site { soil sand, benchmark mark, ground 0 m below mark }
      ${square('0 m below mark', 'A to B meets strip\n the rest meets garden-wall')}
      point E at (1, 0) m
      point F at (3, 0) m
      point G at (3, -1) m
      point H at (1, -1) m
      area strip {
        outline H to G to F to E
        traffic foot
        finish  0 m below mark at E, falling 1:50 along E to F
        base    type-1 100 mm
        edges   { F to E meets yard
 the rest meets garden-wall }
      }`);
    const { steps } = quantities.areas.find(({ name }) => name === 'yard')!.edges[0]!;
    expect(steps!.at(0)!.at).toBeCloseTo(1, 9);
    expect(steps!.at(-1)!.at).toBeCloseTo(3, 9);
    expect(steps!.at(-1)!.step).toBeCloseTo(-0.04, 9);
  });
});

it('a route over a bowed rim keeps its lip', async () => {
  const { quantities } = await told(`
    site { soil sand, benchmark mark, ground 0 m below mark }
    ${CORNERS}
    point K at (2, -0.5) m
    point X at (2, -2) m
    point Y at (2, 2) m
    line way X to Y
    existing kerb
    heights {
      kerb A 20 mm above mark  B 20 mm above mark  K 20 mm above mark }
    area yard {
      outline A to B bowed 500 mm out to C to D
      traffic foot
      finish  0 m below mark
      base    type-1 100 mm
      edges   { A to B meets kerb
 the rest meets garden-wall }
    }
    route access along way`);
  expect(quantities.areas[0]!.edges[0]!.steps).toBeDefined();
  expect(quantities.routes![0]!.lip).toBeCloseTo(0.02, 9);
});

/** A strip below the yard, which falls towards it. */
function yardAndStrip(strip: string): string {
  return `
    site { soil sand, benchmark mark, ground 0 m below mark }
    ${CORNERS}
    point E at (0, -1) m
    point F at (4, -1) m
    area yard {
      outline A to B to C to D
      traffic foot
      finish  0 m below mark along C to D, falling 1:50 away from C to D
      base    type-1 100 mm
      edges   { A to B meets strip
 C to D meets house-wall
 the rest meets garden-wall }
    }
    area strip {
      outline E to F to B to A
      traffic foot
      ${strip}
      base    type-1 100 mm
      edges   { B to A meets yard
 the rest meets garden-wall }
    }`;
}

describe('where water goes', () => {
  it.each([
    ['without its finish', yardAndStrip('')],
    ['half written', yardAndStrip('finish')],
    ['half written and called steps', yardAndStrip('finish').replaceAll('strip', 'steps')]
  ])('nothing is known past a neighbour %s', async (_, text) => {
    const { findings, numbers } = await evaluated(`job "Case" { rules britain }\n${text}`);
    expect(findings.map(({ id }) => id)).not.toContain('low-place-without-drain');
    expect(numbers!.quantities.water!.find(({ area }) => area === 'area:yard')!.lowPlaces).toEqual([]);
  });

  it('what stays in a pool over two areas is told once, and not as running over a side', async () => {
    const { quantities, sheet } = await told(
      yardAndStrip('finish 0.07 m below mark along E to F, falling 1:100 away from E to F')
    );
    const pools = quantities.water!.flatMap(({ lowPlaces }) => lowPlaces);
    expect(pools).toHaveLength(1);
    expect(pools[0]!.drained).toBeCloseTo(20, 6);
    expect(sheet).toContain('stays in a low place');
    expect(sheet).not.toMatch(/over (A to B|B to A)/);
  });
});

it('units delivered stand against those wanted, with breakage and what is put by', async () => {
  const { quantities } = await told(
    `
    ${CORNERS}
    unit block { size 200 x 100 x 60 mm }
    area yard {
      outline A to B to C to D
      traffic foot
      paving  block in running-bond, joints 0 mm
      bed     sharp-sand 30 mm
      base    type-1 100 mm
      edges   { all round meets garden-wall }
    }
    log { 2026-05-02 delivered block 500 }`,
    ', breakage 10 %, keep 50 block'
  );
  const [unit] = quantities.units;
  expect(unit!.toBuy).toBeGreaterThan(unit!.unitsUsed! + 50);
  expect(quantities.deliveries![0]!).toMatchObject({ needed: unit!.toBuy, short: unit!.toBuy! - 500 });
});

describe('ground that was not measured', () => {
  const yards = (site: string, heights: string): string => `
    site { soil sand, benchmark mark${site} }
    ${square('0 m below mark', 'all round meets garden-wall')}
    point E at (10, 0) m
    point F at (12, 0) m
    point G at (12, 2) m
    point H at (10, 2) m
    area patch {
      outline E to F to G to H
      traffic foot
      finish  0 m below mark
      base    type-1 100 mm
      edges   { all round meets garden-wall }
    }
    ${heights}`;

  it('is told once for the job, with the areas', async () => {
    const { evaluation } = await told(
      yards('', 'heights { ground A 0 m below mark  B 0 m below mark  D 50 mm below mark }')
    );
    const messages = evaluation.findings.filter(({ id }) => id === 'ground-not-measured').map(({ message }) => message);
    expect(messages).toHaveLength(1);
    expect(messages[0]).toContain('of the dig of yard and ');
    expect(messages[0]).toContain('of the dig of patch');
  });

  it('is not told where the site says how high it lies all over', async () => {
    expect((await told(yards(', ground 50 mm below mark', ''))).ids).not.toContain('ground-not-measured');
  });
});

it('workings name what stands beside the areas, and never a key', async () => {
  const { evaluation, quantities } = await told(`
    site { soil sand, benchmark mark }
    ${square('0 m below mark')}
    box valves in yard {
      rectangle 0.2 x 0.2 m, centre (2, 2) m
      lid 0 m below mark
      out of use, cut down and bury
    }
    heights by laser, mark reads 1 m { ground A 1 m  B 1.02 m  C 1 m  D 1 m }
    log {
      2026-05-02 soft-spot in yard 1 x 1 m, centre 2 m along A to B, 2 m out, 300 mm deeper
      2026-05-03 measured base at C 0 m below mark
    }`);
  expect(labelOf('/boxes/0/cutDown', quantities)).toBe('box valves: Cut down by');
  expect(labelOf('/boxes/0/cutDownAtMiddle', quantities)).toBe('box valves: Cut down at the middle');
  expect(labelOf('/areas/0/levels/2/digBottom', quantities)).toMatch(/^yard, at C: /);
  expect(labelOf('/areas/0/softSpots/0/bankVolume', quantities)).toMatch(/^yard, soft spot: /);
  expect(labelOf('/heights/1/height', quantities)).toBe('ground at B: Height');
  for (const pointer of Object.keys(evaluation.numbers!.workings))
    expect(labelOf(pointer, quantities), pointer).not.toMatch(/: [a-z]/);
});

it('a box is taped from any two points where none has coordinates', async () => {
  const { quantities } = await told(`
    site { soil sand, benchmark mark, ground 0 m below mark }
    point A at (0, 0) m
    point B at 4 m from A at 0 degrees
    point C taped 4 m from B, 5.656854 m from A, left of A to B
    area yard {
      outline A to B to C
      traffic foot
      finish  0 m below mark
      base    type-1 100 mm
      edges   { all round meets garden-wall }
    }
    box valves in yard {
      rectangle 0.2 x 0.2 m, centre (3, 1) m
      lid 0 m below mark
      out of use, cut down and bury
    }`);
  expect(quantities.boxes![0]!.tapedFrom.map(({ point }) => point)).toEqual(['A', 'C']);
});
