// What is drawn of a plan: bounded however large it is, and what a person asked for.
import { describe, expect, test } from 'vitest';
import { prepare } from '../../extension/panel/plan/prepared.ts';
import {
  MOST_LETTERS,
  MOST_MARKS,
  MOST_PIECES,
  MOST_UNITS,
  type Scene,
  sceneOf
} from '../../extension/panel/plan/scene.ts';
import { boxesOf, isOnLetters } from '../../extension/panel/plan/letters.ts';
import { fitted, toScreen, type View, zoomedAbout } from '../../extension/panel/plan/view.ts';
import type { Content, LivePlan, LiveShape } from '../../server/plan-protocol.ts';
import { EMPTY, rectangle, smallPlan, squareOf } from './plans.ts';

const size = { width: 1000, height: 800 };

function scene(plan: LivePlan, changes: { view?: View; hidden?: readonly Content[]; turn?: number } = {}): Scene {
  const prepared = prepare(plan);
  return sceneOf({
    prepared,
    view: changes.view ?? fitted(prepared.extent, size, changes.turn ?? 0, prepared.beside),
    size,
    hidden: new Set(changes.hidden ?? []),
    asBefore: 'as it was before the error',
    unitsTooSmall: 'zoom in for units'
  });
}

const lineOf = (key: string, corners: number[]): LiveShape => ({
  ...{ kind: 'path', key, content: 'edges', ink: 'outline', thing: key },
  loops: [corners],
  closed: false
});

const looks = ({ groups }: Scene): string[] => groups.map(({ look }) => look.name);
const unitsWritten = ({ groups }: Scene): number =>
  groups
    .filter(({ look }) => look.name.startsWith('whole'))
    .reduce((sum, { path }) => sum + (path.match(/M/g)?.length ?? 0), 0);

describe('The work of a frame', () => {
  /** From all of it to a few units, and turned askew. */
  const scenes = (plan: LivePlan): Scene[] => {
    const prepared = prepare(plan);
    const all: Scene[] = [];
    for (const turn of [0, 0.7]) {
      let view = fitted(prepared.extent, size, turn);
      for (let step = 0; step < 16; step++) {
        all.push(sceneOf({ prepared, view, size, hidden: new Set(), asBefore: '' }));
        view = zoomedAbout(view, size, { x: 420, y: 310 }, 1.5);
      }
    }
    return all;
  };

  test.each([1_000, 10_000, 100_000])('is bounded at every scale: a square of %i units', units => {
    for (const { counted, groups, letters } of scenes(squareOf(units))) {
      expect(counted.units).toBeLessThanOrEqual(MOST_UNITS);
      expect(counted.pieces).toBeLessThanOrEqual(MOST_PIECES);
      expect(letters.length).toBeLessThanOrEqual(MOST_LETTERS);
      expect(groups.length + letters.length).toBeLessThan(1_000);
      expect(counted.work).toBeLessThan(30_000);
    }
  });

  test('is next to none where units are too small to be seen, however many they are', () => {
    const work = [10_000, 100_000].map(units => {
      const plan = squareOf(units);
      const prepared = prepare({ ...plan, shapes: plan.shapes.filter(({ kind }) => kind !== 'text') });
      const view = { ...fitted(prepared.extent, size, 0), scale: 0.002 };
      return sceneOf({ prepared, view, size, hidden: new Set(), asBefore: '' }).counted.work;
    });
    // Squares above squares: ten times the units are looked at in two steps more.
    for (const one of work) expect(one).toBeLessThan(100);
  });

  test('is bounded where all lies in one place, and where each unit is a run of its own', () => {
    const same = (index: number): LiveShape[] => [
      { kind: 'mark', key: `m${index}`, content: 'points', ink: 'dot', thing: '', x: index, y: index, sign: 'point' },
      {
        ...{ kind: 'text', key: `t${index}`, content: 'names', ink: 'text', thing: '', x: 5, y: 5 },
        ...{ text: 'name', turn: 1, anchor: 'middle', rank: index }
      },
      {
        ...{ kind: 'path', key: `p${index}`, content: 'cuts', ink: 'cut', thing: '', closed: true },
        loops: [rectangle(0, 0, 400, 300)]
      },
      {
        ...{ kind: 'rows', key: `r${index}`, content: 'units', ink: `odd ${index}`, tint: `${index}`, thing: '' },
        form: rectangle(0, 0, 100, 100),
        runs: [[index, 0, 0.3, 0, 0, 1]]
      }
    ];
    const plan = { ...EMPTY, shapes: Array.from({ length: 20_000 }, (_, index) => same(index)).flat() };
    const drawn = scenes(plan);
    expect(drawn[0]!.leftOut).toBe(true);
    for (const { counted, groups, letters } of drawn) {
      expect(groups.length + letters.length).toBeLessThan(MOST_LETTERS + MOST_MARKS);
      expect(counted.work).toBeLessThan(60_000);
    }
  });
});

describe('Units', () => {
  test('of one look are one path, each of them drawn', () => {
    const drawn = scene(smallPlan());
    expect(drawn.detail).toBe('units');
    expect(drawn.counted.units).toBe(150);
    expect(unitsWritten(drawn)).toBe(150);
    expect(looks(drawn).filter(name => name.startsWith('whole'))).toHaveLength(2);
    expect(looks(drawn).filter(name => name.startsWith('cut'))).toHaveLength(1);
  });

  test('that do not meet what is seen, or what lies half as far about it, are left out', () => {
    const view = { x: 1000, y: 1000, scale: 1, turn: 0 };
    const drawn = scene(smallPlan(), { view });
    // 1000 by 800 mm are seen, half as much about it is drawn: 5 by 4 slabs, and what reaches into it.
    expect(drawn.counted.units).toBeGreaterThanOrEqual(5 * 4);
    expect(drawn.counted.units).toBeLessThanOrEqual(7 * 6);
  });

  test('that are too small are told by the ground of their area, hatched and in their tint', () => {
    const drawn = scene(squareOf(100_000));
    expect(drawn.detail).toBe('ground');
    expect(unitsWritten(drawn)).toBe(0);
    expect(looks(drawn)).toContain('ground grey  dots ');
  });

  test('that are too small are told of in words where these have room on the area, and nowhere else', () => {
    const plan = squareOf(100_000);
    const told = (view?: View): number =>
      scene(plan, { hidden: ['heights'], ...(view ? { view } : {}) }).letters.filter(
        ({ text }) => text === 'zoom in for units'
      ).length;
    expect(told()).toBe(1);
    const { view } = scene(plan);
    expect(told({ ...view, scale: 0.002 })).toBe(0);
    expect(told({ ...view, scale: 0.4 })).toBe(0);
  });

  test('that are too many for a frame are told by bars of their courses', () => {
    const plan = squareOf(100_000);
    const view = { ...fitted(prepare(plan).extent, size, 0), scale: 0.0425 };
    const drawn = scene(plan, { view });
    expect(drawn.detail).toBe('bars');
    const bars = unitsWritten(drawn);
    expect(bars).toBeGreaterThan(100);
    expect(bars).toBeLessThan(4_000);
  });
});

describe('What is drawn', () => {
  test('lies in the order of the plan, signs above it, letters nowhere over each other', () => {
    const drawn = scene(smallPlan());
    const names = looks(drawn).map(name => name.split(' ')[0]);
    const order = ['edging', 'ground', 'whole', 'cut', 'kept-out', 'outline', 'swing', 'sign'];
    expect(names.filter((name, index) => names.indexOf(name) === index)).toEqual(order);
    const boxes = drawn.letters.map(boxesOf);
    boxes.forEach((mine, index) => {
      for (const theirs of boxes.slice(index + 1)) {
        const apart = mine.every(([l, t, r, b]) =>
          theirs.every(([left, top, right, bottom]) => l >= right || left >= r || t >= bottom || top >= b)
        );
        expect(apart).toBe(true);
      }
    });
  });

  test('is what is switched on', () => {
    const all = new Set(looks(scene(smallPlan())));
    const without = (...hidden: Content[]): string[] => {
      const left = new Set(looks(scene(smallPlan(), { hidden })));
      return [...all].filter(name => !left.has(name)).map(name => name.trim());
    };
    expect(without('cuts')).toEqual(['cut']);
    expect(without('kept-out')).toEqual(['kept-out']);
    expect(without('findings')).toEqual(['sign note', 'sign warning', 'sign error']);
    expect(without('units').sort()).toEqual(['ground', 'whole red', 'whole yellow']);
    const texts = (...hidden: Content[]): string[] => scene(smallPlan(), { hidden }).letters.map(({ text }) => text);
    expect(texts().filter(text => text === '1')).toHaveLength(15);
    expect(texts('cut-numbers')).not.toContain('1');
    expect(texts('dimensions')).not.toContain('6.000 m');
    expect(texts('names')).not.toContain('terrace');
  });

  test('has letters only where there is room for them on the ground, and numbers only where they can be read', () => {
    const view = fitted(prepare(smallPlan()).extent, size, 0);
    const texts = (factor: number): string[] =>
      scene(smallPlan(), { view: { ...view, scale: view.scale * factor } }).letters.map(({ text }) => text);
    expect(texts(1)).toContain('6.000 m');
    expect(texts(0.05)).not.toContain('6.000 m');
    expect(texts(0.5)).not.toContain('1');
  });

  test('has the words of a fall beside its arrow, and none on an arrow, however it is turned', () => {
    for (const turn of [0, 0.4, Math.PI / 4, 1.5, Math.PI, -2]) {
      const { letters, view } = scene(smallPlan(), { turn });
      expect(letters.map(({ text }) => text)).toContain('1 in 60');
      const arrows = [
        { x: 4600, y: 2600, way: turn - Math.PI / 2, from: -18, to: 19 },
        { x: 0, y: -60, way: turn, from: 0, to: 26 }
      ];
      for (const { x, y, way, from, to } of arrows) {
        const middle = toScreen(view, size, { x, y });
        for (let along = from; along <= to; along++) {
          const at = { x: middle.x + along * Math.cos(way), y: middle.y - along * Math.sin(way) };
          expect(letters.filter(one => isOnLetters(one, at)).map(({ text }) => text)).toEqual([]);
        }
      }
    }
  });

  test.each([
    [2_000, 1],
    [1_200, 1 / 2],
    [800, 0]
  ])('has arrows no longer than an area of %i mm is wide', (width, share) => {
    const shapes: LiveShape[] = [
      {
        ...{ kind: 'path', key: 'g', content: 'units', ink: 'ground', thing: 'walk', closed: true },
        loops: [rectangle(0, 0, 10_000, width)]
      },
      {
        ...{ kind: 'mark', key: 'f', content: 'falls', ink: 'fall', thing: 'walk', sign: 'fall' },
        ...{ x: 5_000, y: width / 2, turn: Math.PI / 2 }
      }
    ];
    const { groups } = scene({ ...EMPTY, shapes }, { view: { x: 5_000, y: width / 2, scale: 0.02, turn: 0 } });
    const path = groups.find(({ look }) => look.name === 'sign fall')?.path ?? '';
    const heights = [...path.matchAll(/[ML]\S+ ([-\d.]+)/g)].map(([, y]) => Number(y));
    // From 18 pixels behind its place to 19 before it.
    expect(heights.length === 0 ? 0 : Math.max(...heights) - Math.min(...heights)).toBeCloseTo(37 * share, 6);
  });

  test('has what is written at its rim in view', () => {
    const text = 'finish 112.340 m, ground 112.120 m';
    const height = (x: number): LiveShape => ({
      ...{ kind: 'text', key: `h${x}`, content: 'heights', ink: 'text', thing: '', x, y: 0 },
      ...{ text, turn: 0, anchor: 'end', rank: 4 }
    });
    const plan = { ...EMPTY, shapes: [lineOf('edge', [0, 0, 0, 20_000, 0, 0]), height(20_000)] };
    const spans = (view?: View): (readonly [number, number])[] =>
      scene(plan, view ? { view } : {}).letters.map(one => {
        const boxes = boxesOf(one);
        return [Math.min(...boxes.map(([left]) => left)), Math.max(...boxes.map(([, , right]) => right))] as const;
      });
    const right = (view: View): number => toScreen(view, size, { x: 20_000, y: 0 }).x;
    // There is room for it outside.
    const [outside] = spans();
    expect(outside![0]).toBeGreaterThan(right(scene(plan).view));
    expect(outside![1]).toBeLessThanOrEqual(size.width);
    // Nearer the rim it stands on the other side.
    const near = fitted([0, 0, 20_000, 0], size, 0);
    const [inside] = spans(near);
    expect(inside![1]).toBeLessThan(right(near));
  });

  test('has letters beside lines, and on them only where there is no other way', () => {
    const name: LiveShape = {
      ...{ kind: 'text', key: 'n', content: 'points', ink: 'strong', thing: '', x: 0, y: 0 },
      ...{ text: 'A', turn: 0, anchor: 'start', rank: 2 }
    };
    const ray = (degrees: number): LiveShape => {
      const [right, up] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
      return lineOf(`ray ${degrees}`, [0, 0, 0, 1000 * right, 1000 * up, 0]);
    };
    const view = { x: 0, y: 0, scale: 0.3, turn: 0 };
    const written = (...rays: readonly number[]): readonly (readonly number[])[] => {
      const { letters } = scene({ ...EMPTY, shapes: [...rays.map(ray), name] }, { view });
      expect(letters.map(({ text }) => text)).toEqual(['A']);
      return rays.map(degrees =>
        Array.from({ length: 100 }, (_, along) => along).filter(along => {
          const way = (degrees * Math.PI) / 180;
          return isOnLetters(letters[0]!, { x: 500 + along * Math.cos(way), y: 400 - along * Math.sin(way) });
        })
      );
    };
    expect(written(35)).toEqual([[]]);
    expect(written(35, 145, -35)).toEqual([[], [], []]);
    expect(written(35, 145, -35, -145, 90, -90).flat()).not.toEqual([]);
  });

  test('has of texts in one place the one of the lowest rank there, however many they are', () => {
    const text = (index: number, rank: number): LiveShape => ({
      ...{ kind: 'text', key: `t${index}`, content: 'names', ink: 'text', thing: '', x: 500, y: 500 },
      ...{ text: `rank ${rank}`, turn: 0, anchor: 'middle', rank }
    });
    for (const many of [5, 5_000]) {
      const shapes = [...Array.from({ length: many }, (_, index) => text(index, 6)), text(many, 1)];
      const { letters, view } = scene({ ...EMPTY, shapes });
      const middle = toScreen(view, size, { x: 500, y: 500 });
      const there = letters.filter(({ x, y }) => Math.hypot(x - middle.x, y - middle.y) < 0.1);
      expect(there.map(({ text }) => text)).toEqual(['rank 1']);
    }
  });

  test('is turned with the plan, and its letters stay upright', () => {
    for (const turn of [0.4, 1.5, Math.PI, -2]) {
      for (const letters of scene(smallPlan(), { turn }).letters) {
        expect(letters.turn).toBeGreaterThan(-Math.PI / 2 - 0.01);
        expect(letters.turn).toBeLessThan(Math.PI / 2 + 0.01);
      }
    }
  });

  test('of before an error is dimmed, hatched, and called so', () => {
    const plan = smallPlan();
    const shapes = plan.shapes.map(shape => ({ ...shape, stale: true as const }));
    const drawn = scene({ ...plan, shapes });
    expect(drawn.groups.filter(({ look }) => !look.stale).map(({ look }) => look.name)).toEqual(['before an error']);
    expect(drawn.letters.map(({ text }) => text)).toContain('as it was before the error');
  });

  test('follows a plan of nothing, and of nonsense', () => {
    expect(scene(EMPTY).groups).toEqual([]);
    const odd: LiveShape[] = [
      { kind: 'path', key: 'a', content: 'edges', ink: 'constructor', thing: '', loops: [[], [1, 2, 0]], closed: true },
      { kind: 'path', key: 'b', content: 'cuts', ink: 'cut', tint: '"><script>', thing: '', loops: [], closed: false },
      { kind: 'rows', key: 'c', content: 'units', ink: 'whole', thing: '', form: [], runs: [[0, 0, 0, 1, 0, 5]] },
      {
        ...{ kind: 'rows', key: 'd', content: 'units', ink: 'whole', thing: '', form: rectangle(0, 0, 9, 9) },
        runs: [[0, 0, 0, 0, 0, 0]]
      }
    ];
    const drawn = scene({ ...EMPTY, shapes: odd });
    expect(JSON.stringify(drawn.groups)).not.toContain('script');
    expect(JSON.stringify(drawn.groups)).not.toContain('null');
  });
});
