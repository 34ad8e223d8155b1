import { help, type Helps } from './help.ts';
import { PLACE_WORDS } from './place-words.ts';

const CORNER = help(
  'Where the corner at the lower left lies',
  '`corner (2, 3) m`: so far to the right, then so far up. Left out: at (0, 0).'
);
const TURNED = help(
  'Turned anticlockwise about its corner or centre',
  '`turned 12 degrees`; clockwise is below nought.'
);

const CENTRE = help('Where the middle lies', '`centre (6 ft 2 in, 3 ft 1 in)`: so far to the right, then so far up.');

/** Words that place a rectangle. */
export const RECTANGLE_WORDS: Helps = { corner: CORNER, centre: CENTRE, turned: TURNED };

/** Words of a circle. */
export const CIRCLE_WORDS: Helps = {
  across: help('The distance across the circle, through its middle', '`circle 10 in across`'),
  radius: help('The distance from the middle to the rim', '`circle radius 1.5 m`'),
  centre: help(
    'Where the middle lies',
    '`centre (20 ft, 11 1/2 ft)`. Left out: the circle touches both lines that distances count from.'
  )
};

const IN_OUT = '`A to B bowed 300 mm in to C`. Left out: out.';

/** Words of a line from point to point. */
export const CHAIN_WORDS: Helps = {
  to: help('On to the next point', '`line spine A to B to C`'),
  bowed: help('The stretch is an arc; so far its middle lies off the straight line', '`A to B bowed 300 mm in to C`'),
  radius: help('The stretch is an arc of this radius', '`A to B radius 4 m to C`'),
  through: help('The stretch is an arc through one more point', '`A to B through M`'),
  in: help('The arc bends to the left, as one walks', IN_OUT),
  out: help('The arc bends to the right, as one walks', IN_OUT),
  rounded: help('Corners are rounded, by this radius', '`line spine A to B to C, rounded 1 m at B`'),
  at: help('The corner that is rounded', '`rounded 1 m at B`'),
  and: help('One more corner, rounded alike', '`rounded 1 m at B and C`')
};

/** Every word that can stand within `outline`. */
export const OUTLINE_WORDS: Helps = {
  ...PLACE_WORDS,
  along: help(
    'A strip along a line; or a place along a line between two points',
    '`outline along spine, 1.2 m wide`, for a `line spine A to B to C`; wider further on: `1.2 m wide at 0, 1.8 m wide at 6 m`.'
  ),
  wide: help('How wide the strip is, its line in the middle', '`outline along spine, 1.2 m wide`'),
  rectangle: help(
    'A rectangle: along the near side x away from it',
    '`outline rectangle 12 x 16 ft`. Its sides: near, right, far, left.'
  ),
  circle: help('A circle', '`outline circle 3 m across` or `outline circle radius 1.5 m`. Its side: all round.'),
  walk: help(
    'Side after side, as you walk round it',
    '`outline walk from (0, 0), right 6 m, up 3 m, left 6 m, back`. Its sides: leg 1, leg 2, …'
  ),
  from: help('Where the walk begins; or so far from a point', '`walk from (0, 0)`, `3 m from A towards B`'),
  right: help('To the right by so much'),
  up: help('Up on the plan by so much: away from the near side'),
  left: help('To the left by so much'),
  down: help('Down on the plan by so much: towards the near side'),
  back: help('The last side, straight back to where the walk began'),
  to: help('On to the next point; the last one closes to the first', '`outline A to B to C`'),
  corner: CORNER,
  centre: CENTRE,
  turned: TURNED,
  across: CIRCLE_WORDS.across!,
  radius: help(
    'The radius of the circle, or of a side that is an arc',
    '`outline circle radius 1.5 m`, or for one side: `A to B radius 4 m to C`. At least half as long as the side.'
  ),
  bowed: help(
    'The side is an arc; so far its middle lies off the straight line',
    '`A to B bowed 300 mm to C`: stretch a line from A to B, and measure from its middle. Out of the area, unless it says `in`.'
  ),
  through: help('The side is an arc through one more point', '`A to B through M to C`'),
  in: help('The arc bends into the area', IN_OUT),
  out: help('The arc bends out of the area', IN_OUT),
  rounded: help('Corners are rounded, by this radius', '`outline A to B to C to D, rounded 1.2 m at B and C`'),
  at: help('The corner that is rounded', '`rounded 1.2 m at B and C`'),
  and: help('One more corner, rounded alike', '`rounded 1.2 m at B and C`')
};

export const OUTLINE = help(
  'The shape, along the face of the laid units; edging stands outside',
  '`outline rectangle 12 x 16 ft`, `outline circle 3 m across`, `outline A to B to C`, or `outline walk from (0, 0), right 6 m, up 3 m, left 6 m, back`. A path along a `line`: `outline along spine, 1.2 m wide`.'
);
