import type { JointLimits } from './border.ts';

/** Units in a row: the first begins so far along, the others follow a pitch apart. In the measure of the row. */
export interface Row {
  readonly count: number;
  readonly first: number;
  readonly pitch: number;
  readonly joint: number;
  /** Whether whole units fit with a joint within its limits. */
  readonly fits: boolean;
}

/** In shares of a unit: rounding that must not turn a joint just at its limit into one beyond. */
const ROUNDING = 1e-9;

/**
 * Whole units over a length, ending with a unit at both ends, the joint adjusted within its limits and as near to the
 * usual as can be; a misfit of no more than the slack is left at both ends. Where none fit: the usual joint, and the
 * same cut at both ends, of more than half a unit where there is more than one.
 */
export function rowOver(length: number, unit: number, joint: JointLimits, slack: number): Row {
  const about = Math.floor((length + joint.usual) / (unit + joint.usual));
  const rows = [about, about + 1]
    .map(count => fittedRow(length, unit, count, joint, slack + ROUNDING * unit))
    .filter(row => row !== undefined);
  return nearestUsual(rows, joint) ?? cutRow(length, unit, joint.usual);
}

function nearestUsual(rows: readonly Row[], { usual }: JointLimits): Row | undefined {
  const off = (row: Row): number => Math.abs(row.joint - usual);
  return rows.reduce<Row | undefined>((best, row) => (best && off(best) <= off(row) ? best : row), undefined);
}

function fittedRow(length: number, unit: number, count: number, joint: JointLimits, slack: number): Row | undefined {
  const joints = count - 1;
  if (count < 1) return undefined;
  if (length < count * unit + joints * joint.least - slack) return undefined;
  if (length > count * unit + joints * joint.most + slack) return undefined;
  const even = joints > 0 ? (length - count * unit) / joints : joint.usual;
  const adjusted = Math.min(joint.most, Math.max(joint.least, even));
  const first = (length - count * unit - joints * adjusted) / 2;
  return { count, first, pitch: unit + adjusted, joint: adjusted, fits: true };
}

function cutRow(length: number, unit: number, joint: number): Row {
  const pitch = unit + joint;
  if (length <= unit) return { count: 1, first: 0, pitch, joint, fits: false };
  const whole = Math.max(0, Math.ceil((length - joint - 2 * unit) / pitch - ROUNDING));
  const piece = (length - joint - whole * pitch) / 2;
  return { count: whole + 2, first: piece - unit, pitch, joint, fits: false };
}

/** Whole units all round, the joint adjusted within its limits; undefined where none fit. */
export function rowRound(length: number, unit: number, joint: JointLimits): Row | undefined {
  const about = Math.floor(length / (unit + joint.usual));
  const rows = [about, about + 1]
    .map((count): Row => {
      const pitch = length / count;
      return { count, first: (pitch - unit) / 2, pitch, joint: pitch - unit, fits: true };
    })
    .filter(row => row.count >= 3 && row.joint >= joint.least - ROUNDING * unit)
    .filter(row => row.joint <= joint.most + ROUNDING * unit);
  return nearestUsual(rows, joint);
}
