// Two whole jobs with figures worked by hand: points, heights, falls, edges, boxes, pipe, drain, gate, dig, layers, log.
import { beforeAll, describe, expect, it } from 'vitest';
import type { JobQuantities } from '../../../language/quantities/contract.ts';
import { CUBIC_FOOT, CUBIC_YARD, FOOT, INCH, SHORT_TON, SQUARE_FOOT } from '../../quantities/jobs.ts';
import { wrongWorkings } from '../../quantities/workings.ts';
import { wholeJob } from './whole-job.ts';

interface Read {
  readonly job: JobQuantities;
  readonly wrong: readonly string[];
}

async function read(name: 'terrace' | 'drive'): Promise<Read> {
  const { evaluation } = await wholeJob(name);
  const { quantities: job, workings } = evaluation.numbers!;
  return { job, wrong: wrongWorkings(job, workings as Parameters<typeof wrongWorkings>[1]) };
}

/** Half of the last digit that a figure is told to. */
const SIXTEENTH = 1 / 32;

function near(value: number | undefined, told: number, apart: number): void {
  expect(value, `told ${told}`).toBeDefined();
  expect(Math.abs(value! - told), `${value} for ${told}`).toBeLessThanOrEqual(apart);
}

describe('a garden terrace, dug by hand', () => {
  let job: JobQuantities;
  let wrong: readonly string[];
  beforeAll(async () => ({ job, wrong } = await read('terrace')));
  const terrace = (): JobQuantities['areas'][number] => job.areas[0]!;
  const inch = (value: number | undefined): number | undefined => (value === undefined ? undefined : value / INCH);
  const level = (at: string): NonNullable<JobQuantities['areas'][number]['levels']>[number] =>
    terrace().levels!.find(one => one.at === at)!;

  it('every number is worked out again from its formula', () => expect(wrong).toEqual([]));

  it('tapes: fitted together, CD is the tape as read to a sixteenth, and AC and BD misfit most', () => {
    const tape = (from: string, to: string): NonNullable<JobQuantities['tapes']>[number] =>
      job.tapes!.find(one => one.from === from && one.to === to)!;
    near(inch(tape('C', 'D').byTheOthers), 18 * 12 + 7 + 13 / 16, SIXTEENTH);
    near(inch(tape('C', 'D').fitted), 18 * 12 + 7.75, SIXTEENTH);
    expect(job.tapes!.filter(({ worst }) => worst).map(({ from, to }) => from + to)).toEqual(['AC', 'BD']);
    for (const { misfit } of job.tapes!) expect(Math.abs(misfit)).toBeLessThanOrEqual(0.02 * INCH);
  });

  it('heights: the rod less the reading on the sill', () => {
    const below = (of: string, at: string): number =>
      -job.heights!.find(one => one.of === of && one.at === at)!.height / INCH;
    const told = { A: 3, B: 3.25, C: 6.75, D: 6 };
    for (const [at, inches] of Object.entries(told)) near(below('ground', at), inches, 1e-9);
    for (const [at, inches] of Object.entries({ A: 2.5, M: 3.625, D: 5.625 }))
      near(below('old-walk', at), inches, 1e-9);
  });

  it('outline: to the bowed walk; the base past the open edges alone', () => {
    near(terrace().grossArea / SQUARE_FOOT, 235.85, 0.01);
    near(terrace().netArea / SQUARE_FOOT, 233.9, 0.05);
    near(terrace().dig.area / SQUARE_FOOT, 249.8, 0.05);
    near((terrace().dig.area + terrace().keptOut[0]!.area) / SQUARE_FOOT, 251.7, 0.05);
  });

  it('edges: the old walk is flush at A, stands up in its middle, and a little at D', () => {
    // Measured by offsets, the side is three legs.
    const legs = terrace().edges.filter(({ meets }) => meets === 'old-walk');
    near(inch(Math.max(...legs.map(({ stepUp }) => stepUp ?? 0))), 7 / 16, SIXTEENTH);
    near(inch(legs.at(-1)!.steps!.at(-1)!.step), 0, 1e-6);
    near(inch(legs[0]!.steps![0]!.step), 1 / 16, SIXTEENTH);
  });

  it('boxes: one lid raised, one cut down', () => {
    const [valves, sprinkler] = job.boxes!;
    near(inch(valves!.change), 1, SIXTEENTH);
    near(inch(valves!.finish), -3.25, SIXTEENTH);
    expect(valves!.buried).toBe(false);
    expect(sprinkler).toMatchObject({ buried: true, inUse: false });
    near(inch(sprinkler!.lid), -5, 1e-9);
    near(inch(sprinkler!.cutDownAtMiddle), 8.5, 1e-6);
    near(inch(sprinkler!.cutDown), 8.625, SIXTEENTH);
    // The soft spot met later reaches 3 in over its circle: there it goes 4 in deeper.
    near(inch(sprinkler!.cutDownInSoftSpot), 12.6, 0.01);
    expect(sprinkler!.tapedFrom.map(({ point }) => point)).toEqual(['A', 'B']);
    near(sprinkler!.tapedFrom[0]!.distance / FOOT, Math.hypot(12 + 4 / 12, 8), 1e-9);
  });

  it('pipe: under the dig by its stated depth, above the soft spot beside its end', () => {
    const [pipe] = job.pipes!;
    near(inch(pipe!.belowDigBesideSoftSpots), 1.75, 0.125);
    expect(pipe!.belowDig).toBeLessThan(0);
    expect(pipe!.proven).toBe(false);
  });

  it('gate: strikes from the beginning', () => {
    const [gate] = job.gates!;
    near(inch(gate!.highestFinish), -(2 + 15 / 16), SIXTEENTH);
    near(inch(gate!.clearance), -0.32, 0.005);
    near(inch(gate!.trim), 0.82, 0.005);
    near(inch(gate!.shutClearance), -0.25, 1e-3);
    expect(gate).toMatchObject({ strikes: true, overPaving: true, strikesAt: 0 });
    expect(gate!.laidClearance).toBeUndefined();
  });

  it('dig: as deep as told at the points, under the topsoil everywhere', () => {
    const depth = (at: string): number => (level(at).ground! - level(at).digBottom) / INCH;
    for (const [at, inches] of Object.entries({ A: 8.5, B: 8.25, C: 7 + 15 / 16, D: 8 + 11 / 16 }))
      near(depth(at), inches, SIXTEENTH);
    near((level('A').finish - level('A').digBottom) / INCH, 9, 1e-9);
    near(job.dig.bankVolume / CUBIC_YARD, 6.4, 0.05);
    near(job.dig.looseVolume / CUBIC_YARD, 9.1, 0.05);
    near((job.dig.bankVolume + job.dig.softSpotBankVolume!) / CUBIC_YARD, 6.5, 0.05);
    near((job.dig.looseVolume + job.dig.softSpotLooseVolume!) / CUBIC_YARD, 9.4, 0.05);
    near(job.dig.looseVolume / (3 * CUBIC_FOOT), 82.3, 0.05);
    expect(job.dig).toMatchObject({ barrows: 83, barrowsWithSoftSpots: 85 });
    near(job.dig.barrowWalk! / FOOT, 85 * 85 * 2, 1e-6);
  });

  it('layers: stone and sand', () => {
    const [bed, base] = terrace().layers;
    near(base!.compactedVolume! / CUBIC_YARD, 4.63, 0.005);
    near(base!.mass! / SHORT_TON, 8.7, 0.05);
    near(base!.looseVolume! / CUBIC_YARD, 5.8, 0.05);
    near(bed!.compactedVolume! / CUBIC_FOOT, 19.5, 0.05);
    const [spot] = terrace().softSpots!;
    near(spot!.stoneVolume / CUBIC_FOOT, 4, 1e-9);
    near(spot!.stoneMass! / SHORT_TON, 0.28, 1e-9);
  });

  it('log: the base as measured, and what was delivered', () => {
    const [atC, atD] = job.readings!;
    near(inch(atC!.design), -(8 + 11 / 16), SIXTEENTH);
    near(inch(atD!.design), -(8 + 11 / 16), SIXTEENTH);
    near(inch(atC!.above), 3 / 16, SIXTEENTH);
    near(inch(atD!.above), -3 / 16, SIXTEENTH);
    const [stone] = job.deliveries!;
    near(stone!.delivered / SHORT_TON, 8.5, 1e-9);
    near(stone!.needed! / SHORT_TON, 9.02, 0.005);
    near(stone!.short! / SHORT_TON, 0.5, 0.05);
  });

  it('water runs off over the lawn, none to the house', () => {
    const [water] = job.water!;
    expect(water!.over.map(({ meets }) => meets)).toEqual(['lawn', 'lawn']);
    near(
      water!.over.reduce((sum, { drained }) => sum + drained, 0),
      terrace().grossArea,
      1e-6
    );
  });
});

describe('a block drive with a turning area', () => {
  let job: JobQuantities;
  let wrong: readonly string[];
  beforeAll(async () => ({ job, wrong } = await read('drive')));
  const drive = (): JobQuantities['areas'][number] => job.areas[0]!;
  const turning = (): JobQuantities['areas'][number] => job.areas[1]!;
  const level = (of: JobQuantities['areas'][number], at: string): number =>
    of.levels!.find(one => one.at === at)!.finish;

  it('every number is worked out again from its formula', () => expect(wrong).toEqual([]));

  it('areas', () => {
    near(drive().grossArea, 59.28, 0.005);
    near(turning().grossArea, 22.48, 0.005);
    near(drive().keptOut[0]!.area, 0.35, 0.005);
  });

  it('finish of the drive: twisted by 14 mm, steeper on the left', () => {
    const along = (from: string, to: string): number => level(drive(), to) - level(drive(), from);
    near(11.4 / along('G1', 'R1'), 35, 0.5);
    near(11.4 / along('G2', 'R2'), 36, 0.5);
    near(Math.abs(drive().finish!.twist!), 0.014, 1e-9);
  });

  it('finish of the turning area: taken from the drive', () => {
    near(level(turning(), 'T1'), 10.095, 0.0005);
    near(level(turning(), 'T4'), 10.246, 0.0005);
    near(level(turning(), 'T2'), 10.179, 0.0005);
    near(level(turning(), 'T3'), 10.33, 0.0005);
    near(1 / turning().finish!.fall!, 29, 0.5);
  });

  it('the manhole is raised by 138 mm and its tray paved', () => {
    const [manhole] = job.boxes!;
    near(manhole!.change, 0.138, 0.0005);
    near(manhole!.finish, 10.158, 0.0005);
    near(manhole!.trayArea, 0.675 * 0.525, 1e-9);
    expect(manhole!.trayUnits).toBe(Math.ceil((0.675 * 0.525) / (0.203 * 0.103)));
  });

  it('edging: kerb, and the concrete under and behind it', () => {
    const [kerb] = job.edging;
    near(kerb!.length, 30.2, 0.05);
    // 0.905 m3 below and 0.226 m3 behind.
    near(kerb!.concreteVolume, 0.905 + 0.226, 0.005);
  });

  it('dig: 290 mm below the finish', () => {
    const at = (name: string): number => drive().levels!.find(one => one.at === name)!.digBottom;
    near(at('G1'), 9.695, 1e-6);
    near(at('R1'), 10.022, 1e-6);
    near(drive().edges.find(({ name }) => name === 'R1 to G1')!.overhang, 0.25, 1e-9);
  });

  it('stone', () => {
    // Beside T1 and T4 both digs reach past their kerbs: that ground is dug once.
    near(job.dig.area, 88.9, 0.05);
    const base = job.materials.find(({ role }) => role === 'base')!;
    near(base.compactedVolume, 17.8, 0.05);
    near(base.mass! / 1000, 39.1, 0.1);
  });

  it('bed: the rail is 38 mm over the base, the blocks stand 8 mm high', () => {
    const g1 = drive().levels!.find(one => one.at === 'G1')!;
    near(g1.screed! - g1.baseTop!, 0.038, 1e-9);
    near(g1.asLaid! - g1.finish, 0.008, 1e-9);
  });

  it('the channel takes the water of both areas', () => {
    const [channel] = job.drains!;
    near(channel!.drained, 81.8, 0.05);
    near(channel!.finishAbove, 0.003, 1e-9);
    expect(channel!.from.map(({ area }) => area)).toEqual(['area:drive', 'area:turning']);
  });

  it('log: stone delivered', () => {
    const stone = job.deliveries!.find(({ thing }) => thing === 'type-1')!;
    expect(stone.delivered).toBe(40_000);
    near(stone.needed! / 1000, 39.1, 0.1);
  });
});
