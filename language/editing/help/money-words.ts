import { help, together, type BlockHelp, type Helps } from './help.ts';
import { TASK_HELP } from './task-words.ts';

const SHARES_OF: Helps = {
  of: help('What it is a share of', '`8 % of materials`. Left out: of all costs.'),
  materials: help('Of all that is bought, with its delivery'),
  labour: help('Of what the hours of the crew cost'),
  costs: help('Of all costs')
};
const HIRED_FOR = help('The tasks that it is needed for', '`for base and vibrating`. Left out: for the whole job.');
const A = help('For each day or week that it is kept', '`45 GBP a day`, `210 GBP a week`');
const CONTAINER = help(
  'By the container: what it takes, and what one costs',
  '`container of 6 m3, 8 tonne, for 290 GBP`'
);

/** Money besides the prices of what is bought. */
export const MONEY_WORDS: Required<BlockHelp> = {
  statements: {
    labour: help(
      'What an hour of one person costs',
      '`labour 24 GBP per hour`. Doing it yourself: leave it out, and the hours are told without money.'
    ),
    hire: help(
      'Something hired, by the day, the week or for the job',
      '`hire "Plate compactor" 45 GBP a day, for base and vibrating`. Say it once for each thing.'
    ),
    disposal: help(
      'What taking away dug soil and rubble costs',
      '`disposal 28 GBP per tonne`, `per m3` or `per load`, or by the container: `disposal container of 6 m3, 8 tonne, for 290 GBP`.',
      'A container is full by what it holds or by what it may weigh, whichever comes first.'
    ),
    contingency: help(
      'A share put by for what nobody foresaw',
      '`contingency 8 % of materials`, `of labour` or `of costs`. Left out: none.'
    ),
    overhead: help(
      'What runs on whatever the job: van, insurance, telephone',
      '`overhead 10 %`: of the costs. Left out: none.'
    ),
    margin: help(
      'What is left for you, as a share of the price',
      '`margin 18 %`: of a price of 100 it is 18, and the costs are 82. `markup 22 %` of the costs comes to about the same.'
    ),
    markup: help(
      'What is left for you, as a share of the costs',
      '`markup 25 %`: costs of 80 make a price of 100, of which it is a fifth. It is no margin of 25 %.'
    ),
    tax: help('Sales tax or value added tax on the price', '`tax 20 %`. Left out: no tax is added.'),
    extra: help(
      'A cost of your own: an amount, or a share',
      '`extra "Dropped kerb" 1250 GBP, untaxed, no margin`, or `extra "Small tools" 2 % of labour`. Below nought it is taken off.'
    ),
    excludes: help(
      'What the price does not hold; it stands on the quote',
      '`excludes "Work inside the footway; moving any service"`'
    ),
    client: help('Whom the job is for; it stands on the quote', '`client "The household"`'),
    quote: help(
      'The name of the quote, its day, and how long it holds',
      '`quote "quote-1" on 2026-03-02, valid 30 days`'
    )
  },
  within: {
    hire: {
      ...TASK_HELP,
      a: A,
      day: A,
      week: A,
      for: HIRED_FOR,
      and: HIRED_FOR,
      ...together('the job', help('One amount, however long it takes', '`80 GBP for the job`'))
    },
    disposal: {
      load: help('For each load of a truck', '`disposal 60 GBP per load`. What a truck takes says `truck-load`.'),
      ...together('container of for', CONTAINER)
    },
    contingency: SHARES_OF,
    extra: {
      ...SHARES_OF,
      untaxed: help('No tax is added to it', '`extra "Permit of the road authority" 80 GBP, untaxed`'),
      ...together(
        'no margin',
        help('It is passed on at cost: no overhead, and no margin', '`extra "Dropped kerb" 1250 GBP, no margin`')
      )
    },
    quote: {
      on: help('The day of the quote', '`on 2026-03-02`'),
      valid: help('How long it holds from that day', '`valid 30 days`')
    }
  }
};
