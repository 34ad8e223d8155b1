import { help, type BlockHelp, type Helps } from './help.ts';
import { JOB_WORDS } from './job-words.ts';
import { CHANGE_WORDS, PREFER_WORDS, TREAT_WORDS } from './severity-words.ts';

export const RULEBOOK_WORDS: BlockHelp = {
  statements: {
    title: help('What the rulebook is called', '`title "Our town"`'),
    edition: help('Which edition, or which year', '`edition "2026"`'),
    includes: help(
      'Other rulebooks whose rules belong to this one too',
      '`includes north-america`. A rule here stands over one of the same name there.'
    ),
    show: help(
      'How numbers are shown in jobs that name this rulebook',
      '`show metric`. What the job itself says comes first.'
    ),
    ...CHANGE_WORDS
  },
  within: { show: JOB_WORDS.within!['show']!, treat: TREAT_WORDS, prefer: PREFER_WORDS }
};

/** The rulebooks that ship. */
export const RULEBOOK_LORE: Helps = {
  everywhere: help('Rules that hold wherever paving is laid', 'The rulebooks of countries include them.'),
  'north-america': help(
    'Rules as published in the United States and Canada',
    'Guidance of the paving associations, standards such as ASTM C936, and common practice, each marked as what it is.'
  ),
  britain: help(
    'Rules as in British practice',
    'Standards such as BS 7533 and EN 1338, mostly from memory, and common practice, each marked as what it is.'
  )
};
