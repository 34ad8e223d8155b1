import { atHand } from '../../lowering/things-at-hand.ts';
import type { Kind } from '../../lowering/names.ts';
import { rulesStanding } from '../../lowering/rule-leads.ts';
import { USUAL_VALUES } from '../../library/usual-values.ts';
import { BLOCKS, type BlockName } from '../../syntax/words.ts';
import type { Part } from './insertion.ts';
import { linesOfEdges } from './edge-lines.ts';
import { linesOfHeights } from './height-lines.ts';
import { logLine } from './log-lines.ts';
import { bookAround } from './candidates.ts';
import type { Scene } from './scene.ts';
import { sidesAround } from './sides.ts';
import { isSoldSo } from './sold-ways.ts';
import { BASES, EXAMPLES, isOfConcern, USUAL_RULE, usualOfConcern } from './usual-rule.ts';
import { usualParts } from './usual.ts';

const THINGS: Readonly<Record<string, string>> = {
  site: '',
  unit: '[=unit]',
  area: '[=patio]',
  material: '[=pit-stone]',
  point: '[=A] at []',
  line: '[=spine] [] to []',
  section: '[=across] [] to []',
  heights: 'by [] on [], [] reads []',
  box: '[=valves] in []',
  pit: '[=tree] in []',
  inset: '[=compass] in []',
  existing: '[=old-walk]',
  drain: '[=channel]',
  pipe: '[=water-pipe]',
  gate: '[=side-gate]',
  door: '[=back-door]',
  route: '[=way-in] along []',
  'level-sheet': '',
  log: '',
  let: '[=deep] = []',
  'soil-kind': '[=loam]',
  'side-kind': '[=raised-bed]',
  bond: '[=third-bond]'
};

const CHANGES: Readonly<Record<string, string>> = { treat: '[] as []', prefer: '[] over' };

/** By block its statements in the usual order of writing, each as it is usually written behind its word. */
const STATEMENTS: Readonly<Record<BlockName, Readonly<Record<string, string>>>> = {
  spec: {
    job: '"[=My patio]"',
    ...THINGS,
    supplier: '[=stone-yard]',
    price: '[]',
    stock: '[=12] []',
    use: '"[=prices.paving]"',
    variant: '[=permeable]',
    source: '[=town-leaflet]',
    rulebook: '[=our-town]',
    rule: '[=thin-base]',
    rate: '[=our-laying]',
    accept: '[] on [] because "[=the reason]" until [=2027-06-30]'
  },
  job: {
    rules: '[]',
    show: '[]',
    currency: '[]',
    breakage: '[]',
    keep: '[] []',
    'saw-cut': '[]',
    offcuts: 'within each area',
    dig: 'by hand',
    access: '[] wide, barrow run []',
    'barrow-load': '[]',
    'truck-load': '[]',
    note: '"[=The gate stays shut.]"',
    crew: '[], [=Monday] to [=Friday]',
    begins: 'on [=2026-04-13]',
    task: '"[=Soakaway]" [], after [=dig]',
    labour: '[]',
    hire: '"[=Plate compactor]" [] a day, for [=base]',
    disposal: '[]',
    contingency: '[] of materials',
    overhead: '[]',
    margin: '[]',
    markup: '[]',
    tax: '[]',
    extra: '"[=Small tools]" []',
    excludes: '"[=moving any service]"',
    client: '"[=The household]"',
    quote: '"[=quote-1]" on [=2026-03-02], valid []',
    ...CHANGES
  },
  site: {
    soil: '[]',
    topsoil: '[]',
    winters: '[]',
    benchmark: '[=door-sill]',
    ground: '[] below []',
    'break-line': '[] to []',
    planning: '"[=drains to a soakaway of its own]"'
  },
  unit: {
    size: '[]',
    made: 'of []',
    colour: '[=grey]',
    weight: '[]',
    shape: '[]',
    'finished-edge': '',
    set: 'by hand',
    pack: '[]'
  },
  material: {
    role: '[]',
    compacted: '[]',
    loose: '[]',
    'compaction-factor': '[]',
    grading: '[]',
    width: '[]',
    size: '[]',
    spikes: 'every []',
    'base-past': '[]',
    concrete: '[] below',
    haunch: '[] behind',
    roll: '[]',
    lap: '[]',
    'curve-pieces': '[]',
    wait: '[] before compacting against it',
    loss: '[]',
    moisture: '[]',
    settling: '[]',
    'kept-back': '[]',
    'according-to': '"[=the supplier\'s sheet]"'
  },
  'soil-kind': {
    swell: '[]',
    density: '[]',
    drains: '[]',
    'frost-heave': '[]',
    'according-to': '"[=own sample, weighed]"'
  },
  'side-kind': { ground: '[]', holds: '[]' },
  bond: {
    offset: '[]',
    course: '[=a a b b]',
    as: '[]',
    turned: '[]',
    'random-courses': '',
    hexagons: '',
    rings: '',
    seed: '[]',
    'joints-apart': '[]'
  },
  existing: {
    kind: '[]',
    units: '[]',
    joints: '[]',
    'joint-line': 'at []',
    edge: '[] to []',
    outline: 'rectangle []',
    thickness: '[]',
    density: '[]',
    broken: 'out'
  },
  area: {
    outline: 'rectangle []',
    traffic: '[]',
    finish: '[] below [] along [], falling [] away from []',
    paving: '[] in [], joints []',
    start: 'whole units along []',
    'inboard-cuts': '[]',
    border: '[] in [] all round',
    band: '[] in [] across [] at []',
    bed: '[] []',
    base: '[] []',
    'sub-base': '[] []',
    geotextile: '[]',
    joints: 'filled with []',
    edges: ''
  },
  edges: {},
  'kept-out': {
    rectangle: '[], centre []',
    circle: '[] across, centre []',
    outline: 'rectangle [], centre []',
    lid: '[] below []',
    in: 'use, set flush',
    out: 'of use, cut down and bury',
    'no-dig': '[] across'
  },
  inset: {
    rectangle: '[], centre []',
    circle: '[] across, centre []',
    outline: 'rectangle [], centre []',
    paving: '[] in [], joints []',
    start: 'whole units along []'
  },
  heights: {},
  drain: {
    channel: 'along [] to [], [] wide',
    gully: 'rectangle [], centre []',
    grate: '[] below []',
    outlet: 'at [] to []'
  },
  pipe: { from: '[] to []', depth: 'about [], not proven', carries: '[]' },
  gate: {
    hinge: '[] along [] to [], leaf [] towards [], opens [] into []',
    underside: '[] below []',
    clearance: '[]',
    opening: '[] to [] along [] to []',
    sill: '[] below []'
  },
  'level-sheet': {
    every: '[]',
    printed: 'in []',
    string: '[] above the finish',
    'offset-points': '[] outside the dig'
  },
  log: {},
  supplier: { prices: 'on [=2026-03-01], valid []', tax: '[]', delivery: '[] a load, load []' },
  price: {
    loose: 'for []',
    piece: 'for []',
    pack: 'of [] for []',
    'pack-layer': 'of [] for []',
    pallet: 'of [] for []',
    bag: 'of [] for []',
    'bulk-bag': 'of [] for []',
    roll: 'of [] for []',
    length: 'of [] for []',
    'box-of': '[] for []',
    'mixed-pack': 'of [] [] and [] [] for []',
    prices: 'on [=2026-03-01], valid []',
    tax: '[]',
    'according-to': '"[=price list of this spring]"'
  },
  variant: { area: '[]', drain: '[] none', price: '[]', variant: '[=other]' },
  source: { kind: '[]', title: '"[=Town paving leaflet]"', edition: '"[=2024]"' },
  rulebook: { title: '"[=Our town]"', edition: '"[=2026]"', includes: '[]', show: '[]', ...CHANGES },
  rule: {
    title: '"[=Base too thin]"',
    about: '"[=Why it matters, and what to do.]"',
    severity: '[]',
    safety: '',
    concerns: '[]',
    when: '',
    needs: '',
    says: '',
    fix: '',
    cites: '[]',
    engineer: '"[=Ask a licensed engineer where the ground is soft.]"',
    wrong: '',
    right: ''
  },
  example: THINGS,
  rate: { of: '[]', when: '[]', takes: '[]', includes: '[]', cites: '[]' }
};

/** What a new block begins with. */
const BEGINS_WITH: Readonly<Record<BlockName, readonly string[]>> = {
  spec: [],
  job: ['rules', 'show'],
  site: ['soil', 'topsoil', 'winters', 'benchmark', 'ground'],
  unit: ['size'],
  material: ['role', 'compacted', 'loose'],
  'soil-kind': ['swell', 'density', 'drains', 'frost-heave'],
  'side-kind': ['ground', 'holds'],
  bond: ['offset'],
  existing: ['kind'],
  area: ['outline', 'traffic', 'finish', 'paving', 'bed', 'base', 'joints', 'edges'],
  edges: [],
  'kept-out': ['rectangle'],
  inset: ['circle', 'paving'],
  heights: [],
  drain: ['channel', 'grate'],
  pipe: ['from', 'depth'],
  gate: ['hinge', 'underside'],
  'level-sheet': ['every', 'string'],
  log: [],
  supplier: ['prices', 'tax', 'delivery'],
  price: [],
  source: ['kind', 'title'],
  rulebook: ['title', 'includes'],
  rule: [],
  variant: ['area'],
  example: [],
  rate: ['of', 'takes']
};

/** Statements that may be said again and again. */
const REPEATED: Readonly<Partial<Record<BlockName, readonly string[]>>> = {
  job: ['keep', 'note', 'treat', 'prefer', 'hire', 'extra', 'task', 'excludes'],
  site: ['benchmark', 'break-line'],
  existing: ['joint-line', 'edge'],
  drain: ['grate'],
  price: [
    ...['loose', 'piece', 'pack', 'pack-layer', 'pallet', 'bag', 'bulk-bag'],
    ...['roll', 'length', 'box-of', 'mixed-pack']
  ],
  bond: ['course'],
  area: ['border', 'band'],
  rulebook: ['treat', 'prefer'],
  variant: ['area', 'drain', 'price'],
  rule: ['about', 'concerns', 'when', 'needs', 'says', 'fix', 'cites', 'wrong', 'right']
};

/** Statements that only materials of some roles have. */
const FOR_ROLES: Readonly<Record<string, readonly string[]>> = {
  compacted: ['base', 'sub-base', 'bed', 'joint-filler', 'concrete'],
  loose: ['base', 'sub-base', 'bed', 'joint-filler', 'concrete'],
  'compaction-factor': ['base', 'sub-base', 'bed', 'joint-filler'],
  grading: ['base', 'sub-base', 'bed', 'joint-filler'],
  width: ['edging'],
  size: ['edging'],
  spikes: ['edging'],
  'base-past': ['edging'],
  concrete: ['edging'],
  haunch: ['edging'],
  'curve-pieces': ['edging'],
  wait: ['edging', 'concrete'],
  'kept-back': ['joint-filler'],
  moisture: ['base', 'sub-base', 'bed', 'joint-filler'],
  settling: ['base', 'sub-base', 'bed', 'joint-filler'],
  roll: ['geotextile'],
  lap: ['geotextile']
};

/** Shapes: one of them is said once. */
const SHAPES: readonly string[] = ['rectangle', 'circle', 'outline'];

/** What boxes have, or pits. */
const FOR_KEPT_OUT: Readonly<Record<string, string>> = { lid: 'box', in: 'box', out: 'box', 'no-dig': 'pit' };

/** What can only be written once there are so many points, or a line. */
const NEEDS_POINTS: Readonly<Record<string, number>> = {
  line: 2,
  section: 2,
  heights: 1,
  gate: 2,
  door: 2,
  channel: 2,
  outlet: 1,
  edge: 2,
  'break-line': 2
};

/** Things that lie in an area. */
const INSIDE_AREAS: readonly string[] = ['box', 'pit', 'inset'];

/** Words of the statements that can still be said where the cursor stands, in the usual order. */
export function statementsToSay(scene: Scene): readonly string[] {
  const { cursor, text, project } = scene;
  const { tokens } = cursor.parsed;
  const { block } = cursor;
  const around = cursor.around.at(-1);
  const others = (around?.inside ?? []).filter(({ first }) => tokens[first]!.startOffset !== cursor.start);
  const said = new Set(others.map(({ word }) => word));
  const words = Object.keys(STATEMENTS[block]);
  if (block === 'kept-out') return words.filter(word => isOfKeptOut(word, around?.word, said));
  if (block === 'spec' || block === 'example') {
    const chunks = cursor.parsed.chunks.filter(({ start }) => start !== cursor.start).map(({ word }) => word);
    const once = block === 'spec' ? new Set(chunks) : said;
    const hasArea = atHand(text, project, 'area').length > 0;
    return words.filter(word => {
      if (word === 'job' || word === 'site' || word === 'level-sheet') return !once.has(word);
      if (!hasPointsFor(scene, word)) return false;
      if (word === 'route') return atHand(text, project, 'line').length > 0;
      if (word === 'pipe') return hasPipeEnds(scene);
      if (word === 'gate' || word === 'variant') return hasArea;
      if (word === 'accept') return hasArea && rulesStanding(text, project).length > 0;
      return hasArea || !INSIDE_AREAS.includes(word);
    });
  }
  const role = others.find(({ word }) => word === 'role');
  const roles = role && tokens.slice(role.first, role.end).map(({ image }) => image);
  const repeated = REPEATED[block] ?? [];
  return words.filter(
    word =>
      (!said.has(word) || repeated.includes(word)) &&
      (roles === undefined || suits(word, roles)) &&
      makesSense(scene, word) &&
      hasPointsFor(scene, word) &&
      (block !== 'bond' || isOfBond(word, said))
  );
}

/** Its shape is said once, and a box is in use or out of it. */
function isOfKeptOut(word: string, thing: string | undefined, said: ReadonlySet<string>): boolean {
  const isSaid =
    said.has(word) || [SHAPES, ['in', 'out']].some(set => set.includes(word) && set.some(one => said.has(one)));
  return !isSaid && (FOR_KEPT_OUT[word] ?? thing) === thing;
}

function hasPointsFor({ text, project }: Scene, word: string): boolean {
  const least = NEEDS_POINTS[word] ?? 0;
  return least === 0 || atHand(text, project, 'point').length >= least;
}

function hasPipeEnds({ text, project }: Scene): boolean {
  const ends = (['point', 'kept-out', 'drain'] as const).flatMap(kind => atHand(text, project, kind));
  return ends.length > 1;
}

/** How its units lie a bond says in one way, and only random courses go by a seed. */
function isOfBond(word: string, said: ReadonlySet<string>): boolean {
  if (word === 'seed' || word === 'joints-apart') return said.has('random-courses');
  return word === 'turned' || said.has(word) || !WAYS.some(way => said.has(way));
}

const WAYS: readonly string[] = ['offset', 'course', 'as', 'random-courses', 'hexagons', 'rings'];

/** What a rule looks at is told by its `concerns`, and only rules that stand can be changed. */
function makesSense(scene: Scene, word: string): boolean {
  const { text, project, cursor } = scene;
  if (cursor.block === 'rule') return !isOfConcern(word) || usualOfConcern(scene, word) !== undefined;
  if (word === 'band') return !isRound(cursor);
  if (cursor.block === 'price') return isSoldSo(scene, word);
  if (cursor.block === 'variant')
    return word !== 'variant' && (word !== 'drain' || atHand(text, project, 'drain').length > 0);
  if (!Object.hasOwn(CHANGES, word)) return true;
  return rulesStanding(text, project, bookAround(scene)).length > 0;
}

function suits(word: string, roles: readonly string[]): boolean {
  const wanted = FOR_ROLES[word];
  return wanted === undefined || wanted.some(role => roles.includes(role));
}

/** A statement as it is usually written, with its block where it has one; `width` is the room for its word. */
export function statementParts(scene: Scene, block: BlockName, word: string, width = word.length): readonly Part[] {
  const usual = block === 'rule' && isOfConcern(word) ? usualOfConcern(scene, word) : undefined;
  const pattern = named(scene, block, word, usual ?? patternOf(scene, block, word));
  const head = usualParts(scene, block, word, pattern);
  const { opens } = BLOCKS[block].statements[word]!;
  const body =
    opens === undefined ? [] : block === 'variant' ? variantBody(scene, opens, word) : blockParts(scene, opens, word);
  return [opens === undefined ? word.padEnd(width) : word, ...(pattern === '' ? [] : [' ', ...head]), ...body];
}

/** What differs in an area is one statement at first; a drain is left out. */
function variantBody(scene: Scene, opens: BlockName, word: string): readonly Part[] {
  if (opens === 'drain') return [];
  return opens === 'area' ? [' { ', ...statementParts(scene, 'area', 'base'), ' }'] : blockParts(scene, opens, word);
}

/** Round a circle courses run along no side. */
function patternOf({ cursor }: Scene, block: BlockName, word: string): string {
  return word === 'start' && isRound(cursor) ? 'turned []' : STATEMENTS[block][word]!;
}

function isRound(cursor: Scene['cursor']): boolean {
  return sidesAround(cursor)?.form === 'circle';
}

/** ` { … }` with what a block of its kind usually begins with; `word` is that of its statement. */
export function blockParts(scene: Scene, opens: BlockName, word: string): readonly Part[] {
  const lines =
    opens === 'rule'
      ? linesOfRule(scene)
      : opens === 'example'
        ? [exampleLine(scene, word)]
        : linesOf(scene, opens, word);
  const [only] = lines;
  if (lines.length === 1 && only!.every(part => typeof part !== 'string' || !part.includes('\n')))
    return [' { ', ...only!, ' }'];
  return [' {', ...lines.flatMap(line => ['\n  ', ...line.map(indented)]), '\n}'];
}

function linesOf(scene: Scene, opens: BlockName, word: string): readonly (readonly Part[])[] {
  if (opens === 'edges') return linesOfEdges(scene);
  if (opens === 'heights') return linesOfHeights(scene);
  if (opens === 'log') return [logLine(scene, 'delivered')];
  const words = beginsWith(scene, opens, word);
  const flat = words.filter(word => BLOCKS[opens].statements[word]!.opens === undefined);
  const width = Math.max(...flat.map(word => word.length));
  return words.map(word => statementParts(scene, opens, word, width));
}

/** A door has a sill where a gate has a leaf; a drain without points to lie between is a gully. */
function beginsWith(scene: Scene, opens: BlockName, word: string): readonly string[] {
  if (word === 'door') return ['opening', 'sill'];
  return opens === 'drain' && !hasPointsFor(scene, 'channel') ? ['gully', 'grate'] : BEGINS_WITH[opens];
}

/** A whole small rule: right but for its numbers, its reason and its source. */
function linesOfRule(scene: Scene): readonly (readonly Part[])[] {
  return Object.entries(USUAL_RULE[scene.system]).map(([word, pattern]) => {
    const parts = usualParts(scene, 'rule', word, pattern);
    const opens = pattern === '' ? blockParts(scene, 'example', word) : [' ', ...parts];
    return [pattern === '' ? word : word.padEnd('concerns'.length), ...opens];
  });
}

function exampleLine({ system }: Scene, word: string): readonly Part[] {
  return EXAMPLES[system].flatMap((line, at) => [
    at === 0 ? '' : '\n',
    ...(line.endsWith('base    ') ? [line, { usual: BASES[system][word as 'wrong' | 'right'] }] : [line])
  ]);
}

function indented(part: Part): Part {
  return typeof part === 'string' ? part.replaceAll('\n', '\n  ') : part;
}

/** Gives a new thing a name that is free. */
function named(scene: Scene, block: BlockName, word: string, pattern: string): string {
  const kind = INSIDE_AREAS.includes(word) ? 'kept-out' : word === 'door' ? 'gate' : word;
  const declares = block === 'spec' || block === 'example';
  if (!declares || kind === 'job' || kind === 'use' || kind === 'accept') return pattern;
  return pattern.replace(/\[=([^\]]+)\]/, (_, usual: string) => {
    const name = usual === 'unit' ? USUAL_VALUES.unitName[scene.system] : usual;
    return `[=${freeName(scene, kind as Kind, name)}]`;
  });
}

/** The next name of its kind that nothing is called by yet: `patio`, `patio-2`; of points the next letter. */
function freeName({ text, project }: Scene, kind: Kind, usual: string): string {
  const taken = new Set(atHand(text, project, kind).map(({ declared: { name } }) => name));
  const letters = Array.from({ length: 26 }, (_, at) => String.fromCharCode(usual.charCodeAt(0) + at));
  const letter = kind === 'point' ? letters.find(each => /^[A-Z]$/.test(each) && !taken.has(each)) : undefined;
  if (letter !== undefined) return letter;
  let name = usual;
  for (let count = 2; taken.has(name); count++) name = `${usual}-${count}`;
  return name;
}
