import { describe, expect, test } from 'vitest';
import type { TextChange } from '../../../language/findings/finding.ts';
import { renameableAt, renamed } from '../../../language/editing/rename.ts';
import { occurrencesIn } from '../../../language/lowering/occurrences.ts';
import { drain, type Evaluation, type Look } from '../../../language/paving.ts';
import { again, FILES, JOBS, newPaving, pathOf, textOf } from '../../samples/samples.ts';
import { seeded } from '../seeded.ts';
import { drawn, marked } from './marked.ts';
import { YARD, yardWith } from './yard.ts';

async function rename(files: Readonly<Record<string, string>>, name: string): Promise<string[] | string> {
  const { looks, look, offset, paving } = await marked(files);
  const result = drain(renamed(looks, look, offset, name, paving.parse));
  if ('refused' in result) return result.refused;
  return drawn(
    looks,
    result.changes.map(({ place }) => place)
  ).sort();
}

describe('A new name', () => {
  test('goes to every file that sees the thing, also through a chain of use', async () => {
    const places = await rename(yardWith('yard.paving', 'outline ‸A to'), 'corner-1');
    expect(places).toEqual([
      'other.paving: outline «A» to door to C',
      'shared.paving: point «A» at (0, 0)',
      'yard.paving: C to «A» meets hedge, edging spiked-strip set before laying',
      'yard.paving: outline «A» to door bowed 3 m out to C',
      'yard.paving: «A» to door meets house-wall'
    ]);
  });

  test('goes to a neighbour in a file that does not use this one, and from there', async () => {
    const wanted = [
      'walk.paving: edges { left meets «yard», flush',
      'yard.paving: area «yard» {',
      'yard.paving: box lid in «yard» { rectangle 20 x 14 in, centre (3, 2) m }'
    ];
    expect(await rename(yardWith('yard.paving', 'area ‸yard'), 'back-yard')).toEqual(wanted);
    expect(await rename(yardWith('walk.paving', 'left meets ya‸rd'), 'back-yard')).toEqual(wanted);
  });

  test('stands for the whole of a name with hyphens', async () => {
    const { look, looks, offset } = await marked(yardWith('yard.paving', 'rest meets front-w‸alk'));
    const found = renameableAt(looks, look, offset);
    expect(found).toMatchObject({ name: 'front-walk' });
    expect(await rename(yardWith('yard.paving', 'rest meets front-w‸alk'), 'path')).toHaveLength(2);
  });

  test('changes nothing when it is the old one', async () => {
    expect(await rename(yardWith('yard.paving', 'let ‸depth'), 'depth')).toEqual([]);
  });

  test('may be one that another kind of thing has', async () => {
    expect(await rename(yardWith('yard.paving', 'let ‸depth'), 'A')).toHaveLength(2);
  });
});

test('A new name is tried in steps, none of which reads more than one text', async () => {
  const { looks, look, offset, paving } = await marked(yardWith('yard.paving', 'outline ‸A to'));
  let read = 0;
  const counting: typeof paving.parse = text => {
    read++;
    return paving.parse(text);
  };
  const readInStep: number[] = [];
  for (const steps = renamed(looks, look, offset, 'corner-1', counting); steps.next().done !== true; read = 0)
    readInStep.push(read);
  expect(readInStep.filter(count => count > 0)).toEqual([1, 1, 1]);
  expect(readInStep.length).toBeGreaterThan(6);
});

describe('A new name of what two jobs price in one file', () => {
  const PRICES = 'supplier yard { prices on 2026-03-01 }\nprice block from yard { piece for 1.20 GBP }\n';
  const job = (title: string, thing: string) => `job "${title}" { rules britain }\nuse "prices.paving"\n${thing}\n`;
  const BLOCK = 'unit block { size 200 x 100 x 60 mm }';
  const folder = (marks: Readonly<Record<string, string>> = {}) => ({
    'prices.paving': PRICES,
    'front.paving': job('Front', BLOCK),
    'rear.paving': job('Rear', `${BLOCK}\nstock 12 block`),
    ...marks
  });
  const EVERYWHERE = [
    'front.paving: unit «block» { size 200 x 100 x 60 mm }',
    'prices.paving: price «block» from yard { piece for 1.20 GBP }',
    'rear.paving: stock 12 «block»',
    'rear.paving: unit «block» { size 200 x 100 x 60 mm }'
  ];

  test.each([
    ['one of the jobs', { 'front.paving': job('Front', BLOCK.replace('block', 'bl‸ock')) }],
    ['the other', { 'rear.paving': job('Rear', `${BLOCK}\nstock 12 bl‸ock`) }],
    ['the prices', { 'prices.paving': PRICES.replace('block', 'bl‸ock') }]
  ])('is written in the prices and in both, from %s', async (_, marks) => {
    expect(await rename(folder(marks), 'block-red')).toEqual(EVERYWHERE);
  });

  test('leads on to a third job through another file of prices', async () => {
    const files = {
      ...folder({ 'front.paving': job('Front', BLOCK.replace('block', 'bl‸ock')) }),
      'more.paving': 'price block { pallet of 400 for 400 GBP }\n',
      'side.paving': `job "Side" { rules britain }\nuse "more.paving"\n${BLOCK}\n`
    };
    files['rear.paving'] += 'use "more.paving"\n';
    expect(await rename(files, 'block-red')).toEqual(
      [
        ...EVERYWHERE,
        'more.paving: price «block» { pallet of 400 for 400 GBP }',
        'side.paving: unit «block» { size 200 x 100 x 60 mm }'
      ].sort()
    );
  });

  test('leaves a job alone that does not use the prices', async () => {
    const files = folder({ 'front.paving': job('Front', BLOCK.replace('block', 'bl‸ock')) });
    const other = { ...files, 'other.paving': `job "Other" { rules britain }\n${BLOCK}\n` };
    expect(await rename(other, 'block-red')).toEqual(EVERYWHERE);
  });

  test('is refused where the other job has another thing of that name', async () => {
    const files = folder({ 'front.paving': job('Front', BLOCK.replace('block', 'bl‸ock')) });
    files['rear.paving'] += 'unit block-red { size 200 x 100 x 80 mm }\n';
    expect(await rename(files, 'block-red')).toBe(
      'A unit called `block-red` is declared in line 5 of rear.paving already. Choose another name.'
    );
  });

  test('is refused where it prices in the other job what ships by the old one', async () => {
    const files = {
      'prices.paving': 'price type-1 { loose for 30 GBP per tonne }\n',
      'front.paving': job('Front', 'material type‸-1 { role base, compacted 2.2 t/m3, loose 1.7 t/m3 }'),
      'rear.paving': job('Rear', BLOCK)
    };
    expect(await rename(files, 'our-stone')).toBe(
      '`type-1` in line 1 of prices.paving is also what ships by that name, in rear.paving, which would be left without it. Declare a material called `type-1` there first, or give that job a file of its own.'
    );
  });
});

describe('A new name is refused', () => {
  test.each([
    [
      'which is taken',
      'shared.paving',
      'point ‸A',
      'door',
      'A point called `door` is declared in line 4 of shared.paving already.'
    ],
    [
      'which another file has taken',
      'walk.paving',
      'area front‸-walk',
      'yard',
      'An area called `yard` is declared in line 5 of yard.paving already.'
    ],
    ['which ships', 'shared.paving', 'material ‸stone', 'crushed-stone', '`crushed-stone` is a material that ships'],
    [
      'of something else that can be met',
      'walk.paving',
      'area front‸-walk',
      'hedge',
      '`hedge` in line 14 of yard.paving would then lead to something else.'
    ],
    ['that hides a side that ships', 'shared.paving', 'existing he‸dge', 'lawn', '`lawn` in line'],
    [
      'that would be read as a word of the statement',
      'shared.paving',
      'point ‸A',
      'to',
      "`to` can't be a name in line"
    ],
    ['that would begin a clause', 'shared.paving', 'material ‸stone', 'past', "`past` can't be a name in line"],
    ['but may be a letter that is the sign of a size elsewhere', 'size.paving', 'let ‸wide', 'x', undefined],
    ['but may be a measure where no number stands before it', 'size.paving', 'let ‸twice', 'ft', undefined],
    ['that is no name', 'yard.paving', 'let ‸depth', '12', '`12` is no name.'],
    ['of two words', 'yard.paving', 'let ‸depth', 'base depth', 'Write `base-depth`?'],
    ['with a hyphen at its end', 'yard.paving', 'let ‸depth', 'depth-', '`depth-` is no name.'],
    [
      'for what ships',
      'yard.paving',
      'meets house-‸wall',
      'wall',
      '`house-wall` is a kind of side that ships: its name stays as it is.'
    ],
    ['for a word of the language', 'yard.paving', 'traf‸fic foot', 'x', 'Only the name of something'],
    ['for a number', 'yard.paving', '15‸0 mm', 'x', 'Only the name of something']
  ])('%s', async (_, file, words, name, reason) => {
    const sizes =
      'let wide = 2 m\nlet twice = 2\nunit slab { size wide x wide x 50 mm }\nlet more = 3 * twice + wide\n';
    const files =
      file === 'size.paving' ? { [file]: sizes.replace(words.replace('‸', ''), words) } : yardWith(file, words);
    const result = await rename(files, name);
    if (reason === undefined) expect(result).toBeInstanceOf(Array);
    else expect(result).toContain(reason);
  });

  test('for a name that leads nowhere', async () => {
    expect(await rename({ 'a.paving': 'area a { base st‸one 3 in }' }, 'x')).toContain('declared nowhere');
  });

  test('while the name stands where something is wrong', async () => {
    const broken: Record<string, string> = {
      ...yardWith('yard.paving', 'let ‸depth'),
      'other.paving': YARD['other.paving']!
    };
    const more = 'area broken {\n  base stone (depth +\n  bed depth depth depth\n}\n';
    broken['yard.paving'] += more;
    expect(await rename(broken, 'thick')).toContain(
      '`depth` also stands in line 20 of yard.paving, where something is wrong.'
    );
    // In a comment it is no name.
    broken['yard.paving'] = broken['yard.paving']!.replace(more, 'area broken {\n  base stone ( // depth\n}\n');
    expect(await rename(broken, 'thick')).toHaveLength(2);
  });

  test('where a material takes from the shipped one of its name what it leaves out', async () => {
    const job = (facts: string) => ({
      'job.paving': `job "J" { rules britain }
site { benchmark b, ground level with b }
material ‸recycled-stone { role base${facts} }
material type-1 { role base }
unit u { size 1 x 1 x 0.05 m }
area a {
  outline rectangle 2 x 2 m
  traffic foot
  finish level with b
  paving u in stack-bond
  base type-1 150 mm
  edges { all round meets kerb }
}
`
        .replace('‸recycled', 'recycled')
        .replace('material type-1', 'material ‸type-1')
        .replace('role base }\nunit', `role base${facts} }\nunit`)
    });
    expect(await rename(job(''), 'our-stone')).toContain('stands in the place of what ships by that name');
    expect(await rename(job(', compacted 2 t/m3, loose 1.6 t/m3'), 'our-stone')).toHaveLength(2);
  });
});

/** A name of a sample, and another one for it. */
interface NewName {
  readonly look: Look;
  readonly start: number;
  readonly name: string;
  readonly other: string;
}

/** Letters that are like none of ours, in their order. */
const LETTERS = [...'БГДЖЗИЛПФЦЧШЩЭЮЯ'];

/**
 * All names that a text declares, in lots that can be renamed at once. A new name is as long as the old one, so that every
 * place stays; found nowhere else, so that it can be put back; and in the same place among the others, since sums are told
 * in the order of names.
 */
function lotsOf(look: Look): NewName[][] {
  const declared = occurrencesIn(look.text, look.project).filter(({ isDeclaration }) => isDeclaration);
  const alike = new Map<string, number>();
  const lots: NewName[][] = [];
  for (const { name, start } of declared.toSorted((left, right) => (left.name < right.name ? -1 : 1))) {
    const stem = name.slice(0, -1);
    const at = alike.get(stem) ?? 0;
    alike.set(stem, at + 1);
    const lot = (lots[Math.floor(at / LETTERS.length)] ??= []);
    lot.push({ look, start, name, other: stem + LETTERS[at % LETTERS.length]! });
  }
  return lots;
}

test('for every name in every sample: other names change no finding and no number', { timeout: 300_000 }, async () => {
  const paving = newPaving();
  for (const file of FILES) await paving.load(pathOf(file));
  const looks = FILES.map(file => paving.look(pathOf(file))!);
  const before = new Map(JOBS.map(job => [job, inAnyOrder(told(again(paving, job)))]));
  const changesFor = ({ look, start, name, other }: NewName): readonly TextChange[] => {
    const result = drain(renamed(looks, look, start, other, paving.parse));
    if ('refused' in result) throw new Error(`${look.text.file} ${name}: ${result.refused}`);
    return result.changes;
  };
  const changesNothing = (names: readonly NewName[], changes: readonly TextChange[]): void => {
    const after = changedBy(changes);
    for (const [file, text] of after) paving.setText(pathOf(file), text);
    const jobs = JOBS.filter(job => paving.filesOf(pathOf(job)).some(file => after.has(shownOf(file))));
    for (const job of jobs)
      expect(
        inAnyOrder(withOldNames(told(again(paving, job)), names)) === before.get(job),
        `${names.map(({ name }) => name).join(', ')} in ${job}`
      ).toBe(true);
    for (const file of after.keys()) paving.setText(pathOf(file), textOf(file));
  };
  const below = seeded(20260421);
  let alone = 0;
  let count = 0;
  for (const lot of looks.flatMap(lotsOf)) {
    const changes = lot.map(changesFor);
    changesNothing(lot, changes.flat());
    count += lot.length;
    // Renamed with others a name could hide what it does alone: some are tried by themselves.
    lot.forEach((name, at) => {
      if (lot.length === 1 || below(ONE_IN) > 0) return;
      changesNothing([name], changes[at]!);
      alone++;
    });
  }
  expect(count).toBeGreaterThan(200);
  expect(alone).toBeGreaterThan(10);
});

const ONE_IN = 14;

/** The longest first: a short one may be the end of a longer one. */
function withOldNames(text: string, names: readonly NewName[]): string {
  const longestFirst = names.toSorted((left, right) => right.other.length - left.other.length);
  return longestFirst.reduce((put, { name, other }) => put.replaceAll(other, name), text);
}

/** Tapes and the like are listed in the order of their names: another name stands elsewhere in such a list. */
function inAnyOrder(told: string): string {
  const nameOf = (each: unknown): unknown => {
    const { key, from, point, at } = (each ?? {}) as Readonly<Record<string, unknown>>;
    return key ?? from ?? point ?? at;
  };
  return JSON.stringify(JSON.parse(told), (_, value: unknown) =>
    Array.isArray(value) && value.every(each => typeof nameOf(each) === 'string')
      ? value.map(each => JSON.stringify(each)).sort()
      : value
  );
}

/**
 * Points from tapes are found in the order of their names: another order leaves another last digit. Workings are led to
 * lists of points by number, and so by that order: they are left out.
 */
function told({ job, numbers, findings, places }: Evaluation): string {
  const written = (key: string, value: unknown): unknown => {
    if (key === 'workings') return undefined;
    return typeof value === 'number' && !Number.isInteger(value) ? Number(value.toPrecision(12)) : value;
  };
  return JSON.stringify(
    { job, numbers, findings, places: [...places].map(([key, place]) => ({ key, place })) },
    written
  );
}

const shownOf = (file: string): string => FILES.find(each => pathOf(each) === file)!;

/** The texts of the samples that changes are made in. */
function changedBy(changes: readonly TextChange[]): Map<string, string> {
  const texts = new Map<string, string>();
  for (const { place, text } of changes) {
    const lines = (texts.get(place.file) ?? textOf(place.file)).split('\n');
    const line = lines[place.line - 1]!;
    lines[place.line - 1] = line.slice(0, place.column - 1) + text + line.slice(place.endColumn - 1);
    texts.set(place.file, lines.join('\n'));
  }
  return texts;
}
