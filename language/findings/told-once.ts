import type { Finding } from './finding.ts';

/** Each finding once, though the file it stands in may be reached in several ways. */
export function toldOnce<T extends Finding>(findings: readonly T[]): T[] {
  const once = new Map<string, T>();
  for (const finding of findings) {
    const name = [finding.id, finding.file, finding.line, finding.column, finding.message].join('\n');
    if (!once.has(name)) once.set(name, finding);
  }
  return [...once.values()];
}
