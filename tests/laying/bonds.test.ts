// Each bond that ships, laid over a small rectangle from the corner, against counts worked by hand.
import { expect, it } from 'vitest';
import { countsOf, fieldOf, readAreas } from './spec.ts';

/** In square metres, and in metres for joints: what is left of rounding. */
const ROUNDING = 1e-9;

interface Field {
  readonly outline: string;
  readonly paving: string;
}

/** Pieces by hand, in square millimetres, as many of each as are named. */
interface ByHand {
  readonly counts: Readonly<
    Record<string, { readonly whole: number; readonly pieces?: Readonly<Record<string, number>> }>
  >;
  /** Millimetres. */
  readonly widestJoint: number;
}

async function expectLaid({ outline, paving }: Field, { counts, widestJoint }: ByHand): Promise<void> {
  const [area] = await readAreas(`area field { outline rectangle ${outline}\n paving ${paving}\n }`);
  const field = fieldOf(area!);
  const found = Object.fromEntries(
    Object.entries(countsOf(field)).map(([unit, { whole, pieces }]) => {
      const sizes: Record<string, number> = {};
      for (const piece of pieces) {
        const size = String(Number((piece * 1e6).toFixed(3)));
        sizes[size] = (sizes[size] ?? 0) + 1;
      }
      return [unit, { whole, pieces: sizes }];
    })
  );
  const byHand = Object.fromEntries(
    Object.entries(counts).map(([unit, { whole, pieces }]) => [unit, { whole, pieces: pieces ?? {} }])
  );
  expect(found).toEqual(byHand);
  expect(Math.abs(field.how!.widestJoint - widestJoint / 1000)).toBeLessThan(ROUNDING);
}

async function fieldIn(outline: string, paving: string): Promise<ReturnType<typeof fieldOf>> {
  const [area] = await readAreas(`area field { outline rectangle ${outline}\n paving ${paving}\n }`);
  return fieldOf(area!);
}

// 4.05 m are 20 blocks and 50 mm; 3 m are 30 courses.
it('stack bond; P-07 (exact arithmetic): 600 whole and 30 cuts of 50 x 100 mm', async () => {
  await expectLaid(
    { outline: '4.05 x 3.0 m', paving: 'block in stack-bond, joints 0 mm' },
    { counts: { block: { whole: 600, pieces: { 5000: 30 } } }, widestJoint: 0 }
  );
  // Three blocks and two joints are 606 mm, two courses and a joint 203 mm.
  await expectLaid(
    { outline: '606 x 203 mm', paving: 'block in stack-bond, joints 3 mm' },
    { counts: { block: { whole: 6 } }, widestJoint: 3 }
  );
});

// 15 courses of 20 blocks; 15 courses of 19 with a half at each end.
it('running bond, half; P-06 (exact arithmetic): 585 whole and 30 halves', async () => {
  await expectLaid(
    { outline: '4.0 x 3.0 m', paving: 'block in running-bond, joints 0 mm' },
    { counts: { block: { whole: 585, pieces: { 10000: 30 } } }, widestJoint: 0 }
  );
  // The second course is moved on by half of 203 mm: a piece of 98.5 mm, blocks from 101.5 and 304.5 mm, and 98.5 mm.
  await expectLaid(
    { outline: '606 x 203 mm', paving: 'block in running-bond, joints 3 mm' },
    { counts: { block: { whole: 5, pieces: { 9850: 2 } } }, widestJoint: 3 }
  );
});

// Courses begin at 0, 66 2/3 and 133 1/3 mm: three blocks; a third, two blocks and two thirds; two thirds, two, a third.
it('running bond, third', async () => {
  await expectLaid(
    { outline: '600 x 300 mm', paving: 'block in running-bond-third, joints 0 mm' },
    { counts: { block: { whole: 7, pieces: { 6666.667: 2, 13333.333: 2 } } }, widestJoint: 0 }
  );
});

// The drawing is four squares by four: a, b, c, d, e, f lie within it; g reaches over its top and h over its right edge,
// so that both halves of each are cut.
it('herringbone at 90 degrees', async () => {
  await expectLaid(
    { outline: '400 x 400 mm', paving: 'block in herringbone-90, joints 0 mm' },
    { counts: { block: { whole: 6, pieces: { 10000: 4 } } }, widestJoint: 0 }
  );
  // A square is 103 mm, for the block's width and a joint. Two are 206 mm: a block is 3 mm short of them with its joint,
  // so each end stands 1.5 mm back, against the side of the next block: joints of 4.5 mm. Four squares less a joint are
  // 409 mm; g and h lie in them by 98.5 mm at each end.
  await expectLaid(
    { outline: '409 x 409 mm', paving: 'block in herringbone-90, joints 3 mm' },
    { counts: { block: { whole: 6, pieces: { 9850: 4 } } }, widestJoint: 4.5 }
  );
});

it('herringbone of 200 x 100 mm with 3 mm joints takes 47.1 blocks a square metre', async () => {
  // Two squares of 103 mm a block: 1 / 0.021218 m2.
  const { laid } = await fieldIn('20.6 x 20.6 m', 'block in herringbone-90, joints 3 mm');
  expect((laid.unitArea / 0.02 / 20.6 ** 2).toFixed(1)).toBe('47.1');
});

it('P-08 (exact arithmetic): herringbone over 4.0 x 3.0 m, whole and cut together 12.000 m2', async () => {
  const { laid } = await fieldIn('4.0 x 3.0 m', 'block in herringbone-90, joints 0 mm');
  const whole = laid.wholes.reduce((sum, { count }) => sum + count, 0);
  const pieces = laid.cuts.flatMap(cut => cut.pieces.map(({ area }) => area));
  expect(Math.abs(whole * 0.02 + pieces.reduce((sum, area) => sum + area, 0) - 12)).toBeLessThan(ROUNDING);
  // 600 blocks' worth; every cut is a half.
  expect(pieces.every(area => Math.abs(area - 0.01) < ROUNDING)).toBe(true);
  expect(whole + pieces.length / 2).toBe(600);
});

// In squares turned by 45 degrees the rectangle is the diamond (0, 0), (2, -2), (4, 0), (2, 2), 8 squares. By square, with
// the letters of the drawing from its lower left corner on: all of (1, 0) a, (2, 0) g, (1, -1) f, (2, -1) g and half of
// (0, 0) a, (3, 0) d, (1, 1) b, (2, 1) b, (0, -1) h, (3, -1) h, (1, -2) f, (2, -2) c. So g is whole; a and f keep one and
// a half squares, b two halves that hang together, c, d and both h half a square.
it('herringbone at 45 degrees', async () => {
  await expectLaid(
    { outline: '282.842712475 x 282.842712475 mm', paving: 'block in herringbone-45, joints 0 mm' },
    { counts: { block: { whole: 1, pieces: { 15000: 2, 10000: 1, 5000: 4 } } }, widestJoint: 0 }
  );
});

// Pairs that stand and pairs that lie, in turn: eight blocks in four squares by four, none over the edge. A fifth column
// holds one that stands whole and two that lie by half.
it('basket weave', async () => {
  await expectLaid(
    { outline: '500 x 400 mm', paving: 'block in basket-weave, joints 0 mm' },
    { counts: { block: { whole: 9, pieces: { 10000: 2 } } }, widestJoint: 0 }
  );
  // As in herringbone: an end stands 1.5 mm back from the side that it meets.
  await expectLaid(
    { outline: '409 x 409 mm', paving: 'block in basket-weave, joints 3 mm' },
    { counts: { block: { whole: 8 } }, widestJoint: 4.5 }
  );
});

// Five squares by five: a, b, d whole; c over the right edge and e over the top, half each way; f to j one square each.
it('pinwheel', async () => {
  await expectLaid(
    { outline: '500 x 500 mm', paving: 'slab-200, slab-100 in pinwheel, joints 0 mm' },
    {
      counts: { 'slab-200': { whole: 3, pieces: { 20000: 4 } }, 'slab-100': { whole: 5 } },
      widestJoint: 0
    }
  );
  // Two squares of 103 mm are 3 mm more than a large slab with its joint: two large ones side by side stand 6 mm apart.
  await expectLaid(
    { outline: '512 x 512 mm', paving: 'slab-200, slab-100 in pinwheel, joints 3 mm' },
    {
      counts: { 'slab-200': { whole: 3, pieces: { 19700: 4 } }, 'slab-100': { whole: 5 } },
      widestJoint: 6
    }
  );
});

// Four squares by four of 300 mm: a, e large; b, d, f oblong; c, g small. A fifth column holds half of a, and f whole.
it('three sizes', async () => {
  await expectLaid(
    { outline: '1500 x 1200 mm', paving: 'slab-600, plank-600, slab-300 in three-sizes, joints 0 mm' },
    {
      counts: {
        'slab-600': { whole: 2, pieces: { 180000: 1 } },
        'plank-600': { whole: 4 },
        'slab-300': { whole: 2 }
      },
      widestJoint: 0
    }
  );
  await expectLaid(
    { outline: '1209 x 1209 mm', paving: 'slab-600, plank-600, slab-300 in three-sizes, joints 3 mm' },
    {
      counts: { 'slab-600': { whole: 2 }, 'plank-600': { whole: 3 }, 'slab-300': { whole: 2 } },
      widestJoint: 6
    }
  );
});
