import { isAccepted, type Finding } from '../../findings/finding.ts';
import type { Severity } from '../../job/severity.ts';
import { type FindingJson, findingJson } from './finding-json.ts';
import { SCHEMA_NUMBER } from './schema-number.ts';

export interface CheckJson {
  readonly schema: number;
  readonly counts: {
    readonly errors: number;
    readonly warnings: number;
    readonly notes: number;
    readonly accepted: number;
  };
  readonly findings: readonly FindingJson[];
}

/** The findings of all files checked, counted by severity; those that are set aside stand among them, and count apart. */
export function checkJson(findings: readonly Finding[]): CheckJson {
  const count = (severity: Severity): number =>
    findings.filter(finding => finding.severity === severity && !isAccepted(finding)).length;
  return {
    schema: SCHEMA_NUMBER,
    counts: {
      errors: count('error'),
      warnings: count('warning'),
      notes: count('note'),
      accepted: findings.filter(isAccepted).length
    },
    findings: findings.map(findingJson)
  };
}
