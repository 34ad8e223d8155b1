/** Dust of sawing concrete and clay units: breathing protection as table 1 of 29 CFR 1926.1153 asks for it. */

export type Saw = 'handheld' | 'stationary' | 'walk-behind';

/** Sawing with water fed to the blade by one person in one shift, h. */
export interface Sawing {
  readonly saw: Saw;
  readonly where: 'outdoors' | 'indoors';
  readonly hours: number;
}

export interface Protection {
  readonly column: 'up to 4 h' | 'over 4 h';
  /** Least assigned protection factor; nought: the table asks for none while the water feed works. */
  readonly factor: 0 | 10;
}

export const DUST_SOURCE = "OSHA 29 CFR 1926.1153 table 1, as read in a state's text of it";

const HOURS_OF_FIRST_COLUMN = 4;

const TABLE: Readonly<Record<Saw, Readonly<Record<Sawing['where'], readonly [Protection['factor'], 0 | 10]>>>> = {
  handheld: { outdoors: [0, 10], indoors: [10, 10] },
  stationary: { outdoors: [0, 0], indoors: [0, 0] },
  'walk-behind': { outdoors: [0, 0], indoors: [10, 10] }
};

/** For each of the tasks of one shift, in their order: with more than 4 h together the second column counts for each. */
export function protectionFor(shift: readonly Sawing[]): Protection[] {
  const hours = shift.reduce((sum, task) => sum + task.hours, 0);
  const isOver = hours > HOURS_OF_FIRST_COLUMN;
  return shift.map(({ saw, where }) => ({
    column: isOver ? 'over 4 h' : 'up to 4 h',
    factor: TABLE[saw][where][isOver ? 1 : 0]
  }));
}
