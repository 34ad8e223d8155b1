import { TASK_WORDS } from '../../job/work.ts';
import { WORKS } from '../../pricing/cost-line.ts';
import { type Owner, quantitiesOf, type Quantity } from '../../quantities/catalogue.ts';
import { SCHEMA_NUMBER } from './schema-number.ts';

export type Schema = Readonly<Record<string, unknown>>;

export const DIALECT = 'https://json-schema.org/draft/2020-12/schema';

export const text = (description: string): Schema => ({ type: 'string', description });
export const number = (description: string, measure: string): Schema => ({
  type: 'number',
  description: measure === '' ? description : `${description}, ${measure}`
});
export const whole = (description: string): Schema => ({ type: 'integer', minimum: 1, description });
export const list = (items: Schema, description?: string): Schema => ({
  type: 'array',
  items,
  ...(description === undefined ? {} : { description })
});
export const one = (...values: readonly (string | number)[]): Schema => ({ enum: values });
const ref = (name: string): Schema => ({ $ref: `#/$defs/${name}` });

/** An object that has no other keys than these; keys that end in `?` may be absent. */
export function object(properties: Readonly<Record<string, Schema>>, description?: string): Schema {
  const entries = Object.entries(properties);
  return {
    type: 'object',
    ...(description === undefined ? {} : { description }),
    additionalProperties: false,
    required: entries.map(([key]) => key).filter(key => !key.endsWith('?')),
    properties: Object.fromEntries(entries.map(([key, value]) => [key.replace(/\?$/, ''), value]))
  };
}

/** The numbers of an owner, from the catalogue. */
function numbersOf(owner: Owner): Record<string, Schema> {
  return Object.fromEntries(
    quantitiesOf(owner).map(quantity => [quantity.key + (quantity.always ? '' : '?'), schemaOf(quantity)])
  );
}

function schemaOf({ kind, describe, measure, print }: Quantity): Schema {
  if (kind === 'count') return { type: 'integer', minimum: 0, description: `${describe}, a count` };
  if (kind === 'share')
    return {
      type: 'number',
      ...(print === 'slope' ? {} : { minimum: 0 }),
      description: `${describe}, a share of 1`
    };
  return number(describe, kind === 'number' ? 'measure as named' : measure);
}

/** `2026-04-18` */
export const DAY = '^\\d{4}-\\d{2}-\\d{2}$';

export const PLACE = {
  file: text('File, relative, with forward slashes'),
  line: whole('Line, from 1'),
  column: whole('Column, from 1, in UTF-16 units'),
  endLine: whole('Line of the end, from 1'),
  endColumn: whole('Column just after the end, from 1, in UTF-16 units')
};

export const FINDING = object({
  id: text('Name of the finding'),
  family: one('fault', 'rule'),
  severity: one('error', 'warning', 'note'),
  message: text('What is wrong, in the measures of the job'),
  target: text('The thing concerned'),
  ...PLACE,
  values: list(
    object({
      name: text('What it is'),
      value: { type: ['number', 'string'], description: 'In SI, or in words' },
      measure: text('SI measure; empty for counts, shares and words')
    })
  ),
  'source?': text('Kind of source and source of a rule'),
  related: list(object({ message: text('What stands there'), ...PLACE })),
  fixes: list(
    object({ title: text('What the fix does'), safe: { type: 'boolean', description: 'It keeps the meaning' } })
  ),
  'accepted?': object(
    {
      thing: text('The thing on which it is set aside'),
      reason: text('Why'),
      'until?': {
        type: 'string',
        pattern: DAY,
        description: 'Last day on which that holds; absent where it does for good'
      },
      'agreedWith?': text('Who agreed to it for good'),
      ...PLACE
    },
    'Set aside, and counted apart; where that is said'
  )
});

const point = {
  type: 'array',
  prefixItems: [number('x, to the right', 'm'), number('y, up', 'm')],
  minItems: 2,
  maxItems: 2,
  items: false
};

const side = object({
  from: ref('point'),
  to: ref('point'),
  'centre?': { ...ref('point'), description: 'Centre of the arc; absent on a straight side' },
  'turn?': number('Turn of the arc, anticlockwise positive', 'degrees')
});

const working = object(
  {
    formula: text('Names, numbers, + - × /, brackets, larger of (…), rounded up (…), rounded to hundredths (…)'),
    values: list(
      object({
        name: text('Name in the formula'),
        value: number('In SI', 'measure as named'),
        measure: text('SI measure; empty for counts and shares'),
        'written?': text('As written in the text, or in what ships'),
        from: {
          oneOf: [
            object({ pointer: text('Another quantity of this job: JSON pointer that starts at the job') }),
            object({ file: PLACE.file, line: PLACE.line, column: PLACE.column }, 'Where it is written'),
            object({ assumed: text('Why it is taken so'), 'source?': text('Where the value is from') }),
            object({
              shape: text('Measured on this area, side, box or pit, on several joined by +, or on the whole job')
            })
          ]
        }
      })
    )
  },
  'How a number came about; a number rounded up may exceed the result by a millionth without asking for one more'
);

/** Where something lies on the plan. */
const placeXY = { x: number('x, to the right', 'm'), y: number('y, up', 'm') };

const STEP = object({ at: number('Distance along it', 'm'), step: number('Up is more than nought', 'm') });

/** Whether the units used are as few as can be. */
const PROVEN = { 'proven?': { type: 'boolean', description: 'No way of cutting takes fewer units' } };

/** How a place is found again. */
const TAPED = { point: text('Point that has coordinates'), distance: number('Distance from it', 'm') };
const NAMED = { id: text('Name within the file'), name: text('Name') };
const DATED = { id: text('Name within the file'), date: { type: 'string', pattern: DAY, description: 'Day' } };
const drained = number('Area of paving whose water that is', 'm2');

/** What the job holds besides its areas; of what it does not hold there is no key. */
const SITE = {
  'datum?': object(
    {
      benchmark: text('Benchmark'),
      height: number('Its height above what heights count from', 'm'),
      fromNought: { type: 'boolean', description: 'Heights count from nought, not from the benchmark' }
    },
    'What all heights count from'
  ),
  'tapes?': list(
    object({
      from: text('Point'),
      to: text('Point'),
      worst: { type: 'boolean', description: 'No tape misfits more' },
      ...numbersOf('tape')
    }),
    'Distances between points, as read and as fitted together'
  ),
  'heights?': list(
    object({ of: text('`ground`, or what is there'), at: text('Point'), ...numbersOf('measured-height') }),
    'Heights taken at points'
  ),
  'boxes?': list(
    object({
      ...NAMED,
      area: text('Area'),
      'inUse?': { type: 'boolean', description: 'It is in use; absent where that is not said' },
      buried: { type: 'boolean', description: 'It is cut down and buried' },
      ...placeXY,
      tapedFrom: list(object(TAPED), 'From two points to its middle'),
      ...numbersOf('box')
    })
  ),
  'gates?': list(
    object({
      ...NAMED,
      kind: one('gate', 'door'),
      'leastAt?': { ...ref('point'), description: 'Where the clearance is least' },
      strikes: { type: 'boolean', description: 'The leaf strikes the finish' },
      'overPaving?': { type: 'boolean', description: 'The leaf swings over paving whose finish is known' },
      ...numbersOf('gate')
    })
  ),
  'pipes?': list(
    object({
      ...NAMED,
      'carries?': text('What runs in it'),
      proven: { type: 'boolean', description: 'Its depth was proven on site' },
      crossesDig: { type: 'boolean', description: 'Its line leads over a dig' },
      'nearestAt?': { ...ref('point'), description: 'Where the dig comes nearest to it, by its stated depth' },
      tapedFrom: list(object({ of: text('Place on the pipe'), ...TAPED })),
      ...numbersOf('pipe')
    })
  ),
  'drains?': list(
    object({ ...NAMED, from: list(object({ area: text('Area'), drained })), ...numbersOf('drain') }),
    'Channels and gullies; none is sized'
  ),
  'water?': list(
    object({
      area: text('Area'),
      over: list(
        object({
          side: text('Name of the side'),
          index: { type: 'integer', minimum: 0, description: 'Its place in the outline, from 0' },
          'meets?': text('What lies beyond'),
          drained,
          'stays?': number('What of it stays in low places, of this area or further on', 'm2')
        }),
        'Sides that water comes to over the area alone'
      ),
      lowPlaces: list(object({ ...placeXY, drained }), 'Where its water stays'),
      tolerance: number('By how much these areas may be off', 'a share of 1')
    }),
    'Where water goes; none of areas that lie level or whose finish is not said'
  ),
  'routes?': list(
    object({
      ...NAMED,
      stretches: list(object({ 'area?': text('Area'), ...numbersOf('stretch') }), 'Of one slope each, in order'),
      lips: list(STEP, 'Steps along the line'),
      ...numbersOf('route')
    })
  ),
  'deliveries?': list(
    object({
      id: text('Name within the file'),
      thing: text('Material or unit'),
      measure: { enum: ['kg', 'm3', ''], description: 'Measure of the numbers; empty for pieces' },
      ...numbersOf('delivery')
    })
  ),
  'readings?': list(
    object({
      ...DATED,
      layer: one('dig', 'sub-base', 'base', 'bed', 'as-laid', 'finish'),
      at: text('Point'),
      area: text('Area'),
      ...numbersOf('reading')
    }),
    'Heights measured against the design'
  ),
  'gaps?': list(object({ ...DATED, 'area?': text('Area'), ...numbersOf('gap') }), 'Gaps under a straightedge'),
  'slopes?': list(
    object({ ...DATED, along: text('Line'), 'area?': text('Area'), ...numbersOf('slope') }),
    'Slopes measured against the design'
  )
};

const area = object({
  id: text('Name within the file'),
  name: text('Name'),
  traffic: list(one('foot', 'cars', 'trucks', 'turning')),
  outline: list(ref('side'), 'The face of the laid units'),
  keptOut: list(object({ id: text('Name within the file'), outline: list(ref('side')), ...numbersOf('kept-out') })),
  ...numbersOf('area'),
  edges: list(
    object({
      name: text('Name of the side'),
      from: ref('point'),
      to: ref('point'),
      'meets?': text('What lies beyond; absent where nothing is said'),
      'edging?': text('Edging material'),
      ...numbersOf('edge'),
      'steps?': list(STEP, "Along the side: the neighbour's height less that of the finish")
    })
  ),
  'finish?': object({ at: text('Benchmark'), ...numbersOf('finish') }),
  dig: object(numbersOf('dig')),
  'softSpots?': list(
    object({ id: text('Name within the file'), 'material?': text('What fills it'), ...numbersOf('soft-spot') }),
    'Dug deeper and filled with stone'
  ),
  'levels?': list(
    object({
      at: text('Corner, point, box, or place along a side'),
      'along?': number('Distance along the side or line', 'm'),
      ...placeXY,
      ...numbersOf('level'),
      compactionTops: list(number('Height above the datum', 'm'), 'Tops of the layers of stone as they are compacted'),
      'beyond?': { const: true, description: 'The ground was not measured there: as high as at the nearest place' }
    }),
    'Heights above the datum'
  ),
  'levelsLeftOut?': whole('Places that would have made the sheet too long'),
  'offsetPoints?': list(
    object({
      at: text('On the line of which side, beyond which end'),
      ...placeXY,
      fromCorner: number('Distance from the corner', 'm'),
      finish: number('Height of the finish there, were it prolonged', 'm'),
      'string?': number('Height of the string there', 'm')
    }),
    'Outside the dig, on the lines of the sides'
  ),
  layers: list(object({ role: one('bed', 'base', 'sub-base'), material: text('Material'), ...numbersOf('layer') })),
  'geotextile?': object({ material: text('Material'), ...numbersOf('geotextile') }),
  'laying?': list(object({ unit: text('Unit'), bond: text('Bond'), ...PROVEN, ...numbersOf('laying') })),
  'borderRows?': list(
    object({
      border: text('`border-1`, `band-1`: in the order of the text'),
      unit: text('Unit'),
      course: one('soldier-course', 'sailor-course'),
      sides: list(text('Side that it runs along')),
      wholeUnits: { type: 'boolean', description: 'Whole units fit; otherwise both ends are cut alike' },
      ...numbersOf('border-row')
    }),
    'Borders and bands, row by row'
  ),
  'cuts?': list(
    object({
      number: whole('Number on the plan'),
      unit: text('Unit'),
      count: whole('Units cut so'),
      outlines: list(list(ref('side')), "What stays of each, in the unit's own frame; holes run clockwise"),
      area: number('Area of what stays of each', 'm2'),
      sawLength: number('Length sawn of each', 'm')
    }),
    'Equal cuts together'
  ),
  'runningSizes?': list(object(numbersOf('running-size')), 'Every five courses of the field'),
  'joints?': object(numbersOf('joints')),
  edging: list(object({ material: text('Material'), ...numbersOf('edging') }))
});

const MEASURED = { enum: ['piece', 'kg', 'm3', 'm2', 'm'], description: 'Measure of the amounts; volumes are loose' };
const money = (description: string): Schema => ({ type: 'string', pattern: '^-?\\d+\\.\\d{2}$', description });
const SOLD = {
  pack: text('How it is sold: `bag of 0.5 cu ft`, `loose`'),
  sold: text('Name of that way of selling, within the files'),
  'supplier?': text('Supplier'),
  'tax?': {
    enum: ['included', 'added', 'taken-off'],
    description: 'Whether tax is in the cost; `taken-off`: it is in the price and not in the cost'
  }
};
const IN_NO_SUM = money('Given back when pallets and bags are: in no sum');

/** What is to be bought, and the order. */
const BUYING = {
  'needs?': list(
    object({
      id: text('Name within the files'),
      item: text('Name'),
      kind: one('unit', 'edging', 'curve-pieces', 'spikes', 'geotextile', 'material'),
      in: list(object({ measure: MEASURED, ...numbersOf('need') }), 'In every measure that it can be sold by'),
      for: list(
        object({
          'area?': text('Area'),
          'drain?': text('Drain'),
          work: one(
            'paving',
            'boxes',
            'bed',
            'base',
            'sub-base',
            'soft-spots',
            'joints',
            'edging',
            'drains',
            'geotextile'
          ),
          'side?': text('Side that it stands along'),
          'amount?': number('What it takes there, allowances not counted', 'measure as named'),
          'measure?': MEASURED,
          'from?': text('The number that it was taken from: JSON pointer that starts at the job')
        }),
        'Where it goes'
      ),
      choices: list(
        object({
          ...SOLD,
          measure: MEASURED,
          packHolds: number('What one holds; loose: one step', 'measure as named'),
          ...numbersOf('choice'),
          cost: money('What these packs cost'),
          'delivery?': money('What bringing them alone costs'),
          'notTaken?': {
            enum: ['least-order', 'load'],
            description: 'Its supplier brings no such order: it is less than the least, or too much for a load'
          }
        }),
        'Ways to cover the need, each by itself'
      ),
      assumptions: list(text('What is taken for granted'))
    }),
    'What is to be bought of each thing for the whole job'
  ),
  'order?': list(
    object({
      id: text('Name within the files'),
      item: text('Name'),
      needMeasure: MEASURED,
      ...SOLD,
      ...numbersOf('order'),
      'cost?': money('Absent on further lines of a pack of several sizes'),
      'deposit?': IN_NO_SUM,
      'priced?': object({
        'on?': text('Day of the price'),
        'until?': text('Last day that it holds'),
        'accordingTo?': text('Who says so')
      }),
      proven: { type: 'boolean', description: 'No cheaper order covers what is bought together with it' },
      'notBrought?': { const: true, description: 'What bringing it costs is not known, and not counted' }
    }),
    'The cheapest order that covers every need that has a price'
  ),
  'deliveryCharges?': list(
    object({
      supplier: text('Supplier'),
      name: text('Its name'),
      ...numbersOf('delivery-charge'),
      goods: money('What is bought there'),
      cost: money('What bringing it costs'),
      'tax?': SOLD['tax?']
    })
  ),
  'orderCost?': object({
    currency: text('Currency, three letters'),
    tax: one('without', 'with', 'mixed', 'not-said'),
    goods: money('All lines of the order'),
    delivery: money('Bringing them'),
    total: money('Goods and delivery'),
    bound: money('No order costs less; the total where that is proven'),
    proven: { type: 'boolean', description: 'No order costs less than this one' },
    'deposits?': IN_NO_SUM
  }),
  'orderAssumptions?': list(text('What the order takes for granted'))
};

const SUM = { cost: money('What it costs'), price: money('What the client pays for it, without tax') };
const PER_UNIT = { 'perUnit?': object(SUM, 'For one square foot or square metre') };
const WORK_SUMS = list(
  object({
    work: one(...WORKS),
    'title?': text('Title of a line of its own'),
    untaxed: { type: 'boolean', description: 'Nothing of it bears tax' },
    ...SUM,
    ...PER_UNIT
  }),
  'By layer and piece of work'
);
const KIND = one('material', 'delivery', 'labour', 'hire', 'disposal', 'extra', 'contingency', 'taken-off');

/** Cost and price of all of the job, whatever of it is delivered or done. */
const PRICE = {
  'costs?': object(
    {
      currency: text('Currency, three letters'),
      lines: list(
        object({
          id: text('Name within the costs'),
          kind: KIND,
          title: text('What it is for'),
          cost: money('All its parts, without tax'),
          untaxed: { type: 'boolean', description: 'No tax comes on it' },
          passedOn: { type: 'boolean', description: 'Passed on at cost, without overhead and margin' },
          parts: list(
            object({
              'area?': text('Area; absent: the job as a whole'),
              work: one(...WORKS),
              'edge?': text('Side that it stands along'),
              'task?': one(...TASK_WORDS),
              ...SUM
            }),
            'Where it goes'
          )
        })
      ),
      kinds: list(object({ kind: KIND, cost: money('All lines of this kind') })),
      costs: money('All lines but what is taken off'),
      passedOn: money('Of them what is passed on at cost'),
      takenOff: money('Taken off the price before tax, below nought'),
      overhead: money('Overhead'),
      profit: money('Margin or markup'),
      price: money('Without tax'),
      taxed: money('Of it what bears tax'),
      tax: money('Tax'),
      total: money('To pay'),
      deposits: IN_NO_SUM,
      netArea: number('Of all areas together', 'm2'),
      'perUnit?': object(
        { costs: money('Costs'), price: money('Price without tax'), total: money('To pay') },
        'For one square foot or square metre of all areas'
      ),
      areas: list(
        object({
          area: text('Area'),
          name: text('Its name'),
          netArea: number('Its net area', 'm2'),
          ...SUM,
          ...PER_UNIT,
          works: WORK_SUMS,
          edges: list(object({ edge: text('Side'), ...SUM }), 'By side')
        })
      ),
      wholeJob: WORK_SUMS,
      tasks: list(object({ task: one(...TASK_WORDS), ...SUM })),
      unpriced: list(object({ title: text('What has no price'), because: text('Why') }), 'In no sum'),
      assumed: list(text('What is taken for granted'))
    },
    'Cost and price'
  ),
  'days?': { type: 'integer', minimum: 0, description: 'Days of the crew' }
};

/** What the JSON tells of a job as it is written, and of a variant where it differs. */
const JOB: Readonly<Record<string, Schema>> = {
  id: text('Name within the file'),
  title: text('Title of the job'),
  'currency?': text('Currency, three letters'),
  rulebooks: list(object({ id: text('Rulebook that the job names'), 'edition?': text('Its edition') })),
  complete: { type: 'boolean', description: 'Every area has all its numbers' },
  missing: list(text('What has no numbers')),
  points: list(
    object({
      id: text('Name within the file'),
      name: text('Name'),
      x: number('x, to the right', 'm'),
      y: number('y, up', 'm'),
      fixed: { type: 'boolean', description: 'Its coordinates are given' }
    })
  ),
  areas: list(ref('area')),
  dig: object(numbersOf('job-dig'), 'The whole job; ground shared by two areas is counted once'),
  totals: object(numbersOf('totals')),
  materials: list(
    object({ role: one('base', 'sub-base', 'bed'), material: text('Material'), ...numbersOf('job-material') }),
    'Materials of the layers of all areas together, by role and name'
  ),
  units: list(
    object({ unit: text('Unit'), ...PROVEN, ...numbersOf('job-unit') }),
    'Units of all areas together, by name'
  ),
  edging: list(
    object({ material: text('Edging material'), ...numbersOf('job-edging') }),
    'Edging of all areas together, by name'
  ),
  ...SITE,
  ...BUYING,
  ...PRICE
};

/** Every key may be absent. */
function optional(properties: Readonly<Record<string, Schema>>): Record<string, Schema> {
  return Object.fromEntries(Object.entries(properties).map(([key, value]) => [`${key.replace(/\?$/, '')}?`, value]));
}

const { id: _id, ...DIFFERING } = JOB;

const job = object({
  ...JOB,
  'variants?': list(
    object({
      ...optional(DIFFERING),
      id: text('Name within the file'),
      name: text('Name of the variant'),
      'findings?': list(ref('finding'))
    }),
    'The job as its variants have it: the same keys where they differ, of the areas those that do'
  ),
  workings: {
    type: 'object',
    description: 'By JSON pointer that starts at the job',
    additionalProperties: ref('working')
  },
  findings: list(ref('finding'))
});

/** JSON Schema of `quantities`. */
export const QUANTITIES_SCHEMA: Schema = {
  $schema: DIALECT,
  title: 'Quantities of paving jobs',
  description:
    'All in SI: m, m2, m3, kg, degrees. A key whose stage does not exist yet, or that cannot be told, is absent.',
  ...object({
    schema: { const: SCHEMA_NUMBER },
    tool: text('Program and version'),
    asOf: { type: 'string', pattern: DAY, description: 'Day the numbers are as of' },
    files: list(
      object({
        file: PLACE.file,
        sha256: { type: 'string', pattern: '^[0-9a-f]{64}$', description: 'Hash of the text' }
      })
    ),
    jobs: list(ref('job'))
  }),
  $defs: { point, side, working, area, job, finding: FINDING }
};

const count = (of: string): Schema => ({ type: 'integer', minimum: 0, description: `Number of ${of}` });

/** JSON Schema of `check`. */
export const CHECK_SCHEMA: Schema = {
  $schema: DIALECT,
  title: 'Findings of paving jobs',
  ...object({
    schema: { const: SCHEMA_NUMBER },
    counts: object({
      errors: count('errors'),
      warnings: count('warnings'),
      notes: count('notes'),
      accepted: count('findings that are set aside')
    }),
    findings: list(ref('finding'))
  }),
  $defs: { finding: FINDING }
};
