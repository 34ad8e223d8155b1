import { LARGEST_BLOCK_FACE_WORDS } from '../../quantities/block-face.ts';
import { help, together, type BlockHelp } from './help.ts';

export const UNIT_WORDS: BlockHelp = {
  statements: {
    size: help(
      'Length x width x thickness of one unit, without the joint',
      '`size 200 x 100 x 60 mm`: the measure at the end counts for all. The length lies along the course.'
    ),
    made: help('What the units are made of: concrete or clay', '`made of clay`. Left out: concrete.'),
    colour: help('The colour, as a note', '`colour buff`. One word; nothing is worked out from it.'),
    weight: help(
      'What one unit weighs',
      '`weight 42 lb`. From about 44 to 55 lb (20 to 25 kg) on let two people or a machine lift (British guidance, from memory).'
    ),
    shape: help(
      'The shape of its face: rectangle or hexagon',
      '`shape hexagon`, with `size 200 x 173 x 60 mm`: across its corners, across its flats, thickness. Left out: rectangle.'
    ),
    'finished-edge': help(
      'One long side is finished, and stays on the outside',
      'Such as the rounded edge of a coping, over a step or round a pool. Cut pieces of it keep that side outside too.'
    ),
    set: help(
      'The units are tapped down by hand, not vibrated',
      '`set by hand`. For large slabs that a plate would crack; the bed is then screeded to its finished thickness.'
    ),
    pack: help(
      'How many are in a pack',
      '`pack 430`. The log may then count packs: `delivered block-red 9 pack`. What a pack costs stands in a `price`.'
    )
  },
  within: {
    set: together('by hand', help('Tapped down by hand, not vibrated', '`set by hand`')),
    shape: {
      rectangle: help('Oblong or square, with right angles'),
      hexagon: help(
        'Six sides alike, laid in `hexagons`',
        'Its size is across its corners, across its flats, thickness. Across the corners it is 1.155 times as long as across the flats.'
      )
    },
    made: {
      of: help('What the units are made of: concrete or clay'),
      concrete: help(
        'Cast concrete blocks or slabs',
        `A block has a face of at most ${LARGEST_BLOCK_FACE_WORDS} and is at most 4 times as long as thick (ASTM C936, section 5.1); larger or longer ones are slabs, and not for wheels.`
      ),
      clay: help(
        'Fired clay bricks made for paving',
        'Clay paving bricks, not those for walls. North America: a bed of 3/4 to 1 in (19 to 25 mm) and joints of 1/16 to 3/16 in (1.6 to 4.8 mm) (Brick Industry Association, Technical Note 14A, 2017).'
      )
    }
  }
};
