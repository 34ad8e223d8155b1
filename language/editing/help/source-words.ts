import { help, type BlockHelp } from './help.ts';

export const SOURCE_WORDS: BlockHelp = {
  statements: {
    kind: help(
      'What it is: a standard, a code, guidance, a handbook, practice',
      '`kind handbook`. A rule that rests on practice or memory alone is never an error, unless it is about safety.'
    ),
    title: help('What it is called, as on its cover', '`title "Town paving leaflet"`. Practice and memory need none.'),
    edition: help('Which edition, or which year', '`edition "2024"`')
  },
  within: {
    kind: {
      standard: help('A published standard'),
      code: help('A code or regulation', 'What holds at a place the authority there decides.'),
      'association-guidance': help('Guidance of a trade association'),
      handbook: help("A handbook, a leaflet, a maker's instructions"),
      'common-practice': help('What the trade does, without a source', 'A rule that rests on it alone is no error.'),
      memory: help('Known by heart, and not read again', 'A rule that rests on it alone is no error.')
    }
  }
};
