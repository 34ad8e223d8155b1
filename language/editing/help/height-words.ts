import { help, type Helps } from './help.ts';

/** Words of a height: `2 1/2 in below door-sill`. */
export const HEIGHT_WORDS: Helps = {
  below: help(
    'So far below the benchmark',
    '`2 1/2 in below door-sill`. A height is measured, straight down, not along a slope.'
  ),
  above: help('So far above the benchmark', '`3 in above door-sill`'),
  level: help('As high as the benchmark', '`level with door-sill`'),
  with: help('As high as the benchmark', '`level with door-sill`')
};

/** Words of the statement `heights`. */
export const HEIGHTS_WORDS: Helps = {
  laser: help('A laser and a rod', '`heights by laser on 2026-04-18, door-sill reads 31 1/4 in`'),
  'dumpy-level': help(
    'A level on a tripod and a rod',
    '`heights by dumpy-level on 2026-04-18, door-sill reads 31 1/4 in`'
  ),
  by: help('What the heights were read with', '`heights by laser on 2026-04-18, door-sill reads 31 1/4 in`'),
  on: help('The day on which they were read', '`on 2026-04-18`: year, month, day.'),
  ground: help(
    'A back sight on the ground at a point',
    '`ground A reads 34 1/4 in`. A benchmark is surer: the ground may have been walked on since.'
  ),
  reads: help(
    'What the rod reads on a mark whose height is known',
    '`door-sill reads 31 1/4 in`. From it comes the line of sight; every other reading counts down from there. A second mark behind a comma shows whether the instrument was moved.'
  )
};

/** Words of the lines inside `heights`. */
export const LEVEL_LINE_WORDS: Helps = {
  ground: help(
    'Heights of the ground as it is today',
    '`ground A 34 1/4 in  B 34 1/2 in  C 38 in`: point after point, each with its height. With an instrument that is what the rod reads: more where it is lower.',
    'Between the points the ground is taken as plane from three to three.'
  ),
  ...HEIGHT_WORDS
};
