import type { TextChange } from '../findings/finding.ts';

/** What would mend a fault: words in its place, or changes anywhere; without changes it is no fix. */
export interface SaidFix {
  readonly title: string;
  readonly safe?: boolean;
  readonly does: string | readonly TextChange[];
}

/** Offers to write words in the place of a finding. */
export function writing(words: string): SaidFix {
  return { title: `Write \`${words}\``, does: words };
}
