import { type AcceptedFinding, type Finding, isAccepted } from '../findings/finding.ts';
import type { Compared } from './compared.ts';
import type { FindingChange } from './contract.ts';
import type { Edit } from './edits.ts';
import { keyNow, type NewNames } from './new-names.ts';

/** Findings that appeared, were cleared or set aside, by what they are about. */
export function findingChanges(
  older: Compared,
  newer: Compared,
  names: NewNames,
  causesOfFinding: (finding: Finding) => readonly Edit[]
): FindingChange[] {
  const idOf = ({ id, target }: Finding): string => `${id} ${target}`;
  const idNow = ({ id, target }: Finding): string => `${id} ${keyNow(names, target)}`;
  const count = (findings: readonly Finding[], name: (finding: Finding) => string): Map<string, Finding[]> => {
    const found = new Map<string, Finding[]>();
    for (const finding of findings) {
      const alike = found.get(name(finding));
      if (alike === undefined) found.set(name(finding), [finding]);
      else alike.push(finding);
    }
    return found;
  };
  const [was, is] = [older.evaluation, newer.evaluation];
  const open = count(is.findings, idOf);
  const before = count(was.findings, finding => idNow(finding));
  const aside = count(is.accepted, idOf);
  const asideBefore = count(was.accepted, finding => idNow(finding));
  const change = (kind: FindingChange['kind'], finding: Finding): FindingChange => ({
    kind,
    finding,
    ...(isAccepted(finding) ? { acceptance: (finding as AcceptedFinding).accepted } : {}),
    causes: causesOfFinding(finding),
    places: kind === 'cleared' ? { before: finding } : { after: finding }
  });
  const appeared = over(open, before).map(finding =>
    change(asideBefore.has(idOf(finding)) ? 'no longer set aside' : 'appeared', finding)
  );
  const setAside = over(aside, asideBefore).map(finding =>
    change(before.has(idOf(finding)) && !open.has(idOf(finding)) ? 'set aside' : 'appeared', finding)
  );
  const cleared = over(before, open)
    .filter(finding => !aside.has(idNow(finding)))
    .map(finding => change('cleared', finding));
  const clearedAside = over(asideBefore, aside)
    .filter(finding => !open.has(idNow(finding)))
    .map(finding => change('cleared', finding));
  return [...appeared, ...setAside, ...cleared, ...clearedAside];
}

/** What there is more of than before. */
function over(
  now: ReadonlyMap<string, readonly Finding[]>,
  before: ReadonlyMap<string, readonly Finding[]>
): readonly Finding[] {
  return [...now].flatMap(([name, findings]) => findings.slice(before.get(name)?.length ?? 0));
}
