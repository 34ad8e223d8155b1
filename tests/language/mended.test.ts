// Texts that were once read wrongly, or told badly.
import { expect, test } from 'vitest';
import { drain, Paving } from '../../language/paving.ts';
import { evaluated, inMemory } from './in-memory.ts';

const area = (name: string, x: number): string => `area ${name} {
  outline rectangle 4 x 3 m, corner (${x}, 0) m
  traffic foot
  finish level with step
  base type-1 150 mm
  edges { all round meets house-wall }
}
`;
const HEAD = 'job "Yard" { rules britain }\nsite { soil sand, benchmark step, ground level with step }\n';

async function told(text: string): Promise<{ areas: string[]; findings: string[] }> {
  const { numbers, findings } = await evaluated(text);
  return {
    areas: numbers?.quantities.areas.map(({ name }) => name) ?? [],
    findings: findings
      .filter(({ id }) => id !== 'never-used')
      .map(({ id, line, message }) => `${line} ${id}: ${message}`)
  };
}

test('braces set oddly, but right, are not blamed for a fault elsewhere', async () => {
  const odd = area('a', 0).replace('  edges {', '    edges {\n').replace('house-wall }', 'house-wall\n}');
  expect(await told(HEAD + odd)).toEqual({ areas: ['a'], findings: [] });
  expect((await told(`${HEAD}${odd}area c {\n`)).areas).toEqual(['a']);
  expect(await told(`${HEAD}${odd}material e { role edging, width 3" } // 3" wide\n`)).toEqual({
    areas: ['a'],
    findings: []
  });
});

test('an area closed too early has no numbers, and one finding', async () => {
  const early = area('a', 0).replace('  traffic foot', '}\n  traffic foot');
  const { areas, findings } = await told(HEAD + early + area('b', 9));
  expect(areas).toEqual(['b']);
  expect(findings).toEqual([expect.stringMatching(/^5 brace-closes-nothing: .*`traffic` in line 6 belongs inside/)]);
});

test('forgotten braces are told once each, also before a misspelt first line', async () => {
  const bare = area('a', 0)
    .replace('area a {', 'area a')
    .replace('edges { all', '  edges\n    all')
    .replace(' }\n}', '\n  }\n}');
  const { findings } = await told(HEAD + bare);
  expect(findings.map(finding => finding.replace(/:.*/, ''))).toEqual(['3 brace-missing', '8 brace-missing']);
  const misspelt = await told(HEAD + area('a', 0).replace('area a {', 'area a').replace('outline', 'outlin'));
  expect(misspelt.findings.map(finding => finding.replace(/:.*/, ''))).toEqual([
    '3 brace-missing',
    '4 unknown-statement'
  ]);
});

test.each([
  ['base type-1 150 mm', 'paving u in running bond', 'write `running-bond`'],
  ['all round meets house-wall', 'all round meets existing paving, flush', 'write `existing-paving`'],
  ['base type-1 150 mm', 'base type-1 150 mm traffic cars', '`traffic` begins a statement']
])('instead of %s: %s', async (right, wrong, hint) => {
  const { findings } = await told(`${HEAD}unit u { size 200 x 100 x 60 mm }\n${area('a', 0).replace(right, wrong)}`);
  expect(findings.join('\n')).toContain(hint);
});

test.each(['20 x 14 ft', '20ftx14ft', '20by14 ft', "20' By 14'", '20 ft by 14 ft'])('a size of %s', async written => {
  const { numbers } = await evaluated(HEAD + area('a', 0).replace('4 x 3 m', written));
  expect(numbers!.quantities.areas[0]!.grossArea).toBeCloseTo(20 * 14 * 0.3048 ** 2, 9);
});

test.each(['wide x deep', 'wide × deep', '(wide) × deep', '4 m × deep'])('a size of %s', async written => {
  const lets = 'let wide = 4 m\nlet deep = 3 m\n';
  const { numbers } = await evaluated(HEAD + lets + area('a', 0).replace('4 x 3 m', written));
  expect(numbers!.quantities.areas[0]!.grossArea).toBeCloseTo(12, 9);
});

test('an unknown measure behind `per` is no ton; `cu. ft.` is read', async () => {
  const material = (density: string): string =>
    `job "Stone" { rules britain }\nmaterial s { role base, compacted ${density} }\n`;
  expect((await told(material('138 lb per cubit'))).findings).toEqual([expect.stringContaining('unknown-measure')]);
  expect((await told(material('138 lb per cu. ft.'))).findings).toEqual([]);
});

test('curly quotes are one finding, and the text between them is read', async () => {
  const { findings } = await told('job “Yard” { rules britain }\narea a { outline rectangle 3 x 4 }\n');
  expect(findings).toEqual([
    expect.stringContaining('1 odd-character: Curly quotes'),
    expect.stringContaining('2 traffic-not-said'),
    expect.stringContaining('2 measure-missing'),
    expect.stringContaining('2 measure-missing')
  ]);
});

test('a brace that opens nothing is told once, with all that it holds', async () => {
  const { findings } = await told(HEAD + area('a', 0).replace('traffic foot', 'traffic foot {'));
  expect(findings).toEqual(['5 odd-character: This { opens nothing.']);
});

test('a used file that is not there: one at hand that is nearly called so is offered, unless it is used already', async () => {
  const texts = { 'job.paving': HEAD, 'parts/stones.paving': 'material s { role base }\n' };
  const paving = new Paving(inMemory(texts));
  const titles = async (uses: string): Promise<string[]> => {
    paving.setText('parts/a.paving', `${uses}\n${HEAD}`);
    for (const file of ['parts/a.paving', 'parts/stones.paving']) await paving.load(file);
    const { findings } = drain(paving.evaluate('parts/a.paving'))!;
    return findings.flatMap(({ fixes }) => fixes.map(({ title }) => title));
  };
  expect(await titles('use "stonse.paving"')).toEqual(['Write `"stones.paving"`']);
  expect(await titles('use "stones"')).toEqual(['Write `"stones.paving"`']);
  expect(await titles('use "stones.paving"\nuse "stonse.paving"')).toEqual([]);
  paving.setText('parts/stones.paving', 'use "a.paving"\n');
  expect(await titles('use "stonse.paving"')).toEqual([]);
});

test('what is never used goes with what only it uses', async () => {
  const offered = async (text: string): Promise<string[]> =>
    (await evaluated(`${HEAD}${text}`)).findings.flatMap(({ fixes }) => fixes.map(({ title }) => title));
  expect(await offered('let a = 1 m\nlet b = a + 1 m\n')).toEqual(['Take it out, with `a` that only it uses']);
  expect(await offered('let a = 1 m\nlet b = a\nlet c = a\n')).toEqual(['Take it out', 'Take it out']);
  const row = Array.from({ length: 9 }, (_, at) => `let v${at} = v${at + 1}\n`).join('');
  expect(await offered(`${row}let v9 = 1 m\n`)).toEqual([
    'Take it out, with `v1`, `v2`, `v3` and 6 more that only it uses'
  ]);
});

test('a side along another area is offered that area, and the rest what is usual', async () => {
  const beside = area('b', 4).replace(
    '{ all round meets house-wall }',
    '{\n    near meets lawn, edging spiked-strip\n  }'
  );
  const { findings } = await evaluated(HEAD + area('a', 0) + beside);
  expect(findings.find(({ id }) => id === 'edge-not-said')!.fixes.map(({ title }) => title)).toEqual([
    'Write `left meets a` and `the rest meets lawn, edging spiked-strip`',
    'Write `left meets a` and `the rest meets house-wall`'
  ]);
});

test('a side of which nothing is said is offered the edging that the area has elsewhere', async () => {
  const kerb = 'material own-kerb { role edging, width 50 mm }\n';
  const text = HEAD + kerb + area('a', 0).replace('all round meets house-wall', 'near meets lawn, edging own-kerb');
  const { findings } = await evaluated(text);
  const titles = findings.find(({ id }) => id === 'edge-not-said')?.fixes.map(({ title }) => title);
  expect(titles).toEqual(['Write `the rest meets lawn, edging own-kerb`', 'Write `the rest meets house-wall`']);
});

test('lines of a variant need not be set in, where braces pair', async () => {
  const variant = 'variant thicker {\narea a { base type-1 200 mm }\n}\n';
  expect(await told(HEAD + area('a', 0) + variant)).toEqual({ areas: ['a'], findings: [] });
  // A forgotten brace is still told where it is: the area below is one of its own.
  const open = `variant thicker {\n  area a { base type-1 200 mm }\n${area('b', 9)}`;
  const { areas, findings } = await told(HEAD + area('a', 0) + open);
  expect(areas).toEqual(['a', 'b']);
  expect(findings).toEqual([expect.stringMatching(/^\d+ brace-not-closed: .*before `area`/)]);
});

test('a half statement breaks its block, also where something else is told of on its line', async () => {
  const half = `${HEAD}point A at (0, 0)\npoint D at (3, 0) m\nheights by laser, step reads 0.8 m {\n  ground A 1 m D} in\n`;
  const { findings } = await told(half);
  expect(findings.map(finding => finding.replace(/:.*/, ''))).toEqual(['6 half-statement', '6 unknown-statement']);
});
