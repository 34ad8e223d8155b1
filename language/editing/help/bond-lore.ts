import { help, type Helps } from './help.ts';

const INTERLOCKS =
  'Its joints are short and never go through, so that turning and braking wheels push nothing out of place: usual for drives (common practice).';
const ONE_BY_TWO = 'For units twice as long as wide, such as 200 x 100 mm.';

export const BOND_LORE: Helps = {
  'running-bond': help(
    'Each course is shifted by half a unit: stretcher bond',
    'For paths, terraces and drives. Under wheels the courses lie across the way they run (common practice).'
  ),
  'running-bond-third': help(
    'Each course is shifted by a third of a unit',
    'For long units, such as planks: half a unit of shift shows more where units are slightly bowed (common practice).',
    'Under wheels the courses lie across the way they run (common practice).'
  ),
  'stack-bond': help(
    'Units in straight lines both ways; the joints go through',
    'For people on foot only: its joints open under wheels (common practice).'
  ),
  'herringbone-90': help('Units at right angles to each other, square to the edges', INTERLOCKS, ONE_BY_TWO),
  'herringbone-45': help(
    'Herringbone turned by 45 degrees, corners towards the edges',
    INTERLOCKS,
    `${ONE_BY_TWO} Along every edge units are cut at a slant.`
  ),
  'basket-weave': help(
    'Two units one way, the next two the other way',
    `For people on foot and slow cars: its joints go through every second unit (common practice). ${ONE_BY_TWO}`
  ),
  pinwheel: help(
    'Large squares turned round small ones half as wide',
    'Takes two sizes: `paving slab-600, slab-300 in pinwheel`. The larger is twice as wide as the smaller, with the joint.'
  ),
  'three-sizes': help(
    'A large square, an oblong half as wide and a small square',
    'Takes three sizes, such as 600 x 600, 600 x 300 and 300 x 300 mm: `paving slab-600, slab-600-300, slab-300 in three-sizes`.'
  ),
  hexagons: help(
    'Hexagons, each one between six others',
    'For units of `shape hexagon`. Along straight edges each second unit is cut, or border units are laid.'
  ),
  rings: help(
    'Rings round a middle; joints open outwards within their limits',
    'For circles, mostly in an `inset`. Rectangular units make wedge-shaped joints: the nearer the middle, the wider on the outside.'
  ),
  'random-courses': help(
    'Courses of units of mixed lengths and one width, in no order',
    'Name units of several lengths in `paving`. The order is drawn once and stays; for another one write a bond of your own with another `seed`.'
  )
};
