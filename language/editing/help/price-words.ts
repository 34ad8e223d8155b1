import { help, together, type BlockHelp, type Helps } from './help.ts';
import { SOURCE } from './kind-words.ts';

const PRICES = help(
  'The day on which the prices were told, and how long they hold',
  '`prices on 2026-03-01, valid 60 days`. Written in a price it stands over what the supplier says. Past its last day a price is pointed out.'
);

const TAX = help(
  'Whether tax is in the price, or comes on top of it',
  '`tax included` at the till, `tax added` on most trade price lists. Written in a price it stands over what the supplier says.'
);

const TERMS: BlockHelp = {
  statements: { prices: PRICES, tax: TAX },
  within: {
    prices: {
      on: help('The day of the price list', '`prices on 2026-03-01`'),
      valid: help('How long the prices hold from then', '`valid 60 days`. Left out: they are never called old.')
    },
    tax: {
      included: help('Tax is in the price'),
      added: help('Tax comes on top of the price')
    }
  }
};

const LOAD = help(
  'What is charged for bringing one load, and what one load carries',
  '`delivery 65 USD a load, load 8 short ton`. By volume too: `load 6 m3`.'
);

export const SUPPLIER_WORDS: BlockHelp = {
  statements: {
    ...TERMS.statements,
    delivery: help(
      'What bringing it costs, and the least that is brought',
      '`delivery 65 USD a load, load 8 short ton, least order 2 short ton, free from 500 USD`. Left out: nothing is added, as for what you fetch.'
    )
  },
  within: {
    ...TERMS.within,
    delivery: {
      ...together('a load', LOAD),
      ...together(
        'least order',
        help('The least that is brought', '`least order 2 short ton` or `least order 100 USD`')
      ),
      ...together('free from', help('From this order on bringing it costs nothing', '`free from 500 USD`'))
    }
  }
};

const STEPS = help('Only sold in such steps', '`loose for 38 USD per short ton, in steps of 1/2 short ton`');

const SOLD: Helps = {
  for: help('What it costs: one pack, or for so much of a measure', '`for 38 USD per short ton`, `for 3.95 USD`'),
  ...together('in steps', STEPS),
  of: help(
    'What one pack holds; or the steps that are sold',
    '`pallet of 90`, `bag of 25 kg`, `in steps of 1/2 short ton`'
  ),
  ...together('at least', help('The least that is sold', '`at least 1 short ton`, `at least 4`')),
  from: help(
    'A lower price from so much on, for all of it',
    '`bag of 0.5 cu ft for 4.98 USD, from 56 for 4.49 USD`. Several are written with the least first.'
  ),
  deposit: help('Given back with the pallet or bag', '`pallet of 90 for 315 USD, deposit 20 USD`'),
  weight: help('What one pack weighs', '`bag of 0.5 cu ft for 4.98 USD, weight 50 lb`. It counts for loads.')
};

const STATEMENTS: Helps = {
  ...TERMS.statements,
  loose: help(
    'Loose, by mass, volume, area or length',
    '`loose for 38 USD per short ton, in steps of 1/2 short ton, at least 1 short ton, from 10 short ton for 35 USD per short ton`'
  ),
  piece: help('By the single piece', '`piece for 3.95 USD`'),
  pack: help(
    'By the pack of so many pieces, or of so much area',
    '`pack of 430 for 210 GBP`, `pack of 8.6 m2 for 210 GBP`'
  ),
  'pack-layer': help('By the layer of a pallet', '`pack-layer of 15 for 57 USD`'),
  pallet: help('By the pallet', '`pallet of 90 for 315 USD, deposit 20 USD, weight 3900 lb`'),
  bag: help('By the bag, of so much mass or volume', '`bag of 25 kg for 4.20 GBP`, `bag of 0.5 cu ft for 4.98 USD`'),
  'bulk-bag': help('By the bulk bag', '`bulk-bag of 850 kg for 62 GBP, deposit 10 GBP`'),
  roll: help(
    'By the roll: width x length, or its area',
    '`roll of 12 1/2 x 432 ft for 285 USD`, `roll of 500 sq ft for 85 USD`'
  ),
  length: help(
    'By the length of edging, of so long a piece',
    '`length of 915 mm for 6.20 GBP`; that of `curve-pieces` is the price of the pieces for curves: `length of 305 mm for 3.10 GBP`'
  ),
  'box-of': help('By the box of so many', '`box-of 24 for 30 GBP`'),
  'mixed-pack': help(
    'A pack of several sizes, under a name of its own',
    '`price cobble-mix { mixed-pack of 10 cobble-a and 5 cobble-b for 220 USD }`'
  ),
  'according-to': SOURCE
};

const WITHOUT_CLAUSES = ['prices', 'tax', 'according-to'];

export const PRICE_WORDS: BlockHelp = {
  statements: STATEMENTS,
  within: {
    ...TERMS.within,
    ...Object.fromEntries(
      Object.keys(STATEMENTS)
        .filter(word => !WITHOUT_CLAUSES.includes(word))
        .map(word => [word, SOLD])
    ),
    'mixed-pack': { ...SOLD, and: help('One more size', '`10 cobble-a and 5 cobble-b`') }
  }
};

/** Amounts by the pack, in stock and in the log. */
export const PACK_COUNTS: Helps = {
  pack: help(
    'So many packs; what one holds stands in the unit or its price',
    '`delivered block-red 9 pack`, `stock 2 pack block-red`, with `pack 430` in the unit'
  ),
  'pack-layer': help('So many layers of a pallet', '`stock 2 pack-layer slab-16`'),
  pallet: help('So many pallets; what one holds stands in its price', '`delivered slab-16 2 pallet`'),
  bag: help('So many bags; what one holds stands in its price', '`delivered plain-sand 12 bag`'),
  'bulk-bag': help('So many bulk bags', '`delivered sharp-sand 2 bulk-bag`'),
  roll: help('So many rolls', '`stock 1 roll separation-cloth`')
};
