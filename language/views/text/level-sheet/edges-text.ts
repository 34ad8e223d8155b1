import type { System } from '../../../job/job.ts';
import { printLength, printSlope } from '../../../measures/print.ts';
import { type LevelDatum, type LevelStyle, printDrop, printLevel } from '../../../measures/print-level.ts';
import type { EdgeQuantities } from '../../../quantities/contract.ts';
import type { Colours } from '../colours.ts';
import { table } from '../table.ts';

/** Heights of the finish along the sides, the fall away from each, and the step to what lies beyond. */
export function edgeHeightsText(
  edges: readonly EdgeQuantities[],
  datum: LevelDatum,
  style: LevelStyle,
  system: System,
  colours: Colours
): string[] {
  const rows = wholeSides(edges).flatMap(edge => {
    if (edge.finishFrom === undefined || edge.finishTo === undefined) return [];
    return [
      [
        edge.name,
        edge.meets ?? 'not said',
        printLevel(edge.finishFrom, datum, style),
        printLevel(edge.finishTo, datum, style),
        fallsText(edge, system),
        stepText(edge, style, system)
      ]
    ];
  });
  const heads = ['Side', 'Meets', 'Finish from', 'to', 'Fall away from it', 'What lies beyond'];
  return table(
    heads.map((head, index) => ({ head, right: index === 2 || index === 3 })),
    rows,
    colours
  );
}

/** A measured edge stands in the outline in parts of one name: they are told as the one side that they are. */
export function wholeSides(edges: readonly EdgeQuantities[]): EdgeQuantities[] {
  const sides: EdgeQuantities[] = [];
  for (const edge of edges) {
    const before = sides.at(-1);
    if (before?.name === edge.name && before.meets === edge.meets) sides[sides.length - 1] = joined(before, edge);
    else sides.push(edge);
  }
  return sides;
}

/** Where the parts fall differently. */
function mostFall(first: EdgeQuantities, second: EdgeQuantities): Pick<EdgeQuantities, 'fallAwayMost'> {
  const all = [first, second].flatMap(({ fallAway, fallAwayMost }) => [fallAway ?? 0, fallAwayMost ?? fallAway ?? 0]);
  const most = Math.max(...all);
  return most > Math.min(...all) ? { fallAwayMost: most } : {};
}

function joined(first: EdgeQuantities, second: EdgeQuantities): EdgeQuantities {
  const { finishTo, steps: further, length } = second;
  const most = (a: number | undefined, b: number | undefined): number => Math.max(a ?? 0, b ?? 0);
  const steps =
    first.steps === undefined || further === undefined
      ? undefined
      : [...first.steps, ...further.map(({ at, step }) => ({ at: at + first.length, step }))];
  return {
    ...first,
    length: first.length + length,
    ...(finishTo === undefined ? {} : { finishTo }),
    fallAway: Math.min(first.fallAway ?? 0, second.fallAway ?? 0),
    ...mostFall(first, second),
    ...(steps === undefined
      ? {}
      : { steps, stepUp: most(first.stepUp, second.stepUp), stepDown: most(first.stepDown, second.stepDown) })
  };
}

/** `1:60`; where it is not the same all along the side, `from 1:60 to 1:45`, `from 1:75 to it, to level`. */
export function fallsText({ fallAway, fallAwayMost }: EdgeQuantities, system: System): string {
  const least = fallText(fallAway, system);
  const most = fallText(fallAwayMost, system);
  const isTowards = fallAway !== undefined && fallAway < 0 && least !== 'level';
  return most === '' || most === least ? least : `from ${least}${isTowards ? ',' : ''} to ${most}`;
}

function fallText(fall: number | undefined, system: System): string {
  if (fall === undefined) return '';
  const printed = printSlope(fall, system);
  return printed === 'level' || fall > 0 ? printed : `${printed} to it`;
}

/** `7/16 in up at 6 ft 4 in, flush at 12 ft`: the highest and the lowest step, and where it is flush. */
export function stepText(
  { steps, stepUp, stepDown, length }: EdgeQuantities,
  style: LevelStyle,
  system: System
): string {
  if (steps === undefined) return '';
  const parts: string[] = [];
  const at = (wanted: number): string => {
    const place = steps.find(({ step }) => Math.abs(step - wanted) < SAME)?.at ?? 0;
    return place <= SAME ? 'at its start' : place >= length - SAME ? 'at its end' : `at ${printLength(place, system)}`;
  };
  const size = (step: number): string => printDrop(step, style);
  const shows = (step: number | undefined): step is number =>
    step !== undefined && Number.parseFloat(size(step)) !== 0 && step > LEAST_STEP;
  if (shows(stepUp)) parts.push(`stands ${size(stepUp)} up ${at(stepUp)}`);
  if (shows(stepDown)) parts.push(`lies ${size(stepDown)} down ${at(-stepDown)}`);
  return parts.length === 0 ? 'flush' : parts.join(', ');
}

/** Steps told are found again to this, m. */
const SAME = 1e-6;

/** Less than half a sixteenth of an inch is flush, m. */
const LEAST_STEP = 0.0005;
