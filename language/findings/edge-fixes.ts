import type { Area, Key } from '../job/job.ts';
import type { RawFinding, RawFix } from './finding.ts';
import type { Along } from './neighbour-faults.ts';
import { usualNeighbours } from './sides.ts';

/**
 * Offers to say what sides meet of which nothing is said. Where they lie along another area they meet that; nothing is
 * offered where they do so in part.
 */
export function withEdgeFixes(
  finding: RawFinding,
  areas: readonly Area[],
  unsaid: ReadonlyMap<Key, Along>
): RawFinding {
  if (finding.id !== 'edge-not-said') return finding;
  const area = areas.find(({ key }) => key === finding.target)!;
  const silent = area.edges.filter(({ meets }) => meets === undefined);
  const along = silent.flatMap(({ key }) => unsaid.get(key) ?? []);
  if (along.some(({ whole }) => !whole)) return { ...finding, fixes: [] };
  const meeting = silent.flatMap(({ key, name }) => {
    const other = unsaid.get(key);
    return other === undefined ? [] : [`${name} meets ${other.area}`];
  });
  const rest = silent.filter(({ key }) => !unsaid.has(key));
  const where = rest.length === area.edges.length ? 'all round' : whereOf(rest);
  const others = rest.length === 0 ? [[]] : usualNeighbours(area.edges).map(what => [`${where} meets ${what}`]);
  return { ...finding, fixes: others.map(other => sidesFix(area.key, [...meeting, ...other])) };
}

function sidesFix(area: Key, statements: readonly string[]): RawFix {
  const title = `Write ${statements.map(statement => `\`${statement}\``).join(' and ')}`;
  return { title, edits: [{ gap: `${area}/sides`, statements }] };
}

function whereOf(sides: Area['edges']): string {
  return new Set(sides.map(({ name }) => name)).size === 1 ? sides[0]!.name : 'the rest';
}
