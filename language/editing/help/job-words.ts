import { help, together, usual, type BlockHelp } from './help.ts';
import { MONEY_WORDS } from './money-words.ts';
import { CHANGE_WORDS, PREFER_WORDS, TREAT_WORDS } from './severity-words.ts';
import { WORK_WORDS } from './work-words.ts';

export const JOB_WORDS: BlockHelp = {
  statements: {
    rules: help(
      'Whose rules the job is checked against',
      '`rules north-america` or `rules britain`; with both, each is checked: `rules north-america, britain`. What they ask, and by whose word, stands on the page of each finding. A rulebook of your own may stand beside them.',
      'Left out: nothing is checked. Local codes and licensed practice stand over all of them.'
    ),
    show: help(
      'How numbers are shown: feet and inches, or metric',
      '`show feet-and-inches` or `show metric`. You may write either, in one file too.',
      'Left out: metric with the rules of Britain, else feet and inches.'
    ),
    currency: help(
      'The currency of the job, by its three letters',
      '`currency USD`. All money of the job is in it: nothing is exchanged.'
    ),
    breakage: help(
      'Units added for those that break, as a share of the units used',
      '`breakage 2 %`. It is added in sight, as a line of its own. Left out: none.'
    ),
    keep: help(
      'Units put by for repairs, added to what is bought',
      '`keep 4 slab-16`, once for each unit. A later batch seldom has the same colour (common practice).'
    ),
    'saw-cut': help(
      "How much of the unit the saw's blade takes with each cut",
      '`saw-cut 3 mm`. It counts where several pieces are cut out of one unit.',
      `${usual('saw-cut')} Cut wet, with lungs, eyes and ears protected: the dust scars lungs for good.`
    ),
    offcuts: help(
      'Whether what is left of a cut unit may go to another area',
      '`offcuts within each area`: each area uses its own offcuts only, such as where areas are laid months apart.',
      'Left out: an offcut may be used anywhere in the job where the same unit lies.'
    ),
    dig: help(
      'Whether it is dug by hand or by machine',
      '`dig by hand`, or `dig by machine, 1.5 t`. Near pipes and lines dig by hand; have them located first.'
    ),
    access: help(
      'How wide the way in is, and how long the barrow run',
      '`access 3 ft wide, barrow run 85 ft`: one way. It tells what gets through, and how far all of it is wheeled.'
    ),
    'barrow-load': help(
      'How much a barrow holds',
      '`barrow-load 3 cu ft`. Left out: 3 cu ft, in Britain 85 l (common practice).'
    ),
    'truck-load': help(
      'How much a truck takes',
      '`truck-load 8 t`. It tells how many loads go away. Left out: not told.'
    ),
    note: help('A note that is printed with the job', '`note "Shut-off is in the garage."`'),
    ...CHANGE_WORDS,
    ...WORK_WORDS.statements,
    ...MONEY_WORDS.statements
  },
  within: {
    dig: {
      by: help('By hand or by machine', '`dig by hand`'),
      hand: help('With spade and barrow', '`dig by hand`'),
      machine: help('With a digger; its mass may follow', '`dig by machine, 1.5 t`')
    },
    access: {
      wide: help('The narrowest place of the way in', '`access 3 ft wide`'),
      ...together('barrow run', help('How far it is wheeled, one way', '`barrow run 85 ft`'))
    },
    show: {
      'feet-and-inches': help(
        'Feet and inches, to the nearest sixteenth as on a tape',
        'Areas in sq ft, stone in cu yd, sand in cu ft, masses in short tons (2,000 lb) and lb.'
      ),
      metric: help('Metres and millimetres', 'Areas in m2, volumes in m3, masses in tonnes and kg.')
    },
    currency: {
      USD: help('US dollars'),
      GBP: help('British pounds'),
      EUR: help('Euros'),
      CAD: help('Canadian dollars'),
      AUD: help('Australian dollars'),
      NZD: help('New Zealand dollars')
    },
    offcuts: together('within each area', help('Offcuts stay in the area that they come from')),
    treat: TREAT_WORDS,
    prefer: PREFER_WORDS,
    ...WORK_WORDS.within,
    ...MONEY_WORDS.within
  }
};
