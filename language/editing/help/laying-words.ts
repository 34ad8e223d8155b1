import { EDGE_WORDS } from './edge-words.ts';
import { help, together, usual, type Helps } from './help.ts';

const { near, right, far, left, leg, legs } = EDGE_WORDS as Record<string, (typeof EDGE_WORDS)[string]>;

/** How sides are named, in every statement that speaks of some. */
const WHERE: Helps = {
  near: near!,
  right: right!,
  far: far!,
  left: left!,
  leg: leg!,
  legs: legs!,
  ...together('the rest', help('Every side; in `edges` alone it means those not said otherwise')),
  and: help('Further sides', '`A to B and C to D`')
};

const JOINT_LIMITS =
  'Behind it may stand within which limits they may be opened or closed up, so that whole units fit: `joints 1/8 in from 1/16 to 3/16 in`. Without limits those that are usual count.';

const JOINTS = help(
  'How wide the joints are, and within which limits',
  '`joints 1/8 in`. 1/16 to 3/16 in, in Britain 2 to 5 mm (PAV-TEC-002 and BS 7533-3, from memory).',
  JOINT_LIMITS,
  usual('joint')
);

const LEAST = help('The narrowest that a joint may become', '`joints 1/8 in from 1/16 to 3/16 in`');
const MOST = 'The widest that a joint may become';

export const PAVING_WORDS: Helps = {
  in: help(
    'The bond that the units are laid in',
    '`in running-bond`, `in herringbone-45`. How each looks shows on its name.'
  ),
  joints: JOINTS,
  from: LEAST,
  to: help(MOST, '`joints 1/8 in from 1/16 to 3/16 in`')
};

export const START_WORDS: Helps = {
  ...WHERE,
  ...together(
    'whole units',
    help(
      'Along these sides no unit is cut',
      '`start whole units along A to B`, or several: `whole units along A to B and C to D`. Along two that face each other joints are opened or closed up within their limits.'
    )
  ),
  along: help(
    'The side that the courses run along',
    '`start along left`. Left out: along the first side; with `whole units along` along that one.'
  ),
  ...together(
    'equal cuts',
    help('The same cut at both ends of the courses', '`start along near, equal cuts`: it looks as if it were meant so.')
  ),
  from: help(
    'The corner that the first unit lies in, or what joint lines come from',
    '`from C`, or by the side beside the one along which courses run: `along near, from right`. Left out: where that side begins.'
  ),
  shifted: help(
    'The first unit lies so far on: along the courses, then across them',
    '`shifted (40, 0) mm`; back is below nought.'
  ),
  turned: help('The courses run turned, anticlockwise', '`turned 45 degrees`; clockwise is below nought.'),
  ...together(
    'carried on',
    help(
      'Joint lines go on from another area, or from paving that is there',
      '`carried on from drive`. Of paving that is there say `joint-line at A`, and in `edges` which side meets it.'
    )
  ),
  to: help('From point to point, or from leg to leg', '`along A to B`, `along legs 2 to 4`'),
  ...together('all round', help('Every side, all the way round', '`whole units along all round`'))
};

const SOLDIER = help(
  'Units side by side, their long sides square to the edge',
  'The border is as wide as a unit is long.'
);
const SAILOR = help('Units end to end, their long sides along the edge', 'The border is as wide as a unit is wide.');

const COURSES: Helps = { 'soldier-course': SOLDIER, 'sailor-course': SAILOR };

const COURSE_IN = help(
  'How the units lie: soldier-course or sailor-course',
  '`in soldier-course`: long sides square to the edge. `in sailor-course`: long sides along it.'
);

export const BORDER_WORDS: Helps = {
  ...WHERE,
  ...COURSES,
  in: COURSE_IN,
  along: help('The sides that the border lies along', '`along A to B and C to D`, `along near`'),
  all: help('Along every side, all the way round', '`border block-charcoal in soldier-course all round`'),
  round: help(
    'Along every side; or round a box, pit or inset, by its name',
    '`border block in soldier-course all round`, `border block in sailor-course round valves`.'
  ),
  except: help(
    'Sides along which there is none',
    '`all round except left`, `all round except T1 to T4`. There the border ends square.'
  ),
  mitred: help('At corners the units of both sides are cut to meet in the middle', 'Each unit at a corner is cut.'),
  butted: help('At corners the one side runs through, the other ends against it', 'Left out: so.'),
  joints: JOINTS,
  from: LEAST,
  to: help(`From point to point; of joints ${MOST.charAt(0).toLowerCase()}${MOST.slice(1)}`)
};

export const BAND_WORDS: Helps = {
  ...WHERE,
  ...COURSES,
  in: COURSE_IN,
  across: help(
    'The side that the band stands square to',
    '`across A to B at 3 m`: it runs from there to the other side of the area.'
  ),
  ...together('all round', help('Every side; a band stands square to one', '`across near at 3 m`')),
  at: help('How far along that side its middle lies', '`across A to B at 3 m`, measured from A.'),
  joints: JOINTS,
  from: LEAST,
  to: help(`From point to point; of joints ${MOST.charAt(0).toLowerCase()}${MOST.slice(1)}`)
};
