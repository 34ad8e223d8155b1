// What is said where a fall, a slope, a height or a place is written as one speaks, and what the fix makes of it.
import { expect, test } from 'vitest';
import type { TextChange } from '../../language/findings/finding.ts';
import { drain, Paving } from '../../language/paving.ts';
import { inMemory } from './in-memory.ts';

const HEAD = `job "Yard" { rules britain }
site { soil sand, benchmark step, ground 150 mm below step }
point A at (0, 0)
point B at (4, 0) m
`;

const areaWith = (finish: string): string => `${HEAD}area yard {
  outline rectangle 4 x 3 m
  traffic foot
  finish ${finish}
  edges {
    near meets house-wall
    the rest meets lawn, edging kerb
    far meets gravel, edging kerb
  }
}
material kerb { role edging, size 915 x 50 x 150 mm }
`;

const paving = new Paving(inMemory({}));

/** What is told of a line that holds some words, and that line after the first fix. */
function told(text: string, words: string): { readonly message: string; readonly mended?: string } {
  paving.setText('yard.paving', text);
  const lines = text.split('\n');
  const line = lines.findIndex(each => each.includes(words)) + 1;
  const all = drain(paving.evaluate('yard.paving', 'findings'))!.findings.filter(each => each.line === line);
  const found = all.find(({ id }) => id === 'half-statement') ?? all[0]!;
  const [fix] = found.fixes ?? [];
  return { message: found.message, ...(fix && { mended: mended(lines[line - 1]!, fix.edits) }) };
}

function mended(line: string, changes: readonly TextChange[]): string {
  const backwards = [...changes].sort((one, other) => other.place.column - one.place.column);
  return backwards
    .reduce(
      (text, { place, text: put }) => text.slice(0, place.column - 1) + put + text.slice(place.endColumn - 1),
      line
    )
    .trim();
}

const finish = (words: string): ReturnType<typeof told> => told(areaWith(words), `finish ${words}`);

test.each([
  [
    '65 mm below step along near, falling 1 in 60 away from near',
    '`in` reads as inches',
    'falling 1:60 away from near'
  ],
  ['65 mm below step along near, fall 1:60', 'A fall is told with its direction', 'falling 1:60 away from near'],
  ['65 mm below step along near, slope 2 %', 'A fall is told with its direction', 'falling 2 % away from near'],
  ['65 mm below step along near, falling 1:60', '`falling 1:60 away from near`', 'falling 1:60 away from near'],
  ['65 mm below step along near 1:60', 'A fall is told with its direction', ', falling 1:60 away from near'],
  ['65 mm below step along near falling 1:60 away from near', 'Put a comma', 'near, falling 1:60 away from near'],
  ['65 mm below step along near, falling 1:60 from near', '`away from`', 'falling 1:60 away from near'],
  [
    '65 mm below step along near, falling 10 mm away from near',
    'a slope such as',
    'falling 10 mm per m away from near'
  ],
  ['65 mm below step along near, falling 1:60 towards gravel', '`gravel` is none', 'falling 1:60 away from near'],
  ['65 mm below step along near, falling 1:60 towards far', '`far` is none', 'falling 1:60 away from near'],
  ['65 mm below step along house-wall, falling 1:60 away from near', '`near` meets house-wall', 'along near, falling']
])('finish %s', (words, message, fixed) => {
  const said = finish(words);
  expect(said.message).toContain(message);
  expect(said.mended).toContain(fixed);
});

test('a finish that falls first says how high it is', () => {
  expect(finish('falling 1:60 away from near').message).toContain('First say how high it is, and where');
});

test('a side tells the line as two points do', () => {
  for (const words of ['65 mm below step along near, falling 1:60 away from near', '65 mm below step along left'])
    expect(
      drain((paving.setText('y', areaWith(words)), paving.evaluate('y', 'findings')))!.findings
    ).not.toContainEqual(expect.objectContaining({ severity: 'error' }));
});

test('the point stands before its height', () => {
  const text = `${HEAD}heights {\n  ground 90 mm below step at A\n}\n`;
  expect(told(text, 'ground 90')).toEqual({
    message: "`90` can't stand here. The point stands before its height: `ground A 90 mm below step`.",
    mended: 'ground A 90 mm below step'
  });
});

test('heights at points stand in no site', () => {
  const text = HEAD.replace('ground 150 mm below step', 'ground A 90 mm below step');
  expect(told(text, 'ground A').message).toContain('`heights { ground A 3 in below door-sill }`');
});

test('a distance along a line has no bracket around it', () => {
  const said = told(`${HEAD}point C at (1 m + 20 cm) along A to B\n`, 'point C');
  expect(said.message).toContain('Brackets hold coordinates here');
  expect(said.mended).toBe('point C at 1 m + 20 cm along A to B');
});
