import type { Area, Key, System } from '../../job/job.ts';
import type { CutGroup } from '../../laying/cut-list/cut-list.ts';
import { unitNamed } from '../../quantities/units-of-area.ts';
import { cutRow, markedLines } from '../text/cuts-text.ts';
import type { UnledThing } from './piece.ts';
import { type MmBounds } from './in-millimetres.ts';
import { nameIn } from '../../job/key-names.ts';

/** Equal cuts of an area by a key that stays while they are cut so: their numbers move on with every cut before them. */
export function cutKindKeys(area: Key, groups: readonly CutGroup[]): string[] {
  const taken = new Map<string, number>();
  return groups.map(group => {
    const key = `${area}/cut/${nameIn(group.unit)}/${formOfGroup(group)}`;
    const times = (taken.get(key) ?? 0) + 1;
    taken.set(key, times);
    return times === 1 ? key : `${key}~${times}`;
  });
}

/** Corners to the millimetre, written short. Rounded a little off the half, where sizes lie that people write. */
function formOfGroup({ pieces }: CutGroup): string {
  const round = (metres: number): number => Math.round(metres * 1000 + OFF_THE_HALF);
  const told = pieces.map(({ outline, holes }) =>
    [outline, ...holes].map(loop => loop.map(({ from }) => `${round(from.x)} ${round(from.y)}`).join()).join(';')
  );
  return digest(told.join('|'));
}

const OFF_THE_HALF = 0.183;

/** FNV-1a, 32 bits: a short name for a long one. */
export function digest(text: string): string {
  let hash = 0x811c9dc5;
  for (let at = 0; at < text.length; at++) hash = Math.imul(hash ^ text.charCodeAt(at), 0x01000193);
  return (hash >>> 0).toString(36);
}

/** Equal cuts as one thing, with what the cut list tells of them. */
export function cutKindThing(area: Area, group: CutGroup, key: string, bounds: MmBounds, system: System): UnledThing {
  const [number, count, unit, kind, sawLength, narrowest] = cutRow(group, unitNamed(area, group.unit).name, system);
  return {
    key,
    kind: 'Cut units',
    name: `cut ${number} of ${area.name}`,
    number: number!,
    facts: [
      ['Units', count!],
      ['Unit', unit!],
      ['Kind', kind!],
      ['Saw length', sawLength!],
      ['Narrowest', narrowest!],
      ['How each is marked out', markedLines(group, system).join(' ')]
    ],
    bounds,
    area: area.key
  };
}
