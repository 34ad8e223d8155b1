import type { RawFinding } from './finding.ts';
import { saying } from './limits.ts';
import type { Rule, RuleInputs } from './rule.ts';
import { baseAtLeast, baseOnTopsoil, basePastEdging, baseUsual } from './rules-base.ts';
import { bedWithin, jointsWithin } from './rules-bed-and-joints.ts';
import { digShallow } from './rules-dig.ts';
import { openEdges } from './rules-edges.ts';
import { quantitiesLikely } from './rules-slips.ts';
import { blockNeeded, lengthUnderTrucks, unitAtLeast } from './rules-units.ts';

const PRACTICE = 'Common practice, no source.';
const FAQ =
  'Association guidance: Interlocking Concrete Pavement Institute, frequently asked questions, 6th edition, 2015.';
const EDGE_NOTE = 'Association guidance: Interlocking Concrete Pavement Institute, Tech Spec 3, edge restraints.';
const CLAY_NOTE = 'Association guidance: Brick Industry Association, Technical Note 14A, 2017.';
const UNITS_STANDARD = 'Standard: ASTM C936, section 5.1.';

/**
 * The first rules, with the values of North America and Britain. Severity: an error only where a published least value
 * that was read is not reached, or where people can come to harm; else never for a value of practice or from memory. A
 * limit met exactly passes.
 */
export const RULES: readonly Rule[] = [
  {
    id: 'base-too-thin',
    countries: ['north-america'],
    severity: 'error',
    source: FAQ,
    asks: 'The base is at least 4 in under foot traffic and 6 in under cars.',
    judge: inputs => baseAtLeast(inputs, 'north-america')
  },
  {
    id: 'base-too-thin',
    countries: ['britain'],
    severity: 'warning',
    source: PRACTICE,
    asks: 'The base is at least 100 mm under foot traffic and 150 mm under cars, 200 mm under cars on clay.',
    judge: inputs => baseAtLeast(inputs, 'britain')
  },
  {
    id: 'base-thinner-than-usual',
    countries: ['north-america'],
    severity: 'warning',
    source: `${FAQ} The 2 in more on poor soil: Tech Spec 2, as quoted in public texts. The 8 in under trucks: from memory.`,
    asks: 'Where winters freeze the base is 6 in under foot traffic and 10 in under cars; on soil that is weak or drains poorly 2 in more than the least; under trucks 8 in.',
    judge: inputs => baseUsual(inputs, 'north-america')
  },
  {
    id: 'base-thinner-than-usual',
    countries: ['britain'],
    severity: 'warning',
    source: 'From memory, not read again: BS 7533 family; check against the standard.',
    asks: 'Under cars the base is 300 mm at a bearing ratio of 2 %, 225 mm at 3 %, 200 mm at 4 %, 150 mm at 5 %.',
    judge: inputs => baseUsual(inputs, 'britain')
  },
  {
    id: 'base-on-topsoil',
    countries: ['north-america', 'britain'],
    severity: 'warning',
    source: PRACTICE,
    asks: 'The dig goes down through the topsoil.',
    judge: baseOnTopsoil
  },
  {
    id: 'dig-deep',
    countries: ['north-america', 'britain'],
    severity: 'error',
    source:
      'Safety. From memory, not read again: US 29 CFR 1926.652 asks for protection from 5 ft (1.5 m) on. The 4 ft (1.2 m): common practice.',
    asks: 'No dig is deeper than 4 ft (1.2 m) without shoring or sloping by those who know how.',
    judge: digShallow
  },
  {
    id: 'base-not-past-edging',
    countries: ['north-america'],
    severity: 'warning',
    source: EDGE_NOTE,
    asks: 'At open edges the base runs past the edging by at least its own thickness.',
    judge: basePastEdging
  },
  {
    id: 'bed-outside-limits',
    countries: ['north-america'],
    severity: 'warning',
    source: 'From memory, not read again: Concrete Masonry & Hardscapes Association, PAV-TEC-002.',
    asks: 'A sand bed under concrete units is 3/4 to 1 1/2 in thick.',
    judge: inputs => bedWithin(inputs, 'concrete', 'north-america')
  },
  {
    id: 'bed-outside-limits',
    countries: ['north-america'],
    severity: 'warning',
    source: CLAY_NOTE,
    asks: 'A sand bed under clay units is 3/4 to 1 in thick after compaction.',
    judge: inputs => bedWithin(inputs, 'clay', 'north-america')
  },
  {
    id: 'bed-outside-limits',
    countries: ['britain'],
    severity: 'warning',
    source: 'From memory, not read again: BS 7533-3.',
    asks: 'A sand bed is 20 to 40 mm thick after compaction.',
    judge: inputs => bedWithin(inputs, undefined, 'britain')
  },
  {
    id: 'joint-outside-limits',
    countries: ['north-america'],
    severity: 'warning',
    source: 'From memory, not read again: Concrete Masonry & Hardscapes Association, PAV-TEC-002.',
    asks: 'Joints between concrete units are 1/16 to 3/16 in (2 to 5 mm) wide.',
    judge: inputs => jointsWithin(inputs, 'concrete', 'north-america')
  },
  {
    id: 'joint-outside-limits',
    countries: ['north-america'],
    severity: 'warning',
    source: CLAY_NOTE,
    asks: 'Joints between clay units are 1/16 to 3/16 in wide.',
    judge: inputs => jointsWithin(inputs, 'clay', 'north-america')
  },
  {
    id: 'joint-outside-limits',
    countries: ['britain'],
    severity: 'warning',
    source: 'From memory, not read again: BS 7533-3.',
    asks: 'Joints are 2 to 5 mm wide.',
    judge: inputs => jointsWithin(inputs, undefined, 'britain')
  },
  {
    id: 'unit-too-thin',
    countries: ['north-america'],
    severity: 'warning',
    source: `${UNITS_STANDARD} Under trucks: association guidance, Concrete Masonry & Hardscapes Association, PAV-TEC-002-22.`,
    asks: 'Concrete blocks are at least 2.36 in (60 mm) thick, under trucks 3 1/8 in (80 mm).',
    judge: inputs => unitAtLeast(inputs, 'concrete', 'north-america')
  },
  {
    id: 'unit-too-thin',
    countries: ['britain'],
    severity: 'warning',
    source: PRACTICE,
    asks: 'Concrete blocks are at least 60 mm thick under cars, 80 mm under trucks.',
    judge: inputs => unitAtLeast(inputs, 'concrete', 'britain')
  },
  {
    id: 'unit-too-thin',
    countries: ['britain'],
    severity: 'warning',
    source: 'Standard: EN 1344, as given in a public summary.',
    asks: 'Clay units are at least 40 mm thick.',
    judge: inputs => unitAtLeast(inputs, 'clay', 'britain')
  },
  {
    id: 'slab-where-block-needed',
    countries: ['north-america'],
    severity: 'warning',
    source: UNITS_STANDARD,
    asks: 'Under cars and trucks concrete units have a face of at most 101 sq in (0.065 m2) and are at most 4 times as long as thick.',
    judge: inputs => blockNeeded(inputs, 'north-america')
  },
  {
    id: 'slab-where-block-needed',
    countries: ['britain'],
    severity: 'warning',
    source: 'From memory, not read again: EN 1338, clause 3.',
    asks: 'Under cars and trucks concrete units are at most 4 times as long as thick.',
    judge: inputs => blockNeeded(inputs, 'britain')
  },
  {
    id: 'unit-long-for-trucks',
    countries: ['north-america'],
    severity: 'warning',
    source: 'From memory, not read again: Interlocking Concrete Pavement Institute, Tech Spec 4.',
    asks: 'Under trucks concrete units are at most 3 times as long as thick.',
    judge: lengthUnderTrucks
  },
  {
    id: 'open-edge-without-edging',
    countries: ['north-america'],
    severity: 'warning',
    source: EDGE_NOTE,
    asks: 'Every side where nothing else holds the paving has edging.',
    judge: openEdges
  },
  {
    id: 'open-edge-without-edging',
    countries: ['britain'],
    severity: 'warning',
    source: PRACTICE,
    asks: 'Every side where nothing else holds the paving has edging.',
    judge: openEdges
  },
  {
    id: 'trucks-need-an-engineer',
    countries: ['north-america', 'britain'],
    severity: 'note',
    source: PRACTICE,
    asks: 'Layers under trucks are set by a licensed engineer.',
    judge: ({ area }) =>
      area.traffic.includes('trucks')
        ? [{ message: `Trucks use ${area.name}: a licensed engineer sets its layers.`, target: area.key, values: [] }]
        : []
  },
  {
    id: 'unlikely-quantity',
    countries: ['north-america', 'britain'],
    severity: 'warning',
    source: PRACTICE,
    asks: 'Layers of stone are 1 in (25 mm) to 3 ft (1 m) thick; units are longer than thick, at most 12 in (300 mm) thick and 6 ft 6 in (2 m) long; compacted stone and sand have 62 to 187 lb per cu ft (1,000 to 3,000 kg/m3); an area has at most 215,000 sq ft (20,000 m2).',
    judge: quantitiesLikely
  },
  {
    id: 'winters-not-said',
    countries: ['north-america'],
    severity: 'note',
    source: PRACTICE,
    asks: 'The site says whether winters freeze or are mild.',
    judge: ({ area }) =>
      area.site.winters === undefined
        ? [
            {
              message: 'The site does not say whether winters freeze: bases are judged as where they are mild.',
              target: 'site',
              values: [],
              fixes: [saying('site/winters', 'winters freeze'), saying('site/winters', 'winters mild')]
            }
          ]
        : []
  }
];

/** What the rules of the countries named find in an area; without a country, nothing. */
export function judgeArea(inputs: RuleInputs): RawFinding[] {
  return RULES.filter(rule => rule.countries.some(country => inputs.countries.includes(country))).flatMap(rule =>
    rule.judge(inputs).map(breach => ({ id: rule.id, ...breach, severity: rule.severity, source: rule.source }))
  );
}
