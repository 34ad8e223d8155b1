import type { Finding } from './finding.ts';
import { isHeavier } from '../job/severity.ts';

/** Each finding once, though it may be found in several ways: as what weighs most. */
export function toldOnce<T extends Finding>(findings: readonly T[]): T[] {
  const once = new Map<string, T>();
  for (const finding of findings) {
    const name = [finding.id, finding.file, finding.line, finding.column, finding.message].join('\n');
    const known = once.get(name);
    if (known === undefined || isHeavier(finding.severity, known.severity)) once.set(name, finding);
  }
  return [...once.values()];
}
