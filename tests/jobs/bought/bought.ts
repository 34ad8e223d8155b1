// Jobs that told what was bought: the net need by each one's own arithmetic, the order worked by hand beside what was
// bought, and what was said to have gone wrong. Densities are those that the arithmetic was made with: stone 122.2 lb per
// cu ft compacted and 103.7 loose (1.65 and 1.4 short tons per cu yd), sand 100 (1.35); bags hold half a cubic foot.
import { CUBIC_FOOT, CUBIC_YARD, INCH, POUND, SHORT_TON } from '../../quantities/jobs.ts';
import { type Compared, CONSISTENT, EXACT, LAST_DIGIT, NEAR_BY_AREA } from '../compared.ts';
import type { Untold } from '../flaws.ts';
import type { Ordered } from '../ordered.ts';
import type { Entered } from '../read.ts';
import type { Told } from '../told.ts';

/** What was bought of one thing, beside the cheapest order that covers the need. */
export interface Purchase {
  readonly what: string;
  readonly bought: number;
  /** Worked by hand. */
  readonly order: number;
  readonly by: string;
  readonly ours: (order: Ordered) => number;
  /** Why the two differ. */
  readonly differs?: string;
  readonly spec?: string;
}

export interface Bought extends Told {
  readonly purchases: readonly Purchase[];
  /** What was judged of it, in a few words. */
  readonly verdict: string;
}

const HEIGHTS: Untold = { untold: 'heights of the ground, which a job holds: none were told' };
const EXACTLY = 'exact arithmetic';
const HALF_BAG = 0.5;

/** Cubic feet of one layer, exact. */
function cubicFeet(what: string, told: number, role: string): Compared {
  return { what, told, ours: job => job.cubicFeet(role), apart: EXACT, because: EXACTLY };
}

/** Bags of a layer as it lies, before anything is allowed for. */
function netBags(what: string, told: number, role: string): Compared {
  return { what, told, ours: job => job.cubicFeet(role) / HALF_BAG, apart: EXACT, because: EXACTLY };
}

function packs(item: string): (order: Ordered) => number {
  return order => order.packs(item);
}

function amount(item: string, measure: number): (order: Ordered) => number {
  return order => order.amount(item) / measure;
}

/** Kilograms of units, whole and cut alike, by the weights in the spec. */
function unitMass(job: Entered): number {
  const weights = new Map(
    job.evaluation.job!.areas.flatMap(({ paving }) =>
      (paving?.units ?? []).map(({ name, weight }) => [name, weight!.value] as const)
    )
  );
  return [...weights].reduce((all, [name, weight]) => all + (job.whole(name) + job.cut(name)) * weight, 0);
}

function loadsOfSoil(job: Entered): number {
  return job.schedule.carrying.find(({ what }) => what === 'Spoil')!.truckLoads!;
}

/** What came of a thing and what its need was, both in SI. */
function came(job: Entered, item: string): { readonly delivered: number; readonly wanted: number } {
  const [first] = job.need(item)!.in;
  return { delivered: first!.delivered!, wanted: first!.wanted! };
}

export const BOUGHT: readonly Bought[] = [
  {
    kind: 'pad told in a forum thread',
    item: 'J05',
    verdict: 'the bags are consistent; the heights hint at layers that were thinner once tamped',
    specs: ['j05'],
    compared: [
      cubicFeet('cu ft of base', 6, 'base'),
      netBags('bags of base, net', 12, 'base'),
      cubicFeet('cu ft of sand', 3, 'bed'),
      netBags('bags of sand, net', 6, 'bed')
    ],
    purchases: [
      {
        what: 'bags of base',
        bought: 13,
        order: 15,
        by: '6 cu ft x 122.2 / 103.7 / 0.5 is 14.1',
        ours: packs('bagged-base'),
        differs: 'thirteen leave 3.7 in of the 4 in once they are tamped'
      },
      {
        what: 'bags of sand',
        bought: 7,
        order: 7,
        by: '3 cu ft x 116 / 100 / 0.5 is 6.96',
        ours: packs('bagged-sand')
      }
    ],
    flaws: [
      {
        flaw: '8 in of layers in a hole of 7 in',
        told: { finding: 'dig-off-design', saying: 'at middle was measured 1 in high' }
      },
      {
        flaw: 'yet it came out low: the layers were thinner once tamped',
        told: {
          finding: 'delivery-off',
          saying: 'Of bagged-base, 0.24 cu yd were delivered, and 0.26 cu yd are needed'
        }
      },
      {
        flaw: 'raised, it would block the doors of the shed',
        told: {
          unknown: 'how high the doors hang was not told: with a `door` in the spec it is gate-too-low',
          lacks: job => job.evaluation.job!.gates.length === 0
        }
      }
    ],
    findings: [['bed-outside-limits', 'base-not-past-edging', 'dig-off-design']]
  },
  {
    kind: 'path told in a blog',
    item: 'J06',
    verdict: 'the base has no allowance, the last pair overruns',
    specs: ['j06'],
    compared: [
      { what: 'units', told: 28, ours: job => job.whole() + job.cut(), apart: 0, because: 'fourteen pairs' },
      cubicFeet('cu ft of base', 20, 'base'),
      netBags('bags of base, net', 40, 'base'),
      cubicFeet('cu ft of sand', 5, 'bed'),
      netBags('bags of sand, net', 10, 'bed')
    ],
    purchases: [
      { what: 'units', bought: 28, order: 28, by: 'fourteen pairs', ours: packs('step-12') },
      {
        what: 'bags of base',
        bought: 40,
        order: 48,
        by: '20 cu ft x 122.2 / 103.7 / 0.5 is 47.1',
        ours: packs('bagged-stone'),
        differs: 'forty fill the path only as they are tipped'
      },
      {
        what: 'bags of sand',
        bought: 12,
        order: 12,
        by: '5 cu ft x 116 / 100 / 0.5 is 11.6',
        ours: packs('bagged-sand')
      },
      {
        what: 'bags of pebbles',
        bought: 10,
        order: 11,
        by: '(60 - 27) sq ft x 2 in / 0.5 cu ft: the last two units are cut in half',
        ours: packs('pebbles'),
        differs: 'ten fill the gaps to 1 13/16 in of the 2 in'
      }
    ],
    flaws: [
      {
        flaw: 'the last pair overruns the path by 6 in',
        told: { figure: '26 units are whole and the last two cut', shows: job => job.whole() === 26 && job.cut() === 2 }
      },
      {
        flaw: 'no allowance for compaction in the base',
        told: {
          finding: 'delivery-off',
          saying: 'Of bagged-stone, 0.74 cu yd were delivered, and 0.87 cu yd are needed'
        }
      }
    ],
    findings: [['joint-outside-limits', 'base-not-past-edging']]
  },
  {
    kind: 'patio told in a blog',
    item: 'J07',
    verdict: '2 in and 2 in, far under a base of 4 in; the area is told 7 in a hundred too large',
    specs: ['j07'],
    compared: [
      { what: 'units by area', told: 281.25, ours: job => job.worth(), apart: 281.25 * 0.005, because: NEAR_BY_AREA },
      {
        what: 'cu ft of gravel',
        told: 77,
        ours: job => job.cubicFeet('base'),
        apart: 77 * 0.085,
        because: 'the area told is 7 in a hundred high, the depth 1.98 in'
      },
      {
        what: 'cu ft of sand',
        told: 77,
        ours: job => job.cubicFeet('bed'),
        apart: 77 * 0.085,
        because: 'the area told is 7 in a hundred high, the depth 1.98 in'
      }
    ],
    purchases: [
      {
        what: 'units',
        bought: 263,
        order: 285,
        by: '19 x 15: of the last row each is cut',
        ours: packs('square-16'),
        differs: 'they cover 467.6 sq ft of "roughly 500"'
      },
      {
        what: 'bags of gravel',
        bought: 154,
        order: 197,
        by: '500 sq ft x 2 in x 122.2 / 103.7 / 0.5 cu ft is 196.4',
        ours: packs('bagged-gravel'),
        differs: 'as they are tipped they are 1.98 in over 467.6 sq ft'
      },
      {
        what: 'bags of sand',
        bought: 154,
        order: 194,
        by: '500 sq ft x 2 in x 116 / 100 / 0.5 cu ft is 193.3',
        ours: packs('bagged-sand'),
        differs: 'as they are tipped they are 1.98 in over 467.6 sq ft'
      },
      {
        what: 'bags of joint sand',
        bought: 12,
        order: 3,
        by: '7.3 sq ft of joints x 1 3/4 in x 105 / 95 / 0.5 cu ft is 2.2',
        ours: packs('joint-sand'),
        differs: 'joints of 1/8 in are assumed: their width was not told'
      },
      {
        what: 'lb on the truck',
        bought: 6930 + 6160 + 10520,
        order: 285 * 40 + 197 * 45 + 194 * 40 + 3 * 47.5,
        by: '285 x 40 + 197 x 45 + 194 x 40, and three bags of joint sand',
        ours: order => order.mass('home-store') / POUND,
        differs: 'more of each; 11.8 short tons were told'
      }
    ],
    flaws: [
      { flaw: '2 in of gravel', told: { finding: 'base-too-thin', saying: '2 in, is 2 in too thin: 4 in at least' } },
      { flaw: '2 in of sand', told: { finding: 'bed-outside-limits', saying: '1/2 in too thick' } },
      {
        flaw: '263 units do not cover 500 sq ft',
        told: { finding: 'delivery-off', saying: 'Of square-16, 263 were delivered, and 285 are needed' }
      },
      {
        flaw: 'so the area is told 7 in a hundred too large',
        told: { figure: 'the area takes the worth of 18 more', shows: job => Math.floor(job.worth()) === 263 + 18 }
      },
      { flaw: 'digging underestimated, fill at the low side', told: HEIGHTS }
    ],
    findings: [['bed-outside-limits', 'base-too-thin', 'base-not-past-edging']]
  },
  {
    kind: 'raised pad told in a blog',
    item: 'J08',
    verdict: 'consistent; too many bricks, for two sides were taken for four',
    specs: ['j08'],
    compared: [
      {
        what: 'cu yd of gravel',
        told: 16.4,
        ours: job => job.cubicYards('base'),
        apart: 16.4 * 0.04,
        because: 'the gravel runs on under the bricks: 38 ft of 4 in'
      },
      {
        what: 'ft of edging',
        told: 38,
        ours: job => job.evaluation.numbers!.quantities.edging[0]!.length / 0.3048,
        apart: EXACT,
        because: EXACTLY
      }
    ],
    purchases: [
      {
        what: 'cu yd of gravel',
        bought: 16,
        order: 17.5,
        by: '(354.75 + 12.8) sq ft x 15 in is 17.0, in steps of half a yard',
        ours: amount('pit-gravel', CUBIC_YARD),
        differs: 'counted to the edge of the pad, and rounded down'
      },
      {
        what: 'pallets of brick',
        bought: 2.5,
        order: 2,
        by: '38 / 30.4 is 1.25',
        ours: packs('edging-brick'),
        differs: 'the seller counted four sides'
      }
    ],
    flaws: [
      {
        flaw: 'edging was counted on four sides',
        told: {
          figure: 'twice as much of it came as is needed',
          shows: job => {
            const { delivered, wanted } = came(job, 'edging-brick');
            return Math.abs(delivered / wanted - 2) < EXACT;
          }
        }
      }
    ],
    findings: [['base-not-past-edging']]
  },
  {
    kind: 'patio told in a blog',
    item: 'J09',
    verdict: 'consistent with a base of 3 in, which is thin',
    specs: ['j09'],
    compared: [
      {
        what: 'short tons of units',
        told: 4.2,
        ours: job => unitMass(job) / SHORT_TON,
        apart: EXACT,
        because: EXACTLY
      },
      {
        what: 'short tons of gravel',
        told: 4.2,
        ours: job => job.shortTons('base'),
        apart: 0.42,
        because: CONSISTENT
      },
      {
        what: 'short tons in all',
        told: 10,
        ours: job => unitMass(job) / SHORT_TON + job.shortTons('base') + job.shortTons('bed'),
        apart: 1,
        because: '"nearly 10"'
      }
    ],
    purchases: [
      { what: 'pallets of the larger size', bought: 2, order: 2, by: '400 / 200', ours: packs('cobble-long') },
      { what: 'pallets of the smaller size', bought: 1, order: 1, by: '400 / 400', ours: packs('cobble-square') },
      {
        what: 'sacks of gravel',
        bought: 3,
        order: 4,
        by: '75 cu ft x 122.2 lb are 4.58 short tons, 1.4 to a sack',
        ours: packs('sack-gravel'),
        differs: 'three are 3.2 in as tipped and 2 3/4 in compacted'
      },
      {
        what: 'sacks of sand',
        bought: 1,
        order: 1,
        by: '25 cu ft x 100 lb are 1.25 short tons',
        ours: packs('sack-sand')
      }
    ],
    flaws: [
      { flaw: 'a base of 3 in', told: { finding: 'base-too-thin', saying: '3 in, is 1 in too thin: 4 in at least' } },
      {
        flaw: 'and stone for less than that',
        told: { finding: 'delivery-off', saying: 'Of sack-gravel, 4.20 short tons were delivered, and 4.58 short tons' }
      },
      {
        flaw: 'digging met old mortar',
        told: {
          unknown: 'what lies in the ground is known once it is met: where and how much was not told',
          lacks: job => job.evaluation.numbers!.quantities.dig.oldPavingVolume === undefined
        }
      }
    ],
    findings: [['base-too-thin', 'base-not-past-edging']]
  },
  {
    kind: 'pad told in a blog',
    item: 'J14',
    verdict: 'consistent; sand as tipped and in joints is 30 to 40 % over what lies',
    specs: ['j14'],
    compared: [
      {
        what: 'squares, whole',
        told: 190,
        ours: job => job.whole('square-58'),
        apart: 2,
        because: 'what was told covers 63.1 of the 64 sq ft'
      },
      {
        what: 'oblongs, whole',
        told: 70,
        ours: job => job.whole('oblong-78'),
        apart: 2,
        because: 'what was told covers 63.1 of the 64 sq ft'
      },
      { what: 'cut', told: 0, ours: job => job.cut(), apart: 0, because: '"no cuts"' },
      { what: 'cu ft of sand', told: 10.7, ours: job => job.cubicFeet('bed'), apart: 0.05, because: LAST_DIGIT },
      {
        what: 'bags of sand, net',
        told: 21.3,
        ours: job => job.cubicFeet('bed') / HALF_BAG,
        apart: 0.05,
        because: LAST_DIGIT
      }
    ],
    purchases: [
      {
        what: 'squares',
        bought: 190,
        order: 192,
        by: '16 x 12',
        ours: packs('square-58'),
        differs: 'what was told covers 63.1 of the 64 sq ft'
      },
      {
        what: 'oblongs',
        bought: 70,
        order: 72,
        by: '12 x 6',
        ours: packs('oblong-78'),
        differs: 'what was told covers 63.1 of the 64 sq ft'
      },
      {
        what: 'bags of sand',
        bought: 30,
        order: 27,
        by: '10.7 cu ft and 0.7 of joints, x 116 / 100 / 0.5 is 26.3',
        ours: packs('bagged-sand'),
        differs: 'nothing is allowed for loss: a tenth more is 28.9'
      }
    ],
    flaws: [
      {
        flaw: '2 in of sand instead of the 1 in planned',
        told: { finding: 'bed-outside-limits', saying: 'The bed of squares, 2 in, is 1/2 in too thick' }
      },
      {
        flaw: 'more sand than the pad takes',
        told: {
          figure: '15 cu ft bought, 13.2 wanted for bed and joints: 14 in a hundred over, and up to 20 are not told',
          shows: job => {
            const wanted = job.need('bagged-sand')!.in.find(({ measure }) => measure === 'm3')!.wanted / CUBIC_FOOT;
            return wanted > 13.1 && wanted < 13.3;
          }
        }
      }
    ],
    findings: [['joint-outside-limits', 'bed-outside-limits', 'joint-outside-limits', 'bed-outside-limits']]
  },
  {
    kind: 'patio told in a forum thread',
    item: 'J20',
    verdict: 'quantities are consistent',
    specs: ['j20'],
    compared: [
      { what: 't of stone', told: 2.1, ours: job => job.mass('base') / 1000, apart: EXACT, because: EXACTLY },
      { what: 't of sand', told: 1, ours: job => job.mass('bed') / 1000, apart: 0.05, because: '"just over 1"' },
      {
        what: 'in below the damp course',
        told: 5,
        ours: job => -job.areas[0]!.levels![0]!.digBottom / INCH,
        apart: EXACT,
        because: EXACTLY
      }
    ],
    purchases: [
      {
        what: 't of stone',
        bought: 2.5,
        order: 2.5,
        by: '20 m2 x 50 mm x 2.1 t/m3, in steps of half a tonne',
        ours: amount('type-1', 1000)
      },
      {
        what: 't of sand',
        bought: 1,
        order: 1,
        by: '20 m2 x 30 mm x 1.65 t/m3, in steps of a quarter',
        ours: amount('sharp-sand', 1000)
      }
    ],
    flaws: [
      {
        flaw: 'dug as deep below the damp course as the layers are thick',
        told: { finding: 'finish-too-high', saying: '143 mm too high: 150 mm at least below damp-course' }
      },
      { flaw: 'a base of 50 mm', told: { finding: 'base-too-thin', saying: '50 mm, is 50 mm too thin' } }
    ],
    findings: [['finish-too-high', 'base-too-thin']]
  },
  {
    kind: 'patio asked about in a forum thread',
    item: 'J21',
    verdict: 'two tonnes are right, two bags a little short',
    specs: ['j21'],
    compared: [
      { what: 't of hardcore', told: 1.84, ours: job => job.mass('base') / 1000, apart: 0.005, because: LAST_DIGIT },
      {
        what: 'bags by what was told of one',
        told: 2.3,
        ours: job => job.areas[0]!.layers[0]!.looseVolume! / (12 * 1.3 * INCH),
        apart: 0.05,
        because: LAST_DIGIT
      }
    ],
    purchases: [
      {
        what: 't loose',
        bought: 2,
        order: 2,
        by: '18 m2 x 51 mm x 2 t/m3, in steps of a tonne',
        ours: amount('hardcore', 1000)
      },
      {
        what: 'bags of 1 t',
        bought: 2,
        order: 3,
        by: '18 m2 x 51 mm / (12 m2 x 1.3 in) is 2.3',
        ours: order => order.choice('hardcore', 'bulk bag').count,
        differs: 'the advice counted tonnes, not what a bag covers'
      }
    ],
    flaws: [
      {
        flaw: 'two bags run short',
        told: { finding: 'delivery-off', saying: 'Of hardcore, 0.79 m3 were delivered, and 0.92 m3 are needed' }
      },
      { flaw: '2 in of hardcore', told: { finding: 'base-too-thin', saying: '51 mm, is 49 mm too thin' } }
    ],
    findings: [['base-too-thin']]
  },
  {
    kind: 'yard told in a blog',
    item: 'J24',
    verdict: 'consistent',
    specs: ['j24'],
    compared: [
      {
        what: 'cu yd dug',
        told: 3.7,
        ours: job => job.evaluation.numbers!.quantities.dig.bankVolume / CUBIC_YARD,
        apart: 0.05,
        because: LAST_DIGIT
      },
      {
        what: 'short tons of soil',
        told: 5,
        ours: job => job.evaluation.numbers!.quantities.dig.mass! / SHORT_TON,
        apart: EXACT,
        because: EXACTLY
      },
      {
        what: 'trips of 0.7 short ton',
        told: 7,
        ours: loadsOfSoil,
        apart: 0,
        because: EXACTLY
      },
      {
        what: 'in of sand, of 2 short tons',
        told: 1.2,
        ours: job => job.areas[0]!.layers[0]!.thickness! / INCH / (job.shortTons('bed') / 2),
        apart: EXACT,
        because: EXACTLY
      }
    ],
    purchases: [
      { what: 'pallets', bought: 4, order: 4, by: '400 sq ft, 100 to a pallet', ours: packs('yard-12') },
      {
        what: 'short tons of sand',
        bought: 2,
        order: 2,
        by: '33.3 cu ft x 100 lb are 1.67, in steps of a half',
        ours: amount('yard-sand', SHORT_TON)
      }
    ],
    flaws: [
      { flaw: 'no base', told: { finding: 'base-too-thin', saying: 'has no base: 4 in at least' } },
      {
        flaw: 'far more soil than was thought',
        told: {
          figure: 'five short tons and seven trips are told before a spade is lifted',
          shows: job => loadsOfSoil(job) === 7
        }
      },
      { flaw: 'it falls several ways, partly by accident', told: HEIGHTS }
    ],
    findings: [['base-too-thin']]
  },
  {
    kind: 'patio told in a blog',
    item: 'J25',
    verdict: 'half a yard of sand was sent, which explains the shortage',
    specs: ['j25'],
    compared: [
      {
        what: 'cu yd of gravel, loose',
        told: 3.5,
        ours: job => job.looseCubicFeet('base') / 27,
        apart: 0.35,
        because: CONSISTENT
      },
      { what: 'cu yd of sand, net', told: 0.73, ours: job => job.cubicYards('bed'), apart: 0.005, because: LAST_DIGIT },
      {
        what: '% covered by the sand that came',
        told: 60,
        ours: job => {
          const { delivered, wanted } = came(job, 'pit-sand');
          return (delivered / wanted) * 100;
        },
        apart: 1,
        because: '"60 %", by eye'
      }
    ],
    purchases: [
      {
        what: 'cu yd of gravel',
        bought: 3.5,
        order: 3.5,
        by: '236 sq ft x 4 in x 122.2 / 103.7 is 3.43, in steps of half a yard',
        ours: amount('pit-gravel', CUBIC_YARD)
      },
      {
        what: 'cu yd of sand',
        bought: 0.5,
        order: 1,
        by: '236 sq ft x 1 in x 116 / 100 is 0.84, in steps of half a yard',
        ours: amount('pit-sand', CUBIC_YARD),
        differs: "the supplier's figure was not checked"
      }
    ],
    flaws: [
      {
        flaw: 'half a yard of sand was sent for a patio that takes more',
        told: { finding: 'delivery-off', saying: 'Of pit-sand, 0.50 cu yd were delivered, and 0.84 cu yd are needed' }
      }
    ],
    findings: [['base-not-past-edging']]
  },
  {
    kind: 'hauling told in a blog',
    item: 'J32',
    verdict: 'plausible, nothing told to have gone wrong',
    specs: ['j32-apart', 'j32-mixed'],
    compared: [
      { what: 'short tons of gravel', told: 5, ours: job => job.shortTons('base'), apart: 0.5, because: CONSISTENT },
      { what: 'short tons of sand', told: 2, ours: job => job.shortTons('bed'), apart: EXACT, because: EXACTLY }
    ],
    purchases: [
      {
        what: 'short tons of gravel',
        bought: 5,
        order: 5,
        by: '4.89, in steps of a half',
        ours: amount('pit-gravel', SHORT_TON)
      },
      { what: 'short tons of sand', bought: 2, order: 2, by: '2.00', ours: amount('pit-sand', SHORT_TON) },
      {
        what: 'trips, each by itself',
        bought: 6,
        order: 6,
        by: '5 / 1.5 is 3.3, 2 / 1.5 is 1.3',
        ours: order => order.loads('gravel-heap') + order.loads('sand-heap')
      },
      {
        what: 'trips, mixed',
        bought: 5,
        order: 5,
        by: '7 / 1.5 is 4.7',
        ours: order => order.loads('pit'),
        spec: 'j32-mixed'
      }
    ],
    flaws: [],
    findings: [['base-not-past-edging'], ['base-not-past-edging']]
  },
  {
    kind: 'repair told in a blog',
    item: 'J38',
    verdict: 'less than the planned depth',
    specs: ['j38'],
    compared: [
      cubicFeet('cu ft of stone', 10, 'base'),
      { what: 'lb of stone', told: 1000, ours: job => job.mass('base') / POUND, apart: EXACT, because: EXACTLY },
      {
        what: 'in of the stone that came',
        told: 2.3,
        ours: job => {
          const { delivered, wanted } = came(job, 'bagged-base');
          return (delivered / wanted) * 3;
        },
        apart: 0.05,
        because: LAST_DIGIT
      }
    ],
    purchases: [
      {
        what: 'lb of stone',
        bought: 760,
        order: 1000,
        by: '10 cu ft x 100 lb, in bags of 40 lb',
        ours: amount('bagged-base', POUND),
        differs: 'it came out 2.3 in thick, less than planned'
      }
    ],
    flaws: [
      {
        flaw: 'less stone than 3 in take',
        told: { finding: 'delivery-off', saying: 'Of bagged-base, 0.38 short tons were delivered, and 0.50 short tons' }
      },
      {
        flaw: 'a mixed base was found under it',
        told: {
          unknown: 'what lies below was told neither by depth nor by kind: as entered there is none, and that is told',
          lacks: job => job.areas[0]!.layers.length === 1
        }
      }
    ],
    findings: [['base-too-thin', 'base-not-past-edging']]
  }
];
