import type { Drawing, Layer, Shape, Sheet } from '../../drawing/drawing.ts';
import { around, boundsOf, type Bounds } from '../../geometry/bounds.ts';
import { edgingShapes, groundShapes, keptOutShapes, outlineShape } from './area-shapes.ts';
import { descriptionOf } from './counts.ts';
import { type Numbered, numberedPieces, placeNumbers } from './cut-numbers.ts';
import { heightOf, type LegendEntry, legendEntries, notesOf } from './legend.ts';
import { legendShapes } from './legend-shapes.ts';
import { areaNames, keptOutNames } from './names.ts';
import { fallArrows } from './fall-arrows.ts';
import { type Page, pageFor } from './page.ts';
import type { PlanInput } from './plan-input.ts';
import { pointLabels } from './point-labels.ts';
import { scaleBar } from './scale-bar.ts';
import { scaleText } from './scales.ts';
import { paperShape, titlesOn } from './sheet-shapes.ts';
import { placeSides } from './side-labels.ts';
import { startMarks } from './start-marks.ts';
import { surroundingsOf } from './surroundings.ts';
import { tangentTicks } from './tangent-ticks.ts';
import { thingLabels } from './thing-labels.ts';
import {
  boundsOfSite,
  crossShapes,
  dotShapes,
  outletsFirst,
  setOutShapes,
  takeThings,
  thingsOver,
  thingsUnder,
  withoutSetOut
} from './thing-shapes.ts';
import { cutShapes, wholeShapes } from './unit-shapes.ts';

/** How often the page is chosen anew for a legend that grew: with more words the scale may change, and the notes with it. */
const TRIES = 3;

/** The plan of a job: every unit laid, cuts numbered, sides told, to scale on one sheet. */
export function planDrawing(input: PlanInput): Drawing {
  const pieces = input.areas.flatMap(numberedPieces);
  const entries = legendEntries(input);
  let legend = heightOf(entries);
  for (let attempt = 1; ; attempt++) {
    const page = pageFor({ plan: boundsAround(input), system: input.system, legend, narrowest: narrowestOf(input) });
    const placed = placeTexts(input, pieces, page);
    const all = [...entries, ...placed.notes];
    if (heightOf(all) <= legend || attempt === TRIES) return drawn(input, page, placed.layers, all);
    legend = heightOf(all);
  }
}

function boundsAround({ areas, site }: PlanInput): Bounds {
  const outlines = areas.filter(({ outline }) => outline.length > 0).map(({ outline }) => boundsOf(outline));
  const all = site === undefined ? outlines : [...outlines, ...boundsOfSite(withoutSetOut(site))];
  return all.length === 0 ? { left: 0, right: 1, bottom: 0, top: 1 } : all.reduce(around);
}

function narrowestOf({ units, areas }: PlanInput): number {
  const laid = new Set(areas.flatMap(({ parts }) => parts.flatMap(part => part.laid.cuts.map(cut => cut.unit))));
  return Math.min(...units.filter(({ key }) => laid.has(key)).map(({ length, width }) => Math.min(length, width)));
}

interface TextsPlaced {
  readonly layers: readonly Layer[];
  readonly notes: readonly LegendEntry[];
}

/** All that is written on the plan, nothing over another: what has the least choice first. */
function placeTexts({ areas, system, site }: PlanInput, pieces: readonly Numbered[], page: Page): TextsPlaced {
  const around = surroundingsOf(areas, page);
  const within = keptOutNames(areas, around);
  const start = startMarks(areas, around);
  const ticks = tangentTicks(areas, around);
  const numbers = placeNumbers(pieces, around);
  const [outlets, others] = outletsFirst(site?.things ?? []);
  const outletNames = thingLabels(outlets, around);
  if (site) takeThings(withoutSetOut(site), page.sheet, around.taken);
  const setOut = site ? setOutShapes(site, around) : [];
  const points = site ? pointLabels(site.points, around) : [];
  const falls = site ? fallArrows(site.falls, around) : [];
  const sides = placeSides(areas, system, around);
  const things = [...outletNames, ...thingLabels(others, around)];
  const names = areaNames(areas, around);
  return {
    layers: [
      { key: 'start', shapes: start },
      { key: 'leaders', shapes: [...numbers.leaders, ...within.leaders] },
      { key: 'numbers', shapes: numbers.numbers },
      ...filled('set-out', setOut),
      ...filled('ticks', ticks),
      ...filled('points', points),
      ...filled('falls', falls),
      { key: 'sides', shapes: sides.shapes },
      ...filled('thing-names', things),
      { key: 'names', shapes: [...within.labels, ...names] }
    ],
    notes: notesOf(sides.marked, numbers)
  };
}

/** A layer that is there where it holds something. */
function filled(key: string, shapes: readonly Shape[]): Layer[] {
  return shapes.length === 0 ? [] : [{ key, shapes }];
}

function drawn(
  input: PlanInput,
  { sheet, legend }: Page,
  texts: readonly Layer[],
  entries: readonly LegendEntry[]
): Drawing {
  const { areas, units, system, site } = input;
  const things = site?.things ?? [];
  const ofAreas = (key: string, shapesOf: (area: PlanInput['areas'][number]) => readonly Shape[]): Layer => ({
    key,
    shapes: areas.flatMap(shapesOf)
  });
  return {
    title: input.title,
    description: descriptionOf(input),
    sheet,
    layers: [
      { key: 'sheet', shapes: [paperShape(sheet)] },
      ofAreas('edging', edgingShapes),
      ofAreas('ground', groundShapes),
      ofAreas('whole', area => wholeShapes(area, units, sheet.scale)),
      ofAreas('cuts', area => cutShapes(area, units, sheet.scale)),
      ...filled('things-under', thingsUnder(things, sheet)),
      ofAreas('kept-out', keptOutShapes),
      ofAreas('outlines', area => [outlineShape(area)]),
      ...filled('things', thingsOver(things, sheet)),
      ...filled('crosses', site ? [...crossShapes(site, sheet), ...dotShapes(withoutSetOut(site).things, sheet)] : []),
      ...texts,
      { key: 'scale-bar', shapes: scaleBar(sheet, system) },
      { key: 'title', shapes: titleShapes(input, sheet) },
      { key: 'legend', shapes: legendShapes(entries, sheet, legend) }
    ]
  };
}

function titleShapes({ title, areas, system }: PlanInput, sheet: Sheet): Shape[] {
  const of = areas.length === 1 ? ` of ${areas[0]!.name}` : '';
  return titlesOn(
    sheet,
    title,
    `Plan${of}, ${scaleText(sheet.scale, system)} when printed at full size on ${sheet.format} paper`
  );
}
