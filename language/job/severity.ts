/** How much a finding weighs, the heaviest first. */
export const SEVERITIES = ['error', 'warning', 'note'] as const;

export type Severity = (typeof SEVERITIES)[number];

/** Whether one weighs more than another. */
export function isHeavier(one: Severity, other: Severity): boolean {
  return SEVERITIES.indexOf(one) < SEVERITIES.indexOf(other);
}
