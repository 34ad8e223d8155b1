import type { Area, Edge } from '../../job/job.ts';
import type { Level, SectionBody } from './section-input.ts';

/** m: an edging without a width of its own is drawn so wide. */
const THIN = 0.012;

/** From a station so far one way, and from a height up to another. */
export function rectangle(at: number, way: number, width: number, bottom: number, top: number): Level[] {
  const other = at + way * width;
  return [
    { at, z: bottom },
    { at: other, z: bottom },
    { at: other, z: top },
    { at, z: top }
  ];
}

/** The edging at a side, with its concrete under and behind it. */
export function edgingBodies(
  key: string,
  { edging, standing }: Edge,
  at: number,
  way: number,
  z: number,
  area: Area
): SectionBody[] {
  if (edging === undefined) return [];
  const top = z + (standing?.value ?? 0);
  const unit = area.paving?.units[0].thickness.value ?? 0;
  const bed = area.layers.find(({ role }) => role === 'bed')?.thickness.value ?? 0;
  const foot = edging.height === undefined ? z - unit - bed : top - edging.height.value;
  const width = Math.max(THIN, edging.width?.value ?? 0);
  const says = `edging ${edging.name}`;
  const { concrete, haunch } = edging;
  return [
    ...(concrete === undefined
      ? []
      : [
          {
            key: `${key}/concrete`,
            role: 'concrete' as const,
            says: 'concrete',
            corners: rectangle(
              at - way * concrete.under.value,
              way,
              concrete.width.value,
              foot - concrete.depth.value,
              foot
            )
          }
        ]),
    ...(haunch === undefined
      ? []
      : [
          {
            key: `${key}/haunch`,
            role: 'concrete' as const,
            says: 'concrete haunch',
            corners: rectangle(at + way * width, way, haunch.width.value, foot, foot + haunch.height.value)
          }
        ]),
    { key: `${key}/edging`, role: 'edging', says, corners: rectangle(at, way, width, foot, top) }
  ];
}
