// The revised lifting equation: NIOSH 94-110, revised 2021, read.
import { describe, expect, test } from 'vitest';
import {
  distanceMultiplier,
  fromNearTheGround,
  horizontalDistance,
  horizontalMultiplier,
  loadConstant,
  recommendedWeight,
  verticalMultiplier
} from '../../language/schedule/lifting.ts';
import { POUND } from '../quantities/jobs.ts';
import { scheduled, taskOf } from './scheduled.ts';

describe('the equation', () => {
  test('O-70: the hands at 20 in: vertical multiplier 0.925', () => {
    expect(verticalMultiplier(20, 'imperial')).toBeCloseTo(0.925, 12);
    expect(verticalMultiplier(30, 'imperial')).toBe(1);
    expect(verticalMultiplier(71, 'imperial')).toBe(0);
  });

  test('O-71: example 4: 34.9 lb, at full precision of its multipliers 34.8677', () => {
    const by = { horizontal: 1, vertical: 0.94, distance: 0.87, turning: 1, frequency: 0.88, grip: 0.95 };
    expect(recommendedWeight(by, 'imperial')).toBeCloseTo(34.8677, 4);
  });

  test('O-72: hands at 8 in on a load 12 in wide are 16 in from the ankles', () => {
    expect(horizontalDistance(8, 12, 'imperial')).toBe(16);
    expect(horizontalDistance(10, 12, 'imperial')).toBe(14);
    expect(horizontalDistance(20, 30, 'metric')).toBe(40);
    expect(horizontalDistance(25, 30, 'metric')).toBe(35);
  });

  test('O-74: 51 lb are 23.1332 kg, and the constant in kilograms is 23: no exact conversion', () => {
    expect(loadConstant('imperial') * POUND).toBeCloseTo(23.1332, 4);
    expect(loadConstant('metric')).toBe(23);
  });

  test('nearer than the nearest counts as that; further than the furthest is not lifted', () => {
    expect(horizontalMultiplier(5, 'imperial')).toBe(1);
    expect(horizontalMultiplier(20, 'imperial')).toBe(0.5);
    expect(horizontalMultiplier(26, 'imperial')).toBe(0);
    expect(distanceMultiplier(5, 'imperial')).toBeCloseTo(1, 12);
    expect(distanceMultiplier(40, 'metric')).toBeCloseTo(0.9325, 12);
    expect(distanceMultiplier(176, 'metric')).toBe(0);
  });

  test('a slab 16 in wide from near the ground: 10 / 18 of 51 lb, less for height and grip', () => {
    expect(fromNearTheGround(16, 'imperial')).toBeCloseTo(51 * (10 / 18) * (1 - 0.0075 * 24) * 0.9, 9);
  });
});

const terrace = (weight: string): string => `job "Terrace" { rules north-america }
site { soil clay, winters freeze, benchmark sill, ground level with sill }
unit slab { size 16 x 16 x 2 in${weight}, set by hand }
price slab { pallet of 90 for 315 USD, weight 3900 lb }
area terrace {
  outline rectangle 12 x 16 ft
  traffic foot
  finish level with sill
  paving slab in running-bond
  base crushed-stone 6 in
  joints filled with joint-sand
  edges { all round meets lawn, edging spiked-strip }
}
`;

describe('what is told of weights', () => {
  const cautionsOf = async (text: string): Promise<Record<string, string>> => {
    const { cautions } = taskOf(await scheduled(text), 'laying/terrace/running-bond');
    return Object.fromEntries(cautions.map(caution => [caution.id, caution.text]));
  };

  test('a slab of 42 lb: two people or a carrier, with the limits of the method', async () => {
    const { lifting, pallets } = await cautionsOf(terrace(', weight 42 lb'));
    expect(lifting).toBe(
      "slab weighs 42 lb. The lifting equation recommends 51 lb at most when all is at its best, and about 21 lb picked up near the ground, even seldom: two people, or a carrier. This equation is for two hands, standing on firm ground: not for laying on one's knees, one hand, shovels, barrows or tight places."
    );
    expect(pallets).toContain('A pallet weighs: slab 1.95 short tons.');
  });

  test('a weight that is not told is estimated, and said to be so', async () => {
    const { lifting } = await cautionsOf(terrace(''));
    // 16 x 16 x 2 in of 2,300 kg/m3.
    expect(lifting).toMatch(/^slab weighs about 43 lb\./);
  });

  test('light pieces add up', async () => {
    const caution = await cautionsOf(terrace(', weight 6 lb'));
    expect(caution.lifting).toBeUndefined();
    expect(caution['lifting-often']).toMatch(/^\d+ pieces, 0\.\d\d short tons in all, are lifted by hand/);
  });
});
