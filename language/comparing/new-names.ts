import type { Key } from '../job/job.ts';
import type { Kind } from '../lowering/names.ts';

/** How things of the older text are called in the newer one, by kind and older name; of what keeps its name nothing. */
export type NewNames = ReadonlyMap<string, string>;

/** Everything keeps its name. */
export const SAME_NAMES: NewNames = new Map();

export function nameOf(names: NewNames, { kind, name }: { readonly kind: Kind; readonly name: string }): string {
  return names.get(`${kind}:${name}`) ?? name;
}

/** Keys of boxes and pits name them by their word. */
const KIND_OF_KEY: Readonly<Record<string, Kind>> = { box: 'kept-out', pit: 'kept-out', door: 'gate' };

/** A key of the older text as the newer one has it: `area:a+area:b`, `area:terrace/edges/A to B`. */
export function keyNow(names: NewNames, key: Key): Key {
  if (names.size === 0) return key;
  return key
    .split('+')
    .map(one =>
      one
        .replace(/^([a-z-]+):([^/]*)/, (_, kind: Kind, name: string) => {
          return `${kind}:${nameOf(names, { kind: KIND_OF_KEY[kind] ?? kind, name })}`;
        })
        .replace(/(?<=\/edges\/)[^/]+/, side => sideNow(names, side))
    )
    .join('+');
}

/** A side by its corners: `A to B`. */
export function sideNow(names: NewNames, side: string): string {
  return side
    .split(' to ')
    .map(name => nameOf(names, { kind: 'point', name }))
    .join(' to ');
}
