import { help, type Helps } from './help.ts';

const ALONG = help(
  'So far along a line between two points',
  '`6 ft 2 in along A to B`: from A towards B. How far off that line follows behind a comma: `3 ft 1 in out`.'
);

const OUT = help(
  'So far off the line, to the side where the area lies',
  '`centre 6 ft 2 in along A to B, 3 ft 1 in out`: square to the line.'
);

/** Words that tell a place by a line between two points, or from a point. */
export const PLACE_WORDS: Helps = {
  along: ALONG,
  to: help('From the one point to the other', '`6 ft 2 in along A to B`'),
  out: OUT,
  left: help('So far to the left of the line, as one walks along it', '`4 ft along A to B, 2 ft left`'),
  right: help('So far to the right of the line, as one walks along it', '`4 ft along A to B, 2 ft right`'),
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
