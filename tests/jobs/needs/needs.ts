// What people asked for on heights, doors, base and sand depth and buried things. Sums are worked by hand.
import { area, edge, layer, level, thing, told, waterOver } from './figures.ts';
import { Ordered } from '../ordered.ts';
import type { Missing, Need } from './need.ts';

const NO_PRICES: Missing = {
  missing: 'no prices were told: with price lists the order of the job has its cost'
};
const NO_HARD_WORDS: Missing = {
  missing: 'how hard stone is compacted, and by what machine, has no word: layers are told, not passes or density',
  unsaid: { statement: 'density 98 %', in: 'area' }
};
const NO_TREES: Missing = {
  missing: 'a tree beside the paving has no word: only a pit within an area has a no-dig circle',
  unsaid: { statement: 'tree oak { }', in: 'spec' }
};
const NOT_SIZED: Missing = {
  missing: 'swales, drains and soakaways are not sized: the area that drains to them is told'
};
const NOT_ON_THE_WALL: Missing = {
  missing: 'work on the wall itself is another trade: no word for sealing it or moving vents'
};
const DRAIN_BEHIND: Missing = {
  missing: 'what is built behind a wall has no word',
  unsaid: { statement: 'wall 18 in high', in: 'area' }
};

export const NEEDS: readonly Need[] = [
  // ---- level, slope, drainage ----
  {
    item: 'Q020',
    source: 'trade forum',
    need: 'Twenty feet square at 1/8 in per ft: is it dug 8 in deep on one side and 10 1/2 in on the other?',
    specs: ['q020', 'q020-advised'],
    parts: [
      { part: 'the rule of falls', finding: 'fall-too-flat', saying: '1/8 in per ft' },
      { part: 'steep enough as advised', noFinding: 'fall-too-flat', spec: 'q020-advised' },
      {
        part: 'the whole drop, 1/8 in per ft',
        by: '20 x 1/8',
        figure: 2.5,
        in: 'in',
        ours: job => level(job, 'A').finish - level(job, 'D').finish
      },
      {
        part: 'the whole drop, 1/4 in per ft',
        by: '20 x 1/4',
        figure: 5,
        in: 'in',
        ours: job => level(job, 'A').finish - level(job, 'D').finish,
        spec: 'q020-advised'
      },
      {
        part: 'one depth under the finish at the house',
        by: '2 3/8 + 1 + 6',
        figure: 9.375,
        in: 'in',
        ours: job => level(job, 'A').finish - level(job, 'A').digBottom
      },
      {
        part: 'the same depth at the far side',
        by: '2 3/8 + 1 + 6',
        figure: 9.375,
        in: 'in',
        ours: job => level(job, 'C').finish - level(job, 'C').digBottom
      },
      {
        part: 'dig from the flat lawn at the far side',
        by: '9 3/8 + 2 1/2',
        figure: 11.875,
        in: 'in',
        ours: job => told(level(job, 'C').ground) - level(job, 'C').digBottom
      },
      {
        part: 'below a level string at the sill, at the house',
        by: 'the finish lies 3 in below the sill',
        figure: 3,
        in: 'in',
        ours: job => told(level(job, 'B').belowString)
      },
      {
        part: 'below the string at the far side',
        by: '3 + 2 1/2',
        figure: 5.5,
        in: 'in',
        ours: job => told(level(job, 'C').belowString)
      }
    ],
    findings: [['slivers-too-narrow-to-cut', 'fall-too-flat'], ['slivers-too-narrow-to-cut']]
  },
  {
    item: 'Q021',
    source: 'forum',
    need: 'One corner of an 18 ft patio lies 7 in low. How much fill, and may it fall two ways?',
    specs: ['q021', 'q021-two-ways'],
    parts: [
      {
        part: '2 % over 18 ft',
        by: '0.02 x 216',
        figure: 4.32,
        in: 'in',
        ours: job => level(job, 'A').finish - level(job, 'C').finish
      },
      {
        part: 'left to make up at the low corner',
        by: '7 - 4.32: the finish stands so far above the lawn',
        figure: 2.68,
        in: 'in',
        ours: job => told(edge(job, 'C to D').stepDown)
      },
      {
        part: 'two falls of 2 % together',
        by: '2 % x sqrt 2',
        figure: 2.8284271,
        in: '%',
        ours: job => told(area(job).finish?.fall),
        spec: 'q021-two-ways'
      },
      {
        part: 'no fill: there too the layers lie in the ground',
        by: '9 3/8 - 2.68 in are dug at the low corner',
        figure: 6.695,
        in: 'in',
        ours: job => told(level(job, 'C').ground) - level(job, 'C').digBottom
      },
      {
        part: 'lifts of 4 in or less',
        by: '6 in in two layers of 3 in',
        figure: 3,
        in: 'in',
        ours: job => told(level(job, 'C').compactionTops[1]) - told(level(job, 'C').compactionTops[0])
      }
    ],
    findings: [[], []]
  },
  {
    item: 'Q022',
    source: 'forum',
    need: 'The neighbours lie higher. Away from the house makes a swamp: may it fall sideways?',
    specs: ['q022', 'q022-to-the-house'],
    parts: [
      {
        part: 'never to the house',
        finding: 'water-runs-to-house',
        saying: 'falls towards the house',
        spec: 'q022-to-the-house'
      },
      { part: 'sideways is another matter', noFinding: 'water-runs-to-house' },
      {
        part: 'where the water goes next',
        by: '16 x 12: all of it over the low side',
        figure: 192,
        in: 'sq ft',
        ours: job => waterOver(job, 'B to C')
      },
      {
        part: 'the fall along the house',
        by: '16 x 1/4',
        figure: 4,
        in: 'in',
        ours: job => told(edge(job, 'A to B').finishFrom) - told(edge(job, 'A to B').finishTo)
      },
      { part: 'the swale sized', ...NOT_SIZED }
    ],
    findings: [[], ['water-runs-to-house', 'low-place-without-drain']]
  },
  {
    item: 'Q023',
    source: 'home forum',
    need: 'At 2 % away from the house the far edge ends 4 to 6 in under the lawn. Four pros, four plans.',
    specs: ['q023'],
    parts: [
      {
        part: 'the far edge',
        by: '4 + 0.02 x 192, below the sill',
        figure: -7.84,
        in: 'in',
        ours: job => level(job, 'C').finish
      },
      {
        part: 'the lawn above it',
        by: '7.84 - 2, at D',
        figure: 5.84,
        in: 'in',
        ours: job => told(edge(job, 'C to D').stepUp)
      },
      { part: 'and is told of', finding: 'finish-off-ground', saying: 'stands up to 5 13/16 in above the finish' },
      {
        part: 'another plan beside it: half the fall',
        by: '4 + 0.01 x 192, below the sill',
        figure: -5.92,
        in: 'in',
        ours: job => level(job, 'C').finish,
        variant: 'flatter'
      },
      { part: 'what each costs', ...NO_PRICES },
      {
        part: 'how much lawn is taken off beyond the edge',
        missing: 'ground is dug under paving alone: regrading the lawn has no word',
        unsaid: { statement: 'regrade 6 ft', in: 'area' }
      }
    ],
    findings: [['slivers-too-narrow-to-cut']]
  },
  {
    item: 'Q024',
    source: 'forum',
    need: 'The garden climbs away from the house: the patio drains to it. Which channel, and whereto?',
    specs: ['q024'],
    parts: [
      {
        part: 'the low edge at the wall',
        by: '170 to 180 mm below the damp course, 90 at the far side',
        figure: 80,
        in: 'mm',
        ours: job => level(job, 'D').finish - level(job, 'A').finish
      },
      { part: 'the low edge is drained', noFinding: 'water-runs-to-house' },
      {
        part: 'what runs into the channel',
        by: '8 x 4.8 less a wedge: the fall is 1 : 13.3 askew, so that 4.8 x 0.36 / 2 leave over the lower side',
        figure: 38.4 - (4.8 * 0.36) / 2,
        in: 'm2',
        ours: job => thing(job, 'drains', 'house-channel').drained
      },
      {
        part: 'blocks stand above the grate',
        by: '173 - 170 and 183 - 180',
        figure: 3,
        in: 'mm',
        ours: job => told(thing(job, 'drains', 'house-channel').finishAbove)
      },
      {
        part: "the channel's own fall",
        by: 'its lower end, 183 mm below the damp course',
        figure: -183,
        in: 'mm',
        ours: job => told(thing(job, 'drains', 'house-channel').grate)
      },
      {
        part: 'damp-course clearance',
        by: '170 at the higher end',
        figure: -170,
        in: 'mm',
        ours: job => told(edge(job, 'A to B').finishFrom)
      },
      {
        part: 'which kind of channel',
        missing: 'a channel has a width, a depth and a grate, no make',
        unsaid: { statement: 'dished', in: 'area' }
      },
      {
        part: 'how it joins a sealed downpipe',
        missing: 'the outlet names where it leads, not the fittings'
      }
    ],
    findings: [[]]
  },
  {
    item: 'Q026',
    source: 'home forum',
    need: 'Along 25 ft the lawn falls at 2 % at one end and 4 1/2 % at the other. Where must steps start?',
    specs: ['q026'],
    parts: [
      {
        part: 'finish and ground at the easy end',
        by: 'both fall 2 %',
        figure: 0,
        in: 'in',
        ours: job => level(job, 'D').finish - told(level(job, 'D').ground)
      },
      {
        part: 'finish and ground at the steep end',
        by: '(0.045 - 0.02) x 120',
        figure: 3,
        in: 'in',
        ours: job => told(edge(job, 'C to D').stepDown)
      },
      {
        part: 'where the step begins',
        by: 'from nought at D, 25 ft away',
        figure: 0,
        in: 'in',
        ours: job => told(edge(job, 'C to D').steps?.at(-1)?.step)
      },
      {
        part: 'the slope that is walked on',
        by: '2 %',
        figure: 2,
        in: '%',
        ours: job => told(area(job).finish?.fall)
      }
    ],
    findings: [[]]
  },
  {
    item: 'Q027',
    source: 'message board',
    need: 'Ten feet square, 4 in off along one side and 6 in across: how much stone makes it level?',
    specs: ['q027'],
    parts: [
      {
        part: 'the wedge',
        by: '100 sq ft x 3 in, the mean of 0, 4, 6 and 2',
        figure: 25 / 27,
        in: 'cu yd',
        ours: job => told(area(job).dig.fillVolume)
      },
      {
        part: 'its mass',
        by: '25 cu ft x 140 lb',
        figure: 1.75,
        in: 'short ton',
        ours: job => told(area(job).dig.fillMass)
      },
      {
        part: 'how high the edge holds',
        by: '6 in of pad on 6 in of fill',
        figure: 12,
        in: 'in',
        ours: job => told(edge(job, 'B to C').stepDown)
      }
    ],
    findings: [['base-not-past-edging', 'finish-level']]
  },
  {
    item: 'Q031',
    source: 'how-to',
    need: 'A hundred feet of drive from garage to street: how much higher must the garage be?',
    specs: ['q031', 'q031-preferred'],
    parts: [
      {
        part: 'the drop at 1 in in 10 ft',
        by: '100 / 10',
        figure: 10,
        in: 'in',
        ours: job => told(edge(job, 'A to B').finishFrom) - told(edge(job, 'C to D').finishFrom)
      },
      {
        part: 'the drop at 1 1/2 in in 10 ft',
        by: '100 / 10 x 1.5',
        figure: 15,
        in: 'in',
        ours: job => told(edge(job, 'A to B').finishFrom) - told(edge(job, 'C to D').finishFrom),
        spec: 'q031-preferred'
      },
      { part: 'the least fall', finding: 'fall-too-flat', saying: '1:120' }
    ],
    findings: [
      ['fall-too-flat', 'piece-too-small-under-wheels'],
      ['fall-too-flat', 'piece-too-small-under-wheels']
    ]
  },
  {
    item: 'Q032',
    source: 'forum',
    need: 'The ground drops 18 in under the far end of a brick patio. Do garden blocks hold it?',
    specs: ['q032'],
    parts: [
      {
        part: 'how high the far edge stands',
        by: '23 - 2 - 12 x 1/4',
        figure: 18,
        in: 'in',
        ours: job => told(edge(job, 'C to D').stepDown)
      },
      {
        part: 'the fill',
        by: '14 2/3 ft x (5.75 x 8.625 / 24 + 1/3 x (8.625 + 8.541667) / 24): from 6 1/4 ft out, where the layers leave the ground, to 4 in past the edge',
        figure: (14 + 2 / 3) * ((5.75 * 8.625) / 24 + (8.625 + 8.625 - 1 / 12) / 72),
        in: 'cu ft',
        ours: job => told(area(job).dig.fillVolume)
      },
      {
        part: 'the dig',
        by: '14 2/3 ft x 6 1/4 ft x 9 3/8 in / 2',
        figure: ((14 + 2 / 3) * 6.25 * 9.375) / 24,
        in: 'cu ft',
        ours: job => area(job).dig.bankVolume
      },
      {
        part: 'a wall, not edging',
        finding: 'finish-off-ground',
        saying: 'up to 18 in above the ground: more than 6 in needs a wall or kerb'
      },
      { part: 'drainage behind it', ...DRAIN_BEHIND }
    ],
    findings: [['base-not-past-edging']]
  },
  {
    item: 'Q033',
    source: 'trade forum',
    need: 'A client wants a bank of 15 degrees paved as it lies.',
    specs: ['q033', 'q033-cut-in'],
    parts: [
      {
        part: 'the slope',
        by: 'tan 15 degrees',
        figure: 26.795,
        in: '%',
        ours: job => told(area(job).finish?.fall)
      },
      { part: 'unusable', finding: 'fall-steep-under-foot', saying: '1:3.7' },
      {
        part: 'cut in: how high the back stands',
        by: '32.154 - 0.02 x 120',
        figure: 29.754,
        in: 'in',
        ours: job => told(edge(job, 'B to C').stepUp),
        spec: 'q033-cut-in'
      },
      { part: 'the wall that retains it', ...DRAIN_BEHIND },
      {
        part: 'or steps',
        missing: 'steps are not built in the language: a side can meet them',
        unsaid: { statement: 'steps 4', in: 'area' }
      }
    ],
    findings: [['fall-steep-under-foot'], []]
  },

  // ---- base depth ----
  {
    item: 'Q007',
    source: 'magazine forum',
    need: 'Father and son: 2 in of base and 2 in of sand, or 1 1/2 and 1, under brick on clay.',
    specs: ['q007-two-and-two', 'q007-thinner', 'q007-advised'],
    parts: [
      { part: 'the first is thin', finding: 'base-too-thin', saying: '2 in, is 2 in too thin: 4 in at least' },
      {
        part: 'the second is thinner',
        finding: 'base-too-thin',
        saying: '1 1/2 in, is 2 1/2 in too thin: 4 in at least',
        spec: 'q007-thinner'
      },
      { part: 'clay and frost ask for more', finding: 'base-too-thin', saying: 'base-thinner-than-usual asks 6 in' },
      { part: 'enough as advised', noFinding: 'base-too-thin', spec: 'q007-advised' },
      {
        part: 'lifts',
        by: '6 in in two layers',
        figure: 2,
        in: '',
        ours: job => level(job, 'corner 1').compactionTops.length,
        spec: 'q007-advised'
      },
      { part: 'cloth on clay', finding: 'geotextile-over-fine-soil', saying: 'clay' },
      { part: 'the sand is too thick', finding: 'bed-outside-limits', saying: '2 in, is 1 in too thick' }
    ],
    findings: [['bed-outside-limits', 'base-too-thin'], ['base-too-thin'], []]
  },
  {
    item: 'Q010',
    source: 'trade forum',
    need: 'Under a slab that is gone lie 4 to 6 in of sand. May it stay, and how much base?',
    specs: ['q010'],
    parts: [
      {
        part: 'the sand is not dug out',
        by: '7 3/8 in of layers less the 3 in that the slab lay deeper: 1 5/8 in of 6 in stay',
        figure: 4.375,
        in: 'in',
        ours: job => area(job).dig.deepest
      },
      {
        part: 'whether it may stay',
        missing: 'what the ground is made of, layer by layer, has no word: only topsoil is known',
        unsaid: { statement: 'layer sand 6 in', in: 'site' }
      },
      {
        part: 'base after that',
        by: 'as said',
        figure: 4,
        in: 'in',
        ours: job => layer(job, 'base').thickness
      },
      {
        part: 'lifts',
        by: '4 in go at once',
        figure: 1,
        in: '',
        ours: job => level(job, 'corner 1').compactionTops.length
      },
      { part: 'density, and the machine', ...NO_HARD_WORDS }
    ],
    findings: [[]]
  },
  {
    item: 'Q011',
    source: 'questions and answers',
    need: 'A block drive for a van with 50 mm blocks: 200 mm of sub-base, or 100 as articles say?',
    specs: ['q011', 'q011-thicker'],
    parts: [
      { part: 'sub-base by load and soil', finding: 'base-too-thin', saying: '200 mm at least under cars on clay' },
      { part: 'enough at 200 mm', noFinding: 'base-too-thin', spec: 'q011-thicker' },
      { part: 'thickness of the unit', finding: 'unit-too-thin', saying: '60 mm at least' },
      {
        part: 'a van, as such',
        missing: 'traffic is foot, cars or trucks: a van counts as a car',
        unsaid: { statement: 'loads van', in: 'area' }
      }
    ],
    findings: [['unit-too-thin', 'piece-too-small-under-wheels', 'base-too-thin'], ['piece-too-small-under-wheels']]
  },
  {
    item: 'Q012',
    source: 'forum',
    need: 'A drive at 1:7, turned on by cars and now and then a tractor: 100 or 200 mm? Old concrete as fill?',
    specs: ['q012'],
    parts: [
      { part: 'the heaviest load governs', finding: 'trucks-need-an-engineer', saying: 'a licensed engineer' },
      {
        part: 'turning: the bond',
        finding: 'running-bond-under-turning-wheels',
        saying: 'Herringbone is recommended'
      },
      { part: 'the slope', by: '1 in 7', figure: 100 / 7, in: '%', ours: job => told(area(job).finish?.fall) },
      { part: 'too steep', finding: 'fall-too-steep', saying: '1:7' },
      {
        part: 'how much rubble',
        by: '10 x 13 x 0.05',
        figure: 6.5,
        in: 'm3',
        ours: job => told(area(job).dig.oldPavingVolume)
      },
      {
        part: 'using it again',
        missing: 'what is broken out is carted off: no word for using it as fill',
        unsaid: { statement: 'reuse old-concrete', in: 'area' }
      },
      {
        part: 'water from the field above',
        missing: 'water that comes from outside the paving has no word',
        unsaid: { statement: 'spring A', in: 'site' }
      }
    ],
    findings: [['running-bond-under-turning-wheels', 'unit-too-thin', 'piece-too-small-under-wheels']]
  },
  {
    item: 'Q014',
    source: 'blog',
    need: 'The drive is dug. A neighbour says garden pavers crack under a car; 4 to 6 in of gravel are planned.',
    specs: ['q014', 'q014-thicker'],
    parts: [
      { part: 'units for cars', finding: 'slab-where-block-needed', saying: 'under cars a block is needed' },
      { part: 'base by soil', finding: 'base-too-thin', saying: '6 in at least under cars' },
      { part: 'enough as changed', noFinding: 'base-too-thin', spec: 'q014-thicker' },
      {
        part: 'the dig as it is',
        by: '1 3/4 + 1 + 5',
        figure: 7.75,
        in: 'in',
        ours: job => area(job).dig.deepest
      },
      {
        part: 'the dig as it has to be',
        by: '2 3/8 + 1 + 10: 5 5/8 in more',
        figure: 13.375,
        in: 'in',
        ours: job => area(job).dig.deepest,
        spec: 'q014-thicker'
      },
      {
        part: 'the change told beside it',
        by: '2 3/8 + 1 + 10',
        figure: 13.375,
        in: 'in',
        ours: job => area(job).dig.deepest,
        variant: 'thicker'
      }
    ],
    findings: [
      ['slab-where-block-needed', 'piece-too-small-under-wheels', 'base-too-thin'],
      ['piece-too-small-under-wheels']
    ]
  },
  {
    item: 'Q015',
    source: "contractor's article",
    need: 'Clear stone instead of graded base: what else must change?',
    specs: ['q015'],
    parts: [
      { part: 'bed of small clear stone', finding: 'sand-over-open-stone', saying: 'Over open stone the bed is grit' },
      { part: 'cloth underneath', finding: 'geotextile-over-fine-soil', saying: 'clay' },
      {
        part: 'edging: spikes do not hold',
        missing: 'no rule looks at spikes in open stone: no source for it was found'
      },
      {
        part: 'an outlet for the water below',
        missing: 'a drain under the paving has no word: drains stand in the face',
        unsaid: { statement: 'underdrain 4 in', in: 'area' }
      }
    ],
    findings: [['sand-over-open-stone']]
  },

  // ---- doors and gates ----
  {
    item: 'Q035',
    source: 'trade forum',
    need: 'Paving flush with a sliding door and above the bottom of the siding: what height is right?',
    specs: ['q035', 'q035-lower'],
    parts: [
      { part: 'below the siding', finding: 'finish-too-high', saying: 'siding' },
      { part: 'below the sill', finding: 'door-step', saying: '2 in at least is usual where it snows' },
      {
        part: 'flush with the sill',
        by: 'as the crew left it',
        figure: 0,
        in: 'in',
        ours: job => told(thing(job, 'gates', 'slider').sillStep)
      },
      {
        part: 'below the sill as it should be',
        by: '5 in',
        figure: 5,
        in: 'in',
        ours: job => told(thing(job, 'gates', 'slider').sillStep),
        spec: 'q035-lower'
      },
      {
        part: 'the dig that it takes',
        by: '5 + 9 3/8 less the 1 in that the lawn lies below the sill',
        figure: 13.375,
        in: 'in',
        ours: job => told(level(job, 'A').ground) - level(job, 'A').digBottom,
        spec: 'q035-lower'
      },
      { part: 'clear of the siding', noFinding: 'finish-too-high', spec: 'q035-lower' }
    ],
    findings: [['door-step', 'finish-too-high'], []]
  },
  {
    item: 'Q037',
    source: 'forum',
    need: '150 mm below the damp course and 1:80: the far end goes under the footing of the boundary wall.',
    specs: ['q037', 'q037-strip', 'q040'],
    parts: [
      { part: 'below the damp course', noFinding: 'finish-too-high' },
      {
        part: 'the bottom of the dig at the wall',
        by: '150 + 5,000 / 80 + 190',
        figure: -402.5,
        in: 'mm',
        ours: job => level(job, 'C').digBottom
      },
      {
        part: 'under the footing',
        finding: 'footing-undermined',
        saying: '12.5 mm below the underside of the footing'
      },
      {
        part: 'a strip and a field',
        by: '150 + 1,500 / 60 + 3,500 / 200 + 190',
        figure: -382.5,
        in: 'mm',
        ours: job => level(job, 'C', 'field').digBottom,
        spec: 'q037-strip'
      },
      { part: 'above the footing then', noFinding: 'footing-undermined', spec: 'q037-strip' },
      {
        part: 'a channel at the door alone',
        by: 'only the ramp, 1.5 x 2, lies by the channel of the door',
        figure: 10,
        in: 'mm',
        ours: job => told(edge(job, 'A to B', 'ramp').finishFrom),
        spec: 'q040'
      }
    ],
    findings: [['footing-undermined', 'low-place-without-drain'], ['fall-too-flat', 'low-place-without-drain'], []]
  },
  {
    item: 'Q038',
    source: 'trade forum',
    need: 'Paving flush with the floor, above the damp course and over the air bricks.',
    specs: ['q038', 'q038-channel'],
    parts: [
      { part: 'air kept', finding: 'weep-holes-covered', saying: 'weep holes' },
      { part: 'the damp course', finding: 'finish-too-high', saying: 'damp course' },
      {
        part: 'a gap with a drain',
        by: '5 mm under the finish along it',
        figure: 5,
        in: 'mm',
        ours: job => told(thing(job, 'drains', 'wall-channel').finishAbove),
        spec: 'q038-channel'
      },
      {
        part: 'falling away',
        by: '1 in 60',
        figure: 100 / 60,
        in: '%',
        ours: job => told(edge(job, 'A to B').fallAway),
        spec: 'q038-channel'
      },
      {
        part: 'level with the floor',
        by: '0',
        figure: 0,
        in: 'mm',
        ours: job => told(thing(job, 'gates', 'garden-door').sillStep)
      },
      { part: 'sealing the wall, moving vents', ...NOT_ON_THE_WALL }
    ],
    findings: [
      ['weep-holes-covered', 'finish-too-high', 'door-step'],
      // A channel answers for none of them by itself: who builds it so sets them aside and says why, as in Q040.
      ['weep-holes-covered', 'finish-too-high', 'door-step']
    ]
  },
  {
    item: 'Q040',
    source: 'forum',
    need: 'Level access at the front door, yet 150 mm below the damp course.',
    specs: ['q040'],
    parts: [
      {
        part: 'level at the door',
        by: '20 - 10',
        figure: 10,
        in: 'mm',
        ours: job => told(thing(job, 'gates', 'front-door').sillStep)
      },
      {
        part: 'a ramp',
        by: '10 - 2,000 / 15',
        figure: 10 - 2000 / 15,
        in: 'mm',
        ours: job => level(job, 'C', 'ramp').finish
      },
      {
        part: 'a slot drain',
        by: '10 - 5 above the grate',
        figure: 5,
        in: 'mm',
        ours: job => told(thing(job, 'drains', 'door-channel').finishAbove)
      },
      {
        part: '150 elsewhere',
        by: 'as said',
        figure: -150,
        in: 'mm',
        ours: job => told(edge(job, 'E to F', 'path').finishFrom)
      },
      {
        part: 'the membrane lapped: set aside with that reason, not unseen',
        by: 'two findings are answered for',
        figure: 2,
        in: '',
        ours: job => job.evaluation.accepted.length
      }
    ],
    findings: [[]]
  },
  {
    item: 'Q041',
    source: 'forum',
    need: 'A garage side door opens outwards, and the terrace is to lie 3 cm above its floor.',
    specs: ['q041', 'q041-lower'],
    parts: [
      { part: 'the door strikes', finding: 'gate-too-low', saying: 'side-door' },
      {
        part: 'clearance over the swing',
        by: '10 - 30',
        figure: -20,
        in: 'mm',
        ours: job => told(thing(job, 'gates', 'side-door').clearance)
      },
      {
        part: 'what the leaf loses, or the terrace',
        by: '20 and the usual 12',
        figure: 32,
        in: 'mm',
        ours: job => told(thing(job, 'gates', 'side-door').trim)
      },
      {
        part: 'terrace lower by 15 cm: it swings',
        by: '10 + 120',
        figure: 130,
        in: 'mm',
        ours: job => told(thing(job, 'gates', 'side-door').clearance),
        spec: 'q041-lower'
      },
      {
        part: 'and there is a step',
        by: '120',
        figure: 120,
        in: 'mm',
        ours: job => told(thing(job, 'gates', 'side-door').sillStep),
        spec: 'q041-lower'
      },
      {
        part: 'the choices side by side',
        by: '10 + 120',
        figure: 130,
        in: 'mm',
        ours: job => told(thing(job, 'gates', 'side-door').clearance),
        variant: 'lower'
      },
      { part: 'the price of another door', missing: "it was not told: a cost of one's own is an `extra`" }
    ],
    findings: [['gate-too-low', 'door-step'], []]
  },
  {
    item: 'Q042',
    source: 'blog',
    need: 'A shed door shut in by bricks that stand proud until the plate has gone over them.',
    specs: ['q042'],
    parts: [
      {
        part: 'as laid',
        by: 'the finish and 6 mm',
        figure: 6,
        in: 'mm',
        ours: job => told(level(job, 'A').asLaid) - level(job, 'A').finish
      },
      {
        part: 'clearance when it is down',
        by: '30 - 25',
        figure: 5,
        in: 'mm',
        ours: job => told(thing(job, 'gates', 'shed-door').clearance)
      },
      {
        part: 'clearance while it stands proud',
        by: '5 - 6',
        figure: -1,
        in: 'mm',
        ours: job => told(thing(job, 'gates', 'shed-door').laidClearance)
      },
      {
        part: 'shut in until then',
        finding: 'gate-too-low',
        saying: 'until the units are vibrated they stand 1 mm too high'
      }
    ],
    findings: [['gate-too-low']]
  },
  {
    item: 'Q043',
    source: 'questions and answers',
    need: 'A slab of 10 x 10 ft is to be joined by pavers; too little drop from the door to pave over it.',
    specs: ['q043', 'q043-over'],
    parts: [
      {
        part: 'paved over: above the sill',
        by: '3 - 2 3/8 - 1',
        figure: -0.375,
        in: 'in',
        ours: job => told(thing(job, 'gates', 'back-door').sillStep),
        spec: 'q043-over'
      },
      {
        part: 'slab taken out: below it',
        by: '3',
        figure: 3,
        in: 'in',
        ours: job => told(thing(job, 'gates', 'back-door').sillStep)
      },
      {
        part: 'what is broken out',
        by: '10 x 10 ft x 4 in',
        figure: 100 / 3,
        in: 'cu ft',
        ours: job => told(area(job).dig.oldPavingVolume)
      },
      { part: 'area', by: '10 x 25 1/2', figure: 255, in: 'sq ft', ours: job => area(job).netArea },
      { part: 'cost', ...NO_PRICES },
      {
        part: 'other shapes side by side',
        missing:
          'a variant changes areas, drains and prices; where points or old paving differ each is a job of its own'
      }
    ],
    findings: [[], ['base-too-thin', 'door-step']]
  },

  // ---- sand depth ----
  {
    item: 'Q016',
    source: 'questions and answers',
    need: 'Why 60 mm units on 35 to 50 mm of sand, when a leaflet says 50 on 50?',
    specs: ['q016', 'q016-drive', 'q011'],
    parts: [
      { part: 'the range', finding: 'bed-outside-limits', saying: '50 mm, is 10 mm too thick: 40 mm at most' },
      {
        part: 'screeded higher than it ends',
        by: '40 + 8',
        figure: 48,
        in: 'mm',
        ours: job => told(level(job, 'A').screed) - told(level(job, 'A').baseTop),
        spec: 'q016-drive'
      },
      {
        part: 'ends at',
        by: '40',
        figure: 40,
        in: 'mm',
        ours: job => told(level(job, 'A').bedTop) - told(level(job, 'A').baseTop),
        spec: 'q016-drive'
      },
      { part: 'thickness by use', finding: 'unit-too-thin', saying: '60 mm at least', spec: 'q011' },
      { part: '60 mm for cars', noFinding: 'unit-too-thin', spec: 'q016-drive' }
    ],
    findings: [
      ['bed-outside-limits'],
      ['piece-too-small-under-wheels'],
      ['unit-too-thin', 'piece-too-small-under-wheels', 'base-too-thin']
    ]
  },
  {
    item: 'Q017',
    source: 'trade forum',
    need: 'A first pad was dug 7 in; now the lawn stands above it. What if it is raised?',
    specs: ['q017', 'q017-raised'],
    parts: [
      {
        part: 'the lawn above it, at the door',
        by: '5 - 4',
        figure: 1,
        in: 'in',
        ours: job => told(level(job, 'A').ground) - level(job, 'A').finish
      },
      {
        part: 'at most',
        by: '1 + 3 x 1/4',
        figure: 1.75,
        in: 'in',
        ours: job => told(edge(job, 'C to D').stepUp)
      },
      { part: 'and is told of', finding: 'finish-off-ground', saying: 'stands up to 1 3/4 in above the finish' },
      {
        part: 'what the layers take',
        by: '2 + 2 + 4: 9 in below the lawn, not 7',
        figure: 9,
        in: 'in',
        ours: job => told(level(job, 'A').ground) - level(job, 'A').digBottom
      },
      {
        part: 'against what was dug',
        by: '11 below the floor measured, 13 by design',
        figure: 2,
        in: 'in',
        ours: job => told(job.evaluation.numbers!.quantities.readings?.[0]?.above)
      },
      { part: 'told of as such', finding: 'dig-off-design', saying: '2 in high: 1/2 in at most. Dig on.' },
      {
        part: 'the door as it is',
        by: '5 - 2 1/2',
        figure: 2.5,
        in: 'in',
        ours: job => told(thing(job, 'gates', 'shed-door').clearance)
      },
      {
        part: 'raised by 3 in: the door hits the paving',
        by: '2 - 2 1/2',
        figure: -0.5,
        in: 'in',
        ours: job => told(thing(job, 'gates', 'shed-door').clearance),
        spec: 'q017-raised'
      },
      { part: 'and is told of', finding: 'gate-too-low', saying: 'shed-door', spec: 'q017-raised' },
      {
        part: 'above the roots of the grass then',
        by: '4 - 2',
        figure: 2,
        in: 'in',
        ours: job => level(job, 'A').finish - told(level(job, 'A').ground),
        spec: 'q017-raised'
      }
    ],
    findings: [
      ['unit-too-thin', 'bed-outside-limits', 'dig-off-design'],
      ['unit-too-thin', 'bed-outside-limits', 'gate-too-low']
    ]
  },
  {
    item: 'Q019',
    source: 'blog',
    need: '16 bags were planned for 1 in of sand on 8 x 8 ft; then 2 in it became. How many bags?',
    specs: ['q019'],
    parts: [
      {
        part: 'net, in bags of half a cubic foot',
        by: '64 x 2 / 12 / 0.5',
        figure: 64 / 3,
        in: '',
        ours: job => layer(job, 'bed').compactedVolume / 0.3048 ** 3 / 0.5
      },
      {
        part: 'loose to compacted',
        by: '21 1/3 x 110 / 95',
        figure: ((64 / 3) * 110) / 95,
        in: '',
        ours: job => told(layer(job, 'bed').looseVolume) / 0.3048 ** 3 / 0.5
      },
      {
        part: 'the joints',
        by: '176 ft of joints, 1/8 x 2 3/8 in: 12 courses and 12 columns of 8 in, 11 joints each way',
        figure: (11 * 96 + 12 * 11 * 8) * 0.125 * 2.375,
        in: '',
        ours: job => told(area(job).joints?.volume) / 0.0254 ** 3,
        apart: 11
      },
      { part: 'the 2 in', finding: 'bed-outside-limits', saying: '2 in, is 1/2 in too thick' },
      {
        part: 'in bags, as they are sold',
        by: '24.7, rounded up',
        figure: 25,
        in: '',
        ours: job => new Ordered(job).packs('washed-sand')
      }
    ],
    findings: [['bed-outside-limits']]
  },
  {
    item: 'Q005',
    source: 'how-to articles',
    need: 'Is sand a third of the gravel for 4 in and 1 in, or a quarter and a loss?',
    specs: ['q005'],
    parts: [
      {
        part: 'sand from its own depth',
        by: '100 / 12 / 27',
        figure: 100 / 324,
        in: 'cu yd',
        ours: job => layer(job, 'bed').compactedVolume
      },
      {
        part: 'a quarter of the stone',
        by: '1 / 4',
        figure: 0.25,
        in: '',
        ours: job => layer(job, 'bed').compactedVolume / layer(job, 'base').compactedVolume
      },
      {
        part: 'loose, as it is bought',
        by: '100 / 324 x 110 / 95',
        figure: ((100 / 324) * 110) / 95,
        in: 'cu yd',
        ours: job => told(layer(job, 'bed').looseVolume)
      },
      {
        part: 'what goes into the joints, on its own',
        by: 'about 14 + 14 joints of 10 ft, 1/8 x 2 3/8 in',
        figure: (14 * 120 + 15 * 14 * 8) * 0.125 * 2.375,
        in: '',
        ours: job => told(area(job).joints?.volume) / 0.0254 ** 3,
        apart: 11
      },
      {
        part: 'what is lost into the base, as a share of its own',
        by: '100 / 324 x 110 / 95 x 10 %, as the spec allows',
        figure: ((100 / 324) * 110) / 95 / 10,
        in: 'cu yd',
        ours: job => told(job.need('washed-sand')!.in.find(({ measure }) => measure === 'm3')?.loss)
      }
    ],
    findings: [['base-not-past-edging']]
  },

  // ---- buried things ----
  {
    item: 'Q061',
    source: 'trade forum',
    need: 'May a patio of 550 sq ft cover the lid of a septic tank?',
    specs: ['q061', 'q061-planted'],
    parts: [
      {
        part: 'the lid kept out of the paving',
        by: '25 x 22 - pi',
        figure: 550 - Math.PI,
        in: 'sq ft',
        ours: job => area(job).netArea
      },
      {
        part: 'the riser',
        by: '13 - 4 - 12 x 1/4',
        figure: 6,
        in: 'in',
        ours: job => told(thing(job, 'boxes', 'septic-lid').change)
      },
      {
        part: 'or an opening that is planted',
        by: '550 - 64',
        figure: 486,
        in: 'sq ft',
        ours: job => area(job).netArea,
        spec: 'q061-planted'
      },
      {
        part: 'with an edge of its own',
        missing: 'a pit has no sides that meet something: only a border runs round it',
        unsaid: { statement: 'edging tank-bed', in: 'area' }
      }
    ],
    findings: [[], []]
  },
  {
    item: 'Q063',
    source: 'forum',
    need: 'The level rises 3 in round an inspection cover.',
    specs: ['q063', 'q063-buried'],
    parts: [
      {
        part: 'the cover is raised',
        by: '9 - 5 - 60 / 60',
        figure: 3,
        in: 'in',
        ours: job => told(thing(job, 'boxes', 'inspection-cover').change)
      },
      {
        part: 'its new height',
        by: '5 + 1',
        figure: -6,
        in: 'in',
        ours: job => told(thing(job, 'boxes', 'inspection-cover').finish)
      },
      { part: 'never buried', finding: 'box-in-use-buried', saying: 'it has to be reached', spec: 'q063-buried' },
      {
        part: 'how the frame is rebuilt',
        finding: 'box-lid-changes',
        saying: 'its frame comes off, and is set on mortar'
      }
    ],
    findings: [['slivers-too-narrow-to-cut'], ['slivers-too-narrow-to-cut', 'box-in-use-buried']]
  },
  {
    item: 'Q065',
    source: 'questions and answers',
    need: 'A drain was found with its crown 4 in down, where 6 in of base are to go.',
    specs: ['q065'],
    parts: [
      {
        part: 'it lies within the dig',
        by: '4 - 9 3/8',
        figure: -5.375,
        in: 'in',
        ours: job => told(thing(job, 'pipes', 'old-drain').belowDig)
      },
      {
        part: 'and is told of',
        finding: 'pipe-near-dig',
        saying: 'old-drain lies within the dig, 5 3/8 in above its bottom'
      },
      {
        part: 'a thinner base over it',
        missing: 'a layer has one thickness in an area',
        unsaid: { statement: 'thinner base 3 in', in: 'area' }
      },
      { part: 'no plate over it until its sides are packed', ...NO_HARD_WORDS },
      { part: 'less sand', missing: 'a layer has one thickness in an area' }
    ],
    findings: [['pipe-near-dig']]
  },
  {
    item: 'Q067',
    source: 'forum',
    need: 'A root lies 2 to 3 in down where a round patio wants a dig of 4 in. Cut, raise or shrink?',
    specs: ['q067', 'q067-shrunk', 'q067-raised'],
    parts: [
      {
        part: 'as wished for',
        by: 'pi x 6 x 6',
        figure: 36 * Math.PI,
        in: 'sq ft',
        ours: job => area(job).netArea,
        apart: 0.001
      },
      {
        part: 'shrunk',
        by: 'pi x 5 x 5',
        figure: 25 * Math.PI,
        in: 'sq ft',
        ours: job => area(job).netArea,
        spec: 'q067-shrunk',
        apart: 0.001
      },
      {
        part: 'dug over the root',
        by: '4',
        figure: 4,
        in: 'in',
        ours: job => area(job).dig.deepest
      },
      {
        part: 'raised: dug above it',
        by: '4 - 2',
        figure: 2,
        in: 'in',
        ours: job => area(job).dig.deepest,
        spec: 'q067-raised'
      },
      {
        part: 'raised: a step',
        by: '2',
        figure: 2,
        in: 'in',
        ours: job => Math.max(...area(job).edges.map(({ stepDown }) => stepDown ?? 0)),
        spec: 'q067-raised'
      },
      { part: 'the root itself', ...NO_TREES }
    ],
    findings: [[], [], []]
  },
  {
    item: 'Q068',
    source: 'forum',
    need: 'An oak 3 ft from the patio, its roots 6 in down.',
    specs: ['q068'],
    parts: [
      {
        part: 'raised by 1 to 2 in: dug above them',
        by: '2 3/8 + 1 + 4 - 1 1/2',
        figure: 5.875,
        in: 'in',
        ours: job => area(job).dig.deepest
      },
      {
        part: 'how far it stands up',
        by: '1 1/2',
        figure: 1.5,
        in: 'in',
        ours: job => told(edge(job, 'near').stepDown)
      },
      { part: 'no large root cut', ...NO_TREES },
      { part: 'set again later', missing: 'no more than a note of the job' }
    ],
    findings: [[]]
  },
  {
    item: 'Q108',
    source: 'magazine questions and answers',
    need: 'Cables and pipes under the patio that is wished for.',
    specs: ['q108'],
    parts: [
      {
        part: 'the power cable, by its depth',
        by: '18 - 9 3/8',
        figure: 8.625,
        in: 'in',
        ours: job => told(thing(job, 'pipes', 'power').belowDig)
      },
      {
        part: 'the television cable',
        by: '6 - 9 3/8: within the dig',
        figure: -3.375,
        in: 'in',
        ours: job => told(thing(job, 'pipes', 'television').belowDig)
      },
      {
        part: 'within the dig',
        finding: 'pipe-near-dig',
        saying: 'television lies within the dig, 3 3/8 in above its bottom'
      },
      {
        part: 'call those who locate them',
        finding: 'gas-or-power-near-dig',
        saying: 'Stop until it is located and marked'
      },
      { part: 'dig by hand beside them', finding: 'gas-or-power-near-dig', saying: 'dig by hand here' },
      { part: 'how wide a band: 18 in either side', missing: 'the tolerance differs by place: no width is told' },
      { part: 'getting at them later', missing: 'ducts and spare sleeves have no word' }
    ],
    findings: [['pipe-near-dig', 'gas-or-power-near-dig']]
  },

  // ---- edging, rules ----
  {
    item: 'Q057',
    source: 'how-to',
    need: 'A kerb on 100 mm of concrete goes deeper than the sub-base beside it. How much more dig?',
    specs: ['q057'],
    parts: [
      {
        part: 'the field',
        by: '60 + 40 + 150',
        figure: 250,
        in: 'mm',
        ours: job => area(job).dig.deepest
      },
      {
        part: 'the extra at the edge',
        by: '2 sides x 10 x 0.3 wide x (300 - 250 mm)',
        figure: 0.3,
        in: 'm3',
        ours: job => told(area(job).dig.trenchVolume)
      },
      {
        part: 'its concrete',
        by: '20 x 0.3 x 0.1',
        figure: 0.6,
        in: 'm3',
        ours: job => told(area(job).edging[0]?.concreteVolume)
      },
      {
        part: 'the section at the edge, in depths',
        missing: 'the extra is told as a volume: the bottom of the trench has no height of its own'
      }
    ],
    findings: [['piece-too-small-under-wheels']]
  },
  {
    item: 'Q106',
    source: 'council pages',
    need: 'A front garden over 5 m2: is permission needed for block paving?',
    specs: ['q106', 'q106-soakaway'],
    parts: [
      { part: 'area', by: '6 x 4', figure: 24, in: 'm2', ours: job => area(job).netArea },
      { part: 'over 5 m2 and nothing said', finding: 'planning-not-said', saying: '5 m2' },
      {
        part: 'the water leaves to the road',
        by: 'all of it',
        figure: 24,
        in: 'm2',
        ours: job => waterOver(job, 'C to D')
      },
      {
        part: 'it stays on the plot',
        by: 'all of it',
        figure: 24,
        in: 'm2',
        ours: job => thing(job, 'drains', 'foot-channel').drained,
        spec: 'q106-soakaway'
      },
      { part: 'said, and quiet', noFinding: 'planning-not-said', spec: 'q106-soakaway' }
    ],
    findings: [['piece-too-small-under-wheels'], ['piece-too-small-under-wheels']]
  }
];
