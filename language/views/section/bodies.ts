import type { Layer } from '../../job/job.ts';
import { zOf } from '../../job/heights.ts';
import type { HeightsThere } from '../../quantities/area-heights.ts';
import type { Level, SectionBody, SectionLine } from './section-input.ts';
import { type CutArea, runsOf, type Stretch } from './stretches.ts';

type Reach = readonly [top: (there: HeightsThere) => number, bottom: (there: HeightsThere) => number];

/** Units, bed and stone under them, the topsoil beside, soft spots and boxes. */
export function bodiesOf(stretches: readonly Stretch[], strip: number): SectionBody[] {
  return [
    ...topsoil(stretches, strip),
    ...madeUp(stretches),
    ...laid(stretches),
    ...softSpots(stretches),
    ...boxes(stretches)
  ];
}

function laid(stretches: readonly Stretch[]): SectionBody[] {
  const paved = runsOf(stretches, ({ paved, box }) => (box === undefined ? paved : undefined));
  const dug = runsOf(stretches, ({ dug, box }) => (box === undefined ? dug : undefined));
  const units = paved.flatMap(({ same: { area }, run }, index) => {
    const unit = area.paving?.units[0];
    if (unit === undefined) return [];
    return [body(`${area.key}/unit-${index + 1}`, 'unit', unit.name, run, reach(0, unit.thickness.value))];
  });
  const beds = paved.flatMap(({ same: { area }, run }, index) => layersIn(area.key, index, area.layers, run, true));
  const stone = dug.flatMap(({ same: { area }, run }, index) => layersIn(area.key, index, area.layers, run, false));
  return [...stone, ...beds, ...units];
}

function layersIn(
  key: string,
  index: number,
  layers: readonly Layer[],
  run: readonly Stretch[],
  isBed: boolean
): SectionBody[] {
  const unit = run[0]?.dug?.area.paving?.units[0].thickness.value ?? 0;
  let depth = unit;
  return layers.flatMap(({ role, material, thickness }) => {
    const top = depth;
    depth += thickness.value;
    if ((role === 'bed') !== isBed) return [];
    return [body(`${key}/${role}-${index + 1}`, role, `${role} ${material.name}`, run, reach(top, depth))];
  });
}

function reach(top: number, bottom: number): Reach {
  return [({ finish }) => finish - top, ({ finish }) => finish - bottom];
}

function body(
  key: string,
  role: SectionBody['role'],
  says: string,
  run: readonly Stretch[],
  [top, bottom]: Reach
): SectionBody {
  const above = levelsAlong(run, top);
  const below = levelsAlong(run, bottom);
  return { key, role, says, corners: [...simplified(above), ...simplified(below).reverse()] };
}

function levelsAlong(run: readonly Stretch[], height: (there: HeightsThere) => number): Level[] {
  return run.flatMap(({ from, to, heights }) =>
    heights === undefined
      ? []
      : [
          { at: from, z: height(heights[0]) },
          { at: to, z: height(heights[1]) }
        ]
  );
}

/** Topsoil is stripped where it is dug: it stays beside. */
function topsoil(stretches: readonly Stretch[], strip: number): SectionBody[] {
  if (!(strip > 0)) return [];
  const runs = runsOf(stretches, ({ dug, ground, isClosed }) =>
    dug === undefined && ground !== undefined && !isClosed ? 'topsoil' : undefined
  );
  return runs.map(({ run }, index) => {
    const top = simplified(groundAlong(run));
    const bottom = top.map(({ at, z }) => ({ at, z: z - strip })).reverse();
    return { key: `topsoil-${index + 1}`, role: 'topsoil', says: 'topsoil', corners: [...top, ...bottom] };
  });
}

/** m: what is made up is thicker. */
const THICK = 0.0005;

/** Stone between the stripped ground and the underside of the layers. */
function madeUp(stretches: readonly Stretch[]): SectionBody[] {
  return madeUpRuns(stretches).map(({ same: { area, heights }, run }, index) => {
    const stone = stoneOf(area.layers);
    return body(`${area.key}/made-up-${index + 1}`, 'made-up', `${stone ?? 'stone'}, makes up low ground`, run, [
      ({ underside }) => underside,
      ({ underside, ground }) => Math.min(underside, ground - heights.strip)
    ]);
  });
}

function madeUpRuns(stretches: readonly Stretch[]): ReturnType<typeof runsOf<CutArea>> {
  return runsOf(stretches, one => (one.box === undefined && thicknessMadeUp(one) > THICK ? one.dug : undefined));
}

function thicknessMadeUp({ dug, heights }: Stretch): number {
  if (dug === undefined || heights === undefined) return 0;
  return Math.max(...heights.map(({ underside, ground }) => underside - (ground - dug.heights.strip)));
}

function stoneOf(layers: readonly Layer[]): string | undefined {
  return layers.findLast(({ role }) => role !== 'bed')?.material.name;
}

/** Of each area whose low ground is made up: with what, and how thick at most along the line, m. */
export function madeUpOf(stretches: readonly Stretch[]): { area: string; stone?: string; most: number }[] {
  const runs = madeUpRuns(stretches);
  const areas = [...new Set(runs.map(({ same }) => same.area))];
  return areas.map(area => {
    const stone = stoneOf(area.layers);
    const most = Math.max(
      ...runs.filter(({ same }) => same.area === area).flatMap(({ run }) => run.map(thicknessMadeUp))
    );
    return { area: area.name, most, ...(stone === undefined ? {} : { stone }) };
  });
}

function softSpots(stretches: readonly Stretch[]): SectionBody[] {
  const runs = runsOf(stretches, ({ isSoft, dug }) => (isSoft ? dug : undefined));
  return runs.map(({ same: { heights }, run }, index) =>
    body(`soft-spot-${index + 1}`, 'soft-spot', 'soft spot, dug deeper', run, [
      ({ underside, ground }) => Math.min(underside, ground - heights.strip),
      ({ digBottom }) => digBottom
    ])
  );
}

/** A box reaches through all that is laid; how deep it goes is not known. */
function boxes(stretches: readonly Stretch[]): SectionBody[] {
  return runsOf(stretches, ({ box }) => box).map(({ same: { key, kind, name, lid }, run }) => {
    const known = lid === undefined ? -Infinity : zOf(lid);
    return body(`${key}/cut`, kind === 'drain' ? 'drain' : 'box', `${kind} ${name}`, run, [
      ({ finish }) => Math.max(finish, known),
      ({ digBottom }) => digBottom
    ]);
  });
}

/** Ground, finish and the bottom of the dig. */
export function linesOf(stretches: readonly Stretch[]): SectionLine[] {
  const ground = runsOf(stretches, one => (one.ground === undefined ? undefined : 'ground'));
  const finish = runsOf(stretches, ({ paved, box }) => (box === undefined ? paved : undefined));
  const dug = runsOf(stretches, ({ dug, box }) => (box === undefined ? dug && 'dug' : undefined));
  const all = (role: SectionLine['role'], runs: readonly (readonly Level[])[]): SectionLine[] =>
    runs.map((levels, index) => ({ key: `${role}-${index + 1}`, role, levels }));
  return [
    ...all(
      'dig',
      dug.map(({ run }) => simplified(levelsAlong(run, ({ digBottom }) => digBottom)))
    ),
    ...all(
      'ground',
      ground.map(({ run }) => simplified(groundAlong(run)))
    ),
    ...all(
      'finish',
      finish.map(({ run }) => simplified(levelsAlong(run, ({ finish: z }) => z)))
    )
  ];
}

function groundAlong(run: readonly Stretch[]): Level[] {
  return run.flatMap(({ from, to, ground }) =>
    ground === undefined
      ? []
      : [
          { at: from, z: ground[0] },
          { at: to, z: ground[1] }
        ]
  );
}

/** m: a line off by less is drawn straight. */
const STRAIGHT = 0.0004;

/** A line through as few places as show it: what is straight has its ends alone. */
function simplified(levels: readonly Level[]): Level[] {
  const [first, last] = [levels[0], levels.at(-1)];
  if (first === undefined || last === undefined || levels.length < 3) return [...levels];
  let [worst, most] = [0, STRAIGHT];
  levels.forEach(({ at, z }, index) => {
    const share = last.at === first.at ? 0 : (at - first.at) / (last.at - first.at);
    const off = Math.abs(z - first.z - share * (last.z - first.z));
    if (index > 0 && index < levels.length - 1 && off > most) [worst, most] = [index, off];
  });
  if (worst === 0) return [first, last];
  return [...simplified(levels.slice(0, worst + 1)).slice(0, -1), ...simplified(levels.slice(worst))];
}
