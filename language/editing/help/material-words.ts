import { help, together, type BlockHelp } from './help.ts';
import { SOURCE } from './kind-words.ts';

export const MATERIAL_WORDS: BlockHelp = {
  statements: {
    role: help(
      'What the material is for: base, bed, joints, edging, cloth',
      '`role base, sub-base`. One of: base, sub-base, bed, joint-filler, edging, fixing, geotextile, concrete; several are parted by commas.'
    ),
    compacted: help(
      'What it weighs when compacted in place',
      '`compacted 140 lb per cu ft` or `compacted 2.2 t/m3`. Ask the supplier: it tells how much to order by weight.'
    ),
    loose: help(
      'What it weighs loose, as tipped',
      '`loose 112 lb per cu ft` or `loose 1.76 t/m3`. With the compacted weight it tells how many loads by volume.'
    ),
    'compaction-factor': help(
      'How much loose material makes one of compacted',
      '`compaction-factor 1.25`: five loose become four compacted. Write it, or both weights. For stone 1.2 to 1.3 is common practice.'
    ),
    grading: help('How the grains are graded: dense, open or grit', '`grading open`. Left out: dense.'),
    size: help(
      'Length x width x height of one piece of edging',
      '`size 36 x 2 x 6 in`. The width stands across the edge; it alone counts so far.'
    ),
    width: help(
      'How thick the edging is, across the edge',
      '`width 3/4 in`. Left out: the width of its size, else nought.'
    ),
    spikes: help(
      'How far apart the spikes of the edging stand',
      '`spikes every 12 in`. 12 in (300 mm) on drives and curves, up to 24 in (600 mm) on straight edges for people: common practice.'
    ),
    'base-past': help(
      'How far the base runs past the back of this edging',
      '`base-past 6 in`. Counts where the area does not say it. Left out: to the back of the concrete, or without concrete as far as the base is thick (Tech Spec 3, edge restraints).'
    ),
    concrete: help(
      'The concrete that the edging stands on: width x depth',
      '`concrete 300 x 100 mm below, 50 mm of it under the paving`',
      'Wet concrete burns skin and eyes: gloves, boots, and wash it off at once.'
    ),
    haunch: help(
      'The concrete behind the edging: width x height',
      '`haunch 100 x 75 mm behind`. In Britain usually 100 mm wide, up to half or two thirds of the unit (common practice).'
    ),
    roll: help('Width and length of one roll of cloth', '`roll 12 ft 6 in x 50 ft`'),
    lap: help(
      'How far one strip of cloth lies over the next',
      '`lap 12 in`. 12 in (300 mm) on firm ground, 24 in (600 mm) on weak ground (association tech note, from memory).'
    ),
    'curve-pieces': help(
      'How long the pieces are that curves are made of',
      '`curve-pieces 305 mm`. On an arc such pieces are counted, on straight sides those of `size`.'
    ),
    wait: help(
      'How long the concrete sets before anything is compacted beside it',
      '`wait 3 days before compacting against it`. As the concrete says; longer in the cold.'
    ),
    loss: help(
      'What is lost on the way to the job, as a share of the need',
      '`loss 5 %`: spilt, trodden in, left where the heap lay. It is added in sight, as a line of its own. Left out: none.'
    ),
    moisture: help(
      'Water in what is sold by mass, as a share of the dry mass',
      '`moisture 4 %`. Damp sand weighs more, so more of it is ordered by mass. Left out: none.'
    ),
    settling: help(
      'How much of the loose volume settles on the way',
      '`settling 8 %`, as a share of what was loaded. It counts for what is sold by volume. Left out: none.'
    ),
    'kept-back': help(
      'Joint filler kept back for the second sweeping',
      '`kept-back 20 %`, as a share of the need. Joints lose some in the first weeks. Left out: none.'
    ),
    'according-to': SOURCE
  },
  within: {
    role: {
      base: help('Compacted stone right under the bed'),
      'sub-base': help('Compacted stone under the base, where there are two layers'),
      bed: help('The sand or grit that the units are laid on'),
      'joint-filler': help('What is swept into the joints'),
      edging: help('What holds the units at an open side'),
      fixing: help('What holds edging down, such as spikes', 'It is counted with the edging, and sold by the piece.'),
      geotextile: help('Cloth under the stone, so that soil and stone do not mix'),
      concrete: help(
        'What edging and channels are set in',
        'Wet concrete burns skin and eyes: gloves, boots, and wash it off at once.'
      ),
      unbound: help(
        'A joint filler that stays loose, such as dry sand',
        'Joints lose some of it in the first weeks, and are topped up.'
      ),
      bound: help(
        'A joint filler that sets hard',
        'Follow its data sheet: dry units, dry weather, and not a grain left on the faces before water.'
      )
    },
    grading: {
      dense: help(
        'All sizes down to fines: packs hard',
        'The usual stone for a base. Rounded gravel and stone dust are no base (Concrete Masonry & Hardscapes Association, article on base depth).'
      ),
      open: help(
        'Stone without fines: water runs through',
        'For paving that lets water in. Bed and joints are then of grit: sand would be washed down into the stone (common practice).'
      ),
      grit: help(
        'Clean small stone of a few millimetres',
        'For bed and joints over open stone. The limits of a sand bed do not count for it.'
      )
    },
    spikes: { every: help('The distance from spike to spike', '`spikes every 12 in`') },
    concrete: {
      below: help('The concrete lies below the edging', '`concrete 300 x 100 mm below`'),
      ...together(
        'of it under the paving',
        help(
          'How much of the concrete lies under the paving',
          '`concrete 300 x 100 mm below, 50 mm of it under the paving`. Left out: none of it.'
        )
      )
    },
    wait: together(
      'before compacting against it',
      help('Nothing is compacted beside it before', '`wait 3 days before compacting against it`')
    ),
    haunch: { behind: help('The concrete stands behind the edging, away from the paving') }
  }
};
