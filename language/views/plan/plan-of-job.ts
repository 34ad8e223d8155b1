import { type Loop, sideLength } from '../../geometry/index.ts';
import type { Area, Border, Job, KeptOut, Unit } from '../../job/job.ts';
import type { LaidPart } from '../../laying/lay-area.ts';
import type { AreaLaid } from '../../quantities/area-result.ts';
import type { JobNumbers } from '../../quantities/contract.ts';
import { unitsOf } from '../../quantities/units-of-area.ts';
import { missingReason, missingText } from '../text/missing-text.ts';
import type { PlanArea, PlanInput, PlanKeptOut, PlanPart, PlanSide, PlanStart, PlanUnit } from './plan-input.ts';
import { settingOutOf } from './setting-out-of-area.ts';
import { siteOfJob } from './site-of-job.ts';
import { lidText } from './things-of-job.ts';

/**
 * The plan of a job as it was worked out; what has no numbers has its reason in their place. What stands by outlines that
 * are shown besides its areas is in view as well.
 */
export function planOfJob(
  job: Job,
  { laid, quantities }: Pick<JobNumbers, 'laid' | 'quantities'>,
  besides: readonly Loop[] = []
): PlanInput {
  const known = new Map(laid.map(one => [one.area.key, one.laid]));
  const lids = (box: KeptOut): string | undefined => lidText(box, quantities, job.system);
  const areas = job.areas.map((area): PlanArea => {
    const keys = [area.key, `${area.key}/laying`].filter(key => quantities.missing.includes(key));
    const noNumbers = keys.length === 0 ? {} : { noNumbers: missingReason(keys[0]!, job.missing) };
    const settingOut = settingOutOf(area, job.points);
    return {
      ...planArea(area, known.get(area.key), lids),
      ...noNumbers,
      ...(settingOut === undefined ? {} : { settingOut })
    };
  });
  const drawn = new Set(job.areas.flatMap(({ key }) => [key, `${key}/laying`]));
  const units = new Map(job.areas.flatMap(unitsOf).map(unit => [unit.key, planUnit(unit)]));
  return {
    title: job.title || 'Job without a title',
    system: job.system,
    units: [...units.values()],
    areas,
    missing: missingText(
      quantities.missing.filter(key => !drawn.has(key)),
      job.missing
    ),
    site: siteOfJob(job, { quantities }, besides)
  };
}

function planUnit({ key, name, length, width, shape, colour }: Unit): PlanUnit {
  return {
    key,
    name,
    length: length.value,
    width: width.value,
    shape,
    ...(colour === undefined ? {} : { colour })
  };
}

function planArea(area: Area, laid: AreaLaid | undefined, lidOf: (box: KeptOut) => string | undefined): PlanArea {
  const { key, name, outline, keptOut, insets } = area;
  const start = laid && startOf(area, laid);
  return {
    key,
    name,
    outline,
    sides: sidesOf(area),
    keptOut: [
      ...keptOut.map((box): PlanKeptOut => {
        const { key, name, kind, outline } = box;
        const lid = lidOf(box);
        return { key, name, kind, outline, ...(lid === undefined ? {} : { lid }) };
      }),
      ...insets.map(({ key, name, outline }): PlanKeptOut => ({ key, name, kind: 'inset', outline }))
    ],
    parts: laid === undefined ? [] : partsOf(area, laid),
    ...(start === undefined ? {} : { start })
  };
}

function sidesOf({ key, outline, edges }: Area): PlanSide[] {
  return outline.map((side, index): PlanSide => {
    const edge = edges[index];
    return {
      key: `${key}/side-${index + 1}`,
      name: edge?.name ?? `side ${index + 1}`,
      length: sideLength(side),
      flush: edge?.flush ?? false,
      ...(edge?.meets === undefined ? {} : { meets: edge.meets.name }),
      ...(edge?.edging === undefined ? {} : { edging: edge.edging.name })
    };
  });
}

/** The cut list numbers the cuts of all parts one after another. */
function partsOf(area: Area, { laid, cuts }: AreaLaid): PlanPart[] {
  let before = 0;
  return laid.parts.map((part): PlanPart => {
    const first = before;
    before += part.laid.cuts.length;
    const numbers = cuts.list.places.slice(first, before).map(({ group }) => group);
    return { ...partWords(area, part), laid: part.laid, numbers };
  });
}

function partWords(area: Area, { part }: LaidPart): Pick<PlanPart, 'key' | 'name' | 'kind'> {
  const inset = area.insets.find(({ key }) => key === part);
  if (inset !== undefined) return { key: part, name: `inset ${inset.name}`, kind: 'inset' };
  const key = part.replace(`${area.key}/`, '');
  const border = area.borders.findIndex(one => one.key === part);
  if (border >= 0) return { key, name: borderName(area, border), kind: 'border' };
  const band = area.bands.findIndex(one => one.key === part);
  if (band >= 0) return { key, name: counted('band', band, area.bands.length), kind: 'band' };
  return { key, name: 'field', kind: 'field' };
}

/** Borders along sides are counted from the outside; one round something is told by it. */
function borderName({ borders, keptOut, insets }: Area, index: number): string {
  const { along } = borders[index]!;
  if ('round' in along) {
    const inside = [...keptOut, ...insets].find(({ key }) => key === along.round);
    return inside === undefined ? 'border' : `border round ${inside.name}`;
  }
  const alongSides = borders.filter(isAlongSides);
  return counted('border', alongSides.indexOf(borders[index]!), alongSides.length);
}

function isAlongSides({ along }: Border): boolean {
  return 'sides' in along;
}

function counted(word: string, index: number, count: number): string {
  return count === 1 ? word : `${word} ${index + 1}`;
}

function startOf({ paving }: Area, { laid }: AreaLaid): PlanStart | undefined {
  const frame = laid.parts.find(({ part }) => part === 'field')?.how?.frame;
  if (frame === undefined) return undefined;
  const { origin, direction, mirrored } = frame;
  const inRings = paving?.bond.way === 'rings';
  return { ...origin, direction, mirrored, ...(inRings ? { inRings } : {}) };
}
