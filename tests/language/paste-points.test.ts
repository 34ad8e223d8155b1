// Coordinates from a table as points: each as it lies on the clipboard, and what is offered.
import { describe, expect, test } from 'vitest';
import { pointsFromTable } from '../../language/editing/paste-points.ts';
import { applyChanges } from '../../language/editing/apply-changes.ts';
import { drain, Paving } from '../../language/paving.ts';
import { evaluated, inMemory } from './in-memory.ts';
import { withCursor } from '../cursor.ts';

const METRIC = 'job "Yard" { rules britain }\n‸';
const IMPERIAL = 'job "Yard" { rules north-america }\n‸';

async function pasted(table: string, drawn = METRIC): Promise<ReturnType<typeof pointsFromTable>> {
  const { text, start, end } = withCursor(drawn);
  const paving = new Paving(inMemory({ 'job.paving': text }));
  await paving.load('job.paving');
  const system = drain(paving.evaluate('job.paving', 'findings'))!.job?.system;
  return pointsFromTable(table, paving.look('job.paving')!, { start, end }, system);
}

async function choices(table: string, drawn = METRIC): Promise<Record<string, string[]>> {
  const found = await pasted(table, drawn);
  if ('problem' in found) return { problem: [found.problem] };
  return Object.fromEntries(found.choices.map(({ title, text }) => [title, text.split('\n')]));
}

const first = async (table: string, drawn = METRIC): Promise<string[]> =>
  Object.values(await choices(table, drawn))[0]!;

describe('reads', () => {
  test.each<[string, string, string[]]>([
    [
      'names and two numbers',
      'A 0 0\nB 3.60 0\nC 3.60 1.25',
      ['point A at (0, 0)', 'point B at (3.60, 0) m', 'point C at (3.60, 1.25) m']
    ],
    ['commas', 'A,0.5,1\nB,3.6,2', ['point A at (0.5, 1) m', 'point B at (3.6, 2) m']],
    [
      'tabs, and decimals by comma',
      'A\t1,5\t2,25\nBB\t-3,60\t1,2',
      ['point A  at (1.5, 2.25) m', 'point BB at (-3.60, 1.2) m']
    ],
    ['semicolons, thousands by point', 'A;1.200,50;3\nB;0;1', ['point A at (1200.50, 3) m', 'point B at (0, 1) m']],
    [
      'thousands by comma',
      'A\t1,200.50\t3\nB\t0\t1,000.25',
      ['point A at (1200.50, 3) m', 'point B at (0, 1000.25) m']
    ],
    ['thousands by space', 'A;1 200,5;3\nB;0;1', ['point A at (1200.5, 3) m', 'point B at (0, 1) m']],
    [
      'numbers alone',
      '0 0\n3.6 0\n3.6 1.5',
      ['point P1 at (0, 0)', 'point P2 at (3.6, 0) m', 'point P3 at (3.6, 1.5) m']
    ],
    [
      'points by number',
      '1 0 0.5\n2 3.6 0\n3 1 1',
      ['point P1 at (0, 0.5) m', 'point P2 at (3.6, 0) m', 'point P3 at (1, 1) m']
    ],
    [
      'aligned columns with spaces in names',
      'gate post  3.6  1.5\nnail  0.5  2.5',
      ['point gate-post at (3.6, 1.5) m', 'point nail      at (0.5, 2.5) m']
    ],
    [
      'decimals by comma between spaces',
      'A 3,60 1,20\nB 0,5 2,0',
      ['point A at (3.60, 1.20) m', 'point B at (0.5, 2.0) m']
    ],
    ['a minus of print', 'A −1.5 2\nB 1 1', ['point A at (-1.5, 2) m', 'point B at (1, 1) m']],
    [
      'empty lines and other line ends',
      '\r\nA 1.5 2\r\n\r\nB 1 1\r\n',
      ['point A at (1.5, 2) m', 'point B at (1, 1) m']
    ]
  ])('%s', async (_, table, lines) => {
    expect((await first(table)).slice(0, lines.length)).toEqual(lines);
  });

  test.each<[string, string, string[]]>([
    ['x, y and their measure', 'name\tx (mm)\ty (mm)\nA\t3600\t1200', ['point A at (3600, 1200) mm']],
    ['a measure behind a comma', 'Point;E, m;N, m\nA;3.6;1.2', ['point A at (3.6, 1.2) m']],
    ['y before x', 'No,Northing [ft],Easting [ft]\n7,10.5,20', ['point P7 at (20, 10.5) ft']],
    ['more columns', 'id,code,x [m],y [m],z [m]\nA,nail,1.5,2,30', ['point A at (1.5, 2) m']]
  ])('a heading with %s', async (_, table, lines) => {
    const all = Object.values(await choices(table));
    expect(all).toHaveLength(1);
    expect(all[0]).toEqual(lines);
  });

  test.each<[string, string, string]>([
    ["A\t12' 6 1/2\"\t3'", IMPERIAL, 'point A at (12 ft 6 1/2 in, 3 ft)'],
    ['A\t12\'-6"\t0', IMPERIAL, 'point A at (12 ft 6 in, 0)'],
    ['A;3.60 m;120 cm', METRIC, 'point A at (3.60 m, 120 cm)'],
    ['A,-2 ft 6 in,4½ ft', IMPERIAL, 'point A at (-2 ft 6 in, 4½ ft)']
  ])('measures in the cells: %s', async (table, job, line) => {
    expect(await choices(table, job)).toEqual({ 'Paste as one point': [line] });
  });
});

describe('the measure', () => {
  test.each<[string, string, string[]]>([
    [METRIC, 'A 1.5 2', ['Paste as one point in m', 'Paste as one point in mm']],
    [
      METRIC,
      'A 1500 200',
      ['Paste as one point in mm', 'Paste as one point in m', 'Paste as one point in m, moved so that A is at (0, 0)']
    ],
    [IMPERIAL, 'A 1.5 2', ['Paste as one point in ft', 'Paste as one point in in']],
    ['‸', 'A 1.5 2', ['m', 'mm', 'ft', 'in'].map(measure => `Paste as one point in ${measure}`)],
    [
      IMPERIAL.replace('america', 'america, show metric'),
      'A 1.5 2',
      ['Paste as one point in m', 'Paste as one point in mm']
    ]
  ])('is never guessed: %s, %s', async (job, table, titles) => {
    expect(Object.keys(await choices(table, job))).toEqual(titles);
  });

  test('a column that is no place in the plan is left out, and said so', async () => {
    expect(Object.keys(await choices('A 1.5 2 30.2\nB 2 2 30.1'))[0]).toBe(
      'Paste as 2 points in m, one column left out'
    );
  });
});

describe('coordinates of a map', () => {
  test('that no job is as wide as are moved, and the text says by how much', async () => {
    expect(await choices('name;E (m);N (m)\nA;512340.25;4103211.80\nB;512343.75;4103210.05')).toEqual({
      'Paste as 2 points, moved so that A is at (0, 0)': [
        '// Moved: what is (0, 0) here is (512340.25, 4103211.80) m in the table.',
        'point A at (0, 0)',
        'point B at (3.5, -1.75) m'
      ]
    });
  });

  test('of a small map can be kept', async () => {
    expect(Object.keys(await choices('name;x (m);y (m)\nA;5000.25;2000\nB;5003;2001'))).toEqual([
      'Paste as 2 points',
      'Paste as 2 points, moved so that A is at (0, 0)'
    ]);
  });

  test('too far apart are no job', async () => {
    expect(await choices('name;x (m);y (m)\nA;5000.25;2000\nB;500003;2001')).toEqual({
      problem: ['These points lie further apart than any job is wide.']
    });
  });
});

describe('names', () => {
  test('are made into names, each once, beside those that are there', async () => {
    const job = `${METRIC.replace('‸', '')}point A at (9, 9) m\n‸`;
    const table = 'A\t1.5\t1\nP 1\t2\t1\n7\t3\t1\nA\t4\t1\nto\t5\t1\n(nail)\t6\t1\n\t7\t1';
    expect((await first(table, job)).map(line => line.replace(/ +at .*/, ''))).toEqual(
      ['A-2', 'P-1', 'P7', 'A-3', 'to-1', 'nail', 'P1'].map(name => `point ${name}`)
    );
  });
});

describe('where they go', () => {
  const at = async (drawn: string): Promise<string> => {
    const found = await pasted('A 1.5 2', drawn);
    if ('problem' in found) throw new Error(found.problem);
    return applyChanges(withCursor(drawn).text, [found.choices[0]!]);
  };
  const job = 'job "Yard" { rules britain }';

  test.each([
    [`${job}\n‸\nlet a = 3 m\n`, `${job}\npoint A at (1.5, 2) m\nlet a = 3 m\n`],
    [`${job}\nlet a = 3 m‸\n`, `${job}\nlet a = 3 m\npoint A at (1.5, 2) m\n`],
    [`${job}\n‸let a = 3 m\n`, `${job}\npoint A at (1.5, 2) m\nlet a = 3 m\n`],
    [`${job} // as a‸greed\n`, `${job} // as agreed\npoint A at (1.5, 2) m\n`],
    [
      `${job}\n// Where we sit.\narea a {\n  ‸\n}\n`,
      `${job}\npoint A at (1.5, 2) m\n\n// Where we sit.\narea a {\n  \n}\n`
    ],
    [`${job}\n‸// away\n‸`, `${job}\npoint A at (1.5, 2) m`]
  ])('%j', async (drawn, after) => {
    expect(await at(drawn)).toBe(after);
  });
});

describe('what is no table', () => {
  test.each([
    ['', 'There is nothing to paste.'],
    ['a word', 'This is no table of points'],
    ['outline rectangle 12 x 16 ft', 'no two numbers'],
    ['A 1.5 2\nB 1.5', 'This is no table of points'],
    ['A 1.5 2\nB 1.5 wide', 'This line of the table has no two numbers: `B 1.5 wide`.'],
    ['A\t1,234\t2,345', 'The comma in `1,234` could part decimals or thousands.'],
    ['A 1.5 m 2', 'no two numbers'],
    ['A\t1.5 m\t2', 'Some numbers of the table have a measure and some have none.'],
    ['12 5 3\n40 6 3', 'Which column is which?'],
    ['A\t1e3\t5', 'no two numbers'],
    ['A\t3 lb\t5 lb', 'no two numbers'],
    ['A 1 2\n'.repeat(2_001), 'more than 2,000 lines']
  ])('%j', async (table, problem) => {
    expect(await choices(table)).toEqual({ problem: [expect.stringContaining(problem)] });
  });

  test('a plain table has a name and two numbers on each line', async () => {
    const isPlain = async (table: string): Promise<unknown> => {
      const found = await pasted(table);
      return 'isPlain' in found && found.isPlain;
    };
    expect(await isPlain('A\t1.5 m\t2 m\nB\t2 m\t2 m')).toBe(true);
    // In m or in mm?
    expect(await isPlain('A 1.5 2\nB 2 2')).toBe(false);
    expect(await isPlain('name;x (m);y (m)\nA;1.5;2\nB;2;2')).toBe(true);
    expect(await isPlain('A\t1.5 m\t2 m')).toBe(false);
    expect(await isPlain('1.5 m\t2 m\n2 m\t2 m')).toBe(false);
    expect(await isPlain('name;x (m);y (m);z\nA;1.5;2;3\nB;2;2;3')).toBe(false);
  });
});

test('what is pasted is read as points of the same places', async () => {
  const [points] = Object.values(await choices("A\t12' 6 1/2\"\t-3'\nB\t3/8 in\t2½ yd\nC\t1.5 m\t20 cm", IMPERIAL));
  const { job, findings } = await evaluated(`job "Yard" { rules britain }\n${points!.join('\n')}\n`);
  expect(findings.filter(({ id }) => id !== 'never-used')).toEqual([]);
  const inch = 0.0254;
  const places: [number, number][] = [
    [150.5 * inch, -36 * inch],
    [0.375 * inch, 90 * inch],
    [1.5, 0.2]
  ];
  expect(job!.points).toHaveLength(places.length);
  job!.points.forEach(({ x, y }, index) => {
    expect(x).toBeCloseTo(places[index]![0], 12);
    expect(y).toBeCloseTo(places[index]![1], 12);
  });
});
