import type { Drawing, Layer, Shape } from '../../drawing/drawing.ts';
import type { Ink } from '../../drawing/inks.ts';
import { circleLoop, cornerLoop, type Side } from '../../geometry/index.ts';
import { PIPES_CAUTION } from '../text/cautions.ts';
import { entry, type LegendEntry } from '../plan/legend.ts';
import { legendShapes } from '../plan/legend-shapes.ts';
import { ground, onGround } from '../plan/page.ts';
import { scaleBar } from '../plan/scale-bar.ts';
import { scaleText } from '../plan/scales.ts';
import { paperShape, titlesOn } from '../plan/sheet-shapes.ts';
import { rowsHeight, stationRows } from './height-rows.ts';
import { markNames } from './mark-names.ts';
import type { BodyRole, SectionBody, SectionInput, SectionLine } from './section-input.ts';
import { type SectionPage, sectionPage } from './section-page.ts';

/** m: the least height of a cut, and free room under and over it as a share. */
const LEAST_SPAN = 0.1;
const ROOM = 0.06;

const INK: Readonly<Record<BodyRole, Ink>> = {
  unit: 'cut-unit',
  bed: 'cut-bed',
  base: 'cut-base',
  'sub-base': 'cut-sub-base',
  'made-up': 'cut-made-up',
  topsoil: 'cut-topsoil',
  'soft-spot': 'cut-soft-spot',
  box: 'cut-box',
  buried: 'below',
  drain: 'drain',
  wall: 'cut-wall',
  edging: 'bar-dark',
  concrete: 'cut-concrete'
};

const LINE_INK: Readonly<Record<SectionLine['role'], Ink>> = {
  ground: 'ground-line',
  finish: 'finish-line',
  dig: 'dig-line',
  beside: 'beside-line'
};

/** Half the width of the ring of a pipe, mm on paper. */
const PIPE = 1;

/** The cut along a line, to scale, its heights told under it. */
export function sectionDrawing(input: SectionInput): Drawing {
  const page = sectionPage(input, spanOf(input), rowsHeight(input));
  const { sheet } = page;
  return {
    title: `${input.title}: section ${input.name}`,
    description: descriptionOf(input),
    sheet,
    layers: [
      { key: 'sheet', shapes: [paperShape(sheet)] },
      { key: 'ends', shapes: endShapes(input, page) },
      { key: 'bodies', shapes: input.bodies.map(body => bodyShape(body, page)) },
      { key: 'lines', shapes: input.lines.map(line => lineShape(line, page)) },
      { key: 'pipes', shapes: pipeShapes(input, page) },
      { key: 'names', shapes: markNames(input.marks, page) },
      { key: 'heights', shapes: stationRows(input, page) },
      { key: 'scale-bar', shapes: scaleBar(sheet, input.system) },
      { key: 'title', shapes: titleShapes(input, page) },
      { key: 'legend', shapes: legendShapes(legendOf(input), sheet, page.legend) }
    ] satisfies Layer[]
  };
}

function spanOf({ bodies, lines, marks }: SectionInput): { low: number; high: number } {
  const levels = [
    ...bodies.flatMap(({ corners }) => corners),
    ...lines.flatMap(line => line.levels),
    ...marks.filter(({ isPipe }) => isPipe)
  ].map(({ z }) => z);
  if (levels.length === 0) return { low: 0, high: LEAST_SPAN };
  const [low, high] = levels.reduce(
    ([least, most], z) => [Math.min(least, z), Math.max(most, z)],
    [Infinity, -Infinity]
  );
  const room = Math.max(LEAST_SPAN, high - low) * ROOM;
  return { low: low - room, high: Math.max(high, low + LEAST_SPAN) + room };
}

function descriptionOf({ name, marks, layers }: SectionInput): string {
  const met = marks.map(({ text }) => text);
  return [
    `Section ${name}.`,
    ...(met.length === 0 ? [] : [`It meets ${met.join('; ')}.`]),
    ...layers.map(one => `${one}.`)
  ].join(' ');
}

function bodyShape({ key, role, says, corners }: SectionBody, page: SectionPage): Shape {
  return { kind: 'outlines', key, ink: INK[role], loops: [cornerLoop(corners.map(page.place))], says };
}

const LINE_SAYS: Readonly<Record<SectionLine['role'], string>> = {
  ground: 'ground today',
  finish: 'finish',
  dig: 'bottom of the dig',
  beside: 'what lies there already, at the heights taken'
};

function lineShape({ key, role, levels }: SectionLine, page: SectionPage): Shape {
  const places = levels.map(page.place);
  const sides = places.slice(1).map((to, index): Side => ({ from: places[index]!, to }));
  return { kind: 'line', key, ink: LINE_INK[role], sides, says: LINE_SAYS[role] };
}

function pipeShapes({ marks }: SectionInput, page: SectionPage): Shape[] {
  return marks
    .filter(({ isPipe }) => isPipe)
    .map(mark => ({
      kind: 'outlines',
      key: `${mark.key}/ring`,
      ink: 'dot',
      loops: [circleLoop(page.place(mark), ground(page.sheet, PIPE))],
      says: mark.text
    }));
}

/** Upright lines where the section begins and ends, through the cut. */
function endShapes({ length }: SectionInput, page: SectionPage): Shape[] {
  const { sheet, namesFoot, rowsTop } = page;
  return [0, length].map((at, index): Shape => {
    const { x } = page.place({ at, z: 0 });
    const from = { x, y: onGround(sheet, 0, rowsTop).y };
    const to = { x, y: onGround(sheet, 0, namesFoot).y };
    return { kind: 'line', key: index === 0 ? 'end/start' : 'end/end', ink: 'drop', sides: [{ from, to }] };
  });
}

function titleShapes({ title, name, system }: SectionInput, { sheet, times }: SectionPage): Shape[] {
  const lengths = `lengths ${scaleText(sheet.scale, system)} when printed at full size on ${sheet.format} paper`;
  const heights = times === 1 ? 'heights to the same scale' : `heights drawn ${times} times as large`;
  return titlesOn(sheet, `${title}: section ${name}`, `Section, ${lengths}, ${heights}`);
}

const BODY_WORDS: Readonly<Record<BodyRole, string>> = {
  unit: 'units',
  bed: 'bed',
  base: 'base',
  'sub-base': 'sub-base',
  'made-up': 'low ground made up with stone',
  topsoil: 'topsoil that stays',
  'soft-spot': 'soft spot, dug deeper and filled',
  box: 'box or pit: how deep it goes is not told',
  buried: 'box, cut down and buried',
  drain: 'drain',
  wall: 'wall: its thickness is not told',
  edging: 'edging',
  concrete: 'concrete'
};

function legendOf({ bodies, lines, marks, layers, missing, heights }: SectionInput): LegendEntry[] {
  const roles = (Object.keys(BODY_WORDS) as BodyRole[]).filter(role => bodies.some(body => body.role === role));
  const drawn = (['finish', 'ground', 'dig', 'beside'] as const).filter(role => lines.some(line => line.role === role));
  const hasPipes = marks.some(({ isPipe }) => isPipe);
  return [
    ...drawn.map(role => entry(LINE_SAYS[role], { sign: { stroke: LINE_INK[role] } })),
    ...roles.map(role => entry(BODY_WORDS[role], { sign: { ink: INK[role] } })),
    ...(hasPipes ? [entry('pipe, by the depth that is told', { sign: { dot: 'round' } })] : []),
    ...layers.map(line => entry(line)),
    ...(heights === '' ? [] : [entry(heights)]),
    ...missing.map(line => entry(`Not shown: ${line}.`)),
    ...(hasPipes ? [entry(PIPES_CAUTION)] : []),
    entry('Before taking measures from a print, check the bar with a rule.')
  ];
}
