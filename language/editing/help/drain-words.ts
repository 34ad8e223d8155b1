import { HEIGHT_WORDS } from './height-words.ts';
import { help, together, type BlockHelp } from './help.ts';
import { CIRCLE_WORDS, RECTANGLE_WORDS } from './outline-words.ts';
import { PLACE_WORDS } from './place-words.ts';

const CONCRETE = help(
  'The concrete that the channel stands on: its depth below',
  '`on concrete 150 mm below and both sides`. As deep as the maker says for what drives over it.'
);

export const DRAIN_WORDS: BlockHelp = {
  statements: {
    channel: help(
      'A channel between two points, with its width',
      '`channel along G1 to G2, 130 mm wide`. A side of an area `meets` it, or it lies within the area that the drain names.'
    ),
    gully: help(
      'A gully, by its shape and place',
      '`gully rectangle 300 x 300 mm, centre (2.1, 4.0) m`, in an area: `drain yard-gully in yard`.'
    ),
    grate: help(
      'How high the top of the grate lies',
      '`grate 9.982 m at G1 and G2`, or `grate 3 in below door-sill`. A little lower than the paving beside it, so that water gets in: 3 to 6 mm (common practice).'
    ),
    outlet: help(
      'Where the water leaves, and where it goes',
      '`outlet at G2 to soakaway, class B125`. Where it may be led to, and how large that must be, the local authority tells.'
    )
  },
  within: {
    channel: {
      along: help('From point to point, on the side of the area', '`channel along G1 to G2, 130 mm wide`'),
      to: help('From the one point to the other', '`along G1 to G2`'),
      wide: help('Its width over all, across its line', '`130 mm wide`. It lies outside the area that meets it.'),
      deep: help('Its depth over all', '`150 mm deep`'),
      ...together('on concrete', CONCRETE),
      below: CONCRETE,
      ...together('and both sides', help('The concrete stands up on both sides too', '`150 mm below and both sides`'))
    },
    gully: {
      ...PLACE_WORDS,
      ...RECTANGLE_WORDS,
      ...CIRCLE_WORDS,
      rectangle: help('A rectangle, with its place', '`gully rectangle 300 x 300 mm, centre (2.1, 4.0) m`'),
      circle: help('A circle, with its place', '`gully circle 300 mm across, centre (2.1, 4.0) m`')
    },
    grate: {
      ...HEIGHT_WORDS,
      at: help('The points at which the grate is so high', '`grate 9.982 m at G1 and G2`'),
      and: help('One more point, as high', '`grate 9.982 m at G1 and G2`')
    },
    outlet: {
      soakaway: help(
        'Into the ground through a pit of stone or crates',
        '`outlet at G2 to soakaway`. Its size hangs on the soil.'
      ),
      'rain-drain': help('Into a drain for rain water', '`outlet at G2 to rain-drain`. Whoever owns it has to agree.'),
      ditch: help('Into an open ditch', '`outlet at G2 to ditch`. Ask the authority first.'),
      A15: help('For feet and bicycles', 'EN 124, from memory.'),
      B125: help('For cars', 'EN 124, from memory.'),
      C250: help('For trucks along a kerb', 'EN 124, from memory.'),
      at: help('The point where the pipe leaves', '`outlet at G2`'),
      to: help('What the water is led to, in a word', '`outlet at G2 to soakaway`'),
      class: help(
        'What the grate carries, by its class',
        '`class B125`. By EN 124, from memory: A15 for feet, B125 for cars, C250 and up for trucks.'
      )
    }
  }
};
