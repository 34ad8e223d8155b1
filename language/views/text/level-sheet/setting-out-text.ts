import { distance } from '../../../geometry/index.ts';
import { diagonals, threeFourFive } from '../../../setting-out/spots.ts';
import type { Job } from '../../../job/job.ts';
import { printFine, printLength } from '../../../measures/print.ts';
import { levelStyleOf, printLevelWithMark } from '../../../measures/print-level.ts';
import { namedCorners } from '../../../quantities/named-corners.ts';
import type { Colours } from '../colours.ts';
import { table } from '../table.ts';

/**
 * Points and corners of the plan, bends, tapes as read and as fitted, what to tape to set areas out and check them, and
 * where the instrument stood.
 */
export function settingOutText(job: Job, colours: Colours): string[][] {
  const { points, system, areas } = job;
  const print = (length: number): string => printLength(length, system);
  const corners = areas.map(({ outline }) => namedCorners(outline, points));
  const pointTable = table(
    [{ head: 'Point' }, { head: 'x', right: true }, { head: 'y', right: true }, { head: '' }],
    [
      ...points.map(({ name, x, y, fixed }) => [name, print(x), print(y), fixed ? '' : 'worked out']),
      ...corners.flatMap((named, index) =>
        named
          .filter(({ isPoint }) => !isPoint)
          .map(({ name, at }) => [`${areas[index]!.name}, ${name}`, print(at.x), print(at.y), ''])
      )
    ],
    colours
  );
  const diagonalsTable = table(
    [{ head: 'Check' }, { head: 'From' }, { head: 'To' }, { head: 'Tape', right: true }],
    areas.flatMap((area, index) => {
      const named = corners[index]!.filter(({ isPoint }) => isPoint);
      if (named.length < 4) return [];
      return diagonals(named.map(({ at }) => at)).map(({ from, to, length }) => [
        area.name,
        named[from]!.name,
        named[to]!.name,
        print(length)
      ]);
    }),
    colours
  );
  return [
    pointTable,
    bendsText(job, colours),
    tapesText(job, colours),
    diagonalsTable,
    rightAnglesText(job, colours),
    setUpsText(job, colours)
  ].filter(lines => lines.length > 0);
}

/** Arcs are struck from their middles. */
function bendsText(job: Job, colours: Colours): string[] {
  const { areas, system } = job;
  const print = (length: number): string => printLength(length, system);
  const rows = areas.flatMap(({ name, outline, edges }) =>
    outline.flatMap(({ from, arc }, index) =>
      arc === undefined
        ? []
        : [
            [
              `${name}, ${edges[index]!.name}`,
              print(arc.centre.x),
              print(arc.centre.y),
              print(distance(from, arc.centre))
            ]
          ]
    )
  );
  const heads = ['Bend', 'Struck from x', 'y', 'Radius'];
  return table(
    heads.map((head, index) => ({ head, right: index > 0 })),
    rows,
    colours
  );
}

/** What a rod reads on something is the line of sight less its height, while the instrument stands as it stood. */
function setUpsText({ setUps, datum, levelSheet, system }: Job, colours: Colours): string[] {
  if (datum === undefined) return [];
  const style = levelSheet.printed ?? levelStyleOf(system);
  return table(
    [{ head: 'Set-up' }, { head: 'Line of sight' }],
    setUps.map(({ tool, date, sight }) => [
      date === undefined ? tool : `${tool} on ${date}`,
      printLevelWithMark(sight, datum, style)
    ]),
    colours
  );
}

function tapesText({ tapes, system }: Job, colours: Colours): string[] {
  const rows = tapes.map(({ from, to, read, fitted, misfit, byTheOthers, worst }) => [
    `${from} to ${to}`,
    printLength(read.value, system),
    printLength(fitted, system),
    printFine(misfit, system),
    byTheOthers === undefined ? '' : printLength(byTheOthers, system),
    worst && Math.abs((byTheOthers ?? read.value) - read.value) > WORTH_MEASURING ? 'measure this one again first' : ''
  ]);
  const heads = ['Tape', 'Read', 'Fitted', 'Misfit', 'By the others', ''];
  return table(
    heads.map((head, index) => ({ head, right: index > 0 && index < 5 })),
    rows,
    colours
  );
}

/** A tape off by less is as good as tapes are, m: about 1/4 in (common practice). */
const WORTH_MEASURING = 0.006;

/** A right angle at the ends of the first side of each area. */
function rightAnglesText({ areas, points, system }: Job, colours: Colours): string[] {
  const print = (length: number): string => printLength(length, system);
  const rows = areas.flatMap(area => {
    const [first] = area.outline;
    if (first === undefined || first.arc !== undefined) return [];
    const length = distance(first.from, first.to);
    const triangle = threeFourFive(length, system);
    if (triangle === undefined || !namedCorners([first], points)[0]!.isPoint) return [];
    const { along, out, across } = triangle;
    return [[`${area.name}, ${area.edges[0]!.name}`, print(along), print(out), print(across)]];
  });
  const heads = ['Square to', 'Along it', 'Out', 'Then across (3-4-5)'];
  return table(
    heads.map((head, index) => ({ head, right: index > 0 })),
    rows,
    colours
  );
}
