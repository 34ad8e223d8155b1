import type { Area, Given, System } from '../../job/job.ts';
import { printFine, roundedUp } from '../../measures/print.ts';
import { stoneLayers } from '../../quantities/base-past.ts';
import type { RawFix } from '../finding.ts';
import { fixTo, type Length, printLimit, saying, systemWritten, TIE, writing } from '../limits.ts';
import type { Judged } from './member.ts';

/** Thickness of all stone under the bed, m. */
export function baseThickness({ layers }: Area): number {
  return stoneLayers(layers).reduce((sum, layer) => sum + layer.thickness.value, 0);
}

/** Offers to make the one layer thicker, the upper of two by what both lack, or to write a base where there is none. */
export function thickerBase({ area, system, usualStone }: Judged, asked: Length): readonly RawFix[] {
  const to = asked.written === undefined ? ofWholeSteps(asked) : asked;
  const [first, ...others] = stoneLayers(area.layers);
  if (first === undefined) return [saying(`${area.key}/base`, `base ${usualStone} ${printLimit(to, system)}`)];
  const { thickness } = first;
  if (others.length === 0) {
    const becomes = to[systemWritten(thickness.written, system)];
    return fixTo(to, thickness, system).map(fix => withPast(fix, area, becomes, system));
  }
  const lower = baseThickness(area) - thickness.value;
  const upper = roundedUp(to[system] - lower, system);
  return thickerLayer(thickness, upper, system).map(fix => withPast(fix, area, lower + upper, system));
}

/** What is worked out is rounded up to what a tape shows; what is published stays as it is. */
function ofWholeSteps({ imperial, metric }: Length): Length {
  return { imperial: roundedUp(imperial, 'imperial'), metric: roundedUp(metric, 'metric') };
}

function thickerLayer({ key, assumed }: Given, becomes: number, system: System): RawFix[] {
  if (key === undefined || assumed !== undefined) return [];
  return [writing(key, printFine(becomes, system))];
}

/** Edging that stands on the base wants as much of it behind as it is thick: a thicker base runs further past it. */
function withPast(fix: RawFix, area: Area, becomes: number, system: System): RawFix {
  const pasts = stoneLayers(area.layers).flatMap(({ past }) => (past === undefined ? [] : [past]));
  const short = pasts.every(({ value }) => value < becomes - TIE)
    ? pasts.find(({ key }) => key !== undefined)
    : undefined;
  if (short?.key === undefined || !area.edges.some(standsOnBase)) return fix;
  const written = systemWritten(short.written, system);
  const text = printFine(roundedUp(becomes, written), written);
  return {
    title: `${fix.title}, and \`${text} past the edging\``,
    edits: [...fix.edits, { over: short.key, text }]
  };
}

function standsOnBase({ meets, edging }: Area['edges'][number]): boolean {
  return meets?.openGround === true && edging !== undefined && edging.concrete === undefined;
}
