import {
  areaOf,
  EDGE_TOLERANCE,
  isDegenerate,
  type Loop,
  loopWithin,
  overlapArea,
  selfCrossing
} from '../geometry/index.ts';
import type { KeptOut, System } from '../job/job.ts';
import { printArea, printLength } from '../measures/print.ts';
import type { OutlineInputs } from '../quantities/outline-stage.ts';
import type { RawFinding } from './finding.ts';
import { sidesInWords } from './sides.ts';

/** A larger outline is a slip of the pen (a hundred square kilometres). */
export const LARGEST_OUTLINE = 1e8;

/** Shapes that overlap by less share no ground: it is less than the last printed digit of an area. */
export const OVERLAP_TOLERANCE = 0.001;

/** What is wrong with an outline and the shapes kept out of it; `measurable`: its areas can be measured all the same. */
export function outlineFaults(area: OutlineInputs): { findings: readonly RawFinding[]; measurable: boolean } {
  const faults = [...ownFaults(area), ...keptOutFaults(area)];
  const spoiling = faults.length > 0 ? faults : nothingLeft(area);
  const silent = area.sides.filter(side => !side.said);
  const unsaid = silent.length === 0 ? [] : [edgeNotSaid(area, silent)];
  return { findings: [...spoiling, ...unsaid], measurable: spoiling.length === 0 };
}

function ownFaults(area: OutlineInputs): RawFinding[] {
  const { key, outline, system } = area;
  const size = areaOf(outline);
  if (!(size <= LARGEST_OUTLINE)) {
    const message = `The outline is larger than ${printArea(LARGEST_OUTLINE, system)}: check its measures.`;
    return [{ id: 'out-of-range', message, target: key }];
  }
  if (liesInOneLine(outline)) return [withoutArea(key)];
  const crossing = selfCrossing(outline);
  if (crossing) {
    const [first, second] = [area.sides[crossing.first], area.sides[crossing.second]];
    const sides = first && second ? `side ${first.name} meets side ${second.name}` : 'two of its sides meet';
    const at = `${printLength(crossing.at.x, system)}, ${printLength(crossing.at.y, system)}`;
    return [
      {
        id: 'outline-crosses-itself',
        message: `The outline crosses itself: ${sides} at (${at}).`,
        target: key,
        values: [
          { name: 'x', value: crossing.at.x, measure: 'm' },
          { name: 'y', value: crossing.at.y, measure: 'm' }
        ]
      }
    ];
  }
  return isDegenerate(outline) ? [withoutArea(key)] : [];
}

/** Boxes and pits may take up all of an area. */
function nothingLeft({ key, name, outline, keptOut }: OutlineInputs): RawFinding[] {
  const left = keptOut.reduce((sum, shape) => sum - areaOf(shape.outline), areaOf(outline));
  if (left > OVERLAP_TOLERANCE) return [];
  if (keptOut.length === 0)
    return [{ ...withoutArea(key), message: `The outline of ${name} encloses next to nothing.` }];
  return [
    {
      id: 'outline-without-area',
      message: `Boxes and pits take up all of ${name}: nothing is left to pave.`,
      target: key
    }
  ];
}

function withoutArea(key: string): RawFinding {
  return { id: 'outline-without-area', message: 'The outline encloses no area.', target: key };
}

/** Sides that run back over each other on one line: they cross themselves too, but this says more. */
function liesInOneLine(outline: Loop): boolean {
  const [start, ...others] = outline.map(side => side.from);
  if (start === undefined || outline.some(side => side.arc !== undefined)) return start === undefined;
  const away = others.map(({ x, y }) => ({ x: x - start.x, y: y - start.y }));
  const far = away.reduce((a, b) => (Math.hypot(b.x, b.y) > Math.hypot(a.x, a.y) ? b : a), { x: 0, y: 0 });
  const length = Math.hypot(far.x, far.y);
  return away.every(({ x, y }) => Math.abs(x * far.y - y * far.x) <= EDGE_TOLERANCE * length);
}

/** What lies inside an area and takes its place there. */
interface PartOfArea extends Pick<KeptOut, 'key' | 'name' | 'outline'> {
  readonly kind: KeptOut['kind'] | 'inset';
}

function keptOutFaults(area: OutlineInputs): RawFinding[] {
  const parts: PartOfArea[] = [...area.keptOut, ...area.insets.map(inset => ({ ...inset, kind: 'inset' as const }))];
  return parts.flatMap((shape, index) => {
    const itself = ownFaults({ ...area, key: shape.key, outline: shape.outline, sides: [] });
    if (itself.length > 0) return itself;
    if (!loopWithin(shape.outline, area.outline)) return [outside(shape, area)];
    return parts.slice(0, index).flatMap(earlier => keptOutTwice(earlier, shape, area.system));
  });
}

function outside(shape: PartOfArea, area: OutlineInputs): RawFinding {
  return {
    id: 'kept-out-outside-area',
    message: `The ${shape.kind} ${shape.name} reaches outside ${area.name}: it must lie wholly within the outline.`,
    target: shape.key,
    related: [{ key: area.key, message: `The outline of ${area.name}` }]
  };
}

function keptOutTwice(earlier: PartOfArea, later: PartOfArea, system: System): RawFinding[] {
  const shared = overlapArea(earlier.outline, later.outline);
  if (shared <= OVERLAP_TOLERANCE) return [];
  const why =
    later.kind !== 'inset'
      ? 'no place can be kept out twice'
      : earlier.kind === 'inset'
        ? 'no place can be laid twice'
        : `draw the inset round the ${earlier.kind}, or leave it clear`;
  return [
    {
      id: 'kept-out-twice',
      message: `${printArea(shared, system)} lie both in the ${earlier.kind} ${earlier.name} and in the ${later.kind} ${later.name}: ${why}.`,
      target: later.key,
      values: [{ name: 'overlap', value: shared, measure: 'm2' }],
      related: [{ key: earlier.key, message: `The ${earlier.kind} ${earlier.name}` }]
    }
  ];
}

function edgeNotSaid(
  area: OutlineInputs,
  sides: readonly { readonly key: string; readonly name: string }[]
): RawFinding {
  return {
    id: 'edge-not-said',
    message: `Nothing is said of ${sidesInWords(sides)} of ${area.name}: say what stands there. Until then no base is taken past it.`,
    target: area.key,
    at: sides[0]!.key,
    // What can be offered hangs on the other sides and areas.
    fixes: []
  };
}
