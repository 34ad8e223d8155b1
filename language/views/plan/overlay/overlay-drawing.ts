import type { Drawing } from '../../../drawing/drawing.ts';
import { lineBox } from '../../../drawing/taken.ts';
import { chordCorners } from '../../../drawing/chord-corners.ts';
import { around, type Bounds, boundsOf } from '../../../geometry/bounds.ts';
import type { System } from '../../../job/job.ts';
import { heightOf } from '../legend.ts';
import { legendShapes } from '../legend-shapes.ts';
import { pageFor } from '../page.ts';
import type { PlanArea, PlanInput } from '../plan-input.ts';
import { scaleBar } from '../scale-bar.ts';
import { scaleText } from '../scales.ts';
import { paperShape, titlesOn } from '../sheet-shapes.ts';
import { type Surroundings, surroundingsOf } from '../surroundings.ts';
import { overlayLabels } from './overlay-labels.ts';
import { overlayLegend } from './overlay-legend.ts';
import { overlayShapes } from './overlay-shapes.ts';
import { overlaySentences } from './overlay-text.ts';
import { placesOf } from './mark-changes.ts';
import { type PlanChanges, planChanges } from './plan-changes.ts';

export interface OverlayWords {
  /** Of the job. */
  readonly title: string;
  /** What is compared: `quote-1 to the working copy`. */
  readonly between: string;
  readonly system: System;
}

/**
 * Two plans of a job over each other, to scale: what goes, comes and stays, told by line and hatch and in words. Units are
 * left out, so that it stays small whatever the job. Of a job that is new or gone there is one plan.
 */
export function overlayDrawing(
  before: PlanInput | undefined,
  after: PlanInput | undefined,
  { title, between, system }: OverlayWords
): Drawing {
  const changes = planChanges(before, after);
  const plan = boundsAround(changes);
  // Which signs are drawn follows from what changes, at any scale but for arrows too short to show.
  const full = { plan, system, narrowest: Infinity };
  const drawnAt = (legend: number) => {
    const page = pageFor({ ...full, legend });
    const layers = overlayShapes(changes, page.sheet, system);
    const entries = overlayLegend(
      changes,
      layers.flatMap(({ shapes }) => shapes)
    );
    return { page, layers, entries };
  };
  const { page, layers, entries } = drawnAt(heightOf(drawnAt(LEGEND_AT_FIRST).entries));
  const { sheet, legend } = page;
  const surroundings = surroundingsOf(wallsOf(changes), page);
  takeLines(changes, surroundings);
  const whole = `${title} · ${between}`;
  const scale = `${scaleText(sheet.scale, system)} when printed at full size on ${sheet.format} paper`;
  return {
    title: whole,
    description: overlaySentences(changes, system).join(' '),
    sheet,
    layers: [
      { key: 'sheet', shapes: [paperShape(sheet)] },
      ...layers,
      ...overlayLabels(changes, system, surroundings),
      { key: 'scale-bar', shapes: scaleBar(sheet, system) },
      { key: 'title', shapes: titlesOn(sheet, title, `${between}: plan before and after over each other, ${scale}`) },
      { key: 'legend', shapes: legendShapes(entries, sheet, legend) }
    ]
  };
}

/** mm on paper, to choose a first page by. */
const LEGEND_AT_FIRST = 60;

function boundsAround({ areas, marks, points }: PlanChanges): Bounds {
  const outlines = areas.flatMap(({ before, after }) => [before, after].flatMap(area => area?.outline ?? []));
  const places = [
    ...marks.flatMap(({ before, after }) => [before, after].flatMap(mark => (mark ? placesOf(mark) : []))),
    ...points.flatMap(({ before, after }) => [before, after].flatMap(point => point?.at ?? []))
  ];
  const all = [
    ...(outlines.length === 0 ? [] : [boundsOf(outlines)]),
    ...places.map(({ x, y }): Bounds => ({ left: x, right: x, bottom: y, top: y }))
  ];
  return all.length === 0 ? { left: 0, right: 1, bottom: 0, top: 1 } : all.reduce(around);
}

/** No text stands across an outline, old or new. */
function wallsOf({ areas }: PlanChanges): PlanArea[] {
  return areas.flatMap(({ before, after }) => [before, after].flatMap(area => area ?? []));
}

/** Nor across a line of what stands or lies there. */
function takeLines({ marks }: PlanChanges, { walls }: Surroundings): void {
  for (const { before, after } of marks) {
    for (const side of [before, after].flatMap(mark => [...(mark?.loops ?? []), ...(mark?.lines ?? [])].flat())) {
      const corners = [...chordCorners([side]), side.to];
      corners.slice(1).forEach((to, index) => walls.add(lineBox(corners[index]!, to)));
    }
  }
}
