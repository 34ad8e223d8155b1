import type { Area, Key, Material } from '../../job/job.ts';
import { printHeight, roundedUp } from '../../measures/print.ts';
import { stoneLayers } from '../../quantities/base-past.ts';
import { unitsOf } from '../../quantities/units-of-area.ts';
import type { RawFix } from '../finding.ts';
import { fixTo, type Length, saying, writing } from '../limits.ts';
import { BOND_MEMBERS } from './bond-members.ts';
import { LAID_MEMBERS } from './laid-members.ts';
import { GROUND_MEMBERS } from './ground-members.ts';
import { layingMembers } from './laying-members.ts';
import { namesMet } from '../sides.ts';
import { heaviestTraffic } from '../traffic.ts';
import { fromCatalogue } from './from-catalogue.ts';
import { type Judged, length, type Member, words } from './member.ts';
import { baseThickness, thickerBase } from './thicker-base.ts';
import { longerSide } from './unit-members.ts';

type AreaMember = Member<'area'>;

/** What rules can look at in an area, and in everything that belongs to one. */
export const AREA_MEMBERS: readonly AreaMember[] = [
  {
    ...words('area', 'area', 'The name of the area'),
    read: ({ judged }) => [judged.area.name],
    at: ({ judged }) => judged.area.key
  },
  {
    ...words('area', 'traffic', 'Everything that uses the area', ['foot', 'cars', 'trucks', 'turning']),
    read: ({ judged }) => judged.area.traffic
  },
  {
    ...words('area', 'heaviest-traffic', 'The heaviest traffic: `cars` also where wheels turn', [
      'foot',
      'cars',
      'trucks'
    ]),
    read: ({ judged }) => [heaviestTraffic(judged.area)]
  },
  {
    ...length('area', 'base', 'Thickness of all stone under the bed; nought where there is none'),
    read: ({ judged }) => baseThickness(judged.area),
    at: ({ judged: { area } }) => stoneLayers(area.layers)[0]?.key,
    write: ({ judged }, to) => (typeof to === 'string' ? [] : thickerBase(judged, to))
  },
  {
    ...length('area', 'build-up', 'Thickness of the unit and all layers together'),
    read: ({ judged: { area } }) =>
      area.layers.reduce((sum, layer) => sum + layer.thickness.value, area.paving?.units[0].thickness.value ?? 0),
    at: ({ judged: { area } }) => stoneLayers(area.layers)[0]?.key
  },
  {
    ...length('area', 'above-base', 'Thickness of the unit and the bed together, where units are named'),
    read: ({ judged: { area } }) =>
      area.paving && bedsOf(area).reduce((sum, bed) => sum + bed.thickness.value, area.paving.units[0].thickness.value)
  },
  {
    ...length('area', 'thinnest-bed', 'Thickness of the bed under the thickest units, all faces level'),
    read: ({ judged: { area } }) => {
      const [bed] = bedsOf(area);
      const main = area.paving?.units[0];
      if (bed === undefined || main === undefined) return undefined;
      const thickest = Math.max(...unitsOf(area).map(({ thickness }) => thickness.value));
      return bed.thickness.value - (thickest - main.thickness.value);
    },
    at: ({ judged: { area } }) => bedsOf(area)[0]?.key ?? area.paving?.key
  },
  {
    ...words('area', 'upper-base-grading', 'Grading of the stone that the bed lies on', ['dense', 'open']),
    read: ({ judged }) =>
      gradings(
        stoneLayers(judged.area.layers)
          .slice(0, 1)
          .map(layer => layer.material.openGraded)
      ),
    at: ({ judged: { area } }) => stoneLayers(area.layers)[0]?.key
  },
  {
    ...words('area', 'base-grading', 'Grading of the stone under the bed: open where any of it is', ['dense', 'open']),
    read: ({ judged }) => gradings(stoneLayers(judged.area.layers).map(layer => layer.material.openGraded)),
    at: ({ judged: { area } }) => stoneLayers(area.layers)[0]?.key
  },
  {
    ...words('area', 'bed-grading', 'Grading of the bed: `open` is grit', ['dense', 'open']),
    read: ({ judged: { area } }) => gradings(bedsOf(area).map(layer => layer.material.openGraded)),
    at: ({ judged: { area } }) => bedsOf(area)[0]?.key
  },
  {
    ...length('area', 'joint', 'Width of the joints between units'),
    read: ({ judged }) => judged.area.paving?.joint.width.value,
    at: ({ judged: { area } }) => area.paving?.joint.width.key ?? area.paving?.key,
    write: ({ judged }, to) => (typeof to === 'string' ? [] : fixTo(to, judged.area.paving?.joint.width, judged.system))
  },
  {
    ...words('area', 'joint-grading', 'Grading of what fills the joints, where that is said: `open` is grit', [
      'dense',
      'open'
    ]),
    read: ({ judged }) => gradings(saidFiller(judged.area).map(filler => filler.openGraded))
  },
  ...BOND_MEMBERS,
  {
    ...words('area', 'made-of', 'What the units are made of', ['concrete', 'clay']),
    read: ({ judged }) => [...new Set(unitsOf(judged.area).map(({ madeOf }) => madeOf))]
  },
  {
    ...length('area', 'unit-thickness', 'Thickness of the units laid here'),
    read: ({ judged }) => judged.area.paving?.units[0].thickness.value
  },
  {
    ...length('area', 'unit-length', 'The longer side of the units laid here'),
    read: ({ judged: { area } }) => area.paving && Math.max(...area.paving.units.map(longerSide))
  },
  {
    ...words('area', 'geotextile', 'The geotextile, where there is one'),
    read: ({ judged }) => named(judged.area.geotextile?.name),
    at: ({ judged }) => judged.area.key,
    write: ({ judged }, to) =>
      typeof to === 'string' ? [saying(`${judged.area.key}/geotextile`, `geotextile ${to}`)] : []
  },
  {
    ...length('area', 'geotextile-lap', 'Lap of the geotextile from strip to strip, where it is said'),
    read: ({ judged }) => judged.area.geotextile?.lap?.value,
    at: ({ judged: { area } }) => `${area.key}/geotextile`
  },
  {
    ...words('area', 'meets', 'The kinds and names of everything that its sides meet'),
    read: ({ judged }) => [...new Set(judged.area.edges.flatMap(namesMet))]
  },
  {
    ...words('area', 'benchmark', 'The benchmark that its finish hangs from'),
    read: ({ judged }) => named(judged.area.finish?.level?.benchmark)
  },
  {
    ...length('area', 'finish', 'Height of the finish above its benchmark; below it less than nought'),
    read: ({ judged: { area } }) => area.finish?.level && area.finish.level.above.value - (nought(area) ?? 0),
    at: ({ judged }) => judged.area.finish?.level?.above.key,
    write: ({ judged }, to) => (typeof to === 'string' ? [] : finishAt(judged, to))
  },
  {
    ...length(
      'area',
      'finish-below-benchmark',
      'How far its finish lies below its benchmark; above it less than nought'
    ),
    read: ({ judged: { area } }) => area.finish?.level && (nought(area) ?? 0) - area.finish.level.above.value,
    at: ({ judged }) => judged.area.finish?.level?.above.key,
    write: ({ judged }, to) => (typeof to === 'string' ? [] : finishAt(judged, below(to)))
  },
  ...fromCatalogue('area', 'area', ({ judged }) => judged.shapes.area),
  ...GROUND_MEMBERS,
  ...fromCatalogue('area', 'dig', ({ judged }) => judged.layers.dig, { at: lowestLayer }),
  ...fromCatalogue('area', 'joints', ({ judged }) => judged.layers.joints),
  ...layingMembers,
  ...LAID_MEMBERS,
  ...fromCatalogue('area', 'geotextile', ({ judged }) => judged.layers.geotextile)
];

function named(name: string | undefined): readonly string[] {
  return name === undefined ? [] : [name];
}

function gradings(open: readonly boolean[]): readonly string[] {
  return open.length === 0 ? [] : [open.includes(true) ? 'open' : 'dense'];
}

function saidFiller({ jointFiller }: Area): readonly Material[] {
  return jointFiller === undefined || jointFiller.assumed !== undefined ? [] : [jointFiller];
}

function bedsOf(area: Area): Area['layers'] {
  return area.layers.filter(({ role }) => role === 'bed');
}

function lowestLayer({ judged }: { readonly judged: Judged }): Key | undefined {
  return judged.area.layers.at(-1)?.key;
}

// ---- what writes them ----

function below({ imperial, metric }: Length): Length {
  return { imperial: -imperial, metric: -metric };
}

function finishAt({ area, system }: Judged, to: Length): RawFix[] {
  const finish = area.finish?.level;
  if (finish?.above.key === undefined || finish.fromNought) return [];
  const above = to[system];
  // Never short of what is needed, whether the finish is lowered or raised.
  const rounded = above < finish.above.value ? -roundedUp(-above, system) : roundedUp(above, system);
  return [writing(finish.above.key, printHeight(rounded, finish.benchmark, system))];
}

/** Where the text gives a height above nought: the height of its benchmark. */
function nought({ finish }: Area): number | undefined {
  return finish?.level?.fromNought === true ? finish.level.base?.value : undefined;
}
