import { measureNamed } from '../measures/measures.ts';

/** The largest face of a block as people write it: ASTM C936, section 5.1. A unit with a larger one is a slab. */
export const LARGEST_BLOCK_FACE_WORDS = '101 sq in (0.065 m2)';

/** The same, m2. */
export const LARGEST_BLOCK_FACE = 101 * measureNamed('sq in')!.factor.valueOf();
