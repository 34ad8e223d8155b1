import type { Acceptance } from '../findings/finding.ts';

/** `until 2027-06-30`, `for good, agreed with the client` */
export function howLong({ until, agreedWith }: Pick<Acceptance, 'until' | 'agreedWith'>): string {
  return until === undefined ? `for good, agreed with ${agreedWith ?? ''}` : `until ${until}`;
}
