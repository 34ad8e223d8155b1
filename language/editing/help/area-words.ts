import { HEIGHT_WORDS } from './height-words.ts';
import { help, together, usual, type BlockHelp, type Helps } from './help.ts';
import { BAND_WORDS, BORDER_WORDS, PAVING_WORDS, START_WORDS } from './laying-words.ts';
import { OUTLINE, OUTLINE_WORDS } from './outline-words.ts';

const FAQ = 'Interlocking Concrete Pavement Institute, frequently asked questions, 2015';
const LIKE: Helps = { as: help('The same as in another area', '`as drive`') };

const PAST = together(
  'past the edging',
  help(
    'How far the base runs past the edging at open ground',
    'As far as it is thick is advised: load spreads on its way down (Tech Spec 3, edge restraints).',
    'Left out: as the edging says, else to the back of its concrete, else as far as the base is thick.'
  )
);

const LAYERS =
  'Compact it damp, in layers: about 4 in (100 mm) under a plate of 5,000 lbf (22 kN) (PAV-TEC-002, from memory), 2 to 3 in under a smaller one, four passes and on until nothing moves (common practice). Protect ears and toes.';

const SETTLES = help(
  'How much the bed gives under the plate',
  '`bed sharp-sand 30 mm, settles 8 mm`: screeded so much higher, and the units stand so much proud before the plate.'
);

const LAYER_WORDS: Helps = { ...LIKE, ...PAST, settles: SETTLES };

const FALL = 'A fall is written `1:60`, or `1/4 in per ft`.';
const CROSS_FALL = help(
  'It falls across the line, to the left or the right',
  '`cross-fall 1:40 to the left`, as one walks along the line.'
);

const SIDES: Helps = {
  near: help('The side of a rectangle that its first figure runs along', '`along near, falling 1:60 away from near`'),
  right: help(
    'The right side of a rectangle; behind `to the`, the right of the line',
    '`along right, falling 1:60 away from right`, `cross-fall 1:40 to the right`.'
  ),
  far: help('The side of a rectangle across from the near side', '`along far, rising 1:60 away from far`'),
  left: help(
    'The left side of a rectangle; behind `to the`, the left of the line',
    '`along left, falling 1:60 away from left`, `cross-fall 1:40 to the left`.'
  ),
  leg: help('A side of a walked outline, by its number', '`along leg 1, falling 1:60 away from leg 1`')
};

const FINISH_WORDS: Helps = {
  as: help(
    'The same as in another area',
    '`as drive`, or from it on: `as drive along T1 to T4, rising 1:50 away from T1 to T4`.'
  ),
  along: help(
    'The line that this height holds along, or a fall runs along',
    '`2 1/2 in below door-sill along A to B`, or along a side of the area: `along near`. By the name of a `line` with heights at stations: `along spine, 10.2 m at 0, 10.5 m at 9 m`.'
  ),
  to: help('From the one point to the other', '`along A to B`'),
  at: help('The point, or the station of a line, that it holds at', '`2 1/2 in below door-sill at A`'),
  falling: help(
    'It goes down at this rate',
    '`falling 1:60 away from A to B`, `falling 1/4 in per ft towards C`.',
    FALL
  ),
  rising: help('It goes up at this rate', '`rising 1:50 away from T1 to T4`.', FALL),
  ...together('away from', help('Square to that line, into the area', '`falling 1:60 away from A to B`')),
  towards: help('In the direction of that point', '`falling 1:60 towards C`'),
  ...together(
    'twisted evenly',
    help(
      'Four corners that lie in no plane: the twist is spread evenly',
      '`finish A 9.985  B 9.985  C 10.298  D 10.312 m, twisted evenly`. Units take a little of it; the rules tell how much.'
    )
  ),
  folded: help(
    'Two planes that meet along a line',
    '`finish A 9.985  B 9.985  C 10.298  D 10.312 m, folded along A to C`'
  ),
  'cross-fall': CROSS_FALL,
  ...SIDES,
  the: CROSS_FALL,
  camber: help('It is highest along the line and falls to both sides', '`camber 1:40`'),
  ...HEIGHT_WORDS
};

export const AREA_WORDS: BlockHelp = {
  statements: {
    outline: OUTLINE,
    traffic: help(
      'What uses the area: foot, cars, trucks; turning wheels',
      '`traffic foot`, or several: `traffic cars, turning`. The heaviest counts for base, units and edging.',
      'Left out: nothing that hangs on traffic is checked.'
    ),
    finish: help(
      'How high the face of the laid units lies',
      '`finish 2 1/2 in below door-sill`, `finish level with door-sill`, or the same as elsewhere: `finish as drive`.',
      'With a fall: `finish 2 1/2 in below door-sill along A to B, falling 1/4 in per ft away from A to B`. With a height at each corner: `finish A 9.985  B 9.985  C 10.298  D 10.312 m, twisted evenly`.',
      'In Britain 150 mm below a damp course (Approved Document C). Close below a sill rain and snow come in, unless a drain takes them.'
    ),
    paving: help(
      'Which units, in which bond, with which joint',
      '`paving slab-16 in running-bond, joints 1/8 in`, or the same as elsewhere: `paving as drive`.',
      'A bond of several sizes takes one unit of each: `paving slab-600, slab-300 in pinwheel`.'
    ),
    start: help(
      'Where laying starts, which way courses run, which edges stay whole',
      '`start whole units along A to B, equal cuts`, `start along left, from near`, `start carried on from old-walk`.',
      'Left out: along the first side, from its first corner. What is said here is kept; only then cuts are saved.'
    ),
    border: help(
      'A course of units along edges, or round something in the area',
      '`border block-charcoal in soldier-course all round`. The field is laid inside it; a second `border` lies inside the first.'
    ),
    band: help(
      'A course of units straight across the area',
      '`band block-charcoal in soldier-course across near at 3 m`: square to the near side, its middle 3 m along it.'
    ),
    'inboard-cuts': help(
      'The shortest piece a course may end in',
      '`inboard-cuts 50 mm`. Where a course would end in a shorter one, the unit before it is cut as well: two pieces of about the same length, with their joint kept off those of the courses beside. In stack and running bond.',
      'Left out: a course ends in what is left over.'
    ),
    bed: help(
      'The screeded sand under the units; thickness as finished',
      '`bed washed-sand 1 in`. It evens out the base by a little, no more; low spots are filled with base.',
      `${usual('bed')} The material: washed-sand, in Britain sharp-sand, as shipped.`
    ),
    base: help(
      'The compacted stone under the bed; it carries the load',
      '`base crushed-stone 6 in, 6 in past the edging`. Thickness as compacted.',
      'How thick stands with the words of `traffic`. Left out, the material is crushed-stone, in Britain type-1, as shipped.',
      LAYERS
    ),
    'sub-base': help(
      'A second layer of stone, under the base',
      '`sub-base crushed-stone 8 in`. Thickness as compacted. Standing alone it counts as the base.',
      LAYERS
    ),
    geotextile: help(
      'Cloth under the stone, so that soil and stone do not mix',
      '`geotextile separation-cloth`. Advised on clay and silt, and wherever fines can work up into the stone (PAV-TEC-002).',
      'Without a name: separation-cloth as shipped. Left out: none.'
    ),
    joints: help(
      'What is swept into the joints',
      '`joints filled with joint-sand`. Sweep it in dry, in more than one go, and stay out of the dust.',
      'Left out: joint-sand, in Britain kiln-dried-sand, as shipped.'
    ),
    edges: help(
      'What each side meets, and the edging that holds it',
      '`edges { all round meets lawn, edging spiked-strip }`. Paving on sand is held together from its edges: a side where nothing holds it needs edging (Tech Spec 3, edge restraints).'
    )
  },
  within: {
    outline: OUTLINE_WORDS,
    traffic: {
      foot: help(
        'People on foot, barrows, garden chairs',
        `Base in North America: at least 4 in (100 mm), usually 6 in (150 mm) where winters freeze (${FAQ}); 6 in too on clay, on soil that drains poorly or bears 5 % or less (Tech Spec 2, as quoted in public texts).`,
        'Base in Britain: at least 100 mm (common practice).'
      ),
      cars: help(
        'Cars and vans, such as on a drive',
        `Base in North America: at least 6 in (150 mm), usually 10 in (250 mm) where winters freeze (${FAQ}); 8 in (200 mm) on clay, on soil that drains poorly or bears 5 % or less (Tech Spec 2, as quoted in public texts).`,
        'Base in Britain: at least 150 mm, on clay 200 mm (common practice); by bearing ratio up to 300 mm (BS 7533 family, from memory).',
        'Units: blocks, not slabs; at least 2.36 in (60 mm) thick (ASTM C936, section 5.1).'
      ),
      trucks: help(
        'Trucks, such as for waste, oil or moving house',
        'A licensed engineer sets base, units and edges. What the rules know is only a least: base 8 in (200 mm), units at most 3 times as long as thick (both from memory) and at least 3 1/8 in (80 mm) thick (PAV-TEC-002-22).'
      ),
      turning: help(
        'Wheels that turn on the spot, such as at a garage',
        'Write it with what turns: `traffic cars, turning`. The base is judged as under cars.',
        'Turning pushes units sideways: full joints and firm edges matter most there (common practice).'
      )
    },
    finish: FINISH_WORDS,
    paving: { ...LIKE, ...PAVING_WORDS },
    start: START_WORDS,
    border: BORDER_WORDS,
    band: BAND_WORDS,
    bed: LAYER_WORDS,
    base: LAYER_WORDS,
    'sub-base': LAYER_WORDS,
    geotextile: LIKE,
    joints: {
      ...LIKE,
      ...together('filled with', help('What the joints are filled with', '`joints filled with joint-sand`'))
    }
  }
};
