import type { System } from '../job/job.ts';

/** A value as one writes it, in the one system and the other. */
export type BothWays = Readonly<Record<System, string>>;

/** Values that are often right where nothing is known yet: common practice, and there to be measured and changed. */
export const USUAL_VALUES = {
  topsoil: { imperial: '5 in', metric: '100 mm' },
  // 2 in or more below a sill where snow lies, else water comes in; where the
  // finish has fallen over some 4 m (16 ft) it lies about as high as the ground beside it.
  finishBelowSill: { imperial: '2 1/2 in', metric: '65 mm' },
  groundBelowSill: { imperial: '6 1/4 in', metric: '135 mm' },
  bed: { imperial: '1 in', metric: '30 mm' },
  joint: { imperial: '1/8 in', metric: '3 mm' },
  unitName: { imperial: 'slab-16', metric: 'block' },
  unitSize: { imperial: '15 7/8 x 15 7/8 x 2 in', metric: '200 x 100 x 60 mm' },
  kerbSize: { imperial: '36 x 2 x 6 in', metric: '915 x 50 x 150 mm' },
  haunchSize: { imperial: '4 x 3 in', metric: '100 x 75 mm' }
} as const satisfies Readonly<Record<string, BothWays>>;
