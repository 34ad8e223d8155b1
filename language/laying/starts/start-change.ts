import type { Point } from '../../geometry/index.ts';
import type { AreaToLay } from '../area-to-lay.ts';

/** What is written otherwise, in metres and radians; what is absent stays as said. */
export interface StartChange {
  /** The first unit's corner is moved on by so much from where the start without `shifted` puts it; nought: not at all. */
  readonly shifted?: Point;
  readonly equalCuts?: true;
  readonly turned?: number;
  /** Width of the joints. */
  readonly joint?: number;
}

/** The area as it would be laid then. */
export function changedStart(area: AreaToLay, { shifted, equalCuts, turned, joint }: StartChange): AreaToLay {
  const { field } = area;
  return {
    ...area,
    field: {
      ...field,
      joint: joint === undefined ? field.joint : { ...field.joint, width: joint },
      start: {
        ...field.start,
        ...(shifted === undefined ? {} : { shifted }),
        ...(equalCuts === undefined ? {} : { equalCuts }),
        ...(turned === undefined ? {} : { turned })
      }
    }
  };
}

/** How many things are written otherwise: of two ways to the same, the plainer counts. */
export function changesIn({ shifted, ...others }: StartChange): number {
  const ways = shifted === undefined ? [] : [shifted.x, shifted.y].filter(by => by !== 0);
  return ways.length + Object.keys(others).length;
}
