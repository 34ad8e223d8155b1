import type { Area } from '../../job/job.ts';
import { bondOfPart, type LaidTotals, type WidestJoint } from '../../quantities/laying-stage.ts';
import type { UnitCuts } from '../../quantities/cuts-stage.ts';
import { type Judged, length, type Member, type ThingOf, words } from './member.ts';

const atPaving = ({ judged }: ThingOf<'area'>): string | undefined => judged.area.paving?.key;

function count(name: string, describe: string, of: (cuts: UnitCuts) => number): Member<'area'> {
  return {
    name,
    of: 'area',
    measure: '',
    print: 'count',
    describe,
    read: ({ judged }) => judged.layers.laid && cutsOf(judged.layers.laid).reduce((sum, cuts) => sum + of(cuts), 0),
    at: atPaving
  };
}

/** What rules can look at of the units laid in an area besides what tables show: all parts of it together. */
export const LAID_MEMBERS: readonly Member<'area'>[] = [
  count('pieces-under-third', 'Pieces smaller than a third of their unit', ({ underThird }) => underThird),
  count('pieces-under-quarter', 'Pieces smaller than a quarter of their unit', ({ underQuarter }) => underQuarter),
  count(
    'slivers',
    'Pieces narrower than 2 in (50 mm) and than half of their unit, that keep a whole side of it: tips of slanted cuts are none',
    ({ slivers }) => slivers
  ),
  {
    ...length('area', 'narrowest-sliver', 'Width of the narrowest sliver, where there is one'),
    print: 'thickness',
    read: ({ judged: { layers } }) => layers.laid && narrowest(layers.laid),
    at: atPaving
  },
  {
    ...length('area', 'widest-joint', 'The widest joint of the paving that comes of its bond and its sizes'),
    read: ({ judged: { layers } }) => layers.laid?.widestJoints.find(({ part }) => part === 'field')?.widest,
    at: atPaving
  },
  {
    ...length('area', 'curve-joint', 'The widest joint where units lie in rings or round a curve'),
    read: ({ judged }) => onCurve(judged)?.widest,
    at: curveKey
  },
  {
    ...length('area', 'curve-joint-most', 'The most that this joint may be'),
    read: ({ judged }) => onCurve(judged)?.most,
    at: curveKey
  },
  {
    ...words('area', 'curve-course', 'The bond or course in which it lies'),
    read: ({ judged }) => {
      const widest = onCurve(judged);
      return widest === undefined ? [] : [bondOfPart(judged.area, widest.part)];
    },
    at: curveKey
  },
  {
    ...length('area', 'ring-centre', 'Across the disc that rings leave open about their centre, where they do'),
    print: 'length',
    read: ({ judged: { layers } }) => layers.laid?.openDisc && 2 * layers.laid.openDisc.radius,
    at: atPaving
  }
];

function cutsOf({ units }: LaidTotals): readonly UnitCuts[] {
  return units.flatMap(({ cuts }) => cuts ?? []);
}

function narrowest(laid: LaidTotals): number | undefined {
  const all = cutsOf(laid).flatMap(({ narrowestSliver }) => narrowestSliver ?? []);
  return all.length === 0 ? undefined : Math.min(...all);
}

/** Of rings, borders and bands the one whose joints open furthest beyond what they may. */
function onCurve({ area, layers }: Judged): WidestJoint | undefined {
  const all = (layers.laid?.widestJoints ?? []).filter(({ part }) => isOnCurve(area, part));
  return all.sort((one, other) => other.widest - other.most - (one.widest - one.most))[0];
}

function isOnCurve({ paving, insets, borders, bands }: Area, part: string): boolean {
  if ([...borders, ...bands].some(({ key }) => key === part)) return true;
  const inset = insets.find(({ key }) => key === part);
  return (inset?.paving ?? paving)?.bond.way === 'rings';
}

function curveKey({ judged }: ThingOf<'area'>): string | undefined {
  const { paving, insets, borders, bands } = judged.area;
  const part = onCurve(judged)?.part;
  const own = [...borders, ...bands].find(({ key }) => key === part)?.key;
  return own ?? insets.find(({ key }) => key === part)?.paving.key ?? paving?.key;
}
