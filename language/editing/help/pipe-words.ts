import { help, together, type BlockHelp } from './help.ts';

const LOCATED = 'Have public **and** private lines located before digging, and dig near them by hand.';

export const PIPE_WORDS: BlockHelp = {
  statements: {
    from: help(
      'The ends of the pipe: boxes, drains or points',
      '`from valves to old-sprinkler`; further ones may follow with `to`. It is taken as straight from one to the next; it seldom is.'
    ),
    depth: help(
      'How deep it lies below the ground of today',
      '`depth about 10 in, not proven`. A depth from a drawing or from hearsay is a reason to dig by hand, never to dig.',
      'Have public **and** private lines located before digging.'
    ),
    carries: help('What runs in it, in a word', '`carries water`')
  },
  within: {
    carries: {
      gas: help(
        'A gas pipe',
        `Leave it be: who smells gas stops all work, goes away and calls the network. ${LOCATED}`
      ),
      power: help('A power cable', LOCATED),
      water: help('Drinking water', LOCATED),
      irrigation: help('Water for the garden', 'It is seldom on any drawing and lies shallow.'),
      drainage: help('Rain water, to a soakaway, a ditch or a rain drain'),
      sewer: help('Waste water'),
      telecoms: help('Telephone, data, television', LOCATED),
      lighting: help('Lights of the garden', 'It is seldom on any drawing and lies shallow: take it for live.'),
      unknown: help('Nobody knows', 'Take it for the worst that it could be.')
    },
    from: { to: help('The other end, or the next bend', '`from valves to old-sprinkler`') },
    depth: {
      about: help('A depth that nobody has measured', '`depth about 10 in`'),
      proven: help(
        'It was dug up by hand and measured',
        '`depth 10 in, proven`. So deep it lies there, and only there.'
      ),
      ...together('not', help('Nobody has dug it up by hand to measure it', '`depth about 10 in, not proven`'))
    }
  }
};
