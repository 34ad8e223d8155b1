import type { System } from '../job/job.ts';

/**
 * The revised lifting equation, NIOSH publication 94-110. It is for lifting with two hands, standing, on firm footing; not
 * for laying on one's knees, lifting with one hand, shovels or barrows, tight places, nor for more than 8 h.
 */
export const LIFTING_SOURCE = 'NIOSH 94-110, revised 2021';

/** Inches and pounds, or centimetres and kilograms: the two have constants of their own that are no exact conversions. */
interface Constants {
  readonly load: number;
  readonly nearest: number;
  readonly furthest: number;
  readonly knuckles: number;
  readonly heightLoss: number;
  readonly highest: number;
  readonly distanceShare: number;
  readonly distance: number;
  readonly leastDistance: number;
  readonly mostDistance: number;
  /** Below this height of the hands the load is held further off. */
  readonly low: number;
  readonly handsOut: number;
}

const CONSTANTS: Readonly<Record<System, Constants>> = {
  imperial: {
    load: 51,
    nearest: 10,
    furthest: 25,
    knuckles: 30,
    heightLoss: 0.0075,
    highest: 70,
    distanceShare: 0.82,
    distance: 1.8,
    leastDistance: 10,
    mostDistance: 70,
    low: 10,
    handsOut: 8
  },
  metric: {
    load: 23,
    nearest: 25,
    furthest: 63,
    knuckles: 75,
    heightLoss: 0.003,
    highest: 175,
    distanceShare: 0.82,
    distance: 4.5,
    leastDistance: 25,
    mostDistance: 175,
    low: 25,
    handsOut: 20
  }
};

/** What may be lifted at most under the best conditions: 51 lb, 23 kg. */
export function loadConstant(system: System): number {
  return CONSTANTS[system].load;
}

/** How far the hands are from the ankles where it was not measured, from their height and the width of the load. */
export function horizontalDistance(height: number, loadWidth: number, system: System): number {
  const { low, handsOut, nearest } = CONSTANTS[system];
  return (height < low ? nearest : handsOut) + loadWidth / 2;
}

export function horizontalMultiplier(distance: number, system: System): number {
  const { nearest, furthest } = CONSTANTS[system];
  return distance > furthest ? 0 : nearest / Math.max(nearest, distance);
}

export function verticalMultiplier(height: number, system: System): number {
  const { knuckles, heightLoss, highest } = CONSTANTS[system];
  return height > highest || height < 0 ? 0 : 1 - heightLoss * Math.abs(height - knuckles);
}

export function distanceMultiplier(travel: number, system: System): number {
  const { distanceShare, distance, leastDistance, mostDistance } = CONSTANTS[system];
  return travel > mostDistance ? 0 : distanceShare + distance / Math.max(leastDistance, travel);
}

/** Multipliers of one lift, each 1 at best: held close, at knuckle height, moved little, not turned, seldom, good grip. */
export interface Multipliers {
  readonly horizontal: number;
  readonly vertical: number;
  readonly distance: number;
  readonly turning: number;
  readonly frequency: number;
  readonly grip: number;
}

/** The weight recommended as a limit, lb or kg. */
export function recommendedWeight(by: Multipliers, system: System): number {
  const { load } = CONSTANTS[system];
  return load * by.horizontal * by.vertical * by.distance * by.turning * by.frequency * by.grip;
}

/**
 * What is recommended for a flat piece picked up from near the ground, once in a while, and put down a step off: hands at
 * 6 in (15 cm), a poor grip since it has no handles. `width` is the piece's short side, in or cm.
 */
export function fromNearTheGround(width: number, system: System): number {
  const height = system === 'imperial' ? 6 : 15;
  return recommendedWeight(
    {
      horizontal: horizontalMultiplier(horizontalDistance(height, width, system), system),
      vertical: verticalMultiplier(height, system),
      distance: 1,
      turning: 1,
      frequency: 1,
      grip: POOR_GRIP
    },
    system
  );
}

/** Table 7 of the publication, from memory. */
const POOR_GRIP = 0.9;
