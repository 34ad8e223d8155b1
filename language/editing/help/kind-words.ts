import { help, type BlockHelp } from './help.ts';

/** Of materials and soils alike. */
export const SOURCE = help(
  'Where the figures come from, in your own words',
  '`according-to "Own sample, weighed wet."` It is shown beside every number that rests on them.'
);

export const SOIL_KIND_WORDS: BlockHelp = {
  statements: {
    swell: help(
      'How much the soil grows when it is dug: 25 % makes 10 into 12.5',
      '`swell 25 %`. Dug soil lies loose: skips and trucks are filled with loose soil.'
    ),
    density: help(
      'What the soil weighs in the ground',
      '`density 100 lb per cu ft` or `density 1.6 t/m3`. Wet soil weighs more.'
    ),
    drains: help('Whether water soaks away in it: well or poorly', '`drains well`. Left out: poorly.'),
    'frost-heave': help(
      'Whether it lifts when it freezes: likely or unlikely',
      '`frost-heave likely`. Left out: likely.'
    ),
    'according-to': SOURCE
  },
  within: {
    drains: {
      well: help('Water is gone within hours'),
      poorly: help('Water stands in it for a day or more')
    },
    'frost-heave': {
      likely: help(
        'It holds water, and lifts when it freezes',
        'Silt above all, and clay, and sand or gravel with much silt in it.'
      ),
      unlikely: help('It lets water through, and hardly lifts', 'Clean sand and gravel.')
    }
  }
};

export const SIDE_KIND_WORDS: BlockHelp = {
  statements: {
    ground: help('Whether the base may run on below it: open or closed', '`ground open` or `ground closed`'),
    holds: help('Whether it holds the paving: paving or nothing', '`holds paving` or `holds nothing`')
  },
  within: {
    ground: {
      open: help('Soil: the base may run on past the edge'),
      closed: help('A wall, kerb or paving: the base ends there')
    },
    holds: {
      paving: help('It stands fast: no edging is needed against it'),
      nothing: help('It gives way: the side needs edging')
    }
  }
};

export const BOND_WORDS: BlockHelp = {
  statements: {
    offset: help(
      "How far each next course is shifted, as a share of a unit's length",
      '`offset 1/2` shifts by half a unit, `offset 0` not at all. It is less than 1.'
    )
  }
};

export const EXISTING_WORDS: BlockHelp = {
  statements: {
    kind: help(
      'What kind of thing it is, as a side sees it',
      '`kind lawn`. Left out: existing-paving, which holds the paving and ends the base.'
    )
  }
};
