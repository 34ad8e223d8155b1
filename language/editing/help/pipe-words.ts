import { help, together, type BlockHelp } from './help.ts';

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
