const WALKS = ['filter', 'find', 'findIndex', 'flatMap', 'forEach', 'map', 'reduce', 'some', 'every'] as const;

/** How many elements of lists a piece of work looks at: a count of work that is the same on every machine. */
export function scanned(work: () => void): number {
  let count = 0;
  const lists = Array.prototype as unknown as Record<string, (this: unknown[], ...given: unknown[]) => unknown>;
  const originals = WALKS.map(name => [name, lists[name]!] as const);
  for (const [name, walk] of originals)
    lists[name] = function (visit, ...more) {
      const counted = (...each: unknown[]): unknown => {
        count++;
        return (visit as (...each: unknown[]) => unknown)(...each);
      };
      return walk.call(this, counted, ...more);
    };
  try {
    work();
  } finally {
    for (const [name, walk] of originals) lists[name] = walk;
  }
  return count;
}
