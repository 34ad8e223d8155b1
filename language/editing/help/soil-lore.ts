import { help, type Helps, type WordHelp } from './help.ts';
import { PUDDLE } from './site-words.ts';

/** How to tell soils by hand: wet a handful from the bottom of the dig, and squeeze it (common practice). */
const soil = (line: string, squeeze: string): WordHelp =>
  help(
    line,
    `By hand: wet a handful from where the dig will end, knead it and squeeze it. ${squeeze} (Common practice.)`,
    `Does it drain? ${PUDDLE}`
  );

export const SOIL_LORE: Helps = {
  clay: soil(
    'Sticky when wet, hard when dry; holds water and heaves',
    'Clay sticks to the hand, shines where a thumb rubs it, and rolls into a thin worm of 2 in (50 mm) or more that does not break.'
  ),
  silt: soil(
    'Smooth as flour; holds water, and heaves the most in frost',
    'Silt feels smooth, not gritty and hardly sticky; its worm breaks at once. Shaken in the palm it turns shiny with water; dry, it dusts off the hand.'
  ),
  'common-earth': soil(
    'A mix of sand, silt and clay, as most gardens have below the top',
    'It holds together when squeezed and crumbles when poked; a short worm can be rolled, and breaks.'
  ),
  sand: soil(
    'Gritty; lets water through and hardly heaves',
    'Sand feels gritty and leaves the hand clean; dry it runs through the fingers, wet its ball falls apart at a touch.'
  ),
  gravel: soil(
    'Mostly stones; lets water through and hardly heaves',
    'Gravel does not squeeze at all: more than half of it is stones that can be picked out one by one. With enough clay between them to stick, call it by the clay.'
  )
};
