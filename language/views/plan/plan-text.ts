import type { System } from '../../job/job.ts';
import { boundsOf } from '../../geometry/bounds.ts';
import { pointOnPlan } from '../../drawing/on-plan.ts';
import type { Point } from '../../geometry/index.ts';
import { printLength } from '../../measures/print.ts';
import { CUTTING_CAUTION, PIPES_CAUTION } from '../text/cautions.ts';
import type { Colours } from '../text/colours.ts';
import { plainLine } from '../text/plain-line.ts';
import { table } from '../text/table.ts';
import { countsOf, unitText } from './counts.ts';
import type { PlanArea, PlanInput, PlanKeptOut, PlanStart, PlanUnit } from './plan-input.ts';
import type { PlanLevel, PlanSite } from './plan-site.ts';
import { withoutSetOut } from './thing-shapes.ts';
import { meetsText, sideName, sidesTold } from './side-text.ts';

/** What the plan shows, in words: each area with its sides, what is kept out, where laying begins, its units and cuts. */
export function planText(input: PlanInput, colours: Colours): string {
  const cuts = input.areas.some(({ parts }) => parts.some(({ laid }) => laid.cuts.length > 0));
  return [
    colours.strong(plainLine(`Plan of ${input.title}`)),
    ...input.areas.map(area => areaText(area, input, colours)),
    ...thingsBlock(input, colours),
    ...(input.missing.length === 0 ? [] : [missingLines(input.missing, colours)]),
    ...(cuts ? [CUTTING_CAUTION] : [])
  ].join('\n\n');
}

function missingLines(missing: readonly string[], colours: Colours): string {
  return [colours.strong('No numbers'), ...missing.map(line => `  ${plainLine(line)}`)].join('\n');
}

function areaText(area: PlanArea, { units, system, site }: PlanInput, colours: Colours): string {
  const blocks = [
    sidesTable(area, system, colours),
    cornersTable(area, system, colours),
    curvesTable(area, system, colours),
    keptOutTable(area, system, colours),
    levelsTable(area, site, colours),
    fallLines(area, site),
    unitsTable(area, units, colours),
    cutsTable(area, units, system, colours)
  ];
  const shown = blocks.filter(lines => lines.length > 0).map(lines => lines.map(line => `  ${line}`).join('\n'));
  const { name, noNumbers } = area;
  const told = noNumbers === undefined ? [] : [`  No numbers: ${plainLine(noNumbers)}.`];
  const head = [colours.strong(`Area ${name}`), ...told, `  ${placesText(area, system)}`];
  return [...head, ...shown].join('\n\n');
}

/** From where places are told, and which way. */
function placesText(area: PlanArea, system: System): string {
  const { start } = area;
  if (start === undefined) return 'Places are told from the lower left of the area: to the right, and up on the plan.';
  const { direction, mirrored, inRings } = start;
  const told =
    !inRings && runsAlongSide(area, direction)
      ? `Places are told from there: along the courses, and out to the ${mirrored ? 'right' : 'left'} of them.`
      : 'Places are told from there: to the right, and up on the plan.';
  return `${startText(start, system)} ${told}`;
}

/** Where laying begins, and which way the courses run. */
export function startText({ x, y, direction, inRings }: PlanStart, system: System): string {
  const at = `(${printLength(x, system)}, ${printLength(y, system)}) on the plan`;
  if (inRings) return `The rings lie about ${at}.`;
  const degrees = Math.round(((direction * 180) / Math.PI) * 10) / 10;
  const way = degrees === 0 ? 'to the right' : `turned ${degrees} degrees anticlockwise from the right`;
  return `Laying begins at ${at}, its courses ${way}.`;
}

/** No tape runs at a slant over the paving: only along a side are places told along the courses. */
function runsAlongSide({ outline }: PlanArea, direction: number): boolean {
  return outline.some(
    ({ from, to, arc }) =>
      arc === undefined && Math.abs(Math.sin(Math.atan2(to.y - from.y, to.x - from.x) - direction)) < SAME_WAY
  );
}

/** Radians. */
const SAME_WAY = 1e-6;

function sidesTable(area: PlanArea, system: System, colours: Colours): string[] {
  const rows = sidesTold(area).map(({ area: told, index }) => {
    const side = told.sides[index]!;
    return [
      sideName(told, index),
      printLength(side.length, system),
      meetsText(side) === '' ? 'not said' : meetsText(side)
    ];
  });
  return rowsUnder(['Side', 'Length', 'Meets'], rows, colours);
}

/** Corners counted from nought of the job, as its points are. */
function cornersTable({ settingOut }: PlanArea, system: System, colours: Colours): string[] {
  const rows = (settingOut?.corners ?? []).map(({ name, at }) => [
    name,
    printLength(at.x, system),
    printLength(at.y, system)
  ]);
  return rowsUnder(['Corner', 'x on the plan', 'y on the plan'], rows, colours, 1);
}

function curvesTable({ settingOut }: PlanArea, system: System, colours: Colours): string[] {
  const rows = (settingOut?.curves ?? []).map(({ side, centre, radius, from, to }) => [
    side,
    from === to ? 'all round' : `${from} to ${to}`,
    `(${printLength(centre.x, system)}, ${printLength(centre.y, system)})`,
    printLength(radius, system)
  ]);
  return rowsUnder(['Curve', 'From where to where', 'Centre on the plan', 'Radius'], rows, colours, 3);
}

function keptOutTable(area: PlanArea, system: System, colours: Colours): string[] {
  const lids = area.keptOut.some(({ lid }) => lid !== undefined);
  const rows = area.keptOut.map(one => {
    const { kind, name, lid } = one;
    const { middle, size } = keptOutText(one, area, system);
    return [`${kind} ${name}`, middle, size, ...(lids ? [lid ?? ''] : [])];
  });
  return rowsUnder([kept(area), 'Its middle', 'Over all', ...(lids ? ['Lid'] : [])], rows, colours);
}

/** Where the middle of what is kept out lies, told from the start of the laying, and its size over all. */
export function keptOutText(
  { outline }: Pick<PlanKeptOut, 'outline'>,
  area: PlanArea,
  system: System
): { middle: string; size: string } {
  const { left, right, bottom, top } = boundsOf(outline);
  return {
    middle: placeText({ x: (left + right) / 2, y: (bottom + top) / 2 }, area, system),
    size: `${printLength(right - left, system)} x ${printLength(top - bottom, system)}`
  };
}

/** Finish, and where they are known today's ground and the bottom of the dig. */
function levelsTable({ key }: PlanArea, site: PlanSite | undefined, colours: Colours): string[] {
  const rows = site?.levels.find(({ area }) => area === key)?.rows ?? [];
  const known = [
    { head: 'Finish', of: ({ finish }: PlanLevel) => finish },
    { head: 'Ground today', of: ({ ground }: PlanLevel) => ground },
    { head: 'Bottom of dig', of: ({ digBottom }: PlanLevel) => digBottom }
  ].filter(({ of }) => rows.some(row => of(row) !== undefined));
  const heads = ['Heights at', ...known.map(({ head }) => head)];
  return rowsUnder(
    heads,
    rows.map(row => [row.at, ...known.map(({ of }) => of(row) ?? '')]),
    colours,
    1
  );
}

function fallLines({ key }: PlanArea, site: PlanSite | undefined): string[] {
  return (site?.falls ?? [])
    .filter(({ area }) => area === key)
    .flatMap(({ places: [place] }) => (place === undefined ? [] : [`Falls ${place.text} ${wayText(place.down)}.`]))
    .filter((line, index, all) => all.indexOf(line) === index);
}

/** Where a fall leads on the plan, from the right anticlockwise. */
const WAYS = ['right', 'top right', 'top', 'top left', 'left', 'bottom left', 'bottom', 'bottom right'];

export function wayText(turn: number): string {
  const eighth = Math.round(turn / (Math.PI / 4));
  return `towards the ${WAYS[(eighth + 16) % 8]!} of the plan`;
}

/** What stands or lies there besides, and where from the lower left of the plan. */
function thingsBlock({ site, system }: PlanInput, colours: Colours): string[] {
  if (site === undefined) return [];
  const points = site.points.flatMap(({ name, at, heights }) =>
    name === undefined
      ? []
      : [[name, `(${printLength(at.x, system)}, ${printLength(at.y, system)})`, heights.join(', ')]]
  );
  const things = withoutSetOut(site).things.map(({ told }) => `  ${plainLine(told)}`);
  const hasPipes = site.things.some(({ kind }) => kind === 'pipe');
  return [
    ...(points.length === 0 ? [] : [rowsUnder(['Point', 'On the plan', 'Finish'], points, colours).join('\n')]),
    ...(things.length === 0 ? [] : [[colours.strong('Also on the plan'), ...things].join('\n')]),
    ...(site.heights === undefined ? [] : [site.heights]),
    ...(hasPipes ? [PIPES_CAUTION] : [])
  ];
}

function kept({ keptOut }: PlanArea): string {
  return keptOut.some(({ kind }) => kind === 'inset') ? 'Kept out of the field' : 'Kept out';
}

function unitsTable({ parts }: PlanArea, units: readonly PlanUnit[], colours: Colours): string[] {
  const rows = parts.flatMap(part =>
    countsOf(part, units).map(({ unit, whole, cut }) => [part.name, unitText(unit), String(whole), String(cut)])
  );
  return rowsUnder(['Part', 'Unit', 'Whole', 'Cut'], rows, colours, 2);
}

/** Cuts by their numbers, with the place of each on a line of its own. */
function cutsTable(area: PlanArea, units: readonly PlanUnit[], system: System, colours: Colours): string[] {
  const cuts = area.parts.flatMap(part =>
    part.laid.cuts.map(({ unit, at, pieces }, index) => {
      const name = units.find(({ key }) => key === unit)?.name ?? '';
      const { left, right, bottom, top } = boundsOf(pieces.flatMap(({ outline }) => outline));
      const middle = pointOnPlan({ x: (left + right) / 2, y: (bottom + top) / 2 }, at);
      const what = pieces.length > 1 ? `${name}, ${pieces.length} pieces` : name;
      return { number: part.numbers[index]!, cells: [what, part.name, placeText(middle, area, system)] };
    })
  );
  const sorted = cuts.sort((a, b) => a.number - b.number);
  const rows = sorted.map(({ number, cells }, index) => [
    sorted[index - 1]?.number === number ? '' : String(number),
    ...cells
  ]);
  return rowsUnder(['Cut', 'Unit', 'Part', 'Its middle'], rows, colours);
}

/** A place from the start of the laying: along the courses, and out of the first of them; or to the right, and up. */
function placeText(place: Point, area: PlanArea, system: System): string {
  const { left, bottom } = boundsOf(area.outline);
  const start = area.start ?? { x: left, y: bottom, direction: 0, mirrored: false };
  const right = place.x - start.x;
  const up = place.y - start.y;
  const { direction, mirrored } = start;
  const toward = (length: number, word: string, back: string): string =>
    `${printLength(Math.abs(length), system)} ${length < 0 ? back : word}`;
  if (area.start === undefined || area.start.inRings || !runsAlongSide(area, direction))
    return `${toward(right, 'right', 'left')}, ${toward(up, 'up', 'down')}`;
  const along = right * Math.cos(direction) + up * Math.sin(direction);
  const out = (up * Math.cos(direction) - right * Math.sin(direction)) * (mirrored ? -1 : 1);
  return `${printLength(along, system)} along, ${printLength(out, system)} out`;
}

/** A table, its first columns words and what follows after `words` numbers. */
function rowsUnder(
  heads: readonly string[],
  rows: readonly (readonly string[])[],
  colours: Colours,
  words = heads.length
): string[] {
  if (rows.length === 0) return [];
  const columns = heads.map((head, index) => ({ head, right: index >= words }));
  return table(
    columns,
    rows.map(row => row.map(plainLine)),
    colours
  );
}
