import { describe, expect, test } from 'vitest';
import { sharedRun, type Side } from '../../language/geometry/index.ts';

const straight = (fromX: number, toX: number, y = 0): Side => ({ from: { x: fromX, y }, to: { x: toX, y } });

/** About (1, 1), from one angle to another in degrees. */
const arc = (from: number, to: number, radius = 2): Side => {
  const at = (degrees: number): { x: number; y: number } => ({
    x: 1 + radius * Math.cos((degrees * Math.PI) / 180),
    y: 1 + radius * Math.sin((degrees * Math.PI) / 180)
  });
  return { from: at(from), to: at(to), arc: { centre: { x: 1, y: 1 }, turn: ((to - from) * Math.PI) / 180 } };
};

const degrees = (angle: number, radius = 2): number => (angle * Math.PI * radius) / 180;

describe('how far sides run on top of one side', () => {
  test.each<[string, Side, Side[], number]>([
    ['straight on straight, part of it', straight(0, 4), [straight(3, 9)], 1],
    ['the other way round', straight(0, 4), [straight(9, 3)], 1],
    ['two that overlap count once', straight(0, 4), [straight(0, 2), straight(1, 3)], 3],
    ['beside it', straight(0, 4), [straight(0, 4, 0.1)], 0],
    ['arc on arc, part of it', arc(0, 90), [arc(60, 120)], degrees(30)],
    ['arc on arc, the other way round', arc(0, 90), [arc(120, 60)], degrees(30)],
    ['arcs across the negative axis', arc(170, 200), [arc(-175, -150)], degrees(15)],
    ['two arcs that overlap count once', arc(0, 90), [arc(0, 40), arc(20, 60)], degrees(60)],
    ['of another radius', arc(0, 90), [arc(0, 90, 2.1)], 0],
    ['an arc and a straight side', arc(0, 90), [straight(0, 4)], 0]
  ])('%s', (_, side, others, length) => {
    expect(sharedRun(side, others)).toBeCloseTo(length, 9);
  });
});
