import type { Key, Missing } from '../job/job.ts';
import { nameIn } from '../job/key-names.ts';
import type { Context } from './context.ts';
import { keyOf } from './keys.ts';
import { namesOf, type Declared, type Kind, type SpecText } from './names.ts';

/** A thing as read, or without numbers and the broken things it leans on. */
export interface Each<T> {
  readonly declared: Declared;
  readonly key: Key;
  readonly value: T | undefined;
}

/** Reads all things of a kind, of each name the first. Those that lean on something broken are added to `missing`. */
export function readEach<T>(
  context: Context,
  texts: readonly SpecText[],
  kind: Kind,
  missing: Missing[],
  read: (declared: Declared, key: Key) => T | undefined
): Each<T>[] {
  const seen = new Set<string>();
  return texts.flatMap(text =>
    namesOf(text)
      .all.filter(declared => declared.kind === kind)
      .flatMap((declared): Each<T>[] => {
        if (seen.has(declared.name)) return [];
        seen.add(declared.name);
        const key = context.place(keyOf(declared), text, declared.node, 'name');
        if (context.isBroken(text, declared.node)) {
          missing.push({ key, name: declared.name, because: declared.name });
          return [{ declared, key, value: undefined }];
        }
        const { value, broken } = context.watch(() => read(declared, key));
        if (value !== undefined && broken.length === 0) return [{ declared, key, value }];
        missing.push({ key, name: declared.name, because: nameIn(broken[0] ?? declared.name) });
        return [{ declared, key, value: undefined }];
      })
  );
}
