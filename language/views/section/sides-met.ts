import { inside } from '../../geometry/index.ts';
import type { Area, Edge } from '../../job/job.ts';
import { STANDING } from '../../quantities/water-onward.ts';
import { type CutLine, crossings, placeAt } from './section-line.ts';
import type { CutArea } from './stretches.ts';

/** A side that the line crosses where something is said of it. */
export interface SideMet {
  readonly cut: CutArea;
  readonly edge: Edge & Required<Pick<Edge, 'meets'>>;
  /** Unlike that of any other place where a side is met. */
  readonly key: string;
  readonly at: number;
  /** 1 where the line goes out of the area there, -1 where it comes in. */
  readonly outwards: 1 | -1;
}

/** m: a side is looked at so far before and after the line crosses it. */
const BESIDE = 0.004;

export function sidesMet(line: CutLine, areas: readonly CutArea[]): SideMet[] {
  return areas.flatMap(cut => {
    const { area } = cut;
    const seen = new Set<string>();
    return crossings(line, area.outline).flatMap(({ at, side }): SideMet[] => {
      const edge = area.edges[side];
      // Past an end at a corner the other side is met, too: once is enough.
      const outwards = outwardWay(line, area, at);
      const place = `${outwards} ${Math.round(at * 1000)}`;
      if (edge?.meets === undefined || outwards === 0 || seen.has(place)) return [];
      seen.add(place);
      const key = `${area.key}/side-${side + 1}/${Math.round(at * 1000)}`;
      return [{ cut, edge: { ...edge, meets: edge.meets }, key, at, outwards }];
    });
  });
}

function outwardWay(line: CutLine, { outline }: Area, at: number): -1 | 0 | 1 {
  const before = inside(outline, placeAt(line, at - BESIDE));
  const after = inside(outline, placeAt(line, at + BESIDE));
  return before === after ? 0 : before ? 1 : -1;
}

/** A wall, or steps: it stands above what is laid against it. */
export function standsUp({ meets, wall }: Pick<Edge, 'meets' | 'wall'>): boolean {
  return wall !== undefined || (meets !== undefined && STANDING.has(meets.name));
}
