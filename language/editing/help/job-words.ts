import { help, type BlockHelp } from './help.ts';
import { CHANGE_WORDS, PREFER_WORDS, TREAT_WORDS } from './severity-words.ts';

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
      '`currency USD`. Nothing is priced yet: it only stands in the numbers for other programs.'
    ),
    ...CHANGE_WORDS
  },
  within: {
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
    treat: TREAT_WORDS,
    prefer: PREFER_WORDS
  }
};
