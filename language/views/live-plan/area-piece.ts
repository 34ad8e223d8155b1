import { chordCorners } from '../../drawing/chord-corners.ts';
import { BOLD, LETTER_HEIGHT, textWidth } from '../../drawing/lettering.ts';
import { roomFor } from '../../drawing/room.ts';
import { boundsOf } from '../../geometry/index.ts';
import { middleOf } from '../../geometry/moment.ts';
import type { Area, System, Unit } from '../../job/job.ts';
import { printAs, printThickness } from '../../measures/print.ts';
import type { LevelDatum } from '../../measures/print-level.ts';
import type { AreaLaid } from '../../quantities/area-result.ts';
import type { AreaQuantities } from '../../quantities/contract.ts';
import { unitsOf } from '../../quantities/units-of-area.ts';
import { isDrawn } from '../plan/area-shapes.ts';
import { countsOf, countText } from '../plan/counts.ts';
import type { PlanArea, PlanKeptOut, PlanUnit } from '../plan/plan-input.ts';
import type { PlanFall } from '../plan/plan-site.ts';
import { keptOutText, startText } from '../plan/plan-text.ts';
import { rowsOf } from '../rows.ts';
import { cutKindThing } from './cut-kinds.ts';
import { edgesOf } from './edge-things.ts';
import { fallMarks } from './fall-marks.ts';
import { cornersOf, mm, mmBounds, mmPoint, turnOf } from './in-millimetres.ts';
import { type LaidShapes, unitKey } from './laid-shapes.ts';
import type { LiveShape, LiveThing } from './live-plan.ts';
import { fact, type Piece, type UnledThing } from './piece.ts';

/** What an area is drawn from. */
export interface AreaToDraw {
  readonly area: Area;
  readonly plan: PlanArea;
  readonly units: readonly PlanUnit[];
  readonly falls: readonly PlanFall[];
  readonly numbers?: AreaQuantities;
  readonly laid?: AreaLaid;
  readonly shapes?: LaidShapes;
  readonly system: System;
  readonly datum?: LevelDatum;
  /** What is told of its heights at once, where all are the same. */
  readonly level?: string;
}

/** An area with its units, edges, what is kept out of it, where laying begins and how it falls. */
export function areaPiece(to: AreaToDraw): Piece {
  const { area, plan, system, numbers, shapes, datum, falls, level } = to;
  const edges = edgesOf(area, plan, numbers, system, datum);
  const kept = plan.keptOut.filter(isDrawn);
  const marks = fallMarks(falls, plan);
  return {
    key: area.key,
    name: `area ${area.name}`,
    layers: {
      edging: edges.edging,
      ground: plan.parts.length === 0 ? [] : [groundOf(plan)],
      whole: shapes?.wholes ?? [],
      cuts: shapes?.cuts ?? [],
      'kept-out': kept.map(keptOutShape),
      edges: edges.lines,
      dimensions: edges.lengths,
      falls: marks.shapes,
      starts: startShapes(plan),
      names: [...areaName(plan, level), ...kept.flatMap(keptOutName)]
    },
    things: [
      areaThing(to),
      ...unitThings(to),
      ...cutThings(to),
      ...edges.things,
      ...plan.keptOut.filter(({ kind }) => kind === 'inset').map(inset => insetThing(inset, plan, system)),
      ...startThings(plan, system),
      ...marks.things
    ],
    from: { area: plan, units: to.units, falls }
  };
}

function groundOf({ key, outline }: PlanArea): LiveShape {
  return {
    kind: 'path',
    key: `${key}/ground`,
    content: 'units',
    ink: 'ground',
    thing: key,
    loops: [cornersOf(outline)],
    closed: true
  };
}

// ---- the area ----

function areaThing({ area, plan, units, numbers, system, level }: AreaToDraw): UnledThing {
  const counts = plan.parts.flatMap(part => countsOf(part, units));
  const sum = (of: 'whole' | 'cut'): number => counts.reduce((total, count) => total + count[of], 0);
  const told = (owner: 'area' | 'dig' | 'finish', of: object | undefined): LiveThing['facts'] =>
    of === undefined ? [] : rowsOf(owner, of, system).map(({ words, value }) => [words, value]);
  // Its heights stand at points and edges, its way down at its arrows.
  const { height: _height, direction: _direction, ...finish } = numbers?.finish ?? {};
  return {
    key: area.key,
    kind: 'Areas',
    name: area.name,
    facts: [
      ...fact('No numbers', plan.noNumbers),
      ...told('area', numbers),
      ...(counts.length === 0 ? [] : ([['Units', countText({ whole: sum('whole'), cut: sum('cut') })]] as const)),
      ...fact('Bond', area.paving?.bond.name),
      ...area.layers.map(
        ({ role, material, thickness }) =>
          [capital(role), `${material.name}, ${printThickness(thickness.value, system)}`] as const
      ),
      ...(numbers === undefined || numbers.dig.deepest === 0 ? [] : told('dig', numbers.dig)),
      ...fact('Finish', level),
      ...told('finish', finish),
      ...fact('Traffic', area.traffic.join(', '))
    ],
    bounds: mmBounds(boundsOf(area.outline)),
    area: area.key
  };
}

function capital(word: string): string {
  return word.charAt(0).toUpperCase() + word.slice(1);
}

/** The name in the roomiest place, with the room that it has there, and the height of an area that is level. */
function areaName({ key, name, outline, keptOut, noNumbers }: PlanArea, level: string | undefined): LiveShape[] {
  const text = noNumbers === undefined ? name : `${name}: no numbers`;
  const box = { width: textWidth(text) * BOLD, height: LETTER_HEIGHT };
  const corners = [outline, ...keptOut.map(one => one.outline)].map(chordCorners);
  const room = roomFor(corners, box, 0);
  const at = room?.at ?? middleOf(outline);
  const shared = {
    kind: 'text',
    thing: key,
    x: mm(at.x),
    y: mm(at.y),
    turn: 0,
    anchor: 'middle',
    room: mm(box.width * (room?.times ?? 0))
  } as const;
  return [
    { ...shared, key: `${key}/name`, content: 'names', ink: 'strong', text, rank: 1 },
    ...(level === undefined
      ? []
      : [{ ...shared, key: `${key}/level`, content: 'heights', ink: 'text', text: level, rank: 2 } as const])
  ];
}

// ---- units and cuts ----

function unitThings({ area, plan, units, numbers, shapes, system }: AreaToDraw): UnledThing[] {
  const laid = unitsOf(area);
  return units.flatMap(unit => {
    const counts = plan.parts.flatMap(part => countsOf(part, [unit]));
    const bounds = shapes?.reach.get(unit.key);
    const full = laid.find(({ key }) => key === unit.key);
    if (counts.length === 0 || bounds === undefined || full === undefined) return [];
    const sum = (of: 'whole' | 'cut'): number => counts.reduce((total, count) => total + count[of], 0);
    const toBuy = (numbers?.laying ?? []).flatMap(row => (row.unit === unit.name ? (row.toBuy ?? []) : []));
    return [
      {
        key: unitKey(area.key, unit.key),
        kind: 'Units',
        name: `${unit.name} in ${area.name}`,
        facts: [
          ['Size', sizeText(full, system)] as const,
          ...fact('Colour', unit.colour),
          ['Whole', String(sum('whole'))] as const,
          ['Cut', String(sum('cut'))] as const,
          ...(toBuy.length === 0
            ? []
            : ([
                [
                  'To buy',
                  printAs(
                    'count',
                    toBuy.reduce((a, b) => a + b),
                    system
                  )
                ]
              ] as const))
        ],
        bounds,
        area: area.key
      }
    ];
  });
}

/** Length, width and thickness, as the unit is measured. */
function sizeText({ length, width, thickness }: Unit, system: System): string {
  return [length, width, thickness].map(({ value }) => printThickness(value, system)).join(' x ');
}

function cutThings({ area, laid, shapes, system }: AreaToDraw): UnledThing[] {
  if (laid === undefined || shapes === undefined) return [];
  return laid.cuts.list.groups.map((group, index) => {
    const { key, bounds } = shapes.kinds[index]!;
    return cutKindThing(area, group, key, bounds, system);
  });
}

// ---- kept out ----

function keptOutShape({ key, kind, outline }: PlanKeptOut): LiveShape {
  return {
    kind: 'path',
    key: `${key}/outline`,
    content: 'kept-out',
    ink: kind === 'inset' ? 'inset' : 'kept-out',
    thing: key,
    loops: [cornersOf(outline)],
    closed: true
  };
}

function keptOutName({ key, kind, name, outline }: PlanKeptOut): LiveShape[] {
  const text = `${kind} ${name}`;
  const { left, right } = boundsOf(outline);
  const at = middleOf(outline);
  return [
    {
      kind: 'text',
      key: `${key}/name`,
      content: 'names',
      ink: 'strong',
      thing: key,
      x: mm(at.x),
      y: mm(at.y),
      text,
      turn: 0,
      anchor: 'middle',
      room: mm(right - left),
      rank: 5
    }
  ];
}

function insetThing(inset: PlanKeptOut, plan: PlanArea, system: System): UnledThing {
  const { middle, size } = keptOutText(inset, plan, system);
  const at = middleOf(inset.outline);
  return {
    key: inset.key,
    kind: 'Insets',
    name: `inset ${inset.name}`,
    facts: [
      ['Over all', size],
      ['Its middle from the start', middle]
    ],
    bounds: mmBounds(boundsOf(inset.outline)),
    area: plan.key,
    handle: { x: mm(at.x), y: mm(at.y) }
  };
}

// ---- where laying begins ----

function startShapes({ key, start }: PlanArea): LiveShape[] {
  if (start === undefined) return [];
  const { x, y, direction, inRings } = start;
  const at = {
    key: `${key}/start`,
    content: 'starts',
    ink: 'start',
    thing: `${key}/start`,
    x: mm(x),
    y: mm(y)
  } as const;
  return [
    inRings ? { kind: 'mark', ...at, sign: 'centre' } : { kind: 'mark', ...at, sign: 'start', turn: turnOf(direction) }
  ];
}

function startThings({ key, name, start }: PlanArea, system: System): UnledThing[] {
  if (start === undefined) return [];
  return [
    {
      key: `${key}/start`,
      kind: 'Starts',
      name: `start of ${name}`,
      facts: [['Start', startText(start, system)]],
      bounds: mmPoint(start),
      area: key,
      handle: { x: mm(start.x), y: mm(start.y) }
    }
  ];
}
