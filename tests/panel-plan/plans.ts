// Plans as a server would send them, invented: a small terrace with everything on it, and squares of any number of units.
import type { LivePlan, LiveShape, LiveThing } from '../../server/plan-protocol.ts';

export const rectangle = (left: number, bottom: number, right: number, top: number): number[] => [
  ...[left, bottom, 0],
  ...[right, bottom, 0],
  ...[right, top, 0],
  ...[left, top, 0]
];

export const EMPTY: LivePlan = {
  title: 'Nothing',
  description: 'Nothing is drawn.',
  system: 'metric',
  notes: [],
  shapes: [],
  things: [],
  legend: [],
  sections: []
};

type Bounds = LiveThing['bounds'];

function thing(key: string, kind: string, name: string, bounds: Bounds, rest: Partial<LiveThing> = {}): LiveThing {
  return { key, kind, name, facts: [], bounds, leads: true, ...rest };
}

/** 6 m by 4 m and a round end, in slabs of 400 mm, its last course cut, with a box, a gate, points and a finding. */
export function smallPlan(changes: Partial<LivePlan> = {}): LivePlan {
  const area = 'area:terrace';
  const bulge = 0.2;
  const outline = [0, 0, 0, 6000, 0, bulge, 6000, 4150, 0, 0, 4150, 0];
  const side = (name: string, corners: number[]): LiveShape => ({
    ...{ kind: 'path', key: `edge:${name}`, content: 'edges', ink: 'outline', thing: `edge:${name}` },
    loops: [corners],
    closed: false
  });
  const units = (key: string, row: number, tint: string): LiveShape => ({
    ...{ kind: 'rows', key, content: 'units', ink: 'whole', tint, thing: 'unit:slab' },
    form: rectangle(0, 0, 395, 395),
    runs: [[0, row * 400, 0, 400, 0, 15]]
  });
  const cut = (column: number): LiveShape => ({
    ...{ kind: 'path', key: `cut:${column}`, content: 'cuts', ink: 'cut', thing: 'cut:1' },
    loops: [rectangle(column * 400, 4000, column * 400 + 395, 4150)],
    closed: true,
    numbered: { x: column * 400 + 197, y: 4075, size: 130, turn: 0 }
  });
  const point = (name: string, x: number, y: number): LiveShape[] => [
    { kind: 'mark', key: `point:${name}`, content: 'points', ink: 'dot', thing: `point:${name}`, x, y, sign: 'point' },
    {
      ...{ kind: 'text', key: `point:${name}/name`, content: 'names', ink: 'strong', thing: `point:${name}` },
      ...{ x: x - 60, y: y - 160, text: name, turn: 0, anchor: 'end', rank: 2 }
    }
  ];
  return {
    title: 'Plum tree terrace',
    description: 'One area in slabs, with a box and a gate.',
    system: 'metric',
    notes: [],
    shapes: [
      {
        ...{ kind: 'path', key: `${area}/edging`, content: 'edges', ink: 'edging', thing: 'edge:C' },
        loops: [[6000, 4150, 0, 0, 4150, 0, 0, 0, 0]],
        closed: false
      },
      {
        ...{ kind: 'path', key: `${area}/ground`, content: 'units', ink: 'ground', thing: area },
        loops: [outline],
        closed: true
      },
      ...Array.from({ length: 10 }, (_, row) => units(`units:${row}`, row, row % 3 === 0 ? 'red' : 'yellow')),
      ...Array.from({ length: 15 }, (_, column) => cut(column)),
      {
        ...{ kind: 'path', key: 'box:valves', content: 'kept-out', ink: 'kept-out', thing: 'box:valves' },
        loops: [rectangle(2500, 1200, 3100, 1700)],
        closed: true
      },
      side('A', [0, 0, 0, 6000, 0, 0]),
      side('B', [6000, 0, bulge, 6000, 4150, 0]),
      side('C', [6000, 4150, 0, 0, 4150, 0]),
      side('D', [0, 4150, 0, 0, 0, 0]),
      {
        ...{ kind: 'path', key: 'gate:side', content: 'things', ink: 'swing', thing: 'gate:side' },
        loops: [[0, 2600, 0, 900, 2600, 0.4142, 0, 3500, 0]],
        closed: false
      },
      {
        ...{ kind: 'text', key: 'edge:A/length', content: 'dimensions', ink: 'text', thing: 'edge:A' },
        ...{ x: 3000, y: -180, text: '6.000 m', turn: 0, anchor: 'middle', rank: 3, room: 6000 }
      },
      {
        ...{ kind: 'text', key: 'edge:D/length', content: 'dimensions', ink: 'text', thing: 'edge:D' },
        ...{ x: -180, y: 2075, text: '4.150 m', turn: Math.PI / 2, anchor: 'middle', rank: 3, room: 4150 }
      },
      ...point('A', 0, 0),
      ...point('B', 6000, 0),
      {
        ...{ kind: 'mark', key: 'fall:1', content: 'falls', ink: 'fall', thing: 'fall:1' },
        ...{ x: 4600, y: 2600, sign: 'fall', turn: -Math.PI / 2 }
      },
      {
        ...{ kind: 'text', key: 'fall:1/text', content: 'falls', ink: 'text', thing: 'fall:1' },
        ...{ x: 4600, y: 2600, text: '1 in 60', turn: Math.PI / 2, anchor: 'middle', rank: 2 }
      },
      {
        ...{ kind: 'mark', key: `${area}/start`, content: 'starts', ink: 'start', thing: `${area}/start` },
        ...{ x: 0, y: -60, sign: 'start', turn: 0 }
      },
      {
        ...{ kind: 'mark', key: 'finding:1', content: 'findings', ink: 'mark', thing: 'finding:1' },
        ...{ x: 1200, y: 3000, sign: 'warning' }
      },
      {
        ...{ kind: 'mark', key: 'finding:2', content: 'findings', ink: 'mark', thing: 'finding:2' },
        ...{ x: 1800, y: 3000, sign: 'error' }
      },
      {
        ...{ kind: 'mark', key: 'finding:3', content: 'findings', ink: 'mark', thing: 'finding:3' },
        ...{ x: 2400, y: 3000, sign: 'note' }
      },
      {
        ...{ kind: 'text', key: `${area}/name`, content: 'names', ink: 'strong', thing: area },
        ...{ x: 3000, y: 2300, text: 'terrace', turn: 0, anchor: 'middle', rank: 1 }
      }
    ],
    things: [
      thing(area, 'Areas', 'terrace', [0, 0, 6300, 4150], {
        facts: [
          ['Area', '25.74 m2'],
          ['Units', '150 whole, 15 cut'],
          ['Dig', '6.2 m3'],
          ['Fall', '1 in 60 away from A to B'],
          ['Traffic', 'foot']
        ]
      }),
      thing('edge:A', 'Edges', 'A to B', [0, 0, 6000, 0], {
        area,
        facts: [
          ['Length', '6.000 m'],
          ['Meets', 'house wall']
        ]
      }),
      thing('edge:B', 'Edges', 'B to C', [6000, 0, 6300, 4150], { area, facts: [['Length', '4.263 m']] }),
      thing('edge:C', 'Edges', 'C to D', [0, 4150, 6000, 4150], { area, facts: [['Edging', 'kerb']] }),
      thing('edge:D', 'Edges', 'D to A', [0, 0, 0, 4150], { area }),
      thing('point:A', 'Points', 'A', [0, 0, 0, 0], {
        facts: [
          ['x', '0.000 m'],
          ['y', '0.000 m'],
          ['Set out', 'given']
        ],
        handle: { x: 0, y: 0 }
      }),
      thing('point:B', 'Points', 'B', [6000, 0, 6000, 0], {
        handle: { x: 6000, y: 0, why: 'x of B is worked out from terrace-width: change that in line 7.' }
      }),
      thing('unit:slab', 'Units', 'slab-40', [0, 0, 6000, 4000], { area, facts: [['Size', '400 x 400 mm']] }),
      thing('cut:1', 'Cut units', 'Cut 1', [0, 4000, 6000, 4150], {
        area,
        number: '1',
        facts: [
          ['Unit', 'slab-40'],
          ['How many', '15']
        ]
      }),
      thing('box:valves', 'Boxes', 'valves', [2500, 1200, 3100, 1700], {
        facts: [['Lid', 'raise by 12 mm']],
        handle: { x: 2800, y: 1450 }
      }),
      thing('gate:side', 'Gates', 'side-gate', [0, 2600, 900, 3500], { facts: [['Clearance', '18 mm']] }),
      thing('fall:1', 'Falls', 'terrace', [4600, 2600, 4600, 2600], { area, facts: [['Slope', '1 in 60']] }),
      thing(`${area}/start`, 'Starts', 'terrace', [0, -60, 0, -60], { area, handle: { x: 0, y: 0 } }),
      thing('finding:1', 'Findings', 'warning', [1200, 3000, 1200, 3000], {
        facts: [['Line 12', 'The fall of 1 in 60 is less than is usual for rough slabs.']]
      }),
      thing('finding:2', 'Findings', 'error', [1800, 3000, 1800, 3000], { facts: [['Line 14', 'No such material.']] }),
      thing('finding:3', 'Findings', 'note', [2400, 3000, 2400, 3000], {
        facts: [['Line 2', 'Taken as usual.']],
        leads: false
      })
    ],
    legend: [
      { key: 'terrace', sign: { none: true }, text: 'Area terrace', strong: true },
      { key: 'slab', sign: { ink: 'whole', tint: 'yellow' }, text: 'slab-40, buff: 150 whole', content: 'units' },
      { key: 'cut', sign: { ink: 'cut' }, text: 'cut, numbered as in the cut list', content: 'cuts' },
      { key: 'kept', sign: { ink: 'kept-out' }, text: 'kept out: nothing is laid there', content: 'kept-out' },
      { key: 'edging', sign: { line: 'edging' }, text: 'edging kerb', content: 'edges' },
      { key: 'swing', sign: { line: 'swing' }, text: 'swing of a gate', content: 'things' },
      { key: 'point', sign: { mark: 'point' }, text: 'point', content: 'points' },
      { key: 'fall', sign: { mark: 'fall' }, text: 'steepest fall, downhill', content: 'falls' },
      { key: 'start', sign: { mark: 'start' }, text: 'start and way of the courses', content: 'starts' },
      { key: 'error', sign: { mark: 'error' }, text: 'error', content: 'findings' },
      { key: 'warning', sign: { mark: 'warning' }, text: 'warning', content: 'findings' },
      { key: 'note', sign: { mark: 'note' }, text: 'note', content: 'findings' },
      { key: 'caution', sign: { none: true }, text: 'Check measures on site before you cut or dig.' }
    ],
    sections: [{ key: 'line:a', name: 'Section through the gate' }],
    ...changes
  };
}

/** A square of so many units of 200 by 100 mm in courses of up to 50, a cut piece at the end of each, a text for each. */
export function squareOf(units: number): LivePlan {
  const columns = Math.ceil(Math.sqrt(units / 2));
  const rows = Math.ceil(units / columns);
  const [width, height] = [columns * 200, rows * 100];
  const area = 'area:square';
  const shapes: LiveShape[] = [
    {
      ...{ kind: 'path', key: `${area}/ground`, content: 'units', ink: 'ground', thing: area },
      loops: [rectangle(0, 0, width + 100, height)],
      closed: true
    }
  ];
  const cuts: LiveShape[] = [];
  const texts: LiveShape[] = [];
  for (let row = 0; row < rows; row++) {
    const runs: [number, number, number, number, number, number][] = [];
    for (let from = 0; from < columns; from += 50)
      runs.push([from * 200, row * 100, 0, 200, 0, Math.min(50, columns - from)]);
    const common = { content: 'units', ink: 'whole', tint: row % 7 === 0 ? 'dark' : 'grey', thing: area } as const;
    shapes.push({ kind: 'rows', key: `units:${row}`, ...common, form: rectangle(0, 0, 196, 96), runs });
    cuts.push({
      ...{ kind: 'path', key: `cut:${row}`, content: 'cuts', ink: 'cut', thing: 'cut:1' },
      loops: [rectangle(width, row * 100, width + 96, row * 100 + 96)],
      closed: true,
      numbered: { x: width + 48, y: row * 100 + 48, size: 60, turn: 0 }
    });
    texts.push({
      ...{ kind: 'text', key: `height:${row}`, content: 'heights', ink: 'text', thing: area },
      ...{ x: width / 2, y: row * 100, text: `+${row} mm`, turn: 0, anchor: 'middle', rank: row % 10 }
    });
  }
  return {
    ...EMPTY,
    title: 'Square',
    description: `A square of ${units} units.`,
    shapes: [...shapes, ...cuts, ...texts],
    things: [
      thing(area, 'Areas', 'square', [0, 0, width + 100, height], { facts: [['Units', String(units)]] }),
      thing('cut:1', 'Cut units', 'Cut 1', [width, 0, width + 96, height], { area, number: '1' })
    ],
    legend: [{ key: 'unit', sign: { ink: 'whole', tint: 'grey' }, text: 'block, grey', content: 'units' }]
  };
}
