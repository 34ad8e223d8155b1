import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Area, Edge, Layer, Material } from '../../language/job/job.ts';
import {
  area,
  box,
  corners,
  given,
  HOUSE_WALL,
  job,
  LAWN,
  layer,
  material,
  numbersOf,
  paving,
  rectangle,
  SITE,
  unit
} from './jobs.ts';
import { rulesOf } from '../shipped-rules.ts';
import { wrongWorkings } from './workings.ts';

const length = (least: number, most: number) => fc.double({ min: least, max: most, noNaN: true });
const perhaps = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: undefined });

/** The record without the keys whose value is undefined. */
function stated<T extends object>(record: T): { [K in keyof T]: Exclude<T[K], undefined> } {
  return Object.fromEntries(Object.entries(record).filter(([, value]) => value !== undefined)) as never;
}

const size = (least: number, most: number) => perhaps(length(least, most).map(value => given(value)));

const anyMaterial: fc.Arbitrary<Material> = fc
  .record({ compacted: size(0, 3000), loose: size(0, 3000), compactionFactor: size(0, 2), openGraded: fc.boolean() })
  .map(({ openGraded, ...more }) => ({ ...material('m', 'base', stated(more) as Partial<Material>), openGraded }));

const edging: fc.Arbitrary<Material> = fc
  .record({
    width: size(0, 0.2),
    basePast: size(0, 0.4),
    spikesEvery: size(0, 1),
    concrete: perhaps(fc.constant({ width: given(0.3), depth: given(0.1), under: given(0.4) }))
  })
  .map(more => material('e', 'edging', stated(more) as Partial<Material>));

const edge: fc.Arbitrary<Partial<Edge>> = fc
  .record({ meets: fc.constantFrom(LAWN, HOUSE_WALL), edging: perhaps(edging) })
  .map(more => stated(more) as Partial<Edge>);

const layers: fc.Arbitrary<Layer[]> = fc.array(
  fc
    .record({ role: fc.constantFrom('bed' as const, 'base' as const), thickness: length(0, 0.5), of: anyMaterial })
    .map(({ role, thickness, of }) => layer(role, thickness, { material: of })),
  { maxLength: 3 }
);

const anyArea = (name: string): fc.Arbitrary<Area> =>
  fc
    .record({
      points: fc.array(fc.tuple(length(-6, 6), length(-6, 6)), { minLength: 3, maxLength: 6 }),
      straight: fc.boolean(),
      sides: fc.array(edge, { maxLength: 6 }),
      layers,
      finish: perhaps(length(-1, 1)),
      lid: perhaps(length(-1, 1)),
      swell: length(0, 1)
    })
    .map(({ points, straight, sides, layers, finish, lid, swell }) => {
      const outline = straight ? rectangle(3, 2, points[0]![0], points[0]![1]) : corners(...points);
      return area(
        outline,
        {
          name,
          layers,
          paving: paving(unit(0.4, 0.2, 0.06), 0.003),
          jointFiller: material('j', 'joint-filler', { loose: given(1500) }),
          geotextile: material('g', 'geotextile', { roll: { width: given(0.5), length: given(9) }, lap: given(0.5) }),
          site: {
            ...SITE,
            soil: { ...SITE.soil, swell: given(swell) },
            ground: { benchmark: 'sill', above: given(0), fromNought: false }
          },
          ...(finish === undefined ? {} : { finish: { benchmark: 'sill', above: given(finish), fromNought: false } }),
          ...(lid === undefined
            ? {}
            : { keptOut: [box('lid', rectangle(0.3, 0.3, points[0]![0] + lid, points[0]![1] + 0.2))] })
        },
        sides.slice(0, outline.length)
      );
    });

it('random jobs: finite numbers none below nought, workings that hold, messages without a programmer’s word', () => {
  let withNumbers = 0;
  fc.assert(
    fc.property(anyArea('a'), anyArea('b'), (a, b) => {
      const { quantities, workings, findings } = numbersOf(
        job([a, b], { rules: rulesOf(['north-america', 'britain']) })
      );
      withNumbers += quantities.areas.length;
      expect(wrongWorkings(quantities, workings)).toEqual([]);
      const written = JSON.stringify({
        ...quantities,
        areas: quantities.areas.map(({ outline: _o, edges: _e, keptOut: _k, finish: _f, levels: _l, ...rest }) => rest)
      });
      expect(written).not.toMatch(/null|:-\d/);
      // Heights may lie below the benchmark; they too are numbers.
      expect(JSON.stringify(quantities)).not.toContain('null');
      expect(quantities.complete).toBe(quantities.missing.length === 0);
      for (const { message } of findings) expect(message).not.toMatch(/undefined|NaN|null|Infinity|-0 /);
    }),
    { numRuns: 300, seed: 20260418 }
  );
  expect(withNumbers).toBeGreaterThan(200);
});
