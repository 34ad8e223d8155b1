import { help, type Helps } from './help.ts';

const DUST = 'Sweep it in dry, over dry units, with a mask on; top it up after some weeks.';

export const MATERIAL_LORE: Helps = {
  'crushed-stone': help(
    'Crushed stone of all sizes down to fines, for the base',
    'Road base or dense-graded stone to ASTM D2940; not stone dust, rounded gravel or pea gravel (Concrete Masonry & Hardscapes Association, article on base depth).'
  ),
  'type-1': help(
    'Crushed stone with fines, as sold in Britain for the base',
    'Type 1 of the British Specification for Highway Works (from memory): 40 mm down to dust, damp enough to bind under the plate.'
  ),
  'clause-804': help(
    'Crushed stone with fines, as sold in Ireland for the base',
    'Granular stone by the Irish road specification, clause 804 (from memory), damp enough to bind under the plate.'
  ),
  'stone-0-32': help(
    'Crushed stone from 0 to 32 mm, for the base',
    'As sold in continental Europe (common practice); damp enough to bind under the plate.'
  ),
  'open-graded-stone': help(
    'Crushed stone without fines: water runs through it',
    'For paving that lets water in. Bed and joints are then of grit, not sand (common practice).'
  ),
  'washed-sand': help(
    'Coarse, sharp, washed sand for the bed',
    'Concrete sand to ASTM C33 or CSA A23.1; where vehicles run, with at most 1 % of fines (Concrete Masonry & Hardscapes Association, PAV-TEC-017-22). Screed it loose, do not walk on it, and lay over it the same day.'
  ),
  'sharp-sand': help(
    'Coarse, sharp sand for the bed, as sold in Britain',
    'Washed, not building sand: soft sand holds water and lets units sink (common practice).'
  ),
  'grit-2-6': help('Clean grit of 2 to 6 mm, for bed and joints over open stone'),
  'joint-sand': help('Dry, fine sand for the joints', DUST),
  'kiln-dried-sand': help('Oven-dry fine sand for the joints, as sold in Britain', DUST),
  'spiked-strip': help(
    'A strip of plastic or metal, spiked into the base',
    'It stands on the compacted base, against the units. The back of it is counted as no wider than the face of the units.'
  ),
  spikes: help(
    'The spikes of an edging: their price stands under this name',
    'How many there are follows from the material of the edging: `spikes every 12 in`. `price spikes { box-of 50 for 18 USD }`'
  ),
  concrete: help(
    'What edging and channels are set in, ordered by volume or in bags',
    'Its shipped weight is that of the dry mix in a bag. Wet concrete burns skin and eyes: gloves, boots, and wash it off at once.'
  ),
  'separation-cloth': help(
    'Cloth that keeps soil and stone apart',
    'How wide its rolls are is not known, so laps are not counted: declare yours with `roll` and `lap`. What is bought counts them by the rolls of the price.'
  )
};
