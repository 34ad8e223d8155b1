import { help, together, type Helps } from './help.ts';

/** How much a rule weighs. */
export const SEVERITY_WORDS: Helps = {
  error: help(
    'It has to be put right',
    'Only where the rule rests on a source that was read, or is about safety. What rests on practice or memory counts as a warning.'
  ),
  warning: help('It should be looked at, and mostly put right'),
  note: help('Good to know')
};

/** What a job and a rulebook change in rules that they have from elsewhere. */
export const CHANGE_WORDS: Helps = {
  treat: help(
    'Raises or lowers a rule: error, warning or note',
    '`treat base-thinner-than-usual as note`, or several: `treat base-too-thin, bed-thickness as warning`.'
  ),
  prefer: help(
    'Which rule is heard where two of them collide',
    '`prefer clay-joint over joint-width`: where the first applies to a thing, the second is not told of it.'
  )
};

export const TREAT_WORDS: Helps = {
  ...together('as', help('What the rule counts as from here on', '`as note`')),
  ...SEVERITY_WORDS
};

export const PREFER_WORDS: Helps = together('over', help('The rule that is not told then', '`over joint-width`'));
