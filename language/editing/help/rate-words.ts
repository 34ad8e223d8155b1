import { help, together, type BlockHelp, type Helps } from './help.ts';
import { RULE_WORDS } from './rule-words.ts';
import { TASK_HELP } from './task-words.ts';

const SEVERAL = help('Several tasks', '`of base and bed`');
const ALL_HOLD = help('All of them have to hold', '`when hand and clay`');

const WHEN: Helps = {
  and: ALL_HOLD,
  hand: help('What is dug by hand', '`dig by hand` of the job'),
  machine: help('What is dug by machine', '`dig by machine` of the job'),
  block: help('Units that one hand lays', 'Smaller than about 300 mm (12 in) square.'),
  slab: help('Larger units than blocks', 'From about 300 mm (12 in) square on.'),
  'clay-units': help('Units that are made of clay'),
  herringbone: help('Units that lie in any herringbone bond'),
  'basket-weave': help('Units that lie in basket weave'),
  concrete: help('Edging that is set on concrete'),
  spikes: help('Edging that is held by spikes'),
  edging: help('Concrete that edging is set on'),
  drain: help('Concrete that a channel is set on'),
  channel: help('Drains that are channels'),
  gully: help('Drains that are gullies'),
  raise: help('Boxes whose lid is raised'),
  lower: help('Boxes whose lid is lowered'),
  tray: help('Boxes whose lid has a tray to pave'),
  bury: help('Boxes that are cut down and buried'),
  bound: help('Joint filler that sets'),
  unbound: help('Joint filler that stays loose, and is swept in a second time')
};

export const RATE_BLOCK_WORDS: BlockHelp = {
  statements: {
    of: help('The task whose time it tells', '`of laying`; of several tasks alike: `of base and bed`.'),
    when: help(
      'Where it counts: words, or names of a soil, bond, unit or material',
      '`when hand and clay`: all have to hold. Of several rates that do, the one with the most words counts. Left out: always.'
    ),
    takes: help(
      'How long one person takes, and for how much',
      '`takes 1.5 h per m2`, `per m`, `per m3`, `per tonne`, `3 min per piece`, or `2 h for the job`.'
    ),
    includes: help(
      'Tasks that are done on the way, and take no time of their own',
      '`includes bed and joints`, where the time for laying holds them already.'
    ),
    cites: help(
      'Where the figure comes from, and the place in it',
      '`cites price-book, "Q24"`, and `from-memory` or `as-quoted` behind it where it was not read there. Of several sources each has a line. Left out: it counts as your own.'
    )
  },
  within: {
    of: { ...TASK_HELP, and: SEVERAL },
    when: WHEN,
    takes: {
      piece: help('For each piece: a cut, a box, a barrow wheeled', '`takes 3 min per piece`'),
      ...together('for the job', help('For the job, whatever its size', '`takes 2 h for the job`'))
    },
    includes: { ...TASK_HELP, and: SEVERAL },
    cites: RULE_WORDS.within!['cites']!
  }
};
