import { expect, it } from 'vitest';
import { rectangleLoop, type Side } from '../../language/geometry/index.ts';
import { area, box, corners, given, HEIGHTS, HOUSE_WALL, job, layer, material, NEIGHBOUR, numbersOf } from './jobs.ts';

const HALF_TURN = Math.PI;

// A job worked out by hand and by script: a drive and a turning area that share one
// side, kerbs 100 mm wide on concrete, base 150 mm past them.
it('a drive and its turning area: kerbs, concrete, and ground that both dig', () => {
  const kerb = material('kerb', 'edging', {
    width: given(0.1),
    concrete: { width: given(0.3), depth: given(0.1), under: given(0.05) },
    haunch: { width: given(0.1), height: given(0.075) }
  });
  const layers = [layer('bed', 0.03), layer('base', 0.2, { past: given(0.15) })];
  const [kerbed, closed, shared] = [{ edging: kerb }, { meets: HOUSE_WALL }, { meets: NEIGHBOUR }];
  const manhole = rectangleLoop(0.675, 0.525, { x: 3.1 - 0.3375, y: 6.2 - 0.2625 }, (12 / 180) * HALF_TURN);
  const drive = area(
    corners([0, 0], [5.2, 0], [5.2, 4], [5.2, 9.5], [5.2, 11.4], [0, 11.4]),
    { ...HEIGHTS, name: 'drive', layers, keptOut: [box('manhole', manhole)] },
    [closed, kerbed, shared, kerbed, closed, kerbed]
  );
  const at = (x: number, y: number) => ({ x, y });
  const rounded = (from: Side['from'], to: Side['to'], centre: Side['from']): Side => ({
    from,
    to,
    arc: { centre, turn: HALF_TURN / 2 }
  });
  const turning = area(
    [
      { from: at(5.2, 4), to: at(8.2, 4) },
      rounded(at(8.2, 4), at(9.4, 5.2), at(8.2, 5.2)),
      { from: at(9.4, 5.2), to: at(9.4, 8.3) },
      rounded(at(9.4, 8.3), at(8.2, 9.5), at(8.2, 8.3)),
      { from: at(8.2, 9.5), to: at(5.2, 9.5) },
      { from: at(5.2, 9.5), to: at(5.2, 4) }
    ],
    { ...HEIGHTS, name: 'turning', layers },
    [kerbed, kerbed, kerbed, kerbed, kerbed, shared]
  );

  const { quantities, findings } = numbersOf(job([drive, turning]));
  const [first, second] = quantities.areas;
  expect(findings).toEqual([]);
  expect([first!.grossArea.toFixed(2), second!.grossArea.toFixed(2)]).toEqual(['59.28', '22.48']);
  expect(quantities.dig.area).toBeCloseTo(89.28 - 0.675 * 0.525, 2);
  expect(first!.edging[0]!.length + second!.edging[0]!.length).toBeCloseTo(30.17, 2);
  expect(first!.edging[0]!.concreteVolume! + second!.edging[0]!.concreteVolume!).toBeCloseTo(1.13, 2);
  expect(first!.edges[1]!.overhang).toBeCloseTo(0.25, 12);
});
