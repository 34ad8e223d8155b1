import { HEIGHT_WORDS } from './height-words.ts';
import { help, type BlockHelp } from './help.ts';
import { PLACE_WORDS } from './place-words.ts';

export const GATE_WORDS: BlockHelp = {
  statements: {
    hinge: help(
      'Where it hangs, how long its leaf is, and which way it opens',
      '`hinge 2 ft along B to C, leaf 3 ft 2 in towards C, opens 95 degrees into terrace`. Everything that the leaf sweeps over is looked at.'
    ),
    underside: help(
      'How high the bottom of the leaf lies',
      '`underside 3 1/4 in below door-sill`. Measure it at its lowest, and shut.'
    ),
    clearance: help(
      'How much free height is wanted under the leaf',
      '`clearance 1/2 in`. Left out: 1/2 in, in Britain 12 mm (common practice).'
    ),
    opening: help(
      'Where a door opening lies along a wall',
      '`opening 4 ft to 7 ft along A to B`: both measured from A. What paving lies before it is looked at.'
    ),
    sill: help('How high the sill of the door lies', '`sill level with door-sill`, `sill 1 in above door-sill`')
  },
  within: {
    hinge: {
      ...PLACE_WORDS,
      leaf: help('How long the leaf is, and where its end lies when shut', '`leaf 3 ft 2 in towards C`'),
      towards: help('Where the end of the leaf lies when it is shut', '`leaf 3 ft 2 in towards C`'),
      opens: help('How far it swings, and over which area', '`opens 95 degrees into terrace`'),
      into: help('The area that it swings over', '`opens 95 degrees into terrace`'),
      out: help('It swings away from the area; or how far out the hinge lies', '`opens 95 degrees out of terrace`'),
      of: help('It swings away from the area', '`opens 95 degrees out of terrace`')
    },
    underside: HEIGHT_WORDS,
    opening: {
      to: help('Where the opening ends; or the second point of the line', '`opening 4 ft to 7 ft along A to B`'),
      along: help('The line of the wall, between two points', '`opening 4 ft to 7 ft along A to B`')
    },
    sill: HEIGHT_WORDS
  }
};
