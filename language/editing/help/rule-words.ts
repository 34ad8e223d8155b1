import { help, together, type BlockHelp, type Helps } from './help.ts';
import { SEVERITY_WORDS } from './severity-words.ts';

const AND = together(
  'and',
  help('Both have to hold', '`when traffic is cars and soil is clay`. `and` binds closer than `or`.')
);
const OR = together(
  'or',
  help('One of them is enough', '`when soil is clay or drainage is poorly`. `and` binds closer than `or`.')
);
const IS: Helps = {
  is: help(
    'One of these words, or names',
    '`soil is clay, silt` means either; `soil is not clay`. `clay` also means a `stiff-clay`.',
    'What the job does not say is neither one word nor another.'
  ),
  not: help('None of these words, or names', '`soil is not clay`'),
  said: help('Whether the job says it at all', '`when topsoil is said`, `when topsoil is not said`')
};
const LIMITS: Helps = {
  at: help(
    'At least or at most: the limit itself passes',
    '`base at least 4 in (100 mm)`: in brackets the same limit, round in the other measures.',
    'With something that the job does not say nothing is compared.'
  ),
  least: help('As much as this, or more', '`base at least 4 in (100 mm)`'),
  most: help('As much as this, or less', '`joint at most 3/16 in (5 mm)`'),
  more: help('More than this: the limit itself does not pass', '`length more than 16 in`'),
  less: help('Less than this: the limit itself does not pass', '`length less than 16 in`'),
  than: help('Before the limit, which itself does not pass', '`more than 16 in`, `less than 16 in`')
};
const CONDITION: Helps = { ...AND, ...OR, ...IS, ...LIMITS };

export const RULE_WORDS: BlockHelp = {
  statements: {
    title: help('What the rule is about, in a few words', '`title "Base too thin on clay"`'),
    about: help(
      'Why it matters, and what to do: a paragraph of its page',
      '`about "Clay softens when it is wet."` Write several for several paragraphs.'
    ),
    severity: help(
      'How much it weighs: error, warning or note',
      '`severity note`. Left out: a warning. What rests on practice or memory alone is no error.'
    ),
    safety: help('The rule is about harm to people', '`safety`. It may then be an error whatever it rests on.'),
    concerns: help(
      'What kind of thing the rule looks at',
      '`concerns area`. What stands below it belongs to it; a rule may look at several kinds, each with a `concerns` of its own.'
    ),
    when: help('Where the rule applies; several of them all have to hold', '`when traffic is foot and soil is clay`'),
    needs: help(
      'What has to be so; where it is not, the rule is told',
      '`needs base at least 5 in`, or only in some cases: `needs base at least 5 in when soil is clay`. Write `says` below it.'
    ),
    says: help(
      'The message: texts in quotes, and quantities between them',
      '`says "The base of " area " is " base "; " needed " at least."`',
      'It tells of every `needs` above it that nothing was said of yet. `needed` is the limit, `missing` by how much it is missed.'
    ),
    fix: help(
      'What mends it: a quantity, and what to write there',
      '`fix base to needed`. It is offered, and never done unasked unless it says `safely`.'
    ),
    cites: help(
      'Where the rule comes from, and the place in it',
      '`cites town-leaflet, "page 2"`. How it is known stands behind it: `from-memory`, `as-quoted`; else it was read there.'
    ),
    engineer: help('When to ask a licensed engineer', '`engineer "Ask a licensed engineer where the ground is soft."`'),
    wrong: help(
      'An example that the rule is told of',
      'A small job spec in braces, with no more in it than it takes: `wrong { area terrace { base crushed-stone 3 in } }`. It counts only here.'
    ),
    right: help(
      'An example that keeps the rule',
      'A small job spec in braces: `right { area terrace { base crushed-stone 6 in } }`. It counts only here.'
    )
  },
  within: {
    severity: SEVERITY_WORDS,
    concerns: {
      area: help('Every area, with all that is in it'),
      layer: help('Every layer of every area: bed, base, sub-base'),
      side: help('Every side of every area, with what it meets'),
      unit: help('The units of every area'),
      material: help('Every material of layers and joints'),
      site: help('The site, once for the job'),
      gate: help('Every gate and door of the job'),
      box: help('Every box: what lies under a lid'),
      pipe: help('Every pipe or cable that is there'),
      drain: help('Every channel and gully'),
      route: help('Every way that must be free of steps'),
      tape: help('Every distance read on a tape'),
      reading: help('Everything that the log says was measured'),
      delivery: help('Every material or unit that was delivered')
    },
    when: CONDITION,
    needs: { ...CONDITION, when: help('Only in these cases', '`needs base at least 5 in when soil is clay`') },
    says: {},
    fix: {
      to: help('What is written there', '`fix base to needed`, `fix base to base + missing`'),
      safely: help('It changes no meaning, so it may be done unasked', 'Only what means the same may be done unasked.')
    },
    cites: {
      'from-memory': help('Not read again there: check it before you lean on it'),
      'as-quoted': help('Not read there, but as other texts quote it')
    }
  }
};

/** What a need comes to. */
export const WORKED_WORDS: Helps = {
  needed: help('The limit that the comparison asks for', 'Of the `needs` above that is missed by most.'),
  missing: help('By how much the limit is missed', 'Of the `needs` above that is missed by most.')
};
