import type { Kind } from '../lowering/names.ts';

/** How things of the older text are called in the newer one, by kind and older name; of what keeps its name nothing. */
export type NewNames = ReadonlyMap<string, string>;

export function nameOf(names: NewNames, { kind, name }: { readonly kind: Kind; readonly name: string }): string {
  return names.get(`${kind}:${name}`) ?? name;
}
