import { help, together, type BlockHelp } from './help.ts';
import { OUTLINE, OUTLINE_WORDS } from './outline-words.ts';

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
    ),
    course: help(
      'A line of the bond as it looks on the plan, square by square',
      '`course a a b b`: one letter or word a unit, over as many squares as it covers. One `course` a line, the last one nearest the start; all are as long as the first.',
      'The drawing repeats on all sides: what reaches over an edge of it goes on at the other side.'
    ),
    as: help('Laid like another bond', '`as herringbone-90, turned 45 degrees`'),
    turned: help(
      'The whole bond lies turned, anticlockwise',
      '`turned 45 degrees`. It counts from the way the courses would run without it; clockwise is below nought.'
    ),
    'random-courses': help(
      'Courses of units of mixed lengths and one width, in no order',
      '`random-courses, seed 1, joints-apart 3 in`. In `paving` name units of several lengths: `paving plank-900, plank-600 in random-courses`.'
    ),
    hexagons: help(
      'Hexagons, each one between six others',
      'For units of `shape hexagon`; each next course is shifted by half a unit.'
    ),
    rings: help(
      'Rings round a middle; joints open outwards within their limits',
      'Each ring has as many units as go round it with joints inside their limits. What no whole unit fits into in the middle is cut.'
    ),
    seed: help(
      'A number that the order of the units is drawn from',
      '`seed 1`. The same number gives the same order each time; another one gives another.'
    ),
    'joints-apart': help(
      'How far cross joints of neighbouring courses stay apart',
      '`joints-apart 3 in`. At least a quarter of the longest unit is usual (common practice).'
    )
  }
};

const OFFSETS = help(
  'How far its edge lies off the straight line, from place to place',
  '`offsets into it 0 at D, 3/16 in at 4 ft, 0 at A`: square to the line, straight in between.'
);

export const EXISTING_WORDS: BlockHelp = {
  statements: {
    kind: help(
      'What kind of thing it is, as a side sees it',
      '`kind lawn`. Left out: existing-paving, which holds the paving and ends the base.'
    ),
    units: help(
      'How large the units are that lie there',
      '`units 200 x 100 mm`: length x width, without the joint. Measure over ten units and ten joints (common practice).'
    ),
    joints: help('How wide the joints are that are there', '`joints 3 mm`'),
    'joint-line': help(
      'A point on a joint line that goes on into the new paving',
      '`joint-line at J`, with `point J at (4 ft, 0)` outside. An area then says `start carried on from` and the name of this.'
    ),
    edge: help(
      'An edge of it as measured, with offsets where it is not straight',
      '`edge D to A, offsets into it 0 at D, 3/16 in at 4 ft, 0 at A`. Stretch a line from D to A, and measure from it to the edge.',
      'The side of the area that meets it then follows that edge.'
    ),
    outline: OUTLINE,
    thickness: help('How thick it is', '`thickness 4 in`. With `broken out` it tells how much there is to cart away.'),
    density: help(
      'What it weighs',
      '`density 145 lb per cu ft` or `density 2.3 t/m3`. Left out: that of plain concrete.'
    ),
    broken: help(
      'It is broken out where the new paving comes',
      '`broken out`, with its `outline` and `thickness`. Cut wet, with lungs, eyes and ears protected: the dust scars lungs for good.'
    )
  },
  within: {
    edge: {
      to: help('From the one point to the other', '`edge D to A`'),
      offsets: OFFSETS,
      into: help('The edge lies off the line to the side of the thing itself', '`offsets into it 3/16 in at 4 ft`'),
      ...together(
        'out of',
        help('The edge lies off the line away from the thing', '`offsets out of it 3/16 in at 4 ft`')
      ),
      it: OFFSETS,
      at: help('How far along the line, or at which point', '`3/16 in at 4 ft`, `0 at D`')
    },
    outline: OUTLINE_WORDS,
    broken: { out: help('It is broken out where the new paving comes', '`broken out`') },
    'joint-line': { at: help('A point that the joint line runs through', '`joint-line at J`') }
  }
};
