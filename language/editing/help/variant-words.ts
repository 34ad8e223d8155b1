import { help, type BlockHelp } from './help.ts';

/** The words inside a `variant`. */
export const VARIANT_WORDS: BlockHelp = {
  statements: {
    area: help(
      'What differs in an area',
      '`area drive { base open-graded-stone 300 mm }`: each statement stands instead of those of the same word in the area; one that is not there is added.'
    ),
    drain: help(
      'What differs in a channel or gully, or that it is left out',
      '`drain garage-channel none`, or `drain garage-channel { grate 9.975 m }`. Sides that meet a drain that is left out count as held there.'
    ),
    price: help(
      'What something costs in this variant',
      '`price washed-sand { bag of 0.5 cu ft for 4.98 USD }`: stands instead of the whole price of the thing, so that loose can be held against bagged.'
    ),
    variant: help(
      'A variant holds no other: give each its own block',
      'What several variants share is written in each of them.'
    )
  },
  within: {
    drain: { none: help('The drain is left out', '`drain garage-channel none`') },
    price: { from: help('The supplier that it is from', '`price washed-sand from gravel-pit { … }`') }
  }
};
