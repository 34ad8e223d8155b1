// The sheet for the site as it is printed, and how a row of heights is read.
import { expect, it } from 'vitest';
import { levelSheet } from '../../language/views/text/level-sheet/level-sheet.ts';
import { evaluated } from './in-memory.ts';

const PLAIN = { strong: (text: string) => text, faint: (text: string) => text } as Parameters<typeof levelSheet>[3];

const job = (sheet: string, ground: string): string => `job "Back yard" { rules britain, show metric }
site { soil clay, topsoil 100 mm, benchmark floor 10.000 m }
point A at (0, 0)
point B at (4, 0) m
point C at (4, 3) m
point D at (0, 3) m
heights { ground ${ground} }
area yard {
  outline A to B to C to D
  traffic foot
  finish  9.85 m along A to B, falling 1:60 away from A to B
  base    type-1 100 mm
  edges {
    A to B   meets house-wall
    the rest meets lawn
  }
}
level-sheet { ${sheet} }
`;

async function sheetOf(text: string): Promise<string> {
  const { job: read, numbers } = await evaluated(text);
  return levelSheet('yard.paving', read!, numbers!, PLAIN);
}

function block(sheet: string, head: string): string[] {
  const lines = sheet.split('\n');
  const from = lines.findIndex(line => line.trim().startsWith(head));
  const length = lines.slice(from).findIndex(line => line.trim() === '');
  return lines.slice(from, from + length).map(line => line.trim().replace(/ {2,}/g, ' | '));
}

it('tells every height at the corners and along the sides, to the millimetre', async () => {
  const sheet = await sheetOf(job('every 2 m', 'A 9.80 B 9.80 C 9.75 D 9.75 m'));
  // Finish at C: 9.85 less 3 m at 1:60; the base lies right under it, 100 mm thick.
  expect(block(sheet, 'At ')).toEqual([
    'At | Ground | Bottom of dig | Base top | Finish',
    'A | 9.800 m | 9.700 m | 9.850 m | 9.850 m',
    'B | 9.800 m | 9.700 m | 9.850 m | 9.850 m',
    'C | 9.750 m | 9.650 m | 9.800 m | 9.800 m',
    'D | 9.750 m | 9.650 m | 9.800 m | 9.800 m',
    'A to B, 2.000 m | 9.800 m | 9.700 m | 9.850 m | 9.850 m',
    'B to C, 2.000 m | 9.767 m | 9.667 m | 9.817 m | 9.817 m',
    'C to D, 2.000 m | 9.750 m | 9.650 m | 9.800 m | 9.800 m',
    'D to A, 2.000 m | 9.783 m | 9.683 m | 9.833 m | 9.833 m'
  ]);
  expect(block(sheet, 'Side ')).toContain('A to B | house-wall | 9.850 m | 9.850 m | 1:60');
});

it('prints decimal feet when asked, and drops from a level string place by place', async () => {
  const sheet = await sheetOf(job('printed in decimal-feet, string 10.00 m', 'A 9.80 B 9.80 C 9.75 D 9.75 m'));
  expect(block(sheet, 'Below the string')).toEqual([
    'Below the string | Ground | Bottom of dig | Base top | Finish',
    'A | 0.66 ft | 0.98 ft | 0.49 ft | 0.49 ft',
    'B | 0.66 ft | 0.98 ft | 0.49 ft | 0.49 ft',
    'C | 0.82 ft | 1.15 ft | 0.66 ft | 0.66 ft',
    'D | 0.82 ft | 1.15 ft | 0.66 ft | 0.66 ft'
  ]);
});

it('a string to the fall lies equally far above all that falls with it: told once', async () => {
  const sheet = await sheetOf(job('string 100 mm above the finish', 'A 9.90 B 9.90 C 9.85 D 9.85 m'));
  expect(block(sheet, 'Below the string')).toEqual([
    'Below the string | Bottom of dig | Base top | Finish',
    'everywhere | 200 mm | 100 mm | 100 mm'
  ]);
});

it('the measure and the mark at the end of a row count for the heights before it', async () => {
  const row = 'A 200 B 200 C 250 D 250 mm below floor';
  const each = 'A 200 mm below floor B 200 mm below floor C 250 mm below floor D 250 mm below floor';
  expect(await sheetOf(job('', row))).toBe(await sheetOf(job('', each)));
});

it('distances run through the parts of one side', async () => {
  const rounded = job('every 1 m', 'A 9.80 B 9.80 C 9.75 D 9.75 m').replace('C to D\n', 'C to D, rounded 1 m at C\n');
  const at = block(await sheetOf(rounded), 'At ').flatMap(line => /^(B to C, [0-9.]+ m) /.exec(line)?.[1] ?? []);
  // 2 m straight and a quarter turn of 1 m: 3.571 m.
  expect(at).toEqual(['B to C, 1.000 m', 'B to C, 3.000 m']);
});

it('tells what to set out: corners without a name, bends, and where the instrument stood', async () => {
  const sheet = await sheetOf(`job "Path" { rules britain, show metric }
site { soil clay, benchmark floor 10.000 m }
point A at (0, 0)
point B at (6, 0) m
point C at (6, 4) m
line way A to B to C, rounded 2 m at B
heights by laser on 2026-04-02, floor reads 1.250 m { ground A 1.355  B 1.405  C 1.430 m }
area path {
  outline along way, 1 m wide
  traffic foot
  finish  9.95 m along left, falling 1:60 away from left
}
`);
  // Half a metre to each side of the line; the bend is struck from (4, 2), 1.5 m inside and 2.5 m outside.
  expect(block(sheet, 'Point ')).toEqual(
    expect.arrayContaining(['path, corner 1 | 0.000 m | -0.500 m', 'path, corner 2 | 4.000 m | -0.500 m'])
  );
  expect(block(sheet, 'Bend ')).toEqual([
    'Bend | Struck from x | y | Radius',
    'path, right | 4.000 m | 2.000 m | 2.500 m',
    'path, left | 4.000 m | 2.000 m | 1.500 m'
  ]);
  expect(block(sheet, 'Set-up ')).toEqual(['Set-up | Line of sight', 'laser on 2026-04-02 | 11.250 m']);
});
