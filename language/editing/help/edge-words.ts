import { HEIGHT_WORDS } from './height-words.ts';
import { help, together, type Helps } from './help.ts';

const LEG = help('A side of a walked outline, by its number', '`leg 3 meets lawn`, `legs 2 to 4 meets lawn`');
const SET = help(
  'When the edging is set: before laying or after',
  '`edging kerb set before laying`. Kerbs in concrete go first; strips spiked into the base may go last. Noted only: the numbers are the same.'
);

/** Words of the lines inside `edges`. */
export const EDGE_WORDS: Helps = {
  near: help('The side of a rectangle that its first figure runs along'),
  right: help('The side of a rectangle to the right, seen from the near side'),
  far: help('The side of a rectangle across from the near side'),
  left: help('The side of a rectangle to the left, seen from the near side'),
  ...together('all round', help('Every side, all the way round', '`all round meets lawn, edging spiked-strip`')),
  ...together('the rest', help('Every side that is not said otherwise', '`the rest meets lawn, edging spiked-strip`')),
  leg: LEG,
  legs: LEG,
  to: help('From point to point, or from leg to leg', '`A to B to C meets lawn`, `legs 2 to 4 meets lawn`'),
  meets: help(
    'What stands at this side: a wall, lawn, another area, …',
    'A wall, kerb or paving ends the base and holds the units. At lawn, planting or gravel the base runs on, and the side needs edging.'
  ),
  flush: help('The finish is as high as what the side meets', 'Noted only: the numbers are the same.'),
  edging: help(
    'The edging that holds the units at this side',
    '`edging spiked-strip`. It stands on the base, never on the bed, and soil alone holds nothing (Tech Spec 3, edge restraints).'
  ),
  ...together(
    'standing up',
    help('How far the edging stands above the finish', '`edging kerb-100 set before laying, standing 25 mm up`')
  ),
  ...together(
    'concrete behind the last course',
    help(
      'Concrete behind the last course holds it, with no edging',
      '`R2 to R1 meets footway, flush, concrete behind the last course`. Wet concrete burns skin and eyes: gloves, boots, and wash it off at once.'
    )
  ),
  ...together(
    'solid masonry',
    help('A wall with no damp course, siding or weep holes in it', '`A to B meets house-wall, solid masonry`')
  ),
  'damp-course': help(
    'How high the damp course of the wall lies',
    '`A to B meets house-wall, damp-course 3 in below door-sill`. In Britain paving stays 150 mm below it (Approved Document C).'
  ),
  siding: help(
    'How high the bottom of the siding lies',
    '`A to B meets house-wall, siding 1 in below door-sill`. Water splashes up, and wood against paving rots.'
  ),
  'weep-holes': help(
    'How high the weep holes of the wall lie',
    '`A to B meets house-wall, weep-holes 2 in below door-sill`. They must stay free.'
  ),
  footing: help(
    'How deep the bottom of the footing lies',
    '`A to B meets garden-wall, footing 2 ft below door-sill`. No dig goes below a footing without an engineer.'
  ),
  ...HEIGHT_WORDS,
  set: SET,
  before: SET,
  after: SET,
  laying: SET
};
