/**
 * Where which word is a keyword. A statement word counts only at the start of a statement of its block, a clause word
 * only within its statement; anywhere else the same word is a plain name.
 */
export interface Statement {
  /** Words of the statement besides its first. */
  readonly clauses: readonly string[];
  /** The block that its brace opens. */
  readonly opens?: BlockName;
  /** It holds sizes, so that x between two names is the sign of a size: `rectangle wide x deep`. */
  readonly sizes?: true;
  /** Its number counts things: the name behind it is no measure. */
  readonly counts?: true;
  /** Names stand among its numbers (`A 1.462 B 1.470 m`, `10 cobble-a`): one behind a number that is no measure is a name. */
  readonly rows?: true;
}

export interface Block {
  readonly statements: Readonly<Record<string, Statement>>;
  /** Statements may also be parted by commas: `{ role base, compacted 140 lb per cu ft }`. */
  readonly commas: boolean;
  /** For a block whose statements begin with a name, a form or a date: what each of them is. */
  readonly lines?: Statement;
}

export type BlockName =
  | 'spec'
  | 'job'
  | 'site'
  | 'unit'
  | 'material'
  | 'soil-kind'
  | 'side-kind'
  | 'bond'
  | 'existing'
  | 'area'
  | 'edges'
  | 'kept-out'
  | 'inset'
  | 'heights'
  | 'drain'
  | 'pipe'
  | 'gate'
  | 'level-sheet'
  | 'log'
  | 'supplier'
  | 'price'
  | 'variant'
  | 'source'
  | 'rulebook'
  | 'rule'
  | 'example'
  | 'rate';

const plain: Statement = { clauses: [] };
const like: Statement = { clauses: ['as'] };
const height = ['below', 'above', 'level', 'with'];
/** Heights on a wall that a side meets. Benchmarks are called so too. */
export const WALL_MARKS: readonly string[] = ['damp-course', 'siding', 'weep-holes', 'footing'];
const spot = ['along', 'to', 'leg', 'out', 'left', 'right', 'from', 'towards', 'at'];
const rectangle = ['corner', 'centre', 'turned', ...spot];
const circle = ['across', 'radius', 'centre', ...spot];
const layer: Statement = { clauses: ['as', 'past', 'the', 'edging', 'settles'] };
const chain = ['to', 'bowed', 'radius', 'through', 'in', 'out', 'rounded', 'at', 'and'];
const outline: Statement = {
  clauses: [
    ...['rectangle', 'circle', 'walk', 'from', 'to', 'back', ...rectangle, ...circle],
    ...['bowed', 'through', 'in', 'out', 'rounded', 'at', 'and', 'wide']
  ],
  sizes: true
};
const size: Statement = { clauses: [], sizes: true };
const where = ['to', 'the', 'rest', 'all', 'round', 'leg', 'legs', 'and'];
const joints = ['joints', 'from', 'to'];
const paving: Statement = { clauses: ['as', 'in', ...joints] };
const start: Statement = {
  clauses: ['whole', 'units', 'along', ...where, 'equal', 'cuts', 'from', 'shifted', 'turned', 'carried', 'on']
};
const use: Statement = {
  clauses: ['of', 'use', 'set', 'flush', 'cut', 'down', 'and', 'bury', 'tray', 'deep', 'paved', 'with']
};
const treat: Statement = { clauses: ['as'] };
const prefer: Statement = { clauses: ['over'] };
/** What is bought by the pack: also in stock and in the log. */
const PACKS = ['pack', 'pack-layer', 'pallet', 'bag', 'bulk-bag', 'roll'] as const;
const sold = ['for', 'in', 'steps', 'of', 'at', 'least', 'from', 'deposit', 'weight'];
const pricesOn: Statement = { clauses: ['on', 'valid'] };
const condition = ['and', 'or', 'is', 'not', 'said', 'at', 'least', 'most', 'more', 'less', 'than'];

/** What an example of a rule may hold. */
const things: Readonly<Record<string, Statement>> = {
  let: plain,
  site: { clauses: [], opens: 'site' },
  point: { clauses: ['at', 'halfway', 'taped', 'of', ...spot] },
  line: { clauses: chain },
  section: { clauses: chain },
  heights: { clauses: ['by', 'on', 'ground', 'reads'], opens: 'heights' },
  unit: { clauses: [], opens: 'unit' },
  material: { clauses: [], opens: 'material' },
  'soil-kind': { clauses: [], opens: 'soil-kind' },
  'side-kind': { clauses: [], opens: 'side-kind' },
  bond: { clauses: [], opens: 'bond' },
  existing: { clauses: [], opens: 'existing' },
  area: { clauses: [], opens: 'area' },
  box: { clauses: ['in'], opens: 'kept-out' },
  pit: { clauses: ['in'], opens: 'kept-out' },
  inset: { clauses: ['in'], opens: 'inset' },
  drain: { clauses: ['in'], opens: 'drain' },
  pipe: { clauses: ['in'], opens: 'pipe' },
  gate: { clauses: [], opens: 'gate' },
  door: { clauses: [], opens: 'gate' },
  route: { clauses: ['along'] },
  'level-sheet': { clauses: [], opens: 'level-sheet' },
  log: { clauses: [], opens: 'log' }
};

const price: Statement = { clauses: ['from'], opens: 'price' };
const variant: Statement = { clauses: [], opens: 'variant' };

export const BLOCKS: Readonly<Record<BlockName, Block>> = {
  spec: {
    commas: false,
    statements: {
      job: { clauses: [], opens: 'job' },
      use: plain,
      ...things,
      supplier: { clauses: [], opens: 'supplier' },
      price,
      stock: { clauses: PACKS, rows: true },
      variant,
      source: { clauses: [], opens: 'source' },
      rulebook: { clauses: [], opens: 'rulebook' },
      rule: { clauses: [], opens: 'rule' },
      rate: { clauses: [], opens: 'rate' },
      accept: { clauses: ['on', 'site', 'because', 'until', 'for', 'good', 'agreed', 'with'] }
    }
  },
  job: {
    commas: true,
    statements: {
      rules: plain,
      show: plain,
      currency: plain,
      breakage: plain,
      keep: { clauses: [], counts: true },
      'saw-cut': plain,
      offcuts: { clauses: ['within', 'each', 'area'] },
      'barrow-load': plain,
      'truck-load': plain,
      dig: { clauses: ['by', 'hand', 'machine'] },
      access: { clauses: ['wide', 'barrow', 'run'] },
      note: plain,
      treat,
      prefer,
      crew: { clauses: ['to', 'and', 'a', 'day'] },
      begins: { clauses: ['on'] },
      task: { clauses: ['after', 'before', 'and'] },
      labour: plain,
      hire: { clauses: ['a', 'for', 'the', 'job', 'and'] },
      disposal: { clauses: ['load', 'container', 'of', 'for'] },
      contingency: { clauses: ['of'] },
      overhead: plain,
      margin: plain,
      markup: plain,
      tax: plain,
      extra: { clauses: ['of', 'untaxed', 'no', 'margin'] },
      excludes: plain,
      client: plain,
      quote: { clauses: ['on', 'valid'] }
    }
  },
  site: {
    commas: true,
    statements: {
      soil: { clauses: ['bearing'] },
      topsoil: { clauses: ['kept', 'for', 'backfill'] },
      winters: plain,
      benchmark: { clauses: height },
      ground: { clauses: height },
      'break-line': { clauses: ['to'] },
      planning: plain
    }
  },
  unit: {
    commas: true,
    statements: {
      size,
      made: { clauses: ['of'] },
      colour: plain,
      weight: plain,
      shape: plain,
      'finished-edge': plain,
      set: { clauses: ['by', 'hand'] },
      pack: plain
    }
  },
  material: {
    commas: true,
    statements: {
      role: plain,
      compacted: plain,
      loose: plain,
      'compaction-factor': plain,
      grading: plain,
      size,
      width: plain,
      spikes: { clauses: ['every'] },
      'base-past': plain,
      concrete: { clauses: ['below', 'of', 'it', 'under', 'the', 'paving'], sizes: true },
      haunch: { clauses: ['behind'], sizes: true },
      roll: size,
      lap: plain,
      'curve-pieces': plain,
      wait: { clauses: ['before', 'compacting', 'against', 'it'] },
      loss: plain,
      moisture: plain,
      settling: plain,
      'kept-back': plain,
      'according-to': plain
    }
  },
  'soil-kind': {
    commas: true,
    statements: { swell: plain, density: plain, drains: plain, 'frost-heave': plain, 'according-to': plain }
  },
  'side-kind': { commas: true, statements: { ground: plain, holds: plain } },
  bond: {
    commas: true,
    statements: {
      offset: plain,
      course: plain,
      as: plain,
      turned: plain,
      'random-courses': plain,
      hexagons: plain,
      rings: plain,
      seed: plain,
      'joints-apart': plain
    }
  },
  existing: {
    commas: true,
    statements: {
      kind: plain,
      units: size,
      joints: plain,
      'joint-line': { clauses: ['at'] },
      edge: { clauses: ['to', 'offsets', 'into', 'out', 'of', 'it', 'at'] },
      outline,
      thickness: plain,
      density: plain,
      broken: { clauses: ['out'] }
    }
  },
  area: {
    commas: false,
    statements: {
      outline,
      traffic: plain,
      finish: {
        clauses: [
          ...[
            'as',
            'along',
            'to',
            'leg',
            'at',
            'falling',
            'rising',
            'away',
            'from',
            'towards',
            'twisted',
            'evenly',
            'folded'
          ],
          ...['cross-fall', 'camber', 'the', 'left', 'right', ...height]
        ],
        rows: true
      },
      paving,
      start,
      'inboard-cuts': plain,
      border: {
        clauses: ['in', 'along', ...where, 'except', 'mitred', 'butted', ...joints]
      },
      band: { clauses: ['in', 'across', ...where, 'at', ...joints] },
      bed: layer,
      base: layer,
      'sub-base': layer,
      geotextile: like,
      joints: { clauses: ['as', 'filled', 'with'] },
      edges: { clauses: [], opens: 'edges' }
    }
  },
  edges: {
    commas: false,
    statements: {},
    lines: {
      clauses: [
        ...['to', 'meets', 'the', 'rest', 'all', 'round', 'leg', 'legs'],
        ...[
          'flush',
          'edging',
          'set',
          'before',
          'after',
          'laying',
          'standing',
          'up',
          'concrete',
          'behind',
          'last',
          'course'
        ],
        ...['solid', 'masonry', ...WALL_MARKS, ...height]
      ]
    }
  },
  'kept-out': {
    commas: false,
    statements: {
      rectangle: { clauses: rectangle, sizes: true },
      circle: { clauses: circle },
      outline,
      lid: { clauses: height },
      in: use,
      out: use,
      'no-dig': { clauses: ['across', 'radius'] }
    }
  },
  inset: {
    commas: false,
    statements: { rectangle: { clauses: rectangle, sizes: true }, circle: { clauses: circle }, outline, paving, start }
  },
  heights: { commas: false, statements: {}, lines: { clauses: ['ground', ...height], rows: true } },
  drain: {
    commas: false,
    statements: {
      channel: { clauses: ['along', 'to', 'wide', 'deep', 'on', 'concrete', 'below', 'and', 'both', 'sides'] },
      gully: { clauses: ['rectangle', ...rectangle, 'circle', ...circle], sizes: true },
      grate: { clauses: ['at', 'and', ...height] },
      outlet: { clauses: ['at', 'to', 'class'] }
    }
  },
  pipe: {
    commas: false,
    statements: { from: { clauses: ['to'] }, depth: { clauses: ['about', 'proven', 'not'] }, carries: plain }
  },
  gate: {
    commas: false,
    statements: {
      hinge: { clauses: ['leaf', 'opens', 'into', 'of', ...spot] },
      underside: { clauses: height },
      clearance: plain,
      opening: { clauses: ['to', 'along'] },
      sill: { clauses: height }
    }
  },
  'level-sheet': {
    commas: true,
    statements: {
      every: plain,
      printed: { clauses: ['in'] },
      string: { clauses: ['the', 'finish', ...height] },
      'offset-points': { clauses: ['outside', 'the', 'dig'] }
    }
  },
  log: {
    commas: false,
    statements: {},
    lines: {
      clauses: [
        ...[
          'delivered',
          'batch',
          'done',
          'of',
          'and',
          'along',
          'measured',
          'gap',
          'under',
          'straightedge',
          'in',
          'slope',
          'at'
        ],
        ...['soft-spot', 'centre', 'deeper', 'filled', 'with', ...PACKS, ...spot, ...height]
      ],
      sizes: true
    }
  },
  supplier: {
    commas: true,
    statements: {
      prices: pricesOn,
      tax: plain,
      delivery: { clauses: ['a', 'load', 'least', 'order', 'free', 'from'] }
    }
  },
  price: {
    commas: true,
    statements: {
      prices: pricesOn,
      tax: plain,
      loose: { clauses: sold },
      piece: { clauses: sold },
      ...Object.fromEntries(PACKS.map((word): [string, Statement] => [word, { clauses: sold, sizes: true }])),
      'box-of': { clauses: sold },
      length: { clauses: sold },
      'mixed-pack': { clauses: [...sold, 'and'], rows: true },
      'according-to': plain
    }
  },
  // One within another is told as such.
  variant: {
    commas: false,
    statements: { area: things['area']!, drain: { clauses: ['none'], opens: 'drain' }, price, variant }
  },
  source: { commas: true, statements: { kind: plain, title: plain, edition: plain } },
  rulebook: {
    commas: true,
    statements: { title: plain, edition: plain, includes: plain, show: plain, treat, prefer }
  },
  rule: {
    commas: false,
    statements: {
      title: plain,
      about: plain,
      severity: plain,
      safety: plain,
      concerns: plain,
      when: { clauses: condition },
      needs: { clauses: [...condition, 'when'] },
      says: plain,
      fix: { clauses: ['to', 'safely'] },
      cites: plain,
      engineer: plain,
      wrong: { clauses: [], opens: 'example' },
      right: { clauses: [], opens: 'example' }
    }
  },
  example: { commas: false, statements: things },
  rate: {
    commas: true,
    statements: {
      of: { clauses: ['and'] },
      when: { clauses: ['and'] },
      takes: { clauses: ['piece', 'for', 'the', 'job'] },
      includes: { clauses: ['and'] },
      cites: plain
    }
  }
};

/** The words that begin something of their own: inside an open brace they say that the brace was never closed. */
export const TOP_WORDS: ReadonlySet<string> = new Set(Object.keys(BLOCKS.spec.statements));

/** A block in words, for messages. */
export const BLOCK_WORDS: Readonly<Record<BlockName, string>> = {
  spec: 'a job spec',
  job: 'a job',
  site: 'the site',
  unit: 'a unit',
  material: 'a material',
  'soil-kind': 'a kind of soil',
  'side-kind': 'a kind of side',
  bond: 'a bond',
  existing: 'an existing thing',
  area: 'an area',
  edges: 'the edges',
  'kept-out': 'a box or pit',
  inset: 'an inset',
  heights: 'the heights',
  drain: 'a drain',
  pipe: 'a pipe',
  gate: 'a gate or door',
  'level-sheet': 'the level sheet',
  log: 'the log',
  supplier: 'a supplier',
  price: 'a price',
  variant: 'a variant',
  source: 'a source',
  rulebook: 'a rulebook',
  rule: 'a rule',
  example: 'an example',
  rate: 'a rate'
};

/** What people write for statements of a block. */
const OTHER_STATEMENTS: Readonly<Partial<Record<BlockName, Readonly<Record<string, string>>>>> = {
  spec: {
    ...{ manhole: 'box', lid: 'box', cover: 'box', peg: 'point', pegs: 'point', stake: 'point' },
    ...{ level: 'heights', levels: 'heights', gutter: 'drain', channel: 'drain', gully: 'drain' },
    ...{ threshold: 'door', sill: 'door', cable: 'pipe', duct: 'pipe', diary: 'log' },
    ...{ shop: 'supplier', merchant: 'supplier', yard: 'supplier', prices: 'price', cost: 'price', have: 'stock' }
  },
  site: { datum: 'benchmark' },
  drain: { gutter: 'channel', slot: 'channel', lid: 'grate' },
  'kept-out': { cover: 'lid', level: 'lid' },
  gate: { threshold: 'sill', leaf: 'hinge' },
  job: {
    ...{ waste: 'breakage', spare: 'keep', spares: 'keep' },
    ...{ labor: 'labour', wages: 'labour', wage: 'labour', workers: 'crew', people: 'crew', men: 'crew' },
    ...{ starts: 'begins', start: 'begins', rent: 'hire', rental: 'hire', skip: 'disposal', dump: 'disposal' },
    ...{ profit: 'margin', vat: 'tax', gst: 'tax', overheads: 'overhead', allowance: 'contingency', sum: 'extra' },
    ...{ customer: 'client', excluded: 'excludes', exclusions: 'excludes', offer: 'quote', work: 'task' }
  },
  rate: { task: 'of', for: 'of', if: 'when', hours: 'takes', source: 'cites' },
  unit: { form: 'shape', pallet: 'pack' },
  material: { waste: 'loss', spillage: 'loss', water: 'moisture', swept: 'kept-back' },
  supplier: { vat: 'tax', haulage: 'delivery', carriage: 'delivery', transport: 'delivery' },
  price: {
    ...{ vat: 'tax', each: 'piece', pieces: 'piece', single: 'piece', packs: 'pack', bags: 'bag', pallets: 'pallet' },
    ...{ rolls: 'roll', layer: 'pack-layer', 'big-bag': 'bulk-bag', box: 'box-of', bulk: 'loose', by: 'loose' }
  },
  bond: { row: 'course', rows: 'course', line: 'course', shift: 'offset', like: 'as', rotated: 'turned' },
  area: { pattern: 'paving', units: 'paving', laying: 'paving', soldier: 'border', sailor: 'border', frame: 'border' },
  inset: { pattern: 'paving', units: 'paving' }
};

/** `inc. VAT`, `plus VAT` in a job. */
export const TAX_OF_JOB =
  'What is added to the price of the job is a share: `tax 20 %`. Whether what is bought has tax in it stands at its supplier or price: `tax included`.';

/** What people write in a block where it is said in another place, and where that is. */
const SAID_ELSEWHERE: Readonly<Partial<Record<BlockName, Readonly<Record<string, string>>>>> = {
  spec: {
    datum: 'A mark that heights are measured from stands in the site: `site { benchmark door-sill }`.',
    tape: 'Tapes stand with the point that they lead to: `point C taped 12 ft from A, 9 ft from B, left of A to B`.'
  },
  job: {
    ...{ inc: TAX_OF_JOB, incl: TAX_OF_JOB, including: TAX_OF_JOB, included: TAX_OF_JOB, plus: TAX_OF_JOB },
    ...{ ex: TAX_OF_JOB, exc: TAX_OF_JOB, excl: TAX_OF_JOB, excluding: TAX_OF_JOB }
  },
  area: {
    slope: 'A fall is part of the finish: `finish 2 in below door-sill along A to B, falling 1:60 away from A to B`.',
    fall: 'A fall is part of the finish: `finish 2 in below door-sill along A to B, falling 1:60 away from A to B`.'
  },
  existing: {
    height: 'Its heights stand in a block of their own: `heights { old-walk A 3 in below door-sill }`.',
    level: 'Its heights stand in a block of their own: `heights { old-walk A 3 in below door-sill }`.'
  }
};

export function saidElsewhere(block: BlockName, word: string): string | undefined {
  const said = SAID_ELSEWHERE[block] ?? {};
  const small = word.toLowerCase();
  return Object.hasOwn(said, small) ? said[small] : undefined;
}

/** The statement that people mean who begin one with another word. */
export function otherStatement(block: BlockName, word: string): string | undefined {
  const others = OTHER_STATEMENTS[block] ?? {};
  const small = word.toLowerCase();
  return Object.hasOwn(others, small) ? others[small] : undefined;
}
