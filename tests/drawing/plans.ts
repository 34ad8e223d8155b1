import { circleLoop, cornerLoop, type Loop, rectangleLoop, sideLength } from '../../language/geometry/index.ts';
import type { LaidUnits } from '../../language/laying/laid.ts';
import type { PlanArea, PlanInput, PlanPart, PlanUnit } from '../../language/views/plan/plan-input.ts';
import { layGrid, numbersOf } from './lay-grid.ts';

const INCH = 0.0254;
const FOOT = 12 * INCH;

type SideWords = Omit<PlanArea['sides'][number], 'key' | 'length' | 'flush'> & { readonly flush?: boolean };

function sidesOf(area: string, outline: Loop, words: readonly SideWords[]): PlanArea['sides'] {
  return outline.map((side, index) => ({
    flush: false,
    ...words[index]!,
    key: `${area}/side-${index + 1}`,
    length: sideLength(side)
  }));
}

function partOf(laid: LaidUnits, words: Omit<PlanPart, 'laid' | 'numbers'>, known?: Map<string, number>): PlanPart {
  return { ...words, laid, numbers: numbersOf(laid, known) };
}

const FIELD = { key: 'field', name: 'field', kind: 'field' } as const;

/** A rectangle in running bond against a house, whole slabs along it. */
export function terrace(): PlanInput {
  const slab: PlanUnit = {
    key: 'unit:slab-400',
    name: 'slab-400',
    length: 0.4,
    width: 0.4,
    shape: 'rectangle',
    colour: 'grey'
  };
  const outline = rectangleLoop(5.64, 3.5, { x: 0, y: 0 }, 0);
  const grid = {
    origin: { x: 0, y: 0 },
    direction: 0,
    mirrored: false,
    length: 0.4,
    width: 0.4,
    joint: 0.004,
    offset: 0.5
  };
  const laid = layGrid({ outer: outline, holes: [] }, grid, slab.key);
  return {
    title: 'Plum tree terrace',
    system: 'metric',
    missing: [],
    units: [slab],
    areas: [
      {
        key: 'area:terrace',
        name: 'terrace',
        outline,
        sides: sidesOf('area:terrace', outline, [
          { name: 'A to B', meets: 'house-wall' },
          { name: 'B to C', meets: 'lawn', edging: 'spiked-strip' },
          { name: 'C to D', meets: 'lawn', edging: 'spiked-strip' },
          { name: 'D to A', meets: 'old-walk', flush: true }
        ]),
        keptOut: [],
        parts: [partOf(laid, FIELD)],
        start: { x: 0, y: 0, direction: 0, mirrored: false }
      }
    ]
  };
}

/** An L in feet and inches with a box, a pit and short sides, its start turned up along its left side. */
export function yard(): PlanInput {
  const slab: PlanUnit = {
    key: 'unit:slab-16',
    name: 'slab-16',
    length: 15.875 * INCH,
    width: 15.875 * INCH,
    shape: 'rectangle',
    colour: 'buff'
  };
  const feet = (x: number, y: number) => ({ x: x * FOOT, y: y * FOOT });
  const outline = cornerLoop([
    feet(0, 0),
    feet(18.5, 0),
    feet(18.5, 9),
    feet(17, 10.5),
    feet(11, 10.5),
    feet(11, 16),
    feet(0, 16)
  ]);
  const valves = rectangleLoop(20 * INCH, 14 * INCH, { x: 6 * FOOT, y: 3.1 * FOOT }, 0);
  const tree = circleLoop(feet(5, 11), 1.25 * FOOT);
  const grid = {
    origin: { x: 0, y: 0 },
    direction: 0,
    mirrored: false,
    length: slab.length,
    width: slab.width,
    joint: 0.125 * INCH,
    offset: 1 / 3
  };
  const laid = layGrid({ outer: outline, holes: [valves, tree] }, grid, slab.key);
  const lawn = { meets: 'lawn', edging: 'spiked-strip' };
  return {
    title: 'Yard behind "the barn" & <sheds>',
    system: 'imperial',
    missing: [],
    units: [slab],
    areas: [
      {
        key: 'area:yard',
        name: 'yard',
        outline,
        sides: sidesOf('area:yard', outline, [
          { name: 'A to B', meets: 'house-wall' },
          { name: 'B to C', ...lawn },
          { name: 'C to D', ...lawn },
          { name: 'D to E', ...lawn },
          { name: 'E to F', meets: 'shed-wall' },
          { name: 'F to G', ...lawn },
          { name: 'G to A' }
        ]),
        keptOut: [
          { key: 'box:valves', name: 'valves', kind: 'box', outline: valves },
          { key: 'pit:apple-tree', name: 'apple-tree', kind: 'pit', outline: tree }
        ],
        parts: [partOf(laid, FIELD)],
        start: { x: 0, y: 0, direction: 0, mirrored: false }
      }
    ]
  };
}

/** A circle of small blocks: curved cuts, many of them too small for a number. */
export function circle(): PlanInput {
  const block: PlanUnit = {
    key: 'unit:block-red',
    name: 'block-red',
    length: 0.2,
    width: 0.1,
    shape: 'rectangle',
    colour: 'red'
  };
  const outline = circleLoop({ x: 1.6, y: 1.6 }, 1.6);
  const grid = {
    origin: { x: 1.5, y: 1.55 },
    direction: 0,
    mirrored: false,
    length: 0.2,
    width: 0.1,
    joint: 0.003,
    offset: 0.5
  };
  const laid = layGrid({ outer: outline, holes: [] }, grid, block.key);
  return {
    title: 'Seat under the lime',
    system: 'metric',
    missing: [],
    units: [block],
    areas: [
      {
        key: 'area:seat',
        name: 'seat',
        outline,
        sides: sidesOf('area:seat', outline, [{ name: 'all round', meets: 'planting', edging: 'steel-edge' }]),
        keptOut: [],
        parts: [partOf(laid, FIELD)],
        start: { x: 1.5, y: 1.55, direction: 0, mirrored: false }
      }
    ]
  };
}

/** A drive of blocks with a soldier course all round and a turning place beside it laid at 45 degrees: one sheet, one scale. */
export function drive(width = 2.6, depth = 4.2, turning = 1.8): PlanInput {
  const red: PlanUnit = {
    key: 'unit:block-red',
    name: 'block-red',
    length: 0.2,
    width: 0.1,
    shape: 'rectangle',
    colour: 'red'
  };
  const dark: PlanUnit = { ...red, key: 'unit:block-charcoal', name: 'block-charcoal', colour: 'charcoal' };
  const joint = 0.003;
  const way = rectangleLoop(width, depth, { x: 0, y: 0 }, 0);
  const place = rectangleLoop(turning, turning * 1.2, { x: width, y: depth / 3 }, 0);
  const grid = { direction: 0, mirrored: false, length: 0.2, width: 0.1, joint, offset: 0.5 };
  const edge = 0.2 + joint;
  const field = rectangleLoop(width - 2 * edge, depth - 2 * edge, { x: edge, y: edge }, 0);
  const known = new Map<string, number>();
  const covered = {
    outline: circleLoop({ x: width / 3, y: depth * 0.7 }, 0.3),
    key: 'box:manhole',
    name: 'manhole',
    kind: 'box'
  } as const;
  const fieldLaid = layGrid(
    { outer: field, holes: [covered.outline] },
    { ...grid, origin: { x: edge, y: edge } },
    red.key
  );
  const turned = { ...grid, direction: Math.PI / 4, origin: { x: width, y: depth / 3 } };
  const placeLaid = layGrid({ outer: place, holes: [] }, turned, red.key);
  const kerb = { meets: 'lawn', edging: 'kerb-on-concrete' };
  return {
    title: 'Quarry Row drive',
    system: 'metric',
    missing: [],
    units: [red, dark],
    areas: [
      {
        key: 'area:drive',
        name: 'drive',
        outline: way,
        sides: sidesOf('area:drive', way, [
          { name: 'G1 to G2', meets: 'garage-channel' },
          { name: 'G2 to R2', meets: 'turning' },
          { name: 'R2 to R1', meets: 'footway', flush: true },
          { name: 'R1 to G1', ...kerb }
        ]),
        keptOut: [covered],
        parts: [
          partOf(soldiers(width, depth, joint, dark.key), { key: 'border-1', name: 'border', kind: 'border' }, known),
          partOf(fieldLaid, FIELD, known)
        ],
        start: { x: edge, y: edge, direction: 0, mirrored: false }
      },
      {
        key: 'area:turning',
        name: 'turning',
        outline: place,
        sides: sidesOf('area:turning', place, [
          { name: 'T1 to T2', ...kerb },
          { name: 'T2 to T3', ...kerb },
          { name: 'T3 to T4', ...kerb },
          { name: 'T4 to T1', meets: 'drive' }
        ]),
        keptOut: [],
        parts: [partOf(placeLaid, FIELD, known)],
        start: { x: width, y: depth / 3, direction: Math.PI / 4, mirrored: false }
      }
    ]
  };
}

/** A soldier course round a rectangle with its corner at nought: the short sides run through, a cut closes each row. */
function soldiers(width: number, depth: number, joint: number, unit: string): LaidUnits {
  const pitch = 0.1 + joint;
  const row = (
    length: number,
    first: (along: number) => { x: number; y: number; direction: number },
    step: number[]
  ) => {
    const count = Math.floor((length + joint) / pitch);
    const rest = length - count * pitch;
    const at = first(count * pitch);
    const piece = rectangleLoop(0.2, rest, { x: 0, y: 0.1 - rest }, 0);
    return {
      whole: { unit, first: first(0), step: { x: step[0]! * pitch, y: step[1]! * pitch }, count },
      // What is left lies against the last whole unit: the upper part of a unit's width, as the rows run.
      cut:
        rest > 0.001
          ? [
              {
                unit,
                at: { ...at, ...back(at, step, 0.1 - rest) },
                pieces: [{ outline: piece, holes: [], area: 0.2 * rest }]
              }
            ]
          : []
    };
  };
  const up = Math.PI / 2;
  const inner = depth - 2 * (0.2 + joint);
  const rows = [
    row(width, along => ({ x: width - along, y: 0, direction: up }), [-1, 0]),
    row(width, along => ({ x: along, y: depth, direction: -up }), [1, 0]),
    row(inner, along => ({ x: 0, y: 0.2 + joint + along, direction: 0 }), [0, 1]),
    row(inner, along => ({ x: width, y: depth - 0.2 - joint - along, direction: 2 * up }), [0, -1])
  ];
  return {
    wholes: rows.map(({ whole }) => whole),
    cuts: rows.flatMap(({ cut }) => cut),
    unitArea: 0,
    jointArea: 0,
    clipped: 0
  };
}

function back({ x, y }: { x: number; y: number }, step: readonly number[], by: number): { x: number; y: number } {
  return { x: x - step[0]! * by, y: y - step[1]! * by };
}

/** Two hundred units beside two hundred more, without a side that says what it meets: one path for each kind. */
export function lattice(rows: number, columns: number): PlanInput {
  const plan = terrace();
  const area = plan.areas[0]!;
  const runs = Array.from({ length: rows }, (_, row) => ({
    unit: 'unit:slab-400',
    first: { x: 0, y: row * 0.404, direction: 0 },
    step: { x: 0.404, y: 0 },
    count: columns
  }));
  const outline = rectangleLoop(columns * 0.404, rows * 0.404, { x: 0, y: 0 }, 0);
  const laid = { wholes: runs, cuts: [], unitArea: 0, jointArea: 0, clipped: 0 };
  const sides = area.sides.map((side, index) => ({ ...side, length: sideLength(outline[index]!) }));
  return { ...plan, areas: [{ ...area, outline, sides, parts: [{ ...FIELD, laid, numbers: [] }] }] };
}
