import { help, type BlockHelp } from './help.ts';
import { CIRCLE_WORDS, OUTLINE, OUTLINE_WORDS, RECTANGLE_WORDS } from './outline-words.ts';

export const KEPT_OUT_WORDS: BlockHelp = {
  statements: {
    rectangle: help(
      'A rectangle, with its place',
      '`rectangle 20 x 14 in, centre (6 ft 2 in, 3 ft 1 in)`. Measure the outside of the frame.'
    ),
    circle: help('A circle, with its place', '`circle 10 in across, centre (20 ft, 11 1/2 ft)`'),
    outline: OUTLINE
  },
  within: { rectangle: RECTANGLE_WORDS, circle: CIRCLE_WORDS, outline: OUTLINE_WORDS }
};
