// Jobs, bids and rate analyses that were told with their numbers: what each comes to by its own arithmetic, and the flaw
// that it tells.
import { CONSISTENT, type Compared, EXACT, LAST_DIGIT, NEAR_BY_AREA } from './compared.ts';
import type { Flaw, NotYet, Unknown, Untold } from './flaws.ts';

export interface Told {
  /** `a bid told in a forum thread`, and the number of the item. */
  readonly kind: string;
  readonly item: string;
  /** Names of its specs; the first is meant where nothing is said. */
  readonly specs: readonly string[];
  readonly compared: readonly Compared[];
  readonly flaws: readonly Flaw[];
  /** All findings of each spec but notes, in order. */
  readonly findings: readonly (readonly string[])[];
}

const ROOF_WATER: NotYet = {
  notYet: 'water of the roof: a job says where that of its paving goes',
  unsaid: 'downspout at A',
  in: 'area'
};
const HEIGHTS: Untold = { untold: 'heights at points, which a job holds by now: none were told' };

const NOT_COUNTED: Unknown = {
  unknown: 'how many came and how many were left was not told: once it is in the log it is held against the need',
  lacks: job => job.evaluation.numbers!.quantities.deliveries === undefined
};

export const TOLD: readonly Told[] = [
  {
    kind: 'patio told on a site for home projects',
    item: 'J02',
    specs: ['j02'],
    compared: [
      {
        what: 'oblongs, whole',
        told: 75,
        ours: job => job.whole('oblong-24'),
        apart: 0,
        because: 'the two sizes fill the area told'
      },
      {
        what: 'squares, whole',
        told: 25,
        ours: job => job.whole('square-16'),
        apart: 0,
        because: 'the two sizes fill the area told'
      },
      { what: 'cut', told: 0, ours: job => job.cut(), apart: 0, because: 'the two sizes fill the area told' },
      { what: 'sq ft', told: 244.4, ours: job => job.squareFeet, apart: 0.5, because: 'half a joint all round' },
      { what: 'short tons of stone', told: 8, ours: job => job.shortTons('base'), apart: 0.8, because: CONSISTENT },
      { what: 'short tons of sand', told: 1, ours: job => job.shortTons('bed'), apart: 0.1, because: CONSISTENT }
    ],
    flaws: [
      { flaw: 'a downspout was left for later', told: ROOF_WATER },
      {
        flaw: 'not one spare unit',
        told: {
          figure: 'as many units are laid as were bought, and none is put by with `keep`',
          shows: job => job.whole() + job.cut() === 100 && job.evaluation.job!.buying.keep.length === 0
        }
      }
    ],
    findings: [['base-not-past-edging']]
  },
  {
    kind: 'bid told in a forum thread',
    item: 'J03',
    specs: ['j03-as-bid', 'j03-as-advised'],
    compared: [
      {
        what: 'units by area',
        told: 1347,
        ours: job => job.worth(),
        apart: 1347 * 0.005,
        because: NEAR_BY_AREA
      },
      {
        what: 'units, whole and cut',
        told: 1376,
        ours: job => job.whole() + job.cut(),
        apart: 0,
        because: 'counted one by one'
      },
      {
        what: 'cu yd of base',
        told: 4.6,
        ours: job => job.cubicYards('base'),
        apart: 0.05,
        because: LAST_DIGIT,
        spec: 'j03-as-advised'
      },
      {
        what: 'short tons of base',
        told: 7.6,
        ours: job => job.shortTons('base'),
        apart: 0.05,
        because: LAST_DIGIT,
        spec: 'j03-as-advised'
      },
      { what: 'cu yd of sand', told: 0.92, ours: job => job.cubicYards('bed'), apart: 0.005, because: LAST_DIGIT }
    ],
    flaws: [
      { flaw: 'no base in the bid', told: { finding: 'base-too-thin', saying: 'has no base: 4 in at least' } },
      {
        flaw: 'no edging in the bid',
        told: { finding: 'open-edge-without-edging', saying: 'nothing holds the units' }
      },
      {
        flaw: 'dug 8 in, the units stand proud',
        told: { figure: 'the dig is 8 3/8 in', shows: job => Math.abs(job.digDepth - 8.375) < EXACT },
        spec: 'j03-as-advised'
      },
      {
        flaw: 'saw, plate, joint sand and disposal left out',
        told: {
          figure: 'joint sand is among what is bought; units are cut and vibrated, soil is carted away',
          shows: job =>
            job.need('joint-sand') !== undefined &&
            ['cutting', 'vibrating', 'cart-away'].every(task => job.task(task) !== undefined)
        }
      }
    ],
    findings: [
      ['base-too-thin', 'open-edge-without-edging'],
      ['base-thinner-than-usual', 'base-not-past-edging']
    ]
  },
  {
    kind: 'bid told in a forum thread',
    item: 'J04',
    specs: ['j04'],
    compared: [
      { what: 'sq ft', told: 235.07, ours: job => job.squareFeet, apart: 0.005, because: LAST_DIGIT },
      {
        what: 'ft of arc',
        told: 34.6,
        ours: job => job.areas[0]!.edges[1]!.length / 0.3048,
        apart: 0.05,
        because: LAST_DIGIT
      },
      { what: 'units by area', told: 1058, ours: job => job.worth(), apart: 1058 * 0.005, because: NEAR_BY_AREA },
      { what: 'cu yd of base', told: 4.35, ours: job => job.cubicYards('base'), apart: 0.005, because: LAST_DIGIT },
      { what: 'short tons of base', told: 7.2, ours: job => job.shortTons('base'), apart: 0.05, because: LAST_DIGIT },
      { what: 'cu yd of sand', told: 0.73, ours: job => job.cubicYards('bed'), apart: 0.005, because: LAST_DIGIT },
      { what: 'short tons of sand', told: 1, ours: job => job.shortTons('bed'), apart: 0.05, because: LAST_DIGIT }
    ],
    flaws: [
      {
        flaw: '34.6 ft of curve to cut, and no word of it',
        told: {
          figure: 'cut units are counted: more than two for each foot of arc',
          shows: job => job.cut() > 2 * 34.6
        }
      },
      {
        flaw: 'no hours for cutting the curve',
        told: {
          figure: 'cutting has hours of its own: more than seven',
          shows: job => job.task('cutting')!.hours! > 7
        }
      }
    ],
    findings: [['base-not-past-edging', 'base-not-past-edging']]
  },
  {
    kind: 'patio told in a blog',
    item: 'J10',
    specs: ['j10'],
    compared: [
      { what: 'sq ft', told: 225, ours: job => job.squareFeet, apart: 0.5, because: '"about 225"' },
      { what: 'units by area', told: 1013, ours: job => job.worth(), apart: 1013 * 0.005, because: NEAR_BY_AREA }
    ],
    flaws: [
      {
        flaw: 'a thousand bricks would not cover it, yet many were left',
        told: { figure: 'it takes the worth of more than 1,000', shows: job => job.worth() > 1000 }
      },
      { flaw: 'many bricks left over', told: NOT_COUNTED },
      {
        flaw: 'cutting the sod took far longer',
        told: {
          unknown: 'neither how long it was thought to take nor how long it took was told',
          lacks: job => job.evaluation.job!.work.tasks.length === 0
        }
      }
    ],
    findings: [[]]
  },
  {
    kind: 'repair told in a blog',
    item: 'J15',
    specs: ['j15'],
    compared: [
      { what: 'units, whole', told: 69, ours: job => job.whole(), apart: 0, because: 'three rows of 23' },
      { what: 'cut', told: 0, ours: job => job.cut(), apart: 0, because: 'three rows of 23' },
      { what: 'sq ft', told: 31.6, ours: job => job.squareFeet, apart: 0.05, because: LAST_DIGIT },
      {
        what: 'cu ft of sand',
        told: 4,
        ours: job => job.cubicFeet('bed'),
        apart: 0.1,
        because: '1.5 in is rounded from 1.52'
      }
    ],
    flaws: [
      {
        flaw: 'sand alone under a garage apron',
        told: { finding: 'base-too-thin', saying: 'has no base: 6 in at least' }
      },
      { flaw: 'two settlings that cannot both be', told: HEIGHTS }
    ],
    findings: [['base-too-thin', 'stack-bond-under-wheels', 'slab-where-block-needed']]
  },
  {
    kind: 'rate analysis of a public schedule',
    item: 'J23',
    specs: ['j23'],
    compared: [
      { what: 'units by area', told: 464.5, ours: job => job.worth(), apart: 0.05, because: LAST_DIGIT },
      { what: 'cu ft of sand', told: 16.4, ours: job => job.cubicFeet('bed'), apart: 0.05, because: LAST_DIGIT }
    ],
    flaws: [
      {
        flaw: 'no waste',
        told: {
          figure: '450 whole and 46 cut units, more than the 464 allowed',
          shows: job => job.whole() === 450 && job.cut() === 46
        }
      },
      { flaw: '50 mm of sand', told: { finding: 'bed-outside-limits', saying: '50 mm, is 10 mm too thick' } }
    ],
    findings: [
      ['stack-bond-under-wheels', 'piece-too-small-under-wheels', 'joint-outside-limits', 'bed-outside-limits']
    ]
  },
  {
    kind: 'drive told on a personal page',
    item: 'J28',
    specs: ['j28'],
    compared: [
      { what: 'units by area', told: 9500, ours: job => job.worth(), apart: 9500 * 0.005, because: NEAR_BY_AREA },
      {
        what: 'cu m of sand',
        told: 7.6,
        ours: job => job.cubicFeet('bed') * 0.3048 ** 3,
        apart: 0.05,
        because: LAST_DIGIT
      },
      { what: 't of sand', told: 12.5, ours: job => job.mass('bed') / 1000, apart: 0.5, because: '"12 to 13 t"' }
    ],
    flaws: [
      {
        flaw: 'several bags of sand are too few',
        told: { figure: 'the bed is more than 12 t', shows: job => job.mass('bed') > 12_000 }
      },
      { flaw: 'not a word of the base', told: { finding: 'base-too-thin', saying: 'The area drive has no base' } },
      { flaw: 'a dip near one end', told: HEIGHTS }
    ],
    findings: [['base-too-thin', 'piece-too-small-under-wheels', 'base-too-thin']]
  }
];
