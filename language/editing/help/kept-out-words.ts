import { help, type BlockHelp } from './help.ts';
import { PAVING_WORDS, START_WORDS } from './laying-words.ts';
import { CIRCLE_WORDS, OUTLINE, OUTLINE_WORDS, RECTANGLE_WORDS } from './outline-words.ts';

const SHAPE_WORDS = { rectangle: RECTANGLE_WORDS, circle: CIRCLE_WORDS, outline: OUTLINE_WORDS };

export const KEPT_OUT_WORDS: BlockHelp = {
  statements: {
    rectangle: help(
      'A rectangle, with its place',
      '`rectangle 20 x 14 in, centre (6 ft 2 in, 3 ft 1 in)`. Measure the outside of the frame.'
    ),
    circle: help('A circle, with its place', '`circle 10 in across, centre (20 ft, 11 1/2 ft)`'),
    outline: OUTLINE
  },
  within: SHAPE_WORDS
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
