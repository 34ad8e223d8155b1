import { HEIGHT_WORDS } from './height-words.ts';
import { help, together, type BlockHelp, type Helps } from './help.ts';
import { PAVING_WORDS, START_WORDS } from './laying-words.ts';
import { CIRCLE_WORDS, OUTLINE, OUTLINE_WORDS, RECTANGLE_WORDS } from './outline-words.ts';
import { PLACE_WORDS } from './place-words.ts';

const SHAPE_WORDS = {
  rectangle: { ...PLACE_WORDS, ...RECTANGLE_WORDS },
  circle: { ...PLACE_WORDS, ...CIRCLE_WORDS },
  outline: OUTLINE_WORDS
};

const IN_USE = help('It is in use', '`in use, set flush`');
const OUT_OF_USE = help('It is out of use', '`out of use, cut down and bury`');
const TRAY = help(
  'A cover with a tray that is paved, and how deep the tray is',
  '`in use, tray 80 mm deep paved with block-red`. The whole cover is lifted with it: mind its weight.'
);

const USE_WORDS: Helps = {
  use: IN_USE,
  of: OUT_OF_USE,
  ...together('set flush', help('Its lid is set to the finish', '`in use, set flush`')),
  ...together(
    'cut down and bury',
    help(
      'It is cut down to below the dig and buried',
      '`out of use, cut down and bury`. First have it shut off and capped by the trade; its place goes on the record.'
    )
  ),
  ...together('tray deep', TRAY),
  ...together('paved with', help('The unit that the tray is paved with', '`tray 80 mm deep paved with block-red`'))
};

export const KEPT_OUT_WORDS: BlockHelp = {
  statements: {
    rectangle: help(
      'A rectangle, with its place',
      '`rectangle 20 x 14 in, centre (6 ft 2 in, 3 ft 1 in)`. Measure the outside of the frame.'
    ),
    circle: help('A circle, with its place', '`circle 10 in across, centre (20 ft, 11 1/2 ft)`'),
    outline: OUTLINE,
    lid: help(
      'How high the lid of the box lies today',
      '`lid 4 1/4 in below door-sill`, or `lid 10.020 m`. It tells how far the lid is raised or lowered.'
    ),
    in: help('The box is in use, and what becomes of it', '`in use, set flush`, or `in use, tray 80 mm deep`'),
    out: help('The box is out of use, and what becomes of it', '`out of use, cut down and bury`'),
    'no-dig': help(
      'Nothing is dug so near to it: roots',
      '`no-dig 3 m across`, `no-dig radius 5 ft`, about the middle of the pit. How far roots reach a tree surgeon tells.'
    )
  },
  within: {
    ...SHAPE_WORDS,
    lid: HEIGHT_WORDS,
    in: USE_WORDS,
    out: USE_WORDS,
    'no-dig': {
      across: help('The distance across, through the middle', '`no-dig 3 m across`'),
      radius: help('The distance from the middle', '`no-dig radius 5 ft`')
    }
  }
};

const NOT_LIKE = help(
  'Only areas are paved as another',
  'An inset is paved in a way of its own: `paving block-red in rings`.'
);

export const INSET_WORDS: BlockHelp = {
  statements: {
    rectangle: help('A rectangle, with its place', '`rectangle 6 x 4 ft, centre (9, 5) ft`'),
    circle: help('A circle, with its place', '`circle 6 ft across, centre (9, 5) ft`'),
    outline: OUTLINE,
    paving: help(
      'What is laid in the inset: which units, in which bond',
      '`paving block-red in rings`, or `paving block-red in herringbone-90, joints 3 mm`.'
    ),
    start: help(
      'Where laying starts in the inset, and which way its courses run',
      '`start along left`, `start turned 45 degrees`. Left out: its middle, or as the bond goes.'
    )
  },
  within: { ...SHAPE_WORDS, paving: { ...PAVING_WORDS, as: NOT_LIKE }, start: START_WORDS }
};
