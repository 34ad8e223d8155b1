// An area of several kinds of units: field, border, band and inset, as they are told above, behind and under statements.
import { Ajv2020 } from 'ajv/dist/2020.js';
import { beforeAll, expect, test } from 'vitest';
import type { Evaluation } from '../../language/paving.ts';
import { hintsIn } from '../../language/views/hints.ts';
import { numbersAt } from '../../language/views/hover.ts';
import { quantitiesJson } from '../../language/views/json/quantities-json.ts';
import { QUANTITIES_SCHEMA } from '../../language/views/json/schema.ts';
import { lensesIn } from '../../language/views/lenses.ts';
import { workingsText } from '../../language/views/text/workings-text.ts';
import { wrongWorkings } from '../quantities/workings.ts';
import { evaluated } from './in-memory.ts';

/*
 * A sailor course of 200 x 100 mm with 5 mm joints leaves 2.25 - 2 x (0.1 + 0.005) = 2.04 m by 1.20 - 0.21 = 0.99 m for
 * slabs of 400 mm with 5 mm joints: 5 x 405 = 2025 mm, so five and 15 mm; 2 x 405 = 810, so two and 180 mm: 10 whole, 8 cut.
 * Near and far 11 x 200 + 10 x 5 = 2250 mm are whole; left and right are 0.99 m, 5 kerbs of which both ends lose 15 mm.
 */
const JOB = `job "Court" { rules britain, breakage 5 %, keep 2 slab }
site { soil sand, winters mild, benchmark sill, ground level with sill }
unit slab  { size 400 x 400 x 60 mm }
unit kerb  { size 200 x 100 x 60 mm }
unit star  { size 100 x 100 x 60 mm }
area court {
  outline rectangle 2.25 x 1.20 m
  traffic foot
  finish  level with sill
  paving  slab in stack-bond, joints 5 mm
  border  kerb in sailor-course all round, joints 5 mm
  base    type-1 150 mm
  edges   { all round meets lawn, edging spiked-strip }
}
area walk {
  outline rectangle 2.02 x 0.9 m, corner (9, 0) m
  traffic foot
  finish  level with sill
  paving  slab in stack-bond, joints 5 mm
  band    kerb in soldier-course across near at 1 m
  base    type-1 150 mm
  edges   { all round meets lawn, edging spiked-strip }
}
inset rose in walk { rectangle 310 x 310 mm, centre (9.5, 0.45) m
  paving star in stack-bond, joints 5 mm
}
`;

let court: Evaluation;
beforeAll(async () => {
  court = await evaluated(JOB);
});

/** What stands under the pointer on a word of the line that holds this. */
function under(line: string, word: string): string {
  const lines = JOB.split('\n');
  const index = lines.findIndex(each => each.includes(line));
  return numbersAt(court, 'job.paving', index + 1, lines[index]!.indexOf(word) + 1)?.markdown ?? '';
}

test('is sound, each working gives its number again, and the JSON keeps its schema', () => {
  expect(court.findings.filter(({ family }) => family === 'fault')).toEqual([]);
  const { quantities, workings } = court.numbers!;
  expect(wrongWorkings(quantities, workings)).toEqual([]);
  const json = quantitiesJson({
    tool: 'paving',
    asOf: '2026-04-18',
    files: [],
    jobs: [{ numbers: court.numbers!, findings: [], placeOf: key => court.places.get(key)! }]
  });
  const validate = new Ajv2020({ allErrors: true, strict: true, strictTypes: false }).compile(QUANTITIES_SCHEMA);
  expect(validate(JSON.parse(JSON.stringify(json))) ? [] : validate.errors).toEqual([]);
});

test('the figures above an area count each kind of whole unit, and all that are cut', () => {
  const [, above] = lensesIn(court, 'job.paving').map(({ text }) => text);
  expect(above).toBe('2.70 m2 · 10 + 28 whole, 12 cut · dig 240 mm deep');
});

test('each kind stands once behind the statement that lays it first', () => {
  const shown = hintsIn(court, 'job.paving').filter(({ text }) => text.includes('whole'));
  const lines = JOB.split('\n');
  expect(shown.map(({ place, text }) => `${lines[place.line - 1]!.trim().split(' ')[0]!} ${text}`).slice(0, 2)).toEqual(
    ['paving 10 whole, 8 cut', 'border 28 whole, 4 cut']
  );
  expect(shown.slice(2).map(({ place, text }) => [lines[place.line - 1]!.trim().split(/ +/)[1], text])).toEqual([
    ['slab', expect.stringMatching(/^\d+ whole, \d+ cut$/)],
    ['kerb', expect.stringMatching(/^\d+ whole, \d+ cut$/)],
    ['star', '9 whole, 0 cut']
  ]);
  expect(shown[1]!.tooltip).toBe('units of kerb in this area: whole ones, and those that are cut');
});

test('under the area stand units, cuts and what to buy, kind by kind', () => {
  expect(under('area court', 'court')).toContain(`
|  | slab | kerb |
|:--|--:|--:|
| Whole units | 10 | 28 |
| Cut units | 8 | 4 |
| Units used | 13 | 32 |
| For breakage | 1 | 2 |
| To buy | 14 | 34 |
`);
});

test('under the paving all that is known of each kind', () => {
  const told = under('slab in stack-bond', 'paving');
  expect(told).toMatch(/^\*\*units of court\*\*\n\n\| {2}\| slab \| kerb \|\n/);
  expect(told).toContain('\n| Laid in | stack-bond | sailor-course |\n');
  expect(told).toContain('\n| Smallest piece | 27.0 cm2 | 185.0 cm2 |\n');
});

test('under a border, band or inset its rows, and all of its units in the area', () => {
  expect(under('border ', 'border')).toBe(`**sailor-course in court**

| Along | Units | Joint | Ends |
|:--|--:|--:|--:|
| left | 5 | 5 mm | cut alike |
| far | 11 | 5 mm | whole |
| right | 5 | 5 mm | cut alike |
| near | 11 | 5 mm | whole |

| All in court | kerb |
|:--|--:|
| Whole units | 28 |
| Cut units | 4 |
| Units used | 32 |
| For breakage | 2 |
| To buy | 34 |
| Saw length | 0.400 m |`);
  expect(under('band ', 'band')).toMatch(/^\*\*soldier-course in walk\*\*\n\n.*\n.*\n\| across \| \d+ \| /);
  expect(under('star in', 'paving')).toMatch(/^\*\*inset rose in walk\*\*\n\n\| All in walk \| star \|\n/);
});

test('a unit that two areas cut is bought for both; its workings name rows and areas', () => {
  const { quantities, workings, nestedTogether, laid } = court.numbers!;
  const [slab] = quantities.units.filter(({ unit }) => unit === 'slab');
  // Used, five in a hundred of them rounded up, and two put by.
  expect(slab!.toBuy).toBe(slab!.unitsUsed! + Math.ceil(slab!.unitsUsed! * 0.05) + 2);
  expect(nestedTogether!.areas).toEqual(['area:court', 'area:walk']);
  const [planned] = nestedTogether!.units.filter(({ unit }) => unit === 'unit:slab');
  const pieces = laid.flatMap(one => one.laid!.cuts.list.groups.filter(({ unit }) => unit === 'unit:slab'));
  expect(planned!.plan.reduce((sum, { units, pieces: { length } }) => sum + units * length, 0)).toBe(
    pieces.reduce((sum, group) => sum + group.count * group.pieces.length, 0)
  );
  const plain = (text: string): string => text;
  const colours = { strong: plain, faint: plain, error: plain, warning: plain, note: plain };
  const text = workingsText({
    quantities,
    workings,
    system: 'metric',
    placeOf: key => court.places.get(key)!,
    colours
  });
  expect(text).toContain('  court, row 2 of the borders: Joint\n');
  expect(text).toContain('  court, course or unit 5: Along the courses\n    = 5 × unit and joint - joint\n');
  expect(text).toMatch(/units for the cut pieces of all areas +\d+ {2}measured on all areas\n/);
  expect(text).not.toContain('undefined');
});
