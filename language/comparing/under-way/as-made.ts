import { inside, type Point } from '../../geometry/index.ts';
import { depthOf } from '../../quantities/area-heights.ts';
import type { Area, Layer, System } from '../../job/job.ts';
import { heightAt } from '../../levels/surface.ts';
import { printAs } from '../../measures/print.ts';
import type { AreaStage } from './grounds.ts';

/** A layer that lies further off than this has to be made up or taken off, m: less than what a bed takes up. */
const HEIGHT_TOLERANCE = 0.005;

/** Why a stage as it was built for one area can't stay where another one has it; none where it can. */
export function whyNotAsBuilt(stage: AreaStage, built: Area, wanted: Area, system: System): string[] {
  const length = (value: number): string => printAs('thickness', value, system);
  switch (stage) {
    case 'dig':
      return [];
    case 'geotextile':
      // It lies under all layers: dug deeper it comes up.
      return [
        ...otherMaterial(built.geotextile?.name, wanted.geotextile?.name),
        ...otherHeight(built, wanted, depthOf, system)
      ];
    case 'joints':
      return otherMaterial(built.jointFiller?.name, wanted.jointFiller?.name);
    case 'paving':
      return [...otherPaving(built, wanted), ...otherHeight(built, wanted, () => 0, system)];
    default: {
      const [was, is] = [layerOf(built, stage), layerOf(wanted, stage)];
      if (was === undefined || is === undefined) return is === undefined ? ['is left out now'] : [];
      const isTooThin = is.thickness.value > was.thickness.value + HEIGHT_TOLERANCE / 10;
      return [
        ...otherMaterial(was.material.name, is.material.name),
        ...(isTooThin ? [`is ${length(was.thickness.value)} thick, and ${length(is.thickness.value)} is wanted`] : []),
        ...otherHeight(built, wanted, area => topOf(area, stage), system)
      ];
    }
  }
}

function layerOf({ layers }: Area, role: AreaStage): Layer | undefined {
  return layers.find(layer => layer.role === role);
}

function otherMaterial(built: string | undefined, wanted: string | undefined): string[] {
  if (built === wanted) return [];
  return [wanted === undefined ? 'is left out now' : `is ${built ?? 'not there'}, and ${wanted} is wanted`];
}

function otherPaving(built: Area, wanted: Area): string[] {
  const units = ({ paving }: Area): string => (paving?.units ?? []).map(({ name }) => name).join(', ');
  if (units(built) !== units(wanted)) return otherMaterial(units(built), units(wanted) || undefined);
  return laidAs(built) === laidAs(wanted) ? [] : ['is laid otherwise'];
}

/** How the units lie, free of where it is written and how. */
function laidAs({ paving, start, borders, bands, insets }: Area): string {
  const { bond, joint } = paving ?? {};
  return JSON.stringify({ bond, joint, start, borders, bands, insets }, (name, value: unknown) =>
    NOT_THE_LAYING.has(name) ? undefined : value
  );
}

const NOT_THE_LAYING: ReadonlySet<string> = new Set(['key', 'written', 'assumed']);

/** From the finish down to the top of a layer, m. */
function topOf(area: Area, stage: AreaStage): number {
  const from = area.layers.findIndex(({ role }) => role === stage);
  return depthOf({ ...area, layers: area.layers.slice(0, Math.max(0, from)) });
}

/** Judged at the corners of either that lie in the other: between them a finish is as even as these. */
function otherHeight(built: Area, wanted: Area, down: (area: Area) => number, system: System): string[] {
  const [was, is] = [built.finish?.surface, wanted.finish?.surface];
  const lower = down(wanted) - down(built);
  const off =
    was === undefined || is === undefined
      ? [-lower]
      : cornersInBoth(built, wanted).map(corner => heightAt(is, corner) - heightAt(was, corner) - lower);
  const most = off.reduce((one, other) => (Math.abs(other) > Math.abs(one) ? other : one), 0);
  if (Math.abs(most) <= HEIGHT_TOLERANCE) return [];
  return [`lies up to ${printAs('thickness', Math.abs(most), system)} too ${most > 0 ? 'low' : 'high'}`];
}

function cornersInBoth(built: Area, wanted: Area): Point[] {
  const corners = ({ outline }: Area, other: Area): Point[] =>
    outline.map(({ from }) => from).filter(corner => inside(other.outline, corner));
  return [...corners(built, wanted), ...corners(wanted, built)];
}
