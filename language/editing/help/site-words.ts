import { HEIGHT_WORDS } from './height-words.ts';
import { help, together, type BlockHelp } from './help.ts';

/** How to find out whether a soil drains. */
export const PUDDLE =
  'Have lines located first. Dig a hole of about 1 ft (300 mm), to where the dig will end; fill it with water, let it soak away, and fill it again. Gone within a few hours: it drains well. Still there next day: poorly (common practice).';

export const SITE_WORDS: BlockHelp = {
  statements: {
    soil: help(
      'The soil below the topsoil, and how it drains',
      '`soil clay, poorly-drained`, or with a measured bearing ratio: `soil clay, bearing 3 %`. It tells how much dug soil grows and weighs, and how thick the base should be.',
      'Left out: common-earth as shipped. How to tell soils by hand stands with each of them.'
    ),
    topsoil: help(
      'How thick the dark, living soil on top is; it is never built on',
      '`topsoil 5 in`. Topsoil rots, holds water and gives way: the dig goes down through it (common practice).',
      'Left out: it is not checked.'
    ),
    winters: help(
      'Whether the ground freezes in winter: freeze or mild',
      '`winters freeze`. Wet ground lifts when it freezes, so bases are usually thicker there.',
      'Left out: judged as mild.'
    ),
    benchmark: help(
      'A mark that heights are measured from, such as a door sill',
      '`benchmark door-sill`, or with a height of its own: `benchmark floor 10.000 m`, or by another: `benchmark step 4 in below door-sill`. Choose one that will not be moved.'
    ),
    ground: help(
      'How high the ground is today, where the area will be',
      '`ground 3 in below door-sill`. Take the mean of a few readings. With the finish and the layers it tells how deep to dig.',
      'Left out: the ground is taken as level with the finish. Heights at points stand in `heights`, and then count instead.'
    ),
    'break-line': help(
      'Points along which the ground bends: the top or foot of a bank',
      '`break-line P to Q to R`. Between heights the ground is plane; no plane is laid across this line.'
    ),
    planning: help(
      'What was settled about leave to build, in your own words',
      '`planning "front garden over 5 m2: drains to own soakaway"`. It answers what the rules ask; the local authority has the word.'
    )
  },
  within: {
    soil: {
      bearing: help(
        'The bearing ratio (CBR) of the soil, where it was measured',
        '`bearing 3 %`. Soil of 3 to 5 % is poor, 6 to 8 % fair, 9 % and more good (a pavement design course text). It counts before the name of the soil. No guess by hand stands in for the test.'
      ),
      'poorly-drained': help(
        'Water stands in it for a day or more',
        PUDDLE,
        'North America: 2 in (50 mm) more base than the least is usual on such soil (Tech Spec 2, as quoted in public texts).'
      ),
      'well-drained': help('Water is gone within hours', PUDDLE)
    },
    winters: {
      freeze: help(
        'The ground freezes in most winters',
        'North America: a base of 6 in (150 mm) under foot traffic and 10 in (250 mm) under cars is usual there (Interlocking Concrete Pavement Institute, frequently asked questions, 2015).',
        'Soil heaves where it freezes, holds water, and gets more from below: leading water away counts as much as stone. How deep frost goes at your place stands in the local code.'
      ),
      mild: help('The ground seldom freezes', 'Bases are then judged by traffic and soil alone.')
    },
    topsoil: together(
      'kept for backfill',
      help('The topsoil stays on the site', '`topsoil 5 in, kept for backfill`: it is not carted away.')
    ),
    benchmark: HEIGHT_WORDS,
    ground: HEIGHT_WORDS,
    'break-line': { to: help('On to the next point', '`break-line P to Q to R`') }
  }
};
