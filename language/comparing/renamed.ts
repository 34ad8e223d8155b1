import type { NewNames } from './new-names.ts';
import type { NameUsed, WrittenStatement } from './written-statements.ts';

/** A thing that is called otherwise and is the same. */
export interface Renamed {
  readonly kind: NameUsed['kind'];
  readonly before: string;
  readonly after: string;
}

/**
 * Things that have another name in the newer text. `olderAs` reads the older text with the names found so far, since a
 * thing that names another that was renamed says the same only then.
 */
export function renamedBetween(
  olderAs: (names: NewNames) => readonly WrittenStatement[],
  newer: readonly WrittenStatement[]
): Renamed[] {
  const names = new Map<string, string>();
  const found: Renamed[] = [];
  // Points take their names from values, areas from points; each round may show what the one before found.
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const more = roundOf(olderAs(names), newer);
    if (more.length === 0) break;
    for (const renamed of more) names.set(`${renamed.kind}:${renamed.before}`, renamed.after);
    found.push(...more);
  }
  return found;
}

/** Names lead to names, but not far: values, points, lines, areas, what stands in areas. */
const MOST_ROUNDS = 6;

function roundOf(older: readonly WrittenStatement[], newer: readonly WrittenStatement[]): Renamed[] {
  const declared = (all: readonly WrittenStatement[]): WrittenStatement[] =>
    all.filter(({ declares }) => declares !== undefined);
  const idOf = ({ word, declares }: WrittenStatement): string => `${word} ${declares!.name}`;
  const [before, after] = [declared(older), declared(newer)];
  const [known, still] = [new Set(after.map(idOf)), new Set(before.map(idOf))];
  const gone = before.filter(statement => !known.has(idOf(statement)));
  const come = after.filter(statement => !still.has(idOf(statement)));
  return gone.flatMap(old => {
    const same = come.filter(now => now.word === old.word && sayTheSame(old, now));
    // Of several that say the same none can be told to be this one.
    if (same.length !== 1) return [];
    const [now] = same;
    come.splice(come.indexOf(now!), 1);
    return [{ kind: old.declares!.kind, before: old.declares!.name, after: now!.declares!.name }];
  });
}

/** All of it alike but for its own name; of an area its outline. */
function sayTheSame(old: WrittenStatement, now: WrittenStatement): boolean {
  if (old.declares!.kind === 'area') return outlineOf(old) !== undefined && outlineOf(old) === outlineOf(now);
  return nameless(old) === nameless(now);
}

function outlineOf({ inside }: WrittenStatement): string | undefined {
  return inside.find(({ word }) => word === 'outline')?.meaning;
}

function nameless({ declares, meaning, inside }: WrittenStatement): string {
  const own = meaning.split(' ').filter(word => word !== declares?.name);
  return `${own.join(' ')} {${inside.map(nameless).join('; ')}}`;
}
