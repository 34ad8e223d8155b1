/** Signs along a unit: a number that halves, thirds and quarters come out even in. */
const UNIT = 12;
const UNITS = 3;
const COURSES = 4;

/**
 * A few courses of a bond from its offset, a share of a unit's length from nought to less than one, drawn with lines: the
 * first course lies at the bottom, as on a plan.
 */
export function drawBond(offset: number): string {
  const courses = Array.from({ length: COURSES }, (_, course) => jointsOf(course, offset)).reverse();
  const lines: string[] = [];
  for (let row = 0; row <= COURSES; row++) {
    lines.push(lineBetween(courses[row - 1], courses[row]));
    if (row < COURSES) lines.push(course(courses[row]!));
  }
  return lines.join('\n');
}

const WIDTH = UNIT * UNITS;

/** Places across the drawing where a joint of a course stands. */
function jointsOf(course: number, offset: number): ReadonlySet<number> {
  // A shift too small to be drawn is still seen.
  const shift = offset === 0 ? 0 : Math.min(UNIT - 1, Math.max(1, offset * UNIT));
  const first = Math.round(course * shift) % UNIT;
  return new Set(Array.from({ length: UNITS }, (_, unit) => first + unit * UNIT).filter(at => at > 0));
}

function course(joints: ReadonlySet<number>): string {
  return acrossDrawing(at => (at === 0 || at === WIDTH || joints.has(at) ? '│' : ' '));
}

/** The line between two courses; above the uppermost and below the lowest there is none. */
function lineBetween(above: ReadonlySet<number> | undefined, below: ReadonlySet<number> | undefined): string {
  const edge = above === undefined ? '┌┐' : below === undefined ? '└┘' : '├┤';
  return acrossDrawing(at => {
    if (at === 0 || at === WIDTH) return edge[at === 0 ? 0 : 1]!;
    const [up, down] = [above?.has(at), below?.has(at)];
    return up ? (down ? '┼' : '┴') : down ? '┬' : '─';
  });
}

function acrossDrawing(sign: (at: number) => string): string {
  return Array.from({ length: WIDTH + 1 }, (_, at) => sign(at)).join('');
}
