/** One thing in both plans, or in one of them. */
export interface Pair<Thing> {
  readonly before?: Thing;
  readonly after?: Thing;
}

/**
 * Things of two plans that are the same by the first of several tests that finds a partner: in the newer order, what is
 * gone last.
 */
export function paired<Thing>(
  before: readonly Thing[],
  after: readonly Thing[],
  tests: readonly ((before: Thing, after: Thing) => boolean)[]
): Pair<Thing>[] {
  const partners = new Map<Thing, Thing>();
  const left = new Set(before);
  for (const areSame of tests) {
    for (const now of after) {
      const old = partners.has(now) ? undefined : [...left].find(one => areSame(one, now));
      if (old === undefined) continue;
      partners.set(now, old);
      left.delete(old);
    }
  }
  return [
    ...after.map((now): Pair<Thing> => {
      const old = partners.get(now);
      return old === undefined ? { after: now } : { before: old, after: now };
    }),
    ...[...left].map((old): Pair<Thing> => ({ before: old }))
  ];
}
