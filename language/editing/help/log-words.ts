import { HEIGHT_WORDS } from './height-words.ts';
import { help, together, type Helps } from './help.ts';
import { PACK_COUNTS } from './price-words.ts';
import { PLACE_WORDS } from './place-words.ts';

const GAP = help(
  'The gap under a straightedge laid on the paving',
  '`2026-05-16 measured gap 1/8 in under 10 ft straightedge in terrace`'
);
const LAYERS: Helps = {
  base: help('The stone under the bed', '`done base of terrace`, `measured base at C 8 1/2 in below door-sill`'),
  'sub-base': help('The lower layer of stone', '`done sub-base of drive`'),
  bed: help('The screeded sand', '`done bed of terrace`'),
  dig: help('The digging; measured: the bottom of the dig', '`done dig of drive and turning`')
};

/** Words of the lines inside `log`; each line begins with its day. */
export const LOG_WORDS: Helps = {
  ...PLACE_WORDS,
  ...PACK_COUNTS,
  ...LAYERS,
  delivered: help(
    'What came, and how much of it',
    '`2026-04-25 delivered crushed-stone 8 1/2 short ton`, `2026-04-17 delivered block-red 430, batch "K-114"`, `delivered block-red 9 pack`. It is set against what is needed.'
  ),
  batch: help(
    'The batch on the label',
    '`delivered block-red 430, batch "K-114"`. Another batch is seldom quite the same colour.'
  ),
  done: help(
    'What is finished, and of which areas',
    '`2026-05-09 done base of terrace`, `2026-04-16 done edging of turning along T1 to T2`. It changes no figure of the plan.'
  ),
  of: help('The areas that it was done in', '`done dig of drive and turning`'),
  and: help('One more area', '`done dig of drive and turning`'),
  along: help('Only along this line; or a place along it', '`done edging of turning along T1 to T2`'),
  measured: help(
    'What was measured on the way, against what is planned',
    '`2026-05-09 measured base at C 8 1/2 in below door-sill, at D 8 7/8 in below door-sill`. Also `measured gap …` and `measured slope …`.'
  ),
  gap: GAP,
  ...together('under straightedge', GAP),
  in: help('The area that it was measured in, or lies in', '`soft-spot in terrace 3 x 4 ft`'),
  slope: help('The fall as measured along a line', '`2026-05-16 measured slope 1:60 along A to D in terrace`'),
  at: help('The point where it was measured', '`measured base at C 8 1/2 in below door-sill`'),
  'soft-spot': help(
    'Ground that gave way, was dug deeper and filled',
    '`2026-05-02 soft-spot 3 x 4 ft, centre 14 ft along A to B, 9 ft out, 4 in deeper, filled crushed-stone`. Its dig and its stone are counted.'
  ),
  centre: help('Where its middle lies', '`centre 14 ft along A to B, 9 ft out`'),
  deeper: help('How much deeper it was dug than planned', '`4 in deeper`'),
  filled: help('What it was filled with', '`filled crushed-stone`. Left out: the stone of the base.'),
  geotextile: help('The cloth under the stone', '`done geotextile of drive`'),
  edging: help('The edging', '`done edging of drive`'),
  paving: help('The units', '`done paving of terrace`'),
  joints: help('The joints, filled', '`done joints of terrace`'),
  'as-laid': help('The units as laid, before they are vibrated', '`measured as-laid at C 2 1/4 in below door-sill`'),
  finish: help('The finished face', '`measured finish at C 2 1/2 in below door-sill`'),
  ...HEIGHT_WORDS,
  with: help(
    'What it was filled with; or as high as a benchmark',
    '`filled with crushed-stone`, `level with door-sill`'
  )
};
