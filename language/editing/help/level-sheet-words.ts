import { HEIGHT_WORDS } from './height-words.ts';
import { help, together, type BlockHelp } from './help.ts';

const STRING = help(
  'How high the line is stretched above the finish',
  '`string 6 in above the finish`: it falls as the finish falls, and each layer is so far below it.'
);
const OUTSIDE = help(
  'Pegs stand so far outside the dig',
  '`offset-points 2 ft outside the dig`: digging leaves them alone.'
);

export const LEVEL_SHEET_WORDS: BlockHelp = {
  statements: {
    every: help('How far apart the places are that the sheet lists', '`every 6 ft`. Corners are always listed.'),
    printed: help(
      'How heights are printed: millimetres, inches or decimal-feet',
      '`printed in inches`. Left out: as the job shows its numbers.'
    ),
    string: help(
      'The line stretched over the work that layers are measured down from',
      '`string 6 in above the finish` falls with the finish; `string level with door-sill` is set level.'
    ),
    'offset-points': help(
      'Pegs outside the dig that corners are found from again',
      '`offset-points 2 ft outside the dig`'
    )
  },
  within: {
    printed: {
      in: help('How heights are printed: millimetres, inches or decimal-feet', '`printed in inches`'),
      millimetres: help('Whole millimetres'),
      inches: help('Inches and sixteenths, as on a tape'),
      'decimal-feet': help('Feet and hundredths, as on many laser rods', 'A hundredth of a foot is about 1/8 in.')
    },
    string: {
      ...together('the finish', STRING),
      ...HEIGHT_WORDS,
      above: help('So far above the finish, or above a benchmark', '`string 6 in above the finish`')
    },
    'offset-points': together('outside the dig', OUTSIDE)
  }
};
