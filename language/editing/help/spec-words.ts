import { SHIPPED_BONDS } from '../../library/shipped.ts';
import { HEIGHTS_WORDS } from './height-words.ts';
import { help, together, type BlockHelp } from './help.ts';
import { CHAIN_WORDS } from './outline-words.ts';
import { PACK_COUNTS } from './price-words.ts';
import { PLACE_WORDS } from './place-words.ts';

const LOCATE =
  'Before digging near it have public **and** private lines located; public locating does not mark private ones.';

export const SPEC_WORDS: BlockHelp = {
  statements: {
    job: help(
      'The job: its title, its rules and how its numbers are shown',
      '`job "First patio" { rules north-america, show feet-and-inches }`',
      'A file has one. A file without is a list of units and materials, or a part of a job, for others to use.'
    ),
    use: help(
      'Another file whose units, materials, points and areas count here',
      '`use "till-prices.paving"`. The path counts from this file and stays inside its folder.'
    ),
    let: help(
      'A value with a name, written once and used in many places',
      '`let base-depth = 6 in + 2 in`, and then `base crushed-stone base-depth`. The signs `+ - * /` and brackets work.'
    ),
    site: help(
      'The ground: soil, topsoil, winters, and heights as they are today',
      '`site { soil clay, winters freeze, benchmark door-sill, ground 3 in below door-sill }`',
      'Left out: common earth, mild winters, and ground level with the finish are taken, and listed as assumed.'
    ),
    point: help(
      'A point of the plan, by how far it lies along and across',
      '`point B at (18 ft 6 in, 0)`: first to the right, then up. All count from one corner, which you choose.',
      'By two tapes and a third as the check: `point C taped 12 ft 7 7/8 in from B, 22 ft 4 1/2 in from A, left of A to B`.',
      'Measure the diagonals too. In a rectangle both are alike; a triangle of 3, 4 and 5 has a right angle.'
    ),
    line: help(
      'A line on the plan that a path, a finish or a route follows',
      '`line spine A to B to C, rounded 1 m at B`. It need not close.'
    ),
    section: help('A line along which the layers are drawn, seen from the side', '`section across A to C`'),
    heights: help(
      'Heights at points, as they were read on site',
      '`heights by laser on 2026-04-18, door-sill reads 31 1/4 in { ground A 34 1/4 in  B 34 1/2 in }`. Write what the rod reads: more where it is lower.',
      'Without an instrument: `heights { ground A 3 in below door-sill  B 3 1/4 in below door-sill }`.'
    ),
    unit: help(
      'A paving unit: a block, slab or brick',
      '`unit slab-16 { size 15 7/8 x 15 7/8 x 2 in }`: length, width, thickness, without the joint.',
      'Measure your own: lay ten tight in a row and take a tenth (common practice). The name on the label is often a round figure.',
      'Cut wet, with lungs, eyes and ears protected: the dust scars lungs for good.'
    ),
    material: help(
      "Stone, sand, edging or cloth, with the supplier's own figures",
      '`material crushed-stone { role base, compacted 138 lb per cu ft, loose 111 lb per cu ft }`',
      'Densities that are left out are taken from the shipped material of its name or role, and listed as assumed. A name that ships may be declared anew: yours then counts.'
    ),
    'soil-kind': help(
      'A kind of soil of your own',
      '`soil-kind sandy-loam { swell 20 %, density 1.55 t/m3, drains well, frost-heave likely }`',
      'These ship: clay, silt, common-earth, sand, gravel.'
    ),
    'side-kind': help(
      'A kind of your own of what a side can meet',
      '`side-kind hedge { ground open, holds nothing }`: whether the base may run on below it, and whether it holds the paving.'
    ),
    bond: help(
      'A way of laying of your own: by a shift, or drawn course by course',
      '`bond quarter-bond { offset 1/4 }`, or drawn: one `course a a b b` a line.',
      `These ship: ${SHIPPED_BONDS.join(', ')}.`
    ),
    existing: help(
      'Something that is there already, and stays',
      '`existing old-walk` is paving that holds the new paving; `existing old-lawn { kind lawn }` is of that kind. A side then `meets` it.'
    ),
    area: help(
      'One paved area: outline, traffic, height, layers and edges',
      'Its outline is the face of the laid units; edging stands outside it.'
    ),
    box: help(
      'A box with a lid, through all layers: a valve, a drain cover',
      '`box valves in terrace { rectangle 20 x 14 in, centre (6 ft 2 in, 3 ft 1 in) }`. Units, joints, bed, base, cloth and dig leave it out.',
      LOCATE
    ),
    pit: help(
      'A place inside an area that stays soil: round a tree, for plants',
      '`pit lime-tree in court { circle 1.2 m across, centre (3, 4) m }`. Units, joints, bed, base, cloth and dig leave it out. Edging round it is not counted yet.'
    ),
    inset: help(
      'A part of an area that is laid in a way of its own',
      'Its shape and its own `paving` stand in it, each on a line of its own: `circle 6 ft across, centre (9, 5) ft` and `paving block-red in rings`.',
      'Bed, base and cloth run on below it as in the area around.'
    ),
    drain: help(
      'A channel or a gully that takes water from the paving',
      '`drain garage-channel { channel along G1 to G2, 130 mm wide }`. A side `meets` it.',
      'What it takes is added up; how large it must be is not worked out here.'
    ),
    pipe: help(
      'A pipe or cable that is known to be there',
      '`pipe irrigation in terrace { from valves to old-sprinkler }`',
      LOCATE
    ),
    gate: help(
      'A gate that swings over the paving',
      '`gate side-gate { hinge 2 ft along B to C, leaf 3 ft 2 in towards C, opens 95 degrees into terrace }`. Whether it opens is looked at.'
    ),
    door: help(
      'A door at the paving, and its sill',
      '`door back-door { opening 4 ft to 7 ft along A to B }`. How high the paving comes before it is looked at.'
    ),
    route: help(
      'A way without steps, for a wheelchair or a bin',
      '`route way along spine`, for a `line` of that name. Falls along and across it, and lips, are looked at.'
    ),
    'level-sheet': help(
      'How the sheet of heights is set out',
      '`level-sheet { every 6 ft, printed in inches, string 6 in above the finish }`'
    ),
    log: help(
      'What was delivered, done and measured, day by day',
      '`log { 2026-04-25 delivered crushed-stone 8 1/2 short ton }`. Each line begins with its day. It never changes the plan; a soft spot adds its dig and its stone.'
    ),
    supplier: help(
      'Where things are bought, and what bringing them costs',
      '`supplier gravel-pit { prices on 2026-03-01, valid 60 days, tax added, delivery 65 USD a load, load 8 short ton }`',
      'What it sells has a `price` each: `price crushed-stone from gravel-pit { … }`.'
    ),
    price: help(
      'What a unit or material costs, in every way it is sold',
      '`price slab-16 from garden-store { piece for 3.95 USD, pallet of 90 for 315 USD }`. Where it is sold in several ways, the cheapest that covers the need is bought.',
      'A file of prices may be shared between jobs: what a job does not need is passed over.'
    ),
    stock: help(
      'What lies on hand already and need not be bought',
      '`stock 12 block-red`, `stock 1 short ton crushed-stone`, `stock 2 bag plain-sand`'
    ),
    variant: help(
      'What if: the same job with some statements put otherwise',
      '`variant permeable { area drive { base open-graded-stone 300 mm } drain garage-channel none }`. Statements stand instead of those of the same word; the job itself stays as it is, and stands beside it.',
      'Quantities, cuts, cost, days and findings of all variants stand in one table: `paving quantities`.'
    ),
    source: help(
      'What rules rest on: a standard, a code, guidance, practice',
      '`source town-leaflet { kind handbook, title "Town paving leaflet", edition "2024" }`. Rules then cite it.'
    ),
    rate: help(
      'How long one person takes for so much of a task',
      '`rate lay-herringbone { of laying, when herringbone, takes 1.3 h per m2, includes bed and joints }`. Measure it over a day of your own.',
      'One by the name of a rate that ships stands over it.'
    ),
    rulebook: help(
      'Rules that belong together, for jobs to name',
      '`rulebook our-town { title "Our town", includes north-america }`. The rules that follow in its file belong to it.',
      'A rule that stands under no rulebook belongs to the job that its file is part of.'
    ),
    rule: help(
      'A rule of your own: what it looks at, what it needs, what it says',
      'It belongs to the rulebook above it in its file, or else to the job. One by the name of a rule that ships stands over it.',
      'What it looks at (`concerns`), what that `needs`, what it `says` where it is not so, and the source that it `cites`.'
    ),
    accept: help(
      'Sets a rule aside for one thing, with the reason',
      '`accept base-too-thin on terrace because "Rock at 3 in." until 2027-06-30`, or without an end: `for good, agreed with "the owner"`.'
    )
  },
  within: {
    price: { from: help('The supplier whose price it is', '`price slab-16 from garden-store { … }`. Left out: none.') },
    stock: PACK_COUNTS,
    point: {
      ...PLACE_WORDS,
      at: help(
        'Where the point lies: how far to the right, then how far up',
        'Figures to the left or down are below nought: `(-2 3/8 in, 4 ft)`. Or by a line: `at 6 ft along A to B, 3 ft out`.'
      ),
      halfway: help('In the middle between two points', '`point M halfway D to A`'),
      taped: help(
        'By tapes from other points, all fitted together',
        '`point C taped 12 ft 7 7/8 in from B, 22 ft 4 1/2 in from A, left of A to B`. A third tape is the check.'
      ),
      from: help('The point that the tape is held at', '`12 ft 7 7/8 in from B`, `3 m from A towards B`'),
      left: help('On which side of the line it lies, as one walks', '`left of A to B`'),
      right: help('On which side of the line it lies, as one walks', '`right of A to B`'),
      of: help('On which side of the line it lies, as one walks', '`left of A to B`')
    },
    line: CHAIN_WORDS,
    section: CHAIN_WORDS,
    heights: HEIGHTS_WORDS,
    drain: { in: help('The area that the drain lies in') },
    pipe: { in: help('The area that the pipe runs under') },
    route: { along: help('The line that it follows', '`route way along spine`') },
    box: { in: help('The area that the box stands in') },
    pit: { in: help('The area that the pit lies in') },
    inset: { in: help('The area that the inset lies in') },
    accept: {
      on: help('The thing that it is set aside for', '`on terrace`, `on site`'),
      site: help('The site as a whole', '`on site`'),
      because: help('The reason, in your own words', '`because "Rock at 3 in."`'),
      until: help('The last day on which it holds', '`until 2027-06-30`: year, month, day. Then the finding is back.'),
      ...together(
        'for good',
        help('Without an end; with whom it was agreed follows', '`for good, agreed with "the owner"`')
      ),
      ...together('agreed with', help('Who agreed to it', '`agreed with "the owner"`'))
    }
  }
};
