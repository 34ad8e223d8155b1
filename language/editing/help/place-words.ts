import { help, type Helps } from './help.ts';

const ALONG = help(
  'So far along a line between two points',
  '`6 ft 2 in along A to B`: from A towards B. How far off that line follows behind a comma: `3 ft 1 in out`.'
);

const OUT = help(
  'So far off the line, to the side where the area lies',
  '`centre 6 ft 2 in along A to B, 3 ft 1 in out`: square to the line.'
);

const SIDES: Helps = {
  near: help('The side of a rectangle that its first figure runs along', '`3 ft along near, 4 ft out`'),
  far: help('The side of a rectangle across from the near side', '`3 ft along far, 4 ft out`'),
  leg: help('A side of a walked outline, by its number', '`3 ft along leg 2, 4 ft out`')
};

/** Words that tell a place by a line between two points, or from a point. */
export const PLACE_WORDS: Helps = {
  ...SIDES,
  along: ALONG,
  to: help('From the one point to the other', '`6 ft 2 in along A to B`'),
  out: OUT,
  left: help(
    'So far to the left of the line, as one walks along it',
    '`4 ft along A to B, 2 ft left`. Behind `along` it is the left side of a rectangle: `4 ft along left, 2 ft out`.'
  ),
  right: help(
    'So far to the right of the line, as one walks along it',
    '`4 ft along A to B, 2 ft right`. Behind `along` it is the right side of a rectangle: `4 ft along right, 2 ft out`.'
  ),
  from: help(
    'So far from a point, towards another or at an angle',
    '`3 m from A towards B`, or `3 m from A at 40 degrees from A to B`.'
  ),
  towards: help('In the direction of that point', '`3 m from A towards B`'),
  at: help(
    'At this angle, anticlockwise from a line between two points',
    '`3 m from A at 40 degrees from A to B`. Without a line it counts from straight right on the plan.'
  )
};
