import { distanceToSide, type Loop, middleOf } from '../../geometry/index.ts';
import { length, type Member, words } from './member.ts';

/** What rules can look at in how an area falls, where its water goes, and what must not be dug. */
export const GROUND_MEMBERS: readonly Member<'area'>[] = [
  {
    ...slope('finish-fall', 'Steepest fall of the finish, in the middle of the area; not said where it lies level'),
    read: ({ judged }) => judged.layers.finish?.fall,
    at: ({ judged }) => judged.area.finish?.key
  },
  {
    ...words('area', 'finish-lies', 'Whether its finish falls, where it is said', ['level', 'falling']),
    read: ({ judged: { area, layers } }) =>
      area.finish === undefined ? [] : [layers.finish?.fall === undefined ? 'level' : 'falling'],
    at: ({ judged }) => judged.area.finish?.key
  },
  {
    ...length('area', 'finish-twist', 'How far the fourth corner lies off the plane of the other three'),
    print: 'thickness',
    read: ({ judged }) => judged.layers.finish?.twist,
    at: ({ judged }) => judged.area.finish?.key
  },
  {
    name: 'low-places',
    drained: true,
    of: 'area',
    measure: '',
    print: 'count',
    describe: 'Places where water stays: it finds no way over a side, nor into a drain',
    read: ({ judged }) => judged.water?.lowPlaces.length,
    at: ({ judged }) => judged.area.finish?.key
  },
  {
    ...length('area', 'bed-settles', 'How far its bed settles under the plate, where that is said'),
    read: ({ judged }) => judged.area.layers.find(({ role }) => role === 'bed')?.settles?.value
  },
  {
    ...words('area', 'no-dig-reached', 'The pits in whose no-dig circle the area is dug'),
    read: ({ judged: { area } }) =>
      area.keptOut.flatMap(({ name, noDig, outline }) =>
        noDig !== undefined && noDig.value > leastReach(outline) + AT_EDGE ? [name] : []
      ),
    at: ({ judged: { area } }) => area.keptOut.find(({ noDig }) => noDig !== undefined)?.key
  },
  {
    ...length('area', 'no-dig', 'The largest no-dig circle of its pits, from the middle out'),
    print: 'length',
    read: ({ judged: { area } }) => {
      const all = area.keptOut.flatMap(({ noDig }) => noDig?.value ?? []);
      return all.length === 0 ? undefined : Math.max(...all);
    }
  }
];

function slope(name: string, describe: string) {
  return { name, of: 'area', measure: '', print: 'slope', describe } as const;
}

/** Metres: a circle that reaches no further past the edge of its pit ends there. */
const AT_EDGE = 0.0005;

/** From the middle of a pit to the nearest ground beside it: what surrounds it is dug. */
function leastReach(outline: Loop): number {
  const middle = middleOf(outline);
  return Math.min(...outline.map(side => distanceToSide(side, middle)));
}
